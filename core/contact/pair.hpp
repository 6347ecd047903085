// Two numbers computed side by side, of two neighbouring elements: the processor does both at once, and each comes out
// to the last digit as it would alone.
#pragma once

#include <cmath>

namespace fayline::contact {

using Pair = double __attribute__((vector_size(16)));

inline double squareRoot(double number) {
    return std::sqrt(number);
}
inline Pair squareRoot(Pair numbers) {
    return Pair{std::sqrt(numbers[0]), std::sqrt(numbers[1])};
}

}  // namespace fayline::contact
