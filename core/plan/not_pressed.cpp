#include "core/plan/not_pressed.hpp"

#include <algorithm>
#include <cmath>
#include <string>

#include "core/plan/findings/holding_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/parts.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

using holding::NotPressed;
using units::Mark;

constexpr double longestLine_m = 500;
constexpr double mostLeft = 1.0 / 3;  // of the squares of all turns, without the row at fault
constexpr double asGood = 1.1;        // two rows exchanged are believed where that leaves no more than this
constexpr std::size_t fewest = 4;

double turnAt(const model::Point& before, const model::Point& at, const model::Point& after) {
    const double ax = at.x_m - before.x_m;
    const double ay = at.y_m - before.y_m;
    const double bx = after.x_m - at.x_m;
    const double by = after.y_m - at.y_m;
    const double turn = std::atan2(ax * by - ay * bx, ax * bx + ay * by);
    return turn * turn;
}

// The squares of the turns of these rows, at all but the first and the last of them.
double turnsOf(const std::vector<const model::Point*>& rows) {
    double sum = 0;
    for (std::size_t i = 1; i + 1 < rows.size(); ++i) sum += turnAt(*rows[i - 1], *rows[i], *rows[i + 1]);
    return sum;
}

// Rows `first` to `last` of those there are.
std::vector<const model::Point*> rowsBetween(const std::vector<model::Point>& points, std::ptrdiff_t first,
                                             std::ptrdiff_t last) {
    std::vector<const model::Point*> rows;
    const auto count = static_cast<std::ptrdiff_t>(points.size());
    for (std::ptrdiff_t i = std::max<std::ptrdiff_t>(first, 0); i <= std::min(last, count - 1); ++i) {
        rows.push_back(&points[i]);
    }
    return rows;
}

// The place of the limit that is broken.
double placeOf(const Plan& plan, laminate::LimitKind kind) {
    for (const laminate::LimitMet& limit : plan.stack.limits) {
        if (limit.kind == kind && !limit.met) return limit.at_m;
    }
    return plan.stack.tightestAt_m;
}

// "WL 24", "point 3".
Message rowName(const HoldingScene& scene, int point) {
    const std::string& label = scene.piece.line.points[static_cast<std::size_t>(point)].label;
    return label.empty() ? Message(texts::rowWithoutLabel, {put::count(point + 1)}) : Message(label);
}

// What cannot be, and where.
void tellWhy(Finding& finding, const HoldingScene& scene) {
    const Plan& plan = scene.plan;
    const holding::Held& held = plan.holding.held;
    const double times = held.worstStrain.share;
    switch (held.notPressed) {
        case NotPressed::none:
            return;
        case NotPressed::breaks:
            finding.at_m = held.worstStrain.at_m;
            finding.value = times;
            finding.limit = holding::breaksManyTimes;
            finding.unit = "ratio";
            finding.text = {texts::bentFarBeyondBreaking, {put::number(times, times < 10 ? 2 : 3)}};
            break;
        case NotPressed::noRoom:
            finding.at_m = placeOf(plan, laminate::LimitKind::noRoom);
            finding.text = texts::turnsWithinStack;
            break;
        case NotPressed::crosses:
            finding.at_m = placeOf(plan, laminate::LimitKind::crossesItself);
            finding.text = texts::runsIntoItself;
            break;
        case NotPressed::wanders:
            finding.at_m = plan.stack.tightestAt_m;
            finding.text = {texts::lineWanders, {put::length(scene.length_m())}};
            return;
        case NotPressed::unsupported:
            finding.text = texts::formNowhereUnder;
            return;
    }
    finding.text.args.push_back(scene.place(*finding.at_m));
}

}  // namespace

double wandering(const model::LineInput& input, const line::Line& line) {
    double way_m = 0;
    for (std::size_t i = 1; i < input.points.size(); ++i) {
        way_m +=
            std::hypot(input.points[i].x_m - input.points[i - 1].x_m, input.points[i].y_m - input.points[i - 1].y_m);
    }
    return line.length() / way_m;
}

void requireLine(const LinePlan& line, const units::Display& display, const std::atomic<bool>& stop) {
    const double length_m = line.fair.line.length();
    if (length_m <= longestLine_m && wandering(line.of, line.fair.line) <= noLine) return;
    LinePlan sought = line;
    if (!sought.misreadSought && !seekMisread(sought, display, stop)) return;
    const std::optional<AtFault> fault = worstOffset(sought);
    std::string wrong = "the line through the points is " + units::writeLength(length_m, display) + " long";
    std::string accepted = "give points in order along the line, their lengths in the right unit";
    if (length_m <= longestLine_m) wrong += " and does not go from one to the next";
    if (!fault) throw units::InputError("line.points", wrong, accepted);
    const auto name = [&](int i) { return pointText(line.of.points[i], i); };
    wrong = (fault->exchanged ? name(fault->point - 1) + " and " + name(fault->point) + " look exchanged: "
                              : name(fault->point) + " looks wrong: ") +
            wrong;
    for (const line::Suspect& suspect : sought.misread.suspects) {
        if (fault->exchanged || suspect.point != fault->point || suspect.slip.empty()) continue;
        accepted += "; the likeliest slip: " + suspect.slip;
        break;
    }
    throw units::InputError("line.points[" + std::to_string(fault->point) + "]", wrong, accepted);
}

NotPressed ruledOut(const model::LineInput& input, const line::Line& line, const laminate::StackPlan& stack) {
    if (wandering(input, line) > mostWandering) return NotPressed::wanders;
    const bool crosses = std::ranges::any_of(stack.limits, [](const laminate::LimitMet& limit) {
        return limit.kind == laminate::LimitKind::crossesItself && !limit.met;
    });
    return crosses ? NotPressed::crosses : NotPressed::none;
}

std::optional<AtFault> offsetAtFault(const std::vector<model::Point>& points) {
    const std::size_t count = points.size();
    if (count < fewest) return std::nullopt;
    const double all = turnsOf(rowsBetween(points, 0, static_cast<std::ptrdiff_t>(count)));
    double leastWithout = all;
    double leastExchanged = all;
    std::size_t without = 0;
    std::size_t exchanged = 0;
    for (std::size_t i = 0; i < count; ++i) {
        // Two rows to each side are all that a row's turns depend on; three where it changes places with the one
        // before.
        const auto at = static_cast<std::ptrdiff_t>(i);
        auto near = rowsBetween(points, at - 2, at + 2);
        const double now = turnsOf(near);
        near.erase(near.begin() + std::min<std::ptrdiff_t>(at, 2));
        const double left = all - now + turnsOf(near);
        if (left < leastWithout) {
            leastWithout = left;
            without = i;
        }
        if (i == 0) continue;
        auto swapped = rowsBetween(points, at - 3, at + 2);
        const double before = turnsOf(swapped);
        const auto own = static_cast<std::size_t>(std::min<std::ptrdiff_t>(at, 3));
        std::swap(swapped[own], swapped[own - 1]);
        const double then = all - before + turnsOf(swapped);
        if (then < leastExchanged) {
            leastExchanged = then;
            exchanged = i;
        }
    }
    if (std::min(leastWithout, leastExchanged) > mostLeft * all) return std::nullopt;
    if (leastExchanged <= asGood * leastWithout) return AtFault{static_cast<int>(exchanged), true};
    return AtFault{static_cast<int>(without), false};
}

std::optional<AtFault> worstOffset(const LinePlan& line) {
    const std::optional<AtFault> fault = offsetAtFault(line.of.points);
    if (line.misread.suspects.empty() || (fault && fault->exchanged)) return fault;
    return AtFault{line.misread.suspects.front().point, false};
}

void leadWithOffset(Finding& finding, const HoldingScene& scene, const Phrase& one, const Phrase& exchanged) {
    const std::optional<AtFault> fault = worstOffset(scene.plan.line);
    if (!fault) return;
    finding.point = fault->point;
    finding.details.insert(finding.details.begin(), finding.text);
    finding.text = fault->exchanged
                       ? Message(exchanged, {rowName(scene, fault->point - 1), rowName(scene, fault->point)})
                       : Message(one, {rowName(scene, fault->point)});
}

void addNotWorkedOut(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::Held& held = scene.plan.holding.held;
    if (held.outcome != holding::Outcome::notPressed) return;
    Finding finding = found(Code::contactNotWorkedOut, contactSource());
    finding.limited = held.notPressed == NotPressed::breaks;
    tellWhy(finding, scene);
    finding.details.emplace_back(texts::contactNotWorkedOut);
    if (held.notPressed != NotPressed::unsupported)
        leadWithOffset(finding, scene, texts::notWorkedOutByOffset, texts::notWorkedOutByTwo);
    findings.push_back(finding);
}

}  // namespace fayline::plan
