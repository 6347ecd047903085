#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <tuple>

#include "core/math/count.hpp"
#include "core/measure/input_error.hpp"
#include "core/measure/units.hpp"
#include "core/plan/breaking_help.hpp"
#include "core/plan/breaking_wording.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"
#include "core/stack/limits.hpp"
#include "core/stack/parallels.hpp"
#include "core/stack/softened.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;
using measure::writeNumber;
using measure::writeShare;
using measure::writeThickness;
using stack::LimitKind;
using stack::LimitMet;

// What every sentence about the stack may need.
struct StackScene {
    const boat::Piece& piece;
    const Shop& shop;
    const LinePlan& line;
    const stack::StackPlan& stack;

    std::string place(double at_m) const { return placeText(at_m, line.fair.line.length(), shop.display); }
    std::string strip(int place) const { return stripText(place, math::countOf(stack.strips)); }
    const stack::Strip& stripAt(int place) const { return stack.strips[place - 1]; }
    std::string help(int place) const { return breakingHelpText(breakingHelp(piece, shop, stripAt(place)), shop); }
};

Finding about(Severity severity, Code code, const std::string& unit) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    return finding;
}

Finding fromLimit(Severity severity, Code code, const std::string& unit, const LimitMet& limit, double toUnit) {
    Finding finding = about(severity, code, unit);
    finding.at_m = limit.at_m;
    finding.strip = limit.place;
    finding.value = limit.value * toUnit;
    finding.limit = limit.limit * toUnit;
    finding.source = limit.source;
    return finding;
}

Finding breaks(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::stripBreaks, "pct", limit, 100);
    finding.text = capitalised(scene.strip(limit.place)) + " breaks " + scene.place(limit.at_m) +
                   ": bent there to a strain of " + writeShare(limit.value) + ", where its wood breaks at " +
                   writeShare(limit.limit) + " in the mean." + scene.help(limit.place);
    return finding;
}

Finding breaksHot(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::stripBreaksHot, "pct", limit, 100);
    finding.text = capitalised(scene.strip(limit.place)) + " tears while it is bent hot " + scene.place(limit.at_m) +
                   ": strained there to " + writeShare(limit.value) + ", where hot wet wood without a strap tears at " +
                   writeShare(limit.limit) +
                   " in the mean. Take thinner strips; the tighter bends published for steamed wood hold only with a "
                   "steel strap along the outside.";
    return finding;
}

// Within a twentieth of a limit is at it.
constexpr double atLimit = 0.05;

bool isForLoad(LimitKind kind) {
    return kind == LimitKind::ratioHardwood || kind == LimitKind::ratioSoftwood ||
           kind == LimitKind::laminationThickness || kind == LimitKind::curvatureFactor;
}

// What a rule for curved timber that carries load has against the bend, with its source.
std::string loadRule(const StackScene& scene, const LimitMet& limit) {
    const std::string from = ": " + limit.source.text + " (" + measure::markText(limit.source.mark) + ")";
    switch (limit.kind) {
        case LimitKind::laminationThickness:
            return "strips no thicker than " + writeThickness(limit.limit, scene.shop.display) + ", these are " +
                   writeThickness(limit.value, scene.shop.display) + from;
        case LimitKind::ratioHardwood:
        case LimitKind::ratioSoftwood:
            return "a radius of " + writeNumber(limit.limit) + " times the thickness or more, here " +
                   writeNumber(limit.value) + from;
        default:
            break;
    }
    // Of the strip whose middle has that radius; its inner face lies half a thickness further in.
    const double ratio = scene.stripAt(limit.place).radiusOverThickness - 0.5;
    const measure::Source eurocode = stack::bendingFactorEurocodeSource();
    return limit.source.text + " (" + measure::markText(limit.source.mark) + "); " + eurocode.text + " leaves " +
           writeShare(stack::bendingFactorEurocode(ratio)) + " (" + measure::markText(eurocode.mark) + ")";
}

// Several rules for timber that carries load, one bend: one note, with what that bend leaves of the strength.
void addForLoad(std::vector<Finding>& findings, const StackScene& scene, const std::vector<const LimitMet*>& limits) {
    const LimitMet* factor = nullptr;
    std::vector<const LimitMet*> over;
    for (const LimitMet* limit : limits) {
        if (!isForLoad(limit->kind) || limit->met) continue;
        const bool most = limit->kind == LimitKind::laminationThickness;
        const double by = most ? limit->value / limit->limit - 1 : 1 - limit->value / limit->limit;
        if (limit->kind == LimitKind::curvatureFactor) factor = limit;
        if (by > atLimit) over.push_back(limit);
    }
    if (over.empty() || !factor) return;
    Finding finding = fromLimit(Severity::note, Code::bendForLoad, "pct", *factor, 100);
    finding.text =
        "Carries load? The bend " + scene.place(factor->at_m) + " leaves it " +
        (factor->value > 0 ? "about " + writeShare(std::round(100 * factor->value) / 100) : "less than rules state") +
        " of a straight timber's strength. Ask the designer, or use thinner strips.";
    finding.source.text = loadRule(scene, *factor);
    for (const LimitMet* limit : over) {
        if (limit != factor) finding.source.text += "; " + loadRule(scene, *limit);
    }
    findings.push_back(finding);
}

Finding noRoom(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::noRoom, "mm", limit, 1);
    const double curvature = std::abs(scene.line.fair.line.at(limit.at_m).curvature_per_m);
    const double radius = 1 / curvature;
    const double reach = (1 - limit.value) / curvature;
    finding.value = toMillimetres(reach);
    finding.limit = toMillimetres(radius);
    finding.text = "There is no room for the stack " + scene.place(limit.at_m) + ": the line's radius there is " +
                   spanText(radius, scene.shop.display) + " and the stack reaches " +
                   spanText(reach, scene.shop.display) + " into it.";
    return finding;
}

Finding crosses(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::stackCrossesItself, "mm", limit, 1000);
    finding.limit = toMillimetres(limit.at_m);
    finding.limited = false;
    finding.text = "The stack runs into itself: what lies " + scene.place(limit.at_m) + " meets what lies " +
                   scene.place(limit.value) + ".";
    return finding;
}

Finding pins(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::pinsForbidSliding, "mm", limit, 1000);
    finding.text = "The pins forbid the strips to slide: between them, from " + scene.place(limit.at_m) +
                   " on, the outermost strip has to slip " + smallText(limit.value, scene.shop.display) +
                   " along the one on the form, and pins let " + smallText(limit.limit, scene.shop.display) +
                   " pass. Pin one place only.";
    return finding;
}

Finding chanceTooGreat(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::stop, Code::chanceOfBreaking, "pct", limit, 100);
    finding.text = capitalised(chanceText(limit.value)) + " strips will break; above 1 in 3 spares do not help." +
                   scene.help(stack::worstStrip(scene.stack).place);
    return finding;
}

// Without spares there shall be enough strips in 95 of 100 gluings.
constexpr double confidence = 0.95;

Finding spares(const StackScene& scene, const LimitMet& limit) {
    Finding finding = fromLimit(Severity::caution, Code::chanceOfBreaking, "pct", limit, 100);
    finding.value = 100 * scene.stack.chanceAnyBreaks;
    finding.limit = 100 * (1 - confidence);
    finding.text = "A strip breaks in " + chanceText(scene.stack.chanceAnyBreaks) + " gluings (allowed 1 in 20). Cut " +
                   numberWord(scene.stack.spares) + (scene.stack.spares == 1 ? " spare." : " spares.");
    return finding;
}

// Strips of one wood and thickness are spoken of once, the worst of them; notes only once for the whole stack.
std::vector<const LimitMet*> worstOfEach(const StackScene& scene) {
    std::map<std::tuple<LimitKind, std::string, double>, const LimitMet*> worst;
    for (const LimitMet& limit : scene.stack.limits) {
        const bool note = limit.kind == LimitKind::laminationThickness || limit.kind == LimitKind::curvatureFactor;
        const bool bySort = !note && limit.place > 0;
        const bool smallIsBad = limit.kind != LimitKind::breaks && limit.kind != LimitKind::breaksHot &&
                                limit.kind != LimitKind::laminationThickness;
        const auto badness = [smallIsBad](const LimitMet& l) { return smallIsBad ? -l.value : l.value / l.limit; };
        const LimitMet*& kept = worst[{limit.kind, bySort ? scene.stripAt(limit.place).species : std::string(),
                                       bySort ? scene.stripAt(limit.place).thickness_m : 0.0}];
        if (!kept || badness(limit) > badness(*kept)) kept = &limit;
    }
    std::vector<const LimitMet*> inOrder;
    for (const auto& [key, limit] : worst) inOrder.push_back(limit);
    return inOrder;
}

void addLimits(std::vector<Finding>& findings, const StackScene& scene) {
    const std::vector<const LimitMet*> all = worstOfEach(scene);
    addForLoad(findings, scene, all);
    for (const LimitMet* worst : all) {
        const LimitMet& limit = *worst;
        if (limit.kind == LimitKind::chance && limit.met && scene.stack.spares > 0) {
            findings.push_back(spares(scene, limit));
        }
        if (limit.met) continue;
        switch (limit.kind) {
            case LimitKind::breaks:
                findings.push_back(breaks(scene, limit));
                break;
            case LimitKind::breaksHot:
                findings.push_back(breaksHot(scene, limit));
                break;
            case LimitKind::chance:
                findings.push_back(chanceTooGreat(scene, limit));
                break;
            case LimitKind::ratioHardwood:
            case LimitKind::ratioSoftwood:
            case LimitKind::laminationThickness:
            case LimitKind::curvatureFactor:
                break;
            case LimitKind::noRoom:
                findings.push_back(noRoom(scene, limit));
                break;
            case LimitKind::crossesItself:
                findings.push_back(crosses(scene, limit));
                break;
            case LimitKind::pins:
                findings.push_back(pins(scene, limit));
                break;
        }
    }
}

// A step that is smaller than this disappears in the saw cut.
constexpr double leastStep_m = 0.001;

void addEndsStep(std::vector<Finding>& findings, const StackScene& scene) {
    const stack::Stagger& stagger = scene.stack.stagger;
    const double shortAtStart = stagger.start_m - scene.piece.stack.runsPastStart_m;
    const double shortAtEnd = stagger.end_m - scene.piece.stack.runsPastEnd_m;
    const bool start = std::abs(stagger.start_m) > std::abs(stagger.end_m);
    const double step = start ? stagger.start_m : stagger.end_m;
    if (std::abs(step) < leastStep_m) return;
    const bool fallsShort = (start ? shortAtStart : shortAtEnd) > 0;
    const double overRun = start ? scene.piece.stack.runsPastStart_m : scene.piece.stack.runsPastEnd_m;
    Finding finding = about(fallsShort ? Severity::caution : Severity::note, Code::endsStep, "mm");
    finding.at_m =
        start ? -scene.piece.stack.runsPastStart_m : scene.line.fair.line.length() + scene.piece.stack.runsPastEnd_m;
    finding.value = toMillimetres(std::abs(step));
    finding.limit = toMillimetres(overRun);
    finding.source = {"lengths of parallel curves (derived)", Mark::derived};
    finding.text = std::string("Cut to one length and held ") + scene.place(stagger.pinnedAt_m) +
                   ", the outermost strip " + (step > 0 ? "ends " : "runs ") +
                   spanText(std::abs(step), scene.shop.display) + (step > 0 ? " short of" : " past") +
                   " the one on the form at the " + (start ? "start" : "end") + ", where strips run past by " +
                   spanText(overRun, scene.shop.display) + ". " +
                   (fallsShort ? "It would not reach the trim line: cut each strip to its own length."
                               : "Cut each strip to its own length if the ends shall lie even.");
    findings.push_back(finding);
}

// Moistures between which the table of strengths was measured, Wood Handbook Table 5-14 (M).
constexpr double driestOfTable = 0.06;
constexpr double wettestOfTable = 0.20;
constexpr double steepestGrainOfTable = 0.20;  // 1 in 5, Wood Handbook Table 5-12 (M)

void addBeyondTables(std::vector<Finding>& findings, const StackScene& scene) {
    const boat::Stack& stack = scene.piece.stack;
    if (stack.moisture < driestOfTable || stack.moisture > wettestOfTable) {
        const bool dry = stack.moisture < driestOfTable;
        Finding finding = about(Severity::caution, Code::moistureBeyondTable, "pct");
        finding.value = 100 * stack.moisture;
        finding.limit = 100 * (dry ? driestOfTable : wettestOfTable);
        finding.source = {"Wood Handbook Table 5-14", Mark::fromMemory};
        finding.text = "At a moisture of " + writeShare(stack.moisture, 3) + " the wood is " +
                       (dry ? "drier" : "wetter") + " than the " + writeShare(dry ? driestOfTable : wettestOfTable) +
                       " to which its strength is tabled; take strains and stiffness as rough.";
        findings.push_back(finding);
    }
    if (stack.grainSlope > steepestGrainOfTable) {
        Finding finding = about(Severity::caution, Code::grainBeyondTable, "ratio");
        finding.value = stack.grainSlope;
        finding.limit = steepestGrainOfTable;
        finding.source = {"Wood Handbook Table 5-12", Mark::fromMemory};
        finding.text = "Grain that runs out 1 in " + writeNumber(1 / stack.grainSlope, 2) +
                       " is steeper than the 1 in 5 to which its strength is tabled: the strips are weaker than shown.";
        findings.push_back(finding);
    }
}

void addSpeciesWarnings(std::vector<Finding>& findings, const StackScene& scene) {
    std::vector<std::string> reported;
    for (const stack::Strip& strip : scene.stack.strips) {
        if (std::find(reported.begin(), reported.end(), strip.species) != reported.end()) continue;
        reported.push_back(strip.species);
        const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
        if (!wood || wood->warning.empty()) continue;
        Finding finding = about(Severity::note, Code::speciesWarning, "MPa");
        finding.strip = strip.place;
        finding.value = wood->mor_Pa.value / 1e6;
        finding.limited = false;
        finding.source = wood->mor_Pa.source;
        finding.text = capitalised(woodName(*wood)) + ", here with a bending strength of " +
                       measure::writeStress(wood->mor_Pa.value) + ": " + wood->warning;
        if (!wood->warning.ends_with('.')) finding.text += ".";
        findings.push_back(finding);
    }
}

// "about 1 to 4 days", "up to 12 hours".
std::string dryingText(const stack::Drying& drying) {
    constexpr double day_s = 86400;
    if (drying.longest_s < day_s) {
        return "some " + writeNumber(std::max(1.0, std::ceil(drying.longest_s / 3600)), 2) + " hours";
    }
    const std::string most = writeNumber(std::ceil(drying.longest_s / day_s), 2);
    const std::string least = writeNumber(std::max(1.0, std::round(drying.shortest_s / day_s)), 2);
    if (least == most) return most == "1" ? "about a day" : "about " + most + " days";
    return least + " to " + most + " days";
}

const char* softenedWord(boat::Softened how) {
    if (how == boat::Softened::soaked) return "soaked";
    return how == boat::Softened::steamed ? "steamed" : "boiled";
}

stack::Drying dryingIn(const boat::Glue& glue, double thickness_m) {
    try {
        return stack::dryingTime(thickness_m, glue.air_C, glue.humidity);
    } catch (const measure::InputError& error) {
        throw error.within("glue.");
    }
}

Finding dryBeforeGlue(const StackScene& scene, const boat::Strips& strips, const stack::Strip& strip) {
    const boat::BentBefore& before = *strips.bentBefore;
    const boat::Glue& glue = scene.piece.glue;
    const double thickness = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
    const stack::Drying drying = dryingIn(glue, thickness);
    Finding finding = about(drying.reaches ? Severity::note : Severity::caution, Code::dryBeforeGlue, "days");
    finding.strip = strip.place;
    finding.value = drying.longest_s / 86400;
    finding.limited = false;
    finding.source = drying.source;
    finding.text = std::string("Strips that were ") + softenedWord(before.how) + " have to dry on the form to " +
                   writeShare(stack::glueBelow) + " before glue: ";
    const std::string air =
        measure::writeTemperature(glue.air_C, scene.shop.display) + " and " + writeShare(glue.humidity) + " humidity";
    if (drying.reaches) {
        finding.text += "from wet through, " + dryingText(drying) + " for " +
                        writeThickness(thickness, scene.shop.display) + " in air of " + air +
                        ", each strip with a face open to the air; weigh one until it loses no more. ";
    } else {
        finding.text += "in air of " + air + " wood only comes to " + writeShare(drying.airMoisture) +
                        ", so they never do. Dry them where it is warmer or drier. ";
        finding.unit = "pct";
        finding.value = 100 * drying.airMoisture;
        finding.limit = 100 * stack::glueBelow;
        finding.limited = true;
    }
    finding.text += "That they keep " + writeShare(before.set) +
                    " of the curve is your figure; only the rest counts as strain, pull and springback here.";
    if (before.how == boat::Softened::soaked) {
        finding.text += " Bent cold they are first strained by the whole curve, to " + writeShare(strip.firstStrain) +
                        ", and taken to break as dry ones do, at " + writeShare(strip.breakingStrain) +
                        " in the mean: no figure was found by which cold wet wood stretches further.";
    } else {
        finding.text += " While hot they are strained to " + writeShare(strip.firstStrain) +
                        "; hot wet wood without a strap tears at " + writeShare(strip.firstBreakingStrain) +
                        " in the mean. Steam scalds: gloves and sleeves.";
    }
    return finding;
}

void addDryBeforeGlue(std::vector<Finding>& findings, const StackScene& scene) {
    for (std::size_t group = 0; group < scene.piece.stack.strips.size(); ++group) {
        const boat::Strips& strips = scene.piece.stack.strips[group];
        if (!strips.bentBefore || strips.bentBefore->how == boat::Softened::no) continue;
        const auto strip = std::find_if(scene.stack.strips.begin(), scene.stack.strips.end(),
                                        [&](const stack::Strip& s) { return s.group == static_cast<int>(group); });
        findings.push_back(dryBeforeGlue(scene, strips, *strip));
    }
}

// Below this nothing whips that a hand would mind.
constexpr double leastEnergy_J = 1;

void addStoredBend(std::vector<Finding>& findings, const StackScene& scene) {
    const double energy = scene.stack.storedEnergy_J;
    if (energy < leastEnergy_J) return;
    // A weight to picture it by, in the units that the user reads in.
    const bool metric = scene.shop.display.lengths == measure::LengthNotation::millimetres;
    const double weight_N = 9.80665 * (metric ? 10.0 : 20 * measure::pound_kg);
    Finding finding = about(Severity::note, Code::storedBend, "J");
    finding.value = energy;
    finding.limited = false;
    finding.source = {"energy by beam theory (derived); the advice: common practice, no source", Mark::commonPractice};
    finding.text = "Bent and loose the strips store " + writeNumber(energy, 2) + " J, as much as " +
                   (metric ? "10 kg" : "20 lb") + " lifted " + spanText(energy / weight_N, scene.shop.display) +
                   ", and whip when a clamp slips: rope the stack and stand clear of its ends. Local rules and "
                   "licensed practice come first.";
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> stackFindings(const boat::Piece& piece, const Shop& shop, const LinePlan& line,
                                   const stack::StackPlan& stack) {
    const StackScene scene{piece, shop, line, stack};
    std::vector<Finding> findings;
    addLimits(findings, scene);
    addEndsStep(findings, scene);
    addBeyondTables(findings, scene);
    addSpeciesWarnings(findings, scene);
    addDryBeforeGlue(findings, scene);
    addStoredBend(findings, scene);
    return findings;
}

}  // namespace fayline::plan
