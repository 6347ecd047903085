// Trials of one's own wood in words, and what they measured put into a stack.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/display.hpp"
#include "core/wood/species.hpp"
#include "core/wood/trial.hpp"

namespace fayline::plan {

// What a trial says, or why it says nothing.
struct TrialReported {
    std::optional<wood::TrialResult> result;
    std::string path;      // of what is wrong with it: "sag_mm"; empty: nothing is
    std::string sentence;  // modulus with its error, own weight, shear and large sag; or what would be accepted
};
TrialReported tellTrial(const model::Trial& trial, const std::vector<wood::Species>& species,
                        const units::Display& display);

// What the trials of one wood say together, one or two sentences.
std::string measuredText(const wood::WoodMeasured& measured, const std::vector<wood::Species>& species,
                         const units::Display& display);

// How a trial is made, and what to beware of: the strip may break under the weight.
std::string trialMethodText();
std::string trialCautionText();

// The same at another moisture, by the factors of wood/bending.hpp; as it is for a wood that is not among `species`.
wood::WoodMeasured measuredAt(double moisture, const wood::WoodMeasured& measured,
                              const std::vector<wood::Species>& species);

// `stack` with the measured modulus, or the measured breaking strain, given to every group of that wood, at the stack's
// moisture. Unchanged where it has no such wood, or nothing of the kind was measured.
model::Stack withMeasuredModulus(const model::Stack& stack, const wood::WoodMeasured& measured,
                                 const std::vector<wood::Species>& species);
model::Stack withMeasuredBreaking(const model::Stack& stack, const wood::WoodMeasured& measured,
                                  const std::vector<wood::Species>& species);

}  // namespace fayline::plan
