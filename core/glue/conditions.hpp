// The air about the work.
#pragma once

namespace fayline::glue {

// Dew point, C, of air of `air_C` and relative `humidity` (above 0, up to 1). Magnus with the constants of Alduchov and
// Eskridge 1996 (P*). Throws InputError.
double dewPoint(double air_C, double humidity);

// Surfaces stay at least so many kelvin above the dew point while coating: common guidance tied to ISO 8502-4 (P*).
inline constexpr double aboveDewPoint_K = 3;

}  // namespace fayline::glue
