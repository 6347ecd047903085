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
    int rounds = 60;      // choices of boards that are looked into
    int nodes = 20'000;   // of the integer programs, in all
    long rows = 150'000;  // of the relaxed programs that are solved, in all
};

// The best that is found, with its bound. `better` is told each plan that is better than the one before, the first
// one among them, in the caller's thread. When `stop` is set the best so far comes back within some milliseconds,
// with what was proven so far.
CutPlan bestCutPlan(const Job& job, const Effort& effort, const std::atomic<bool>& stop,
                    const std::function<void(const CutPlan&)>& better = {});

enum class CureKind {
    otherSawing,    // ripped and resawn, board by board, instead of the one that was asked
    anotherScarf,   // one more scarf than the fewest
    thinnerStrips,  // as many strips of a piece, each thinner: it is less deep
    moreThinner,    // thinner strips of a piece and more of them: it is as deep
    narrowerPiece,
    anotherBoard,  // more of a board that there is
    longerBoard,   // more of one as an existing one, but so long that the longest strip comes whole
};

// A change after which no strip is missing, or fewer are, worked out anew with it.
struct Cure {
    CureKind kind = CureKind::otherSawing;
    std::string piece;   // of thinner, more, narrower
    int board = -1;      // of another or longer board: index of the one alike
    int count = 0;       // boards to add; strips of the piece where there are more
    double value_m = 0;  // afterwards: of the piece's thickest strip, its width, the longer board's length; else 0
    double extra = 0;    // cost of the boards to add, by the job's aim: m3, or money
    Job job;             // with the change made; a longer board is its last
    CutPlan plan;        // of that job
};

// Thicknesses and widths are looked for in such steps, the least change that helps. Common practice, no source.
inline constexpr double thinnerStep_m = 0.0005;
inline constexpr double narrowerStep_m = 0.001;
// No strip is made thinner (1.5 mm, or what the planer takes), no piece narrower than this share of its width, no more
// boards and strips added. Common practice, no source.
inline constexpr double thinnestCure_m = 0.0015;
inline constexpr double narrowestCure = 0.6;
inline constexpr int mostAdded = 4;

// Ranked: what leaves the fewest missing first, of these what costs least to buy, of these what changes least (the
// order of CureKind). Empty where nothing is missing. Each is computed by bestCutPlan with a quarter of `effort`; once
// `stop` is set those found so far come back.
std::vector<Cure> cures(const Job& job, const CutPlan& plan, const Effort& effort, const std::atomic<bool>& stop);

}  // namespace fayline::stock
