// What a plan looks like, in metres: made once for each plan, painted at any scale.
//
// Strips are gathered into bands of one class of strain, which share the faces between them.
#pragma once

#include <QPolygonF>
#include <optional>
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

// A strip between two of the plan's places, all of it of one class of strain.
struct Band {
    int strainClass = 0;
    size_t strip = 0;  // from the form outwards; it lies between the faces of this number and the next
    size_t from = 0;   // place
    size_t to = 0;
};

using Lines = std::vector<QPolygonF>;

// One place of the form's edge.
struct FormPlace {
    double at_m = 0;  // along the wanted line
    line::Xy on;
    std::optional<line::Xy> wanted;  // of the wanted edge; none beyond the strips
};

struct Drawing {
    double length_m = 0;
    std::vector<DrawnPlace> places;  // ascending, over-run included
    Lines faces;                     // all of them, from the form outwards, each with every place of the plan
    std::vector<Band> strips;        // between the trim lines, the least strained first
    std::vector<Band> overRun;       // beyond them
    Lines between;                   // faces between strips
    Lines sawnOff;                   // inside of sacrificial strips
    Lines outline;                   // of the stack between the trim lines
    Lines overRunOutline;
    Lines overRunBetween;
    Lines line;                   // the fair line between its ends
    std::vector<FormPlace> form;  // edge of a form that allows for springback; empty: it is the wanted one
    Bounds bounds;
    double greatestShare = 0;  // of the breaking strain, anywhere
    double thinnestStrip_m = 0;
};

inline constexpr int strainClasses = 80;  // from nothing to the breaking strain; one more for what is beyond

// The share of the breaking strain in the middle of a class.
double shareOfClass(int strainClass);

// The drawing of `plan`; `side` is where its strips lie. Places that are not finite (no room for a strip) are left out.
Drawing drawingOf(const plan::Plan& plan, model::Side side);

// The place at `at_m`, linear between the places of the drawing, held at its ends.
DrawnPlace placeAt(const Drawing& drawing, double at_m);

// The place along the line, over-run included, that is nearest to `place` (metres in the plane): on the line's own
// curve between its ends, on the drawn places beyond them.
double nearestPlace(const Drawing& drawing, const line::Line& line, const line::Xy& place);

}  // namespace fayline::app
