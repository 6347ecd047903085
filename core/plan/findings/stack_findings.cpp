#include <algorithm>
#include <cmath>
#include <map>
#include <string>
#include <tuple>

#include "core/laminate/limits.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/softened.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/stack_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/breaking_help.hpp"
#include "core/units/input_error.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using laminate::LimitKind;
using laminate::LimitMet;
using units::Mark;
using units::toMillimetres;

// What every sentence about the stack may need.
struct StackScene {
    const model::Piece& piece;
    const Shop& shop;
    const LinePlan& line;
    const laminate::StackPlan& stack;

    Arg place(double at_m) const { return put::place(at_m, line.fair.line.length()); }
    Message strip(int place) const { return stripName(place, math::countOf(stack.strips)); }
    const laminate::Strip& stripAt(int place) const { return stack.strips[place - 1]; }
    std::string wood(int place) const { return woodName(shop.species, stripAt(place).species); }
    BreakingHelp help(int place) const { return breakingHelp(piece, shop, stripAt(place)); }
};

Finding ofLimit(Code code, const LimitMet& limit, double toUnit) {
    Finding finding = found(code, limit.source);
    finding.at_m = limit.at_m;
    finding.strip = limit.place;
    finding.value = limit.value * toUnit;
    finding.limit = limit.limit * toUnit;
    return finding;
}

Finding breaks(const StackScene& scene, const LimitMet& limit) {
    const BreakingHelp help = scene.help(limit.place);
    Finding finding = ofLimit(Code::stripBreaks, limit, 100);
    finding.text = {texts::stripBreaks,
                    {scene.strip(limit.place), scene.place(limit.at_m), put::share(limit.value / limit.limit),
                     scene.wood(limit.place), breakingAdvice(help, scene.shop)}};
    finding.details = breakingHelpTexts(help, scene.shop);
    finding.details.insert(finding.details.begin(),
                           {texts::stripBreaksWhy, {put::share(limit.value), put::share(limit.limit)}});
    return finding;
}

Finding breaksHot(const StackScene& scene, const LimitMet& limit) {
    Finding finding = ofLimit(Code::stripBreaksHot, limit, 100);
    finding.text = {texts::stripBreaksHot,
                    {scene.strip(limit.place), scene.place(limit.at_m), put::share(limit.value / limit.limit)}};
    finding.details = {{texts::stripBreaksHotWhy, {put::share(limit.value), put::share(limit.limit)}},
                       texts::steelStrap};
    return finding;
}

// Within a twentieth of a limit is at it.
constexpr double atLimit = 0.05;

bool isForLoad(LimitKind kind) {
    return kind == LimitKind::ratioHardwood || kind == LimitKind::ratioSoftwood ||
           kind == LimitKind::laminationThickness || kind == LimitKind::curvatureFactor;
}

Arg sourceWords(const units::Source& source) {
    return Message(texts::sourceMarked, {source.text, units::markText(source.mark)});
}

// What a rule for curved timber that carries load has against the bend, with its source.
Message loadRule(const StackScene& scene, const LimitMet& limit) {
    switch (limit.kind) {
        case LimitKind::laminationThickness:
            return {texts::ruleThickness,
                    {put::thickness(limit.limit), put::thickness(limit.value), sourceWords(limit.source)}};
        case LimitKind::ratioHardwood:
        case LimitKind::ratioSoftwood:
            return {texts::ruleRadius, {put::number(limit.limit), put::number(limit.value), sourceWords(limit.source)}};
        default:
            break;
    }
    // Of the strip whose middle has that radius; its inner face lies half a thickness further in.
    const double ratio = scene.stripAt(limit.place).radiusOverThickness - 0.5;
    return {texts::ruleFactor,
            {put::share(laminate::bendingFactorEurocode(ratio)), sourceWords(laminate::bendingFactorEurocodeSource())}};
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
    Finding finding = ofLimit(Code::bendForLoad, *factor, 100);
    if (factor->value > 0) {
        finding.text = {texts::bendForLoad,
                        {scene.place(factor->at_m), put::share(std::round(100 * factor->value) / 100)}};
    } else {
        finding.text = {texts::bendBeyondRules, {scene.place(factor->at_m)}};
    }
    finding.details.push_back(loadRule(scene, *factor));
    for (const LimitMet* limit : over) {
        if (limit != factor) finding.details.push_back(loadRule(scene, *limit));
    }
    findings.push_back(finding);
}

Finding noRoom(const StackScene& scene, const LimitMet& limit) {
    Finding finding = ofLimit(Code::noRoom, limit, 1);
    const double curvature = std::abs(scene.line.fair.line.at(limit.at_m).curvature_per_m);
    const double radius = 1 / curvature;
    const double reach = (1 - limit.value) / curvature;
    finding.value = toMillimetres(reach);
    finding.limit = toMillimetres(radius);
    finding.text = {texts::noRoom, {scene.place(limit.at_m), put::span(reach), put::span(radius)}};
    return finding;
}

Finding crosses(const StackScene& scene, const LimitMet& limit) {
    Finding finding = ofLimit(Code::stackCrossesItself, limit, 1000);
    finding.limit = toMillimetres(limit.at_m);
    finding.limited = false;
    finding.text = {texts::stackCrossesItself, {scene.place(limit.at_m), scene.place(limit.value)}};
    return finding;
}

Finding pins(const StackScene& scene, const LimitMet& limit) {
    Finding finding = ofLimit(Code::pinsForbidSliding, limit, 1000);
    finding.text = {texts::pinsForbidSliding,
                    {scene.place(limit.at_m), put::small(limit.value), put::small(limit.limit)}};
    return finding;
}

Finding chanceTooGreat(const StackScene& scene, const LimitMet& limit) {
    const BreakingHelp help = scene.help(laminate::worstStrip(scene.stack).place);
    Finding finding = ofLimit(Code::chanceOfBreaking, limit, 100);
    finding.severity = Severity::stop;
    finding.text = {texts::mostStripsBreak, {put::chance(limit.value), breakingAdvice(help, scene.shop)}};
    finding.details = breakingHelpTexts(help, scene.shop);
    return finding;
}

// Without spares there shall be enough strips in 95 of 100 gluings.
constexpr double confidence = 0.95;

Finding spares(const StackScene& scene, const LimitMet& limit) {
    Finding finding = ofLimit(Code::chanceOfBreaking, limit, 100);
    finding.value = 100 * scene.stack.chanceAnyBreaks;
    finding.limit = 100 * (1 - confidence);
    finding.text = {texts::cutSpares,
                    {put::chance(scene.stack.chanceAnyBreaks), put::countWord(scene.stack.spares)},
                    scene.stack.spares};
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
    const laminate::Stagger& stagger = scene.stack.stagger;
    const double shortAtStart = stagger.start_m - scene.piece.stack.runsPastStart_m;
    const double shortAtEnd = stagger.end_m - scene.piece.stack.runsPastEnd_m;
    const bool start = std::abs(stagger.start_m) > std::abs(stagger.end_m);
    const double step = start ? stagger.start_m : stagger.end_m;
    if (std::abs(step) < leastStep_m) return;
    const bool fallsShort = (start ? shortAtStart : shortAtEnd) > 0;
    const double overRun = start ? scene.piece.stack.runsPastStart_m : scene.piece.stack.runsPastEnd_m;
    const double length = scene.line.fair.line.length();
    Finding finding = found(Code::endsStep, {"lengths of parallel curves (derived)", Mark::derived});
    if (fallsShort) finding.severity = Severity::caution;
    finding.at_m = start ? -overRun : length + overRun;
    finding.value = toMillimetres(std::abs(step));
    finding.limit = toMillimetres(overRun);
    const std::vector<Arg> args{put::span(std::abs(step)), scene.place(start ? 0 : length), put::span(overRun)};
    const Phrase& notShort = step > 0 ? texts::endStepsBack : texts::endRunsPast;
    finding.text = {fallsShort ? texts::endFallsShort : notShort, args};
    finding.details = {{texts::cutToOneLength, {scene.place(stagger.pinnedAt_m)}},
                       fallsShort ? texts::missesTrimLine : texts::endsEven};
    findings.push_back(finding);
}

// Moistures between which the table of strengths was measured, Wood Handbook Table 5-14 (M).
constexpr double driestOfTable = 0.06;
constexpr double wettestOfTable = 0.20;
constexpr double steepestGrainOfTable = 0.20;  // 1 in 5, Wood Handbook Table 5-12 (M)

void addBeyondTables(std::vector<Finding>& findings, const StackScene& scene) {
    const model::Stack& stack = scene.piece.stack;
    if (stack.moisture < driestOfTable || stack.moisture > wettestOfTable) {
        const bool dry = stack.moisture < driestOfTable;
        const double limit = dry ? driestOfTable : wettestOfTable;
        findings.push_back(said(foundAgainst(Code::moistureBeyondTable, {"Wood Handbook Table 5-14", Mark::fromMemory},
                                             100 * stack.moisture, 100 * limit),
                                {dry ? texts::drierThanTables : texts::wetterThanTables,
                                 {put::share(stack.moisture, 3), put::share(limit)}}));
    }
    if (stack.grainSlope > steepestGrainOfTable) {
        findings.push_back(said(
            foundAgainst(Code::grainBeyondTable, {"Wood Handbook Table 5-12", Mark::fromMemory}, stack.grainSlope,
                         steepestGrainOfTable),
            {texts::grainBeyondTable, {put::number(1 / stack.grainSlope, 2), put::number(1 / steepestGrainOfTable)}}));
    }
}

void addSpeciesWarnings(std::vector<Finding>& findings, const StackScene& scene) {
    std::vector<std::string> reported;
    for (const laminate::Strip& strip : scene.stack.strips) {
        if (std::ranges::find(reported, strip.species) != reported.end()) continue;
        reported.push_back(strip.species);
        const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
        if (!wood || wood->warning.empty()) continue;
        Finding finding = foundWithoutLimit(Code::speciesWarning, wood->mor_Pa.source);
        finding.strip = strip.place;
        finding.value = wood->mor_Pa.value / 1e6;
        finding.text = {texts::speciesWarning, {woodName(*wood)}};
        finding.details = {{texts::speciesStrength, {put::stress(wood->mor_Pa.value)}},
                           wood->warning + (wood->warning.ends_with('.') ? "" : ".")};
        findings.push_back(finding);
    }
}

// "about 12 hours", "1 to 4 days".
Message dryingTime(const laminate::Drying& drying) {
    constexpr double day_s = 86400;
    if (drying.longest_s < day_s) {
        return {texts::dryHours, {}, static_cast<int>(std::max(1.0, std::ceil(drying.longest_s / 3600)))};
    }
    const double most = std::ceil(drying.longest_s / day_s);
    const double least = std::max(1.0, std::round(drying.shortest_s / day_s));
    if (least == most) return {texts::dryDays, {}, static_cast<int>(most)};
    return {texts::dryDaysBetween, {put::count(least), put::count(most)}};
}

laminate::Drying dryingIn(const model::Glue& glue, double thickness_m) {
    try {
        return laminate::dryingTime(thickness_m, glue.air_C, glue.humidity);
    } catch (const units::InputError& error) {
        throw error.within("glue.");
    }
}

Finding dryBeforeGlue(const StackScene& scene, const model::Strips& strips, const laminate::Strip& strip) {
    const model::BentBefore& before = *strips.bentBefore;
    const model::Glue& glue = scene.piece.glue;
    const double thickness = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
    const laminate::Drying drying = dryingIn(glue, thickness);
    Finding finding = foundWithoutLimit(Code::dryBeforeGlue, drying.source);
    finding.strip = strip.place;
    if (drying.reaches) {
        finding.value = drying.longest_s / 86400;
        finding.text = {texts::dryBeforeGlue, {put::share(laminate::glueBelow), dryingTime(drying)}};
        finding.details.push_back(
            {texts::dryFromWet, {put::thickness(thickness), put::temperature(glue.air_C), put::share(glue.humidity)}});
    } else {
        finding.severity = Severity::caution;
        finding.unit = "pct";
        finding.value = 100 * drying.airMoisture;
        finding.limit = 100 * laminate::glueBelow;
        finding.limited = true;
        finding.text = {texts::neverDry, {put::share(laminate::glueBelow), put::share(drying.airMoisture)}};
        finding.details.push_back({texts::dryAir, {put::temperature(glue.air_C), put::share(glue.humidity)}});
    }
    const bool soaked = before.how == model::Softened::soaked;
    finding.details.push_back({texts::setIsYours, {put::share(before.set)}});
    finding.details.push_back(
        {soaked ? texts::bentSoaked : texts::bentHot,
         {put::share(strip.firstStrain), put::share(soaked ? strip.breakingStrain : strip.firstBreakingStrain)}});
    if (!soaked) finding.details.emplace_back(texts::steamScalds);
    return finding;
}

void addDryBeforeGlue(std::vector<Finding>& findings, const StackScene& scene) {
    for (std::size_t group = 0; group < scene.piece.stack.strips.size(); ++group) {
        const model::Strips& strips = scene.piece.stack.strips[group];
        if (!strips.bentBefore || strips.bentBefore->how == model::Softened::no) continue;
        const auto strip = std::ranges::find_if(
            scene.stack.strips, [&](const laminate::Strip& s) { return s.group == static_cast<int>(group); });
        findings.push_back(dryBeforeGlue(scene, strips, *strip));
    }
}

// Below this nothing whips that a hand would mind.
constexpr double leastEnergy_J = 1;

void addStoredBend(std::vector<Finding>& findings, const StackScene& scene) {
    const double energy = scene.stack.storedEnergy_J;
    if (energy < leastEnergy_J) return;
    constexpr double pictured_kg = 10;  // a weight to picture it by
    Finding finding = foundWithoutLimit(
        Code::storedBend,
        {"energy by beam theory (derived); the advice: common practice, no source", Mark::commonPractice});
    finding.value = energy;
    finding.text = {texts::storedBend,
                    {put::weight(pictured_kg), put::reach(energy / (pictured_kg * units::standardGravity_m_s2))}};
    finding.details = {{texts::storedEnergy, {put::number(energy, 2)}}, texts::localRules};
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> stackFindings(const model::Piece& piece, const Shop& shop, const LinePlan& line,
                                   const laminate::StackPlan& stack) {
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
