// What the springback of earlier pieces, measured when they were let go and days after, says about the rule.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::stack {

// One reading against the theory for the stack it was read on.
struct SpringbackReading {
    std::string piece;
    std::string when;
    double after_s = 0;
    double measured = 0;  // share of its curve that the piece gave back, from chord (and rise)
    double theory = 0;    // rho of the rule for that stack
    double factor = 0;    // measured / theory
    double error = 0;     // of the factor, from reading a tape to `readTo_m` (one standard deviation)
};

struct Learned {
    std::vector<SpringbackReading> readings;  // the last of each piece counts towards the factor
    int pieces = 0;
    std::optional<double> factor;  // none: no reading that says anything
    double low = 0;                // 95 % of the next piece's factor lies between, as far as so few readings can say
    double high = 0;
    std::string howFar;  // one plain sentence on how far to trust it
};

// `pieces`: those of the boat that have `record[].let_go`. Readings from which nothing follows are left out.
Learned learnSpringback(const std::vector<boat::Piece>& pieces, const std::vector<wood::Species>& species);

}  // namespace fayline::stack
