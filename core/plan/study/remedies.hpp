// What would mend a day that is too short, each tried by making the day anew.
#pragma once

#include <atomic>
#include <optional>
#include <vector>

#include "core/plan/day/day_plan.hpp"

namespace fayline::plan {

// A margin below this share of the open time, or a chance below this, is short. Common practice, no source.
inline constexpr double shortMargin = 0.2;
inline constexpr double shortChance = 0.95;

// Tried: one more pair of hands; each slower glue of the same kind that bears the air; the cool of the morning (5 K
// less, if the glue bears it); a tray for a cup; a planned break, after the strip that leaves most time in both
// gluings; strips that are one fewer and thicker by as much, if they still go round. Those that help, the best first.
// `stop` as in deepen.
std::optional<std::vector<Remedy>> remediesFor(const model::Piece& piece, const Shop& shop, const line::Line& line,
                                               const DayPlan& day, const std::atomic<bool>& stop);

// `piece` with the remedy taken: the very piece that was tried, if it is the one that the remedy was worked out for.
model::Piece withRemedy(const model::Piece& piece, const Remedy& remedy);

}  // namespace fayline::plan
