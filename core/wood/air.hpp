// The moisture that wood comes to in air.
#pragma once

namespace fayline::wood {

// Air for which the fit was made, degrees Celsius: its table goes from 30 to 270 degrees Fahrenheit, the part of it
// that was read to 130. Colder air is let through to where water of the wood freezes anyway.
inline constexpr double coldestAir_C = -20;
inline constexpr double warmestAir_C = 130;

// Equilibrium moisture content, fraction of the dry mass, in still air of `air_C` and relative `humidity` (0..1).
//
// Simpson's fit of the Hailwood-Horrobin model with two hydrates, as the Wood Handbook prints it: eq. 4-5, in degrees
// Celsius (P*). Against the handbook's Table 4-2 (P), 209 values printed to 0.1 % from -1 to 54 C and 5 to 95 %
// humidity: within 0.055 % moisture, in the mean 0.024 %. Below -1 C nothing was compared.
//   (1) dry air: 0; damper air: more; from 10 C on, between 5 and 95 % humidity, warmer air: less
// What a given wood comes to lies within about 1 % moisture of it; whether it came from wetter or drier is not in it
// (FPL-GTR-229, P from its abstract: the measurements beneath the fit are not documented).
// Throws InputError with the paths `air_C` and `humidity_pct` for air outside coldestAir_C..warmestAir_C or a humidity
// outside 0..1.
double equilibriumMoisture(double air_C, double humidity);

}  // namespace fayline::wood
