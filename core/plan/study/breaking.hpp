// What would keep the strips whole, each worked out; and what the plan becomes when one breaks at the bench.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/study/one_fewer.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;
struct Choices;

// A chance of breaking below this is told as below it, without a figure: the far end of what scatters is not known.
// Our choice.
inline constexpr double leastChanceReported = 0.001;

enum class BreakingKind { thinner, mixed, softened, straighterGrain, otherWood };
const char* breakingKindText(BreakingKind kind);  // as in the printed plan: "straighter_grain"

struct BreakingRemedy {
    BreakingKind kind = BreakingKind::thinner;
    Message what;           // as it goes on in a sentence: "14 strips of 5/32 in"
    double chance = 0;      // that any strip breaks
    int spares = 0;         // -1: no number is sensible
    bool enough = false;    // without spares enough stay whole in 95 of 100 gluings
    double pullRatio = 1;   // stiffness of the loose strips over that of the stack as it is: pulls go with it
    int choice = -1;        // of Choices::all, what adopts it; -1: none
    std::string species;    // of another wood
    double set = 0;         // of softened strips: the share of the curve that they must keep
    double grainSlope = 0;  // of straighter grain
};

// The strip nearest to breaking is taken out of the wet pile, and the rest glued up without it on the form that is
// made.
struct LostStrip {
    OneFewer fewer;
    double chance = 0;  // that this strip breaks
    double hardestPullBefore_N = 0;
    double hardestPull_N = 0;
    double largestGapBefore_m = 0;
    double largestGap_m = 0;
    bool settled = false;           // how the rest lies was worked out; false: pull and gap are 0
    std::vector<Message> becomes;   // what the plan becomes, in sentences
    std::vector<Message> whatToDo;  // at the bench
};

struct BreakingStudy {
    // Where spares are asked for or a strip breaks in the mean; those that are enough first. Else empty.
    std::vector<BreakingRemedy> remedies;
    std::optional<LostStrip> lostStrip;  // of two strips or more
};

// Pure. `choices` are those of the plan. Strains are those on the wanted line, as everywhere in the stack's table.
// Tried: the thickest strips, all alike, that need no spare, and the mixed stack of the fewest strips that needs none
// (of `choices`; where none does without, the one that is least likely to break); strips that were steamed or boiled
// and dried on the form, with the least share of the curve that they would have to keep, in steps of a twentieth; grain
// that runs out no faster than 1 in 50; every other wood that the shop knows, by its table, the three best (those of
// which boards are listed first). Soaking cold is not among them: no figure was found by which it lets wood bend
// further (softened.hpp). `stop` as in deepen. Error: that of the chances (bending.hpp); a wood's table is a mean, and
// boards differ.
std::optional<BreakingStudy> studyBreaking(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                           const Choices& choices, const std::atomic<bool>& stop);

inline constexpr double straightGrain = 0.02;  // 1 in 50
inline constexpr int woodsReported = 3;

}  // namespace fayline::plan
