// Pieces made from formulas, for checks of the whole plan.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <ostream>
#include <string>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::plan {

inline const units::Display inMillimetres;

inline std::ostream& operator<<(std::ostream& out, Code code) {
    return out << codeWord(code);
}

// All that a finding says.
inline std::string english(const Finding& finding, const units::Display& display = inMillimetres) {
    const std::string details = detailsOf(finding, display);
    return textOf(finding, display) + (details.empty() ? "" : " " + details);
}

// The first of this code; null where there is none.
inline const Finding* findingOf(const std::vector<Finding>& findings, Code code) {
    const auto found = std::ranges::find(findings, code, &Finding::code);
    return found == findings.end() ? nullptr : &*found;
}
inline const Finding* findingOf(const Plan& plan, Code code) {
    return findingOf(plan.findings, code);
}

// The same of findings or of a plan; a failure of the test where there is none.
inline Finding foundIn(const auto& in, Code code) {
    const Finding* found = findingOf(in, code);
    EXPECT_TRUE(found) << code;
    return found ? *found : Finding{};
}

inline int countOf(const std::vector<Finding>& findings, Code code) {
    return static_cast<int>(std::ranges::count(findings, code, &Finding::code));
}

// The only one of this code.
inline Finding the(const std::vector<Finding>& findings, Code code) {
    EXPECT_EQ(countOf(findings, code), 1) << code;
    const Finding* found = findingOf(findings, code);
    return found ? *found : Finding{};
}

// Whether one of the sentences under it is made from this pattern.
inline bool details(const Finding& finding, const Phrase& phrase) {
    return std::ranges::any_of(finding.details, [&](const Message& detail) { return detail.is(phrase); });
}

inline bool sameBits(double one, double other) {
    return std::bit_cast<std::uint64_t>(one) == std::bit_cast<std::uint64_t>(other);
}

}  // namespace fayline::plan

namespace fayline::made {

// A piece with `points` offsets of `line` at even distances along it, read as finely as it is given.
inline model::Piece pieceOn(const line::Line& line, int points) {
    model::Piece piece;
    piece.name = "Made";
    for (int i = 0; i < points; ++i) {
        const line::Place place = line.at(line.length() * i / (points - 1));
        piece.line.points.push_back({.label = "P " + std::to_string(i + 1), .x_m = place.x_m, .y_m = place.y_m});
    }
    piece.line.readTo_m = 1e-5;
    piece.line.fairWithin_m = 1e-3;
    return piece;
}

// An arc that turns right with the strips on its left, outside: a bend of radius_m by turn_rad.
inline model::Piece bend(double radius_m, double turn_rad, int points = 15) {
    return pieceOn(arc(-radius_m, turn_rad), points);
}

inline model::Piece bend(double radius_m, double turn_rad, const model::Strips& strips) {
    model::Piece piece = bend(radius_m, turn_rad);
    piece.stack.strips = {strips};
    return piece;
}

// A bend of 0.8 m with so many strips.
inline model::Piece bendOf(int strips) {
    return bend(0.8, 1.2, {.count = strips});
}

// Five 8 mm strips of white oak round 0.55 m: 0.7 % of strain, where some break.
inline model::Piece sparesWanted() {
    model::Piece piece = bend(0.55, 1.2, {.count = 5, .thickness_m = 0.008});
    piece.stack.grainSlope = 0.08;
    for (const double at : {0.05, 0.3, 0.6}) piece.holding.stations.push_back({.at_m = at, .most_N = 2e4});
    return piece;
}

// The stem of the invented boat: k(s) = 0.10 + 1.513 sech^2((s - 0.62)/0.34) per metre, rounded to sixteenths of an
// inch where `rounded`. It turns right here; nine quarter-inch strips of white oak on its left.
inline model::Piece stem(int points = 12, bool rounded = true) {
    const auto curvature = [](double s) { return -(0.10 + 1.513 / std::pow(std::cosh((s - 0.62) / 0.34), 2)); };
    model::Piece piece = pieceOn(lineOf(curvature, 1.8, std::numbers::pi - 0.0873, {1.4, 0.1}), points);
    piece.name = "Stem";
    piece.line.readTo_m = piece.line.fairWithin_m = units::sixteenth_m;
    if (rounded) {
        for (model::Point& point : piece.line.points) {
            point.x_m = std::round(point.x_m / units::sixteenth_m) * units::sixteenth_m;
            point.y_m = std::round(point.y_m / units::sixteenth_m) * units::sixteenth_m;
        }
    }
    piece.stack.strips[0].count = 9;
    return piece;
}

inline model::Piece heldStem() {
    model::Piece piece = stem();
    for (const double at : {0.04, 0.3, 0.62, 1.0, 1.33, 1.76}) piece.holding.stations.push_back({.at_m = at});
    return piece;
}

inline plan::Shop shop() {
    return plan::shopOf(model::Boat{});
}

inline plan::Plan planOf(const model::Piece& piece) {
    return plan::makePlan(piece, shop());
}

inline std::vector<plan::Finding> findingsFor(const model::Piece& piece) {
    return planOf(piece).findings;
}

}  // namespace fayline::made
