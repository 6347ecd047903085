// Findings about glue and air: each just when it should be, with its numbers.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>
#include <set>
#include <string>

#include "core/glue/conditions.hpp"
#include "core/io/file.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/glue_texts.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/io/error_of.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/whole_line.hpp"

namespace fayline::plan {
namespace glue_findings_test {

// Five strips of a gentle bend, on a mild day with a mild night: nothing is amiss.
model::Piece mild() {
    model::Piece piece = made::bend(2, 0.6, {.count = 5});
    piece.stack.moisture = 0.10;
    piece.glue.air_C = 20;
    piece.glue.airOverNight_C = 18;
    piece.glue.humidity = 0.55;
    return piece;
}

model::OwnAdhesive typed(double potLife_min) {
    return {.id = "typed", .potLife_s = 60 * potLife_min, .openTime_s = 100 * 60, .openTimeAt_C = 20};
}

struct Made {
    model::Piece piece = mild();
    model::Boat boat;

    Plan plan() const { return makePlan(piece, shopOf(boat)); }
    void use(const model::OwnAdhesive& own) {
        boat.adhesives = {own};
        piece.glue.adhesive = own.id;
    }
};

using Change = std::function<void(Made&)>;

// The code is there after `amiss` and not after `allRight`.
Finding appearsJustWith(Code code, const Change& allRight, const Change& amiss) {
    Made fine;
    allRight(fine);
    EXPECT_FALSE(find(fine.plan(), code)) << code;
    Made wrong;
    amiss(wrong);
    const std::optional<Finding> found = find(wrong.plan(), code);
    EXPECT_TRUE(found) << code;
    return found.value_or(Finding{});
}

TEST(GlueFindings, OnAMildDayOnlyTheFullBatchIsReported) {
    const Plan plan = Made{}.plan();
    std::set<Code> codes;
    for (const Finding& finding : plan.findings) {
        if (aboutOf(finding.code) == About::glue) codes.insert(finding.code);
    }
    EXPECT_EQ(codes, std::set<Code>{Code::fullCupSmokes});
}

TEST(GlueFindings, BelowTheGluesLeastTemperatureIsAStop) {
    const Finding found = appearsJustWith(
        Code::tooColdForGlue, [](Made& made) { made.piece.glue.air_C = made.piece.glue.airOverNight_C = 15; },
        [](Made& made) { made.piece.glue.air_C = 14.9; });
    EXPECT_EQ(found.severity, Severity::stop);
    EXPECT_DOUBLE_EQ(found.value, 14.9);
    EXPECT_DOUBLE_EQ(found.limit, 15);
    EXPECT_EQ(
        english(found),
        "The air is at 14.9 \u00b0C; Epoxy 2:1 (about 25 min) needs 15 \u00b0C. Use a faster glue, or warm wood, glue "
        "and shed.");
}

TEST(GlueFindings, ANightBelowItIsACautionThatATentMends) {
    const Finding found = appearsJustWith(
        Code::nightTooCold, [](Made& made) { made.piece.glue.airOverNight_C = 15; },
        [](Made& made) { made.piece.glue.airOverNight_C = 14; });
    EXPECT_EQ(found.severity, Severity::caution);
    EXPECT_DOUBLE_EQ(found.value, 14);
    EXPECT_DOUBLE_EQ(found.text.args[0].value, 14);
    EXPECT_TRUE(details(found, texts::tentCaution));
    Made tented;
    tented.piece.glue.airOverNight_C = 8;
    tented.piece.glue.tent = {0, 48 * 3600.0, 25, {}};
    EXPECT_FALSE(find(tented.plan(), Code::nightTooCold));
}

TEST(GlueFindings, ADayAndNightInWhichItNeverCuresIsAStop) {
    const Finding found = appearsJustWith(
        Code::neverCures, [](Made& made) { made.piece.glue.air_C = 15; },  // it cures by day
        [](Made& made) { made.piece.glue.air_C = made.piece.glue.airOverNight_C = 14; });
    EXPECT_EQ(found.severity, Severity::stop);
    EXPECT_TRUE(found.text.is(texts::neverCures));
}

TEST(GlueFindings, AboveThirtyDegreesTheDayIsHot) {
    const Finding found = appearsJustWith(
        Code::hotDay, [](Made& made) { made.piece.glue.air_C = 30; }, [](Made& made) { made.piece.glue.air_C = 30.5; });
    EXPECT_EQ(found.severity, Severity::caution);
    EXPECT_DOUBLE_EQ(found.limit, 30);
}

// 20 C: three kelvin above the dew point at 82.9 % (dew point 17.0 C).
TEST(GlueFindings, WithinThreeKelvinOfTheDewPointIsACaution) {
    EXPECT_NEAR(glue::dewPoint(20, 0.8289), 17, 0.01);
    const auto humid = [](double humidity) {
        return [humidity](Made& made) {
            made.piece.glue.humidity = humidity;
            made.piece.glue.airOverNight_C = 20;
        };
    };
    const Finding found = appearsJustWith(Code::nearDewPoint, humid(0.826), humid(0.832));
    EXPECT_DOUBLE_EQ(found.limit, 3);
    EXPECT_LT(found.value, 3);
    EXPECT_GT(found.value, 2.9);
    EXPECT_EQ(found.text.args[1].value, 17);                             // whole degrees
    EXPECT_NEAR(found.text.args[2].value, 20 - found.value + 3, 1e-12);  // what it shall be warmed to
}

TEST(GlueFindings, WoodAsColdAsTheNightThatSweatsInTheDaysAirIsReported) {
    // 20 C at 55 %: dew point 10.7 C, so wood below 13.7 C.
    const double dew_C = glue::dewPoint(20, 0.55);
    const Finding found = appearsJustWith(
        Code::coldWoodSweats, [dew_C](Made& made) { made.piece.glue.airOverNight_C = dew_C + 3.05; },
        [dew_C](Made& made) { made.piece.glue.airOverNight_C = dew_C + 2.95; });
    EXPECT_EQ(found.severity, Severity::note);
    EXPECT_NEAR(found.value, 2.95, 1e-9);
}

TEST(GlueFindings, WoodAboveTwelvePerCentIsTooWetForEpoxyAlone) {
    const Finding found = appearsJustWith(
        Code::woodWetForGlue, [](Made& made) { made.piece.stack.moisture = 0.12; },
        [](Made& made) { made.piece.stack.moisture = 0.125; });
    EXPECT_EQ(found.severity, Severity::caution);
    EXPECT_NEAR(found.value, 12.5, 1e-9);
    Made other;
    other.piece.stack.moisture = 0.14;
    other.piece.glue.adhesive = "polyurethane_one_part";
    EXPECT_FALSE(find(other.plan(), Code::woodWetForGlue));
}

TEST(GlueFindings, AScaleTooCoarseForTheRatioIsReported) {
    const Finding found = appearsJustWith(
        Code::ratioRounded, [](Made& made) { made.piece.glue.scaleReads_kg = 0.001; },
        [](Made& made) { made.piece.glue.scaleReads_kg = 0.1; });
    EXPECT_GT(found.value, 3);
    EXPECT_DOUBLE_EQ(found.limit, 3);
}

TEST(GlueFindings, ThinningIsReported) {
    const Finding found = appearsJustWith(
        Code::thinned, [](Made&) {}, [](Made& made) { made.piece.glue.thinner = 0.05; });
    EXPECT_DOUBLE_EQ(found.text.args[0].value, 0.05);
    EXPECT_NE(textOf(found, inMillimetres).find("no flame"), std::string::npos);
}

// Mixing takes four minutes and there is a face to be spread: a cup that lasts two at 25 C is gone before.
TEST(GlueFindings, ACupThatIsNotUsedUpInTimeIsAStop) {
    const Finding found = appearsJustWith(
        Code::cupGoesOff, [](Made& made) { made.use(typed(30)); }, [](Made& made) { made.use(typed(2)); });
    EXPECT_EQ(found.severity, Severity::stop);
    EXPECT_GT(found.value, found.limit);
    EXPECT_TRUE(found.text.is(texts::batchLate));
    EXPECT_EQ(found.text.args[0].value, 1);
    EXPECT_DOUBLE_EQ(found.text.args[1].value, 60 * found.value);
    EXPECT_DOUBLE_EQ(found.text.args[2].value, 60 * found.limit);
    EXPECT_TRUE(details(found, texts::batchGoesOff));
    EXPECT_TRUE(details(found, texts::skinCaution));
}

// One for all batches of a piece, a constant caution; its words carry the range, to ten degrees.
TEST(GlueFindings, BatchesThatMaySmokeAreReportedOnceWithTheirRange) {
    Made made;
    made.piece.stack.strips[0].count = 12;  // several cups
    for (const double waste : {0.05, 1.0}) {
        made.piece.glue.waste = waste;
        const Plan plan = made.plan();
        ASSERT_GT(plan.day.glue.batches.size(), 2u);
        EXPECT_EQ(std::ranges::count(plan.findings, Code::fullCupSmokes, &Finding::code), 1);
        const Finding found = whole(plan, Code::fullCupSmokes);
        EXPECT_EQ(levelOf(found), Level::safety);
        EXPECT_TRUE(found.text.is(waste < 0.5 ? texts::batchSmokes : texts::leftoverSmokes));
        const Arg& full = found.text.args[waste < 0.5 ? 0 : 2];
        EXPECT_EQ(full.kind, Arg::Kind::peak);
        EXPECT_NEAR(full.value, found.value, 5);
        EXPECT_LT(full.beside, full.value);
        EXPECT_TRUE(details(found, texts::fireRules));
        EXPECT_DOUBLE_EQ(found.value, 10 * std::round(found.value / 10));
        EXPECT_GT(found.value, glue::smokes_C);
        EXPECT_DOUBLE_EQ(found.limit, glue::smokes_C);
    }
    // A glue that does not heat itself does not.
    Made cool;
    cool.piece.glue.adhesive = "urea";
    cool.piece.glue.waste = 1;
    EXPECT_FALSE(find(cool.plan(), Code::fullCupSmokes));
    // A little in a tray sheds its heat.
    Made tray;
    tray.piece.stack.strips[0].count = 2;
    tray.piece.glue.vessel = model::Vessel::tray;
    tray.piece.glue.cup_m3 = 3e-3;
    tray.use(typed(90));
    EXPECT_FALSE(find(tray.plan(), Code::fullCupSmokes));
}

TEST(GlueFindings, ACupOfWhichMoreThanSeventyPerCentIsUsedIsACautionWithWhatMendsIt) {
    const Finding found = appearsJustWith(
        Code::cupGoesOff, [](Made& made) { made.use(typed(30)); }, [](Made& made) { made.use(typed(4.5)); });
    EXPECT_EQ(found.severity, Severity::caution);
    EXPECT_TRUE(details(found, texts::batchLasts));
    // What mends it is the line's advice; all that was tried is in the details.
    const Message& use = found.text.args[3].messages.front();
    EXPECT_TRUE(use.is(texts::useSmallerBatches) || use.is(texts::useTray) || use.is(texts::useGlue)) << english(found);
    const std::string all = english(found);
    EXPECT_TRUE(details(found, texts::batchMended)) << all;
    EXPECT_NE(all.find("Epoxy 2:1 (about 50 min), which lasts "), std::string::npos) << all;
    EXPECT_NE(all.find("batches of "), std::string::npos) << all;
    EXPECT_NE(all.find("a tray (lasts "), std::string::npos) << all;
}

TEST(GlueFindings, ALineThatIsNotFilledIsStarved) {
    const Finding found = appearsJustWith(
        Code::starvedJoint, [](Made&) {}, [](Made& made) { made.piece.stack.glueLine_m = 0.4e-3; });
    EXPECT_EQ(found.severity, Severity::caution);
    EXPECT_NEAR(found.value, 410, 1e-9);
    EXPECT_GT(found.limit, 450);
    EXPECT_NEAR(found.text.args[0].value, 0.410, 1e-12);
}

// What nobody has said is no risk yet.
TEST(GlueFindings, TheNightThatIsAssumedRaisesNothing) {
    Made untouched;
    untouched.piece.glue.airOverNight_C = model::Glue{}.airOverNight_C;
    untouched.piece.glue.air_C = 18;
    const Plan plan = untouched.plan();
    EXPECT_LT(plan.day.glue.cure.leastAir_C, plan.day.glue.adhesive.least_C);
    EXPECT_FALSE(find(plan, Code::nightTooCold));
    EXPECT_FALSE(find(plan, Code::coldWoodSweats));
    untouched.piece.glue.airOverNight_C = 9.5;
    EXPECT_TRUE(find(untouched.plan(), Code::nightTooCold));
    EXPECT_TRUE(find(untouched.plan(), Code::coldWoodSweats));
}

TEST(GlueFindings, APieceOfOneStripOnAFormHasNone) {
    Made single;
    single.piece.stack.strips[0].count = 1;
    single.piece.glue.air_C = 2;
    for (const Finding& finding : single.plan().findings)
        EXPECT_NE(aboutOf(finding.code), About::glue) << codeWord(finding.code);
}

// The pieces of the samples, whatever else is found of them.
TEST(GlueFindings, WithThoseOfFormAndDayAreWholeLinesOfTheSamples) {
    int lines = 0;
    for (const char* file : {"/marram.fayline", "/marram_in_place.fayline", "/marram_misread.fayline"}) {
        const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES) + file);
        for (const model::Piece& piece : boat.pieces) {
            for (const Finding& finding : makePlan(piece, shopOf(boat)).findings) {
                const About about = aboutOf(finding.code);
                if (about != About::form && about != About::glue && about != About::schedule) continue;
                expectWholeLine(finding);
                ++lines;
            }
        }
    }
    EXPECT_GT(lines, 20);
}

// What no plan can be made of: place, what is wrong, and what would be accepted.
TEST(GlueFindings, WhatCannotBeMixedIsToldInPlainWords) {
    const auto told = [](const Change& change) {
        Made made;
        change(made);
        try {
            made.plan();
        } catch (const units::InputError& error) {
            EXPECT_FALSE(error.accepted().empty());
            return std::string(error.what());
        }
        return std::string("accepted");
    };
    const auto has = [&](const Change& change, const std::string& path, const std::string& accepted) {
        const std::string text = told(change);
        EXPECT_TRUE(text.starts_with(path + ": ")) << text;
        EXPECT_NE(text.find(accepted), std::string::npos) << text;
    };
    has([](Made& made) { made.use(typed(0)); }, "glue.adhesive.pot_life_min", "above 0");
    has(
        [](Made& made) {
            model::OwnAdhesive own = typed(30);
            own.partsByVolume = own.partsByWeight = {0, 1};
            made.use(own);
        },
        "glue.adhesive.parts_by_volume", "[2, 1]");
    has(
        [](Made& made) {
            model::OwnAdhesive own = typed(30);
            own.partsByVolume = own.partsByWeight = {1, 0};
            made.use(own);
        },
        "glue.adhesive.parts_by_volume", "[2, 1]");
    has([](Made& made) { made.piece.glue.cup_m3 = 0.5e-6; }, "glue.cup_ml", "larger vessel");
    has([](Made& made) { made.piece.crew.hands = 0; }, "crew.hands", "from 1 to 1000");
    has([](Made& made) { made.piece.glue.adhesive = "treacle"; }, "glue.adhesive", "epoxy_2_1_slow");
    has([](Made& made) { made.piece.glue.humidity = 1.3; }, "glue.humidity_pct", "100");
    has([](Made& made) { made.piece.crew.rates.wetOut_m2_s = 0; }, "crew.rates.wet_out_m2_min", "above 0");
}

// The same in the file: it names the key with its unit.
TEST(GlueFindings, AFileWithSuchValuesIsToldWithTheirKeys) {
    const auto ownWith = [](const std::string& keys) {
        return R"({"fayline": 1, "adhesives": [{"id": "typed", )" + keys + R"(}], "pieces": []})";
    };
    const auto names = [](const std::string& text, const std::string& path) {
        const std::string error = io::errorOf(text);
        EXPECT_TRUE(error.starts_with(path + ": ")) << error;
    };
    names(ownWith(R"("pot_life_min": 0)"), "adhesives[0].pot_life_min");
    names(ownWith(R"("parts_by_volume": [0, 1])"), "adhesives[0].parts_by_volume[0]");
    names(io::pieceWith(R"("crew": {"hands": 0})"), "pieces[0].crew.hands");
    names(io::pieceWith(R"("crew": {"rates": {"spread_m2_min": 0}})"), "pieces[0].crew.rates.spread_m2_min");
    names(io::pieceWith(R"("glue": {"cup_ml": 0})"), "pieces[0].glue.cup_ml");
}

}  // namespace glue_findings_test
}  // namespace fayline::plan
