// What a plan costs, and says first, when one offset was copied wrongly: counted in steps of Newton's method, not
// timed.
#include "tests/core/plan/slips.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <map>

#include "core/plan/findings/holding_texts.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/held_scene.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace slips_test {

const std::atomic<bool> goOn{false};

// The offset that a finding or an error names is the one that slipped or stands beside it.
bool beside(int point, const made::Slipped& slip) {
    return point >= 0 && std::abs(point - slip.point) <= 1;
}

TEST(Slips, EachGivesAPlanOrAnErrorWithinFewStepsAndLeadsWithTheOffset) {
    const std::vector<made::Slipped> slips = made::slipsOfSample("marram.fayline");
    ASSERT_EQ(slips.size(), 332u);
    const Shop shop = made::shop();
    int steps = 0;
    int most = 0;
    int wild = 0;
    int led = 0;
    std::map<std::string, int> count;
    for (const made::Slipped& slip : slips) {
        SCOPED_TRACE(slip.name);
        try {
            const Plan plan = makePlan(slip.piece, shop);
            EXPECT_FALSE(slip.doubled);
            most = std::max(most, plan.holding.held.steps);
            steps += plan.holding.held.steps;
            const bool pressed = plan.holding.held.outcome != holding::Outcome::notPressed;
            ++count[pressed ? "pressed" : "not pressed"];
            if (pressed) continue;
            EXPECT_EQ(plan.holding.held.steps, 0);
            ASSERT_FALSE(plan.findings.empty());
            EXPECT_TRUE(std::ranges::any_of(
                plan.findings, [](const Finding& finding) { return finding.code == Code::contactNotWorkedOut; }));
            ++wild;
            led += beside(plan.findings.front().point, slip);
        } catch (const units::InputError& error) {
            ++count[slip.doubled ? "doubled" : "no line"];
            if (slip.doubled) {
                EXPECT_EQ(error.path(), "line.points[" + std::to_string(slip.point) + "]");
                continue;
            }
            ++wild;
            led += std::max({error.path() == "line.points[" + std::to_string(slip.point) + "]",
                             error.path() == "line.points[" + std::to_string(slip.point - 1) + "]",
                             error.path() == "line.points[" + std::to_string(slip.point + 1) + "]"});
        }
    }
    std::printf("steps %d in all, %d at most", steps, most);
    for (const auto& [what, times] : count) std::printf("; %s %d", what.c_str(), times);
    std::printf("; %d of %d wild ones lead with the offset or its neighbour\n", led, wild);
    EXPECT_LE(most, 150);
    EXPECT_LE(steps, 4000);
    EXPECT_EQ(count["doubled"], 42);
    EXPECT_GE(led, wild * 98 / 100);
}

TEST(Slips, TheOverRunOfAWildPieceTakesFewSteps) {
    const Shop shop = made::shop();
    const std::vector<made::Slipped> slips = made::slipsOfSample("marram.fayline");
    for (std::size_t i = 0; i < slips.size(); i += 17) {
        SCOPED_TRACE(slips[i].name);
        try {
            const Plan plan = makePlan(slips[i].piece, shop);
            const holding::StackOnForm work = workOf(slips[i].piece, shop, plan.line.fair.line, plan.form);
            if (plan.holding.held.outcome == holding::Outcome::notPressed) continue;
            EXPECT_LE(holding::overRunNeeded(work, plan.holding.held, goOn).steps, 1500);
        } catch (const units::InputError&) {
        }
    }
}

TEST(Slips, ASkippedStudySaysNothingOfGapsAndPulls) {
    model::Piece piece = made::stem();
    piece.holding.stations = {model::Station{.at_m = 0.3}, model::Station{.at_m = 1.2}};
    piece.line.points[6].x_m *= 0.1;
    piece.line.points[6].written = {};
    const Plan& deeper = made::studied(piece, {Study::closing, Study::overRun, Study::proposal, Study::carried});
    ASSERT_EQ(deeper.holding.held.outcome, holding::Outcome::notPressed);
    ASSERT_TRUE(deeper.holdingStudy);
    EXPECT_TRUE(deeper.holdingStudy->closing.empty());
    EXPECT_TRUE(deeper.holdingStudy->proposal.stations.empty());
    for (const Finding& finding : deeper.findings) {
        EXPECT_NE(finding.code, Code::noStationsWouldDo);
        EXPECT_NE(finding.code, Code::overRunNeeded);
    }
    EXPECT_EQ(deeper.findings.front().point, 6);
    // The offset first, what cannot be under it.
    const Finding why = the(looked(deeper.findings), Code::contactNotWorkedOut);
    EXPECT_TRUE(why.text.is(texts::notWorkedOutByOffset)) << english(why);
    EXPECT_TRUE(why.details.back().is(texts::contactNotWorkedOut)) << english(why);
}

TEST(Slips, AStoppedPlanIsNone) {
    const std::atomic<bool> stop{true};
    EXPECT_FALSE(makePlan(made::stem(), made::shop(), nullptr, stop).has_value());
    const std::optional<Plan> plan = makePlan(made::stem(), made::shop(), nullptr, goOn);
    ASSERT_TRUE(plan.has_value());
    EXPECT_EQ(plan->holding.held.steps, made::planOf(made::stem()).holding.held.steps);
}

TEST(Slips, NoOffsetOfASoundLineIsAtFault) {
    for (const char* file : {"marram.fayline", "marram_in_place.fayline", "minimal.fayline"}) {
        for (const model::Piece& piece : io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / file).pieces) {
            EXPECT_FALSE(offsetAtFault(piece.line.points).has_value()) << piece.name;
        }
    }
    EXPECT_FALSE(offsetAtFault({}).has_value());
}

}  // namespace slips_test
}  // namespace fayline::plan
