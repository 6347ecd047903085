// Props and jacks: thrust, slant, slipping at head and foot, buckling. Screws: withdrawal, washer, holes, edges.
#pragma once

#include <optional>
#include <vector>

#include "core/holding/held.hpp"
#include "core/line/line.hpp"
#include "core/measure/source.hpp"

namespace fayline::holding {

enum class Slips { no, head, foot, both };

struct PropPlan {
    int index = 0;  // in boat::Holding::stations
    line::Xy head;  // on the outside of the stack
    line::Xy foot;
    double length_m = 0;
    double thrust_N = 0;         // pull / cos(slant)
    double slant_rad = 0;        // between prop and the normal of the stack at its head, >= 0
    double footSlant_rad = 0;    // between prop and the normal of what it stands on (floor: upright)
    double headFriction = 0;     // that it counts on there; wet glue counts as none (0)
    Slips slips = Slips::no;     // without the stops that are fitted
    bool footAboveHead = false;  // it would pull: a prop to the floor with its foot above its head (overhead: below)
    std::optional<line::Xy>
        footThatHolds;        // nearest place on the floor where neither end slips; absent: none without a stop
    double bucklesAt_N = 0;   // what the column may carry, allowable by NDS
    double eulerAt_N = 0;     // where it would buckle (K = 1)
    bool tooSlender = false;  // length over depth above 50
    double most_N = 0;        // rated (jack) or given
    measure::Source columnSource;
    measure::Source frictionSource;
};
std::vector<PropPlan> propPlans(const StackOnForm& work, const Held& held);

// NDS 3.7 (M): allowable load of a column pinned at both ends, newtons. `least_m` is its smaller side. Not above
// stressed `along_Pa`. C_P with c = 0.8 for sawn timber.
struct Column {
    double slenderness = 0;  // length over least side
    double stability = 0;    // C_P
    double allowable_N = 0;
};
Column ndsColumn(double length_m, double least_m, double other_m, double eMin_Pa, double along_Pa);

// Wood Handbook (M): critical stress of a square or round column by slenderness length / radius of gyration, Pa.
double handbookColumn(double slenderness, double modulus_Pa, double along_Pa);

double eulerLoad(double length_m, double modulus_Pa, double secondMoment_m4);

struct ScrewPlan {
    int index = 0;
    double pull_N = 0;
    double withdrawalUltimate_N = 0;  // from the backbone, side grain
    double withdrawalAllowable_N = 0;
    double washerPressure_Pa = 0;  // on the outer strip
    double washerMay_Pa = 0;       // half of compression across the grain (C)
    double clearanceHole_m = 0;    // through the stack, so that it can draw
    double pilotHole_m = 0;        // in the backbone
    double length_m = 0;           // under the head: stack, washer and into the backbone
    double fromEdge_m = 0;         // to the edge of the strips, the screw in the centre
    double fromEdgeNeeded_m = 0;   // 5 diameters
    double fromEnd_m = 0;          // to the nearest trim line, along the line
    double fromEndNeeded_m = 0;    // 15 diameters, 10 with a lead hole
    double laterDiameter_m = 0;    // of the permanent fastening that will fill the clearance hole
    measure::Source withdrawalSource;
    measure::Source washerSource;
    measure::Source spacingSource;
};
// The wood screwed into is holding.backbone; without it that of the strip next to it.
std::vector<ScrewPlan> screwPlans(const StackOnForm& work, const Held& held);

// The centre of the backbone from two gauge marks, one scribed from either side with the gauge set to `gauge_m`: half
// way between them. `apart_m` > 0: the marks fall short of each other, < 0: they overlap.
struct Centre {
    double fromLeft_m = 0;  // of the backbone's left side
    double width_m = 0;     // of the backbone that follows: 2 gauge + apart
};
Centre centreFromMarks(double gauge_m, double apart_m);

}  // namespace fayline::holding
