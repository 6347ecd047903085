// Stations tried out: the contact of the stack with what some stations would do, on the whole or as far as it matters.
#pragma once

#include <vector>

#include "core/holding/pressed.hpp"
#include "core/holding/propose/sites.hpp"

namespace fayline::holding {

// A gap counts as within its limit up to this much more: what the contact itself is exact to.
inline constexpr double gapCounts_m = 1e-6;

// What a trial on longer elements may be off, as a share of the gap: it must stay so far within the limit where it sets
// a place, and go so far beyond it where it rules one out.
inline constexpr double lookAhead = 0.01;

// What a trial found, between the trim lines as far as it looked.
struct Tried {
    bool holds = false;    // the gap is within its limit everywhere
    double worst = 0;      // greatest of gap over limit; infinity where nothing settled
    double largest_m = 0;  // greatest gap; infinity where nothing settled
};

// The trials of one piece. A choice is a list of places in sites.free, ascending; stations kept are always there.
class Trials {
public:
    Trials(const Ready& ready, const StackOnForm& work, const Sites& sites);

    // With `chosen` alone. Those that leave far too large a gap are told by longer elements alone.
    Tried whole(const std::vector<int>& chosen);
    // With the last `behind` + 1 of `chosen`, counted in this direction, before them and beyond them as many more as
    // there is room for: the best that could still come. Looks at the last `spans` spans only, on a stretch about them
    // and on longer elements than whole().
    Tried soFar(const std::vector<int>& chosen, Way way, std::size_t spans, std::size_t behind);
    // Whether it is worth while to look at the whole with nothing beyond the furthest of `chosen`: false where the
    // tail, straight from there on, would stand off many times the limit.
    bool tailMayLie(const std::vector<int>& chosen, Way way) const;

    // With as many stations as there is room for.
    Tried packed();
    // Makes the limit at each place no less than the gap that is left with as many stations as there is room for, and
    // a twentieth more.
    void easeWhereNeeded();
    // No more may be tried: what it may cost is spent.
    bool ended() const { return work_.effort && work_.effort->ended(); }
    // Near a place where it had to, some station pulls with all it has.
    bool easedByStrength() const { return easedByStrength_; }

private:
    double limitAt(double s_m) const;
    std::vector<model::Station> stationsOf(const std::vector<int>& chosen) const;
    void packBeyond(double from_m, double to_m, std::vector<model::Station>& stations) const;
    Tried judge(const Contact& contact, double from_s_m, double to_s_m) const;

    const Ready& ready_;
    const StackOnForm& work_;
    const Sites& sites_;
    double startTrim_s_m_ = 0;
    double endTrim_s_m_ = 0;
    double beyond_m_ = 0;  // how far packed stations reach
    Contact whole_;
    Contact soFar_;
    Contact packed_;
    std::vector<Hold> packedHolds_;
    std::vector<double> easedAt_s_m_;
    std::vector<double> eased_m_;
    bool easedByStrength_ = false;
};

}  // namespace fayline::holding
