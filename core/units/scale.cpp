#include "core/units/scale.hpp"

#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/units.hpp"

namespace fayline::units {

double massThatWeighs(double force_N) {
    return force_N / standardGravity_m_s2;
}

std::string writeOnScale(double mass_kg, const Display& display) {
    if (!std::isfinite(mass_kg)) return noFigure;
    const bool pounds = display.weights == WeightUnit::ounce;
    const double shown = pounds ? mass_kg / pound_kg : mass_kg;
    const double step = std::abs(shown) < 1 ? 0.1 : (pounds ? 1 : 0.5);
    return upToDecimals(std::round(shown / step) * step, 1) + (pounds ? " lb" : " kg");
}

}  // namespace fayline::units
