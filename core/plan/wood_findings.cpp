// Where the boat's own trials say otherwise of a wood than the plan takes it. Nothing of them is used by itself: a
// strip has a measured value only when the user gives it one.
#include <cmath>
#include <set>
#include <string>

#include "core/plan/breaking_wording.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/trials.hpp"
#include "core/plan/wording.hpp"
#include "core/wood/bending.hpp"
#include "core/wood/trial.hpp"

namespace fayline::plan {

namespace {

using measure::writeShare;
using measure::writeStress;

struct WoodScene {
    const boat::Piece& piece;
    const Shop& shop;
    const stack::StackPlan& stack;

    const boat::Strips& given(const stack::Strip& strip) const { return piece.stack.strips[strip.group]; }
};

Finding about(Severity severity, Code code, const std::string& unit, const wood::WoodMeasured& measured) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    const std::string trials =
        measured.trials == 1 ? "your own trial" : "your own " + numberWord(measured.trials) + " trials";
    finding.source = {trials + "; range of the mean by Student, with the published scatter between strips",
                      measure::Mark::derived};
    return finding;
}

std::string nameOf(const WoodScene& scene, const std::string& id) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, id);
    return wood ? woodName(*wood) : id;
}

// "Your two trials of white oak say", "The strip of white oak that you broke says".
std::string trialsText(int count, const std::string& wood) {
    if (count == 1) return "Your trial of " + wood + " says";
    return "Your " + numberWord(count) + " trials of " + wood + " say";
}

// Of the whole stack, were the strips of this wood to break at `strain` in the mean.
double chanceWith(const WoodScene& scene, const stack::Strip& like, double strain) {
    double whole = 1;
    for (const stack::Strip& strip : scene.stack.strips) {
        const bool same = strip.species == like.species && strip.breakingStrain == like.breakingStrain;
        whole *= 1 - (same ? wood::chanceOfBreaking(strip.strain, strain) : strip.chanceOfBreaking);
    }
    return 1 - whole;
}

void addModulus(std::vector<Finding>& findings, const WoodScene& scene, const stack::Strip& strip,
                const wood::WoodMeasured& measured) {
    if (!measured.modulus_Pa) return;
    const double says = *measured.modulus_Pa;
    const double within = measured.modulusError_Pa;
    if (std::abs(says - strip.modulus_Pa) <= within) return;
    const bool stiffer = says > strip.modulus_Pa;
    Finding finding = about(stiffer ? Severity::caution : Severity::note, Code::woodMeasured, "MPa", measured);
    finding.strip = strip.place;
    finding.value = says / 1e6;
    finding.limit = strip.modulus_Pa / 1e6;
    const bool own = scene.given(strip).moe_Pa.has_value();
    finding.text = trialsText(measured.trials - measured.broken, nameOf(scene, strip.species)) + " it is " +
                   (stiffer ? "stiffer" : "less stiff") + " than this plan takes it: a modulus of " +
                   writeStress(says) + " at this moisture, give or take " + writeStress(within) + ", where " +
                   (own ? "the strips have " : "the table gives ") + writeStress(strip.modulus_Pa) +
                   ". Pulls and pressure would be about " + writeShare(std::abs(says / strip.modulus_Pa - 1)) +
                   (stiffer ? " more" : " less") +
                   " than shown. Give the measured modulus to these strips if they are sawn from the same boards.";
    findings.push_back(finding);
}

void addBreaking(std::vector<Finding>& findings, const WoodScene& scene, const stack::Strip& strip,
                 const wood::WoodMeasured& measured) {
    if (!measured.breakingStrain) return;
    const double says = *measured.breakingStrain;
    const double within = measured.breakingStrainError;
    if (std::abs(says - strip.breakingStrain) <= within) return;
    const bool sooner = says < strip.breakingStrain;
    Finding finding = about(sooner ? Severity::caution : Severity::note, Code::woodMeasuredBreaks, "pct", measured);
    finding.strip = strip.place;
    finding.value = 100 * says;
    finding.limit = 100 * strip.breakingStrain;
    finding.text = trialsText(measured.broken, nameOf(scene, strip.species)) + " it breaks " +
                   (sooner ? "sooner" : "later") + " than this plan takes it: at a strain of " + writeShare(says) +
                   ", give or take " + writeShare(within) + ", where " + writeShare(strip.breakingStrain) +
                   " is taken. With that, the chance that a strip of the stack breaks would be " +
                   chanceText(chanceWith(scene, strip, says)) + " instead of " +
                   chanceText(scene.stack.chanceAnyBreaks) +
                   ". Give the measured strain to these strips if they are sawn from the same boards.";
    findings.push_back(finding);
}

void addLeftOut(std::vector<Finding>& findings, const WoodScene& scene, const wood::WoodMeasured& measured) {
    for (const std::string& why : measured.leftOut) {
        Finding finding = about(Severity::note, Code::trialLeftOut, "", measured);
        finding.source = {"the boat's list of trials", measure::Mark::derived};
        finding.limited = false;
        finding.text = "A trial of " + nameOf(scene, measured.species) + " says nothing: " + why + ".";
        findings.push_back(finding);
    }
}

// What the table, or the user, does not say of a wood that the piece has.
void addMissing(std::vector<Finding>& findings, const WoodScene& scene, const stack::Strip& strip) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
    if (!wood || wood->compressionAcross_Pa) return;
    Finding finding;
    finding.code = Code::woodValuesMissing;
    finding.unit = "MPa";
    finding.strip = strip.place;
    finding.limited = false;
    finding.source = wood->mor_Pa.source;
    finding.text =
        "How much " + woodName(*wood) +
        " bears across the grain is not known here, so nothing is said of pads, props and washers that crush "
        "it; give the wood with its compression_across_MPa among the boat's own.";
    findings.push_back(finding);
}

// A wood of the user's own that has the very values which stand where a file gives none.
void addByDefault(std::vector<Finding>& findings, const WoodScene& scene, const stack::Strip& strip) {
    const wood::Species* wood = wood::findSpecies(scene.shop.species, strip.species);
    const boat::OwnSpecies none;
    if (!wood || !wood->own) return;
    const bool rupture = wood->mor_Pa.value == none.mor_Pa && !scene.given(strip).breaksAt;
    const bool modulus = wood->moe_Pa.value == none.moe_Pa && !scene.given(strip).moe_Pa;
    if (!rupture && !modulus) return;
    const bool both = rupture && modulus;
    Finding finding;
    finding.severity = both ? Severity::caution : Severity::note;
    finding.code = Code::woodByDefault;
    finding.unit = "MPa";
    finding.strip = strip.place;
    finding.value = (rupture ? wood->mor_Pa.value : wood->moe_Pa.value) / 1e6;
    finding.limited = false;
    finding.source = {"what stands where the file gives none: a middling hardwood", measure::Mark::commonPractice};
    finding.text =
        capitalised(woodName(*wood)) + " has " +
        (rupture ? "a bending strength of " + writeStress(wood->mor_Pa.value) : std::string()) + (both ? " and " : "") +
        (modulus ? "a modulus of " + writeStress(wood->moe_Pa.value) : std::string()) +
        ", which is what stands where its entry among the boat's own woods gives none. Give its " +
        (rupture ? "mor_MPa" : "") + (both ? " and " : "") + (modulus ? "moe_MPa" : "") + ", or measure a strip.";
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> woodFindings(const boat::Piece& piece, const Shop& shop, const stack::StackPlan& stack) {
    const WoodScene scene{piece, shop, stack};
    std::vector<Finding> findings;
    std::set<std::string> woods;
    for (const stack::Strip& strip : stack.strips) {
        if (!woods.insert(strip.species).second) continue;
        addMissing(findings, scene, strip);
        addByDefault(findings, scene, strip);
    }
    for (const wood::WoodMeasured& asMeasured : shop.measured) {
        const wood::WoodMeasured measured = measuredAt(piece.stack.moisture, asMeasured, shop.species);
        std::set<double> moduli;
        std::set<double> strains;
        for (const stack::Strip& strip : stack.strips) {
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
