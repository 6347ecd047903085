// What earlier pieces say about springback is told, and used only when the piece says so.
#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "core/export/print.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/springing_texts.hpp"
#include "core/plan/parts.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/whole_line.hpp"

namespace fayline::plan {
namespace learned_findings_test {

const std::atomic<bool> goOn = false;

model::Piece beam(const std::string& name) {
    model::Piece piece = made::bend(0.9, 1.0);
    piece.name = name;
    piece.stack.strips[0].count = 3;
    return piece;
}

// `piece` as it was let go with this factor, read days after: chords and rise of the shape that its own form lets go
// to.
model::Piece letGo(model::Piece piece, double factor) {
    model::Piece opened = piece;
    opened.form.allowsForSpringback = false;
    opened.form.springbackFactor = factor;
    const Plan plan = makePlan(opened, made::shop());
    const laminate::Opening& opens = plan.form.parts.front().opens;
    model::LetGo reading{.after_s = 5 * 86400,
                         .chordForm_m = opens.chordFrom_m,
                         .chordPiece_m = opens.chordTo_m,
                         .risePiece_m = opens.riseTo_m};
    model::Record record;
    record.when = "2026-05-02T08:30";
    record.letGo.push_back(reading);
    piece.form.allowsForSpringback = false;
    piece.record.push_back(record);
    return piece;
}

model::Boat boatOf(const std::vector<model::Piece>& pieces) {
    model::Boat boat;
    boat.pieces = pieces;
    return boat;
}

// With what deepen adds of the record, and without what it adds of the rest, which takes its time.
Plan learnedPlan(const model::Boat& boat) {
    const Shop shop = shopOf(boat);
    const model::Piece& piece = boat.pieces[0];
    Plan plan = makePlan(piece, shop);
    plan.learned = learnedOf(shop, goOn);
    plan.sprungHome = sprungHomeOf(piece, shop, plan);
    plan.findings = allFindings(piece, shop, plan);
    return plan;
}

TEST(Shop, HoldsTheRecordedPiecesAndNoOther) {
    model::Piece dry = beam("Dry");
    dry.record.push_back({});
    const Shop shop = shopOf(boatOf({beam("New"), letGo(beam("Old"), 1.2), dry}));
    ASSERT_EQ(shop.recorded.size(), 1U);
    EXPECT_EQ(shop.recorded[0].name, "Old");
    EXPECT_TRUE(shop.measured.empty());
}

TEST(LearnedFindings, TheRecordIsToldAndNotUsed) {
    const model::Boat boat = boatOf({beam("New"), letGo(beam("Old"), 1.4), letGo(beam("Older"), 1.4)});
    const Plan plan = learnedPlan(boat);
    ASSERT_TRUE(plan.learned);
    EXPECT_EQ(plan.learned->pieces, 2);
    // The fair line of rounded points lies a hair off; the reading knows the form by its chord.
    EXPECT_NEAR(plan.learned->mean, 1.4, 0.01);
    const Finding told = whole(plan, Code::springbackLearned);
    EXPECT_EQ(told.severity, Severity::note);
    EXPECT_NEAR(told.value, *plan.learned->factor, 1e-12);
    EXPECT_EQ(told.limit, 1);
    EXPECT_TRUE(told.text.is(texts::learnedUnused));
    ASSERT_GE(told.details.size(), 3U);
    EXPECT_TRUE(told.details[0].is(texts::learnedMean));
    EXPECT_EQ(told.details[0].count, 2);
    EXPECT_TRUE(told.details[2].is(texts::learnedFew));
    const Plan without = learnedPlan(boatOf({beam("New")}));
    EXPECT_FALSE(without.learned);
    EXPECT_EQ(plan.form.parts[0].ratioAtTightest, without.form.parts[0].ratioAtTightest);
}

TEST(LearnedFindings, AFactorBeyondTheRangeOfTheRecordIsACaution) {
    model::Boat boat = boatOf({beam("New"), letGo(beam("Old"), 1.0)});
    for (int i = 0; i < 6; ++i) boat.pieces.push_back(letGo(beam("Older"), 1.0));
    boat.pieces[0].form.springbackFactor = 3;
    const Plan plan = learnedPlan(boat);
    const Finding told = whole(plan, Code::springbackLearned);
    EXPECT_EQ(told.severity, Severity::caution);
    EXPECT_TRUE(told.text.is(texts::learnedOutside));
    EXPECT_TRUE(details(told, texts::learnedSome));
}

TEST(LearnedFindings, AnAdoptedFactorIsSaidToBeTheRecords) {
    model::Boat boat = boatOf({beam("New"), letGo(beam("Old"), 1.4)});
    boat.pieces[0].form.springbackFactor = *learnedPlan(boat).learned->factor;
    EXPECT_TRUE(find(learnedPlan(boat), Code::springbackLearned)->text.is(texts::learnedAdopted));
}

TEST(LearnedFindings, AReadingOfAPieceWithoutALineIsLeftOutAndSaid) {
    model::Boat boat = boatOf({beam("New"), letGo(beam("Old"), 1.4)});
    boat.pieces[1].line.points.resize(1);
    const Plan plan = learnedPlan(boat);
    ASSERT_TRUE(plan.learned);
    EXPECT_FALSE(plan.learned->factor);
    const Finding told = whole(plan, Code::springbackLeftOut);
    EXPECT_NE(english(told).find("Old is left out: no line can be made of it"), std::string::npos) << english(told);
    EXPECT_FALSE(find(plan, Code::springbackLearned));
}

TEST(LearnedFindings, APieceThatWasReadIsSprungHomeByItsOwnReading) {
    const model::Boat boat = boatOf({letGo(beam("Old"), 1.4)});
    const Plan plan = learnedPlan(boat);
    ASSERT_TRUE(plan.sprungHome);
    EXPECT_TRUE(plan.sprungHome->measured);
    EXPECT_NEAR(plan.sprungHome->factor, 1.4, 0.01);
    const Finding told = whole(plan, Code::springHome);
    EXPECT_TRUE(told.text.is(texts::springHome) || told.text.is(texts::springHomeTooMuch));
    EXPECT_NE(english(told).find("As read 5 days after it came off, the end stands "), std::string::npos)
        << english(told);
    EXPECT_TRUE(details(told, texts::pullMiddle));
    // A form that allows for it leaves nothing to spring home as foretold.
    EXPECT_FALSE(find(learnedPlan(boatOf({beam("New")})), Code::springHome));
}

TEST(LearnedFindings, TwoPiecesOfOneNameKeepTheirOwnReadings) {
    model::Boat boat = boatOf({letGo(beam("Beam"), 1.4), letGo(beam("Beam"), 0.6)});
    EXPECT_NEAR(learnedPlan(boat).sprungHome->factor, 1.4, 0.01);
    // By their ids, whatever they are called; a copy that was not read goes by no other's reading.
    boat.pieces[0].id = "a";
    boat.pieces[1].id = "b";
    EXPECT_NEAR(learnedPlan(boat).sprungHome->factor, 1.4, 0.01);
    boat.pieces[0].record.clear();
    const Plan plan = learnedPlan(boat);
    EXPECT_TRUE(!plan.sprungHome || !plan.sprungHome->measured);
}

TEST(LearnedFindings, LaterEditsDoNotRewriteWhatWasMeasured) {
    model::Piece piece = letGo(beam("Old"), 1.4);
    model::Piece old = piece;
    piece.record[0].on = laminate::measuredOn(piece);
    piece.stack.strips[0].count = 6;
    piece.stack.strips[0].thickness_m = 0.004;
    old.stack = piece.stack;
    const Plan plan = learnedPlan(boatOf({piece}));
    ASSERT_EQ(plan.learned->readings.size(), 1U);
    EXPECT_NEAR(plan.learned->mean, 1.4, 0.01);
    EXPECT_FALSE(plan.learned->readings[0].asItStands);
    EXPECT_FALSE(details(*find(plan, Code::springbackLearned), texts::againstAsItIs));
    // What it takes to spring it home is that of the piece which was read.
    const Plan then = learnedPlan(boatOf({letGo(beam("Old"), 1.4)}));
    ASSERT_TRUE(plan.sprungHome && then.sprungHome);
    EXPECT_NEAR(plan.sprungHome->moment_N_m, then.sprungHome->moment_N_m, 1e-9 * then.sprungHome->moment_N_m);
    // A record that keeps no copy goes by the piece as it stands, which is said.
    const Plan stands = learnedPlan(boatOf({old}));
    EXPECT_TRUE(stands.learned->readings.empty() || std::abs(stands.learned->mean - 1.4) > 0.1);
    const Finding told = whole(then, Code::springbackLearned);
    EXPECT_TRUE(details(told, texts::againstAsItIs));
}

TEST(LearnedFindings, ArePrintedWithTheForm) {
    const auto printed = nlohmann::json::parse(printPlans(boatOf({beam("New"), letGo(beam("Old"), 1.4)})));
    const auto& learned = printed["pieces"][0]["form"]["learned"];
    EXPECT_EQ(learned["pieces"], 1);
    EXPECT_EQ(learned["readings"].size(), 1U);
    EXPECT_NEAR(learned["readings"][0]["factor"].get<double>(), 1.4, 0.01);
    EXPECT_EQ(learned["readings"][0]["after_h"], 120);
    EXPECT_FALSE(learned["how_far"].get<std::string>().empty());
    EXPECT_FALSE(printed["pieces"][0]["form"].contains("spring_home"));
    EXPECT_TRUE(printed["pieces"][1]["form"].contains("spring_home"));
}

}  // namespace learned_findings_test
}  // namespace fayline::plan
