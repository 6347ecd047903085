#include "core/plan/study/remedies.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <atomic>

#include "core/io/file.hpp"
#include "core/plan/findings/day_texts.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {
namespace remedies_test {

// The stem of the demo boat on a hot day with one pair of hands: far too late.
struct Late {
    model::Boat boat = io::loadBoat(FAYLINE_SAMPLES "/marram.fayline");
    model::Piece piece = boat.pieces.front();
    Shop shop = shopOf(boat);
    std::atomic<bool> stop{false};

    Late() {
        piece.glue.air_C = 30;
        piece.crew.hands = 1;
    }
    DayPlan dayOf(const model::Piece& of) const { return makePlan(of, shop).day; }
    std::vector<Remedy> remedies() const {
        const Plan plan = makePlan(piece, shop);
        return remediesFor(piece, shop, plan.line.fair.line, plan.day, stop).value();
    }
};

TEST(Remedies, EachGivesWhatItSaysWhenItIsTaken) {
    const Late late;
    const DayPlan before = late.dayOf(late.piece);
    const std::vector<Remedy> remedies = late.remedies();
    ASSERT_GE(remedies.size(), 4u);
    for (const Remedy& remedy : remedies) {
        const model::Piece after = withRemedy(late.piece, remedy);
        SCOPED_TRACE(writeWithin(remedy.what, {}));
        EXPECT_NE(after, late.piece);
        const DayPlan day = late.dayOf(after);
        EXPECT_DOUBLE_EQ(day.margin_s, remedy.margin_s);
        EXPECT_DOUBLE_EQ(day.cupMargin_s, remedy.cupMargin_s);
        EXPECT_TRUE(day.margin_s > before.margin_s || day.cupMargin_s > before.cupMargin_s);
        EXPECT_LE(writeWithin(remedy.brief, {}).size(), 34u) << writeWithin(remedy.brief, {});
    }
    EXPECT_TRUE(
        std::ranges::is_sorted(remedies, [](const Remedy& a, const Remedy& b) { return a.margin_s > b.margin_s; }));
}

TEST(Remedies, ABreakSaysAfterWhichStripAndWhatWashingAndSandingItAsks) {
    const Late late;
    const std::vector<Remedy> remedies = late.remedies();
    const auto broken = std::ranges::find(remedies, RemedyKind::plannedBreak, &Remedy::kind);
    ASSERT_NE(broken, remedies.end());
    const model::Piece after = withRemedy(late.piece, *broken);
    EXPECT_EQ(after.stack.gluings, std::vector<int>{broken->breakAfterStrip});
    ASSERT_EQ(broken->asks.size(), 3u);
    EXPECT_EQ(broken->asks[0], Message(texts::breakFirst, {put::count(broken->breakAfterStrip)}));
    const DayPlan day = late.dayOf(after);
    ASSERT_EQ(day.gluings.size(), 2u);
    EXPECT_GT(day.gluings.back().job.sand_s, 0);
    EXPECT_EQ(broken->asks[1].args[1].value, day.gluings.back().job.sand_s);
}

TEST(Remedies, TheStudyHasThePotLivesOfTheCupAndTheTray) {
    const Late late;
    const Plan plan = makePlan(late.piece, late.shop);
    const DayStudy study = studyDay(late.piece, late.shop, plan.line.fair.line, plan.day, late.stop).value();
    ASSERT_EQ(study.potLives.size(), 2u);
    for (const glue::PotLifeByMass& lives : study.potLives) {
        ASSERT_EQ(lives.mass_kg.size(), lives.lasts_s.size());
        // More of it heats itself sooner.
        EXPECT_TRUE(std::is_sorted(lives.lasts_s.rbegin(), lives.lasts_s.rend()));
    }
    for (std::size_t i = 0; i < study.potLives[0].lasts_s.size(); ++i) {
        EXPECT_LE(study.potLives[0].lasts_s[i], study.potLives[1].lasts_s[i] * (1 + 1e-6)) << i;
    }
    EXPECT_TRUE(chanceTexts(plan.day, study).front().is(texts::oddsSentence));
}

TEST(OwnGlue, ThatCannotBeMixedOrContradictsItselfIsSaid) {
    model::OwnAdhesive own;
    own.name = "Mine";
    EXPECT_EQ(ownGlueTexts(own)[0].count, 1);
    EXPECT_TRUE(ownGlueTexts(own)[1].is(texts::noneFitted));
    own.morePotLives = {{10 * 60.0, 35, 0.1, {}}};
    EXPECT_EQ(ownGlueTexts(own)[0].count, 2);
    EXPECT_TRUE(ownGlueTexts(own)[1].is(texts::warmthFitted));
    own.morePotLives = {{300 * 60.0, 40, 0.1, {}}};  // warmer and yet slower
    EXPECT_THROW(ownGlueTexts(own), units::InputError);
    own.morePotLives.clear();
    own.partsByWeight = {1, 0};
    EXPECT_THROW(ownGlueTexts(own), units::InputError);
}

}  // namespace remedies_test
}  // namespace fayline::plan
