// What the buttons of the holding panel ask for: each is one step. Nothing where there is nothing to change, or where
// what it rests on is not of the piece as it stands.
#pragma once

#include <optional>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

// What takes longer, if it is of the piece as it stands.
const plan::HoldingStudy* studyOf(const Shown& shown, plan::Study part);

// The proposed stations in place of those there are.
std::optional<Change> adoptProposal(const Shown& shown);

// Strips, and the form where it says how far it carries on, run past each trim line as far as the ends need; no end is
// shortened. Rounded up to a millimetre, or to a sixteenth of an inch.
std::optional<Change> runOnAsNeeded(const Shown& shown);

}  // namespace fayline::app
