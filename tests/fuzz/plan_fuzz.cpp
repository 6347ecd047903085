// Random pieces against the plan: each has one of finite numbers or is refused by a path, within the work that contact
// and over-run may cost. Counted in steps of Newton's method, not timed.
#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <exception>
#include <string>

#include "core/plan/study/deepen.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/input_error.hpp"
#include "tests/core/plan/random_pieces.hpp"

namespace {

using namespace fayline;

constexpr long roundsEach = 400;        // one piece for so many rounds of the other programs: 500 of their 200,000
constexpr int mostOverRunSteps = 4000;  // see mostLooksOfAll in core/holding/over_run.cpp

[[noreturn]] void fail(long piece, const std::string& why) {
    std::printf("piece %ld: %s\n", piece, why.c_str());
    std::exit(1);
}

// A step looks at each element twice at least: once to factorise, once where it leads.
bool withinBound(const holding::Held& held) {
    const double elements = static_cast<double>(std::max<std::size_t>(held.ifPadsHold.nodes_m.size(), 2) - 1);
    return 2 * held.steps * elements <= std::max(holding::mostLooks, holding::mostLooksEach * elements) + 60 * elements;
}

}  // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::strtol(argv[1], nullptr, 10) : 200000;
    const long pieces = std::max(1L, rounds / roundsEach);
    const plan::Shop shop = made::shop();
    const std::atomic<bool> goOn{false};
    made::Dice dice(20240609);
    long planned = 0;
    int most = 0;
    int mostOfOverRun = 0;
    for (long i = 0; i < pieces; ++i) {
        const model::Piece piece = made::randomPiece(dice);
        try {
            const plan::Plan plan = plan::makePlan(piece, shop);
            if (const std::string wrong = made::defectOf(piece, plan); !wrong.empty())
                fail(i, "its plan has no number that can be: " + wrong);
            if (!withinBound(plan.holding.held)) fail(i, "the contact took more work than it may");
            most = std::max(most, plan.holding.held.steps);
            const std::optional<plan::Plan> deeper = plan::deepen(piece, shop, plan, goOn);
            if (!deeper || !deeper->holdingStudy) fail(i, "it was not deepened");
            const int steps = deeper->holdingStudy->overRun.steps;
            if (steps > mostOverRunSteps) fail(i, "the over-run took more work than it may");
            mostOfOverRun = std::max(mostOfOverRun, steps);
            ++planned;
        } catch (const units::InputError& error) {
            if (error.path().empty()) fail(i, "an error says no place");
        } catch (const std::exception& error) {
            fail(i, error.what());
        }
    }
    std::printf("plan_fuzz: %ld pieces, %ld planned, the others refused; steps %d at most, of the over-run %d\n",
                pieces, planned, most, mostOfOverRun);
    return planned > 0 ? 0 : 1;
}
