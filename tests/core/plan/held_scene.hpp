// Findings about the holding: a piece that is held by hand, and what every finding has to look like.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

#include "core/plan/findings/findings.hpp"
#include "core/plan/shop.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {

// A full sentence with everything put in.
inline void expectSentence(const std::string& text) {
    ASSERT_FALSE(text.empty());
    EXPECT_FALSE(std::islower(static_cast<unsigned char>(text.front()))) << text;
    EXPECT_TRUE(text.ends_with('.')) << text;
    EXPECT_EQ(text.find(" inf"), std::string::npos) << text;
    for (std::size_t at = text.find('%'); at != std::string::npos; at = text.find('%', at + 1)) {
        EXPECT_FALSE(at + 1 < text.size() && std::isdigit(static_cast<unsigned char>(text[at + 1]))) << text;
    }
}

// The findings, each looked at, in both ways of reading lengths and forces: a line that fits, finite numbers.
inline std::vector<Finding> looked(std::vector<Finding> findings) {
    units::Display inFeet;
    inFeet.lengths = units::LengthNotation::feetInchesEighths;
    inFeet.forces = units::ForceUnit::poundForce;
    for (const Finding& finding : findings) {
        if (aboutOf(finding.code) != About::holding) continue;
        for (const units::Display& display : {inMillimetres, inFeet}) {
            const std::string line = textOf(finding, display);
            expectSentence(line);
            EXPECT_LE(line.size(), 160u) << line;
            for (const Message& detail : finding.details) expectSentence(writeText(detail, display));
        }
        EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit)) << codeWord(finding.code);
    }
    return findings;
}

inline int countOf(const std::vector<Finding>& findings, Code code) {
    return static_cast<int>(
        std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; }));
}

inline Finding the(const std::vector<Finding>& findings, Code code) {
    EXPECT_EQ(countOf(findings, code), 1) << code;
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
    return found == findings.end() ? Finding{} : *found;
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
            holding::StationPlace place;
            place.index = i;
            place.number = i + 1;
            place.at_m = piece.holding.stations[std::size_t(i)].at_m;
            plan.holding.stations.push_back(place);
            plan.holding.held.stations.push_back({i, i + 1, place.at_m, 500, 2500, 0, holding::HoldState::closes});
            holding::PressingNeed need;
            need.spacing_m = std::numeric_limits<double>::infinity();
            plan.holding.pressing.push_back(need);
        }
    }

    std::vector<Finding> findings() const { return looked(holdingFindings(piece, shop, plan)); }
    std::vector<Finding> studied(const HoldingStudy& study) const {
        return looked(studyFindings(piece, shop, plan, study));
    }
};

}  // namespace fayline::plan
