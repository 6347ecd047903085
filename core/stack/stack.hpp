// The stack of strips along a line: each strip's radius, strain, length; how the ends step; how likely one breaks.
//
// Signs: distances are square to the line, > 0 from the form outwards; curvature > 0 where the form is convex toward the
// stack, so a strip at distance d has curvature k / (1 + d k). Strip 1 lies on the form.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/measure/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::stack {

// One single strip.
struct Strip {
    int place = 1;                // 1 lies on the form
    int group = 0;                // index into boat::Stack::strips
    double thickness_m = 0;       // at the line's start
    double thicknessAtEnd_m = 0;  // the same if it does not taper
    std::string species;
    bool sacrificial = false;
    double leastRadius_m = 0;     // of its own middle, between the trim lines; infinity where straight
    double leastRadiusAt_m = 0;
    double strain = 0;            // greatest surface strain between the ends of the strips, t k / 2
    double strainAt_m = 0;
    double breakingStrain = 0;    // mean, corrected for grain slope and moisture
    measure::Source breakingSource;
    double modulus_Pa = 0;
    measure::Source modulusSource;
    double chanceOfBreaking = 0;
    double radiusOverThickness = 0;  // least of R / t
    double finishedLength_m = 0;  // between the trim lines, along its own middle
    double cutLength_m = 0;       // with over-run (and shortened where the stack is scarfed)
};

// How the strips' ends step when the loose stack is bent, held lengthways at the pinned place: how far the outermost
// strip's end falls short of the innermost one's, square across the stack.
struct Stagger {
    double start_m = 0;
    double end_m = 0;
    double pinnedAt_m = 0;
    bool pinsForbidSliding = false;  // two pins with the line turning between them
    double pinsSlide_m = 0;          // sliding that the pins forbid, outermost against innermost
};

enum class LimitKind {
    breaks,              // mean breaking strain MOR/E
    chance,              // chance that one breaks
    ratioHardwood,       // R/t 100
    ratioSoftwood,       // R/t 125
    laminationThickness, // EN 14080
    curvatureFactor,     // 1 - 2000 (t/R)^2
    noRoom,              // 1 + d k <= 0: no strip can lie there
    crossesItself,       // line and stack run into themselves
    pins,                // two pins forbid sliding
};

// A limit that was looked at and what the stack has against it.
struct LimitMet {
    LimitKind kind = LimitKind::breaks;
    int place = 0;         // strip; 0: the stack as a whole
    double at_m = 0;
    double value = 0;      // of the stack, in the unit of the kind: strain, chance, ratio, metres, factor
    double limit = 0;
    bool met = true;       // false: the limit is broken
    measure::Source source;
};

struct StackPlan {
    std::vector<Strip> strips;
    double depth_m = 0;               // of wood and glue lines at the tightest place
    double tightestAt_m = 0;
    double stiffnessWet_N_m2 = 0;     // all strips loose, at the tightest place
    double stiffnessCured_N_m2 = 0;   // all glued, about the transformed neutral axis
    double chanceAnyBreaks = 0;
    int spares = 0;                   // -1: more than a third would break
    Stagger stagger;
    std::vector<LimitMet> limits;

    // For drawing: places along the line, over-run included, and there the faces of the strips (faces[0] on the form,
    // faces[i] outside strip i) and the strain of each strip. faces[i][j] is at at_m[j].
    std::vector<double> at_m;
    std::vector<std::vector<line::Xy>> faces;
    std::vector<std::vector<double>> strains;
    std::vector<double> width_m;      // finished width at at_m
};

// The stack of `stack` on `line`. `describes` says which line of the stack the points are on, `side` where the strips
// lie. `species` holds the user's own woods before the built-in ones.
//
// Throws InputError with paths from `stack.`: no strips, a species that is not known, and the like.
// Source of the models: beam theory (D); limits carry their own.
StackPlan planStack(const boat::Stack& stack, boat::Describes describes, boat::Side side, const line::Line& line,
                    const std::vector<wood::Species>& species);

// Distance from the line to face `face` of the stack (0: on the form, n: outside) at arc length `at_m`, metres, > 0
// outwards. Between the trim lines thickness tapers; beyond them it stays level.
double faceDistance(const boat::Stack& stack, boat::Describes describes, const line::Line& line, int face, double at_m);

// +1 where strips on `side` lie on the positive (left) side of the line, else -1.
double sideSign(boat::Side side);

// Finished width of the stack at `at_m`, metres: linear between the given widths, level beyond.
double widthAt(const boat::Stack& stack, double at_m);

}  // namespace fayline::stack
