// What puts a finding right, where the plan knows: the piece as it would be, one step of the undo history.
#pragma once

#include <optional>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

struct Cure {
    Message name;        // as a button and the undo history have it: "Correct WL 24"
    model::Piece piece;  // with the cure taken
};

// The cure of a finding of `plan`, which is of `piece`; none where there is none to offer, or it would change nothing.
// Offered: a misread offset corrected; the stations that were suggested; strips and form as long as an end needs them;
// a prop's foot where it holds; strips that stay whole; a form that allows for springback; what gains time.
std::optional<Cure> cureOf(const model::Piece& piece, const Plan& plan, const Finding& finding);

// The parts that panels offer as well. The offset that is suspected, written as it was probably meant; none where no
// slip explains it.
std::optional<Cure> offsetCorrected(const model::Piece& piece, const line::Suspect& suspect);
std::optional<Cure> slipCorrected(const model::Piece& piece, const line::RepeatedSlip& slip,
                                  const units::Display& display);
std::optional<Cure> suggestedStations(const model::Piece& piece, const Plan& plan);
// Each end as long as it needs to be to lie down, rounded up to a millimetre or a sixteenth of an inch; none shortened.
std::optional<Cure> longEnough(const model::Piece& piece, const Plan& plan);

// The piece with every misread offset put right: as it was probably meant, or where no slip explains it onto the line
// that is fair without it. None where no offset looks misread.
std::optional<model::Piece> withOffsetsCorrected(const model::Piece& piece, const Plan& plan);

}  // namespace fayline::plan
