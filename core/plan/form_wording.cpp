#include "core/plan/form_wording.hpp"

#include <algorithm>
#include <cmath>

#include "core/measure/units.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

// How many strips of one thickness and wood, none bent before, no dry face; 0: they are not alike.
int alikeStrips(const boat::Stack& stack) {
    int count = 0;
    for (const boat::Strips& strips : stack.strips) {
        const boat::Strips& first = stack.strips.front();
        const bool same = strips.thickness_m == first.thickness_m && strips.tapersTo_m == first.tapersTo_m &&
                          strips.species == first.species && strips.moe_Pa == first.moe_Pa;
        const bool bent = strips.bentBefore && strips.bentBefore->set > 0;
        const bool parts = strips.dryFace && &strips != &stack.strips.back();
        if (!same || bent || parts) return 0;
        count += strips.count;
    }
    return count;
}

}  // namespace

std::string tapeText(double distance_m, const measure::Display& display) {
    const double size = std::abs(distance_m);
    if (display.lengths == measure::LengthNotation::millimetres) {
        if (size < 0.001) return smallText(size, display);
        const double step = size < 0.1 ? 1e-4 : 1e-3;
        return measure::writeNumber(measure::toMillimetres(std::round(size / step) * step), 6) + " mm";
    }
    return size < measure::sixteenth_m ? smallText(size, display) : spanText(size, display);
}

bool reportedAtStart(const stack::FormPlan& form, double lineLength_m) {
    return form.fixedAt_m > lineLength_m / 2;
}

std::string openingText(const stack::Opening& opening, bool atStart, const std::string& verb,
                        const measure::Display& display) {
    const double off = atStart ? opening.start_m : opening.end_m;
    return std::string("the ") + (atStart ? "start " : "end ") + verb + " " + tapeText(off, display) +
           (off < 0 ? " closed in" : " open") + ", the " + (atStart ? "end" : "start") + " laid on";
}

std::string ruleText(const boat::Stack& stack, const stack::FormPlan& form, const measure::Display& display) {
    if (!form.letsGo || form.parts.empty()) return {};
    const std::string rule =
        "The workshop's rule for n equal strips is told in two ways that are one: y = x / n^2 with the rise x measured "
        "on "
        "the form, y = x / (n^2 - 1) with the rise x of the finished piece.";
    const int n = alikeStrips(stack);
    if (n < 2) {
        return rule +
               " It holds for strips that are alike; for these the springback is summed up strip by strip instead.";
    }
    const int square = n * n;
    const stack::PartForm& part = form.parts.front();
    const double rise = part.offWanted.riseFrom_m;  // of the wanted line
    const double more = rise / (square - 1);
    std::string text = rule + " For " + numberWord(n) + " strips it says 1/" + std::to_string(square) +
                       " of the form's rise, or 1/" + std::to_string(square - 1) +
                       " of the piece's: " + tapeText(more, display) + " more than the piece's " +
                       tapeText(rise, display) + ".";
    if (form.corrected) {
        text += " Worked out section by section, with the glue lines, the form rises " +
                tapeText(part.opens.riseFrom_m - rise, display) + " more; the rule takes the curve for shallow.";
    }
    return text;
}

std::string spreadText(const Plan& plan) {
    const stack::FormPlan& form = plan.form;
    if (!form.letsGo || !form.possible || form.parts.empty()) return {};
    const bool atStart = reportedAtStart(form, plan.line.fair.line.length());
    const stack::Opening& opening = form.parts.front().uncorrected;
    constexpr double seen_m = 1e-4;
    const auto off = [&](double low, double high) -> std::string {
        const double reported_m = atStart ? opening.start_m : opening.end_m;
        if (!(form.factor > 0) || std::abs(reported_m) < seen_m) return {};
        const double theory_m = reported_m / form.factor;
        return ": uncorrected the " + std::string(atStart ? "start" : "end") + " would stand between " +
               (low > 0 ? tapeText(low * theory_m, plan.display) : "nothing") + " and " +
               tapeText(high * theory_m, plan.display) + " off";
    };
    if (plan.learned && plan.learned->factor) {
        return "By your own measured pieces the next one gives back between " +
               measure::writeNumber(plan.learned->low, 2) + " and " + measure::writeNumber(plan.learned->high, 2) +
               " times what theory says" + off(plan.learned->low, plan.learned->high) + ".";
    }
    return capitalised(numberWord(measuredBends)) +
           " bends that builders measured gave back from nothing to about twice what theory says (in the mean " +
           measure::writeNumber(measuredMean, 2) + " times, standard deviation " +
           measure::writeNumber(measuredDeviation, 2) + "), some of it days later" +
           off(form.scatterLow, form.scatterHigh) +
           ". Measure yours when it is let go and again after some days; then your own pieces say better.";
}

std::string moistureText(const boat::Stack& stack, const Plan& plan) {
    const stack::MoistureMove& move = plan.form.moisture;
    if (!plan.form.letsGo || plan.form.parts.empty() || !move.known || stack.moisture == stack.serviceMoisture)
        return {};
    const bool atStart = reportedAtStart(plan.form, plan.line.fair.line.length());
    std::string text =
        "Glued at " + measure::writeShare(stack.moisture, 3) + " moisture and living at " +
        measure::writeShare(stack.serviceMoisture, 3) + ", the wood " + (move.acrossShrink > 0 ? "swells" : "shrinks") +
        " through the stack and the curve " + (move.change < 0 ? "opens" : "tightens") + " by " +
        measure::writeShare(std::abs(move.change)) + " (by " + measure::writeShare(std::abs(move.changeTangential)) +
        " if the rings lie square to the strips' faces): " +
        openingText(move.opening, atStart, "will stand", plan.display) + ", beside what springback does.";
    if (move.beyond) text += " The figure is good between 6 and 14 %; beyond, take it as rough.";
    if (move.mixed) {
        text +=
            " Woods that move by different amounts along the grain also warp the piece as two metals would; that is "
            "not counted.";
    }
    return text;
}

}  // namespace fayline::plan
