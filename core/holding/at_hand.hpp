// What is at hand: whether there are as many tools as the stations ask, whether they are strong enough and reach, how a
// pull is told to hands, and what the posts of the form bear.
#pragma once

#include <optional>
#include <vector>

#include "core/holding/held.hpp"
#include "core/holding/strap.hpp"
#include "core/math/shared.hpp"

namespace fayline::holding {

struct Ready;  // pressed.hpp

// Why a station is left without a tool; of several reasons the first that holds for every tool of its kind.
enum class Lacks {
    nothing,   // it has one, or nothing is known of tools of its kind
    strength,  // no tool of its kind is strong enough
    opening,   // those that are strong enough do not open far enough
    throat,    // those that are and do have too short a throat
    count,     // there are some that would do, all in use elsewhere
};

// Of one kind: stations that want it, tools that there are.
struct Counted {
    model::HoldKind kind = model::HoldKind::clamp;
    int asked = 0;
    int there = 0;
    bool listed = false;  // the tools name this kind at all; else nothing is known of it, and nobody is left without
    std::vector<int>
        withoutTool;  // indices of the stations that are left without one that is strong enough and reaches
};

// Which tool serves a station.
struct Served {
    int station = 0;  // index in model::Holding::stations
    int tool = -1;    // index in model::Holding::tools; -1: none left
    Lacks lacks = Lacks::nothing;
    // What the tool must pull: a clamp, wedge or screw the station's pull, a prop or jack its thrust along itself, a
    // strap its tension, a side clamp what is given (else nothing that is known).
    double needed_N = 0;
    // What the tool needs to reach there and whether it does; absent where the file does not say what it has.
    // Of a side clamp opening and throat change places: the width, and half the depth.
    double opening_m = 0;  // at least: stack and caul; how deep the form is, is not known
    std::optional<bool> opens;
    double throat_m = 0;  // at least: over half the width as bent, so that the pull comes to the middle
    std::optional<bool> throats;
    std::optional<double>
        turnsPastSnug;  // of a clamp, from its pitch and what gives way (stack and clamp); estimate, C
};

struct AtHand {
    math::SharedList<Counted> counts;  // of every kind that is asked or listed, in the order of model::HoldKind
    math::SharedList<Served> served;   // in the order of model::Holding::stations
    int leftWithout = 0;               // stations left without a tool, of all kinds

    // What would do instead where tools are short.
    //
    // Split gluing: bending on only part of the strips at a time takes their share of the loose stack's stiffness, so
    // all pulls fall to that share and the gaps stay: weaker tools then do. It asks for as many stations as before, so
    // it helps where strength lacks (or the strong ones are all in use), never where tools as such are too few; and
    // what the glue itself asks (pressing.hpp) does not fall. 0: already split, or not of use.
    int splitAfterStrip = 0;
    double splitShare = 1;  // of the pulls that is left
    int splitServes = 0;    // more stations than now have a tool then

    // Clamps and wedges short that lie where the outside is round, so that a strap pulled no harder than hands can
    // (strapsPull_N) would press as much over the length up to half way to the neighbours; and the greatest tension
    // that this needs at one of them (estimate, D).
    int strapsWouldServe = 0;
    double strapTension_N = 0;
    // Clamps short where folding wedges under a bar across the form would press as much: no more than the least that
    // wedges are good for (C), and a form to hang the bar on.
    int wedgesWouldServe = 0;
};

// A tool serves one station: of its kind, strong enough for what the station needs, far enough open and deep enough in
// the throat as far as the file says. As many stations are served as can be; those that pull most come first.
AtHand atHand(const StackOnForm& work, const Held& held);

// What folding wedges driven by a hammer press at least, newtons (2 to 10 kN, badly known): common practice, no source.
inline constexpr double wedgesPress_N = 2000;
// What a 50 mm strap with a hand ratchet is pulled with at most, newtons: common practice, no source.
inline constexpr double strapsPull_N = 5000;
// How far the frame of a clamp gives way, metres per newton: 1 mm for each 2.5 kN. Common practice, no source.
inline constexpr double clampGives_m_per_N = 0.001 / 2500;

// How much less deep the stack gets under a pad for each newton, metres: a foundation of wood across the grain (E/12,
// C) whose length under load grows by 45 degrees through its depth, so that on the mean it is pad plus depth (C).
double stackCrush_m_per_N(const StackOnForm& work, double at_m, double pad_m);

// Turns of the screw past snug for `pull_N`: pull times what gives way, over the pitch. Snug is where the stack lies
// down and every joint is home; turns that bend it down come before. Estimate (C); 0 for a pitch that is not above 0.
double turnsPastSnug(double pull_N, double pitch_m, double stackCrush_m_per_N);

// Thrust on each post of a posted form against what holds it.
struct PostLoad {
    int index = 0;  // in model::Form::posts
    double at_m = 0;
    double thrust_N = 0;
    double holds_N = 0;
};
// In the order of model::Form::posts; empty for other forms and where there is no contact to sum up. The push of the
// foundation over each post, of the pads that count; where posts overlap, in even shares. Error: that of the contact,
// whose own places and weights are summed, so that the posts together bear what the stations pull (tests/core/holding/
// posts_test.cpp).
std::vector<PostLoad> postLoads(const StackOnForm& work, const Held& held);
// The same of one contact of the piece, or of a part of its strips.
std::vector<PostLoad> postLoads(const StackOnForm& work, const Ready& ready, const Contact& contact);

}  // namespace fayline::holding
