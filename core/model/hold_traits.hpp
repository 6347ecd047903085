// What tells the kinds of hold apart: one table, a row for each kind in the order of HoldKind.
//
// Whoever wants to know how a kind differs asks its row; nobody lists the kinds again. What is worked out for a single
// kind alone (a column, a thread, a strap's turn) stands in core/holding.
#pragma once

#include <array>
#include <string_view>
#include <utility>
#include <variant>

#include "core/model/boat.hpp"

namespace fayline::model {

struct HoldTraits {
    HoldKind kind = HoldKind::clamp;
    std::string_view word;  // as in the file, on screen and on paper; its icon bears the same name
    // Closes the gap under a pad of its own. One that does not is a load that follows from its tension.
    bool closesGap = true;
    // That pad lies on the outer strip and can crush it. A screw's washer is judged by its own rule.
    bool padCanCrush = true;
    // What such a station has beyond what every station has. A strut thrusts along itself from the floor or from
    // overhead, and can slip, lean and buckle; a screw draws on the backbone; a strap bears along its whole length.
    std::variant<std::monostate, Strut Station::*, Screw Station::*, Strap Station::*> has;
    // Its most is a rated load, which is never exceeded; else the most that the user gives it.
    bool isRated = false;
    // Can be put anywhere along the piece without more being said, so that a proposal may use those that are listed.
    bool standsAnywhere = false;
    // Reaches round the stack with jaws, so that opening, throat and pitch of the tool count.
    bool hasJaws = false;
    // A strap over the same length could press in its stead.
    bool strapWouldDo = false;
    // Time to put one on, of the rates of a crew.
    double StationTimes::*putOn_s = &StationTimes::clamp_s;
};

inline constexpr auto holdTraits = std::to_array<HoldTraits>({
    {.kind = HoldKind::clamp, .word = "clamp", .standsAnywhere = true, .hasJaws = true, .strapWouldDo = true},
    {.kind = HoldKind::prop, .word = "prop", .has = &Station::strut, .putOn_s = &StationTimes::prop_s},
    {.kind = HoldKind::jack, .word = "jack", .has = &Station::strut, .isRated = true, .putOn_s = &StationTimes::jack_s},
    {.kind = HoldKind::screw,
     .word = "screw",
     .padCanCrush = false,
     .has = &Station::screw,
     .standsAnywhere = true,
     .putOn_s = &StationTimes::screw_s},
    {.kind = HoldKind::strap, .word = "strap", .closesGap = false, .padCanCrush = false, .has = &Station::strap},
    {.kind = HoldKind::wedge, .word = "wedge", .standsAnywhere = true, .strapWouldDo = true},
});

// Whether each row stands at the place of its kind.
consteval bool inOrder() {
    for (std::size_t i = 0; i < holdTraits.size(); ++i)
        if (holdTraits[i].kind != static_cast<HoldKind>(i)) return false;
    return true;
}
static_assert(inOrder());

// The row of a kind. Throws std::out_of_range for a kind that has none.
constexpr const HoldTraits& traitsOf(HoldKind kind) {
    return holdTraits.at(static_cast<std::size_t>(kind));
}

// "clamp", as in the file, on screen and on paper.
constexpr std::string_view holdWord(HoldKind kind) {
    return traitsOf(kind).word;
}

// Whether stations of this kind are struts, screws, straps.
template <class Of>
constexpr bool is(HoldKind kind) {
    return std::holds_alternative<Of Station::*>(traitsOf(kind).has);
}

// The station as a strut, screw, strap; null where its kind is none.
template <class Of>
const Of* as(const Station& station) {
    const auto* part = std::get_if<Of Station::*>(&traitsOf(station.kind).has);
    return part ? &(station.**part) : nullptr;
}
template <class Of>
Of* as(Station& station) {
    return const_cast<Of*>(as<Of>(std::as_const(station)));
}

}  // namespace fayline::model
