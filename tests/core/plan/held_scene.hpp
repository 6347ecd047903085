// Findings about the holding: a piece that is held by hand, and what every finding has to look like.
#pragma once

#include <limits>
#include <vector>

#include "core/plan/findings/findings.hpp"
#include "core/plan/shop.hpp"
#include "tests/core/plan/whole_line.hpp"

namespace fayline::plan {

// The findings, those about the holding looked at, in both ways of reading lengths and forces.
inline std::vector<Finding> looked(std::vector<Finding> findings) {
    for (const Finding& finding : findings) {
        if (aboutOf(finding.code) == About::holding) expectReads(finding);
    }
    return findings;
}

// A gentle bend, three clamps that close their gaps, everything in order.
struct HeldScene {
    model::Piece piece = made::bend(3.0, 0.6);
    Shop shop = made::shop();
    Plan plan;

    HeldScene() {
        piece.holding.stations = {model::Station{.at_m = 0.1}, model::Station{.at_m = 0.15},
                                  model::Station{.at_m = 0.2}};
        piece.glue.pasteYield_Pa = 0;
        shop.display.lengths = units::LengthNotation::millimetres;
        plan = makePlan(piece, shop);
        plan.holding = HoldingPlan{};
        plan.holding.held.samples = {{0, 0, 0, 0}, {0.15, 0.0001, 1000, 1}, {plan.line.fair.line.length(), 0, 0, 0}};
        for (int i = 0; i < 3; ++i) {
            holding::StationPlace place{.number = i + 1, .index = i, .at_m = piece.holding.stations[i].at_m};
            plan.holding.stations.push_back(place);
            plan.holding.held.stations.push_back({i, i + 1, place.at_m, 500, 2500, 0, holding::HoldState::closes});
            plan.holding.pressing.push_back({.spacing_m = std::numeric_limits<double>::infinity()});
        }
    }

    std::vector<Finding> findings() const { return looked(holdingFindings(piece, shop, plan)); }
    std::vector<Finding> studied(const HoldingStudy& study) const {
        return looked(studyFindings(piece, shop, plan, study));
    }
};

}  // namespace fayline::plan
