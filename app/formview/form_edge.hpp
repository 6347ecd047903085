// The edge of what the stack lies on, in pixels: how far it stands off the stack, magnified, and how hard it pushes.
//
// The stack is drawn at its place, so a gap shows as the form falling away from it. Signs: `in` points away from the
// stack, into the form.
#pragma once

#include <QPainterPath>
#include <QPointF>
#include <optional>
#include <vector>

#include "app/formview/drawing.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// One place along the edge.
struct EdgePlace {
    double at_m = 0;
    QPointF face;  // of the stack
    QPointF in;    // unit, square to it
    double gap_px = 0;
    double pressure_px = 0;  // as long as the pressure there is drawn
    bool borne = true;       // form, posts or boat reach here
    bool cut = false;        // beyond the trim lines, where the gap is larger than is drawn

    QPointF onEdge() const { return face + in * gap_px; }
    double depth_px() const { return gap_px + pressure_px; }
};

struct FormEdge {
    std::vector<EdgePlace> places;   // ascending, from one end of the strips to the other
    double gapTimes = 1;             // gaps are drawn so many times their size
    bool gaps = false;               // there is a gap that can be seen
    double greatestPressure_Pa = 0;  // of what is drawn; 0: nothing
    QPainterPath gapsWithin;         // between stack and edge between the trim lines, within the limit
    QPainterPath gapsOver;           // ... above it
    QPainterPath barsOver;           // across those
    Lines overOutline;               // round gapsOver
    Lines edge;                      // where it stands off and something bears; ends where the gap is cut
    Lines freeEdge;                  // where it stands off and nothing bears, carried on
    QPainterPath pressure;           // as a band along the edge; nothing where there is none
};

inline constexpr double greatestPressure_px = 11;  // how long the greatest pressure of a piece is drawn

// Factor by which gaps are drawn so that the largest between the trim lines is 12 to 24 pixels long, 1 to 1000. A stack
// that lies well is not made to look bad: nothing under a quarter of the limit is drawn as long as that.
double gapTimes(const plan::Plan& plan, const model::Piece& piece, const Transform& transform);

// The edge of `shown` (which has a plan). Without results the edge lies on the stack and nothing else is there; what is
// not finite is left out.
FormEdge formEdgeOf(const Shown& shown, const Drawing& drawing, const Transform& transform, bool magnified,
                    bool pressure);

// The edge at `at_m`, linear between its places, held at its ends. Needs places.
EdgePlace edgeAt(const FormEdge& edge, double at_m);

// What is known of the held stack at `at_m`, linear between the samples; absent beyond them or where one is no number.
std::optional<holding::HeldSample> sampleAt(const holding::Held& held, double at_m);

}  // namespace fayline::app
