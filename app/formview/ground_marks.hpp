// What the holding stands on: floor and overhead at the feet of props, how these stand, the hull on its blocks; in
// pixels.
#pragma once

#include <QLineF>
#include <QPainterPath>
#include <QPointF>
#include <QPolygonF>
#include <QRectF>
#include <QString>
#include <optional>
#include <vector>

#include "app/formview/drawing.hpp"
#include "app/formview/force_marks.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// A stretch of floor, or of what is overhead, with strokes on its far side.
struct GroundMark {
    QLineF line;
    bool overhead = false;
    QPainterPath strokes;
};

// What is wrong with a prop or jack.
struct PropTrouble {
    int station = -1;
    QPointF at;                      // on the prop, where it is wrong
    bool stop = false;               // it cannot stand at all; else a caution
    QString words;                   // "slips", "buckles"
    std::optional<QPointF> towards;  // the foot where neither end would slip
};

struct BlockMark {
    int index = 0;
    QRectF body;
    QPointF top;                     // where the hull stands on it
    bool lifts = false;              // the hull has left it
    std::optional<ForceArrow> push;  // from below; its length by the hull's own scale
};

struct HullMark {
    std::vector<BlockMark> blocks;
    std::optional<QPointF> centre;  // of weight
    QString weight;
    double times = 1;  // forces on the blocks are drawn so many times shorter than those that hold the piece
};

// An arrow at the edge of the view towards what lies outside of it.
struct FarMark {
    QPointF at;   // its tip
    QPointF way;  // unit
    QString words;

    static constexpr double half_px = 9;
    QRectF place() const { return QRectF(at.x() - half_px, at.y() - half_px, 2 * half_px, 2 * half_px); }
};

// Where the foot of a prop or jack stands: as given, else as planned, in metres; absent: not known or no number.
std::optional<line::Xy> footOf(const Shown& shown, int station);

// One mark for each height at which feet of the same way stand.
std::vector<GroundMark> groundOf(const Shown& shown, const Transform& transform);

std::vector<PropTrouble> propTroubles(const Shown& shown, const Transform& transform);

// Nothing for a hull without weight and blocks.
HullMark hullOf(const Shown& shown, const Transform& transform, const ForceScale& scale, bool forces);

// Towards the blocks, the hull's centre of weight and the feet of props that lie outside of `view`, each with how far
// from the line that is; one for all that lie the same way. The tips lie on the edge of `inside`.
std::vector<FarMark> farMarks(const Shown& shown, const Drawing& drawing, const Transform& transform,
                              const QRectF& view, const QRectF& inside);

}  // namespace fayline::app
