// What bends and what gives way at each place of a loose stack: stiffness, the share of the curve already taken, crush.
#pragma once

#include <vector>

#include "core/holding/held.hpp"
#include "core/laminate/layers.hpp"

namespace fayline::holding {

// At one place.
struct LooseSection {
    double width_m = 0;          // as bent
    double stiffness_N_m2 = 0;   // sum of E b t^3 / 12 over the strips that are there
    double set = 0;              // share of the curve that they have taken before, weighted with their stiffness
    double foundation_N_m2 = 0;  // force per length and crush where the form supports: b / sum of t / (E / 12)
};

// Modulus across the grain over that along it; for want of a published value for each wood. Common practice, no source.
inline constexpr double modulusAcross = 1.0 / 12;

// One strip of the stack.
struct LooseStrip {
    laminate::Layer layer;
    laminate::Run run;  // as bent
    double modulus_Pa = 0;
    double set = 0;
    double breakingStrain = 0;  // of the dry strip
};

struct LooseStack {
    std::vector<LooseStrip> strips;  // from the form outwards, one or more
    std::vector<double> ends_m;      // where strips begin or end along the line, ascending
    std::vector<LooseSection>
        betweenEnds;                   // for a width of 1 m: before the first, ..., after the last; of level strips
    std::vector<model::Width> widths;  // as bent, ascending
    bool tapers = false;
};

// Throws InputError with paths from `stack.` as laminate::planStack does.
LooseStack looseStack(const model::Stack& stack, model::Describes describes, double lineLength_m,
                      const std::vector<wood::Species>& species);

LooseSection sectionAt(const LooseStack& stack, double at_m);

// The strips that are there at a place, from the form outwards.
std::vector<const LooseStrip*> stripsThere(const LooseStack& stack, double at_m);

}  // namespace fayline::holding
