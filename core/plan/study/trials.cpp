#include "core/plan/study/trials.hpp"

#include <cmath>

#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/bending.hpp"

namespace fayline::plan {

namespace {

using units::writeNumber;
using units::writeShare;

std::string brokenText(const wood::TrialResult& result, const units::Display& display) {
    return "It broke at a strain of " + writeShare(*result.breakingStrain) + " and a stress of " +
           units::writeStress(*result.rupture_Pa, display) +
           ", as for an elastic strip: wood gives way before it breaks, so the true strain was more.";
}

std::string modulusText(const wood::TrialResult& result, const units::Display& display) {
    return "A modulus of " + units::writeStress(result.modulus_Pa, display) + ", give or take " +
           units::writeStress(result.modulusError_Pa, display) + " from reading. Strained to " +
           writeShare(result.strain) + " under the weight.";
}

// What the simple formula would leave out.
std::string correctionsText(const wood::TrialResult& result, const units::Display& display) {
    std::string text =
        " Weight times span cubed over 48 times sag would say " + units::writeStress(result.simpleModulus_Pa, display) +
        ": the sag of " + writeShare(result.sagOverSpan) + " of the span makes that " +
        writeShare(std::abs(result.largeSagShare)) + " too " + (result.largeSagShare < 0 ? "high" : "low") +
        ", and shear is " + writeShare(result.shearShare) + " of the sag.";
    constexpr double least_m = 1e-9;
    if (result.ownWeightSag_m > least_m) {
        text += " By its own weight it hung " + smallText(result.ownWeightSag_m, display) + " already.";
    } else {
        text += " The wood's weight is not known here, so its own weight is not counted.";
    }
    return text;
}

}  // namespace

TrialReported tellTrial(const model::Trial& trial, const std::vector<wood::Species>& species,
                        const units::Display& display) {
    TrialReported reported;
    try {
        reported.result = wood::trialResult(trial, "", species);
        reported.sentence =
            (trial.broke ? brokenText(*reported.result, display) : modulusText(*reported.result, display)) +
            correctionsText(*reported.result, display);
    } catch (const units::InputError& error) {
        reported.path = error.path();
        reported.sentence = capitalised(error.wrong()) + "; " + error.accepted() + ".";
    }
    return reported;
}

std::string measuredText(const wood::WoodMeasured& measured, const std::vector<wood::Species>& species,
                         const units::Display& display) {
    const std::string name = capitalised(woodName(species, measured.species));
    if (measured.trials == 0) return name + ": no trial says anything yet.";
    std::string text = name + ", " + numberWord(measured.trials) + (measured.trials == 1 ? " trial" : " trials") +
                       " at " + writeShare(measured.moisture) + " moisture";
    if (measured.modulus_Pa) {
        text += ": a modulus of " + units::writeStress(*measured.modulus_Pa, display) + ", 95 of 100 within " +
                units::writeStress(measured.modulusError_Pa, display);
    }
    if (measured.breakingStrain) {
        text += std::string(measured.modulus_Pa ? ";" : ":") + " breaks at a strain of " +
                writeShare(*measured.breakingStrain) + ", within " + writeShare(measured.breakingStrainError);
    }
    text += ".";
    constexpr int few = 3;
    if (measured.trials < few) text += " Strips of one wood differ by a fifth: try more of them.";
    return text;
}

std::string trialMethodText() {
    return "Lay a strip flat on two supports, at least thirty of its thicknesses apart. Read a mark at its middle, set "
           "a "
           "weight there without a jolt, tap the strip so that it settles, and read the mark again: the difference is "
           "the sag, best about a twentieth of the span. For a breaking trial add weight until it breaks, and give the "
           "last sag that was read.";
}

std::string trialCautionText() {
    return "A strip that breaks throws splinters and drops its weight: cover your eyes, wear gloves, keep hands and "
           "feet "
           "from under it, and hang the weight a hand's breadth above the floor.";
}

wood::WoodMeasured measuredAt(double moisture, const wood::WoodMeasured& measured,
                              const std::vector<wood::Species>& species) {
    wood::WoodMeasured moved = measured;
    const wood::Species* wood = wood::findSpecies(species, measured.species);
    if (!wood) return moved;
    const double modulus =
        wood::moistureFactorModulus(*wood, moisture) / wood::moistureFactorModulus(*wood, measured.moisture);
    const double rupture =
        wood::moistureFactorRupture(*wood, moisture) / wood::moistureFactorRupture(*wood, measured.moisture);
    if (moved.modulus_Pa) *moved.modulus_Pa *= modulus;
    moved.modulusError_Pa *= modulus;
    if (moved.breakingStrain) *moved.breakingStrain *= rupture / modulus;
    moved.breakingStrainError *= rupture / modulus;
    moved.moisture = moisture;
    return moved;
}

model::Stack withMeasuredModulus(const model::Stack& stack, const wood::WoodMeasured& measured,
                                 const std::vector<wood::Species>& species) {
    model::Stack with = stack;
    const std::optional<double> modulus_Pa = measuredAt(stack.moisture, measured, species).modulus_Pa;
    for (model::Strips& strips : with.strips) {
        if (modulus_Pa && strips.species == measured.species) strips.moe_Pa = modulus_Pa;
    }
    return with;
}

model::Stack withMeasuredBreaking(const model::Stack& stack, const wood::WoodMeasured& measured,
                                  const std::vector<wood::Species>& species) {
    model::Stack with = stack;
    const std::optional<double> strain = measuredAt(stack.moisture, measured, species).breakingStrain;
    for (model::Strips& strips : with.strips) {
        if (strain && strips.species == measured.species) strips.breaksAt = strain;
    }
    return with;
}

}  // namespace fayline::plan
