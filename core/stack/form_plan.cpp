#include "core/stack/form_plan.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/measure/input_error.hpp"
#include "core/stack/course.hpp"
#include "core/stack/form_ground.hpp"

namespace fayline::stack {

namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

// Measured bends against the rule.
constexpr double measuredLow = 0;
constexpr double measuredHigh = 2;

// Least of what the form may leave of the curvature: beyond, it would be bent twenty times as tight as the piece.
constexpr double leastLeft = 0.05;

// Share of the turn that the form needs, by sections. Says where there is none.
std::vector<double> formShare(FormPlan& plan, const PartAlong& part) {
    std::vector<double> share(part.sections.size(), 1.0);
    for (std::size_t i = 0; i < share.size(); ++i) {
        const double left = 1 - plan.factor * part.formRatio[i];
        if (left < leastLeft && plan.possible) {
            plan.possible = false;
            plan.impossibleAt_m = part.sections[i].at_m;
            plan.impossibleRatio = plan.factor * part.formRatio[i];
        }
        share[i] = 1 / std::max(left, leastLeft);
    }
    return share;
}

void tellTightest(FormPlan& plan) {
    double most = 0;
    for (std::size_t i = 0; i < plan.line.nodes().size(); ++i) {
        const FormLine::Node& node = plan.line.nodes()[i];
        if (std::abs(node.curvature_per_m) <= most * (1 + 1e-12)) continue;
        most = std::abs(node.curvature_per_m);
        plan.tightestAt_m = node.at_m;
    }
    plan.tightestRadius_m = most > 0 ? 1 / most : endless;
}

PartForm formOfPart(const FormPlan& plan, const FormGround& ground, const PartAlong& part,
                    const std::vector<double>& formTurns) {
    PartForm form;
    form.firstPlace = part.places.first;
    form.lastPlace = part.places.last;
    form.leastRatio = endless;
    for (std::size_t i = ground.ground.start; i <= ground.ground.end; ++i) {
        const Release& section = part.sections[i];
        if (section.strips < 2 && part.places.last > part.places.first) continue;
        const double ratio = plan.factor * section.ratio;
        form.leastRatio = std::min(form.leastRatio, ratio);
        if (ratio <= form.mostRatio) continue;
        form.mostRatio = ratio;
        form.mostRatioAt_m = section.at_m;
    }
    if (form.leastRatio == endless) form.leastRatio = 0;
    form.ratioAtTightest = plan.factor * part.ratioAtTightest;

    Turned turned{part.axisFromLine_m, formTurns, {}, 1};
    const FormLine onForm = shapeOf(ground.ground, turned);
    if (!plan.letsGo) {
        form.released = onForm;
        return form;
    }
    for (std::size_t i = 0; i < formTurns.size(); ++i) {
        turned.share[i] = formTurns[i] * (1 - plan.factor * part.sections[i].ratio);
    }
    form.released = shapeOf(ground.ground, turned);
    form.opens = openingOf(ground.ground, onForm, form.released);

    turned.share.assign(formTurns.size(), 1.0);
    const FormLine wanted = shapeOf(ground.ground, turned);
    for (std::size_t i = 0; i < formTurns.size(); ++i) {
        turned.share[i] = 1 - plan.factor * part.sections[i].ratio;
    }
    form.uncorrected = openingOf(ground.ground, wanted, shapeOf(ground.ground, turned));
    return form;
}

}  // namespace

FormPlan planForm(const boat::Piece& piece, const line::Line& line, const std::vector<wood::Species>& /*species*/,
                  const StackPlan& stack) {
    FormPlan plan;
    plan.letsGo = piece.form.letGo && piece.form.kind != boat::FormKind::inPlace;
    plan.factor = piece.form.springbackFactor;
    plan.scatterLow = measuredLow;
    plan.scatterHigh = measuredHigh;
    plan.scatterSource = {"nine bends that builders measured, against 1 - 1/n^2", measure::Mark::published};
    const FormGround ground = formGround(piece, line, stack);
    plan.fixedAt_m = ground.ground.places[ground.ground.fixed].line.at_m;

    const PartAlong& first = ground.parts.front();
    std::vector<double> share = formShare(plan, first);
    plan.corrected = plan.letsGo && plan.possible && piece.form.allowsForSpringback;
    if (!plan.corrected) share.assign(share.size(), 1.0);
    if (!plan.letsGo) plan.possible = true;
    plan.line = shapeOf(ground.ground, {first.axisFromLine_m, share, {}, 1});
    for (const PartAlong& part : ground.parts) plan.parts.push_back(formOfPart(plan, ground, part, share));
    tellTightest(plan);
    return plan;
}

}  // namespace fayline::stack
