// What the mouse means: shapes to hit that are larger than what is drawn.
#pragma once

#include "app/formview/sheet.hpp"

namespace fayline::app {

struct Hit {
    enum class Kind { nothing, point, station, foot, block, trim, finding, stack };
    Kind kind = Kind::nothing;
    // Of the point, the station (of which it is the foot) or the block in the piece; of the trim line, 0 at the start;
    // of the mark among the sheet's findings.
    int index = -1;

    bool operator==(const Hit&) const = default;
    bool draggable() const { return kind != Kind::nothing && kind != Kind::finding && kind != Kind::stack; }
};

inline constexpr double reach_px = 12;  // from the middle of a mark

// The station whose number stands under `pixel`; else the mark nearest to it within reach, a point before a station and
// that before a trim line at the same distance; the stack if no mark is.
Hit hitAt(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QPointF& pixel);

// The strip that lies there, 1 on the form; 0: none.
int stripAt(const Drawing& drawing, const Transform& transform, const QPointF& pixel);
// Its outline in metres; empty: there is no such strip.
QPolygonF stripOutline(const Drawing& drawing, int strip);

}  // namespace fayline::app
