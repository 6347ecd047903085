// What a station does to the stack.
#pragma once

#include "core/boat/boat.hpp"

namespace fayline::holding {

// Whether it presses the stack toward the form at all. A side clamp only keeps the strips in line across their width.
inline bool pressesOnForm(const boat::Station& station) {
    return !station.side;
}

// Whether it closes the gap under its pad (a holding point). A strap presses along its length with what tension and
// turn give instead: a load, see strap.hpp.
inline bool closesGap(const boat::Station& station) {
    return pressesOnForm(station) && station.kind != boat::HoldKind::strap;
}

}  // namespace fayline::holding
