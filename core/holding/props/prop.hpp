// Props and jacks: thrust, slant, slipping at head and foot, buckling.
//
// A prop is a straight bar, hinged at both ends. What the stack needs square to the form is the pull; the bar gives it
// along its length: thrust = pull / cos(slant). At each end it holds by friction as long as it stands within the cone
// of half angle atan(mu) about the normal there (D), however hard it pushes; beyond that it needs a stop.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "core/holding/held.hpp"
#include "core/holding/prop_place.hpp"
#include "core/line/line.hpp"
#include "core/units/source.hpp"

namespace fayline::holding {

// The wood of a prop is not asked for. A sound softwood is assumed: near No. 2 Douglas fir-larch of the NDS supplement
// (4 000 MPa, 10.7 MPa for a section up to 38 x 89 mm, mean 11 000 MPa; M).
inline constexpr double propEMin_Pa = 4000e6;   // for the allowable load of a column
inline constexpr double propAlong_Pa = 10e6;    // compression along the grain that may be allowed, F_c*
inline constexpr double propModulus_Pa = 11e9;  // mean, for the load at which it buckles
inline constexpr std::array<double, 2> propSection_m{0.089, 0.038};  // where none is given: common practice

// NDS 3.7.1.4 (M): no column may be longer than this many times its least side; 75 while a building goes up.
inline constexpr double mostSlender = 50;

// Friction that may be counted on where slip is the hazard: the least of published values for dry wood, 0.1 to 0.6.
inline constexpr double safeFriction = 0.1;

// Lengths are read to a sixteenth of an inch.
inline constexpr double footWithin_m = 0.002;

enum class Slips { no, head, foot, both };

struct PropPlan {
    int index = 0;   // in model::Holding::stations
    int number = 1;  // of the station along the line
    line::Xy head;   // on the outside of the stack, or of the caul on it
    line::Xy foot;
    bool footAssumed = false;  // some of it was not given, see propPlaces
    double length_m = 0;
    double thrust_N = 0;         // pull / cos(slant); 0 where it cannot press
    double slant_rad = 0;        // between prop and the normal of the stack at its head, 0..pi
    double footSlant_rad = 0;    // between prop and the normal of what it stands on (floor: upright)
    bool cannotPress = false;    // it stands so slanted, or on the wrong side, that it pushes nothing toward the form
    double headFriction = 0;     // that it counts on there; wet glue counts as none (0)
    double footFriction = 0;     // as given for the floor; the same is taken for what is overhead
    Slips slips = Slips::no;     // without the stops that are fitted
    bool stopsHold = true;       // every end that slips has a stop fitted
    bool footAboveHead = false;  // it would pull: a prop to the floor with its foot above its head (overhead: below)
    // Nearest place on the floor (or overhead) where no end slips that has no stop, and footWithin_m beyond it, so that
    // a foot set by a rounded figure holds (in the middle where there is no such room; the foot itself where it holds
    // already); an end with a stop is trusted up to 60 degrees. Absent: none without (another) stop.
    std::optional<line::Xy> footThatHolds;

    std::array<double, 2> section_m{};  // as given, else propSection_m
    bool sectionAssumed = false;
    bool woodenColumn = true;  // false: a jack without a section, of which only the rated load is known
    double slenderness = 0;    // length over least side; 0 where it is no wooden column
    bool tooSlender = false;   // above mostSlender
    double allowable_N = 0;    // that the column may carry (NDS); of a jack without a section its rated load
    // Where it buckles: Euler's critical load of the column hinged at both ends (effective length factor 1, as a prop
    // that only stands between floor and stack is held), of straight wood as stiff as propModulus_Pa. Nothing for a
    // jack without a section: of that only the rated load is known.
    std::optional<double> bucklesAt_N;
    double most_N = 0;  // rated (jack) or given, along the prop
    units::Source columnSource;
    units::Source frictionSource;  // of the head's friction
    units::Source footFrictionSource;
};

// The props and jacks of the piece, ordered along the line, with the pulls of `held` (0 for a station that is not in
// it). All numbers are finite. Throws InputError as stationPlaces does.
//   (1) a mirrored piece: the same plans but for the mirrored places
std::vector<PropPlan> propPlans(const StackOnForm& work, const Held& held);
std::vector<PropPlan> propPlans(const StackOnForm& work, const std::vector<HeldStation>& held);

// Half angle of the cone within which a bar pushes without slipping, radians: atan(mu) (D).
double coneOf(double friction);

// NDS 3.7 (M): allowable load of a column pinned at both ends, newtons. `least_m` > 0 is its smaller side. Not above
// stressed `along_Pa`. C_P with c = 0.8 for sawn timber. A column of no length carries along_Pa on its whole section.
struct Column {
    double slenderness = 0;  // length over least side
    double stability = 0;    // C_P
    double allowable_N = 0;
};
Column ndsColumn(double length_m, double least_m, double other_m, double eMin_Pa, double along_Pa);

// Euler (M): pi^2 E I / L^2, newtons. length_m > 0.
double eulerLoad(double length_m, double modulus_Pa, double secondMoment_m4);

}  // namespace fayline::holding
