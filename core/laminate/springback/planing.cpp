#include "core/laminate/springback/planing.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/math/table.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::laminate {

namespace {

// The given depths at one place, linear between those given, level beyond. The list is short and in any order.
model::Planed plannedAt(const std::vector<model::Planed>& given, double at_m) {
    const model::Planed* before = nullptr;
    const model::Planed* after = nullptr;
    for (const model::Planed& planed : given) {
        if (planed.at_m <= at_m && (!before || planed.at_m > before->at_m)) before = &planed;
        if (planed.at_m >= at_m && (!after || planed.at_m < after->at_m)) after = &planed;
    }
    model::Planed planed;
    planed.at_m = at_m;
    if (!before && !after) return planed;
    if (!before) before = after;
    if (!after) after = before;
    const double apart = after->at_m - before->at_m;
    const double share = apart > 0 ? (at_m - before->at_m) / apart : 0;
    planed.inside_m = math::between(before->inside_m, after->inside_m, share);
    planed.outside_m = math::between(before->outside_m, after->outside_m, share);
    return planed;
}

std::string shownLength(double length_m) {
    return units::writeNumber(units::toMillimetres(length_m), 4);
}

}  // namespace

bool takesOff(const model::Stack& stack) {
    const auto depth = [](const model::Planed& planed) { return planed.inside_m > 0 || planed.outside_m > 0; };
    return std::ranges::any_of(stack.planedAfter, depth) || stack.strips.front().sacrificial ||
           stack.strips.back().sacrificial;
}

Left leftAt(const model::Stack& stack, const std::vector<BentStrip>& strips, double at_m) {
    const auto stays = [](const BentStrip& strip) { return !strip.sacrificial; };
    const auto first = std::ranges::find_if(strips, stays);
    if (first == strips.end()) return {};
    const auto last = std::find_if(strips.rbegin(), strips.rend(), stays);
    const model::Planed planed = plannedAt(stack.planedAfter, at_m);
    return {first->layer.inner.at(at_m) + planed.inside_m, last->layer.outer.at(at_m) - planed.outside_m};
}

void checkPlaned(const model::Stack& stack, const std::vector<BentStrip>& strips, double lineLength_m) {
    if (std::ranges::all_of(strips, [](const BentStrip& strip) { return strip.sacrificial; })) {
        throw units::InputError("stack.strips", "every strip is sacrificial, so nothing is left of the piece",
                                "leave at least one that stays");
    }
    const auto needLeft = [&](double at_m, const std::string& path) {
        const Left left = leftAt(stack, strips, at_m);
        if (left.to_m > left.from_m) return;
        const model::Planed off = plannedAt(stack.planedAfter, at_m);
        const double depth = left.to_m - left.from_m + off.inside_m + off.outside_m;
        throw units::InputError(path,
                                shownLength(off.inside_m + off.outside_m) + " mm off a piece " + shownLength(depth) +
                                    " mm deep leave nothing of it",
                                "give less than " + shownLength(depth) + " in all");
    };
    for (std::size_t i = 0; i < stack.planedAfter.size(); ++i) {
        const model::Planed& planed = stack.planedAfter[i];
        const std::string path = "stack.planed_after[" + std::to_string(i) + "]";
        if (!std::isfinite(planed.at_m) || !(planed.inside_m >= 0) || !(planed.outside_m >= 0)) {
            throw units::InputError(path, "that is no depth to plane off", "give 0 or more");
        }
        needLeft(planed.at_m, path);
    }
    if (stack.planedAfter.empty()) return;
    // Depth and what is taken off are linear between these and the given places.
    for (const double at : {0.0, lineLength_m}) needLeft(at, "stack.planed_after");
}

Planing planedAt(const std::vector<BentStrip>& strips, const Places& part, const line::Place& place, double side,
                 double presentAt_m, double share, const Left& left) {
    const Release whole = releaseAt(strips, part, place, side, 1.0, presentAt_m, share);
    Planing planing;
    if (whole.strips == 0) return planing;
    const double axis = whole.neutralAxisFromLine_m;
    const double k = stackCurvature(place, side);
    const double onForm_per_m = share * k / (1 + axis * k);
    const double release = whole.ratio * onForm_per_m;
    // Sums over what is left: about the line, then moved to the axis of what is left.
    double stretch = 0;
    double first = 0;
    double second = 0;
    double force = 0;
    double moment = 0;
    for (int i = part.first - 1; i < part.last; ++i) {
        const BentStrip& strip = strips[i];
        if (!strip.runs.bent.holds(presentAt_m)) continue;
        const double low = std::max(left.from_m, strip.layer.inner.at(place.at_m));
        const double high = std::min(left.to_m, strip.layer.outer.at(place.at_m));
        if (high <= low) continue;
        const double h = high - low;
        const double c = (high + low) / 2;
        const double own = strip.stillToBend * ownCurvatureShare(place, side, strip.layer, axis, share) * onForm_per_m;
        const double stress = strip.modulus_Pa * (own * (c - strip.layer.middle.at(place.at_m)) - release * (c - axis));
        const double gradient = strip.modulus_Pa * (own - release);
        planing.left_m += h;
        stretch += strip.modulus_Pa * h;
        first += strip.modulus_Pa * h * c;
        second += strip.modulus_Pa * h * (c * c + h * h / 12);
        force += stress * h;
        moment += stress * h * c + gradient * h * h * h / 12;
    }
    if (planing.left_m <= 0) return planing;
    planing.neutralAxisFromLine_m = first / stretch;
    const double stiffness = second - first * planing.neutralAxisFromLine_m;
    planing.change_per_m = -(moment - force * planing.neutralAxisFromLine_m) / stiffness;
    return planing;
}

}  // namespace fayline::laminate
