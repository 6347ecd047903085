// What every finding about form, glue and the day has to look like, in metric and in inch shops.
#pragma once

#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "tests/core/plan/made_pieces.hpp"

namespace fayline::plan {

inline void expectWhole(const std::string& text) {
    ASSERT_FALSE(text.empty());
    EXPECT_FALSE(std::islower(static_cast<unsigned char>(text.front()))) << text;
    EXPECT_TRUE(text.ends_with('.')) << text;
    EXPECT_EQ(text.find(" inf"), std::string::npos) << text;
    for (std::size_t at = text.find('%'); at != std::string::npos; at = text.find('%', at + 1)) {
        EXPECT_FALSE(at + 1 < text.size() && std::isalnum(static_cast<unsigned char>(text[at + 1]))) << text;
    }
}

// A line that fits, whole details, finite numbers.
inline void expectReads(const Finding& finding) {
    units::Display inches{.lengths = units::LengthNotation::feetInchesEighths,
                          .temperatures = units::TemperatureUnit::fahrenheit,
                          .forces = units::ForceUnit::poundForce,
                          .weights = units::WeightUnit::ounce};
    for (const units::Display& display : {inMillimetres, inches}) {
        const std::string line = textOf(finding, display);
        expectWhole(line);
        EXPECT_LE(line.size(), 160U) << line;
        for (const Message& detail : finding.details) expectWhole(writeText(detail, display));
    }
    EXPECT_TRUE(std::isfinite(finding.value) && std::isfinite(finding.limit)) << codeWord(finding.code);
}

// The same with a source.
inline void expectWholeLine(const Finding& finding) {
    expectReads(finding);
    EXPECT_FALSE(finding.source.text.empty()) << codeWord(finding.code);
}

// The first of this code, looked at.
inline std::optional<Finding> find(const std::vector<Finding>& findings, Code code) {
    const auto found = std::ranges::find(findings, code, &Finding::code);
    if (found == findings.end()) return std::nullopt;
    expectWholeLine(*found);
    return *found;
}

inline std::optional<Finding> find(const Plan& plan, Code code) {
    return find(plan.findings, code);
}

// The same; a failure of the test where there is none.
inline Finding whole(const auto& in, Code code) {
    const std::optional<Finding> found = find(in, code);
    EXPECT_TRUE(found) << code;
    return found.value_or(Finding{});
}

}  // namespace fayline::plan
