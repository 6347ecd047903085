// Two plans side by side: what is better, what is worse, which findings went and came.
#include "core/plan/compare.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "core/io/file.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace compare_test {

const QuestionCompared& rowOf(const Comparison& comparison, Question question) {
    return *std::ranges::find(comparison.questions, question, &QuestionCompared::question);
}

const FigureCompared* figureOf(const QuestionCompared& row, const std::string& name) {
    const auto found = std::ranges::find_if(
        row.figures, [&](const FigureCompared& figure) { return writeWithin(figure.name, inMillimetres) == name; });
    return found == row.figures.end() ? nullptr : &*found;
}

Judged exchanged(Judged judged) {
    return judged == Judged::better ? Judged::worse : judged == Judged::worse ? Judged::better : judged;
}

// The sample boat's stem, which has clamps, a glue and a crew.
model::Piece sampleStem() {
    return io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline")).pieces.front();
}

// About as deep, of strips of this thickness.
model::Piece ofThickness(model::Piece piece, double thickness_m) {
    model::Strips& strips = piece.stack.strips.front();
    const double depth_m = strips.count * strips.thickness_m;
    strips.thickness_m = thickness_m;
    strips.count = static_cast<int>(std::lround(depth_m / thickness_m));
    return piece;
}

TEST(Compare, APlanAgainstItselfIsAlikeInEverything) {
    const Plan& plan = made::studied(sampleStem());
    const Comparison same = compare(plan, plan);
    ASSERT_EQ(same.questions.size(), 9u);
    for (std::size_t i = 0; i < same.questions.size(); ++i) {
        EXPECT_EQ(same.questions[i].question, static_cast<Question>(i));
        EXPECT_EQ(same.questions[i].judged, Judged::alike) << i;
        EXPECT_FALSE(same.questions[i].figures.empty()) << i;
        for (const FigureCompared& figure : same.questions[i].figures) {
            EXPECT_EQ(figure.judged, Judged::alike);
            EXPECT_EQ(figure.first, figure.second);
        }
    }
    EXPECT_TRUE(same.findingsCompared);
    EXPECT_TRUE(same.gone.empty());
    EXPECT_TRUE(same.come.empty());
}

TEST(Compare, ThinnerStripsAreBetterInStripsAndWorseInTime) {
    const model::Piece thick = sampleStem();
    const model::Piece thin = ofThickness(thick, 0.00635 / 2);
    const Shop shop = made::shop();
    const Comparison made = compare(makePlan(thick, shop), makePlan(thin, shop));
    const QuestionCompared& strips = rowOf(made, Question::strips);
    EXPECT_EQ(figureOf(strips, "bend, of breaking")->judged, Judged::better);
    EXPECT_EQ(strips.judged, Judged::better);
    const QuestionCompared& time = rowOf(made, Question::time);
    EXPECT_EQ(figureOf(time, "glue-up takes")->judged, Judged::worse);
    EXPECT_EQ(figureOf(time, "spare time")->judged, Judged::worse);
    EXPECT_EQ(time.judged, Judged::worse);
    EXPECT_EQ(rowOf(made, Question::glue).judged, Judged::worse);
    EXPECT_EQ(rowOf(made, Question::form).judged, Judged::better);
    EXPECT_EQ(rowOf(made, Question::line).judged, Judged::alike);
}

TEST(Compare, ExchangedBetterBecomesWorseAndGoneHasCome) {
    const Shop shop = made::shop();
    const Plan one = makePlan(sampleStem(), shop);
    const Plan other = makePlan(ofThickness(sampleStem(), 0.0127), shop);
    const Comparison forth = compare(one, other);
    const Comparison back = compare(other, one);
    for (std::size_t i = 0; i < forth.questions.size(); ++i) {
        EXPECT_EQ(forth.questions[i].judged, exchanged(back.questions[i].judged)) << i;
        ASSERT_EQ(forth.questions[i].figures.size(), back.questions[i].figures.size());
        for (std::size_t f = 0; f < forth.questions[i].figures.size(); ++f) {
            EXPECT_EQ(forth.questions[i].figures[f].judged, exchanged(back.questions[i].figures[f].judged));
            EXPECT_EQ(forth.questions[i].figures[f].first, back.questions[i].figures[f].second);
        }
    }
    const auto same = [](const Finding& a, const Finding& b) { return a.code == b.code && a.text == b.text; };
    EXPECT_TRUE(std::ranges::equal(forth.gone, back.come, same));
    EXPECT_TRUE(std::ranges::equal(forth.come, back.gone, same));
    EXPECT_GT(forth.come.size(), 0u);  // half-inch strips break
    EXPECT_EQ(countOf(forth.come, Code::stripBreaks), 1);
}

TEST(Compare, AMisreadOffsetPutRightLosesItsStop) {
    const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES "/marram_misread.fayline"));
    const Plan& misread = made::studied(boat);
    model::Boat right = boat;
    right.pieces.front() = sampleStem();
    const Plan& mended = made::studied(right);
    const Comparison made = compare(misread, mended);
    EXPECT_EQ(countOf(made.gone, Code::offsetMisread), 1);
    EXPECT_EQ(countOf(made.come, Code::offsetMisread), 0);
    const QuestionCompared& line = rowOf(made, Question::line);
    const FigureCompared* stops = figureOf(line, "stops");
    ASSERT_TRUE(stops);
    EXPECT_EQ(writeWithin(stops->first, inMillimetres), "1");
    EXPECT_EQ(writeWithin(stops->second, inMillimetres), "0");
    EXPECT_EQ(stops->judged, Judged::better);
    EXPECT_EQ(line.judged, Judged::better);
}

TEST(Compare, LeavesFindingsOutWhereOnlyOneSideIsStudied) {
    const model::Piece piece = sampleStem();
    const Plan& whole = made::studied(piece);
    const Plan live = makePlan(piece, made::shop());
    const Comparison made = compare(whole, live);
    EXPECT_FALSE(made.findingsCompared);
    EXPECT_TRUE(made.gone.empty());
    EXPECT_TRUE(made.come.empty());
    for (const QuestionCompared& row : made.questions) {
        EXPECT_EQ(row.judged, Judged::alike);
        EXPECT_FALSE(figureOf(row, "stops"));
        EXPECT_FALSE(figureOf(row, "cautions"));
    }
}

TEST(Compare, WhatOneSideDoesNotHaveIsDifferent) {
    model::Piece kept = sampleStem();
    kept.form.letGo = false;
    const Shop shop = made::shop();
    const Comparison made = compare(makePlan(sampleStem(), shop), makePlan(kept, shop));
    const QuestionCompared& form = rowOf(made, Question::form);
    const FigureCompared* springs = figureOf(form, "springback at the end");
    ASSERT_TRUE(springs);
    EXPECT_FALSE(springs->first.empty());
    EXPECT_TRUE(springs->second.empty());
    EXPECT_EQ(springs->judged, Judged::differs);
}

// A piece without clamps has no caution about them, and is no better held for that.
TEST(Compare, WhatIsNotHeldYetIsNoBetterHeld) {
    model::Piece bare = sampleStem();
    bare.holding.stations.clear();
    const Comparison made = compare(made::studied(sampleStem()), made::studied(bare));
    const QuestionCompared& holding = rowOf(made, Question::holding);
    EXPECT_EQ(holding.judged, Judged::differs);
    EXPECT_FALSE(holding.figures.empty());
    for (const FigureCompared& figure : holding.figures) {
        EXPECT_EQ(figure.judged, Judged::differs);
        EXPECT_TRUE(figure.second.empty());
    }
}

// Of figures that pull both ways the row says both.
TEST(Compare, SaysBothWhereSomeIsBetterAndSomeWorse) {
    const Shop shop = made::shop();
    const Plan before = makePlan(sampleStem(), shop);
    Plan after = before;
    after.day.margin_s = before.day.margin_s + 600;                                // more to spare
    after.day.gluings[0].run.closed_s = before.day.gluings[0].run.closed_s + 600;  // for longer work
    EXPECT_EQ(rowOf(compare(before, after), Question::time).judged, Judged::both);
    after = before;
    after.day.margin_s = before.day.margin_s + 59;  // within the threshold
    EXPECT_EQ(rowOf(compare(before, after), Question::time).judged, Judged::alike);
}

}  // namespace compare_test
}  // namespace fayline::plan
