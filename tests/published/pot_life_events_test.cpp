// Cups that went off, pot_life_events.csv with the source of each, beside what the model of a cup that heats itself
// says of them. They are told by people who measured next to nothing; nothing is tuned to them. What comes out in kind
// is checked; what does not is said here, in the test's output, and checked as well so that this stays true.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string>

#include "core/glue/adhesive.hpp"
#include "core/glue/glue.hpp"
#include "core/glue/pot_life.hpp"
#include "tests/published/csv_rows.hpp"

namespace fayline::glue {
namespace pot_life_events_test {

constexpr double handHot_C = 50;

published::Row eventOf(const std::string& name) {
    for (const published::Row& row : published::rowsOf("pot_life_events.csv")) {
        if (row.at("event") == name) return row;
    }
    ADD_FAILURE() << "no event " << name;
    return {};
}

// A resin of which `mass_kg` last `lasts_min` at `at_C`.
Adhesive resin(double lasts_min, double mass_kg = 0.1, double at_C = 25) {
    model::OwnAdhesive own{.id = "resin", .potLife_s = 60 * lasts_min, .potLifeAt_C = at_C, .potLifeMass_kg = mass_kg};
    return ownAdhesive(own);
}

// In a cup that it fills by two thirds.
PotLifeOf inCup(const Adhesive& adhesive, double mass_kg, double air_C) {
    const double density = adhesive.mixDensity_kg_m3();
    return potLife(fitKinetics(adhesive, "resin"),
                   fillOf(model::Vessel::cup, 1.5 * mass_kg / density, mass_kg, density), air_C, air_C, true);
}

// The same with both ends of what is assumed of the data sheet's cup.
PotLifeRange rangeInCup(const Adhesive& adhesive, double mass_kg, double air_C) {
    const double density = adhesive.mixDensity_kg_m3();
    return potLifeRange(fitWithEnds(adhesive, "resin"),
                        fillOf(model::Vessel::cup, 1.5 * mass_kg / density, mass_kg, density), air_C);
}

// When it is warmer than `mix_C`, seconds.
double whenWarm(const PotLifeOf& life, double mix_C) {
    for (std::size_t i = 1; i < life.at_s.size(); ++i) {
        if (life.mix_C[i] <= mix_C) continue;
        const double share = (mix_C - life.mix_C[i - 1]) / (life.mix_C[i] - life.mix_C[i - 1]);
        return life.at_s[i - 1] + share * (life.at_s[i] - life.at_s[i - 1]);
    }
    return INFINITY;
}

// In kind: it is felt to warm long before, is hand-hot, and then is gone within minutes; spread in a tray it would have
// lasted. Not in degree: if the hour on the tin is that of 100 g at 25 C in a cup in still air, 140 g last nearly as
// long; if it is that of a cup in a bath, or of a film, they last half an hour, not five minutes.
TEST(PublishedEvents, ACupOfAnHoursResinWarmsAndThenIsGoneWithinMinutes) {
    const published::Row event = eventOf("cup_of_an_hours_resin");
    const double mass_kg = published::number(event, "mass_g") / 1000;
    const double tin_min = published::number(event, "pot_life_min");
    const PotLifeOf life = inCup(resin(tin_min), mass_kg, 25);
    const double warm_min = whenWarm(life, 30) / 60;
    const double fromHandHot_min = (life.lasts_s - whenWarm(life, handHot_C)) / 60;
    const PotLifeOf ofFilm = inCup(resin(tin_min, 0.001), mass_kg, 25);
    std::printf(
        "140 g of an hour's resin: gone in about 5 min, as told. Model, hour of 100 g: %.0f min, 5 K warmer at "
        "%.0f min, hand-hot %.1f min before the end, then %.0f C; hour of a film: %.0f min\n",
        life.lasts_s / 60, warm_min, fromHandHot_min, life.peak_C, ofFilm.lasts_s / 60);
    const PotLifeRange range = rangeInCup(resin(tin_min), mass_kg, 25);
    std::printf("... by what the sheet's cup may have lost: %.0f to %.0f min\n", range.lasts_s.from / 60,
                range.lasts_s.to / 60);
    EXPECT_LT(range.lasts_s.from, 0.5 * 60 * tin_min);
    EXPECT_LT(life.lasts_s, 60 * tin_min);
    EXPECT_LT(warm_min, life.lasts_s / 60 / 2);
    EXPECT_LT(fromHandHot_min, 10);
    EXPECT_GT(life.peak_C, smokes_C);
    const Adhesive adhesive = resin(tin_min);
    const double density = adhesive.mixDensity_kg_m3();
    const double tray_s = potLife(fitKinetics(adhesive, "resin"),
                                  fillOf(model::Vessel::tray, 4 * mass_kg / density, mass_kg, density), 25, 25)
                              .lasts_s;
    EXPECT_GT(tray_s, 2 * life.lasts_s);
    // What does not come out.
    const double told_s = 60 * published::number(event, "happened_min");
    EXPECT_GT(life.lasts_s, 5 * told_s);
    EXPECT_GT(range.lasts_s.from, 4 * told_s);
    EXPECT_GT(ofFilm.lasts_s, 2 * told_s);
    EXPECT_LT(ofFilm.lasts_s, life.lasts_s / 2);
}

// A maker: 100 g can reach 204 C (P). The range told for 100 g in a cup holds that, whatever the hardener.
TEST(PublishedEvents, AHundredGramsReachWhatAMakerSaysTheyCan) {
    const double told_C = published::number(eventOf("hundred_grams_left"), "seen_C");
    for (const double pot_min : {12.0, 25.0, 50.0, 90.0}) {
        const Between peak_C = rangeInCup(resin(pot_min), 0.1, 25).peak_C;
        std::printf("100 g of %.0f min left standing: can reach %.0f C, as told. Model: %.0f to %.0f C\n", pot_min,
                    told_C, peak_C.from, peak_C.to);
        EXPECT_LT(peak_C.from, told_C);
        EXPECT_GT(peak_C.to, told_C);
    }
}

// In kind: every cup of a tenth of a kilogram and more passes 105 C if it is left standing. The model's peaks, 190 to
// 250 C, are those of a mix that neither boils nor turns to glass half-way: they lie above what was seen.
TEST(PublishedEvents, ACupLeftStandingPassesTheTemperatureThatWasSeen) {
    const double seen_C = published::number(eventOf("run_away_cup"), "seen_C");
    double least_C = INFINITY;
    double most_C = 0;
    for (const double pot_min : {12.0, 30.0, 60.0, 90.0}) {
        for (const double mass_kg : {0.1, 0.25, 0.5}) {
            const double peak_C = inCup(resin(pot_min), mass_kg, 22).peak_C;
            EXPECT_GT(peak_C, seen_C) << pot_min << " min, " << mass_kg << " kg";
            least_C = std::min(least_C, peak_C);
            most_C = std::max(most_C, peak_C);
        }
    }
    // A little of a slow one stays below.
    const double little_C = inCup(resin(90), 0.02, 18).peak_C;
    std::printf(
        "a cup seen at %.0f C. Model: 100 to 500 g left standing reach %.0f to %.0f C, 20 g of a slow one %.0f C\n",
        seen_C, least_C, most_C, little_C);
    EXPECT_LT(little_C, seen_C);
    EXPECT_LT(most_C, 25 + 486 / 2.1);
}

// In kind: a gallon lasts less than 100 g of the same, of slow resins as much less as people tell, two to five times.
// Not in degree for a fast one: a gallon keeps nearly all its heat, and 100 g of a fast one keep most of it for as long
// as they last, so that in the model 12 min become 9 to 12; six minutes come out for a resin of 9 min in air of 30 C.
TEST(PublishedEvents, AGallonGoesOffSoonerThanAHundredGramsThoughNotInFiveMinutes) {
    const published::Row event = eventOf("gallon");
    const double mass_kg = published::number(event, "mass_g") / 1000;
    const double told_min = published::number(event, "happened_min");
    for (const double pot_min : {9.0, 12.0, 25.0, 50.0}) {
        const double gallon_s = inCup(resin(pot_min), mass_kg, 25).lasts_s;
        std::printf("a gallon of which 100 g last %.0f min at 25 C: solid in 5 min, as told. Model: %.1f min\n",
                    pot_min, gallon_s / 60);
        EXPECT_LT(gallon_s, inCup(resin(pot_min), 0.1, 25).lasts_s);
        const Between lasts_s = rangeInCup(resin(pot_min), mass_kg, 25).lasts_s;
        const double timesLess = 60 * pot_min / lasts_s.from;
        std::printf("... by what the sheet's cup may have lost: %.1f to %.1f min, up to %.1f times less\n",
                    lasts_s.from / 60, lasts_s.to / 60, timesLess);
        EXPECT_GT(timesLess, pot_min >= 50 ? 2 : 1.2);
        EXPECT_LT(timesLess, 5);
    }
    const double hot_s = inCup(resin(9), mass_kg, 30).lasts_s;
    std::printf("of a fast one, 9 min, in air of 30 C: %.1f min\n", hot_s / 60);
    EXPECT_NEAR(hot_s / 60, told_min, 1.5);
    // What does not come out.
    EXPECT_GT(rangeInCup(resin(12), mass_kg, 25).lasts_s.from / 60, 1.5 * told_min);
}

// A maker's film works six times as long as 100 g of the same last (P): the model's film gels between both ends of what
// is assumed of the sheet's cup, so this page speaks for a cup that kept its heat, the run-aways above for one that did
// not.
TEST(PublishedEvents, AFilmOutlastsAHundredGramsAsManyTimesAsTold) {
    const published::Row event = eventOf("film_beside_100_g");
    const double pot_min = published::number(event, "pot_life_min");
    const double film_min = published::number(event, "happened_min");
    constexpr double air_C = 22.2;
    const Fitted fitted = fitWithEnds(resin(pot_min, 0.1, air_C), "resin");
    const auto film = [&](const Kinetics& kinetics) { return filmReaches(kinetics, air_C, kinetics.gel) / 60; };
    const double slow_min = film(fitted.ends[0]);
    const double quick_min = film(fitted.ends[1]);
    std::printf(
        "a film of a resin of %.1f min works for %.0f min, as told. Model, until it gels: %.0f, %.0f, %.0f min\n",
        pot_min, film_min, slow_min, film(fitted.likely), quick_min);
    // Told 60 to 70 min for 9 to 12 min: 5 to 7.8 times.
    EXPECT_LT(quick_min, film_min);
    EXPECT_GT(film(fitted.likely) / pot_min, 5);
    EXPECT_LT(film(fitted.likely) / pot_min, 7.8);
}

// For who reads the test's output: each glue of the program by its mass, in a cup that it fills by two thirds at 25 C.
TEST(PublishedEvents, EachGlueOfTheProgramGoesOffSoonerTheMoreThereIsOfIt) {
    for (const Adhesive& adhesive : builtInAdhesives()) {
        if (adhesive.kind != model::AdhesiveKind::epoxy) continue;
        std::printf("%-22s", adhesive.id.c_str());
        Between before{INFINITY, INFINITY, INFINITY};
        for (const double mass_kg : {0.1, 0.2, 0.3, 0.5, 1.0, 2.0, 4.0}) {
            const PotLifeRange range = rangeInCup(adhesive, mass_kg, 25);
            std::printf("  %.1f kg %.0f-%.0f min", mass_kg, range.lasts_s.from / 60, range.lasts_s.to / 60);
            EXPECT_LT(range.lasts_s.from, before.from);
            EXPECT_LT(range.lasts_s.likely, before.likely);
            EXPECT_LT(range.lasts_s.to, before.to);
            before = range.lasts_s;
        }
        std::printf("\n");
    }
}

// Cups of polystyrene go soft at about 100 C, of polypropylene at about 150 (M).
TEST(PublishedEvents, EightOuncesHeldInACupMeltIt) {
    const double mass_kg = published::number(eventOf("eight_ounces_in_a_cup"), "mass_g") / 1000;
    for (const double pot_min : {12.0, 30.0, 60.0}) EXPECT_GT(inCup(resin(pot_min), mass_kg, 21).peak_C, 150);
}

// Fast and slow boat epoxy at 70 F: the warming is noticed (5 K, C) no sooner than told, for resins of 20 and 50 min
// per 100 g at 25 C, usual values of a fast to medium and a slow hardener (M).
TEST(PublishedEvents, NoReactionIsNoticedForAsLongAsTold) {
    const double rows[][2] = {{20, published::number(eventOf("fast_boat_epoxy"), "happened_min")},
                              {50, published::number(eventOf("slow_boat_epoxy"), "happened_min")}};
    for (const auto& [pot_min, told_min] : rows) {
        const double warm_min = whenWarm(inCup(resin(pot_min), 0.1, 21.1), 26.1) / 60;
        std::printf("at 70 F nothing noticed for up to %.0f min, as told. Model of %.0f min: 5 K warmer at %.0f min\n",
                    told_min, pot_min, warm_min);
        EXPECT_GT(warm_min, 0.6 * told_min);
        EXPECT_LT(warm_min, 1.7 * told_min);
    }
}

// "+5 K lowers the viscosity by almost 50 %" (an aircraft kit's manual, P): the rates go with its cube root (C).
TEST(PublishedEvents, FiveDegreesHalveTheThicknessOfTheMix) {
    for (double air_C = 10; air_C <= 30; air_C += 5) {
        EXPECT_NEAR(std::pow(slowdownAt(air_C + 5) / slowdownAt(air_C), -3), 0.5, 1e-12);
    }
}

}  // namespace pot_life_events_test
}  // namespace fayline::glue
