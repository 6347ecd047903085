// Pieces made at random, sensible and absurd, and what every plan of one must be.
#pragma once

#include <cmath>
#include <numbers>
#include <random>
#include <string>

#include "core/laminate/layers.hpp"
#include "core/math/count.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::made {

// Numbers from a generator that is the same everywhere (the distributions of the standard library are not).
class Dice {
public:
    explicit Dice(unsigned seed) : generator_(seed) {}
    double between(double low, double high) {
        return low + (high - low) * (static_cast<double>(generator_()) / 4294967296.0);
    }
    int upTo(int most) { return static_cast<int>(generator_() % static_cast<unsigned>(most + 1)); }
    bool oneIn(int times) { return upTo(times - 1) == 0; }

private:
    std::mt19937 generator_;
};

inline model::Piece randomPiece(Dice& dice) {
    const double mean = dice.between(-3, 3);
    const double sway = dice.between(0, 3);
    const double wave = dice.between(0.5, 4);
    const double length = dice.between(0.3, 4);
    model::Piece piece = made::pieceOn(
        made::lineOf([&](double s) { return mean + sway * std::sin(2 * std::numbers::pi * s / wave); }, length),
        3 + dice.upTo(20));
    piece.line.stripsOn = dice.oneIn(2) ? model::Side::left : model::Side::right;
    piece.line.describes = static_cast<model::Describes>(dice.upTo(2));
    if (dice.oneIn(4)) piece.line.fairWithin_m = 0;
    if (dice.oneIn(5)) piece.line.takeOff_m = dice.between(0, 0.03);
    piece.stack.strips.clear();
    const auto& woods = wood::builtInSpecies();
    for (int i = dice.upTo(3); i >= 0; --i) {
        model::Strips strips;
        strips.count = 1 + dice.upTo(12);
        strips.thickness_m = dice.between(0.0005, 0.03);
        strips.species = woods[dice.upTo(math::countOf(woods) - 1)].id;
        if (dice.oneIn(4)) strips.tapersTo_m = dice.between(0.0005, 0.03);
        if (dice.oneIn(5)) strips.bentBefore = model::BentBefore{model::Softened::steamed, dice.between(0, 1)};
        if (dice.oneIn(6)) strips.dryFace = true;
        if (dice.oneIn(5)) strips.moe_Pa = dice.between(1e9, 20e9);
        piece.stack.strips.push_back(strips);
    }
    piece.stack.moisture = dice.between(0, 0.6);
    piece.stack.grainSlope = dice.between(0, 0.5);
    piece.stack.glueLine_m = dice.between(0, 0.001);
    piece.stack.runsPastStart_m = dice.oneIn(3) ? 0 : dice.between(0, 0.4);
    piece.stack.runsPastEnd_m = dice.oneIn(3) ? 0 : dice.between(0, 0.4);
    for (int i = dice.upTo(2); i > 0; --i) piece.stack.pins.push_back(model::Pin{dice.between(-0.2, length)});
    if (dice.oneIn(4)) piece.stack.scarfedStart = model::Scarf{dice.between(1, 12)};
    for (int i = dice.upTo(6); i > 0; --i) {
        piece.holding.stations.push_back(model::Station{.at_m = dice.between(-0.5, length + 0.5)});
    }
    return piece;
}

// What is no number, or no number that can be, in the plan of `piece`; empty: nothing.
inline std::string defectOf(const model::Piece& piece, const plan::Plan& plan) {
    const auto isShare = [](double value) { return value >= 0 && value <= 1; };
    for (const laminate::Strip& strip : plan.stack.strips) {
        const std::string which = "of strip " + std::to_string(strip.place);
        if (!(strip.leastRadius_m > 0)) return "the radius " + which;
        if (!isShare(strip.strain)) return "the strain " + which;
        if (!isShare(strip.chanceOfBreaking)) return "the chance of breaking " + which;
        if (!std::isfinite(strip.finishedLength_m) || !std::isfinite(strip.cutLength_m)) return "the length " + which;
        if (!(strip.breakingStrain > 0 && strip.modulus_Pa > 0)) return "the wood " + which;
    }
    for (const auto& face : plan.stack.faces) {
        for (const line::Xy& point : face) {
            if (!std::isfinite(point.x_m) || !std::isfinite(point.y_m)) return "a place on a face";
        }
    }
    for (const auto& strains : plan.stack.strains) {
        for (const double strain : strains) {
            if (!isShare(strain)) return "a strain along a strip";
        }
    }
    if (!std::isfinite(plan.stack.stiffnessCured_N_m2) || !std::isfinite(plan.stack.storedEnergy_J)) {
        return "the stiffness or energy of the stack";
    }
    // Width for width: wet strips are wider by the rip allowance, which a single strip shows.
    const double at_m = plan.stack.tightestAt_m;
    const double narrower = laminate::widthAt(piece.stack, at_m) / laminate::ripWidthAt(piece.stack, at_m);
    if (!(plan.stack.stiffnessCured_N_m2 >= narrower * plan.stack.stiffnessWet_N_m2 * (1 - 1e-9))) {
        return "the cured stack, less stiff than the wet one";
    }
    for (const plan::Finding& finding : plan.findings) {
        const bool isNumber = std::isfinite(finding.value) && std::isfinite(finding.limit);
        if (!isNumber || english(finding).find("nan") != std::string::npos) return "the finding: " + english(finding);
    }
    return {};
}

}  // namespace fayline::made
