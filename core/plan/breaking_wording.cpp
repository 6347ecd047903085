#include "core/plan/breaking_wording.hpp"

#include <algorithm>
#include <cmath>

#include "core/math/count.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/sprung_home.hpp"

namespace fayline::plan {

namespace {

using measure::writeForce;
using measure::writeNumber;
using measure::writeShare;

std::string stripsLeft(int count) {
    return numberWord(count) + (count == 1 ? " strip" : " strips");
}

// Let go, either end would stand off by more than a tape lets pass.
bool isOff(const OneFewer& fewer) {
    return std::max(std::abs(fewer.off.start_m), std::abs(fewer.off.end_m)) > stack::leastOff_m;
}

std::string sparesText(int spares) {
    if (spares < 0) return "no number of spares is enough";
    if (spares == 0) return "no spare is wanted";
    return numberWord(spares) + (spares == 1 ? " spare is" : " spares are") + " still wanted";
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

std::string softenedText(double set) {
    return "strips steamed or boiled and dried on the form, if they keep " + writeShare(set) + " of the curve";
}

std::string straightGrainText(double slope) {
    return "grain that runs out no faster than 1 in " + writeNumber(1 / slope, 2);
}

std::string breakingSentence(const BreakingRemedy& remedy) {
    std::string text = capitalised(remedy.what) + ": the chance that any breaks is " + chanceText(remedy.chance) +
                       ", and " + sparesText(remedy.spares) + "; pulls are " + writeNumber(remedy.pullRatio, 2) +
                       " times as hard.";
    if (remedy.kind == BreakingKind::softened) {
        text += " What they keep is for you to measure: dry one on the form and see. Steam scalds: gloves and sleeves.";
    }
    return text;
}

void wordLostStrip(LostStrip& lost, const boat::Piece& piece, const Plan& plan) {
    const measure::Display& display = plan.display;
    lost.sentence = oneFewerText(lost.fewer, plan);
    if (lost.settled && !plan.holding.stations.empty()) {
        lost.sentence += " The hardest pull is " + writeForce(lost.hardestPull_N, display) + " instead of " +
                         writeForce(lost.hardestPullBefore_N, display) + ", the largest gap " +
                         smallText(lost.largestGap_m, display) + " instead of " +
                         smallText(lost.largestGapBefore_m, display) + ".";
    }
    if (lost.fewer.cannot.empty()) {
        const std::string goOn = "o on with " + stripsLeft(math::countOf(plan.stack.strips) - 1);
        lost.whatToDo = plan.stack.spares > 0 ? "Put a spare in its place while the glue is open. Without one, g" + goOn
                                              : "G" + goOn;
        if (isOff(lost.fewer)) {
            lost.whatToDo +=
                " and leave the piece on its form: glued on outside once the rest has cured, before anything is let "
                "go, "
                "one more strip brings depth and springback back to what the form is made for.";
        } else {
            lost.whatToDo +=
                "; if the depth is wanted, glue one more on outside once the rest has cured" +
                std::string(piece.form.kind == boat::FormKind::inPlace ? "." : ", before the piece leaves its form.");
        }
        lost.whatToDo += " ";
    }
    lost.whatToDo +=
        "A strip breaks with a crack and throws splinters on the outside of the bend: keep eyes covered and hands off "
        "there, and clean the broken ends out of the wet faces.";
}

}  // namespace fayline::plan
