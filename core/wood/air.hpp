// The moisture that wood comes to in air.
#pragma once

namespace fayline::wood {

// Equilibrium moisture content, fraction of the dry mass, in air of `air_C` (0..60 for use) and relative `humidity`
// (0..1). Source: Wood Handbook eq. 4-5, Simpson's fit (P*); against its Table 4-2 (P) within 0.06 % moisture. What a
// given wood comes to lies within 1 % of it (FPL-GTR-229, P abstract). Throws InputError for a humidity outside 0..1
// or a temperature that is none.
double equilibriumMoisture(double air_C, double humidity);

}  // namespace fayline::wood
