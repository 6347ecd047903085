// Numbers as the printed plan has them.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>

#include "core/plan/plan.hpp"

namespace fayline::plan {

using Json = nlohmann::ordered_json;

// `value` with so many decimals at most, so that the last bits of a sum do not show; null for what is no number.
Json number(double value, int decimals = 6);

Json mm(double length_m);
Json pct(double share);
// A chance that any or a strip breaks as `key`_pct, to a tenth of a percent; below leastChanceTold that is null, and
// `key`_below_pct says what it is below.
void printChance(Json& printed, const std::string& key, double chance);
Json optionalMm(const std::optional<double>& length_m);

// A radius of a thousand kilometres or more is a straight line but for the last bits of the fit: null.
Json radiusMm(double radius_m);

Json printForm(const Plan& plan);
Json printHolding(const boat::Piece& piece, const Plan& plan);
Json printGlue(const Plan& plan);
Json printSchedule(const Plan& plan);
Json printChoices(const Choices& choices);
Json printBreaking(const Plan& plan);  // whose breaking was studied
// What the trials say of the woods that the piece has.
Json printWoodsMeasured(const boat::Piece& piece, const std::vector<wood::WoodMeasured>& measured);

}  // namespace fayline::plan
