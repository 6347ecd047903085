// The stack of strips along a line: each strip's radius, strain, length; how the ends step; how likely one breaks.
//
// Signs: distances are square to the line, > 0 from the form outwards; curvature > 0 where the form is convex toward
// the stack, so a strip at distance d has curvature k / (1 + d k). Strip 1 lies on the form.
#pragma once

#include <string>
#include <vector>

#include "core/line/line.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// One single strip.
struct Strip {
    int place = 1;                // 1 lies on the form
    int group = 0;                // index into model::Stack::strips
    double thickness_m = 0;       // at the line's start
    double thicknessAtEnd_m = 0;  // the same if it does not taper
    std::string species;
    bool sacrificial = false;
    double leastRadius_m = 0;  // of its own middle, between the trim lines; infinity where straight
    double leastRadiusAt_m = 0;
    // Greatest surface strain between the ends of the strip, t k / 2. Of a strip that was bent before only the rest of
    // the curve counts, (1 - set) k; so it does in radiusOverThickness. Where no strip can lie, 1.
    double strain = 0;
    double strainAt_m = 0;
    double strainRadius_m = 0;  // there, of the curve that strains it; infinity where straight
    double breakingStrain = 0;  // mean, corrected for grain slope and moisture
    units::Source breakingSource;
    double modulus_Pa = 0;
    units::Source modulusSource;
    // When it was bent before, softened, the strip was strained by the whole curve; its limit then is that of hot wood
    // (softened.hpp) or, where it was only soaked, of dry wood. Both 0 where it was not bent before.
    double firstStrain = 0;
    double firstBreakingStrain = 0;
    // Of its breaking strain as tabled: long strips are weaker, thin ones stronger (wood::sizeFactor).
    double sizeFactor = 1;
    double chanceOfBreaking = 0;     // in the first bend or the second, whichever is likelier
    double radiusOverThickness = 0;  // least of R / t
    double finishedLength_m = 0;     // in the finished piece, along its own middle
    double cutLength_m = 0;          // with over-run, along its own middle
    // From where to where it runs along the line, over-run included. Differs between strips where the stack is scarfed;
    // layers.hpp says how.
    double startsAt_m = 0;
    double endsAt_m = 0;
};

// How near a strip is to breaking: its greatest strain over the mean strain at which it breaks, in the second bend or,
// if it was bent before, in the first, whichever is nearer. From 1 on it breaks in the mean. Everything that says
// whether or how nearly a strip breaks goes by this.
double worstShare(const Strip& strip);

// The same where its strain is `strain` (of the second bend, as in StackPlan::strains): both bends have one shape.
double shareAt(const Strip& strip, double strain);

// Mean breaking strain by which its chance in the dry bend is told: with the size factor where the strain is the
// table's, as it is where it was measured.
double sizedBreakingStrain(const Strip& strip, const model::Strips& given);

// How the ends of strips that were cut alike step when the loose stack is bent, held lengthways at the pinned place:
// how far the outermost strip's end falls short of the innermost one's, square across the stack; < 0 where it runs
// beyond. start_m + end_m is the turn of the line between the ends of the strips times the distance between the two
// middles.
struct Stagger {
    double start_m = 0;
    double end_m = 0;
    double pinnedAt_m = 0;           // the first pin; without one, where the stack is held first
    bool pinsForbidSliding = false;  // two pins with the line turning between them
    double pinsSlide_m = 0;          // sliding that the pins forbid, outermost against innermost
};

enum class LimitKind {
    breaks,               // mean breaking strain MOR/E
    breaksHot,            // mean breaking strain of a strip that was steamed or boiled, while hot, without a strap
    chance,               // chance that one breaks
    ratioHardwood,        // R/t 100
    ratioSoftwood,        // R/t 125
    laminationThickness,  // EN 14080
    curvatureFactor,      // 1 - 2000 (t/R)^2
    noRoom,               // 1 + d k <= 0: no strip can lie there
    crossesItself,        // line and stack run into themselves
    pins,                 // two pins forbid sliding
};

// A limit that was looked at and what the stack has against it. Of strips that are alike only the worst off is listed.
struct LimitMet {
    LimitKind kind = LimitKind::breaks;
    int place = 0;  // strip; 0: the stack as a whole
    double at_m = 0;
    double value = 0;  // of the stack, in the unit of the kind: strain, chance, ratio, metres, factor
    double limit = 0;
    bool met = true;  // false: the limit is broken
    units::Source source;
};

struct StackPlan {
    math::SharedList<Strip> strips;
    double depth_m = 0;  // of wood and glue lines at the tightest place
    double tightestAt_m = 0;
    // At the tightest place, of the strips that there are. Wet: all loose, as they are bent, with the rip allowance on
    // each edge, the sum of E b t^3 / 12. Cured: all glued, of the finished width, about the transformed neutral axis,
    // glue lines as gaps without stiffness of their own; a dry face parts the stack in two.
    double stiffnessWet_N_m2 = 0;
    double stiffnessCured_N_m2 = 0;
    // Held by the bent strips while they are loose, over-run and rip allowance included: half the sum of E b t^3 / 12
    // times curvature squared, along each strip.
    double storedEnergy_J = 0;
    double chanceAnyBreaks = 0;
    int spares = 0;  // -1: more than a third would break
    Stagger stagger;
    math::SharedList<LimitMet> limits;

    // For drawing: places along the line, over-run included, and there the faces of the strips (faces[0] on the form,
    // faces[i] outside strip i) and the strain of each strip. faces[i][j] is at at_m[j].
    math::SharedList<double> at_m;
    math::SharedList<std::vector<line::Xy>> faces;
    math::SharedList<std::vector<double>> strains;
    math::SharedList<double> width_m;  // finished width at at_m
};

// The stack of `stack` on `line`. `describes` says which line of the stack the points are on, `side` where the strips
// lie. `species` holds the user's own woods before the built-in ones. `heldAt_m` is where the stack is held lengthways
// if it has no pins.
//
//   (1) mirrored line and side, or a line walked backwards with its side changed: the same strips
//   (2) one strip of twice the thickness on the same middle: twice the strain
// Error: lengths of strips that do not taper 1e-9, of tapering ones see lengthBeside; strains follow the curvature of
// the line, their greatest is found within 1e-5 of itself between places 10 mm apart.
// Throws InputError with paths from `stack.`: no strips, a thickness that is none, a species that is not known, scarfs
// that leave a strip no length, and the like.
// Source of the models: beam theory (D); limits carry their own (limits.hpp).
StackPlan planStack(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    const std::vector<wood::Species>& species, double heldAt_m = 0);

// The strip nearest to breaking, by worstShare. `plan` has strips.
const Strip& worstStrip(const StackPlan& plan);

// Distance from the line to face `face` of the stack (0: on the form, n: outside) at arc length `at_m`, metres, > 0
// outwards. Between the trim lines thickness tapers; beyond them it stays level.
double faceDistance(const model::Stack& stack, model::Describes describes, const line::Line& line, int face,
                    double at_m);

// +1 where strips on `side` lie on the positive (left) side of the line, else -1.
double sideSign(model::Side side);

// Finished width of the stack at `at_m`, metres: linear between the given widths, level beyond.
double widthAt(const model::Stack& stack, double at_m);

}  // namespace fayline::laminate
