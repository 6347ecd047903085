// The ids nearest to what was typed, so that a refusal can say what was perhaps meant.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "core/wood/species.hpp"

namespace fayline::laminate {

// The ids of the `most` woods that are nearest to `typed`, the nearest first; equals in the order of `species`.
//
// Near is: few letters to be changed, left out, put in or swapped with their neighbour. An id is held against `typed`
// as a whole and part by part (white of oak_white), capitals and the signs between the parts left aside; the beginning
// of a part counts as the part, a little less. So "oka" finds the oaks and "white oak" finds oak_white.
std::vector<std::string> nearestIds(std::string_view typed, const std::vector<wood::Species>& species,
                                    std::size_t most);

}  // namespace fayline::laminate
