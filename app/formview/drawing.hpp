// What a plan looks like, in metres: made once for each plan, painted at any scale.
//
// Strips are gathered into one path for each class of strain, so that a repaint is a few dozen fills however many
// strips and places there are.
#pragma once

#include <QPainterPath>
#include <vector>

#include "app/formview/transform.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app {

// One place along the line with what is drawn and read there.
struct DrawnPlace {
    double at_m = 0;
    line::Xy onLine;
    line::Xy onForm;     // innermost face of the stack
    line::Xy onOutside;  // outermost face
    line::Xy outwards;   // unit vector square to the line, from the form to the outside
    double heading_rad = 0;
    double curvature_per_m = 0;
    double strain = 0;  // of the strip that is nearest to breaking there
    double share = 0;   // that strain over what breaks the strip
};

struct StrainClass {
    double share = 0;  // of the breaking strain, in the middle of the class
    QPainterPath path;
};

struct Drawing {
    double length_m = 0;
    std::vector<DrawnPlace> places;    // ascending, over-run included
    std::vector<StrainClass> strips;   // between the trim lines, the least strained first
    std::vector<StrainClass> overRun;  // beyond them
    QPainterPath faces;                // between strips
    QPainterPath sawnOffFaces;         // inside of sacrificial strips
    QPainterPath outline;              // of the stack between the trim lines
    QPainterPath overRunOutline;
    QPainterPath overRunFaces;
    QPainterPath line;  // the fair line between its ends
    QPainterPath form;  // edge of a form that allows for springback, where it is not the wanted one
    Bounds bounds;
    double greatestShare = 0;  // of the breaking strain, anywhere
    double thinnestStrip_m = 0;
};

inline constexpr int strainClasses = 80;  // from nothing to the breaking strain; one more for what is beyond

// The drawing of `plan`; `side` is where its strips lie. Places that are not finite (no room for a strip) are left out.
Drawing drawingOf(const plan::Plan& plan, boat::Side side);

// The place at `at_m`, linear between the places of the drawing, held at its ends.
DrawnPlace placeAt(const Drawing& drawing, double at_m);

// The place along the line, over-run included, that is nearest to `place` (metres in the plane): on the line's own
// curve between its ends, on the drawn places beyond them.
double nearestPlace(const Drawing& drawing, const line::Line& line, const line::Xy& place);

}  // namespace fayline::app
