#include <algorithm>
#include <cmath>
#include <string>

#include "core/math/count.hpp"
#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/form_wording.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::Source;
using measure::toMillimetres;
using measure::writeNumber;
using measure::writeShare;
using stack::FormPlan;
using stack::MoistureMove;
using stack::Opening;
using stack::PartForm;

const Source beamTheory{"beam theory: moment of the loose strips over the glued stiffness (derived)", Mark::derived};
const Source practice{"common practice, no source", Mark::commonPractice};

struct FormScene {
    const boat::Piece& piece;
    const Shop& shop;
    const Plan& plan;
    const FormPlan& form;
    double length_m;
    bool atStart;  // which end openings are told at

    const PartForm& first() const { return form.parts.front(); }
    double off(const Opening& opening) const { return atStart ? opening.start_m : opening.end_m; }
    std::string opening(const Opening& o, const std::string& verb) const {
        return openingText(o, atStart, verb, shop.display);
    }
    std::string place(double at_m) const { return placeText(at_m, length_m, shop.display); }
};

Finding about(Severity severity, Code code, const std::string& unit, const Source& source) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    finding.limited = false;
    return finding;
}

// Flatter than this over the whole length, no eye sees it bend.
bool isStraight(const FormScene& scene) {
    return std::abs(scene.plan.line.tightest.curvature_per_m) * scene.length_m < 1e-6;
}

// "1.2 % of its curve"; where it differs along the piece, from and to.
std::string ratioText(const FormScene& scene, const PartForm& part, const std::string& whose) {
    constexpr double same = 1.1;
    const bool scarfed = scene.piece.stack.scarfedStart || scene.piece.stack.scarfedEnd;
    const std::string tightest = writeShare(part.ratioAtTightest) + " of " + whose + " curve";
    if (part.mostRatio <= same * part.leastRatio) return tightest;
    if (scarfed) return tightest + " (up to " + writeShare(part.mostRatio) + " where the scarf leaves fewer strips)";
    return writeNumber(100 * part.leastRatio, 2) + " to " + writeShare(part.mostRatio) + " of " + whose + " curve";
}

void addImpossible(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.possible) return;
    constexpr double most = 0.95;
    const FormPlan& form = scene.form;
    const std::string help =
        " More and thinner strips give back less; so do strips that were soaked, steamed or boiled and dried on the "
        "form.";
    Finding finding = about(Severity::stop, form.noRoom ? Code::formNoRoom : Code::formImpossible, "pct", beamTheory);
    finding.at_m = form.impossibleAt_m;
    finding.value = 100 * form.impossibleRatio;
    finding.limit = 100 * most;
    finding.limited = !form.noRoom;
    if (form.noRoom) {
        finding.text = "The strips find no room on the form that their springback of " +
                       writeShare(form.impossibleRatio) + " asks for " + scene.place(form.impossibleAt_m) +
                       ": bent that much tighter than the line, its hollow is tighter than they are deep." + help;
    } else {
        finding.text = "No form lets these strips go to this line: " + scene.place(form.impossibleAt_m) +
                       " they would give back " + writeShare(form.impossibleRatio) + " of their curve, and beyond " +
                       writeShare(most) + " hardly any bend is left." + help;
    }
    findings.push_back(finding);
}

void addUnsettled(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.settled || !scene.form.possible) return;
    Finding finding = about(Severity::caution, Code::formNotSettled, "pct", beamTheory);
    finding.value = 100 * scene.form.unsettled;
    finding.limit = 100 * stack::stillSettled;
    finding.limited = true;
    finding.text = "The form's curve did not settle: tries still differ by " + writeShare(scene.form.unsettled) +
                   ". Use more, thinner strips, or try the form before you trust it.";
    findings.push_back(finding);
}

std::string scatterText(const FormScene& scene, double off_m) {
    const FormPlan& form = scene.form;
    return " Bends that builders measured gave back from nothing to about " +
           (form.scatterHigh == 2 ? "twice" : writeNumber(form.scatterHigh) + " times") + " that (here up to " +
           tapeText(form.scatterHigh * off_m, scene.shop.display) +
           "), some of it days later: measure when it is let go and again after some days.";
}

std::string riseText(const FormScene& scene, const Opening& opening, const std::string& verb) {
    const std::string from = tapeText(opening.riseFrom_m, scene.shop.display);
    const std::string to = tapeText(opening.riseTo_m, scene.shop.display);
    return from == to ? std::string() : " Its rise " + verb + " from " + from + " to " + to + ".";
}

void addSpringback(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || !scene.form.possible || isStraight(scene)) return;
    const PartForm& part = scene.first();
    const bool allowed = scene.form.corrected;
    Finding finding = about(allowed ? Severity::note : Severity::caution,
                            allowed ? Code::springback : Code::springbackNotAllowedFor, "mm", beamTheory);
    finding.source.text +=
        "; scatter: " + scene.form.scatterSource.text + " (" + measure::markText(scene.form.scatterSource.mark) + ")";
    finding.at_m = scene.atStart ? 0 : scene.length_m;
    finding.value = toMillimetres(scene.off(part.uncorrected));
    if (allowed) {
        finding.text = "Let go, the piece gives back " + ratioText(scene, part, "its") +
                       ", and the form is bent for that. Uncorrected, " +
                       scene.opening(part.uncorrected, "would stand") + "." +
                       riseText(scene, part.uncorrected, "would go");
    } else {
        finding.text = "The form has the wanted line itself, and let go the piece gives back " +
                       ratioText(scene, part, "its") + ": " + scene.opening(part.uncorrected, "will stand") + "." +
                       riseText(scene, part.uncorrected, "will go");
    }
    finding.text += scatterText(scene, scene.off(part.uncorrected));
    findings.push_back(finding);
}

void addFactor(std::vector<Finding>& findings, const FormScene& scene) {
    if (scene.form.factor == 1 || !scene.form.letsGo) return;
    Finding finding = about(Severity::note, Code::springbackFactor, "ratio",
                            {"your own figure, from earlier pieces", Mark::commonPractice});
    finding.value = scene.form.factor;
    finding.limit = 1;
    finding.limited = true;
    finding.text = "Springback is taken as " + writeNumber(scene.form.factor) +
                   " times what theory says, as you set it from earlier pieces.";
    findings.push_back(finding);
}

// The strips bend tighter on the form than on the line; what that does to the one nearest to breaking.
void addTighterOnForm(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.corrected) return;
    const stack::StrainedOnForm& most = scene.form.mostStrained;
    const stack::Strip& strip = scene.plan.stack.strips[most.place - 1];
    constexpr double elastic = 0.6;
    // What breaks on the line is said of the strips.
    if (most.used <= elastic || stack::worstShare(strip) >= 1) return;
    const bool breaks = most.used >= 1;
    Finding finding = breaks ? about(Severity::stop, Code::stripBreaksOnForm, "pct", strip.breakingSource)
                             : about(Severity::note, Code::bentBeyondElastic, "pct", practice);
    finding.at_m = most.at_m;
    finding.strip = most.place;
    finding.limited = true;
    finding.value = 100 * (breaks ? most.strain : most.used);
    finding.limit = 100 * (breaks ? most.breaksAt : elastic);
    const std::string name = capitalised(stripText(most.place, math::countOf(scene.plan.stack.strips)));
    if (breaks) {
        finding.text = name + " would go round the line, but breaks on the form, which is tighter: strained " +
                       scene.place(most.at_m) + " to " + writeShare(most.strain) + ", where its wood breaks at " +
                       writeShare(most.breaksAt) + " in the mean. Take thinner strips.";
    } else {
        finding.text = name + " is strained on the form to " + writeShare(most.used) + " of what breaks it " +
                       scene.place(most.at_m) + "; beyond about " + writeShare(elastic) +
                       " wood yields and keeps some of its bend, so that it may give back less than theory says.";
    }
    findings.push_back(finding);
}

void addScarfFeather(std::vector<Finding>& findings, const FormScene& scene) {
    const boat::Stack& stack = scene.piece.stack;
    if (!scene.form.letsGo || scene.plan.stack.strips.size() < 2 || (!stack.scarfedStart && !stack.scarfedEnd)) return;
    const bool start = stack.scarfedStart.has_value();
    const double slope = (start ? stack.scarfedStart : stack.scarfedEnd)->slope;
    const stack::Strip& strip = scene.plan.stack.strips.front();
    Finding finding = about(Severity::note, Code::scarfFeather, "mm", beamTheory);
    const double feather = slope * ((start ? strip.thickness_m : strip.thicknessAtEnd_m) + stack.glueLine_m);
    finding.at_m = start ? 0 : scene.length_m;
    finding.value = toMillimetres(feather);
    finding.text =
        "Over the last " + spanText(feather, scene.shop.display) +
        " of the scarf one strip is alone and keeps no bend at all: it lies down when it is glued to its mate.";
    findings.push_back(finding);
}

void addParts(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || scene.form.parts.size() < 2 || isStraight(scene)) return;
    for (std::size_t i = 1; i < scene.form.parts.size(); ++i) {
        const PartForm& part = scene.form.parts[i];
        Finding finding = about(Severity::note, Code::partOffLine, "mm", beamTheory);
        finding.value = toMillimetres(scene.off(part.offWanted));
        finding.strip = part.firstPlace;
        finding.text = "The dry face parts the stack: strips " + std::to_string(part.firstPlace) + " to " +
                       std::to_string(part.lastPlace) + " let go by themselves, give back " +
                       ratioText(scene, part, "their") + " where those on the form give back " +
                       writeShare(scene.first().ratioAtTightest) + ", and " +
                       scene.opening(part.offWanted, "will stand") +
                       ", against their own line: the form is made for the part that lies on it.";
        findings.push_back(finding);
    }
}

void addGluings(std::vector<Finding>& findings, const FormScene& scene) {
    if (!scene.form.letsGo || scene.form.gluings.size() < 2) return;
    const stack::Gluing& first = scene.form.gluings.front();
    Finding finding = about(Severity::note, Code::gluingsAddUp, "pct", beamTheory);
    finding.value = 100 * first.ratio;
    finding.limit = 100 * scene.form.gluings.back().ratio;
    finding.limited = true;
    finding.text = "Glued in " + numberWord(math::countOf(scene.form.gluings)) +
                   " goes on one form, the piece gives back what it would in one, " +
                   writeShare(scene.form.gluings.back().ratio) + "; taken off after the first it would give back " +
                   writeShare(first.ratio) + " and want bending back. Leave it on the form between.";
    findings.push_back(finding);
}

void addPlaned(std::vector<Finding>& findings, const FormScene& scene) {
    for (const PartForm& part : scene.form.parts) {
        if (!scene.form.letsGo || !part.planed || isStraight(scene)) continue;
        const double off = scene.off(*part.planed);
        if (std::abs(off) < 0.0001) continue;
        Finding finding = about(Severity::note, Code::planingMovesIt, "mm",
                                {"residual stress in the wood taken off, section by section (derived)", Mark::derived});
        finding.value = toMillimetres(off);
        finding.text = "Planing takes the bending locked up in the wood that comes off with it: " +
                       scene.opening(*part.planed, "will stand") +
                       ", against the shape it was let go to. The form does not allow for it.";
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
    const boat::Stack& stack = scene.piece.stack;
    for (const bool service : {false, true}) {
        const double moisture = service ? stack.serviceMoisture : stack.moisture;
        if (moisture >= least && moisture <= most) continue;
        Finding finding = about(
            Severity::stop, service ? Code::serviceMoistureOutOfRange : Code::moistureOutOfRange, "pct",
            {"Wood Handbook: wood in air holds no less, and above some 30 % it no longer moves", Mark::fromMemory});
        finding.value = 100 * moisture;
        finding.limit = 100 * (moisture < least ? least : most);
        finding.limited = true;
        finding.text = std::string("A moisture of ") + writeShare(moisture, 3) + (service ? " in service" : "") +
                       " is none that this wood would have there; give 4 to 30 %.";
        findings.push_back(finding);
    }
}

void addMoisture(std::vector<Finding>& findings, const FormScene& scene) {
    const MoistureMove& move = scene.form.moisture;
    const boat::Stack& stack = scene.piece.stack;
    if (!scene.form.letsGo || isStraight(scene) || stack.moisture == stack.serviceMoisture) return;
    if (!move.known) {
        Finding finding = about(Severity::note, Code::shrinkageUnknown, "pct", practice);
        finding.text = "How much " + speciesName(scene, move.unknownSpecies) +
                       " shrinks is not known here, so nothing is said of how moisture moves the curve; give the wood "
                       "with its shrinkage among the boat's own.";
        finding.value = 100 * stack.serviceMoisture;
        findings.push_back(finding);
        return;
    }
    const double off = scene.off(move.opening);
    const double springback = scene.off(scene.first().uncorrected);
    if (std::abs(off) <= 0.001 && std::abs(off) <= 0.1 * std::abs(springback)) return;
    Finding finding = about(Severity::note, Code::moistureMovesIt, "mm", move.source);
    finding.source.text += "; linear from green to dry (D), 0.15 % along the grain (P*)";
    finding.value = toMillimetres(off);
    finding.limit = toMillimetres(springback);
    finding.limited = true;
    finding.text = moistureText(stack, scene.plan);
    findings.push_back(finding);
}

void addThick(std::vector<Finding>& findings, const FormScene& scene) {
    constexpr double thick_m = 0.05;
    const boat::Stack& stack = scene.piece.stack;
    constexpr double moves = 0.01;
    if (!scene.form.letsGo || scene.plan.stack.depth_m < thick_m) return;
    if (std::abs(stack.moisture - stack.serviceMoisture) < moves) return;
    Finding finding = about(Severity::note, Code::thickPiece, "mm", practice);
    finding.value = toMillimetres(scene.plan.stack.depth_m);
    finding.limit = toMillimetres(thick_m);
    finding.limited = true;
    finding.text = "A piece " + spanText(scene.plan.stack.depth_m, scene.shop.display) +
                   " thick takes weeks or months to come to the moisture of its place, its faces first: it goes on "
                   "moving as long.";
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> formFindings(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
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
    return findings;
}

}  // namespace fayline::plan
