// A new piece has figures that are round in the units of its boat; arcs, beams and copies are what was asked for.
#include "core/model/new_piece.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::model {
namespace new_piece_test {

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

TEST(NewPiece, ItsSampleIsKnownUntilItIsTouched) {
    for (const units::Display& display : {units::metricShop, units::inchShop}) {
        Piece piece = newPiece("Stem", display);
        EXPECT_TRUE(isUntouchedSample(piece.line.points));
        piece.line.points[1].y_m += 0.001;
        EXPECT_FALSE(isUntouchedSample(piece.line.points));
    }
    EXPECT_FALSE(isUntouchedSample({}));
}

// By hand: a chord of 8 and a rise of 2 have a radius of 5 (3-4-5 triangle).
TEST(Arc, FollowsFromChordAndRiseOrRadius) {
    EXPECT_DOUBLE_EQ(arcOfRise(8, 2).radius_m(), 5);
    EXPECT_DOUBLE_EQ(arcOfRadius(8, 5).rise_m, 2);
    EXPECT_DOUBLE_EQ(arcOfRise(8, 2).turn_rad(), 2 * std::asin(0.8));
    EXPECT_DOUBLE_EQ(arcOfRise(2, 1).length_m(), std::numbers::pi);
    EXPECT_DOUBLE_EQ(arcOfRadius(2, 1).rise_m, 1);
    EXPECT_NEAR(arcOfRadius(1, 1000).rise_m, 1.0 / 8000, 1e-10);
}

TEST(Arc, ItsPointsLieOnTheCircle) {
    for (const Arc& arc : {arcOfRise(8, 2), arcOfRise(2.4, 0.096), arcOfRise(2, 1), arcOfRadius(1, 1000)}) {
        const std::vector<Point> points = arcPoints(arc);
        ASSERT_GE(points.size(), 9u);
        ASSERT_EQ(points.size() % 2, 1u);
        EXPECT_EQ(points.front().x_m, 0);
        EXPECT_EQ(points.front().y_m, 0);
        EXPECT_EQ(points.back().x_m, arc.chord_m);
        EXPECT_EQ(points.back().y_m, 0);
        const Point& middle = points[points.size() / 2];
        EXPECT_EQ(middle.x_m, arc.chord_m / 2);
        EXPECT_EQ(middle.y_m, arc.rise_m);
        const double centreY_m = arc.rise_m - arc.radius_m();
        double step_m = 0;
        for (std::size_t i = 0; i < points.size(); ++i) {
            const double radius_m = std::hypot(points[i].x_m - arc.chord_m / 2, points[i].y_m - centreY_m);
            EXPECT_NEAR(radius_m, arc.radius_m(), 1e-12 * arc.radius_m());
            if (i == 0) continue;
            const double next_m = std::hypot(points[i].x_m - points[i - 1].x_m, points[i].y_m - points[i - 1].y_m);
            if (i > 1) {
                EXPECT_NEAR(next_m, step_m, 1e-12);
            }
            step_m = next_m;
        }
        EXPECT_LE(arc.turn_rad() / (double(points.size()) - 1), units::fromDegrees(10) + 1e-12);
    }
}

TEST(Arc, WhatNoArcHasIsRefusedAtItsField) {
    const auto fieldOf = [](auto make) {
        try {
            make();
        } catch (const units::InputError& error) {
            EXPECT_FALSE(error.accepted().empty());
            return error.path();
        }
        return std::string("taken");
    };
    EXPECT_EQ(fieldOf([] { arcOfRise(0, 1); }), "chord");
    EXPECT_EQ(fieldOf([] { arcOfRise(-1, 1); }), "chord");
    EXPECT_EQ(fieldOf([] { arcOfRise(2, 0); }), "rise");
    EXPECT_EQ(fieldOf([] { arcOfRise(2, 1.001); }), "rise");
    EXPECT_EQ(fieldOf([] { arcOfRise(2, 1); }), "taken");
    EXPECT_EQ(fieldOf([] { arcOfRadius(2, 0.999); }), "radius");
    EXPECT_EQ(fieldOf([] { arcOfRadius(2, 1); }), "taken");
    EXPECT_EQ(fieldOf([] { arcOfRadius(2, NAN); }), "radius");
}

TEST(Beam, ItsUpperFaceRisesByTheRound) {
    const LineInput line = beamLine({}, 2.4, 0.096);
    EXPECT_EQ(line.describes, Describes::outerFace);
    EXPECT_EQ(line.points[line.points.size() / 2].y_m, 0.096);
    // The parabola, the other usual way, stays within a hundredth of the rise up to a rise of a tenth of the length.
    for (const double rise : {0.02, 0.04, 0.1}) {
        for (const Point& point : arcPoints(arcOfRise(1, rise)))
            EXPECT_NEAR(point.y_m, 4 * rise * point.x_m * (1 - point.x_m), 0.01 * rise) << rise;
    }
}

// A stem that stands, with what hangs on its places.
Piece stem() {
    Piece piece = newPiece("Stem");
    piece.id = "p7";
    piece.line.points[2].y_m = 0.5;
    piece.line.points[1].written = {"600", "90"};
    piece.line.startHeading_rad = 0.5;
    piece.form.fixedAt_m = 0.3;
    piece.form.posts = {Post{.at_m = 0.4}};
    Station prop{.kind = HoldKind::prop, .at_m = 0.5};
    prop.strut.footX_m = 0.2;
    prop.strut.footY_m = -1;
    piece.holding.stations = {prop};
    piece.holding.hull.blocks = {Block{.x_m = 0.1, .y_m = -2}};
    piece.record.push_back({});
    return piece;
}

TEST(Copy, OfOneAsItIsIsTheSameButForIdAndRecord) {
    Piece same = stem();
    same.id.clear();
    same.record.clear();
    EXPECT_EQ(copyOf(stem(), {}), same);
}

TEST(Copy, MirroredIsTheOtherHand) {
    const Piece piece = stem();
    const Piece copy = copyOf(piece, {.endForEnd = true});
    ASSERT_EQ(copy.line.points.size(), 3u);
    EXPECT_DOUBLE_EQ(copy.line.points[0].x_m, 1.2);
    EXPECT_DOUBLE_EQ(copy.line.points[1].x_m, 0.6);
    EXPECT_EQ(copy.line.points[1].y_m, 0.09);
    EXPECT_EQ(copy.line.points[1].written[1], "90");
    EXPECT_EQ(copy.line.stripsOn, Side::right);
    EXPECT_DOUBLE_EQ(*copy.line.startHeading_rad, std::numbers::pi - 0.5);
    EXPECT_EQ(copy.holding.stations[0].at_m, 0.5);
    EXPECT_DOUBLE_EQ(*copy.holding.stations[0].strut.footX_m, 1.0);
    EXPECT_EQ(*copy.holding.stations[0].strut.footY_m, -1);
    EXPECT_DOUBLE_EQ(copy.holding.hull.blocks[0].x_m, 1.1);
    // Both ways is half a turn: no other hand. Twice the same way is the piece again.
    EXPECT_EQ(copyOf(piece, {.endForEnd = true, .upsideDown = true}).line.stripsOn, Side::left);
    const Piece twice = copyOf(copyOf(piece, {.upsideDown = true}), {.upsideDown = true});
    for (int i = 0; i < 3; ++i) EXPECT_NEAR(twice.line.points[i].y_m, piece.line.points[i].y_m, 1e-12);
    EXPECT_NEAR(*twice.line.startHeading_rad, 0.5, 1e-12);
}

TEST(Copy, ScaledKeepsItsShapeAndTheThicknessOfItsStrips) {
    const Piece piece = stem();
    const Piece copy = copyOf(piece, {.scale = 1.5});
    for (int i = 0; i < 3; ++i) {
        EXPECT_DOUBLE_EQ(copy.line.points[i].x_m, 1.5 * piece.line.points[i].x_m);
        EXPECT_DOUBLE_EQ(copy.line.points[i].y_m, 1.5 * piece.line.points[i].y_m);
    }
    EXPECT_TRUE(copy.line.points[1].written[0].empty());
    EXPECT_EQ(copy.stack.strips, piece.stack.strips);
    EXPECT_DOUBLE_EQ(copy.holding.stations[0].at_m, 0.75);
    EXPECT_DOUBLE_EQ(*copy.form.fixedAt_m, 0.45);
    EXPECT_DOUBLE_EQ(copy.form.posts[0].at_m, 0.6);
}

}  // namespace new_piece_test
}  // namespace fayline::model
