#include "core/glue/conditions.hpp"

#include <cmath>

#include "core/units/input_error.hpp"

namespace fayline::glue {

double dewPoint(double air_C, double humidity) {
    if (!(humidity > 0 && humidity <= 1)) {
        throw units::InputError("glue.humidity_pct", "air has no dew point at this humidity",
                                "give more than 0 and up to 100");
    }
    constexpr double a = 17.625;
    constexpr double b_C = 243.04;
    if (!(air_C > -b_C + 100 && air_C < 200)) {
        throw units::InputError("glue.air_C", "no air to work in has this temperature", "give -60 to 150");
    }
    const double gamma = std::log(humidity) + a * air_C / (b_C + air_C);
    return b_C * gamma / (a - gamma);
}

}  // namespace fayline::glue
