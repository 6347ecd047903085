#include "app/look/ribbon.hpp"

#include <cmath>

namespace fayline::app {

namespace {

double cross(const QPointF& a, const QPointF& b) {
    return a.x() * b.y() - a.y() * b.x();
}

QPointF leftOf(const QPointF& way) {
    return {-way.y(), way.x()};
}

// The ways from one corner that pass within the tolerance of every corner since.
class Cone {
public:
    explicit Cone(double tolerance) : tolerance_(tolerance) {}

    bool holds(const QPointF& way) const {
        if (open_) return true;
        return QPointF::dotProduct(way, way) >= farthest_ && cross(right_, way) >= 0 && cross(way, left_) >= 0;
    }
    void narrow(const QPointF& way) {
        const double squared = QPointF::dotProduct(way, way);
        farthest_ = std::max(farthest_, squared);
        if (squared <= tolerance_ * tolerance_) return;  // so near that any way passes it by
        const QPointF aside = leftOf(way) * (tolerance_ / std::sqrt(squared));
        if (open_ || cross(way + aside, left_) > 0) left_ = way + aside;
        if (open_ || cross(right_, way - aside) > 0) right_ = way - aside;
        open_ = false;
    }

private:
    double tolerance_;
    double farthest_ = 0;
    bool open_ = true;
    QPointF left_;
    QPointF right_;
};

// Points of an arc about `centre` from one radius to another, the shorter way round, both ends included.
void addArc(QPolygonF& figure, const QPointF& centre, const QPointF& from, const QPointF& to) {
    constexpr double step_rad = 0.3;
    const double turn = std::atan2(cross(from, to), QPointF::dotProduct(from, to));
    const int steps = std::max(1, static_cast<int>(std::ceil(std::abs(turn) / step_rad)));
    for (int i = 0; i <= steps; ++i) {
        const double angle = turn * i / steps;
        const double c = std::cos(angle);
        const double s = std::sin(angle);
        figure << centre + QPointF(c * from.x() - s * from.y(), s * from.x() + c * from.y());
    }
}

}  // namespace

std::vector<qsizetype> cornersSeen(const QPolygonF& line, double tolerance, const std::vector<bool>& wanted) {
    std::vector<qsizetype> seen;
    if (line.isEmpty()) return seen;
    seen.push_back(0);
    Cone cone(tolerance);
    for (qsizetype i = 1; i < line.size(); ++i) {
        const qsizetype before = i - 1;
        const bool stays = !wanted.empty() && wanted[before];
        if (before > seen.back() && (stays || !cone.holds(line[i] - line[seen.back()]))) {
            seen.push_back(before);
            cone = Cone(tolerance);
        }
        cone.narrow(line[i] - line[seen.back()]);
    }
    if (line.size() > 1) seen.push_back(line.size() - 1);
    return seen;
}

QPolygonF decimated(const QPolygonF& line, double tolerance) {
    QPolygonF made;
    for (const qsizetype i : cornersSeen(line, tolerance)) made << line[i];
    return made;
}

QPolygonF ribbon(const QPolygonF& line, double width) {
    constexpr double smooth = 0.94;  // cosine of a turn, at which a mitre lies a 130th of the width outside an arc
    const double half = width / 2;
    QPolygonF corners;
    std::vector<QPointF> ways;
    corners.reserve(line.size());
    ways.reserve(static_cast<size_t>(line.size()));
    for (const QPointF& at : line) {
        if (!corners.isEmpty()) {
            const QPointF way = at - corners.back();
            const double length = std::hypot(way.x(), way.y());
            if (!(length > 1e-9)) continue;
            ways.push_back(way / length);
        }
        corners << at;
    }
    if (ways.empty()) return {};
    QPolygonF left;
    QPolygonF right;
    left.reserve(2 * corners.size() + 2);
    right.reserve(corners.size() + 2);
    const auto add = [&](const QPointF& at, const QPointF& aside) {
        left << at + aside;
        right << at - aside;
    };
    add(corners.front(), leftOf(ways.front()) * half);
    for (size_t i = 1; i < ways.size(); ++i) {
        const QPointF& at = corners[static_cast<qsizetype>(i)];
        const QPointF before = leftOf(ways[i - 1]) * half;
        const QPointF after = leftOf(ways[i]) * half;
        const double cosine = QPointF::dotProduct(ways[i - 1], ways[i]);
        if (cosine > smooth) {
            add(at, (before + after) / (1 + cosine));
            continue;
        }
        const bool turnsLeft = cross(ways[i - 1], ways[i]) > 0;
        QPolygonF& inner = turnsLeft ? left : right;
        const double side = turnsLeft ? 1 : -1;
        inner << at + before * side << at << at + after * side;
        addArc(turnsLeft ? right : left, at, before * -side, after * -side);
    }
    add(corners.back(), leftOf(ways.back()) * half);
    for (qsizetype i = right.size(); i-- > 0;) left << right[i];
    return left;
}

void drawRibbon(QPainter& painter, const QPolygonF& line, double width, const QColor& colour) {
    const QPolygonF figure = ribbon(line, width);
    if (figure.isEmpty()) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(colour);
    painter.drawPolygon(figure, Qt::WindingFill);
    painter.setBrush(Qt::NoBrush);
}

}  // namespace fayline::app
