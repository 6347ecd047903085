// The gap of a state of balance between its nodes, where it is a cubic on every element.
#pragma once

#include "core/contact/contact.hpp"

namespace fayline::contact {

struct GapAt {
    double s_m = 0;
    double gap_m = 0;  // < 0: the foundation is crushed
    double slope = 0;
};

// At one place; beyond the ends of the rod at its end. A contact without nodes: 0.
GapAt gapAt(const Contact& contact, double s_m);

// The greatest between two places of the rod, both included; of equals the first.
GapAt greatestGap(const Contact& contact, double from_s_m, double to_s_m);

}  // namespace fayline::contact
