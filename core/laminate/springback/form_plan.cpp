#include "core/laminate/springback/form_plan.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/laminate/course.hpp"
#include "core/laminate/springback/form_ground.hpp"
#include "core/laminate/springback/planing.hpp"
#include "core/laminate/springback/uncorrected.hpp"
#include "core/math/count.hpp"
#include "core/units/input_error.hpp"

namespace fayline::laminate {

namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();

// Measured bends against the rule.
constexpr double measuredLow = 0;
constexpr double measuredHigh = 2;

// Least of what the form may leave of the curvature: beyond, it would be bent twenty times as tight as the piece.
constexpr double leastLeft = 0.05;

// Shares of turn that differ by less are one: over 10 m that moves nothing.
constexpr double settled = 1e-9;

// Share of the turn that the form needs, by sections; rho is that of the form's own curvature, to which the share and
// it settle in a few rounds. Says where there is none.
std::vector<double> formShare(FormPlan& plan, const FormGround& ground, const PartAlong& part) {
    constexpr int rounds = 30;
    std::vector<double> share(part.sections.size(), 1.0);
    std::vector<double> ratios;
    double moved = 0;
    for (int round = 0; round < rounds; ++round) {
        ratios = allowedRatios(part, ratiosOn(ground, part, share));
        moved = 0;
        for (std::size_t i = 0; i < share.size(); ++i) {
            const double next = 1 / std::max(1 - plan.factor * ratios[i], leastLeft);
            moved = std::max(moved, std::abs(next - share[i]));
            share[i] = next;
        }
        if (moved < settled) break;
    }
    plan.settled = moved < stillSettled;
    plan.unsettled = plan.settled ? 0 : moved;
    for (std::size_t i = 0; i < share.size(); ++i) {
        if (1 - plan.factor * ratios[i] >= leastLeft || !plan.possible) continue;
        plan.possible = false;
        plan.impossibleAt_m = part.sections[i].at_m;
        plan.impossibleRatio = plan.factor * ratios[i];
    }
    return share;
}

// Curvature of the neutral axis, stack's sign, where the section turns by `share` of the wanted line's.
double axisCurvature(const FormGround& ground, std::size_t i, double axisFromLine_m, double share) {
    const double k = stackCurvature(ground.ground.places[i].line, ground.ground.side);
    return share * k / (1 + axisFromLine_m * k);
}

// Whether the strips find room on a form bent by these shares of the wanted turn, where they do on the wanted line.
void checkRoom(FormPlan& plan, const FormGround& ground, const PartAlong& part, const std::vector<double>& share) {
    for (std::size_t i = 0; i < share.size() && plan.possible; ++i) {
        const line::Place& place = ground.ground.places[i].line;
        const double axis = part.axisFromLine_m[i];
        const double inner = ground.strips.front().layer.inner.at(place.at_m);
        const double outer = ground.strips.back().layer.outer.at(place.at_m);
        const auto room = [&](double by) {
            const double k = axisCurvature(ground, i, axis, by);
            return std::min(1 + (inner - axis) * k, 1 + (outer - axis) * k) > 0;
        };
        if (room(share[i]) || !room(1)) continue;
        plan.possible = false;
        plan.noRoom = true;
        plan.impossibleAt_m = place.at_m;
        plan.impossibleRatio = 1 - 1 / share[i];
    }
}

// The strip that the form strains nearest to breaking.
void tellStrain(FormPlan& plan, const FormGround& ground, const StackPlan& stack, const std::vector<double>& share) {
    const PartAlong& part = ground.parts.front();
    for (std::size_t i = 0; i < share.size(); ++i) {
        const line::Place& place = ground.ground.places[i].line;
        const double axis = part.axisFromLine_m[i];
        const double k = axisCurvature(ground, i, axis, share[i]);
        for (const BentStrip& strip : ground.strips) {
            if (!strip.runs.bent.holds(place.at_m)) continue;
            const double room = 1 + (strip.layer.middle.at(place.at_m) - axis) * k;
            if (room <= 0) continue;
            const double whole = strip.layer.thicknessAt(place.at_m) * std::abs(k) / room / 2;
            const Strip& planned = stack.strips[strip.layer.place - 1];
            const auto hold = [&](double strain, double breaksAt) {
                const double used = strain / breaksAt;
                if (used <= plan.mostStrained.used) return;
                plan.mostStrained = {strip.layer.place, place.at_m, strain, used, breaksAt};
            };
            hold(whole * strip.stillToBend, planned.breakingStrain);
            if (planned.firstBreakingStrain > 0) hold(whole, planned.firstBreakingStrain);
        }
    }
}

void tellTightest(FormPlan& plan, const Ground& ground) {
    double most = 0;
    for (std::size_t i = ground.start; i <= ground.end; ++i) {
        const FormLine::Node& node = plan.line.nodes()[i];
        if (std::abs(node.curvature_per_m) <= most * (1 + 1e-12)) continue;
        most = std::abs(node.curvature_per_m);
        plan.tightestAt_m = node.at_m;
    }
    plan.tightestRadius_m = most > 0 ? 1 / most : unbounded;
}

// What planing does to a part that was let go to `released`, whose sections turn by `turned`.
std::optional<Opening> planedOf(const FormGround& ground, const PartAlong& part, const model::Stack& stack,
                                const std::vector<double>& formTurns, const Turned& turned, const FormLine& released) {
    Turned planed = turned;
    planed.more_per_m.assign(formTurns.size(), 0.0);
    bool takes = false;
    for (std::size_t i = 0; i < formTurns.size(); ++i) {
        const line::Place& place = ground.ground.places[i].line;
        const double axis = part.axisFromLine_m[i];
        const Planing planing =
            planedAt(ground.strips, part.places, place, ground.ground.side, place.at_m + ground.aside_m[i],
                     formTurns[i], leftAt(stack, ground.strips, place.at_m));
        if (planing.left_m <= 0) continue;
        takes = true;
        planed.axisFromLine_m[i] = planing.neutralAxisFromLine_m;
        // Per length of the wanted line, as the turn is.
        planed.more_per_m[i] = planing.change_per_m * (1 + axis * stackCurvature(place, ground.ground.side));
    }
    if (!takes) return std::nullopt;
    // The same places of the wood before and after: the faying surface as it was.
    return openingOf(ground.ground, released, shapeOf(ground.ground, planed));
}

FormLine wantedShape(const FormGround& ground, const PartAlong& part) {
    return shapeOf(ground.ground, {part.axisFromLine_m, std::vector<double>(part.sections.size(), 1.0), {}, 1});
}

// What the part does against `wanted` once a form of just that shape lets it go.
Opening uncorrectedOf(const FormGround& ground, const PartAlong& part, double factor, const FormLine& wanted) {
    Turned turned{part.axisFromLine_m, std::vector<double>(part.sections.size(), 1.0), {}, 1};
    const std::vector<double> ratios = allowedRatios(part, ratiosOn(ground, part, turned.share));
    for (std::size_t i = 0; i < ratios.size(); ++i) turned.share[i] = 1 - factor * ratios[i];
    return openingOf(ground.ground, wanted, shapeOf(ground.ground, turned));
}

PartForm formOfPart(const FormPlan& plan, const FormGround& ground, const PartAlong& part, const model::Stack& stack,
                    const std::vector<double>& formTurns) {
    PartForm form{.firstPlace = part.places.first, .lastPlace = part.places.last};
    const std::vector<double> ratios = allowedRatios(part, ratiosOn(ground, part, formTurns));
    form.leastRatio = unbounded;
    for (std::size_t i = ground.ground.start; i <= ground.ground.end; ++i) {
        const Release& section = part.sections[i];
        if (section.strips < 2 && part.places.last > part.places.first) continue;
        const double ratio = plan.factor * ratios[i];
        form.leastRatio = std::min(form.leastRatio, ratio);
        if (ratio <= form.mostRatio) continue;
        form.mostRatio = ratio;
        form.mostRatioAt_m = section.at_m;
    }
    if (form.leastRatio == unbounded) form.leastRatio = 0;
    form.ratioAtTightest = plan.factor * ratios[ground.tightest];

    Turned turned{part.axisFromLine_m, formTurns, {}, 1};
    const FormLine onForm = shapeOf(ground.ground, turned);
    if (!plan.letsGo) {
        form.released = onForm;
        return form;
    }
    for (std::size_t i = 0; i < formTurns.size(); ++i) {
        turned.share[i] = formTurns[i] * (1 - plan.factor * ratios[i]);
    }
    form.released = shapeOf(ground.ground, turned);
    form.opens = openingOf(ground.ground, onForm, form.released);
    if (takesOff(stack)) form.planed = planedOf(ground, part, stack, formTurns, turned, form.released);

    const FormLine wanted = wantedShape(ground, part);
    form.offWanted = openingOf(ground.ground, wanted, form.released);
    form.uncorrected = uncorrectedOf(ground, part, plan.factor, wanted);
    return form;
}

void tellMoisture(FormPlan& plan, const FormGround& ground, const model::Stack& stack,
                  const std::vector<wood::Species>& species) {
    plan.moisture = moistureMove(stack, species);
    const std::vector<double>& axis = ground.parts.front().axisFromLine_m;
    Turned turned{axis, std::vector<double>(axis.size(), 1.0), {}, 1};
    const FormLine wanted = shapeOf(ground.ground, turned);
    turned.share.assign(axis.size(), 1 + plan.moisture.change);
    turned.lengths = 1 + plan.moisture.alongShrink;
    plan.moisture.opening = openingOf(ground.ground, wanted, shapeOf(ground.ground, turned));
}

// What would be let go between the gluings, at the wanted line's tightest place.
void tellGluings(FormPlan& plan, const FormGround& ground, const model::Stack& stack, const line::Place& tightest) {
    if (stack.gluings.empty()) return;
    std::vector<int> ends = stack.gluings;
    const int count = math::countOf(ground.strips);
    if (ends.back() < count) ends.push_back(count);
    const std::vector<Places> parts = partPlaces(ground.strips);
    for (const int end : ends) {
        if (end < 1 || end > count) continue;
        const auto part = std::ranges::find_if(parts, [end](const Places& p) { return p.last >= end; });
        const Release release =
            releaseAt(ground.strips, {part->first, end}, tightest, ground.ground.side, 1.0, tightest.at_m);
        plan.gluings.push_back({end, plan.factor * release.ratio});
    }
}

}  // namespace

Opening uncorrectedOpening(const model::Piece& piece, const line::Line& line, const StackPlan& stack) {
    const FormGround ground = formGround(piece, line, stack);
    const PartAlong& first = ground.parts.front();
    return uncorrectedOf(ground, first, piece.form.springbackFactor, wantedShape(ground, first));
}

FormPlan planForm(const model::Piece& piece, const line::Line& line, const std::vector<wood::Species>& species,
                  const StackPlan& stack) {
    FormPlan plan{.letsGo = piece.form.letGo && piece.form.kind != model::FormKind::inPlace,
                  .factor = piece.form.springbackFactor,
                  .scatterLow = measuredLow,
                  .scatterHigh = measuredHigh,
                  .scatterSource = {"laminated bends measured by builders, ten reports read", units::Mark::published}};
    const FormGround ground = formGround(piece, line, stack);
    plan.fixedAt_m = ground.ground.places[ground.ground.fixed].line.at_m;

    const PartAlong& first = ground.parts.front();
    std::vector<double> share = formShare(plan, ground, first);
    checkRoom(plan, ground, first, share);
    if (!plan.letsGo) plan.possible = plan.settled = true;
    plan.corrected = plan.letsGo && plan.possible && piece.form.allowsForSpringback;
    if (!plan.corrected) share.assign(share.size(), 1.0);
    plan.line = shapeOf(ground.ground, {first.axisFromLine_m, share, {}, 1});
    for (const PartAlong& part : ground.parts) {
        plan.parts.push_back(formOfPart(plan, ground, part, piece.stack, share));
    }
    tellTightest(plan, ground.ground);
    tellStrain(plan, ground, stack, share);
    tellMoisture(plan, ground, piece.stack, species);
    tellGluings(plan, ground, piece.stack, line.at(stack.tightestAt_m));
    if (!plan.letsGo) plan.stressLeft = stressLeft(piece, line, species, stack);
    return plan;
}

}  // namespace fayline::laminate
