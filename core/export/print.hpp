// The printed plan: a boat's plans as one JSON document with the naming rules of the project file.
#pragma once

#include <string>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// The plan of every piece of `boat` as JSON text ending with a newline. A part that is not built yet is absent.
// Numbers that do not exist (a radius over 1000 km, that of a straight line; spares where no number of them helps) are
// null. A station's x_mm and y_mm are where its pad meets the outside of the stack. Lengths are rounded to 1e-6 mm, so
// that the last bits of a sum do not show; the same boat gives the same text. Throws InputError with a path from
// `pieces[i].` when a piece cannot be planned.
std::string printPlans(const model::Boat& boat);

// The same of one piece, whose plan it is in this shop.
std::string printPlan(const model::Piece& piece, const Shop& shop, const Plan& plan);

// The JSON Schema (draft 2020-12) of that document, from the same tables of keys: of each value its type, unit and
// rounding, the words it may have, whether it may be null; of each group the keys that are always there.
std::string printedPlanSchema();

// A few lines for a person: each piece's answers and findings.
std::string summarizePlans(const model::Boat& boat, bool all = false);

}  // namespace fayline::plan
