#include "core/units/source.hpp"

#include <array>

#include "core/units/input_error.hpp"

namespace fayline::units {
namespace {

struct MarkWords {
    Mark mark;
    const char* text;
    const char* meaning;
};

constexpr std::array<MarkWords, 5> markWords{{
    {Mark::published, "P", "read in the published text"},
    {Mark::transcribed, "P*", "read in a transcription of the published text"},
    {Mark::fromMemory, "M", "from memory of the published text, not read again"},
    {Mark::commonPractice, "C", "common practice, no published source"},
    {Mark::derived, "D", "derived or computed from other values"},
}};

const MarkWords& wordsOf(Mark mark) {
    for (const MarkWords& words : markWords) {
        if (words.mark == mark) return words;
    }
    return markWords[3];  // not reached: every mark has its row
}

}  // namespace

const char* markText(Mark mark) {
    return wordsOf(mark).text;
}

const char* markMeaning(Mark mark) {
    return wordsOf(mark).meaning;
}

Mark readMark(const std::string& text) {
    for (const MarkWords& words : markWords) {
        if (text == words.text) return words.mark;
    }
    throw InputError("", "\"" + text + "\" is not a mark", "give one of P, P*, M, C, D");
}

}  // namespace fayline::units
