// What a station does to the stack.
#pragma once

#include "core/contact/contact.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

using contact::HoldState;

// A hold that closes its gap with less than this pulls lightly, newtons. Such a pull is what is left between what
// neighbours press down and what the stack springs up with: a hair of a gap, a pad or a thickness changes it by as much
// again, and no hand feels it on a clamp's screw. So it is told as light and by no figure. Ours.
inline constexpr double lightPull_N = 200;

inline bool pullsLightly(HoldState state, double pull_N) {
    return state == HoldState::closes && pull_N < lightPull_N;
}

// Whether it presses the stack toward the form at all. A side clamp only keeps the strips in line across their width.
inline bool pressesOnForm(const model::Station& station) {
    return !station.side;
}

// Whether it closes the gap under its pad (a holding point). A strap presses along its length with what tension and
// turn give instead: a load, see strap.hpp.
inline bool closesGap(const model::Station& station) {
    return pressesOnForm(station) && model::traitsOf(station.kind).closesGap;
}

}  // namespace fayline::holding
