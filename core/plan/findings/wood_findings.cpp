// Where the boat's own trials say otherwise of a wood than the plan takes it. Nothing of them is used by itself: a
// strip has a measured value only when the user gives it one.
#include <cmath>
#include <set>
#include <string>

#include "core/laminate/springback/learned.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/wood_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/trials.hpp"
#include "core/wood/bending.hpp"
#include "core/wood/trial.hpp"

namespace fayline::plan {

namespace {

struct WoodScene {
    const model::Piece& piece;
    const Shop& shop;
    const laminate::StackPlan& stack;

    const model::Strips& given(const laminate::Strip& strip) const { return piece.stack.strips[strip.group]; }
};

units::Source fromTrials(int trials) {
    const std::string whose = trials == 1 ? "your own trial" : "your own " + numberWord(trials) + " trials";
    return {whose + "; range of the mean by Student, with the published scatter between strips", units::Mark::derived};
}

// Of the whole stack, were the strips of this wood to break at `strain` in the mean.
double chanceWith(const WoodScene& scene, const laminate::Strip& like, double strain) {
    double whole = 1;
    for (const laminate::Strip& strip : scene.stack.strips) {
        const bool same = strip.species == like.species && strip.breakingStrain == like.breakingStrain;
        whole *= 1 - (same ? wood::chanceOfBreaking(strip.strain, strain) : strip.chanceOfBreaking);
    }
    return 1 - whole;
}

void addModulus(std::vector<Finding>& findings, const WoodScene& scene, const laminate::Strip& strip,
                const wood::WoodMeasured& measured) {
    if (!measured.modulus_Pa) return;
    const double says = *measured.modulus_Pa;
    const double within = measured.modulusError_Pa;
    if (std::abs(says - strip.modulus_Pa) <= within) return;
    const bool stiffer = says > strip.modulus_Pa;
    Finding finding = found(Code::woodMeasured, fromTrials(measured.trials));
    if (stiffer) finding.severity = Severity::caution;
    finding.strip = strip.place;
    finding.value = says / 1e6;
    finding.limit = strip.modulus_Pa / 1e6;
    const int trials = measured.trials - measured.broken;
    finding.text = {stiffer ? texts::woodStiffer : texts::woodLessStiff,
                    {woodName(scene.shop.species, strip.species), put::share(std::abs(says / strip.modulus_Pa - 1)),
                     put::countWord(trials)},
                    trials};
    finding.details = {{scene.given(strip).moe_Pa ? texts::modulusOfStrips : texts::modulusOfTable,
                        {put::stress(says), put::stress(within), put::stress(strip.modulus_Pa)}},
                       texts::sameBoards};
    findings.push_back(finding);
}

void addBreaking(std::vector<Finding>& findings, const WoodScene& scene, const laminate::Strip& strip,
                 const wood::WoodMeasured& measured) {
    if (!measured.breakingStrain) return;
    const double says = *measured.breakingStrain;
    const double within = measured.breakingStrainError;
    if (std::abs(says - strip.breakingStrain) <= within) return;
    const bool sooner = says < strip.breakingStrain;
    Finding finding = found(Code::woodMeasuredBreaks, fromTrials(measured.trials));
    if (!sooner) finding.severity = Severity::note;
    finding.strip = strip.place;
    finding.value = 100 * says;
    finding.limit = 100 * strip.breakingStrain;
    finding.text = {sooner ? texts::woodBreaksSooner : texts::woodBreaksLater,
                    {woodName(scene.shop.species, strip.species), put::chance(chanceWith(scene, strip, says)),
                     put::chance(scene.stack.chanceAnyBreaks), put::countWord(measured.broken)},
                    measured.broken};
    finding.details = {
        {texts::breaksAtMeasured, {put::share(says), put::share(within), put::share(strip.breakingStrain)}},
        texts::sameBoards};
    findings.push_back(finding);
}

void addLeftOut(std::vector<Finding>& findings, const WoodScene& scene, const wood::WoodMeasured& measured) {
    for (const std::string& why : measured.leftOut) {
        findings.push_back(said(
            foundWithoutLimit(Code::trialLeftOut, {"the boat's list of trials", units::Mark::derived}),
            {texts::trialLeftOut, {woodName(scene.shop.species, measured.species)}}, {{texts::trialWrong, {why}}}));
    }
}

// What the table, or the user, does not say of a wood that the piece has.
void addMissing(std::vector<Finding>& findings, const WoodScene& scene, const laminate::Strip& strip) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
    if (!wood || wood->compressionAcross_Pa) return;
    Finding finding = foundWithoutLimit(Code::woodValuesMissing, wood->mor_Pa.source);
    finding.strip = strip.place;
    finding.text = {texts::noCrushingStrength, {woodName(*wood)}};
    finding.details.emplace_back(texts::crushingNotChecked);
    findings.push_back(finding);
}

// A wood of the user's own that has the very values which stand where a file gives none.
void addByDefault(std::vector<Finding>& findings, const WoodScene& scene, const laminate::Strip& strip) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
    const model::OwnSpecies none;
    if (!wood || !wood->own) return;
    const bool rupture = wood->mor_Pa.value == none.mor_Pa && !scene.given(strip).breaksAt;
    const bool modulus = wood->moe_Pa.value == none.moe_Pa && !scene.given(strip).moe_Pa;
    if (!rupture && !modulus) return;
    Finding finding =
        foundWithoutLimit(Code::woodByDefault,
                          {"what stands where the file gives none: a middling hardwood", units::Mark::commonPractice});
    if (rupture && modulus) finding.severity = Severity::caution;
    finding.strip = strip.place;
    finding.value = (rupture ? wood->mor_Pa.value : wood->moe_Pa.value) / 1e6;
    const Phrase& one = rupture ? texts::strengthByDefault : texts::stiffnessByDefault;
    finding.text = {rupture && modulus ? texts::woodByDefault : one, {woodName(*wood)}};
    if (rupture) finding.details.push_back({texts::strengthTaken, {put::stress(wood->mor_Pa.value)}});
    if (modulus) finding.details.push_back({texts::stiffnessTaken, {put::stress(wood->moe_Pa.value)}});
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> woodFindings(const model::Piece& piece, const Shop& shop, const laminate::StackPlan& stack) {
    const WoodScene scene{piece, shop, stack};
    std::vector<Finding> findings;
    std::set<std::string> woods;
    for (const laminate::Strip& strip : stack.strips) {
        if (!woods.insert(strip.species).second) continue;
        addMissing(findings, scene, strip);
        addByDefault(findings, scene, strip);
    }
    for (const wood::WoodMeasured& asMeasured : shop.measured) {
        const wood::WoodMeasured measured = measuredAt(piece.stack.moisture, asMeasured, shop.species);
        std::set<double> moduli;
        std::set<double> strains;
        for (const laminate::Strip& strip : stack.strips) {
            if (strip.species != measured.species) continue;
            if (moduli.empty() && strains.empty()) addLeftOut(findings, scene, measured);
            if (moduli.insert(strip.modulus_Pa).second) addModulus(findings, scene, strip, measured);
            if (strains.insert(strip.breakingStrain).second) {
                addBreaking(findings, scene, strip, measured);
            }
        }
    }
    return findings;
}

}  // namespace fayline::plan
