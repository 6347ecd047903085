#include "core/laminate/limits.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/softened.hpp"

namespace fayline::laminate {

namespace {

using units::Mark;
using units::Source;

units::Source geometry() {
    return {"geometry of parallel curves", Mark::derived};
}

// Strips of one group, all alike but for their place.
const Strip* worstOf(const StackPlan& plan, int group, double (*badness)(const Strip&)) {
    const Strip* worst = nullptr;
    for (const Strip& strip : plan.strips) {
        if (strip.group == group && (!worst || badness(strip) > badness(*worst))) worst = &strip;
    }
    return worst;
}

// Thickness of the strip where it is bent hardest.
double thicknessAtStrain(const Strip& strip) {
    return 2 * strip.strainRadius_m * strip.strain;
}

void addStripLimits(std::vector<LimitMet>& limits, const StackPlan& plan, int group, const wood::Species& wood,
                    model::Softened how, double grainSlope, bool room) {
    // Cold, the first bend takes the whole curve against the limit of the second.
    const bool cold = how == model::Softened::soaked;
    const bool hotBend = how != model::Softened::no && !cold;
    const Strip* weakest = hotBend ? worstOf(plan, group, [](const Strip& s) { return s.strain / s.breakingStrain; })
                                   : worstOf(plan, group, worstShare);
    const double strain = cold ? weakest->firstStrain : weakest->strain;
    limits.push_back({LimitKind::breaks, weakest->place, weakest->strainAt_m, strain, weakest->breakingStrain,
                      strain < weakest->breakingStrain, weakest->breakingSource});
    if (const auto hot = how == model::Softened::no ? std::nullopt : hotBreakingStrain(how, grainSlope)) {
        const Strip* torn = worstOf(plan, group, [](const Strip& s) { return s.firstStrain; });
        limits.push_back({LimitKind::breaksHot, torn->place, torn->strainAt_m, torn->firstStrain,
                          torn->firstBreakingStrain, torn->firstStrain < torn->firstBreakingStrain, hot->source});
    }
    const Strip* tightest = worstOf(plan, group, [](const Strip& s) { return s.strain; });
    if (!room || tightest->strain <= 0) return;

    const int place = tightest->place;
    const double at = tightest->strainAt_m;
    const double ratio = tightest->radiusOverThickness;
    const double least = leastRatio(wood);
    limits.push_back({least == leastRatioHardwood ? LimitKind::ratioHardwood : LimitKind::ratioSoftwood, place, at,
                      ratio, least, ratio >= least, leastRatioSource()});
    const double thickness = thicknessAtStrain(*tightest);
    const double thickest = thickestLamination(tightest->strainRadius_m);
    limits.push_back(
        {LimitKind::laminationThickness, place, at, thickness, thickest, thickness <= thickest, laminationSource()});
    const double factor = curvatureFactor(ratio);
    limits.push_back({LimitKind::curvatureFactor, place, at, factor, curvatureFactorReported,
                      factor >= curvatureFactorReported, curvatureFactorSource()});
}

void addChance(std::vector<LimitMet>& limits, const StackPlan& plan) {
    double sum = 0;
    const Strip* likeliest = &plan.strips.front();
    for (const Strip& strip : plan.strips) {
        sum += strip.chanceOfBreaking;
        if (strip.chanceOfBreaking > likeliest->chanceOfBreaking) likeliest = &strip;
    }
    const double expected = sum / static_cast<double>(plan.strips.size());
    limits.push_back(
        {LimitKind::chance,
         0,
         likeliest->strainAt_m,
         expected,
         mostExpectedToBreak,
         expected <= mostExpectedToBreak,
         {"scatter of 16 % in bending strength and 22 % in stiffness, Wood Handbook Table 5-6 (M), log-normal and "
          "correlated (JCSS Probabilistic Model Code, P; size effect by the Wood Handbook, M)",
          Mark::fromMemory}});
}

}  // namespace

double worstShare(const Strip& strip) {
    const double dry = strip.breakingStrain > 0 ? strip.strain / strip.breakingStrain : 0;
    return strip.firstBreakingStrain > 0 ? std::max(dry, strip.firstStrain / strip.firstBreakingStrain) : dry;
}

double shareAt(const Strip& strip, double strain) {
    return strip.strain > 0 ? worstShare(strip) * strain / strip.strain : 0;
}

double sizedBreakingStrain(const Strip& strip, const model::Strips& given) {
    return given.breaksAt ? strip.breakingStrain : strip.breakingStrain * strip.sizeFactor;
}

const Strip& worstStrip(const StackPlan& plan) {
    return *std::ranges::max_element(plan.strips,
                                     [](const Strip& a, const Strip& b) { return worstShare(a) < worstShare(b); });
}

double leastRatio(const wood::Species& species) {
    return species.hardwood || species.southernPine ? leastRatioHardwood : leastRatioSoftwood;
}

Source leastRatioSource() {
    return {"NDS 5.3.8, curved glued timber", Mark::fromMemory};
}

double curvatureFactor(double radiusOverThickness) {
    return 1 - 2000 / (radiusOverThickness * radiusOverThickness);
}

Source curvatureFactorSource() {
    return {"NDS curvature factor, 1 - 2000 (t/R)^2", Mark::transcribed};
}

double bendingFactorEurocode(double innerRadiusOverThickness) {
    return std::min(1.0, 0.76 + 0.001 * innerRadiusOverThickness);
}

Source bendingFactorEurocodeSource() {
    return {"EN 1995-1-1, 6.4.3, eq. 6.49", Mark::fromMemory};
}

Source classificationSource() {
    return {"general reading of rules of classification for laminated frames; no clause is quoted", Mark::fromMemory};
}

double thickestLamination(double radius_m, double fingerJoint_Pa) {
    return radius_m / 250 * (1 + fingerJoint_Pa / 80e6);
}

Source laminationSource() {
    return {"EN 14080, with finger joints of 30 MPa assumed", Mark::fromMemory};
}

std::vector<LimitMet> limitsOf(const model::Stack& stack, const std::vector<const wood::Species*>& woods,
                               const StackPlan& plan, const RoomFound& fit) {
    std::vector<LimitMet> limits;
    const bool room = !fit.noRoomAt_m;
    for (std::size_t group = 0; group < stack.strips.size(); ++group) {
        const auto& before = stack.strips[group].bentBefore;
        addStripLimits(limits, plan, static_cast<int>(group), *woods[group], before ? before->how : model::Softened::no,
                       stack.grainSlope, room);
    }
    addChance(limits, plan);
    limits.push_back(
        {LimitKind::noRoom, 0, fit.noRoomAt_m.value_or(plan.tightestAt_m), fit.leastStretch, 0, room, geometry()});
    limits.push_back({LimitKind::crossesItself, 0, fit.crossesAt_m.value_or(0), fit.crossesAgainAt_m, 0,
                      !fit.crossesAt_m, geometry()});
    limits.push_back(
        {LimitKind::pins,
         0,
         plan.stagger.pinnedAt_m,
         std::abs(plan.stagger.pinsSlide_m),
         pinsLetPass_m,
         !plan.stagger.pinsForbidSliding,
         {"sliding of strips round a turn (derived); play of a pin in its hole: common practice, no source",
          Mark::commonPractice}});
    return limits;
}

}  // namespace fayline::laminate
