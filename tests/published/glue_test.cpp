// Air, ratios and kinetics of glues against published tables.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <map>
#include <string>

#include "core/glue/adhesive.hpp"
#include "core/glue/batches.hpp"
#include "core/glue/conditions.hpp"
#include "core/glue/cure.hpp"
#include "core/glue/pot_life.hpp"
#include "core/glue/ratio.hpp"
#include "core/units/input_error.hpp"
#include "tests/published/csv_rows.hpp"
#include "tests/refusal.hpp"

namespace fayline::glue {
namespace glue_test {

using published::number;
using published::Row;
using published::rowsOf;

// Source: dew_points.csv (D). Tolerance: half of the last printed figure; 0.012 K for the other set of constants (P*).
TEST(PublishedGlue, EveryDewPointComesOut) {
    constexpr double otherA = 17.62;
    constexpr double otherB_C = 243.12;
    int values = 0;
    for (const Row& row : rowsOf("dew_points.csv")) {
        const double air_C = number(row, "air_C");
        for (const auto& [column, printed] : row) {
            if (column == "air_C") continue;
            const double humidity = std::stod(column) / 100;
            EXPECT_NEAR(dewPoint(air_C, humidity), std::stod(printed), 0.0005001) << air_C << " C, " << column << " %";
            const double gamma = std::log(humidity) + otherA * air_C / (otherB_C + air_C);
            EXPECT_NEAR(dewPoint(air_C, humidity), otherB_C * gamma / (otherA - gamma), 0.012);
            ++values;
        }
    }
    EXPECT_EQ(values, 49);
}

TEST(PublishedGlue, SaturatedAirIsAtItsDewPoint) {
    for (double air_C = -10; air_C <= 40; air_C += 5) EXPECT_NEAR(dewPoint(air_C, 1), air_C, 1e-9);
}

// Source: mix_ratios.csv (P, density ratios D).
TEST(PublishedGlue, RatiosByWeightAndByVolumeGoWithTheDensitiesThatFollow) {
    const std::vector<Row> rows = rowsOf("mix_ratios.csv");
    ASSERT_EQ(rows.size(), 3u);
    for (const Row& row : rows) {
        const double byVolume = number(row, "volume_resin") / number(row, "volume_hardener");
        const double byWeight = number(row, "weight_resin") / number(row, "weight_hardener");
        // The density ratio is printed to 0.01.
        EXPECT_NEAR(byWeight / byVolume, number(row, "density_ratio"), 0.005001);
        model::OwnAdhesive own{.id = "row",
                               .partsByVolume = {number(row, "volume_resin"), number(row, "volume_hardener")},
                               .partsByWeight = {number(row, "weight_resin"), number(row, "weight_hardener")},
                               .density_kg_m3 = {1120, 1120 / number(row, "density_ratio")}};
        EXPECT_NO_THROW(checkRatios(ownAdhesive(own), "row"));
        // A cup measured by weight and one by the marks hold the same mix, as near as the density ratio is printed.
        model::Glue glue{.scaleReads_kg = 1e-6, .cupReads_m3 = 1e-9};
        const Adhesive adhesive = ownAdhesive(own);
        const Fitted fitted = fitWithEnds(adhesive, "row");
        const BatchNeed need{BatchFor::spread, 0, 0.2, 0.4, 0.2 / 60, 240};
        const Batch weighed = batchesFor(need, glue, adhesive, fitted, 1).front();
        glue.measuredBy = model::MeasuredBy::cup;
        const Batch marked = batchesFor(need, glue, adhesive, fitted, 1).front();
        EXPECT_NEAR(weighed.parts_kg[0] / weighed.parts_kg[1], byWeight, 1e-3 * byWeight);
        EXPECT_NEAR(marked.parts_m3[0] / marked.parts_m3[1], byVolume, 1e-3 * byVolume);
        EXPECT_NEAR(marked.parts_kg[0] / marked.parts_kg[1] / byWeight, 1, 0.006);
        EXPECT_NEAR(weighed.parts_m3[0] / weighed.parts_m3[1] / byVolume, 1, 0.006);
    }
}

// The row of 3 : 1 by volume, which is 3.5 : 1 by weight: whoever takes one for the other is told.
TEST(PublishedGlue, TheRatioByVolumeTakenForThatByWeightIsRefused) {
    model::OwnAdhesive own{
        .id = "row", .partsByVolume = {3, 1}, .partsByWeight = {3, 1}, .density_kg_m3 = {1120, 1120 / 1.17}};
    EXPECT_EQ(made::refusal([&] { checkRatios(ownAdhesive(own), "adhesives[0]"); }).path(),
              "adhesives[0].parts_by_weight");
}

// Source: as above, and the two-part glues of the project's own file by their densities. How far they are apart is
// printed: makers round both.
TEST(PublishedGlue, TheBuiltInGluesCarryThoseRatios) {
    // 5:1 by volume is 5:1 by weight, 3:1 is 3.5:1, 2:1 is 100:47, 1:1 is 100:83 (P). Of 4:1 no page was read: from
    // memory of data sheets, whose resins and hardeners are about as heavy as these.
    const std::map<std::string, double> byWeightOf{
        {"1:1", 100.0 / 83}, {"2:1", 100.0 / 47}, {"3:1", 3.5}, {"4:1", 100.0 / 23}, {"5:1", 5}};
    std::map<std::string, int> met;
    for (const Adhesive& adhesive : builtInAdhesives()) {
        if (adhesive.onePart()) continue;
        const double byVolume = adhesive.partsByVolume[0] * adhesive.density_kg_m3[0] /
                                (adhesive.partsByVolume[1] * adhesive.density_kg_m3[1]);
        const double byWeight = adhesive.partsByWeight[0] / adhesive.partsByWeight[1];
        std::printf("%-22s by weight %.3f : 1, by volume and density %.3f : 1\n", adhesive.id.c_str(), byWeight,
                    byVolume);
        EXPECT_NEAR(byVolume / byWeight, 1, ratiosAgreeWithin);
        if (adhesive.kind != model::AdhesiveKind::epoxy) continue;
        ASSERT_TRUE(byWeightOf.count(adhesive.mix)) << adhesive.mix;
        EXPECT_DOUBLE_EQ(byWeight, byWeightOf.at(adhesive.mix));
        EXPECT_DOUBLE_EQ(adhesive.partsByVolume[0] / adhesive.partsByVolume[1], std::stod(adhesive.mix));
        EXPECT_NEAR(byVolume / byWeight, 1, 0.001);
        ++met[adhesive.mix];
    }
    ASSERT_EQ(met.size(), byWeightOf.size());
    for (const auto& [mix, count] : met) EXPECT_EQ(count, 4) << mix;
}

// Source: cure_speeds.csv (D). Tolerance: half of the last printed figure.
TEST(PublishedGlue, EveryFactorOfArrheniusComesOut) {
    int values = 0;
    for (const Row& row : rowsOf("cure_speeds.csv")) {
        Kinetics kinetics;
        kinetics.energy_J_mol = 1000 * number(row, "energy");
        for (const auto& [column, printed] : row) {
            if (column == "energy") continue;
            const double from_C = std::stod(column.substr(0, column.find('-')));
            const double to_C = std::stod(column.substr(column.find('-') + 1));
            EXPECT_NEAR(speedAgainst(kinetics, to_C, from_C), std::stod(printed), 0.00005001) << row.at("energy");
            // A film's time follows it and nothing else.
            kinetics.rate_per_s = 1e-3;
            EXPECT_NEAR(filmReaches(kinetics, from_C, 0.5) / filmReaches(kinetics, to_C, 0.5), std::stod(printed),
                        6e-5);
            ++values;
        }
    }
    EXPECT_EQ(values, 35);
}

// Energies at which ten degrees from 20 C on speed the cure up so many times, kJ/mol (D).
TEST(PublishedGlue, TheEnergyForARoundFactorIsThatOfTheTable) {
    const double rows[][2] = {{1.5, 29.96}, {2, 51.22}, {2.5, 67.70}, {3, 81.18}};
    for (const auto& [factor, energy] : rows) {
        Kinetics kinetics;
        kinetics.energy_J_mol = 1000 * energy;
        EXPECT_NEAR(speedAgainst(kinetics, 30, 20), factor, 0.0003 * factor);
    }
}

// Source: cure_kinetics.csv (P, abstracts). No set of constants for an epoxy that cures at room temperature was found
// in print, so the model's own are a choice; what they must keep to is the one row that is a cycloaliphatic amine.
// Where the others lie is printed.
TEST(PublishedGlue, TheModelsEnergyAndOrdersLieWithinTheMeasuredOnes) {
    const Kinetics kinetics;
    const double energy = kinetics.energy_J_mol / 1000;
    constexpr double orders = 1 + 2;  // (c0 + alpha) and (1 - alpha)^2
    int held = 0;
    for (const Row& row : rowsOf("cure_kinetics.csv")) {
        const bool within = energy >= number(row, "energy_from") && energy <= number(row, "energy_to");
        std::printf("%s kJ/mol to %s, %s: the model's %.0f lies %s\n", row.at("energy_from").c_str(),
                    row.at("energy_to").c_str(), row.at("system").c_str(), energy, within ? "within" : "outside");
        if (row.at("held_to") != "yes") continue;
        EXPECT_TRUE(within);
        EXPECT_GE(orders, number(row, "orders_from"));
        EXPECT_LE(orders, number(row, "orders_to"));
        ++held;
    }
    EXPECT_EQ(held, 1);
}

// Gel of an epoxide of two with an amine of four arms, Flory and Stockmayer: 1/sqrt(3) (M). Heat of reaction 486 J/g,
// of bisphenol A epoxy with technical triethylenetetramine (P, abstract, scielo.br/j/po/a/56LhNB7ckYdFRPYLDcJK9ZM);
// specific heat of a liquid resin 2.09 J/(g K) (P, data sheet, revchem.com). Together 232 K if no heat escapes (D).
TEST(PublishedGlue, GelHeatAndRiseAreThoseOfTheirSources) {
    Kinetics kinetics;
    EXPECT_NEAR(kinetics.gel, 1 / std::sqrt(3.0), 0.0005);
    EXPECT_DOUBLE_EQ(kinetics.heat_J_kg, 486e3);
    EXPECT_NEAR(kinetics.capacity_J_kgK, 2090, 0.01 * 2090);
    kinetics.rate_per_s = 1e-3;
    kinetics.lossFactor = 1e-4;
    const PotLifeOf life = potLife(kinetics, fillOf(model::Vessel::cup, 1e-2, 5, 1100), 25, 25);
    EXPECT_NEAR(life.peak_C - 25, 232, 0.01 * 232);
}

// "+10 K halves the processing time" (an aircraft kit's manual, P), "18 F more halve the pot life" (a resin maker, P),
// "raising to 30 C halves the hardening time" (another, P). Another page has a film's time grow only 1.3-fold for 18 F
// colder (P, weak): that does not come out, here it is twofold, and no activation energy that was measured would allow
// it.
TEST(PublishedGlue, TenDegreesHalveTheTimeWithinATenth) {
    for (const Adhesive& adhesive : builtInAdhesives()) {
        if (adhesive.kind != model::AdhesiveKind::epoxy) continue;
        const Kinetics kinetics = fitKinetics(adhesive, adhesive.id);
        EXPECT_NEAR(filmReaches(kinetics, 30, 0.9) / filmReaches(kinetics, 20, 0.9), 0.5, 0.05);
        const Fill fill = fillOf(model::Vessel::cup, 180e-6, 0.1, adhesive.mixDensity_kg_m3());
        const double cups = potLife(kinetics, fill, 35, 35).lasts_s / potLife(kinetics, fill, 25, 25).lasts_s;
        std::printf("%-22s 100 g at 35 C last %.2f of what they last at 25 C\n", adhesive.id.c_str(), cups);
        EXPECT_GT(cups, 0.40);
        EXPECT_LT(cups, 0.55);
        EXPECT_GT(filmReaches(kinetics, 15, 0.9) / filmReaches(kinetics, 25, 0.9), 2);  // not 1.3
        model::Glue warm;
        warm.air_C = warm.airOverNight_C = 30;
        model::Glue room = warm;
        room.air_C = room.airOverNight_C = 20;
        const double needed_s = adhesive.handling_s;
        if (adhesive.least_C <= 20) {
            EXPECT_NEAR(
                whenCured(adhesive, kinetics, warm, 0, needed_s) / whenCured(adhesive, kinetics, room, 0, needed_s),
                0.5, 0.05);
        }
    }
}

// Epoxy for bonding, an average joint: 50 to 100 sq ft of it for a US gallon (a maker's page, P): 0.41 to 0.81 litres
// to the square metre of joint. A gallon bought has its waste in it, so the mix with waste is held against that. And
// usual practice is 300 to 600 g/m2 in two coats (M/C), of what goes on the faces.
TEST(PublishedGlue, AJointTakesAsMuchAsMakersAndPracticeSay) {
    constexpr double gallon_m3 = 3.785411784e-3;
    constexpr double squareFoot_m2 = 0.09290304;
    const double least_m = gallon_m3 / (100 * squareFoot_m2);
    const double most_m = gallon_m3 / (50 * squareFoot_m2);
    EXPECT_NEAR(1000 * least_m, 0.41, 0.005);
    EXPECT_NEAR(1000 * most_m, 0.81, 0.006);
    const std::vector<GlueLine> lines{{1, 0, 3.0, false}};
    for (const Adhesive& adhesive : builtInAdhesives()) {
        if (adhesive.kind != model::AdhesiveKind::epoxy) continue;
        model::Glue glue;
        glue.adhesive = adhesive.id;
        const GluePlan plan = planGlue(glue, {}, builtInAdhesives(), lines, 0);
        const double volume_m = (plan.parts_m3[0] + plan.parts_m3[1]) / plan.amounts.joint_m2;
        std::printf("%-22s %.0f g/m2 of joint; with waste %.2f l/m2, a maker %.2f to %.2f\n", adhesive.id.c_str(),
                    1000 * plan.amounts.perJoint_kg_m2(), 1000 * volume_m, 1000 * least_m, 1000 * most_m);
        EXPECT_GE(plan.amounts.perJoint_kg_m2(), 0.300);
        EXPECT_LE(plan.amounts.perJoint_kg_m2(), 0.600);
        EXPECT_GE(volume_m, least_m);
        EXPECT_LE(volume_m, most_m);
        EXPECT_GT(plan.amounts.squeezedOut_kg, 0);  // "just enough to squeeze a small amount out" (a maker's manual, P)
        // Thickened on both faces it is more than practice has.
        glue.bothFaces = true;
        EXPECT_GT(planGlue(glue, {}, builtInAdhesives(), lines, 0).amounts.perJoint_kg_m2(), 0.600);
    }
}

// Mixed and unfilled, 4,195 g to the US gallon (a maker's page, P): 1.108 kg/l. The built-in ones are thinned for
// laminating: within 2 %. Where more or lighter hardener goes in, the mix is lighter: no page on that was read.
TEST(PublishedGlue, AMixIsAsHeavyAsAMakerSays) {
    for (const Adhesive& adhesive : builtInAdhesives()) {
        if (adhesive.kind != model::AdhesiveKind::epoxy) continue;
        const double ratio = adhesive.mixDensity_kg_m3() / (4.195 / 3.785411784e-3);
        EXPECT_LT(ratio, 1.02) << adhesive.mix;
        EXPECT_GT(ratio, adhesive.mix == "1:1" || adhesive.mix == "3:1" ? 0.92 : 0.98) << adhesive.mix;
    }
}

}  // namespace glue_test
}  // namespace fayline::glue
