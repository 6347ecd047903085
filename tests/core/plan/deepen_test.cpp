// The studies: each by itself, side by side, and a plan that has some of them.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstring>
#include <set>
#include <stdexcept>
#include <string>
#include <thread>

#include "core/export/print.hpp"
#include "core/plan/findings/answer_texts.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/plan/study/studies.hpp"
#include "tests/core/plan/made_pieces.hpp"
#include "tests/core/plan/studied.hpp"

namespace fayline::plan {
namespace deepen_test {

const std::atomic<bool> goOn = false;

using made::heldStem;

void expectSame(const model::Piece& piece, const Plan& one, const Plan& other) {
    ASSERT_EQ(one.findings.size(), other.findings.size());
    for (std::size_t i = 0; i < one.findings.size(); ++i) {
        EXPECT_EQ(one.findings[i].code, other.findings[i].code);
        EXPECT_EQ(one.findings[i].text, other.findings[i].text);
        EXPECT_TRUE(sameBits(one.findings[i].value, other.findings[i].value)) << one.findings[i].code;
    }
    for (std::size_t i = 0; i < one.answers.size(); ++i)
        EXPECT_EQ(answerText(one.answers[i], inMillimetres), answerText(other.answers[i], inMillimetres));
    EXPECT_EQ(printPlan(piece, made::shop(), one), printPlan(piece, made::shop(), other));
    for (std::size_t i = 0; i < one.choices->all.size(); ++i) {
        EXPECT_TRUE(sameBits(one.choices->all[i].chanceOfBreaking, other.choices->all[i].chanceOfBreaking));
    }
    for (std::size_t i = 0; i < one.holdingStudy->closing.size(); ++i) {
        EXPECT_TRUE(sameBits(one.holdingStudy->closing[i].pull_N, other.holdingStudy->closing[i].pull_N));
    }
    ASSERT_EQ(one.holdingStudy->proposal.stations.size(), other.holdingStudy->proposal.stations.size());
    for (std::size_t i = 0; i < one.holdingStudy->proposal.stations.size(); ++i) {
        EXPECT_TRUE(
            sameBits(one.holdingStudy->proposal.stations[i].pull_N, other.holdingStudy->proposal.stations[i].pull_N));
    }
    EXPECT_TRUE(sameBits(one.dayStudy->days.margin50_s, other.dayStudy->days.margin50_s));
    EXPECT_TRUE(sameBits(one.dayStudy->days.chanceInTime, other.dayStudy->days.chanceInTime));
}

TEST(Deepen, OneThreadAndFourGiveTheSameBits) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    const Plan plan = makePlan(piece, shop);
    const Plan one = deepen(piece, shop, plan, goOn, 1).value();
    EXPECT_TRUE(isStudied(one));
    for (int turn = 0; turn < 3; ++turn) expectSame(piece, one, deepen(piece, shop, plan, goOn, 4).value());
    expectSame(piece, one, made::studied(piece));  // with as many threads as there are cores
}

TEST(Deepen, TableHasEachStudyOnceAndNoneBeforeWhatItNeeds) {
    std::set<Study> seen;
    for (const StudyWork& work : studies()) {
        EXPECT_TRUE(!work.needs || seen.contains(*work.needs));
        EXPECT_TRUE(seen.insert(work.study).second);
    }
    EXPECT_EQ(seen, std::set<Study>(allStudies.begin(), allStudies.end()));
}

TEST(Deepen, StepsOnlyAddStudiesAndEndWithTheWhole) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    const Plan plan = makePlan(piece, shop);
    std::set<Study> before;
    int parts = 0;
    const std::thread::id caller = std::this_thread::get_id();
    const auto whole = deepenStepwise(
        piece, shop, plan, goOn,
        [&](Plan part) {
            EXPECT_EQ(std::this_thread::get_id(), caller);
            std::set<Study> now;
            for (const Study study : allStudies) {
                if (has(part, study)) now.insert(study);
            }
            EXPECT_GT(now.size(), before.size());
            EXPECT_TRUE(std::includes(now.begin(), now.end(), before.begin(), before.end()));
            EXPECT_FALSE(isStudied(part));
            before = now;
            ++parts;
        },
        1);
    ASSERT_TRUE(whole);
    EXPECT_GT(parts, 0);
    expectSame(piece, made::studied(piece), *whole);
}

// A plan that has one study and no other says nothing that only another could know.
TEST(Deepen, PlanWithOneStudySaysOnlyWhatThatOneKnows) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    const Plan live = makePlan(piece, shop);
    const Plan& whole = made::studied(piece);
    const auto codes = [](const Plan& plan) {
        std::multiset<Code> all;
        for (const Finding& finding : plan.findings) all.insert(finding.code);
        return all;
    };
    std::multiset<Code> added;
    for (const StudyWork& work : studies()) {
        Plan given = live;
        if (work.needs) given.choices = whole.choices;
        const Part part = work.work(piece, shop, given, goOn);
        ASSERT_TRUE(part);
        Plan with = live;
        part(with);
        wordStudies(piece, shop, with);
        for (const Study study : allStudies) EXPECT_EQ(has(with, study), study == work.study);
        std::multiset<Code> all = codes(with);
        for (Code code : codes(live)) {
            const auto found = all.find(code);
            ASSERT_NE(found, all.end()) << code;
            all.erase(found);
        }
        added.insert(all.begin(), all.end());
        const auto& holding = with.answers[static_cast<std::size_t>(Question::holding)].more;
        EXPECT_EQ(std::ranges::any_of(holding, [](const Message& m) { return m.is(texts::suggested); }),
                  work.study == Study::proposal);
        const std::string time = answerText(with.answers[static_cast<std::size_t>(Question::time)], inMillimetres);
        EXPECT_EQ(time.find("being worked out") == std::string::npos, work.study == Study::day) << time;
    }
    // What they say together is what the whole plan says beyond the live one.
    std::multiset<Code> beyond = codes(whole);
    for (Code code : codes(live)) beyond.erase(beyond.find(code));
    EXPECT_EQ(added, beyond);
}

// What a study throws comes out of deepen, and the parts of the others came before it.
TEST(Deepen, OneStudyThatFailsIsToldAfterTheOthersCame) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    const Plan plan = makePlan(piece, shop);
    StudyTable table = studies();
    static std::atomic<bool> choicesCame = false;  // it fails only then, so that they are told before the end
    for (StudyWork& work : table) {
        if (work.study != Study::closing) continue;
        work.work = [](const model::Piece&, const Shop&, const Plan&, const std::atomic<bool>&) -> Part {
            choicesCame.wait(false);
            throw std::runtime_error("a sum without terms");
        };
    }
    std::set<Study> came;
    const auto note = [&](const Plan& part) {
        for (const Study study : allStudies) {
            if (has(part, study)) came.insert(study);
        }
        if (came.contains(Study::choices)) {
            choicesCame = true;
            choicesCame.notify_all();
        }
    };
    EXPECT_THROW((void)deepenWith(table, piece, shop, plan, goOn, note, 2), std::runtime_error);
    EXPECT_FALSE(came.contains(Study::closing));
    EXPECT_TRUE(came.contains(Study::choices));
}

TEST(Deepen, StopSetByAPartEndsTheWork) {
    const model::Piece piece = heldStem();
    const Shop shop = made::shop();
    std::atomic<bool> stop = false;
    int parts = 0;
    const auto whole = deepenStepwise(
        piece, shop, makePlan(piece, shop), stop,
        [&](const Plan&) {
            ++parts;
            stop = true;
        },
        2);
    EXPECT_FALSE(whole);
    EXPECT_EQ(parts, 1);
}

}  // namespace deepen_test
}  // namespace fayline::plan
