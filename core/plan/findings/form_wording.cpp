#include "core/plan/findings/form_wording.hpp"

#include <cmath>

#include "core/laminate/springback/learned.hpp"
#include "core/plan/findings/form_texts.hpp"
#include "core/plan/findings/springing_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

// How many strips of one thickness and wood, none bent before, no dry face; 0: they are not alike.
int alikeStrips(const model::Stack& stack) {
    int count = 0;
    for (const model::Strips& strips : stack.strips) {
        const model::Strips& first = stack.strips.front();
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

std::string tapeText(double distance_m, const units::Display& display) {
    const double size = std::abs(distance_m);
    if (display.lengths == units::LengthNotation::millimetres) {
        if (size < 0.001) return smallText(size, display);
        const double step = size < 0.1 ? 1e-4 : 1e-3;
        return units::writeNumber(units::toMillimetres(std::round(size / step) * step), 6) + " mm";
    }
    return size < units::sixteenth_m ? smallText(size, display) : spanText(size, display);
}

bool reportedAtStart(const laminate::FormPlan& form, double lineLength_m) {
    return form.fixedAt_m > lineLength_m / 2;
}

Message endStands(const laminate::Opening& opening, bool atStart) {
    const double off_m = atStart ? opening.start_m : opening.end_m;
    const Phrase& in = atStart ? texts::startIn : texts::endIn;
    const Phrase& open = atStart ? texts::startOpen : texts::endOpen;
    return {off_m < 0 ? in : open, {put::tape(off_m)}};
}

std::vector<Message> ruleTexts(const model::Stack& stack, const laminate::FormPlan& form) {
    if (!form.letsGo || form.parts.empty()) return {};
    std::vector<Message> all{texts::ruleTwoWays};
    const int n = alikeStrips(stack);
    if (n < 2) {
        all.emplace_back(texts::ruleNotAlike);
        return all;
    }
    const int square = n * n;
    const laminate::PartForm& part = form.parts.front();
    const double rise_m = part.offWanted.riseFrom_m;  // of the wanted line
    all.push_back({texts::ruleSays,
                   {put::countWord(n), put::count(square), put::count(square - 1), put::tape(rise_m / (square - 1)),
                    put::tape(rise_m)}});
    if (form.corrected) all.push_back({texts::ruleAndForm, {put::tape(part.opens.riseFrom_m - rise_m)}});
    return all;
}

std::vector<Message> spreadTexts(const Plan& plan) {
    const laminate::FormPlan& form = plan.form;
    if (!form.letsGo || !form.possible || form.parts.empty()) return {};
    const bool atStart = reportedAtStart(form, plan.line.fair.line.length());
    const laminate::Opening& opening = form.parts.front().uncorrected;
    const double reported_m = atStart ? opening.start_m : opening.end_m;
    const bool own = plan.learned && plan.learned->factor;
    const double low = own ? plan.learned->low : form.scatterLow;
    const double high = own ? plan.learned->high : form.scatterHigh;
    std::vector<Message> all;
    if (own) {
        all.push_back({texts::spreadOwn, {put::number(low, 2), put::number(high, 2)}});
    } else {
        all.push_back(
            {texts::spreadBuilders,
             {put::countWord(measuredBends), put::number(measuredMean, 2), put::number(measuredDeviation, 2)}});
    }
    constexpr double seen_m = 1e-4;
    if (form.factor > 0 && std::abs(reported_m) >= seen_m) {
        const double theory_m = reported_m / form.factor;
        all.push_back({atStart ? texts::spreadAtStart : texts::spreadAtEnd,
                       {low > 0 ? put::tape(low * theory_m) : put::count(0), put::tape(high * theory_m)}});
    }
    if (!own) all.emplace_back(texts::ownPiecesBetter);
    return all;
}

std::vector<Message> moistureTexts(const model::Stack& stack, const Plan& plan) {
    const laminate::MoistureMove& move = plan.form.moisture;
    if (!plan.form.letsGo || plan.form.parts.empty() || !move.known || stack.moisture == stack.serviceMoisture)
        return {};
    const double length_m = plan.line.fair.line.length();
    const bool atStart = reportedAtStart(plan.form, length_m);
    const double off_m = atStart ? move.opening.start_m : move.opening.end_m;
    std::vector<Message> all{{off_m < 0 ? texts::moistureCloses : texts::moistureOpens,
                              {put::share(stack.moisture, 3), put::share(stack.serviceMoisture, 3), put::tape(off_m),
                               put::place(atStart ? 0 : length_m, length_m)}}};
    const bool swells = move.acrossShrink > 0;
    const Phrase& opens = swells ? texts::swellsOpens : texts::shrinksOpens;
    const Phrase& tightens = swells ? texts::swellsTightens : texts::shrinksTightens;
    all.push_back({move.change < 0 ? opens : tightens,
                   {put::share(std::abs(move.change)), put::share(std::abs(move.changeTangential))}});
    all.emplace_back(texts::besideSpringback);
    if (move.beyond) all.emplace_back(texts::moistureRough);
    if (move.mixed) all.emplace_back(texts::woodsMixed);
    return all;
}

std::vector<Message> learnedTexts(const laminate::Learned& learned) {
    if (!learned.factor) return {texts::nothingLearned};
    const Phrase& far = learned.pieces < 3    ? texts::learnedFew
                        : learned.pieces < 10 ? texts::learnedSome
                                              : texts::learnedMany;
    return {{texts::learnedMean, {put::number(learned.mean)}, learned.pieces},
            {texts::learnedNext, {put::number(*learned.factor), put::number(learned.low), put::number(learned.high)}},
            far};
}

}  // namespace fayline::plan
