#include "core/plan/plan.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstring>

#include "core/export/print.hpp"
#include "core/plan/findings/answer_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"
#include "tests/refusal.hpp"

namespace fayline::plan {
namespace plan_test {

TEST(MakePlan, TwiceOnOneInputGivesTheSameBits) {
    const model::Piece piece = made::stem();
    const Plan one = makePlan(piece, made::shop());
    const Plan other = makePlan(piece, made::shop());
    ASSERT_EQ(one.stack.at_m.size(), other.stack.at_m.size());
    for (std::size_t j = 0; j < one.stack.at_m.size(); ++j) {
        ASSERT_TRUE(sameBits(one.stack.at_m[j], other.stack.at_m[j]));
        for (std::size_t i = 0; i < one.stack.faces.size(); ++i) {
            ASSERT_TRUE(sameBits(one.stack.faces[i][j].x_m, other.stack.faces[i][j].x_m));
            ASSERT_TRUE(sameBits(one.stack.faces[i][j].y_m, other.stack.faces[i][j].y_m));
        }
    }
    for (std::size_t i = 0; i < one.stack.strips.size(); ++i) {
        EXPECT_TRUE(sameBits(one.stack.strips[i].strain, other.stack.strips[i].strain));
        EXPECT_TRUE(sameBits(one.stack.strips[i].cutLength_m, other.stack.strips[i].cutLength_m));
    }
    ASSERT_EQ(one.findings.size(), other.findings.size());
    for (std::size_t i = 0; i < one.findings.size(); ++i) {
        EXPECT_TRUE(sameBits(one.findings[i].value, other.findings[i].value));
        EXPECT_EQ(one.findings[i].text, other.findings[i].text);
    }
}

using made::heldStem;

TEST(MakePlan, HoldingTwiceOnOneInputGivesTheSameBitsStudyIncluded) {
    const model::Piece piece = heldStem();
    const std::atomic<bool> stop = false;
    const Plan& one = made::studied(piece);
    const Plan other = *deepen(piece, made::shop(), makePlan(piece, made::shop()), stop);
    ASSERT_FALSE(one.holding.held.samples.empty());
    ASSERT_EQ(one.holding.held.samples.size(), other.holding.held.samples.size());
    for (std::size_t i = 0; i < one.holding.held.samples.size(); ++i) {
        ASSERT_TRUE(sameBits(one.holding.held.samples[i].gap_m, other.holding.held.samples[i].gap_m));
        ASSERT_TRUE(sameBits(one.holding.held.samples[i].pressure_Pa, other.holding.held.samples[i].pressure_Pa));
    }
    ASSERT_EQ(one.holdingStudy->closing.size(), piece.holding.stations.size());
    for (std::size_t i = 0; i < one.holdingStudy->closing.size(); ++i) {
        EXPECT_TRUE(sameBits(one.holdingStudy->closing[i].pull_N, other.holdingStudy->closing[i].pull_N));
    }
    ASSERT_EQ(one.holdingStudy->proposal.stations.size(), other.holdingStudy->proposal.stations.size());
    for (std::size_t i = 0; i < one.holdingStudy->proposal.stations.size(); ++i) {
        EXPECT_TRUE(
            sameBits(one.holdingStudy->proposal.stations[i].pull_N, other.holdingStudy->proposal.stations[i].pull_N));
    }
}

// A clamp moved by 2 mm, begun from the plan before: gaps within a hundredth of a micrometre, pulls within a millionth.
TEST(MakePlan, BegunFromThePlanBeforeTheHoldingIsTheSame) {
    model::Piece piece = heldStem();
    const Plan before = makePlan(piece, made::shop());
    piece.holding.stations[3].at_m += 0.002;
    const Plan warm = makePlan(piece, made::shop(), &before);
    const Plan cold = makePlan(piece, made::shop());
    ASSERT_EQ(warm.holding.held.samples.size(), cold.holding.held.samples.size());
    for (std::size_t i = 0; i < warm.holding.held.samples.size(); ++i) {
        EXPECT_NEAR(warm.holding.held.samples[i].gap_m, cold.holding.held.samples[i].gap_m, 1e-8);
    }
    for (std::size_t i = 0; i < warm.holding.held.stations.size(); ++i) {
        EXPECT_NEAR(warm.holding.held.stations[i].pull_N, cold.holding.held.stations[i].pull_N, 2500e-6);
    }
}

// A line whose offsets stand as they stood is taken over, to the bit, with what is known of them.
TEST(MakePlan, TheSameOffsetsAreNotFairedTwice) {
    model::Piece piece = heldStem();
    piece.line.points[5].x_m += 0.0254;
    EXPECT_FALSE(makePlan(piece, made::shop()).line.misreadSought);
    const Plan& before = made::studied(piece, {Study::misread});
    ASSERT_TRUE(before.line.misreadSought);
    ASSERT_FALSE(before.line.misread.suspects.empty());
    EXPECT_EQ(before.line.misread.suspects.front().point, 5);

    piece.holding.stations[3].at_m += 0.002;
    const Plan warm = makePlan(piece, made::shop(), &before);
    EXPECT_TRUE(warm.line.misreadSought);
    EXPECT_EQ(warm.line.misread.suspects.size(), before.line.misread.suspects.size());
    const Plan cold = makePlan(piece, made::shop());
    ASSERT_EQ(warm.line.samples.size(), cold.line.samples.size());
    for (std::size_t i = 0; i < warm.line.samples.size(); ++i) {
        EXPECT_TRUE(sameBits(warm.line.samples[i].x_m, cold.line.samples[i].x_m));
        EXPECT_TRUE(sameBits(warm.line.samples[i].curvature_per_m, cold.line.samples[i].curvature_per_m));
    }

    piece.line.points[5].x_m -= 0.0254;
    EXPECT_FALSE(makePlan(piece, made::shop(), &before).line.misreadSought);
}

TEST(Deepen, StoppedGivesNothing) {
    const model::Piece piece = heldStem();
    const Plan plan = makePlan(piece, made::shop());
    const std::atomic<bool> stop = true;
    EXPECT_FALSE(deepen(piece, made::shop(), plan, stop).has_value());
}

// Hand check (D): nine quarter-inch strips on a line whose tightest radius is R: strip i is strained t / 2 R_i with
// R_i = R + (i - 1/2) t + (i - 1) g.
TEST(MakePlan, StrainOfEachStripOfTheStemIsThatOfItsRadius) {
    const Plan plan = makePlan(made::stem(), made::shop());
    const double radius = 1 / std::abs(plan.line.tightest.curvature_per_m);
    EXPECT_NEAR(radius, 1 / 1.613, 0.04 / 1.613);  // of the rounded offsets, within 4 % of the true curve
    for (const laminate::Strip& strip : plan.stack.strips) {
        const double own = radius + (strip.place - 0.5) * 0.00635 + (strip.place - 1) * 0.0003;
        EXPECT_NEAR(strip.strain, 0.00635 / (2 * own), 1e-5 * strip.strain) << strip.place;
    }
}

TEST(MakePlan, SamplesRunEveryTenMillimetresToBothEnds) {
    const Plan plan = makePlan(made::stem(), made::shop());
    const auto& samples = plan.line.samples;
    EXPECT_EQ(samples.front().at_m, 0);
    EXPECT_NEAR(samples.back().at_m, plan.line.fair.line.length(), 1e-12);
    for (std::size_t i = 1; i + 1 < samples.size(); ++i)
        EXPECT_NEAR(samples[i].at_m, 0.01 * static_cast<double>(i), 1e-9);
}

TEST(MakePlan, WhatIsTakenOffMovesTheLineAwayFromTheStrips) {
    model::Piece piece = made::pieceOn(made::straight(2.0), 9);  // along +x, so its left is +y
    piece.line.takeOff_m = 0.02;
    piece.line.stripsOn = model::Side::left;
    EXPECT_NEAR(makePlan(piece, made::shop()).line.fair.line.at(1.0).y_m, -0.02, 1e-6);
    piece.line.stripsOn = model::Side::right;
    EXPECT_NEAR(makePlan(piece, made::shop()).line.fair.line.at(1.0).y_m, 0.02, 1e-6);
}

TEST(MakePlan, WithoutPinsTheStackIsHeldWhereTheClosingBegins) {
    model::Piece piece = made::bend(1.0, 1.0);
    const auto held = [&](model::From from) {
        piece.holding.from = from;
        return makePlan(piece, made::shop()).stack.stagger.pinnedAt_m;
    };
    EXPECT_EQ(held(model::From::start), 0);
    EXPECT_NEAR(held(model::From::middle), 0.5, 1e-4);
    EXPECT_NEAR(held(model::From::end), 1.0, 1e-4);
}

TEST(MakePlan, AnswersNineQuestionsInOrderAndSaysWhichAreBeingCalculated) {
    const Plan plan = makePlan(made::stem(), made::shop());
    const char* words[] = {"Line", "Strips", "Form", "Holding", "Glue", "Time", "Stock", "Paper", "Record"};
    ASSERT_EQ(plan.answers.size(), 9u);
    for (std::size_t i = 0; i < 9; ++i) {
        const Answer& answer = plan.answers[i];
        EXPECT_STREQ(questionName(answer.question), words[i]);
        EXPECT_EQ(static_cast<std::size_t>(answer.question), i);
        EXPECT_EQ(answerText(answer, inMillimetres).back(), '.');
        EXPECT_EQ(answer.figures.empty(), answerText(answer, inMillimetres).starts_with("Being calculated"))
            << answerText(answer, inMillimetres);
    }
}

// The first sentence is read at a glance: verdict, number, place.
TEST(MakePlan, TheSentenceOfAnAnswerIsOfNinetyLettersAtMost) {
    const Plan plan = made::studied(made::stem());
    for (const Answer& answer : plan.answers) {
        if (answer.question == Question::paper) continue;  // it lists the papers
        EXPECT_LE(writeText(answer.sentence, inMillimetres).size(), 90u) << writeText(answer.sentence, inMillimetres);
    }
}

// A piece can be glued when nothing has to be done first and nothing is left open.
TEST(MakePlan, TheVerdictCountsCausesAndNamesWhatIsOpen) {
    const Plan live = makePlan(made::stem(), made::shop());
    EXPECT_TRUE(verdictOf(live).text.is(texts::beingChecked));
    const Plan bare = made::studied(made::stem());
    EXPECT_NE(writeText(verdictOf(bare).text, inMillimetres).find("how it is held"), std::string::npos);
    Plan sound = bare;
    sound.findings.clear();
    sound.holding.stations.own().resize(1);
    EXPECT_EQ(writeText(verdictOf(sound).text, inMillimetres), "Ready to glue");
    sound.findings = {found(Code::stripBreaks), found(Code::chanceOfBreaking), found(Code::bendForLoad),
                      found(Code::nothingToPull), found(Code::fullCupSmokes)};
    sound.findings[1].root = 0;
    const Verdict verdict = verdictOf(sound);
    EXPECT_EQ(verdict.count, (std::array<int, 3>{1, 0, 1}));
    EXPECT_EQ(writeText(verdict.text, inMillimetres), "One thing first");
}

TEST(MakePlan, TheRecordsAnswerCountsGlueUpsAndDryFits) {
    model::Piece piece = made::stem();
    const auto answer = [&] {
        const Plan plan = makePlan(piece, made::shop());
        return plan.answers[static_cast<std::size_t>(Question::record)];
    };
    EXPECT_EQ(writeWithin(answer().figures, inMillimetres), "nothing yet");
    piece.record.emplace_back();
    piece.record.back().when = "2026-05-01T09:00";
    piece.record.back().dryFit = true;
    EXPECT_EQ(writeWithin(answer().figures, inMillimetres), "one dry fit");
    piece.record.emplace_back();
    piece.record.back().when = "2026-05-02T08:30";
    piece.record.back().letGo.resize(2);
    EXPECT_EQ(writeWithin(answer().figures, inMillimetres), "one glue-up and one dry fit");
    EXPECT_EQ(answerText(answer(), inMillimetres),
              "One glue-up and one dry fit, the last of 2026-05-02. How far it sprang back was read 2 times.");
}

TEST(MakePlan, TheStripsAnswerIsASentenceOfTheTrade) {
    Shop shop = made::shop();
    shop.display.lengths = units::LengthNotation::feetInchesEighths;
    model::Piece piece = made::bend(0.64, 1.5, {.count = 9});
    const Answer answer = makePlan(piece, shop).answers[1];
    EXPECT_EQ(writeWithin(answer.figures, inMillimetres), "9 x 1/4 in, 0.49 %");
    EXPECT_TRUE(answerText(answer, shop.display).starts_with("Nine strips of 1/4 in white oak bend cold, at "))
        << answerText(answer, shop.display);
    piece.stack.strips[0].thickness_m = 0.0254;
    const Answer thick = makePlan(piece, shop).answers[1];
    EXPECT_TRUE(answerText(thick, shop.display)
                    .starts_with("Nine strips of 1 in white oak do not go round: the strip on the form is at "))
        << answerText(thick, shop.display);
    EXPECT_EQ(thick.worst, Severity::stop);
}

TEST(MakePlan, MixedStripsAreNamedByWood) {
    model::Piece piece = made::bend(2.0, 1.0);
    model::Strips ash;
    ash.count = 1;
    ash.thickness_m = 0.004;
    ash.species = "ash_white";
    piece.stack.strips[0].count = 6;
    piece.stack.strips.push_back(ash);
    const Plan plan = makePlan(piece, made::shop());
    EXPECT_TRUE(answerText(plan.answers[1], inMillimetres)
                    .starts_with("Six strips of 6.35 mm white oak and one of 4 mm white ash bend cold, at "))
        << answerText(plan.answers[1], inMillimetres);
    EXPECT_TRUE(writeWithin(plan.answers[1].figures, inMillimetres).starts_with("6 x 6.35 mm + 1 x 4 mm, "))
        << writeWithin(plan.answers[1].figures, inMillimetres);
}

TEST(MakePlan, AStraightPieceHasAPlanToo) {
    const Plan plan = makePlan(made::pieceOn(made::straight(2.0), 7), made::shop());
    EXPECT_NE(answerText(plan.answers[0], inMillimetres).find("Straight"), std::string::npos)
        << answerText(plan.answers[0], inMillimetres);
    EXPECT_EQ(plan.stack.spares, 0);
}

TEST(MakePlan, WhatCannotBePlannedIsRefusedByItsPath) {
    const auto pathOf = [](const model::Piece& piece) {
        return made::refusedAt([&] { makePlan(piece, made::shop()); });
    };
    model::Piece piece = made::stem();
    EXPECT_EQ(pathOf(piece), "taken");
    piece.stack.strips[0].species = "oka";
    EXPECT_EQ(pathOf(piece), "stack.strips[0].species");
    piece = made::stem();
    piece.line.points.resize(2);
    EXPECT_EQ(pathOf(piece), "line.points");
    piece = made::stem();
    for (model::Point& point : piece.line.points) {
        point.x_m *= 1000;
        point.y_m *= 1000;
    }
    EXPECT_EQ(pathOf(piece), "line.points");
    piece = made::stem();
    piece.holding.stations = {model::Station{.at_m = 1e9}};
    EXPECT_EQ(pathOf(piece), "holding.stations[0].at_mm");
}

TEST(Wording, WoodsAreNamedAsTheyAreSaid) {
    const auto said = [](const std::string& name, bool own = false) {
        wood::Species wood{.name = name, .own = own};
        return woodName(wood);
    };
    EXPECT_EQ(said("White oak"), "white oak");
    EXPECT_EQ(said("Oak, white (Quercus alba)"), "white oak");
    EXPECT_EQ(said("Douglas-fir, coast"), "coast Douglas-fir");
    EXPECT_EQ(said("Mahogany, true (Honduras)"), "true mahogany");
    EXPECT_EQ(said("European larch"), "European larch");
    EXPECT_EQ(said("Port Orford cedar"), "Port Orford cedar");
    EXPECT_EQ(said("Yellow-poplar"), "yellow-poplar");
    EXPECT_EQ(said("Teak"), "teak");
    EXPECT_EQ(said("Teak from the yard", true), "Teak from the yard");
}

TEST(Wording, PlacesAreToldFromTheTrimLines) {
    units::Display display;
    EXPECT_EQ(placeText(0.624, 1.8, display), "624 mm from the start");
    EXPECT_EQ(placeText(-0.06, 1.8, display), "60 mm before the start");
    EXPECT_EQ(placeText(1.95, 1.8, display), "150 mm past the end");
    EXPECT_EQ(placeText(0, 1.8, display), "at the start");
    EXPECT_EQ(placeText(1.8, 1.8, display), "at the end");
    display.lengths = units::LengthNotation::feetInchesEighths;
    EXPECT_EQ(placeText(0.6985, 1.8, display), "2-3-4 from the start");
    EXPECT_EQ(spanText(0.0254 * 1.5, display), "1 1/2 in");
}

TEST(Wording, NumbersUpToTwelveAreWords) {
    EXPECT_EQ(numberWord(0), "no");
    EXPECT_EQ(numberWord(1), "one");
    EXPECT_EQ(numberWord(12), "twelve");
    EXPECT_EQ(numberWord(13), "13");
    EXPECT_EQ(listed({"a", "b", "c"}), "a, b and c");
}

}  // namespace plan_test
}  // namespace fayline::plan
