#include <algorithm>
#include <cmath>

#include "core/math/count.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/form_texts.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using laminate::FormPlan;
using laminate::MoistureMove;
using laminate::Opening;
using laminate::PartForm;
using units::Mark;
using units::Source;
using units::toMillimetres;

const Source beamTheory{"beam theory: moment of the loose strips over the glued stiffness (derived)", Mark::derived};
const Source practice{"common practice, no source", Mark::commonPractice};

struct FormScene {
    const model::Piece& piece;
    const Shop& shop;
    const Plan& plan;
    const FormPlan& form;
    double length_m;
    bool atStart;  // which end openings are reported at

    const PartForm& first() const { return form.parts.front(); }
    double off(const Opening& opening) const { return atStart ? opening.start_m : opening.end_m; }
    double endAt_m() const { return atStart ? 0 : length_m; }
    Arg place(double at_m) const { return put::place(at_m, length_m); }
    Arg end() const { return place(endAt_m()); }
};

// Flatter than this over the whole length, no eye sees it bend.
bool isStraight(const FormScene& scene) {
    return std::abs(scene.plan.line.tightest.curvature_per_m) * scene.length_m < 1e-6;
}

// How much of its curve a part gives back: alike along it, less where a scarf leaves fewer strips, from and to.
struct SharePhrases {
    Phrase alike;
    Phrase scarfed;
    Phrase range;
};

Message shareGivenBack(const FormScene& scene, const PartForm& part, const SharePhrases& phrases,
                       const std::vector<Arg>& more = {}) {
    constexpr double same = 1.1;
    const bool scarfed = scene.piece.stack.scarfedStart || scene.piece.stack.scarfedEnd;
    Message message;
    if (part.mostRatio <= same * part.leastRatio) {
        message = {phrases.alike, {put::share(part.ratioAtTightest)}};
    } else if (scarfed) {
        message = {phrases.scarfed, {put::share(part.ratioAtTightest), put::share(part.mostRatio)}};
    } else {
        message = {phrases.range, {put::share(part.leastRatio), put::share(part.mostRatio)}};
    }
    message.args.insert(message.args.end(), more.begin(), more.end());
    return message;
}

void addImpossible(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.possible) return;
    constexpr double most = 0.95;
    const FormPlan& form = scene.form;
    Finding finding = found(form.noRoom ? Code::formNoRoom : Code::formImpossible, beamTheory);
    finding.at_m = form.impossibleAt_m;
    finding.value = 100 * form.impossibleRatio;
    finding.limit = 100 * most;
    finding.limited = !form.noRoom;
    const Arg place = scene.place(form.impossibleAt_m);
    const Arg ratio = put::share(form.impossibleRatio);
    if (form.noRoom) {
        finding.text = {texts::formNoRoom, {place, ratio}};
        finding.details.emplace_back(texts::formNoRoomWhy);
    } else {
        finding.text = {texts::formImpossible, {ratio, place, put::share(most)}};
        finding.details.emplace_back(texts::formImpossibleWhy);
    }
    finding.details.emplace_back(texts::springBackLess);
    findings.push_back(finding);
}

void addUnsettled(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.settled || !scene.form.possible) return;
    findings.push_back(
        said(foundAgainst(Code::formNotSettled, beamTheory, 100 * scene.form.unsettled, 100 * laminate::stillSettled),
             {texts::formNotSettled, {put::share(scene.form.unsettled), put::share(laminate::stillSettled)}}));
}

void addSpringback(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || !scene.form.possible || isStraight(scene)) return;
    const FormPlan& form = scene.form;
    const Opening& opening = scene.first().uncorrected;
    const double off_m = scene.off(opening);
    Finding finding = foundWithoutLimit(form.corrected ? Code::springback : Code::springbackNotAllowedFor, beamTheory);
    finding.source.text +=
        "; scatter: " + form.scatterSource.text + " (" + units::markText(form.scatterSource.mark) + ")";
    finding.at_m = scene.endAt_m();
    finding.value = toMillimetres(off_m);
    const Phrase& open = form.corrected ? texts::springsOpen : texts::springsOpenUncorrected;
    const Phrase& in = form.corrected ? texts::springsIn : texts::springsInUncorrected;
    finding.text = {off_m < 0 ? in : open, {put::tape(off_m), scene.end(), put::tape(form.scatterHigh * off_m)}};
    finding.details = {
        shareGivenBack(scene, scene.first(), {texts::givesBack, texts::givesBackScarf, texts::givesBackRange}),
        texts::otherEndLaidOn};
    if (std::abs(opening.riseTo_m - opening.riseFrom_m) >= units::sixteenth_m) {
        finding.details.push_back({texts::riseGoes, {put::tape(opening.riseFrom_m), put::tape(opening.riseTo_m)}});
    }
    if (form.scatterHigh == 2) {
        finding.details.emplace_back(texts::measuredTwice);
    } else {
        finding.details.push_back({texts::measuredTimes, {put::number(form.scatterHigh)}});
    }
    finding.details.emplace_back(texts::measureLater);
    findings.push_back(finding);
}

void addFactor(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.factor == 1 || !scene.form.letsGo) return;
    findings.push_back(
        said(foundAgainst(Code::springbackFactor, {"your own figure, from earlier pieces", Mark::commonPractice},
                          scene.form.factor, 1),
             {texts::springbackFactor, {put::number(scene.form.factor)}}));
}

// The strips bend tighter on the form than on the line; what that does to the one nearest to breaking.
void addTighterOnForm(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.corrected) return;
    const laminate::StrainedOnForm& most = scene.form.mostStrained;
    const laminate::Strip& strip = scene.plan.stack.strips[most.place - 1];
    constexpr double elastic = 0.6;
    // What breaks on the line is said of the strips.
    if (most.used <= elastic || laminate::worstShare(strip) >= 1) return;
    const bool breaks = most.used >= 1;
    Finding finding =
        breaks ? found(Code::stripBreaksOnForm, strip.breakingSource) : found(Code::bentBeyondElastic, practice);
    finding.at_m = most.at_m;
    finding.strip = most.place;
    finding.value = 100 * (breaks ? most.strain : most.used);
    finding.limit = 100 * (breaks ? most.breaksAt : elastic);
    const Arg place = scene.place(most.at_m);
    if (breaks) {
        finding.text = {texts::breaksOnForm, {put::count(most.place), place, put::share(most.used)}};
        finding.details = {{texts::breaksOnFormWhy, {put::share(most.strain), put::share(most.breaksAt)}}};
    } else {
        finding.text = {texts::takesSet, {put::count(most.place), put::share(most.used), put::share(elastic)}};
        finding.details = {{texts::takesSetWhy, {place}}};
    }
    findings.push_back(finding);
}

void addScarfFeather(std::vector<Finding>& findings, const FormScene& scene) {
    const model::Stack& stack = scene.piece.stack;
    if (!scene.form.letsGo || scene.plan.stack.strips.size() < 2 || (!stack.scarfedStart && !stack.scarfedEnd)) return;
    const bool start = stack.scarfedStart.has_value();
    const double slope = (start ? stack.scarfedStart : stack.scarfedEnd)->slope;
    const laminate::Strip& strip = scene.plan.stack.strips.front();
    Finding finding = foundWithoutLimit(Code::scarfFeather, beamTheory);
    const double feather = slope * ((start ? strip.thickness_m : strip.thicknessAtEnd_m) + stack.glueLine_m);
    finding.at_m = start ? 0 : scene.length_m;
    finding.value = toMillimetres(feather);
    finding.text = {texts::scarfFeather, {put::span(feather)}};
    finding.details.emplace_back(texts::featherAlone);
    findings.push_back(finding);
}

void addParts(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || scene.form.parts.size() < 2 || isStraight(scene)) return;
    for (std::size_t i = 1; i < scene.form.parts.size(); ++i) {
        const PartForm& part = scene.form.parts[i];
        const double off_m = scene.off(part.offWanted);
        Finding finding = foundWithoutLimit(Code::partOffLine, beamTheory);
        finding.value = toMillimetres(off_m);
        finding.strip = part.firstPlace;
        finding.text = {off_m < 0 ? texts::partIn : texts::partOpen,
                        {put::count(part.firstPlace), put::count(part.lastPlace), put::tape(off_m), scene.end()}};
        finding.details = {shareGivenBack(scene, part, {texts::partShare, texts::partShareScarf, texts::partShareRange},
                                          {put::share(scene.first().ratioAtTightest)}),
                           texts::partOwnLine};
        findings.push_back(finding);
    }
}

void addGluings(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || scene.form.gluings.size() < 2) return;
    const double first = scene.form.gluings.front().ratio;
    const double last = scene.form.gluings.back().ratio;
    findings.push_back(
        said(foundAgainst(Code::gluingsAddUp, beamTheory, 100 * first, 100 * last),
             {texts::gluingsAddUp, {put::share(first), put::share(last)}, math::countOf(scene.form.gluings)},
             {texts::gluingsAsOne}));
}

void addPlaned(std::vector<Finding>& findings, const FormScene& scene) {
    for (const PartForm& part : scene.form.parts) {
        if (!scene.form.letsGo || !part.planed || isStraight(scene)) continue;
        const double off_m = scene.off(*part.planed);
        if (std::abs(off_m) < 0.0001) continue;
        Finding finding =
            foundWithoutLimit(Code::planingMovesIt,
                              {"residual stress in the wood taken off, section by section (derived)", Mark::derived});
        finding.value = toMillimetres(off_m);
        finding.text = {off_m < 0 ? texts::planedIn : texts::planedOpen, {put::tape(off_m), scene.end()}};
        finding.details.emplace_back(texts::planedWhy);
        findings.push_back(finding);
    }
}

std::string speciesName(const FormScene& scene, const std::string& id) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, id);
    return wood ? woodName(*wood) : id;
}

void addMoistureBounds(std::vector<Finding>& findings, const FormScene& scene) {
    constexpr double least = 0.04;
    constexpr double most = 0.30;
    const model::Stack& stack = scene.piece.stack;
    for (const bool service : {false, true}) {
        const double moisture = service ? stack.serviceMoisture : stack.moisture;
        if (moisture >= least && moisture <= most) continue;
        Finding finding = found(
            service ? Code::serviceMoistureOutOfRange : Code::moistureOutOfRange,
            {"Wood Handbook: wood in air holds no less, and above some 30 % it no longer moves", Mark::fromMemory});
        finding.value = 100 * moisture;
        finding.limit = 100 * (moisture < least ? least : most);
        finding.text = {service ? texts::serviceMoistureOut : texts::moistureOut, {put::share(moisture, 3)}};
        findings.push_back(finding);
    }
}

void addMoisture(std::vector<Finding>& findings, const FormScene& scene) {
    const MoistureMove& move = scene.form.moisture;
    const model::Stack& stack = scene.piece.stack;
    if (!scene.form.letsGo || isStraight(scene) || stack.moisture == stack.serviceMoisture) return;
    if (!move.known) {
        findings.push_back(said(foundWithoutLimit(Code::shrinkageUnknown, practice, 100 * stack.serviceMoisture),
                                {texts::noShrinkage, {speciesName(scene, move.unknownSpecies)}}));
        return;
    }
    const double off = scene.off(move.opening);
    const double springback = scene.off(scene.first().uncorrected);
    if (std::abs(off) <= 0.001 && std::abs(off) <= 0.1 * std::abs(springback)) return;
    Finding finding = found(Code::moistureMovesIt, move.source);
    finding.source.text += "; linear from green to dry (D), 0.15 % along the grain (P*)";
    finding.value = toMillimetres(off);
    finding.limit = toMillimetres(springback);
    const std::vector<Message> all = moistureTexts(stack, scene.plan);
    finding.text = all.front();
    finding.details.assign(all.begin() + 1, all.end());
    findings.push_back(finding);
}

void addThick(std::vector<Finding>& findings, const FormScene& scene) {
    constexpr double thick_m = 0.05;
    const model::Stack& stack = scene.piece.stack;
    constexpr double moves = 0.01;
    if (!scene.form.letsGo || scene.plan.stack.depth_m < thick_m) return;
    if (std::abs(stack.moisture - stack.serviceMoisture) < moves) return;
    findings.push_back(
        said(foundAgainst(Code::thickPiece, practice, toMillimetres(scene.plan.stack.depth_m), toMillimetres(thick_m)),
             {texts::thickPiece, {put::span(scene.plan.stack.depth_m), put::span(thick_m)}}, {texts::thickPieceWhy}));
}

// What planing and moisture move the reported end by together, where that is more than the piece may lie off: one
// decision, so one finding, which explains both and whatever makes it slow.
void addMovesLater(std::vector<Finding>& findings, const FormScene& scene) {
    std::vector<double> planed_mm;  // of each part
    double moisture_mm = 0;
    std::vector<Message> why;
    std::vector<Source> sources;
    for (const Finding& finding : findings) {
        if (finding.code == Code::planingMovesIt) {
            planed_mm.push_back(finding.value);
        } else if (finding.code == Code::moistureMovesIt) {
            moisture_mm = finding.value;
        } else if (finding.code != Code::thickPiece) {
            continue;
        }
        why.push_back(finding.text);
        why.insert(why.end(), finding.details.begin(), finding.details.end());
        sources.push_back(finding.source);
    }
    double off_mm = moisture_mm + (planed_mm.empty() ? 0 : planed_mm.front());
    for (const double one_mm : planed_mm) {
        if (std::abs(one_mm + moisture_mm) > std::abs(off_mm)) off_mm = one_mm + moisture_mm;
    }
    const double off_m = units::fromMillimetres(off_mm);
    const double limit_m = std::max(scene.piece.line.fairWithin_m, scene.piece.holding.gapLimit_m);
    if (std::abs(off_m) <= limit_m) return;
    Finding finding = found(Code::movesLater, sources.front());
    for (auto source = sources.begin() + 1; source != sources.end(); ++source)
        finding.source.text += "; " + source->text;
    finding.value = toMillimetres(off_m);
    finding.limit = toMillimetres(limit_m);
    const Phrase& after = planed_mm.empty()  ? texts::afterASeason
                          : moisture_mm == 0 ? texts::afterPlaning
                                             : texts::afterBoth;
    finding.text = {off_m < 0 ? texts::laterCloses : texts::laterOpens,
                    {Message{after}, put::tape(off_m), scene.end(), put::tape(limit_m)}};
    finding.details = std::move(why);
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> formFindings(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Finding> findings;
    if (plan.form.parts.empty()) return findings;
    const double length = plan.line.fair.line.length();
    const FormScene scene{piece, shop, plan, plan.form, length, reportedAtStart(plan.form, length)};
    addImpossible(findings, scene);
    addUnsettled(findings, scene);
    addSpringback(findings, scene);
    addFactor(findings, scene);
    addTighterOnForm(findings, scene);
    addScarfFeather(findings, scene);
    addParts(findings, scene);
    addGluings(findings, scene);
    addPlaned(findings, scene);
    addMoistureBounds(findings, scene);
    addMoisture(findings, scene);
    addThick(findings, scene);
    addMovesLater(findings, scene);
    return findings;
}

}  // namespace fayline::plan
