
#include "core/math/count.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/study_texts.hpp"
#include "core/plan/study/holding_study.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::toMillimetres;

void addOverRun(std::vector<Finding>& findings, const HoldingScene& scene, const holding::EndNeed& need, bool start) {
    const double limit = scene.piece.holding.gapLimit_m;
    if (!(need.gap_m > limit)) return;
    Finding finding = found(Code::overRunNeeded, contactSource());
    finding.at_m = start ? 0 : scene.length_m();
    finding.value = toMillimetres(start ? scene.piece.stack.runsPastStart_m : scene.piece.stack.runsPastEnd_m);
    finding.limited = need.overRun_m.has_value();
    const Arg clamp = put::force(need.clamp_N);
    constexpr double none_m = 0.001;  // told to 5 mm
    if (!need.overRun_m) {
        finding.text = {start ? texts::noRunBringsStart : texts::noRunBringsEnd, {clamp}};
    } else {
        finding.limit = toMillimetres(*need.overRun_m);
        finding.text = *need.overRun_m < none_m ? Message(start ? texts::clampAtStart : texts::clampAtEnd, {clamp})
                                                : Message(start ? texts::runPastStart : texts::runPastEnd,
                                                          {clamp, put::span(*need.overRun_m)});
    }
    if (need.strongerClamp_N)
        finding.details.push_back({texts::strongerPullWould, {put::force(*need.strongerClamp_N)}});
    if (need.caul_m) finding.details.push_back({texts::caulWould, {put::atLeast(*need.caul_m)}});
    findings.push_back(finding);
}

units::Source pressingSource() {
    return {
        "your own list of tools; loose strips built in over the pads (derived), 45 degrees below a pad (common "
        "practice, "
        "no source)",
        Mark::commonPractice};
}

// What it would take to press a glue out everywhere that fills gaps, where that is not done: once, and as a note.
void addPressingWish(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const std::optional<Apart> worst = worstApart(scene);
    if (!worst || scene.piece.form.kind == model::FormKind::posts) return;
    Finding finding = foundAgainst(Code::notPressed, worst->need.source, toMillimetres(worst->apart_m),
                                   toMillimetres(worst->need.spacing_m));
    finding.severity = Severity::note;
    finding.at_m = worst->at_m;
    if (proposal.forEverything > 0) {
        finding.text = {texts::contactIsEnough, {put::countWord(proposal.forEverything)}};
        finding.details.push_back({texts::mightStandApart,
                                   {scene.names({worst->before, worst->after}), put::reach(worst->need.spacing_m),
                                    put::span(worst->apart_m)}});
    } else {
        finding.text = texts::contactIsEnoughAlone;
    }
    findings.push_back(finding);
}

// All the tools there are, spread, where pressing asks for more.
void addTooFewToPress(std::vector<Finding>& findings, const holding::Proposal& proposal) {
    const std::vector<model::Station> stations = holding::stationsOf(proposal);
    Finding finding = foundAgainst(Code::moreClampsNeeded, pressingSource(), proposal.forEverything, proposal.tools);
    finding.text = {
        texts::toolsCloseIt, {kindsOf(stations), put::countWord(proposal.forEverything)}, math::countOf(stations)};
    if (proposal.caul_m) {
        finding.text.phrase = texts::toolsCloseItUnderCaul;
        finding.text.args.push_back(put::atLeast(*proposal.caul_m));
    }
    if (proposal.largestSpacing_m > 0)
        finding.details.push_back({texts::closeApartAtMost, {put::reach(proposal.largestSpacing_m)}});
    finding.details.emplace_back(toolsAmong(stations) == proposal.tools ? texts::allThatYouHave
                                                                        : texts::notAllThatYouHave);
    findings.push_back(finding);
}

// Where no number of stations presses the glue out.
void addNotToBePressed(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const std::vector<model::Station> stations = holding::stationsOf(proposal);
    const bool posts = scene.piece.form.kind == model::FormKind::posts;
    Finding finding = foundWithoutLimit(Code::noStationsWouldDo, pressingSource());
    finding.text = {posts ? texts::nothingPressesBetweenPosts : texts::nothingPressesEverywhere,
                    {kindsOf(stations)},
                    math::countOf(stations)};
    finding.details.emplace_back(posts ? texts::clampsOnPostsOnly : texts::notPadBesidePad);
    findings.push_back(finding);
}

Phrase unmetPhrase(const holding::Proposal& proposal) {
    if (proposal.unmet == holding::Governs::strength) return texts::noSetIsStrongEnough;
    return proposal.unmet == holding::Governs::pressing ? texts::noSetSqueezesOut : texts::noSetClosesGaps;
}

void addProposal(std::vector<Finding>& findings, const HoldingScene& scene, const holding::Proposal& proposal) {
    const int count = math::countOf(proposal.stations);
    if (!proposal.met && proposal.unmet == holding::Governs::pressing && count > 0) {
        if (proposal.forEverything > count) return addTooFewToPress(findings, proposal);
        return addNotToBePressed(findings, scene, proposal);
    }
    if (!proposal.met) {
        findings.push_back(said(foundWithoutLimit(Code::noStationsWouldDo, contactSource()), unmetPhrase(proposal)));
        return;
    }
    if (proposal.withinCounts || proposal.tools <= 0) return;
    Finding finding =
        foundAgainst(Code::moreClampsNeeded, {"your own list of tools; " + contactSource().text, Mark::derived}, count,
                     proposal.tools);
    finding.text = {texts::moreToolsNeeded,
                    {put::countWord(count), put::countWord(proposal.tools), put::countWord(count - proposal.tools)}};
    if (proposal.withoutPressing > 0 && proposal.withoutPressing < count)
        finding.details.push_back({texts::fewerWithoutSqueeze, {put::countWord(proposal.withoutPressing)}});
    findings.push_back(finding);
}

void addCarried(std::vector<Finding>& findings, const holding::Carried& carried) {
    constexpr double reported_m = 0.05;
    if (!(carried.sag_m > reported_m)) return;
    Finding finding = foundWithoutLimit(
        Code::sagsWhenCarried, {"beam under its own weight (derived); density from specific gravity, Wood Handbook "
                                "eq. 4-12",
                                Mark::transcribed});
    finding.value = toMillimetres(carried.sag_m);
    finding.text = {texts::sagsWhenCarried,
                    {put::countWord(carried.points), put::length(carried.sag_m), put::force(carried.weight_N)}};
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> studyFindings(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const HoldingStudy& study) {
    const HoldingScene scene{piece, shop, plan};
    std::vector<Finding> findings;
    const auto known = [&study](Study part) { return !study.awaited.contains(part); };
    if (plan.holding.held.outcome == holding::Outcome::notPressed) {
        if (known(Study::carried)) addCarried(findings, study.carried);
        return findings;
    }
    if (known(Study::overRun) && !plan.holding.held.stations.empty()) {
        addOverRun(findings, scene, study.overRun.start, true);
        addOverRun(findings, scene, study.overRun.end, false);
    }
    if (known(Study::closing)) addClosing(findings, scene, study);
    if (known(Study::proposal)) {
        addProposal(findings, scene, study.proposal);
        if (study.proposal.pressingIsWish) addPressingWish(findings, scene, study.proposal);
    }
    if (known(Study::carried)) addCarried(findings, study.carried);
    return findings;
}

}  // namespace fayline::plan
