// A stack with props under it, for checks that need no contact: pulls are given.
#pragma once

#include <vector>

#include "core/holding/props/hull.hpp"
#include "core/holding/props/prop.hpp"
#include "core/holding/props/screw.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::made {

inline constexpr double depth_m = 4 * 0.006;  // of the stack of PropWork

inline model::Station propAt(double at_m, model::HoldKind kind = model::HoldKind::prop) {
    return {.kind = kind, .at_m = at_m};
}

// Four strips of 6 mm without glue lines on the right of a line: below it where it runs level to the right.
struct PropWork {
    model::Piece piece;
    line::Line line;

    explicit PropWork(double heading_rad, double length_m = 1.0)
        : PropWork(lineOf([](double) { return 0.0; }, length_m, heading_rad)) {}
    explicit PropWork(line::Line given) : line(std::move(given)) {
        piece.line.stripsOn = model::Side::right;
        piece.stack.strips = {model::Strips{.count = 4, .thickness_m = 0.006}};
        piece.stack.glueLine_m = 0;
    }

    holding::StackOnForm onForm() const { return {piece, line, wood::builtInSpecies()}; }

    // With these pulls at the stations, in their order in the piece.
    static holding::Held held(const std::vector<double>& pulls_N) {
        holding::Held held;
        for (std::size_t i = 0; i < pulls_N.size(); ++i) {
            held.stations.push_back({.index = static_cast<int>(i), .pull_N = pulls_N[i]});
        }
        return held;
    }
    std::vector<holding::PropPlan> plans(const std::vector<double>& pulls_N) const {
        return holding::propPlans(onForm(), held(pulls_N));
    }
    std::vector<holding::ScrewPlan> screws(const std::vector<double>& pulls_N) const {
        return holding::screwPlans(onForm(), held(pulls_N));
    }
};

}  // namespace fayline::made
