// How many members a container has, as a signed number.
#pragma once

#include <iterator>

namespace fayline::math {

// For numbers and places that are counted in int; sizes beyond its range do not come up.
template <typename Container>
constexpr int countOf(const Container& container) {
    return static_cast<int>(std::ssize(container));
}

}  // namespace fayline::math
