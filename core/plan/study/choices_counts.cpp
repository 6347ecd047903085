#include "core/plan/study/choices_counts.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/holding/kinds.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/springback/release.hpp"
#include "core/laminate/springback/uncorrected.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/choice_texts.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

// Stronger than any clamp.
constexpr double asStrongAsNeedBe_N = 1e6;

// A form that would have to be bent twenty times as tight is none, as in planForm.
constexpr double mostRatio = 0.95;

// The harder pull of the outermost stations that close a gap on the strips; none where there are no such.
std::optional<double> outermostPull(const holding::Held& held, const std::vector<model::Station>& stations,
                                    const model::Stack& stack, double length_m) {
    std::optional<double> first_N;
    double last_N = 0;
    for (const holding::HeldStation& station : held.stations) {
        const bool onStrips = station.at_m >= -stack.runsPastStart_m && station.at_m <= length_m + stack.runsPastEnd_m;
        if (!onStrips || !holding::closesGap(stations[station.index])) continue;
        if (!first_N) first_N = station.pull_N;
        last_N = station.pull_N;
    }
    if (!first_N) return std::nullopt;
    return std::max(*first_N, last_N);
}

// The tail rule at both trim lines.
double tailPulls(const model::Piece& piece, const Shop& shop, const line::Line& line) {
    const double side = laminate::sideSign(piece.line.stripsOn);
    double pull_N = 0;
    for (const double at : {0.0, line.length()}) {
        const double each = tailPull(laminate::stackCurvature(line.at(at), side), piece.holding.gapLimit_m);
        if (each > 0) pull_N = std::max(pull_N, each * stiffnessAt(piece, piece.stack, shop, line.length(), at));
    }
    return pull_N;
}

bool isLimit(const laminate::LimitMet& limit, laminate::LimitKind kind) {
    return limit.kind == kind && !limit.met;
}

bool broken(const laminate::StackPlan& stack, laminate::LimitKind kind) {
    return std::ranges::any_of(stack.limits, [kind](const auto& l) { return isLimit(l, kind); });
}

void countStack(Choice& choice, const laminate::StackPlan& stack) {
    for (const laminate::Strip& strip : stack.strips) {
        choice.strain = std::max(choice.strain, strip.strain);
        choice.strainShare = std::max(choice.strainShare, laminate::worstShare(strip));
    }
    choice.count = math::countOf(stack.strips);
    choice.chanceOfBreaking = stack.chanceAnyBreaks;
    choice.spares = stack.spares;
}

double depthOf(const std::vector<model::Strips>& groups, double glueLine_m) {
    double depth_m = 0;
    int count = 0;
    for (const model::Strips& strips : groups) {
        depth_m += strips.count * strips.thickness_m;
        count += strips.count;
    }
    return depth_m + std::max(0, count - 1) * glueLine_m;
}

double woodLost(const Choice& choice, const laminate::StackPlan& stack, const model::Stock& stock) {
    double sawn = 0;  // of a cut through all boards, m^2 along the strips
    double left = 0;
    double length_m = 0;
    for (const laminate::Strip& strip : stack.strips) {
        const double thick_m = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
        sawn += strip.cutLength_m * (thick_m + 2 * stock.planing_m + stock.kerf_m);
        left += strip.cutLength_m * (strip.thickness_m + strip.thicknessAtEnd_m) / 2;
        length_m = std::max(length_m, strip.cutLength_m);
    }
    if (!(sawn > 0)) return 0;
    return std::clamp((sawn - left + length_m * std::max(0.0, choice.overDepth_m)) / sawn, 0.0, 1.0);
}

Message whyNot(const Choice& choice, const laminate::StackPlan& stack, const Plan& plan) {
    if (broken(stack, laminate::LimitKind::noRoom)) return texts::noRoomInside;
    if (broken(stack, laminate::LimitKind::crossesItself)) return texts::meetsItself;
    if (plan.form.letsGo && choice.springbackRatio >= mostRatio) return texts::noFormHolds;
    if (choice.strainShare >= 1) return texts::aStripBreaks;
    if (choice.spares < 0) return texts::thirdBreak;
    if (choice.shareOnForm >= 1) return texts::breaksOnItsForm;
    return {};
}

}  // namespace

double lengthToSaw(const laminate::StackPlan& stack) {
    double sum_m = 0;
    double longest_m = 0;
    for (const laminate::Strip& strip : stack.strips) {
        sum_m += strip.cutLength_m;
        longest_m = std::max(longest_m, strip.cutLength_m);
    }
    return sum_m + std::max(0, stack.spares) * longest_m;
}

double glueUpTime(const DayPlan& day) {
    double work_s = 0;
    for (const GluingDay& gluing : day.gluings) work_s += gluing.run.closed_s;
    return work_s;
}

double tailPull(double curvature_per_m, double gapLimit_m) {
    if (!(curvature_per_m > 0) || !(gapLimit_m > 0)) return 0;
    return curvature_per_m / std::sqrt(6 * gapLimit_m / curvature_per_m);
}

double stiffnessAt(const model::Piece& piece, const model::Stack& stack, const Shop& shop, double lineLength_m,
                   double at_m) {
    const holding::LooseStack loose = holding::looseStack(stack, piece.line.describes, lineLength_m, shop.species);
    const holding::LooseSection section = holding::sectionAt(loose, at_m);
    return section.stiffness_N_m2 * (1 - section.set);
}

EndsHeld endsHeld(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    EndsHeld ends{piece.holding.stations, {}};
    bool any = false;
    for (model::Station& station : ends.stations) {
        if (!holding::closesGap(station)) continue;
        any = true;
        station.most_N = asStrongAsNeedBe_N;
        station.pull_N.reset();
    }
    if (!any) return {};
    const holding::StackOnForm work = workOf(piece, shop, plan.line.fair.line, plan.form);
    ends.asItIs = holding::holdWith(work, ends.stations, &plan.holding.held);
    // Where the stack as it is finds no balance, others are not pressed either: their tails alone are reckoned.
    if (!holding::inBalance(ends.asItIs.outcome)) return {};
    return ends;
}

double endPull(const model::Piece& piece, const Shop& shop, const Plan& plan, const EndsHeld& ends) {
    const line::Line& line = plan.line.fair.line;
    if (!ends.stations.empty()) {
        const holding::StackOnForm work = workOf(piece, shop, line, plan.form);
        const holding::Held held = holding::holdWith(work, ends.stations, &ends.asItIs);
        const std::optional<double> pull_N = outermostPull(held, ends.stations, piece.stack, line.length());
        if (held.outcome == holding::Outcome::settled && pull_N) return *pull_N;
    }
    return tailPulls(piece, shop, line);
}

Choice countsOf(const Candidate& candidate, const model::Piece& piece, const Shop& shop, const Plan& plan,
                const EndsHeld& ends) {
    const line::Line& line = plan.line.fair.line;
    Choice choice{.strips = candidate.strips,
                  .gluings = candidate.gluings,
                  .mixed = candidate.mixed,
                  .asItIs = candidate.asItIs,
                  .thickness_m = candidate.thickness_m};
    choice.depth_m = depthOf(choice.strips, piece.stack.glueLine_m);
    choice.overDepth_m = choice.depth_m - depthOf(piece.stack.strips, piece.stack.glueLine_m);
    for (const model::Strips& strips : choice.strips) choice.count += strips.count;
    model::Piece adopted = piece;
    adopted.stack = adopt(piece.stack, choice);
    try {
        const laminate::StackPlan stack =
            laminate::planStack(adopted.stack, piece.line.describes, piece.line.stripsOn, line, shop.species);
        countStack(choice, stack);
        choice.springbackRatio = piece.form.springbackFactor *
                                 laminate::ratioAtPlace(adopted.stack, piece.line.describes, piece.line.stripsOn, line,
                                                        shop.species, stack.tightestAt_m);
        const bool corrected = plan.form.letsGo && piece.form.allowsForSpringback;
        const double kept = corrected ? std::max(1 - choice.springbackRatio, 1 - mostRatio) : 1.0;
        choice.shareOnForm = choice.strainShare / kept;
        if (plan.form.letsGo) {
            const laminate::Opening opening = laminate::uncorrectedOpening(adopted, line, stack);
            choice.opens_m = reportedAtStart(plan.form, line.length()) ? opening.start_m : opening.end_m;
        }
        choice.endPull_N = endPull(adopted, shop, plan, ends);
        choice.woodLost = woodLost(choice, stack, piece.stock);
        choice.stripLength_m = lengthToSaw(stack);
        choice.whyNot = whyNot(choice, stack, plan);
        const DayPlan day = planDay(adopted, shop, line, stack, &plan.day.glue);
        choice.glue_kg = day.glue.mixed_kg;
        choice.glueLines = static_cast<int>(
            std::ranges::count_if(day.glue.lines, [](const glue::GlueLine& one) { return !one.scarf; }));
        if (std::isfinite(day.margin_s)) choice.margin_s = day.margin_s;
        if (!day.glue.batches.empty()) choice.closed_s = glueUpTime(day);
    } catch (const units::InputError& error) {
        // What stands well as it is may ask for more than can be with other strips: a scarf longer than the piece,
        // more cups than anybody mixes.
        choice.whyNot = error.wrong();
    }
    choice.possible = choice.whyNot.empty();
    return choice;
}

}  // namespace fayline::plan
