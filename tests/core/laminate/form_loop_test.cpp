// The loop closes: strips bent on the form that was worked out, released and integrated by other means than the
// project's own, lie on the wanted line.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <numbers>
#include <vector>

#include "core/laminate/springback/form_plan.hpp"
#include "tests/core/laminate/made_lines.hpp"
#include "tests/core/laminate/made_stacks.hpp"
#include "tests/core/line/random_line.hpp"

namespace fayline::laminate {
namespace form_loop_test {

using made::formOn;

using model::Side;

constexpr double pi = std::numbers::pi;

struct Ply {
    double thickness_m;
    double thicknessAtEnd_m;
    double modulus_Pa;
};

struct Laid {
    std::vector<Ply> plies;
    double glue_m = 0;
};

model::Piece pieceOf(const Laid& laid, Side side) {
    model::Piece piece;
    piece.name = "Loop";
    piece.line.stripsOn = side;
    piece.stack = made::stackOf(1, 0.006, laid.glue_m);
    piece.stack.strips.clear();
    for (const Ply& ply : laid.plies) {
        model::Strips strips{.count = 1, .thickness_m = ply.thickness_m};
        strips.moe_Pa = ply.modulus_Pa;
        if (ply.thicknessAtEnd_m != ply.thickness_m) strips.tapersTo_m = ply.thicknessAtEnd_m;
        piece.stack.strips.push_back(strips);
    }
    return piece;
}

// A section worked out anew: where its middles lie from the form, the neutral axis, and what the moment of the strips,
// each at its own curvature, takes from the axis' curvature `k` (> 0: convex toward the strips).
struct Section {
    double axis_m;
    double released(const Laid& laid, double share, double k) const {
        double moment = 0;
        double stiffness = 0;
        double face = 0;
        for (const Ply& ply : laid.plies) {
            const double t = ply.thickness_m + share * (ply.thicknessAtEnd_m - ply.thickness_m);
            const double away = face + t / 2 - axis_m;
            moment += ply.modulus_Pa * t * t * t / 12 * k / (1 + away * k);
            stiffness += ply.modulus_Pa * t * (t * t / 12 + away * away);
            face += t + laid.glue_m;
        }
        return k - moment / stiffness;
    }
};

Section sectionOf(const Laid& laid, double share) {
    double area = 0;
    double first = 0;
    double face = 0;
    for (const Ply& ply : laid.plies) {
        const double t = ply.thickness_m + share * (ply.thicknessAtEnd_m - ply.thickness_m);
        area += ply.modulus_Pa * t;
        first += ply.modulus_Pa * t * (face + t / 2);
        face += t + laid.glue_m;
    }
    return {first / area};
}

// Greatest distance of the released piece's faying surface from the wanted line. Everything is taken from points: the
// axis is laid beside the form's faying surface, its arc length and turn are measured between points a millimetre
// apart, and the released axis is put together from chords.
double missOf(const line::Line& line, const Laid& laid, Side side, const FormPlan& plan) {
    const double left = side == Side::left ? 1 : -1;
    const int count = static_cast<int>(line.length() / 0.001);
    std::vector<line::Xy> axis;
    std::vector<double> away;
    for (int i = 0; i <= count; ++i) {
        const double share = static_cast<double>(i) / count;
        const line::Place on = plan.line.faying(share * line.length());
        away.push_back(sectionOf(laid, share).axis_m);
        axis.push_back({on.x_m - left * away.back() * std::sin(on.heading_rad),
                        on.y_m + left * away.back() * std::cos(on.heading_rad)});
    }
    std::vector<double> length;
    std::vector<double> heading;
    for (int i = 0; i < count; ++i) {
        const double dx = axis[i + 1].x_m - axis[i].x_m;
        const double dy = axis[i + 1].y_m - axis[i].y_m;
        length.push_back(std::hypot(dx, dy));
        double angle = std::atan2(dy, dx);
        if (i > 0) angle = heading.back() + std::remainder(angle - heading.back(), 2 * pi);
        heading.push_back(angle);
    }
    // Released: each joint turns by less.
    const double begins = line.at(0).heading_rad + std::atan2(left * (away[1] - away[0]), length[0]);
    const double firstTurn = std::remainder(heading[0] - begins, 2 * pi);
    const double firstK = -left * firstTurn / (length[0] / 2);
    std::vector<double> turned{begins - left * length[0] / 2 * sectionOf(laid, 0).released(laid, 0, firstK)};
    for (int i = 1; i < count; ++i) {
        const double between = (length[i - 1] + length[i]) / 2;
        const double k = -left * (heading[i] - heading[i - 1]) / between;
        const double share = static_cast<double>(i) / count;
        turned.push_back(turned.back() - left * between * sectionOf(laid, share).released(laid, share, k));
    }
    // Laid on the wanted line at the start.
    const line::Place start = line.at(0);
    line::Xy at{start.x_m - left * away[0] * std::sin(start.heading_rad),
                start.y_m + left * away[0] * std::cos(start.heading_rad)};
    double most = 0;
    for (int i = 0; i < count; ++i) {
        at.x_m += length[i] * std::cos(turned[i]);
        at.y_m += length[i] * std::sin(turned[i]);
        // A taper leans the axis against the line that it is square to.
        const double lean = left * (away[i + 1] - away[i]) / length[i];
        const double next = i + 1 < count ? (turned[i] + turned[i + 1]) / 2 : turned[i];
        const line::Place wanted = line.at((i + 1) * line.length() / count);
        most = std::max(most, std::hypot(at.x_m + left * away[i + 1] * std::sin(next - lean) - wanted.x_m,
                                         at.y_m - left * away[i + 1] * std::cos(next - lean) - wanted.y_m));
    }
    return most;
}

Laid alike(int count, double thickness_m, double glue_m) {
    return {std::vector<Ply>(static_cast<std::size_t>(count), Ply{thickness_m, thickness_m, 12e9}), glue_m};
}

// The demo boat's lines from the formulas that they were invented by; 0.1 mm is what a piece must come back within.
TEST(FormLoop, ClosesOverStemDeckBeamAndTiller) {
    const auto stem = [](double s) { return -(0.10 + 1.513 / std::pow(std::cosh((s - 0.62) / 0.34), 2)); };
    const auto beam = [](double) { return -1 / 6.08588; };
    const auto tiller = [](double s) { return (1.30 - 0.25 * s) * std::sin(2 * pi * s / 1.10); };
    Laid tapered = alike(6, 0.0062, 0.00015);
    for (Ply& ply : tapered.plies) ply.thicknessAtEnd_m = 0.0042;
    struct Case {
        const char* name;
        line::Line line;
        Laid laid;
    };
    for (const Case& piece : {Case{"stem", made::lineOf(stem, 1.8), alike(9, 0.00635, 0.00015)},
                              Case{"deck beam", made::lineOf(beam, 1.9129), alike(5, 0.0095, 0.00015)},
                              Case{"tiller", made::lineOf(tiller, 1.1), tapered},
                              Case{"stem of three", made::lineOf(stem, 1.8), alike(3, 0.012, 0)}}) {
        const FormPlan plan = formOn(piece.line, pieceOf(piece.laid, Side::left));
        ASSERT_TRUE(plan.corrected);
        const double miss = missOf(piece.line, piece.laid, Side::left, plan);
        EXPECT_LT(miss, 1e-4) << piece.name;
        std::printf("%s: gives back %.3f %%, end %.2f mm open uncorrected; back within %.4f mm\n", piece.name,
                    100 * plan.parts[0].ratioAtTightest, 1e3 * plan.parts[0].uncorrected.end_m, 1e3 * miss);
    }
}

// Stacks of two to nine strips, alike, tapering or of two woods and thicknesses; on either side.
TEST(FormLoop, ClosesOverTwoHundredRandomFairLines) {
    double worst = 0;
    double opened = 0;
    for (std::uint32_t seed = 1; seed <= 200; ++seed) {
        const line::test::RandomLine random = line::test::randomLine(seed);
        const line::Line line =
            made::lineOf([&](double s) { return random.curvature(s); }, random.length_m, random.heading_rad);
        std::mt19937 bits(seed);
        const int count = 2 + static_cast<int>(bits() % 8);
        // The stack's depth is a tenth of the tightest radius at most.
        const double most = std::min(0.008, 0.1 / (std::abs(line.tightest().curvature_per_m) * count));
        Laid laid = alike(count, most, 0.0002 * (seed % 3));
        if (seed % 4 == 1) {
            for (Ply& ply : laid.plies) ply.thicknessAtEnd_m = 0.7 * most;
        }
        if (seed % 4 == 2) laid.plies.front() = {most / 2, most / 2, 8e9};
        const Side side = seed % 2 ? Side::left : Side::right;
        const FormPlan plan = formOn(line, pieceOf(laid, side));
        ASSERT_TRUE(plan.corrected) << seed;
        const double miss = missOf(line, laid, side, plan);
        EXPECT_LT(miss, 1e-4) << seed;
        worst = std::max(worst, miss);
        opened = std::max(opened, std::abs(plan.parts[0].uncorrected.end_m));
    }
    std::printf("200 random lines: back within %.4f mm, uncorrected up to %.0f mm off\n", 1e3 * worst, 1e3 * opened);
}

}  // namespace form_loop_test
}  // namespace fayline::laminate
