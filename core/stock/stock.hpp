// Which strip from which board with least waste or cost, and what would help where boards do not suffice.
//
// Boards are ripped through their length into lanes, lanes are cut across to strips. Between lanes, and between strips
// of a lane, lies one saw cut. Nothing but what is taken off or sacrificial lies in a bad stretch. A strip that no lane
// gives whole is scarfed with as few scarfs as it can be, at places a step apart.
//
// All functions are pure: the same job gives the same bits. They throw InputError as check() does.
#pragma once

#include <atomic>
#include <functional>
#include <vector>

#include "core/stock/cut_plan.hpp"
#include "core/stock/job.hpp"

namespace fayline::stock {

// The first answer, at once: the longest first, each into the first lane that takes it. Its bound is the wood of the
// strips, proven only where that is reached.
CutPlan firstCutPlan(const Job& job);

// How much is done at most, counted and not timed.
struct Effort {
    int rounds = 60;         // choices of boards that are looked into
    int nodes = 20'000;      // of the integer programs, in all
    int patterns = 200'000;  // ways to cut a lane that are looked at, for each choice of boards
};

// The best that is found, with its bound. `better` is told each plan that is better than the one before, the first
// one among them, in the caller's thread. When `stop` is set the best so far comes back within some milliseconds,
// with what was proven so far.
CutPlan bestCutPlan(const Job& job, const Effort& effort, const std::atomic<bool>& stop,
                    const std::function<void(const CutPlan&)>& better = {});

enum class CureKind {
    otherSawing,    // ripped and resawn, board by board, instead of the one that was asked
    anotherScarf,   // one more scarf than the fewest
    thinnerStrips,  // as many strips, each thinner: the piece is less deep
    moreThinner,    // thinner strips and more of them: the piece is as deep
    narrowerPiece,
    anotherBoard,  // one more of a board that there is
    longerBoard,   // one more board as an existing one, but so long that strips come whole
};

// A change after which all strips can be cut (missing empty), or fewer are missing, worked out anew with it.
struct Cure {
    CureKind kind = CureKind::otherSawing;
    std::string piece;         // of thinner, more, narrower
    int board = -1;            // of another or longer board: index of the one alike
    int count = 0;             // boards to add; strips of the piece where there are more
    double value_m = 0;        // thickness, width or length afterwards; 0 where there is none
    std::vector<int> missing;  // afterwards; indices into the changed job's strips
    double extra = 0;          // by the job's aim against what the given boards cost: m3, or money
    Job job;                   // with the change made
    CutPlan plan;              // of that job
};

// Ranked: what leaves the fewest missing first, of these what costs least, of these the one that changes least (the
// order of CureKind). Empty where nothing is missing. Each is computed by bestCutPlan with `effort`; stops as that
// does.
std::vector<Cure> cures(const Job& job, const CutPlan& plan, const Effort& effort, const std::atomic<bool>& stop);

}  // namespace fayline::stock
