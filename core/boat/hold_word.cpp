#include "core/boat/boat.hpp"
#include "core/boat/keys.hpp"

namespace fayline::boat {

std::string_view holdWord(HoldKind kind) {
    for (const auto& word : holdKind.words)
        if (word.value == kind) return word.word;
    return {};
}

}  // namespace fayline::boat
