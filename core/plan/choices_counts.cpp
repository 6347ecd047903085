#include "core/plan/choices_counts.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/measure/input_error.hpp"
#include "core/plan/parts.hpp"
#include "core/stack/layers.hpp"
#include "core/stack/parallels.hpp"
#include "core/stack/release.hpp"

namespace fayline::plan {

namespace {

// Stronger than any clamp.
constexpr double asStrongAsNeedBe_N = 1e6;

// A form that would have to be bent twenty times as tight is none, as in planForm.
constexpr double mostRatio = 0.95;

bool closes(const holding::HeldStation& station) {
    return station.state == holding::HoldState::closes || station.state == holding::HoldState::slack;
}

// The outermost stations that close a gap on the strips; empty: there are none.
std::vector<int> outermost(const std::vector<holding::HeldStation>& held, const boat::Piece& piece, double length_m) {
    std::vector<int> places;
    for (std::size_t i = 0; i < held.size(); ++i) {
        const boat::Station& station = piece.holding.stations[static_cast<std::size_t>(held[i].index)];
        const bool onStrips =
            held[i].at_m >= -piece.stack.runsPastStart_m && held[i].at_m <= length_m + piece.stack.runsPastEnd_m;
        if (holding::closesGap(station) && onStrips) places.push_back(static_cast<int>(i));
    }
    if (places.size() > 2) places = {places.front(), places.back()};
    return places;
}

// Pulls of the outermost stations if they are as strong as need be; empty where no contact tells them.
std::vector<EndPull> contactPulls(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    const line::Line& line = plan.line.fair.line;
    const holding::Held* held = &plan.holding.held;
    const std::vector<int> ends = outermost(held->stations, piece, line.length());
    if (ends.empty() || held->outcome != holding::Outcome::settled) return {};
    holding::Held stronger;
    const bool closed = std::all_of(ends.begin(), ends.end(),
                                    [held](int i) { return closes(held->stations[static_cast<std::size_t>(i)]); });
    if (!closed) {
        std::vector<boat::Station> stations = piece.holding.stations;
        for (const int i : ends) {
            boat::Station& station =
                stations[static_cast<std::size_t>(held->stations[static_cast<std::size_t>(i)].index)];
            station.most_N = asStrongAsNeedBe_N;
            station.pull_N.reset();
        }
        stronger = holding::holdWith(workOf(piece, shop, line, plan.form), stations, held);
        if (stronger.outcome != holding::Outcome::settled) return {};
        held = &stronger;
    }
    std::vector<EndPull> pulls;
    for (const int i : ends) {
        const holding::HeldStation& station = held->stations[static_cast<std::size_t>(i)];
        const double stiffness = stiffnessAt(piece, piece.stack, shop, line.length(), station.at_m);
        if (!(stiffness > 0)) return {};
        pulls.push_back({station.at_m, station.pull_N / stiffness});
    }
    return pulls;
}

bool isLimit(const stack::LimitMet& limit, stack::LimitKind kind) {
    return limit.kind == kind && !limit.met;
}

bool broken(const stack::StackPlan& stack, stack::LimitKind kind) {
    return std::any_of(stack.limits.begin(), stack.limits.end(), [kind](const auto& l) { return isLimit(l, kind); });
}

void countStack(Choice& choice, const stack::StackPlan& stack) {
    for (const stack::Strip& strip : stack.strips) {
        choice.strain = std::max(choice.strain, strip.strain);
        choice.strainShare = std::max(choice.strainShare, strip.strain / strip.breakingStrain);
        if (strip.hotBreakingStrain > 0) {
            choice.strainShare = std::max(choice.strainShare, strip.hotStrain / strip.hotBreakingStrain);
        }
    }
    choice.count = static_cast<int>(stack.strips.size());
    choice.chanceOfBreaking = stack.chanceAnyBreaks;
    choice.spares = stack.spares;
}

double depthOf(const std::vector<boat::Strips>& groups, double glueLine_m) {
    double depth_m = 0;
    int count = 0;
    for (const boat::Strips& strips : groups) {
        depth_m += strips.count * strips.thickness_m;
        count += strips.count;
    }
    return depth_m + std::max(0, count - 1) * glueLine_m;
}

double woodLost(const Choice& choice, const stack::StackPlan& stack, const boat::Stock& stock) {
    double sawn = 0;  // of a cut through all boards, m^2 along the strips
    double left = 0;
    double length_m = 0;
    for (const stack::Strip& strip : stack.strips) {
        const double thick_m = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
        sawn += strip.cutLength_m * (thick_m + 2 * stock.planing_m + stock.kerf_m);
        left += strip.cutLength_m * (strip.thickness_m + strip.thicknessAtEnd_m) / 2;
        length_m = std::max(length_m, strip.cutLength_m);
    }
    if (!(sawn > 0)) return 0;
    return std::clamp((sawn - left + length_m * std::max(0.0, choice.overDepth_m)) / sawn, 0.0, 1.0);
}

std::string whyNot(const Choice& choice, const stack::StackPlan& stack, const Plan& plan) {
    if (broken(stack, stack::LimitKind::noRoom)) return "no room for it on the inside of the bend";
    if (broken(stack, stack::LimitKind::crossesItself)) return "it runs into itself";
    if (plan.form.letsGo && choice.springbackRatio >= mostRatio) return "no form makes it keep the bend";
    if (choice.strainShare >= 1) return "a strip breaks";
    if (choice.spares < 0) return "more than a third would break";
    if (choice.shareOnForm >= 1) return "a strip breaks on its form";
    return "";
}

}  // namespace

double tailPull(double curvature_per_m, double gapLimit_m) {
    if (!(curvature_per_m > 0) || !(gapLimit_m > 0)) return 0;
    return curvature_per_m / std::sqrt(6 * gapLimit_m / curvature_per_m);
}

double stiffnessAt(const boat::Piece& piece, const boat::Stack& stack, const Shop& shop, double lineLength_m,
                   double at_m) {
    const holding::LooseStack loose = holding::looseStack(stack, piece.line.describes, lineLength_m, shop.species);
    const holding::Section section = holding::sectionAt(loose, at_m);
    return section.stiffness_N_m2 * (1 - section.set);
}

std::vector<EndPull> endPulls(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<EndPull> pulls = contactPulls(piece, shop, plan);
    if (!pulls.empty()) return pulls;
    const line::Line& line = plan.line.fair.line;
    const double side = stack::sideSign(piece.line.stripsOn);
    for (const double at : {0.0, line.length()}) {
        pulls.push_back({at, tailPull(stack::stackCurvature(line.at(at), side), piece.holding.gapLimit_m)});
    }
    return pulls;
}

Choice countsOf(const Candidate& candidate, const boat::Piece& piece, const Shop& shop, const Plan& plan,
                const std::vector<EndPull>& ends) {
    const line::Line& line = plan.line.fair.line;
    Choice choice;
    choice.strips = candidate.strips;
    choice.gluings = candidate.gluings;
    choice.mixed = candidate.mixed;
    choice.asItIs = candidate.asItIs;
    choice.thickness_m = candidate.thickness_m;
    choice.depth_m = depthOf(choice.strips, piece.stack.glueLine_m);
    choice.overDepth_m = choice.depth_m - depthOf(piece.stack.strips, piece.stack.glueLine_m);
    for (const boat::Strips& strips : choice.strips) choice.count += strips.count;
    boat::Piece adopted = piece;
    adopted.stack = adopt(piece.stack, choice);
    try {
        const stack::StackPlan stack =
            stack::planStack(adopted.stack, piece.line.describes, piece.line.stripsOn, line, shop.species);
        countStack(choice, stack);
        choice.springbackRatio =
            piece.form.springbackFactor * stack::ratioAtPlace(adopted.stack, piece.line.describes, piece.line.stripsOn,
                                                              line, shop.species, stack.tightestAt_m);
        const bool corrected = plan.form.letsGo && piece.form.allowsForSpringback;
        const double kept = corrected ? std::max(1 - choice.springbackRatio, 1 - mostRatio) : 1.0;
        choice.shareOnForm = choice.strainShare / kept;
        for (const EndPull& end : ends) {
            const double stiffness = stiffnessAt(piece, adopted.stack, shop, line.length(), end.at_m);
            choice.endPull_N = std::max(choice.endPull_N, end.pull_per_N_m2 * stiffness);
        }
        choice.woodLost = woodLost(choice, stack, piece.stock);
        choice.whyNot = whyNot(choice, stack, plan);
        const DayPlan day = planDay(adopted, shop, line, stack);
        choice.glue_kg = day.glue.mixed_kg;
        choice.glueLines = static_cast<int>(std::count_if(day.glue.lines.begin(), day.glue.lines.end(),
                                                          [](const glue::GlueLine& one) { return !one.scarf; }));
        if (std::isfinite(day.margin_s)) choice.margin_s = day.margin_s;
    } catch (const measure::InputError& error) {
        // What stands well as it is may ask for more than can be with other strips: a scarf longer than the piece,
        // more cups than anybody mixes.
        choice.whyNot = error.wrong();
    }
    choice.possible = choice.whyNot.empty();
    return choice;
}

}  // namespace fayline::plan
