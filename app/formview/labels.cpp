#include "app/formview/labels.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace fayline::app {

namespace {

constexpr double square_px = 4;
constexpr char drawnOn = 1;
constexpr char barredGround = 3;       // drawn on, and nothing may be written
constexpr double air_px = 2;           // between two words
constexpr double shortLeader_px = 16;  // nearer than this needs no leader
constexpr double clear_px = 5;         // between the middle of what is named and its leader
constexpr double touchCost = 12;       // of words that touch what is drawn
constexpr double acrossCost = 75;      // of a stroke that runs through the words
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

// Whether words at `area` with their leader would cover what stands.
bool coversText(const std::vector<Text>& texts, const QRectF& area, const QLineF& leader, bool leadersMayCross) {
    const QRectF aired = area.adjusted(-air_px, -air_px, air_px, air_px);
    return std::any_of(texts.begin(), texts.end(), [&](const Text& other) {
        if (other.place.intersects(aired) || (!leader.isNull() && crosses(leader, other.place))) return true;
        if (other.leader.isNull()) return false;
        return crosses(other.leader, area) || (!leadersMayCross && cross(other.leader, leader));
    });
}

// From the thing named to the words, or to the ring round them.
QLineF leaderTo(const Wish& wish, const QRectF& area) {
    if (!wish.ringed) return {wish.anchor, nearestOn(area, wish.anchor)};
    const QLineF toMiddle(wish.anchor, area.center());
    const double length = toMiddle.length();
    const double ring = area.width() / 2;
    return length > ring ? QLineF(wish.anchor, toMiddle.pointAt(1 - ring / length)) : QLineF(wish.anchor, wish.anchor);
}

Text textAt(const Wish& wish, const QRectF& area, const QLineF& leader) {
    const bool led = leader.length() > shortLeader_px;
    // What is named stays clear of it.
    const double from = wish.ringed || !led ? 0 : clear_px / leader.length();
    return Text{.words = wish.words,
                .place = area,
                .role = wish.role,
                .ringed = wish.ringed,
                .worked = wish.worked,
                .leader = led ? QLineF(leader.pointAt(from), leader.p2()) : QLineF(),
                .tag = wish.tag,
                .station = wish.station};
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
            if (!view.contains(area) || occupied.barred(area)) continue;
            // The squares first: they rule out most places, and counting them is quick.
            const double share = occupied.shareOf(area);
            const double onGround = cost + 170 * share + (share > 0 ? touchCost : 0);
            if (onGround >= bestCost) continue;
            const QLineF leader = leaderTo(wish, area);
            if (coversText(texts, area, leader, false)) continue;
            const double whole = onGround + acrossCost * occupied.crossings(area) + 60 * occupied.shareOf(leader);
            if (whole >= bestCost || occupied.crossesLegend(leader)) continue;
            bestCost = whole;
            best = textAt(wish, area, leader);
        }
    }
    return best;
}

// The nearest free place, wherever it is: for what must stand. Leaders cross others only where there is no other way;
// what lies under words or a legend itself has none.
std::optional<Text> anyPlace(const std::vector<Text>& texts, const Wish& wish, const QRectF& view,
                             const Occupied& occupied) {
    const double farthest = std::hypot(view.width(), view.height());
    constexpr int turnsRound = 48;
    const double towards = std::atan2(wish.towards.y(), wish.towards.x());
    enum class Leader { clear, crossing, none };
    for (const Leader kind : {Leader::clear, Leader::crossing, Leader::none}) {
        for (double away = wish.size.width() / 2 + wish.away; away < farthest; away += 6) {
            for (int i = 0; i < turnsRound; ++i) {
                const int turns = i % 2 ? (i + 1) / 2 : -i / 2;  // to both sides of the wished way
                const double angle = towards + turns * 2 * std::numbers::pi / turnsRound;
                QRectF area(QPointF(0, 0), wish.size);
                area.moveCenter(wish.anchor + QPointF(std::cos(angle), std::sin(angle)) * away);
                if (!view.contains(area) || occupied.barred(area)) continue;
                const QLineF leader = kind == Leader::none ? QLineF() : leaderTo(wish, area);
                if (coversText(texts, area, leader, kind != Leader::clear) || occupied.crossesLegend(leader)) continue;
                return textAt(wish, area, leader);
            }
        }
    }
    return std::nullopt;
}

}  // namespace

Occupied::Occupied(const QSizeF& view)
    : columns_(static_cast<int>(view.width() / square_px) + 1),
      rows_(static_cast<int>(view.height() / square_px) + 1),
      filled_(static_cast<size_t>(columns_) * rows_, 0) {}

Occupied::Range Occupied::squaresOf(const QRectF& area) const {
    const auto column = [&](double x) { return static_cast<int>(std::clamp(x / square_px, -1.0, columns_ + 0.0)); };
    const auto row = [&](double y) { return static_cast<int>(std::clamp(y / square_px, -1.0, rows_ + 0.0)); };
    return {std::max(0, column(area.left())), std::min(columns_ - 1, column(area.right())),
            std::max(0, row(area.top())), std::min(rows_ - 1, row(area.bottom()))};
}

void Occupied::mark(const QRectF& area, char with) {
    const Range squares = squaresOf(area);
    for (int j = squares.top; j <= squares.bottom; ++j) {
        for (int i = squares.left; i <= squares.right; ++i) {
            char& square = filled_[static_cast<size_t>(j) * columns_ + i];
            square = static_cast<char>(square | with);
        }
    }
}

void Occupied::fill(const QRectF& area) {
    mark(area, drawnOn);
}

void Occupied::bar(const QRectF& area) {
    if (!area.isNull()) mark(area, barredGround);
}

// Row by row of squares: from where to where the figure reaches in each.
void Occupied::barFigure(const QPolygonF& figure) {
    const QRectF bounds = figure.boundingRect();
    if (!bounds.adjusted(-1, -1, 1, 1).intersects(QRectF(0, 0, columns_ * square_px, rows_ * square_px))) return;
    const Range squares = squaresOf(bounds);
    for (int j = squares.top; j <= squares.bottom; ++j) {
        const double above = j * square_px;
        const double below = above + square_px;
        double left = columns_ * square_px;
        double right = -square_px;
        for (qsizetype i = 0; i < figure.size(); ++i) {
            const QPointF& a = figure[i];
            const QPointF& b = figure[(i + 1) % figure.size()];
            const double upper = std::min(a.y(), b.y());
            const double lower = std::max(a.y(), b.y());
            if (lower < above || upper > below) continue;
            const double rise = b.y() - a.y();
            const auto reach = [&](double x) {
                left = std::min(left, x);
                right = std::max(right, x);
            };
            if (std::abs(rise) < 1e-9) {
                reach(a.x());
                reach(b.x());
                continue;
            }
            for (const double y : {std::max(upper, above), std::min(lower, below)}) {
                reach(a.x() + (b.x() - a.x()) * std::clamp((y - a.y()) / rise, 0.0, 1.0));
            }
        }
        if (left <= right) bar(QRectF(left, above, std::max(right - left, 1e-3), square_px * 0.99));
    }
}

void Occupied::barAlong(const QLineF& stroke) {
    barFigure(QPolygonF({stroke.p1(), stroke.p2()}));
}

void Occupied::addLegend(const QRectF& area) {
    if (area.isNull()) return;
    bar(area);
    legends_.push_back(area);
}

bool Occupied::barred(const QRectF& area) const {
    const Range squares = squaresOf(area);
    for (int j = squares.top; j <= squares.bottom; ++j) {
        for (int i = squares.left; i <= squares.right; ++i) {
            if (filled_[static_cast<size_t>(j) * columns_ + i] == barredGround) return true;
        }
    }
    return false;
}

bool Occupied::crossesLegend(const QLineF& line) const {
    return !line.isNull() &&
           std::any_of(legends_.begin(), legends_.end(), [&](const QRectF& legend) { return crosses(line, legend); });
}

void Occupied::count() {
    const size_t wide = static_cast<size_t>(columns_) + 1;
    for (auto* sums : {&drawnSums_, &barredSums_}) sums->assign(wide * (static_cast<size_t>(rows_) + 1), 0);
    for (int j = 0; j < rows_; ++j) {
        int drawnHere = 0;
        int barredHere = 0;
        for (int i = 0; i < columns_; ++i) {
            const char square = filled_[static_cast<size_t>(j) * columns_ + i];
            drawnHere += square != 0;
            barredHere += square == barredGround;
            const size_t at = (static_cast<size_t>(j) + 1) * wide + static_cast<size_t>(i) + 1;
            drawnSums_[at] = drawnSums_[at - wide] + drawnHere;
            barredSums_[at] = barredSums_[at - wide] + barredHere;
        }
    }
}

int Occupied::sum(const std::vector<int>& sums, const QRectF& area) const {
    const Range squares = squaresOf(area);
    if (squares.left > squares.right || squares.top > squares.bottom) return 0;
    const auto at = [&](int column, int row) {
        return sums[static_cast<size_t>(row) * (static_cast<size_t>(columns_) + 1) + static_cast<size_t>(column)];
    };
    return at(squares.right + 1, squares.bottom + 1) - at(squares.left, squares.bottom + 1) -
           at(squares.right + 1, squares.top) + at(squares.left, squares.top);
}

int Occupied::counted(const QRectF& area) const {
    return sum(drawnSums_, area);
}

int Occupied::countedBarred(const QRectF& area) const {
    return sum(barredSums_, area);
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
    const Range squares = squaresOf(area);
    int filled = 0;
    int all = 0;
    for (int j = squares.top; j <= squares.bottom; ++j) {
        for (int i = squares.left; i <= squares.right; ++i) {
            filled += filled_[static_cast<size_t>(j) * columns_ + i] != 0;
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
        auto text = bestPlace(texts, wish, view, occupied);
        if (!text && wish.station >= 0) text = anyPlace(texts, wish, view, occupied);
        if (text) texts.push_back(*text);
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
