#include "core/boat/hold_traits.hpp"

namespace fayline::boat {

std::string_view holdWord(HoldKind kind) {
    return traitsOf(kind).word;
}

}  // namespace fayline::boat
