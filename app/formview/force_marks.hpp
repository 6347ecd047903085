// Forces as arrows whose length is the force, one scale for all of a picture, in pixels.
#pragma once

#include <QLineF>
#include <QPointF>
#include <QString>
#include <vector>

#include "app/formview/drawing.hpp"
#include "app/formview/form_edge.hpp"
#include "app/formview/station_shape.hpp"
#include "app/look/shown.hpp"
#include "core/holding/props/prop.hpp"

namespace fayline::app {

// How long a force is drawn: `unit_px` for `unit_N`, a round number in the display's unit. Steps from one round number
// to the next, so that arrows stay comparable while something is dragged.
struct ForceScale {
    double unit_N = 0;  // 0: there are no forces to draw
    QString words;      // "1000 N"

    static constexpr double unit_px = 40;
    double toPixels(double force_N) const { return unit_N > 0 ? force_N / unit_N * unit_px : 0; }
};

// The greatest of `forces_N` that is finite is drawn 24 to 60 pixels long.
ForceScale forceScaleFor(const std::vector<double>& forces_N, const units::Display& display);

// The scale of what holds the piece: pulls of stations, thrusts on props and posts.
ForceScale forceScaleOf(const plan::Plan& plan, const units::Display& display);

// What an arrow says beside its length.
enum class ForceState {
    pulls,  // less than it can
    slack,  // nothing: no shaft, a hollow head
    full,   // all that it has: a bar across its tail
    over,   // more than what bears it holds: a double head
};

struct ForceArrow {
    int station = -1;  // index in the piece; -1: not of a station
    QLineF shaft;      // tail to tip; its length is the force, 0 where slack
    QPointF way;       // unit, from tail to tip
    ForceState state = ForceState::pulls;
    QString figure;   // "540 N"
    QPointF towards;  // where the figure stands best, from the middle of the shaft
};

// The held station of the piece's station `index`; null: not known or no number.
const holding::HeldStation* heldStation(const plan::Plan& plan, int index);
const holding::PropPlan* propPlan(const plan::Plan& plan, int index);
const holding::StrapPlan* strapPlan(const plan::Plan& plan, int index);

// The arrow of a station that stands in `frame` and reaches `reach` pixels out: square on to the stack, its tip above
// the station's shape, beside the prop where there is one.
ForceArrow stationArrow(const holding::HeldStation& held, const StationFrame& frame, double reach,
                        const ForceScale& scale, const units::Display& display);

// Thrusts on posts that are more than these hold, into the form. `edge` is the edge of the form.
std::vector<ForceArrow> overloadedPosts(const plan::Plan& plan, const FormEdge& edge, const ForceScale& scale,
                                        const units::Display& display);

// A strap's thrust along the outside as short strokes, and where it does nothing.
struct StrapMark {
    QPainterPath band;    // where it presses
    QPainterPath idle;    // where it lies straight or stands off
    QPainterPath thrust;  // strokes outside the band, as long as the thrust per length (the greatest 9 pixels)
};
StrapMark strapMark(const model::Station& station, const holding::StrapPlan* plan, const Drawing& drawing,
                    const Transform& transform);

// The tension by which a strap is drawn, along the outside and away from it, at each end that is drawn.
std::vector<ForceArrow> strapArrows(const model::Station& station, const holding::StrapPlan& plan,
                                    const Drawing& drawing, const Transform& transform, const ForceScale& scale,
                                    const units::Display& display);

// What a station does, for tooltip, status line and screen reader: "pulls 540 N of 2500 N, gap 0.12 mm".
QString holdingWords(const Shown& shown, int station);

// A gap as a reader wants it: no sign.
QString gapText(double gap_m, const units::Display& display);

}  // namespace fayline::app
