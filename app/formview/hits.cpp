#include "app/formview/hits.hpp"

#include <algorithm>

#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr double trimReach_px = 6;

double distanceTo(const QLineF& line, const QPointF& pixel) {
    const QPointF along = line.p2() - line.p1();
    const double squared = QPointF::dotProduct(along, along);
    const double share =
        squared > 0 ? std::clamp(QPointF::dotProduct(pixel - line.p1(), along) / squared, 0.0, 1.0) : 0;
    return QLineF(pixel, line.p1() + along * share).length();
}

bool onStack(const Drawing& drawing, const Transform& transform, const QPointF& pixel) {
    constexpr double near_px = 8;
    for (const DrawnPlace& place : drawing.places) {
        const QLineF across(transform.toScreen(place.onForm), transform.toScreen(place.onOutside));
        if (distanceTo(across, pixel) <= near_px) return true;
    }
    for (size_t j = 0; j + 1 < drawing.places.size(); ++j) {  // at large scales the places lie far apart
        const DrawnPlace& a = drawing.places[j];
        const DrawnPlace& b = drawing.places[j + 1];
        QPolygonF part;
        part << transform.toScreen(a.onForm) << transform.toScreen(b.onForm) << transform.toScreen(b.onOutside)
             << transform.toScreen(a.onOutside);
        if (part.containsPoint(pixel, Qt::OddEvenFill)) return true;
        if (distanceTo(QLineF(part[0], part[1]), pixel) <= near_px) return true;
        if (distanceTo(QLineF(part[2], part[3]), pixel) <= near_px) return true;
    }
    return false;
}

}  // namespace

Hit hitAt(const Sheet& sheet, const Drawing& drawing, const Transform& transform, const QPointF& pixel) {
    Hit hit;
    double best = reach_px;
    const auto offer = [&](Hit::Kind kind, int index, double distance) {
        if (distance >= best) return;
        best = distance;
        hit = {kind, index};
    };
    for (const PointMark& mark : sheet.points) {
        offer(Hit::Kind::point, mark.index, QLineF(mark.at, pixel).length());
    }
    for (const Text& text : sheet.texts) {  // the number in its ring is all the station's
        if (text.station < 0) continue;
        const double away = QLineF(text.place.center(), pixel).length();
        if (away <= text.place.width() / 2 + 1) offer(Hit::Kind::station, text.station, 0);
    }
    for (const StationMark& mark : sheet.stations) {
        const QPointF top = mark.frame.base + mark.frame.outwards * (mark.shape.reach + 12);
        const double distance = distanceTo(QLineF(mark.frame.base, top), pixel);
        // The base lies on the stack, where points lie too: those go first.
        offer(Hit::Kind::station, mark.index, std::max(distance, 1.0));
    }
    for (const StationMark& mark : sheet.stations) {
        if (!mark.frame.foot) continue;
        const double foot = QLineF(*mark.frame.foot, pixel).length();
        offer(Hit::Kind::foot, mark.index, foot);
        // The strut is thin: its whole length takes hold of the station.
        if (foot >= reach_px) {
            offer(Hit::Kind::station, mark.index,
                  std::max(distanceTo(QLineF(mark.frame.base, *mark.frame.foot), pixel), 2.0));
        }
    }
    for (const ForceArrow& arrow : sheet.forces) {
        if (arrow.station < 0) continue;
        offer(Hit::Kind::station, arrow.station, std::max(distanceTo(arrow.shaft, pixel), 2.0));
    }
    for (const BlockMark& block : sheet.hull.blocks) {
        offer(Hit::Kind::block, block.index, distanceTo(QLineF(block.top, block.body.center()), pixel));
    }
    for (size_t i = 0; i < sheet.grips.size(); ++i) {
        offer(Hit::Kind::trim, static_cast<int>(i), QLineF(sheet.grips[i], pixel).length());
    }
    for (size_t i = 0; i < sheet.trims.size(); ++i) {  // the stroke runs through other marks: those go first
        if (distanceTo(sheet.trims[i], pixel) <= trimReach_px) {
            offer(Hit::Kind::trim, static_cast<int>(i), trimReach_px);
        }
    }
    for (size_t i = 0; i < sheet.findings.size(); ++i) {
        offer(Hit::Kind::finding, static_cast<int>(i), QLineF(sheet.findings[i].at, pixel).length());
    }
    if (hit.kind == Hit::Kind::nothing && onStack(drawing, transform, pixel)) hit.kind = Hit::Kind::stack;
    return hit;
}

QPolygonF stripOutline(const Drawing& drawing, int strip) {
    if (strip < 1 || strip >= math::countOf(drawing.faces)) return {};
    QPolygonF outline = drawing.faces[strip - 1];
    const QPolygonF& outside = drawing.faces[strip];
    for (qsizetype i = outside.size(); i-- > 0;) outline << outside[i];
    return outline;
}

int stripAt(const Drawing& drawing, const Transform& transform, const QPointF& pixel) {
    const line::Xy place = transform.toDrawing(pixel);
    for (int strip = 1; strip < math::countOf(drawing.faces); ++strip) {
        if (stripOutline(drawing, strip).containsPoint(QPointF(place.x_m, place.y_m), Qt::WindingFill)) return strip;
    }
    return 0;
}

}  // namespace fayline::app
