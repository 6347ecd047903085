// Whether the parts of a glue can be mixed and its ratios agree.
#pragma once

#include <string>

#include "core/glue/adhesive.hpp"

namespace fayline::glue {

// Throws InputError with a path from `path` on: a ratio of nothing (only one-part polyurethane has no second part),
// ratios by weight and by volume that the densities contradict.
void checkRatios(const Adhesive& adhesive, const std::string& path);

}  // namespace fayline::glue
