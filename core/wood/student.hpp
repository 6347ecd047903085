// Student's distribution, for means of few trials.
#pragma once

namespace fayline::wood {

// t such that a variable of Student's distribution with `freedom` degrees of freedom (1 or more) lies between -t and t
// with 95 %. Source: the closed form for whole degrees, Abramowitz and Stegun 26.7.3 and 26.7.4 (M), solved by halving;
// within 1e-9.
//   (1) 12.706 with one degree of freedom, 1.960 with ever so many
double studentRange95(int degreesOfFreedom);

}  // namespace fayline::wood
