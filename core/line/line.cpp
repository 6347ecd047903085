#include "core/line/line.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "core/line/quintic.hpp"
#include "core/math/quadrature.hpp"
#include "core/units/input_error.hpp"

namespace fayline::line {

namespace {

constexpr double lengthError = 1e-12;        // of a piece's arc length, relative; far below the 1e-9 promised
constexpr double mostTurnOfPiece_rad = 0.5;  // of a piece
constexpr int mostHalvings = 8;

// p(u) seen on from..from + 1/2 of u, as a polynomial of 0..1.
std::array<Xy, 6> half(std::array<Xy, 6> p, double from) {
    for (int i = 0; i < 5; ++i) {
        for (int k = 4; k >= i; --k) {
            p[k].x_m += from * p[k + 1].x_m;
            p[k].y_m += from * p[k + 1].y_m;
        }
    }
    double scale = 1;
    for (Xy& c : p) {
        c.x_m *= scale;
        c.y_m *= scale;
        scale /= 2;
    }
    return p;
}

}  // namespace

Line::Line(const std::vector<double>& knots, const std::vector<Xy>& coefficients) {
    const bool shaped = knots.size() >= 12 && coefficients.size() + 6 == knots.size() &&
                        std::ranges::is_sorted(knots) && knots[0] == knots[5] &&
                        knots[knots.size() - 6] == knots.back() && knots.front() < knots.back();
    if (!shaped) {
        throw units::InputError("line", "these knots and coefficients make no spline of degree 5",
                                "give ascending knots, six-fold at the ends, and 6 coefficients fewer than knots");
    }
    for (const QuinticInterval& interval : quinticIntervals(knots)) {
        Piece piece{0, 0, 0, interval.start, interval.width, {}};
        for (int j = 0; j < 6; ++j) {
            const Xy& c = coefficients[interval.first + j];
            for (int k = 0; k < 6; ++k) {
                piece.polynomial[k].x_m += interval.polynomial[j][k] * c.x_m;
                piece.polynomial[k].y_m += interval.polynomial[j][k] * c.y_m;
            }
        }
        append(piece, 0);
    }
    if (!(length_m_ > 0) || !std::isfinite(length_m_)) {
        throw units::InputError("line", "the line has no length", "give coefficients that are finite and differ");
    }
}

// Halves the piece until its length and turn can be had from one rule, then sets it behind the others.
void Line::append(Piece piece, int depth) {
    Piece first = piece;
    first.polynomial = half(piece.polynomial, 0);
    first.width = piece.width / 2;
    Piece second = piece;
    second.polynomial = half(piece.polynomial, 0.5);
    second.width = piece.width / 2;
    second.t = piece.t + first.width;
    const double whole = lengthWithin(piece, 1);
    const double halves = lengthWithin(first, 1) + lengthWithin(second, 1);
    const Xy from = derivatives(piece, 0)[1];
    const Xy midway = derivatives(piece, 0.5)[1];
    const Xy to = derivatives(piece, 1)[1];
    const double turn =
        std::atan2(cross(from, midway), dot(from, midway)) + std::atan2(cross(midway, to), dot(midway, to));
    const bool fine = std::abs(whole - halves) <= lengthError * halves && std::abs(turn) < mostTurnOfPiece_rad;
    if (!fine && depth < mostHalvings) {
        append(first, depth + 1);
        append(second, depth + 1);
        return;
    }
    piece.start_m = length_m_;
    piece.length_m = halves;
    piece.heading_rad = std::atan2(from.y_m, from.x_m);
    if (!pieces_.empty()) {
        const Piece& before = pieces_.back();
        const double ends_rad = placeWithin(before, 1, piece.start_m).heading_rad;
        piece.heading_rad = ends_rad + std::remainder(piece.heading_rad - ends_rad, 2 * std::acos(-1.0));
    }
    pieces_.push_back(piece);
    length_m_ += halves;
}

std::array<Xy, 4> Line::derivatives(const Piece& piece, double u) {
    const auto at = [&](auto member) {
        const auto& p = piece.polynomial;
        const double c1 = p[1].*member, c2 = p[2].*member, c3 = p[3].*member, c4 = p[4].*member, c5 = p[5].*member;
        return std::array<double, 4>{p[0].*member + u * (c1 + u * (c2 + u * (c3 + u * (c4 + u * c5)))),
                                     c1 + u * (2 * c2 + u * (3 * c3 + u * (4 * c4 + u * 5 * c5))),
                                     2 * c2 + u * (6 * c3 + u * (12 * c4 + u * 20 * c5)),
                                     6 * c3 + u * (24 * c4 + u * 60 * c5)};
    };
    const auto x = at(&Xy::x_m);
    const auto y = at(&Xy::y_m);
    return {Xy{x[0], y[0]}, Xy{x[1], y[1]}, Xy{x[2], y[2]}, Xy{x[3], y[3]}};
}

double Line::lengthWithin(const Piece& piece, double u) {
    return math::gauss8([&](double at) { return math::norm(derivatives(piece, at)[1]); }, 0, u);
}

double Line::parameterWithin(const Piece& piece, double length_m) {
    double u = std::clamp(length_m / piece.length_m, 0.0, 1.0);
    for (int i = 0; i < 8; ++i) {
        const Xy r1 = derivatives(piece, u)[1];
        const double step = (length_m - lengthWithin(piece, u)) / math::norm(r1);
        u = std::clamp(u + step, 0.0, 1.0);
        if (std::abs(step) < 1e-13) break;
    }
    return u;
}

Place Line::placeWithin(const Piece& piece, double u, double at_m) {
    const auto [r, r1, r2, r3] = derivatives(piece, u);
    const Xy& from = piece.polynomial[1];
    const double speed2 = dot(r1, r1);
    const double speed = std::sqrt(speed2);
    const double turned = cross(r1, r2);
    const double byParameter = (cross(r1, r3) - 3 * turned * dot(r1, r2) / speed2) / (speed2 * speed);
    return {at_m,
            r.x_m,
            r.y_m,
            piece.heading_rad + std::atan2(cross(from, r1), dot(from, r1)),
            turned / (speed2 * speed),
            byParameter / speed};
}

const Line::Piece& Line::pieceAt(double at_m) const {
    const auto after = std::upper_bound(pieces_.begin(), pieces_.end(), at_m,
                                        [](double at, const Piece& piece) { return at < piece.start_m; });
    return after == pieces_.begin() ? pieces_.front() : *(after - 1);
}

Place Line::at(double at_m) const {
    if (pieces_.empty()) return {};
    if (at_m >= 0 && at_m <= length_m_) {
        const Piece& piece = pieceAt(at_m);
        return placeWithin(piece, parameterWithin(piece, at_m - piece.start_m), at_m);
    }
    const bool before = at_m < 0;
    const Place end = before ? placeWithin(pieces_.front(), 0, 0) : placeWithin(pieces_.back(), 1, length_m_);
    const double past_m = before ? at_m : at_m - length_m_;
    // Chord of the arc: its length is past * sinc(turn / 2) and it points halfway between the two headings.
    const double turn = end.curvature_per_m * past_m;
    const double chord_m = past_m * (std::abs(turn) < 1e-6 ? 1 - turn * turn / 24 : std::sin(turn / 2) / (turn / 2));
    const double toward = end.heading_rad + turn / 2;
    return {at_m,
            end.x_m + chord_m * std::cos(toward),
            end.y_m + chord_m * std::sin(toward),
            end.heading_rad + turn,
            end.curvature_per_m,
            0};
}

Nearest Line::nearest(double x_m, double y_m) const {
    if (pieces_.empty()) return {};
    const Xy point{x_m, y_m};
    double best = std::numeric_limits<double>::infinity();
    Nearest nearest;
    const auto take = [&](const Piece& piece, double u) {
        const auto d = derivatives(piece, u);
        const Xy away = point - d[0];
        const double distance = math::hypot(away);
        if (distance >= best) return;
        best = distance;
        nearest = {piece.start_m + lengthWithin(piece, u), cross(d[1], away) < 0 ? -distance : distance};
    };
    // No place of a piece is nearer than its middle less half its length: most pieces need no closer look.
    std::vector<double> bound;
    bound.reserve(pieces_.size());
    double reach = std::numeric_limits<double>::infinity();
    for (const Piece& piece : pieces_) {
        const Xy away = point - derivatives(piece, 0.5)[0];
        const double distance = math::hypot(away);
        reach = std::min(reach, distance);
        bound.push_back(distance - piece.length_m);
    }
    take(pieces_.front(), 0);
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        if (bound[i] > reach) continue;
        const Piece& piece = pieces_[i];
        // Half the squared distance falls along the line while `ahead` is positive; a foot is where it turns negative.
        const auto ahead = [&](double u) {
            const auto d = derivatives(piece, u);
            const Xy away = point - d[0];
            return std::pair{dot(away, d[1]), dot(away, d[2]) - dot(d[1], d[1])};
        };
        constexpr int parts = 4;
        double from = ahead(0).first;
        for (int part = 0; part < parts; ++part) {
            double low = static_cast<double>(part) / parts;
            double high = static_cast<double>(part + 1) / parts;
            const double to = ahead(high).first;
            const double startedFrom = std::exchange(from, to);
            if (startedFrom < 0 || to > 0) continue;
            double u = (low + high) / 2;
            for (int k = 0; k < 60; ++k) {
                const auto [value, slope] = ahead(u);
                (value > 0 ? low : high) = u;
                double next = u - value / slope;
                if (!(slope < 0) || next < low || next > high) next = (low + high) / 2;
                const double step = std::abs(next - u);
                u = next;
                if (step < 1e-14) break;
            }
            take(piece, u);
        }
    }
    take(pieces_.back(), 1);
    nearest.at_m = std::clamp(nearest.at_m, 0.0, length_m_);
    return nearest;
}

Place Line::tightest() const {
    if (pieces_.empty()) return {};
    constexpr int parts = 8;
    struct Found {
        std::size_t piece = 0;
        double u = 0;
        double curvature = -1;
    } found;
    const auto curvature = [&](const Piece& piece, double u) {
        return std::abs(placeWithin(piece, u, 0).curvature_per_m);
    };
    for (std::size_t i = 0; i < pieces_.size(); ++i) {
        for (int part = 0; part <= parts; ++part) {
            const double u = static_cast<double>(part) / parts;
            const double here = curvature(pieces_[i], u);
            // A new place must be tighter by more than rounding: on a circle all are equal and the first is meant.
            if (here > found.curvature * (1 + 1e-9)) found = {i, u, here};
        }
    }
    // The greatest lies within one step of the sample; look there by thirds, within this piece and its neighbours.
    const auto refine = [&](const Piece& piece, double low, double high) {
        while ((high - low) * piece.length_m > 2e-6) {
            const double a = low + (high - low) / 3;
            const double b = high - (high - low) / 3;
            (curvature(piece, a) < curvature(piece, b) ? low : high) =
                curvature(piece, a) < curvature(piece, b) ? a : b;
        }
        const double u = (low + high) / 2;
        return std::pair{u, curvature(piece, u)};
    };
    const std::size_t at = found.piece;
    const double u = found.u;
    const auto consider = [&](std::size_t piece, double low, double high) {
        const auto [where, tight] = refine(pieces_[piece], low, high);
        if (tight > found.curvature * (1 + 1e-9)) found = {piece, where, tight};
    };
    const double step = 1.0 / parts;
    consider(at, std::max(0.0, u - step), std::min(1.0, u + step));
    if (u == 0 && at > 0) consider(at - 1, 1 - step, 1);
    if (u == 1 && at + 1 < pieces_.size()) consider(at + 1, 0, step);
    const Piece& piece = pieces_[found.piece];
    return placeWithin(piece, found.u, piece.start_m + lengthWithin(piece, found.u));
}

double Line::lengthTo(double t) const {
    if (pieces_.empty()) return 0;
    const auto after =
        std::upper_bound(pieces_.begin(), pieces_.end(), t, [](double at, const Piece& piece) { return at < piece.t; });
    const Piece& piece = after == pieces_.begin() ? pieces_.front() : *(after - 1);
    if (t >= pieces_.back().t + pieces_.back().width) return length_m_;
    const double u = std::clamp((t - piece.t) / piece.width, 0.0, 1.0);
    return std::min(length_m_, piece.start_m + lengthWithin(piece, u));
}

std::vector<Place> sample(const Line& line, double step_m) {
    if (!(step_m > 0)) throw units::InputError("line", "places cannot be 0 apart", "give a step above 0");
    std::vector<Place> places;
    const double length_m = line.length();
    const double apart = std::ceil(length_m / step_m - 1e-9);
    places.reserve(static_cast<std::size_t>(apart) + 1);
    for (double i = 0; i < apart; ++i) places.push_back(line.at(i * step_m));
    places.push_back(line.at(length_m));
    return places;
}

Place parallel(const Place& place, double distance_m) {
    Place beside = place;
    beside.x_m -= distance_m * std::sin(place.heading_rad);
    beside.y_m += distance_m * std::cos(place.heading_rad);
    const double stretch = 1 - distance_m * place.curvature_per_m;
    if (stretch <= 0) {
        beside.curvature_per_m = std::copysign(std::numeric_limits<double>::infinity(), place.curvature_per_m);
        beside.curvatureRate_per_m2 = 0;
        return beside;
    }
    beside.curvature_per_m = place.curvature_per_m / stretch;
    beside.curvatureRate_per_m2 = place.curvatureRate_per_m2 / (stretch * stretch * stretch);
    return beside;
}

double parallelLength(const Line& line, double distance_m, double from_m, double to_m) {
    return (to_m - from_m) - distance_m * (line.at(to_m).heading_rad - line.at(from_m).heading_rad);
}

}  // namespace fayline::line
