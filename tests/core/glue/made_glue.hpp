// A glue of a made data sheet.
#pragma once

#include "core/glue/adhesive.hpp"
#include "core/glue/glue.hpp"

namespace fayline::made {

// Used up after `pot_min` minutes as 100 g at 25 C.
inline glue::Adhesive epoxy(double pot_min = 30) {
    model::OwnAdhesive own{.id = "made", .potLife_s = 60 * pot_min};
    return glue::ownAdhesive(own);
}

inline glue::Kinetics kineticsOf(const glue::Adhesive& adhesive) {
    return glue::fitKinetics(adhesive, "adhesives[0]");
}

inline glue::Fitted fittedOf(const glue::Adhesive& adhesive) {
    return glue::fitWithEnds(adhesive, "adhesives[0]");
}

}  // namespace fayline::made
