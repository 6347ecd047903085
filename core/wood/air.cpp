#include "core/wood/air.hpp"

#include <cmath>

#include "core/units/display.hpp"
#include "core/units/input_error.hpp"

namespace fayline::wood {

namespace {

std::string shownFigure(double value) {
    return std::isfinite(value) ? units::writeNumber(value, 4) : std::string("that which is no number");
}

}  // namespace

double equilibriumMoisture(double air_C, double humidity) {
    if (!(air_C >= coldestAir_C && air_C <= warmestAir_C)) {
        throw units::InputError("air_C", shownFigure(air_C) + " is no temperature of air that wood was measured in",
                                "give -20 to 130 C");
    }
    if (!(humidity >= 0 && humidity <= 1)) {
        throw units::InputError("humidity_pct", shownFigure(100 * humidity) + " is not a relative humidity",
                                "give 0 to 100");
    }
    const double t = air_C;
    const double weight = 349 + 1.29 * t + 0.0135 * t * t;  // of wood that holds one mole of water to a site
    const double k = 0.805 + 0.000736 * t - 0.00000273 * t * t;
    const double k1 = 6.27 - 0.00938 * t - 0.000303 * t * t;
    const double k2 = 1.91 + 0.0407 * t - 0.000293 * t * t;
    const double kh = k * humidity;
    const double dissolved = kh / (1 - kh);
    const double bound = (k1 * kh + 2 * k1 * k2 * kh * kh) / (1 + k1 * kh + k1 * k2 * kh * kh);
    return 18 / weight * (dissolved + bound);
}

}  // namespace fayline::wood
