// How far apart pads may stand, against the contact solver: pads at that spacing, the paste's push as a load.
#include <gtest/gtest.h>

#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

#include "core/holding/pressing.hpp"
#include "core/wood/bending.hpp"
#include "tests/core/holding/held_by_hand.hpp"

namespace fayline::holding {
namespace pressed_out_test {

struct Case {
    std::string name;
    std::vector<model::Strips> strips;
    double width_m = 0.05;
    double film_m = 0.0003;
    double yield_Pa = 100;
    double caul_m = 0;
    double radius_m = 0;  // of the form; 0: straight
    double pad_m = 0.04;
};

std::vector<Case> cases() {
    using model::Strips;
    return {
        {"nine of a quarter inch", {Strips{.count = 9, .thickness_m = 0.00635}}},
        {"the same, thin line", {Strips{.count = 9, .thickness_m = 0.00635}}, 0.05, 0.00015},
        {"thin and wide", {Strips{.count = 12, .thickness_m = 0.004}}, 0.1, 0.0003, 40, 0, 0, 0.02},
        {"thick and narrow", {Strips{.count = 5, .thickness_m = 0.012}}, 0.03},
        {"round a bend", {Strips{.count = 8, .thickness_m = 0.006}}, 0.05, 0.0003, 100, 0, 1.2},
        {"in a hollow", {Strips{.count = 8, .thickness_m = 0.006}}, 0.05, 0.0003, 100, 0, -1.2},
        {"under a caul", {Strips{.count = 8, .thickness_m = 0.005}}, 0.06, 0.0002, 200, 0.012},
        {"a quarter inch in a thin line", {Strips{.count = 9, .thickness_m = 0.00635}}, 0.05, 0.00015, 100, 0, 0, 0.03},
        {"stiff paste", {Strips{.count = 6, .thickness_m = 0.01}}, 0.04, 0.0004, 500},
        {"sacrificial strips outside",
         {Strips{.count = 6, .thickness_m = 0.006}, Strips{.count = 2, .thickness_m = 0.004, .sacrificial = true}}},
        {"another wood outside",
         {Strips{.count = 4, .thickness_m = 0.008}, Strips{.count = 1, .thickness_m = 0.007, .species = "ash_white"}},
         0.045},
    };
}

model::Piece pieceOf(const Case& of) {
    model::Piece piece;
    piece.stack.strips = of.strips;
    piece.stack.widths = {model::Width{0, of.width_m}};
    piece.stack.ripAllowance_m = 0;
    piece.stack.glueLine_m = of.film_m;
    piece.glue.pasteYield_Pa = of.yield_Pa;
    piece.holding.cauls.thickness_m = of.caul_m;
    return piece;
}

// Of the strips from the outermost that stays outwards and of the caul, each for itself.
double stiffnessAbove(const model::Piece& piece) {
    double stiffness = 0;
    double modulus = 0;
    const auto add = [&](double thickness_m, int count) {
        stiffness += count * modulus * piece.stack.widths.front().width_m * std::pow(thickness_m, 3) / 12;
    };
    for (std::size_t i = piece.stack.strips.size(); i-- > 0;) {
        const model::Strips& strips = piece.stack.strips[i];
        const wood::Species& species = *wood::findSpecies(wood::builtInSpecies(), strips.species);
        modulus = wood::bending(species, piece.stack.moisture, piece.stack.grainSlope, {}).modulus_Pa;
        if (i + 1 == piece.stack.strips.size()) add(piece.holding.cauls.thickness_m, 1);
        add(strips.thickness_m, strips.sacrificial ? strips.count : 1);
        if (!strips.sacrificial) break;
    }
    return stiffness;
}

// How much higher than under its pads the middle one of eight spans stands: strips of this stiffness held down by pads
// so far apart, pushed off the form by `push_N_m`.
double riseBetweenPads(const Case& of, double stiffness_N_m2, double push_N_m, double spacing_m) {
    constexpr int spans = 8;
    Problem problem;
    const double past_m = of.pad_m;
    std::vector<double> marks;
    for (int i = 0; i <= spans; ++i) {
        const double at = i * spacing_m;
        problem.holds.push_back({at, of.pad_m, 1e7, std::nullopt});
        marks.insert(marks.end(), {at - of.pad_m / 2, at, at + of.pad_m / 2, at + spacing_m / 2});
    }
    problem.padsHold = false;
    Rod& rod = problem.rod;
    rod.mesh = contact::meshBetween(-past_m, spans * spacing_m + past_m, marks, 0.005);
    const std::vector<double> places = gaussPlaces(rod.mesh);
    rod.curvature_per_m.assign(places.size(), of.radius_m == 0 ? 0 : 1 / of.radius_m);
    rod.curvatureRate_per_m2.assign(places.size(), 0);
    rod.stiffness_N_m2.assign(places.size(), stiffness_N_m2);
    rod.natural_per_m.assign(places.size(), 0);
    rod.foundation_N_m2.assign(places.size(), 1e9);
    rod.load_N_m.assign(places.size(), -push_N_m);
    const Contact contact = solve(problem);
    EXPECT_EQ(contact.outcome, Outcome::settled);
    const double middle = (spans / 2 + 0.5) * spacing_m;
    return at(problem, contact, middle).gap_m - contact.holds[spans / 2].gap_m;
}

TEST(PressedOut, TheContactLetsTheGlueLineVaryByAsMuchAsTheSpacingIsReckonedFor) {
    int within = 0;
    for (const Case& of : cases()) {
        SCOPED_TRACE(of.name);
        const model::Piece piece = pieceOf(of);
        const line::Line line = made::straight(2.0);
        const StackOnForm work{piece, line, wood::builtInSpecies()};
        const PressingNeed need = pressingNeed(work, 1.0, of.pad_m, 1e7);
        const double stiffness = stiffnessAbove(piece);
        const double push = of.yield_Pa * of.width_m * of.width_m / (2 * of.film_m);
        ASSERT_EQ(need.by, SpacedBy::stiffness);
        EXPECT_NEAR(need.pad.push_N_m, push, 1e-9 * push);
        EXPECT_NEAR(need.pad.stiffness_N_m2(), stiffness, 1e-9 * stiffness);
        EXPECT_EQ(need.pad.varies_m, of.film_m);
        const double rise = riseBetweenPads(of, stiffness, push, need.spacing_m);
        // Pads that are long for their spacing leave less between them: then the line varies less than reckoned.
        EXPECT_LE(rise, of.film_m);
        EXPECT_GE(rise, 0.8 * of.film_m);
        if (of.pad_m <= need.spacing_m / 5) {
            EXPECT_NEAR(rise, of.film_m, 0.15 * of.film_m);
            ++within;
        }
        Case points = of;
        points.pad_m = 0;
        const double rigid = riseBetweenPads(points, stiffness, push, need.spacing_m);
        EXPECT_NEAR(rigid, of.film_m, 0.02 * of.film_m);
        std::printf("%s: EI %.3g N m2, %.0f N/m, pads %.0f mm apart; line varies by %.4f mm (points %.4f) of %.4f\n",
                    of.name.c_str(), stiffness, push, 1e3 * need.spacing_m, 1e3 * rise, 1e3 * rigid, 1e3 * of.film_m);
    }
    EXPECT_GE(within, 10);
}

// By the formula: a sixteenth of the push lets pads stand twice as far apart; and so does the model of a mix that
// yields at half the stress, by the fourth root of two.
TEST(PressedOut, AThinnerMixNeedsLess) {
    for (const Case& of : cases()) {
        SCOPED_TRACE(of.name);
        model::Piece piece = pieceOf(of);
        const line::Line line = made::straight(2.0);
        const StackOnForm work{piece, line, wood::builtInSpecies()};
        const PressingNeed before = pressingNeed(work, 1.0, of.pad_m, 1e7);
        piece.glue.pasteYield_Pa /= 2;
        const PressingNeed half = pressingNeed(work, 1.0, of.pad_m, 1e7);
        EXPECT_NEAR(half.spacing_m, std::pow(2, 0.25) * before.spacing_m, 1e-9);
        EXPECT_EQ(half.spacing_m, before.thinnerSpacing_m);
        piece.glue.pasteYield_Pa /= 8;
        EXPECT_NEAR(pressingNeed(work, 1.0, of.pad_m, 1e7).spacing_m, 2 * before.spacing_m, 1e-9);
    }
}

}  // namespace pressed_out_test
}  // namespace fayline::holding
