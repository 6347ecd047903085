#include "core/holding/loose_stack.hpp"

#include <algorithm>
#include <set>

#include "core/laminate/checks.hpp"
#include "core/math/table.hpp"
#include "core/wood/bending.hpp"

namespace fayline::holding {

namespace {

// Of a stack 1 m wide.
LooseSection sumOver(const std::vector<LooseStrip>& strips, double at_m) {
    LooseSection section;
    double crush = 0;
    for (const LooseStrip& strip : strips) {
        if (!strip.run.holds(at_m)) continue;
        const double t = strip.layer.thicknessAt(at_m);
        const double stiffness = strip.modulus_Pa * t * t * t / 12;
        section.stiffness_N_m2 += stiffness;
        section.set += strip.set * stiffness;
        crush += t / (strip.modulus_Pa * modulusAcross);
    }
    section.width_m = 1;
    if (section.stiffness_N_m2 > 0) section.set /= section.stiffness_N_m2;
    if (crush > 0) section.foundation_N_m2 = 1 / crush;
    return section;
}

double widthOf(const LooseStack& stack, double at_m) {
    return math::lookUp(stack.widths, at_m, &model::Width::at_m, &model::Width::width_m);
}

void addWidths(LooseStack& loose, const model::Stack& stack) {
    std::set<double> places;
    for (const model::Width& width : stack.widths) places.insert(width.at_m);
    for (const double at_m : places) loose.widths.push_back({at_m, laminate::ripWidthAt(stack, at_m), {}});
}

// Sums between the places where strips begin or end, so that a level stack is summed up once and not at every place.
void addSums(LooseStack& loose) {
    std::set<double> ends;
    for (const LooseStrip& strip : loose.strips) {
        ends.insert(strip.run.from_m);
        ends.insert(strip.run.to_m);
    }
    loose.ends_m.assign(ends.begin(), ends.end());
    for (std::size_t i = 0; i <= loose.ends_m.size(); ++i) {
        const double before = i == 0 ? loose.ends_m.front() - 1 : loose.ends_m[i - 1];
        const double after = i == loose.ends_m.size() ? loose.ends_m.back() + 1 : loose.ends_m[i];
        loose.betweenEnds.push_back(sumOver(loose.strips, (before + after) / 2));
    }
}

}  // namespace

LooseStack looseStack(const model::Stack& stack, model::Describes describes, double lineLength_m,
                      const std::vector<wood::Species>& species) {
    laminate::checkStack(stack);
    const std::vector<const wood::Species*> woods = laminate::woodsOf(stack, species);
    std::vector<wood::Bending> bendings;
    LooseStack loose;
    for (std::size_t i = 0; i < woods.size(); ++i) {
        const model::Strips& alike = stack.strips[i];
        bendings.push_back(wood::bending(*woods[i], stack.moisture, stack.grainSlope, alike.moe_Pa, alike.breaksAt));
    }
    const std::vector<laminate::Layer> layers = laminate::layers(stack, describes, lineLength_m);
    for (const laminate::Layer& layer : layers) {
        const auto group = static_cast<std::size_t>(layer.group);
        const model::Strips& alike = stack.strips[group];
        const laminate::Run run = laminate::runsOf(stack, layers, layer.place, lineLength_m).bent;
        loose.strips.push_back({layer, run, bendings[group].modulus_Pa, alike.bentBefore ? alike.bentBefore->set : 0,
                                bendings[group].breakingStrain});
        loose.tapers = loose.tapers || alike.tapersTo_m.value_or(alike.thickness_m) != alike.thickness_m;
    }
    addWidths(loose, stack);
    addSums(loose);
    return loose;
}

LooseSection sectionAt(const LooseStack& stack, double at_m) {
    LooseSection section;
    if (stack.tapers) {
        section = sumOver(stack.strips, at_m);
    } else {
        const auto passed = std::upper_bound(stack.ends_m.begin(), stack.ends_m.end(), at_m) - stack.ends_m.begin();
        section = stack.betweenEnds[passed];
    }
    section.width_m = widthOf(stack, at_m);
    section.stiffness_N_m2 *= section.width_m;
    section.foundation_N_m2 *= section.width_m;
    return section;
}

std::vector<const LooseStrip*> stripsThere(const LooseStack& stack, double at_m) {
    std::vector<const LooseStrip*> there;
    for (const LooseStrip& strip : stack.strips) {
        if (strip.run.holds(at_m)) there.push_back(&strip);
    }
    return there;
}

}  // namespace fayline::holding
