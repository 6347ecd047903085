#include "core/plan/study/one_fewer.hpp"

#include <algorithm>

#include "core/laminate/springback/on_form.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/breaking_texts.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

// The stack without the strip at `place` (1 on the form): the gluings end between the same strips.
model::Stack without(const model::Stack& stack, int place, int group) {
    model::Stack left = stack;
    model::Strips& strips = left.strips[group];
    if (strips.count > 1) {
        --strips.count;
    } else {
        left.strips.erase(left.strips.begin() + group);
    }
    int count = 0;
    for (const model::Strips& one : left.strips) count += one.count;
    left.gluings.clear();
    for (const int after : stack.gluings) {
        const int now = after >= place ? after - 1 : after;
        const bool again = !left.gluings.empty() && left.gluings.back() == now;
        if (now > 0 && now < count && !again) left.gluings.push_back(now);
    }
    return left;
}

}  // namespace

OneFewer withOneFewer(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    OneFewer fewer;
    const auto& strips = plan.stack.strips;
    const auto used = [](const laminate::Strip& strip) { return strip.sacrificial ? -1 : laminate::worstShare(strip); };
    const auto worst =
        std::ranges::max_element(strips, [&](const auto& a, const auto& b) { return used(a) < used(b); });
    fewer.place = worst->place;
    if (strips.size() < 2) {
        fewer.cannot = texts::onlyStrip;
        return fewer;
    }
    model::Piece left = piece;
    fewer.stack = left.stack = without(piece.stack, worst->place, worst->group);
    try {
        const line::Line& line = plan.line.fair.line;
        const laminate::StackPlan planned =
            laminate::planStack(left.stack, left.line.describes, left.line.stripsOn, line, shop.species);
        fewer.lost_m = plan.stack.depth_m - planned.depth_m;
        fewer.stiffShare = planned.stiffnessCured_N_m2 / plan.stack.stiffnessCured_N_m2;
        if (!plan.form.letsGo || !plan.form.possible) return fewer;
        const laminate::OnForm lies = laminate::lieOn(left, line, planned, plan.form.line);
        fewer.ratio = plan.form.factor * lies.theory();
        fewer.off = laminate::openingOf(lies.ground.ground, lies.wanted, lies.letGo(plan.form.factor));
    } catch (const units::InputError& error) {
        fewer.cannot = error.wrong();
    }
    return fewer;
}

std::vector<Message> oneFewerTexts(const OneFewer& fewer, const Plan& plan) {
    const Message strip = stripName(fewer.place, math::countOf(plan.stack.strips));
    if (!fewer.cannot.empty()) return {{texts::cannotBeGlued, {strip, fewer.cannot}}};
    std::vector<Message> sentences{
        {texts::withoutStrip, {strip, put::thickness(fewer.lost_m), put::share(fewer.stiffShare)}}};
    if (plan.form.letsGo && plan.form.possible) {
        const bool atStart = reportedAtStart(plan.form, plan.line.fair.line.length());
        const double off = atStart ? fewer.off.start_m : fewer.off.end_m;
        const Phrase& open = atStart ? texts::fewerStartOpen : texts::fewerEndOpen;
        const Phrase& closed = atStart ? texts::fewerStartClosed : texts::fewerEndClosed;
        sentences.push_back(
            {texts::givesBackInstead, {put::share(fewer.ratio), put::share(plan.form.parts.front().ratioAtTightest)}});
        sentences.push_back({off < 0 ? closed : open, {put::tape(off)}});
    }
    sentences.emplace_back(texts::designerSays);
    return sentences;
}

}  // namespace fayline::plan
