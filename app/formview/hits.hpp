// What the mouse means: shapes to hit that are larger than what is drawn.
#pragma once

#include "app/formview/sheet.hpp"

namespace fayline::app {

struct Hit {
    enum class Kind { nothing, point, station, finding, stack };
    Kind kind = Kind::nothing;
    int index = -1;  // of the point or station in the piece, of the mark among the sheet's findings

    bool operator==(const Hit&) const = default;
};

inline constexpr double reach_px = 12;  // from the middle of a mark

// The mark nearest to `pixel` within reach, a point before a station at the same distance; the stack if no mark is.
Hit hitAt(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QPointF& pixel);

}  // namespace fayline::app
