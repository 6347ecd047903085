#include "core/plan/findings/breaking_wording.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/springback/sprung_home.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/breaking_texts.hpp"

namespace fayline::plan {

namespace {

// Let go, either end would stand off by more than a tape lets pass.
bool isOff(const OneFewer& fewer) {
    return std::max(std::abs(fewer.off.start_m), std::abs(fewer.off.end_m)) > laminate::leastOff_m;
}

}  // namespace

std::string chanceText(double chance) {
    constexpr double most = 0.99;
    if (chance < leastChanceReported) return "under 1 in 1,000";
    if (chance > most) return "more than 99 in 100";
    if (chance > 0.95) return "about " + std::to_string(std::lround(100 * chance)) + " in 100";
    if (chance > 0.35) return "about " + std::to_string(std::lround(10 * chance)) + " in 10";
    const double each = 1 / chance;
    const double step = each < 20 ? 1 : each < 100 ? 5 : each < 300 ? 10 : 100;
    const long in = std::lround(each / step) * std::lround(step);
    return "about 1 in " + (in == 1000 ? std::string("1,000") : std::to_string(in));
}

std::string chanceBrief(double chance) {
    const std::string reported = chanceText(chance);
    if (reported.starts_with("under ")) return "< 0.1 %";
    if (reported.starts_with("more than ")) return "> 99 %";
    return reported.starts_with("about ") ? reported.substr(6) : reported;
}

Message remedyText(const BreakingRemedy& remedy) {
    const Phrase& few = remedy.spares < 0 ? texts::remedyNoNumber : texts::remedyNoSpare;
    return {remedy.spares > 0 ? texts::remedySpares : few,
            {remedy.what, put::chance(remedy.chance), put::number(remedy.pullRatio, 2), put::countWord(remedy.spares)},
            remedy.spares > 0 ? remedy.spares : 1};
}

void wordLostStrip(LostStrip& lost, const model::Piece& piece, const Plan& plan) {
    lost.becomes = oneFewerTexts(lost.fewer, plan);
    if (lost.settled && !plan.holding.stations.empty()) {
        lost.becomes.push_back({texts::pullsInstead,
                                {put::force(lost.hardestPull_N), put::force(lost.hardestPullBefore_N),
                                 put::small(lost.largestGap_m), put::small(lost.largestGapBefore_m)}});
    }
    if (lost.fewer.cannot.empty()) {
        const bool spare = plan.stack.spares > 0;
        const int left = math::countOf(plan.stack.strips) - 1;
        if (spare) lost.whatToDo.emplace_back(texts::putInSpare);
        lost.whatToDo.push_back({spare ? texts::withoutSpareGoOn : texts::goOnWith, {put::countWord(left)}, left});
        const bool inPlace = piece.form.kind == model::FormKind::inPlace;
        const Phrase& more = inPlace ? texts::glueOneMore : texts::glueOneMoreOnForm;
        lost.whatToDo.emplace_back(isOff(lost.fewer) ? texts::leaveOnForm : more);
    }
    lost.whatToDo.emplace_back(texts::breakingSplinters);
}

}  // namespace fayline::plan
