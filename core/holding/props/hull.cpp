#include "core/holding/props/hull.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "core/units/input_error.hpp"
#include "core/units/scale.hpp"

namespace fayline::holding {

namespace {

constexpr double never = std::numeric_limits<double>::infinity();

// All pushes together: what they push up and to the right, and how they turn the boat about the origin
// (anticlockwise), newtons and newton metres.
struct Resultant {
    double right_N = 0;
    double up_N = 0;
    double turn_N_m = 0;
    double total_N = 0;
    double reach_m = 0;  // furthest from the origin, along either axis
};

Resultant resultantOf(const std::vector<Push>& pushes, int without = -1) {
    Resultant sum;
    for (const Push& push : pushes) {
        if (push.index == without) continue;
        sum.right_N += push.force_N.x_m;
        sum.up_N += push.force_N.y_m;
        sum.turn_N_m += push.at.x_m * push.force_N.y_m - push.at.y_m * push.force_N.x_m;
        sum.total_N += std::hypot(push.force_N.x_m, push.force_N.y_m);
        sum.reach_m = std::max({sum.reach_m, std::abs(push.at.x_m), std::abs(push.at.y_m)});
    }
    return sum;
}

// Blocks of arm a_i that push max(0, a + b a_i), `carried` in all with their middle at `arm`: their pushes. The touched
// ones are all from one end on, so each such set is tried; exactly one fits. `arm` lies between the ends.
std::vector<double> share(const std::vector<double>& arms, double carried, double arm) {
    const std::size_t count = arms.size();
    std::vector<std::size_t> order(count);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::ranges::sort(order, [&](std::size_t i, std::size_t k) { return arms[i] < arms[k]; });
    // From the end nearer to the load inwards: more and more blocks are touched.
    double mean = 0;
    for (const double each : arms) mean += each / static_cast<double>(count);
    if (arm > mean) std::ranges::reverse(order);

    std::vector<double> pushes(count, 0.0);
    double sum = 0;
    double squares = 0;  // about the first arm, for precision
    const double zero = arms[order[0]];
    for (std::size_t touched = 1; touched <= count; ++touched) {
        const double added = arms[order[touched - 1]] - zero;
        sum += added;
        squares += added * added;
        if (touched < count && arms[order[touched]] == arms[order[touched - 1]]) continue;
        const double number = static_cast<double>(touched);
        const double middle = sum / number;
        const double spread = squares - number * middle * middle;
        const double slope = spread > 0 ? (arm - zero - middle) / spread : 0;
        const auto at = [&](double each) { return 1 / number + slope * (each - zero - middle); };
        // The next block out would be pressed too: it is touched.
        if (touched < count &&
            (spread <= 0 ? (arm - zero) * (arms[order[touched]] - zero) > 0 : at(arms[order[touched]]) > 0))
            continue;
        for (std::size_t i = 0; i < touched; ++i) pushes[order[i]] = carried * std::max(0.0, at(arms[order[i]]));
        break;
    }
    return pushes;
}

// How the hull stands under `factor` times the pushes.
struct Standing {
    bool lifts = false;
    bool tips = false;
    bool slides = false;
    std::vector<double> pushes_N;  // of the blocks
};

// What a hull is asked again and again.
class Hull {
public:
    explicit Hull(const model::Hull& hull) : hull_(hull), weight_N_(hull.weight_kg * units::standardGravity_m_s2) {}

    double weight() const { return weight_N_; }
    double friction(const Resultant& pushes) const { return hull_.friction * std::max(0.0, weight_N_ - pushes.up_N); }

    Standing standingUnder(const Resultant& pushes) const {
        Standing standing;
        standing.pushes_N.assign(hull_.blocks.size(), 0.0);
        const double carried = weight_N_ - pushes.up_N;
        standing.lifts = carried <= rounding * weight_N_;
        if (standing.lifts) {
            standing.slides = std::abs(pushes.right_N) > rounding * weight_N_;
            return standing;
        }
        standing.slides = std::abs(pushes.right_N) > hull_.friction * carried + rounding * weight_N_;
        const double level = -pushes.right_N / carried;  // what the blocks bear sideways, over what they carry
        std::vector<double> arms;
        for (const model::Block& block : hull_.blocks) arms.push_back(block.x_m - level * block.y_m);
        const double arm = (weight_N_ * hull_.centreX_m - pushes.turn_N_m) / carried;
        const auto [least, most] = std::ranges::minmax_element(arms);
        const double slack = rounding * (*most - *least + std::abs(arm));
        standing.tips = arm < *least - slack || arm > *most + slack;
        standing.pushes_N = share(arms, carried, std::clamp(arm, *least, *most));
        return standing;
    }

    struct Limit {
        double factor = never;
        HullPlan::Failure failure = HullPlan::Failure::never;
    };

    // Every condition is linear in the factor f that all pushes grow by. Lifting: weight - f up > 0. Sliding:
    // f |right| <= mu (weight - f up). Tipping: the balance of moments about block i is
    // g_i = weight (centre - x_i) - f (turn - x_i up + y_i right); some g_i must be >= 0 and some <= 0.
    Limit limitFor(const Resultant& pushes) const {
        Limit limit;
        const auto earlier = [&](double factor, HullPlan::Failure failure) {
            // Of two at once the first asked: a boat pushed up through its weight lifts, it does not tip.
            if (factor < limit.factor * (1 - rounding)) limit = {factor, failure};
        };
        const double least = rounding * pushes.total_N;  // a resultant of less is rounding
        if (pushes.up_N > least) earlier(weight_N_ / pushes.up_N, HullPlan::Failure::lifts);
        const double sliding = std::abs(pushes.right_N) + hull_.friction * pushes.up_N;
        if (std::abs(pushes.right_N) > least && sliding > 0)
            earlier(hull_.friction * weight_N_ / sliding, HullPlan::Failure::slides);
        earlier(std::min(allOnOneSide(pushes, 1), allOnOneSide(pushes, -1)), HullPlan::Failure::tips);
        return limit;
    }

private:
    static constexpr double rounding = 1e-12;

    static double unlessRounding(double value, double scale) {
        return std::abs(value) > rounding * std::abs(scale) ? value : 0;
    }

    // Least factor from which all sign g_i < 0; infinity: none.
    double allOnOneSide(const Resultant& pushes, double sign) const {
        double from = 0;
        double to = never;
        for (const model::Block& block : hull_.blocks) {
            const double reach = std::max({pushes.reach_m, std::abs(block.x_m), std::abs(block.y_m)});
            const double atRest =
                sign * weight_N_ *
                unlessRounding(hull_.centreX_m - block.x_m, std::max(reach, std::abs(hull_.centreX_m)));
            const double rate =
                sign * unlessRounding(pushes.turn_N_m - block.x_m * pushes.up_N + block.y_m * pushes.right_N,
                                      reach * pushes.total_N);  // g = atRest - f rate
            if (rate > 0)
                from = std::max(from, atRest / rate);
            else if (rate < 0)
                to = std::min(to, atRest / rate);
            else if (atRest >= 0)
                return never;
        }
        return from < to ? from : never;
    }

    const model::Hull& hull_;
    double weight_N_;
};

void setWorst(HullPlan& plan, const Hull& hull, const std::vector<Push>& pushes) {
    plan.marginWithoutWorst = plan.margin;
    double size = 0;
    for (const Push& push : pushes) {
        const double without = hull.limitFor(resultantOf(pushes, push.index)).factor;
        const double own = std::hypot(push.force_N.x_m, push.force_N.y_m);
        const bool equalButLarger = plan.worstProp >= 0 && without == plan.marginWithoutWorst && own > size;
        if (without <= plan.marginWithoutWorst && !equalButLarger) continue;
        plan.worstProp = push.index;
        plan.marginWithoutWorst = without;
        size = own;
    }
}

}  // namespace

std::optional<HullPlan> hullPlan(const model::Hull& given, const std::vector<Push>& pushes) {
    if (!(given.weight_kg > 0)) return std::nullopt;
    if (given.blocks.empty()) {
        throw units::InputError("holding.hull.blocks", "the hull has weight and stands on no block",
                                "give the blocks under it, two or more, or no weight");
    }
    const Hull hull(given);
    const Resultant all = resultantOf(pushes);
    const Standing rest = hull.standingUnder({});
    const Standing now = hull.standingUnder(all);
    HullPlan plan{.lifts = now.lifts, .tips = now.tips, .slides = now.slides, .standsAtRest = !rest.tips};
    for (std::size_t i = 0; i < given.blocks.size(); ++i) {
        const bool lifts = rest.pushes_N[i] > 0 && now.pushes_N[i] <= 0;
        plan.blocks.push_back(
            {static_cast<int>(i), given.blocks[i].x_m, given.blocks[i].y_m, now.pushes_N[i], rest.pushes_N[i], lifts});
        plan.freesBlock = plan.freesBlock || lifts;
    }
    plan.weight_N = hull.weight();
    plan.level_N = std::abs(all.right_N);
    plan.frictionMay_N = hull.friction(all);
    plan.totalPush_N = all.total_N;
    const Hull::Limit limit = hull.limitFor(all);
    plan.margin = limit.factor;
    plan.failsBy = limit.failure;
    plan.mostPush_N = all.total_N > 0 ? limit.factor / marginAsked * all.total_N : 0;
    setWorst(plan, hull, pushes);
    plan.source = {"balance of a rigid hull in the plane on blocks that only push, with their friction",
                   units::Mark::derived};
    return plan;
}

std::vector<Push> pushesOf(const StackOnForm&, const std::vector<PropPlan>& props) {
    std::vector<Push> pushes;
    for (const PropPlan& prop : props) {
        if (prop.length_m <= 0 || prop.thrust_N <= 0) continue;
        const double share = prop.thrust_N / prop.length_m;
        pushes.push_back({prop.index,
                          prop.head,
                          {share * (prop.head.x_m - prop.foot.x_m), share * (prop.head.y_m - prop.foot.y_m)}});
    }
    return pushes;
}

}  // namespace fayline::holding
