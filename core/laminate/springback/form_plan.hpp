// The form: its line, what the piece does when it is let go, and what stays in it where nothing lets go.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/laminate/springback/form_line.hpp"
#include "core/laminate/springback/in_place.hpp"
#include "core/laminate/springback/release.hpp"
#include "core/laminate/stack.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::laminate {

// How a shape stands off another between the trim lines, measured on the faying surface; positive where it is more
// open. `start_m` and `end_m`: how far that end stands off, square to the other shape's own end, when the opposite ends
// are laid on each other in place and heading; so each reads the whole opening, wherever the shapes are drawn fixed.
// More open means nearer to the tangent of the end laid on; of a shape that turns more than a right angle, turned less.
struct Opening {
    double chord_m = 0;  // of the opened shape less that of the other
    double rise_m = 0;   // the other's greatest rise over its chord less that of the opened shape
    double start_m = 0;
    double end_m = 0;
    double chordFrom_m = 0;  // chord and rise before (of the other shape) and after (of the opened one)
    double chordTo_m = 0;
    double riseFrom_m = 0;
    double riseTo_m = 0;
};

// How `opened` stands off `other`; both have their nodes on one ground.
Opening openingOf(const Ground& ground, const FormLine& other, const FormLine& opened);

// Wood that moves with the moisture of the air: the change of shape between gluing and service.
//
// The strain of each wood is its shrinkage from green to ovendry times (service - gluing) / 30 %, the moisture at which
// it begins to shrink; the stack's is the mean by thickness, glue lines left out. A bent piece then turns by
// (1 + e_L) / (1 + e_R) as much, which is what its curvature changes by, its length moving by e_L only. Moisture even
// through the piece: while it dries it is not. Good between about 6 and 14 %.
struct MoistureMove {
    double change = 0;            // share of the curvature; > 0: it tightens. (1 + e_L) / (1 + e_R) - 1
    double changeTangential = 0;  // the same if the strips' thickness lies along the rings instead of across them
    double acrossShrink = 0;      // e_R, strain through the thickness across the rings (radial); > 0: it swells
    double alongShrink = 0;       // e_L, along the grain: 0.15 % from green to ovendry
    units::Source source;         // of the shrinkage; of several woods the least sure
    bool known = true;            // false: a wood's shrinkage is not known, and nothing is said
    std::string unknownSpecies;   // which
    bool beyond = false;          // a moisture outside 6..14 %
    bool mixed = false;           // more than one wood: it also warps as a bimetal strip does, which is not counted
    Opening opening;              // that change alone, from the wanted line
};

// e_R, e_L and what follows, without the opening.
MoistureMove moistureMove(const model::Stack& stack, const std::vector<wood::Species>& species);

// One part's own answer: the whole piece, or each side of a dry face.
struct PartForm {
    int firstPlace = 1;
    int lastPlace = 1;
    double ratioAtTightest = 0;  // rho times factor
    double leastRatio = 0;       // between the trim lines, where more than one strip is there
    double mostRatio = 0;
    double mostRatioAt_m = 0;
    Opening opens;        // let go, against the form
    Opening uncorrected;  // had the form the wanted line: the released piece against the wanted line
    Opening offWanted;    // the released piece against the wanted line; the first part's is 0 where the form allows
    FormLine released;    // the shape it lets go to (moisture not counted)
    // What taking off `planed_after` and the sacrificial strips does to the shape, against the released one. By the
    // theory, the record's factor not counted.
    std::optional<Opening> planed;
};

// What has cured after one of several gluings.
struct Gluing {
    int lastPlace = 1;
    double ratio = 0;  // rho times factor at the tightest place, of what has cured so far, were it let go in between
};

// The strip that is bent nearest to breaking on the form itself, which is tighter than the wanted line.
struct StrainedOnForm {
    int place = 1;
    double at_m = 0;
    double strain = 0;
    double used = 0;      // of its mean breaking strain, in the first bend or the second, whichever is nearer
    double breaksAt = 0;  // that strain
};

// Shares of the turn that still move by no more than this have settled: a tenth of a millimetre where 10 m turn by a
// radian.
inline constexpr double stillSettled = 1e-5;

struct FormPlan {
    bool letsGo = true;      // false: in place, or kept on its form
    bool corrected = false;  // the form's line allows for springback
    // False: no form bends it to this line. Either so little of the curve would be left (1 - rho < 0.05: the form would
    // be twenty times as tight) or the strips find no room on the form that it takes.
    bool possible = true;
    bool noRoom = false;
    // False: the form's curvature and what it gives back did not settle on each other; `unsettled` is by how much the
    // form's share of the turn still moved, at the worst place.
    bool settled = true;
    double unsettled = 0;
    double impossibleAt_m = 0;
    double impossibleRatio = 0;        // rho times factor there
    double fixedAt_m = 0;              // where form and wanted line are laid on each other
    double factor = 1;                 // of the record, as the piece says
    math::SharedList<PartForm> parts;  // from the form outwards; the form's line is made for the first
    FormLine line;                     // what to cut: of the wanted line itself where nothing is corrected
    double tightestAt_m = 0;           // of the form, between the trim lines
    double tightestRadius_m = 0;       // infinite where it is straight
    // Share of the springback by which measured pieces differ from the rule, until the piece's own record says better.
    double scatterLow = 0;   // nothing at all: 0
    double scatterHigh = 0;  // times the rule
    units::Source scatterSource;
    MoistureMove moisture;
    StrainedOnForm mostStrained;
    math::SharedList<Gluing> gluings;  // where there are several
    std::optional<StressLeft> stressLeft;
};

// The form of a piece whose stack is planned. Throws InputError with paths from `form.` and `stack.`.
//
// The wanted shape of every part is what the piece has on the wanted line; the form's line bends the first part so that
// let go it comes to that (T = k / (1 - rho), see form_line.hpp). Where a scarf leaves one strip of several, no form
// makes it keep a bend: there form and released shape go on as beside it, for the strip lies down with its mate.
// What one part slides along another while both are bent is left out (it moves places along, not aside). That a scarf
// is cut through after gluing takes wood away as planing does; left out too.
FormPlan planForm(const model::Piece& piece, const line::Line& line, const std::vector<wood::Species>& species,
                  const StackPlan& stack);

}  // namespace fayline::laminate
