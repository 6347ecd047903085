// Temporary screws that pull the stack to the backbone: withdrawal, washer, holes, edges; and the backbone's centre.
#pragma once

#include <limits>
#include <string>
#include <vector>

#include "core/holding/held.hpp"
#include "core/units/source.hpp"

namespace fayline::holding {

// What is taken where a station does not say it: common practice, no source.
inline constexpr double screwDiameter_m = 0.005;
inline constexpr double screwIntoBackbone_m = 0.038;
// Washer: 25 mm, and not less than three diameters.

// From this shank diameter on (1/4 in) a screw is reckoned as a lag screw.
inline constexpr double leastLag_m = 0.00635;

// Withdrawal from side grain per length of thread, N/m, by ovendry specific gravity and shank diameter.
// Ultimate: Wood Handbook ch. 8 (M), 15 700 G^2 D and 8 100 G^1.5 D^0.75 lbf/in. Allowable: NDS, 2 850 G^2 D (P) and
// 1 800 G^1.5 D^0.75 lbf/in (M).
double screwUltimate_N_m(double gravity, double diameter_m);
double screwAllowable_N_m(double gravity, double diameter_m);
double lagUltimate_N_m(double gravity, double diameter_m);
double lagAllowable_N_m(double gravity, double diameter_m);

// Tensile strength of the steel that a screw of no stated class is at least made of, Pa: property class 4.6 (ISO 898-1,
// read in a transcription: P*).
inline constexpr double screwSteel_Pa = 400e6;
// Allowable over ultimate of a threaded part in tension, 1 / Omega with Omega = 2 (AISC 360 J3.6, M).
inline constexpr double steelAllowed = 0.5;

// Pull at which the core of the thread breaks, newtons: pi/4 root^2 times screwSteel_Pa (D). A screw of 6 mm shank with
// a core of 4 mm: 5.03 kN. root_m >= 0.
double coreBreaks_N(double root_m);

struct ScrewPlan {
    int index = 0;   // in model::Holding::stations
    int number = 1;  // of the station along the line
    double pull_N = 0;
    double diameter_m = 0;  // as given, else as above
    double intoBackbone_m = 0;
    double washer_m = 0;
    bool sizesAssumed = false;  // one of the three was not given
    bool lag = false;           // reckoned as a lag screw

    // From the backbone's side grain, threaded all the way in; out of end grain nothing of this holds.
    std::string backbone;          // name of its wood
    bool backboneAssumed = false;  // not given: the wood of the strip next to it
    double withdrawalUltimate_N = 0;
    double withdrawalAllowable_N = 0;
    // Of the steel itself, through the thread's core. Brass, bronze and stainless screws are not told apart.
    double steelUltimate_N = std::numeric_limits<double>::infinity();
    double steelAllowable_N = std::numeric_limits<double>::infinity();
    // The lesser of wood and steel: what it holds in all.
    double ultimate_N() const {
        return withdrawalUltimate_N < steelUltimate_N ? withdrawalUltimate_N : steelUltimate_N;
    }
    double allowable_N() const {
        return withdrawalAllowable_N < steelAllowable_N ? withdrawalAllowable_N : steelAllowable_N;
    }

    // On the outer strip, over the washer less its hole; a caul between them spreads it at 45 degrees.
    double washerPressure_Pa = 0;
    bool washerKnown = false;  // the outer strip's strength across the grain is known
    double washerMay_Pa = 0;   // half of compression across the grain (C) times bearingFactor; 0: not known
    double bearingFactor = 1;  // NDS C_b (M): (l + 3/8 in) / l for l < 6 in, 3 in or more from the strip's end

    double clearanceHole_m = 0;  // through the stack, so that it can draw: 0.5 mm wider, from 6 mm on 1 mm (C)
    // Of the thread: two thirds of the shank, as most sizes of wood screws have in the mean (P*; from 0.6 for rolled to
    // 0.8 for cut thread, C).
    double root_m = 0;
    double pilotHole_m = 0;  // in the backbone: 70 % of the root in softwood, 90 % in hardwood (Wood Handbook, M)
    double depth_m = 0;      // of the stack there
    double length_m = 0;     // under the head: washer (2 mm), caul, stack and into the backbone

    double fromEdge_m = 0;        // to the edge of the strips as bent, the screw in the centre
    double fromEdgeNeeded_m = 0;  // 5 diameters
    double fromEnd_m = 0;         // along the line to the nearest trim line; beyond them to the end of the strips;
                                  // below 0: beyond those
    double fromEndNeeded_m = 0;   // 10 diameters, the holes being bored as above
    double laterDiameter_m = 0;   // of the permanent fastening that will fill the clearance hole: the next usual size
                                  // from it up (to that it is bored), 3 to 24 mm; beyond: the hole itself
    units::Source withdrawalSource;
    units::Source steelSource;
    units::Source washerSource;
    units::Source holeSource;
    units::Source spacingSource;
};

// The screws of the piece, ordered along the line, with the pulls of `held` (0 for a station that is not in it). All
// numbers are finite. Throws InputError: holding.backbone.species for a wood that is not known,
// holding.stations[i].washer_mm for a washer that falls into its hole, and as stationPlaces does.
std::vector<ScrewPlan> screwPlans(const StackOnForm& work, const Held& held);
std::vector<ScrewPlan> screwPlans(const StackOnForm& work, const std::vector<HeldStation>& held);

}  // namespace fayline::holding
