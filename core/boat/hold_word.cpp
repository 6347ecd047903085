#include "core/boat/boat.hpp"
#include "core/boat/keys.hpp"

namespace fayline::boat {

std::string_view holdWord(HoldKind kind) {
    return wordOf(kind, holdKind);
}

}  // namespace fayline::boat
