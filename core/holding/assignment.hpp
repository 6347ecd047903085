// Which tool goes to which station.
#pragma once

#include <vector>

#include "core/holding/at_hand.hpp"

namespace fayline::holding {

// Whether `tool` pulls as much as `need` asks; opens as far, has as deep a throat, as far as the file says. Only clamps
// are said to open and to have a throat.
bool isStrong(const model::Tool& tool, const Served& need);
bool opensEnough(const model::Tool& tool, const Served& need);
bool reaches(const model::Tool& tool, const Served& need);

// The tool of holding.tools for each of `needs` (in the order of holding.stations), -1 where none is left: as many
// stations as possible have one, those that need most before others, none of them a stronger one than it has to where a
// weaker is free. A thousand stations and tools of one kind take some ten milliseconds.
std::vector<int> assignTools(const model::Holding& holding, const std::vector<Served>& needs);

}  // namespace fayline::holding
