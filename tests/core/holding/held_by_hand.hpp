// Pieces of round and straight strips with answers of the contact written by hand, for what only counts or looks them
// up.
#pragma once

#include <vector>

#include "core/holding/held.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::made {

// Eight strips of 6 mm, 50 mm wide as bent, round a bend of `radius_m` on the form's outside (0: straight).
struct Workpiece {
    model::Piece piece;
    line::Line line;
    std::vector<wood::Species> species = wood::builtInSpecies();

    explicit Workpiece(double radius_m, double length_m = 1.2)
        : line(radius_m == 0 ? straight(length_m) : arc(-radius_m, length_m / std::abs(radius_m))) {
        piece.stack.strips = {model::Strips{.count = 8, .thickness_m = 0.006}};
        piece.stack.glueLine_m = 0;
        piece.stack.ripAllowance_m = 0;
        piece.stack.widths = {model::Width{0, 0.050}};
        piece.stack.runsPastStart_m = piece.stack.runsPastEnd_m = 0.1;
    }

    holding::StackOnForm work() const { return {piece, line, species}; }

    void clamp(double at_m, double most_N = 2500) {
        piece.holding.stations.push_back(model::Station{.at_m = at_m, .most_N = most_N});
    }
};

// Every station that presses on the form pulls as given, in the order of the piece's stations.
inline holding::Held heldWith(const model::Piece& piece, const std::vector<double>& pulls_N) {
    holding::Held held;
    for (std::size_t i = 0; i < pulls_N.size(); ++i) {
        const model::Station& station = piece.holding.stations[i];
        if (station.side) continue;
        const int index = static_cast<int>(i);
        held.stations.push_back({index, index + 1, station.at_m, pulls_N[i], station.most_N, 0, {}});
    }
    return held;
}

}  // namespace fayline::made
