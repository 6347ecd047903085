#include "app/formview/labels.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace fayline::app {

namespace {

constexpr double square_px = 4;
constexpr double air_px = 2;           // between two words
constexpr double shortLeader_px = 16;  // nearer than this needs no leader
constexpr double clear_px = 5;         // between the middle of what is named and its leader
constexpr double touchCost = 12;       // of words that touch what is drawn
constexpr double acrossCost = 45;      // of a stroke that runs through the words
constexpr double worstCost = 100;      // of a place; words that would stand worse are left out

bool crosses(const QLineF& line, const QRectF& area) {
    // Most lines lie well apart, which is quickly told.
    if (std::max(line.x1(), line.x2()) < area.left() || std::min(line.x1(), line.x2()) > area.right() ||
        std::max(line.y1(), line.y2()) < area.top() || std::min(line.y1(), line.y2()) > area.bottom()) {
        return false;
    }
    if (area.contains(line.p1()) || area.contains(line.p2())) return true;
    const std::array<QLineF, 4> sides{
        QLineF(area.topLeft(), area.topRight()), QLineF(area.topRight(), area.bottomRight()),
        QLineF(area.bottomRight(), area.bottomLeft()), QLineF(area.bottomLeft(), area.topLeft())};
    return std::any_of(sides.begin(), sides.end(),
                       [&](const QLineF& side) { return line.intersects(side) == QLineF::BoundedIntersection; });
}

bool cross(const QLineF& a, const QLineF& b) {
    return a.intersects(b) == QLineF::BoundedIntersection;
}

QPointF nearestOn(const QRectF& area, const QPointF& to) {
    return {std::clamp(to.x(), area.left(), area.right()), std::clamp(to.y(), area.top(), area.bottom())};
}

// A way round the anchor, and how far along it the middle of the words lies beyond their edge.
struct Way {
    int turns = 0;  // of a sixteenth, from the wished way
    QPointF direction;
    double reach = 0;
};

constexpr int ways = 16;

std::array<Way, ways> waysOf(const Wish& wish) {
    constexpr double step = std::numbers::pi / 8;
    constexpr std::array<int, ways> turns{0, 1, -1, 2, -2, 3, -3, 4, -4, 5, -5, 6, -6, 7, -7, 8};
    const double towards = std::atan2(wish.towards.y(), wish.towards.x());
    std::array<Way, ways> made;
    for (size_t i = 0; i < made.size(); ++i) {
        const double angle = towards + turns[i] * step;
        const QPointF direction(std::cos(angle), std::sin(angle));
        const double reach = wish.ringed ? wish.size.width() / 2
                                         : std::min(wish.size.width() / 2 / std::max(std::abs(direction.x()), 1e-6),
                                                    wish.size.height() / 2 / std::max(std::abs(direction.y()), 1e-6));
        made[i] = {turns[i], direction, reach};
    }
    return made;
}

// The rectangle of the words whose edge lies `away` from the anchor.
QRectF candidate(const Wish& wish, const Way& way, double away) {
    QRectF area(QPointF(0, 0), wish.size);
    area.moveCenter(wish.anchor + way.direction * (away + way.reach));
    return area;
}

std::optional<Text> bestPlace(const std::vector<Text>& texts, const Wish& wish, const QRectF& view,
                              const Occupied& occupied) {
    const std::array<Way, ways> all = waysOf(wish);  // the same at every distance
    std::optional<Text> best;
    double bestCost = worstCost;
    for (double away = wish.away; away <= wish.farthest; away += 10) {
        for (const Way& way : all) {
            const double cost = (away - wish.away) * 0.8 + std::abs(way.turns) * 5.0;
            if (cost >= bestCost) continue;
            const QRectF area = candidate(wish, way, away);
            if (!view.contains(area)) continue;
            // The squares first: they rule out most places, and counting them is quick.
            const double share = occupied.shareOf(area);
            const double onGround = cost + 170 * share + (share > 0 ? touchCost : 0);
            if (onGround >= bestCost) continue;
            const QLineF leader(wish.anchor, nearestOn(area, wish.anchor));
            const bool led = leader.length() > shortLeader_px && !wish.ringed;
            const QRectF aired = area.adjusted(-air_px, -air_px, air_px, air_px);
            const bool taken = std::any_of(texts.begin(), texts.end(), [&](const Text& other) {
                return other.place.intersects(aired) || crosses(leader, other.place) ||
                       (!other.leader.isNull() && (crosses(other.leader, area) || cross(other.leader, leader)));
            });
            if (taken) continue;
            const double whole = onGround + acrossCost * occupied.crossings(area) + 60 * occupied.shareOf(leader);
            if (whole >= bestCost) continue;
            bestCost = whole;
            best = Text{.words = wish.words,
                        .place = area,
                        .role = wish.role,
                        .ringed = wish.ringed,
                        .leader = led ? QLineF(leader.pointAt(clear_px / leader.length()), leader.p2()) : QLineF(),
                        .tag = wish.tag};
        }
    }
    return best;
}

}  // namespace

Occupied::Occupied(const QSizeF& view)
    : columns_(static_cast<int>(view.width() / square_px) + 1),
      rows_(static_cast<int>(view.height() / square_px) + 1),
      filled_(static_cast<size_t>(columns_) * rows_, 0) {}

void Occupied::fill(const QRectF& area) {
    const auto column = [&](double x) { return static_cast<int>(std::clamp(x / square_px, -1.0, columns_ + 0.0)); };
    const auto row = [&](double y) { return static_cast<int>(std::clamp(y / square_px, -1.0, rows_ + 0.0)); };
    for (int j = std::max(0, row(area.top())); j <= std::min(rows_ - 1, row(area.bottom())); ++j) {
        for (int i = std::max(0, column(area.left())); i <= std::min(columns_ - 1, column(area.right())); ++i) {
            filled_[static_cast<size_t>(j) * columns_ + i] = 1;
        }
    }
}

void Occupied::fillAlong(const QLineF& stroke, double width) {
    const QRectF view(0, 0, columns_ * square_px, rows_ * square_px);
    const QRectF box(stroke.p1(), stroke.p2());
    if (!box.normalized().adjusted(-width, -width, width, width).intersects(view)) return;
    const int steps = std::min(2000, static_cast<int>(stroke.length() / square_px) + 1);
    for (int i = 0; i <= steps; ++i) {
        const QPointF at = stroke.pointAt(static_cast<double>(i) / steps);
        fill(QRectF(at.x() - width / 2, at.y() - width / 2, width, width));
    }
}

void Occupied::addStroke(const QLineF& stroke) {
    fillAlong(stroke, square_px);
    strokes_.push_back(stroke);
}

int Occupied::crossings(const QRectF& area) const {
    return static_cast<int>(
        std::count_if(strokes_.begin(), strokes_.end(), [&](const QLineF& stroke) { return crosses(stroke, area); }));
}

double Occupied::shareOf(const QRectF& area) const {
    const int left = std::max(0, static_cast<int>(area.left() / square_px));
    const int right = std::min(columns_ - 1, static_cast<int>(area.right() / square_px));
    const int top = std::max(0, static_cast<int>(area.top() / square_px));
    const int bottom = std::min(rows_ - 1, static_cast<int>(area.bottom() / square_px));
    int filled = 0;
    int all = 0;
    for (int j = top; j <= bottom; ++j) {
        for (int i = left; i <= right; ++i) {
            filled += filled_[static_cast<size_t>(j) * columns_ + i];
            ++all;
        }
    }
    return all > 0 ? static_cast<double>(filled) / all : 0;
}

double Occupied::shareOf(const QLineF& line) const {
    // What is named lies under the leader's beginning.
    constexpr double skipped_px = 12;
    const double length = line.length();
    if (length <= skipped_px) return 0;
    int filled = 0;
    int all = 0;
    for (double at = skipped_px; at < length; at += square_px) {
        const QPointF pixel = line.pointAt(at / length);
        filled += shareOf(QRectF(pixel, QSizeF(0, 0))) > 0;
        ++all;
    }
    return all > 0 ? static_cast<double>(filled) / all : 0;
}

void placeTexts(std::vector<Text>& texts, std::vector<Wish> wishes, const QRectF& view, const Occupied& occupied) {
    std::stable_sort(wishes.begin(), wishes.end(),
                     [](const Wish& a, const Wish& b) { return a.importance > b.importance; });
    for (const Wish& wish : wishes) {
        if (!view.adjusted(-8, -8, 8, 8).contains(wish.anchor)) continue;
        if (const auto text = bestPlace(texts, wish, view, occupied)) texts.push_back(*text);
    }
}

bool addText(std::vector<Text>& texts, const Text& text, const QRectF& view) {
    if (!view.contains(text.place)) return false;
    const bool taken = std::any_of(texts.begin(), texts.end(), [&](const Text& other) {
        return other.place.intersects(text.place) || (!other.leader.isNull() && crosses(other.leader, text.place));
    });
    if (taken) return false;
    texts.push_back(text);
    texts.back().fixed = true;
    return true;
}

}  // namespace fayline::app
