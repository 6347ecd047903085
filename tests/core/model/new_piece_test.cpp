// A new piece has figures that are round in the units of its boat.
#include "core/model/new_piece.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "core/units/units.hpp"

namespace fayline::model {
namespace {

std::vector<double> lengthsOf(const Piece& piece) {
    std::vector<double> lengths_m{piece.line.readTo_m,
                                  piece.stack.ripAllowance_m,
                                  piece.stack.runsPastStart_m,
                                  piece.stack.runsPastEnd_m,
                                  piece.stack.strips.front().thickness_m,
                                  piece.stack.widths.front().width_m};
    for (const Point& point : piece.line.points) lengths_m.insert(lengths_m.end(), {point.x_m, point.y_m});
    return lengths_m;
}

TEST(NewPiece, IsRoundInTheUnitsOfItsBoat) {
    for (const double length_m : lengthsOf(newPiece("Stem", units::metricShop))) {
        EXPECT_NEAR(length_m, std::round(1000 * length_m) / 1000, 1e-12) << length_m;  // whole millimetres
    }
    for (const double length_m : lengthsOf(newPiece("Stem", units::inchShop))) {
        const double sixteenths = length_m / units::sixteenth_m;
        EXPECT_NEAR(sixteenths, std::round(sixteenths), 1e-9) << length_m;
    }
}

TEST(NewPiece, IsNearlyTheSameInBoth) {
    const std::vector<double> metric = lengthsOf(newPiece("Stem", units::metricShop));
    const std::vector<double> inches = lengthsOf(newPiece("Stem", units::inchShop));
    for (std::size_t i = 1; i < metric.size(); ++i) EXPECT_NEAR(metric[i], inches[i], 0.07 * metric[i]) << i;
}

}  // namespace
}  // namespace fayline::model
