#include "app/paper/room.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace fayline::app::paper {

namespace {

constexpr double breath_mm = 0.7;      // least distance between words and ink
constexpr double leaderFrom_mm = 3.5;  // words further off get a leader
constexpr std::array reaches_mm = {0.0, 2.0, 4.5, 8.0, 12.0, 17.0, 23.0, 30.0, 40.0, 55.0, 75.0, 100.0};
constexpr int directions = 16;

// The point of `box` nearest to `place`.
QPointF nearestOf(const QRectF& box, const QPointF& place) {
    return {std::clamp(place.x(), box.left(), box.right()), std::clamp(place.y(), box.top(), box.bottom())};
}

}  // namespace

std::optional<QLineF> clipped(const QLineF& segment, const QRectF& box) {
    double from = 0;
    double to = 1;
    const auto cut = [&](double rise, double height) {  // keeps where rise * t <= height
        if (rise == 0) return height >= 0;
        const double at = height / rise;
        if (rise > 0) {
            to = std::min(to, at);
        } else {
            from = std::max(from, at);
        }
        return from <= to;
    };
    const double x = segment.x1();
    const double y = segment.y1();
    const bool inside = cut(segment.dx(), box.right() - x) && cut(-segment.dx(), x - box.left()) &&
                        cut(segment.dy(), box.bottom() - y) && cut(-segment.dy(), y - box.top());
    if (!inside) return std::nullopt;
    return QLineF(segment.pointAt(from), segment.pointAt(to));
}

std::vector<QPolygonF> clipped(const QPolygonF& line, const QRectF& box) {
    std::vector<QPolygonF> parts;
    bool open = false;
    for (int i = 0; i + 1 < line.size(); ++i) {
        const auto part = clipped(QLineF(line[i], line[i + 1]), box);
        if (!part) {
            open = false;
            continue;
        }
        if (!open) parts.push_back(QPolygonF({part->p1()}));
        parts.back().push_back(part->p2());
        open = box.contains(line[i + 1]);
    }
    return parts;
}

void Room::addInk(const QPolygonF& line) {
    for (int i = 0; i + 1 < line.size(); ++i) {
        if (const auto part = clipped(QLineF(line[i], line[i + 1]), within_)) ink_.push_back(*part);
    }
}

bool Room::meetsBox(const QRectF& box) const {
    return std::any_of(boxes_.begin(), boxes_.end(), [&](const QRectF& other) { return other.intersects(box); });
}

bool Room::isFree(const QRectF& box, bool faintToo) const {
    const QRectF wide = box.adjusted(-breath_mm, -breath_mm, breath_mm, breath_mm);
    if (!within_.contains(wide) || meetsBox(wide)) return false;
    const auto meets = [&](const QLineF& line) { return clipped(line, wide).has_value(); };
    if (std::any_of(ink_.begin(), ink_.end(), meets)) return false;
    return !faintToo || std::none_of(faint_.begin(), faint_.end(), meets);
}

bool Room::crossesInk(const QLineF& line) const {
    return std::any_of(ink_.begin(), ink_.end(),
                       [&](const QLineF& ink) { return line.intersects(ink) == QLineF::BoundedIntersection; });
}

bool Room::crossesBox(const QLineF& line) const {
    return std::any_of(boxes_.begin(), boxes_.end(), [&](const QRectF& box) { return clipped(line, box).has_value(); });
}

double Room::inkWithin(const QRectF& box) const {
    double length = 0;
    for (const QLineF& line : ink_) {
        if (const auto part = clipped(line, box)) length += part->length();
    }
    return length;
}

std::vector<QLineF> Room::outsideBoxes(const QLineF& line) const {
    std::vector<QLineF> left{line};
    for (const QRectF& box : boxes_) {
        const QRectF wide = box.adjusted(-breath_mm, -breath_mm, breath_mm, breath_mm);
        std::vector<QLineF> next;
        for (const QLineF& part : left) {
            const auto hidden = clipped(part, wide);
            if (!hidden) {
                next.push_back(part);
                continue;
            }
            const QLineF before(part.p1(), hidden->p1());
            const QLineF after(hidden->p2(), part.p2());
            if (before.length() > 0) next.push_back(before);
            if (after.length() > 0) next.push_back(after);
        }
        left = std::move(next);
    }
    return left;
}

bool placeLabel(Sheet& sheet, Room& room, const Label& label) {
    const double width = widthOf(label.text, label.size_mm, label.bold);
    const double height = label.size_mm;
    const double best = std::atan2(label.direction.y(), label.direction.x());
    for (const bool careful : {true, false}) {
        for (const double reach : reaches_mm) {
            for (int turn = 0; turn < directions; ++turn) {
                // 0, +1, -1, +2, -2, ... steps away from the direction that is best
                const int steps = (turn + 1) / 2 * (turn % 2 == 1 ? 1 : -1);
                const double angle = best + steps * 2 * std::numbers::pi / directions;
                const QPointF way(std::cos(angle), std::sin(angle));
                const QPointF middle =
                    label.anchor + way * (label.clear_mm + reach) + QPointF(way.x() * width / 2, way.y() * height / 2);
                const QRectF box(middle.x() - width / 2, middle.y() - height / 2, width, height);
                if (!room.isFree(box, careful)) continue;
                const QPointF edge = nearestOf(box, label.anchor);
                QLineF leader(label.anchor, edge);
                if (leader.length() > leaderFrom_mm) {
                    const double length = leader.length();
                    leader = QLineF(leader.pointAt(0.8 / length), leader.pointAt(1 - 0.6 / length));
                    if (room.crossesBox(leader) || (careful && room.crossesInk(leader))) continue;
                    addLine(sheet, leader.p1(), leader.p2(), 0.1);
                    room.addInk(QPolygonF({leader.p1(), leader.p2()}));
                }
                const Words words{
                    label.text, {box.left(), box.top() + 0.8 * height}, label.size_mm, Lean::left, label.bold};
                sheet.words.push_back(words);
                room.addBox(box);
                return true;
            }
        }
    }
    return false;
}

}  // namespace fayline::app::paper
