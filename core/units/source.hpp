// Where a value comes from, and how sure we are of that. Travels with the value into findings and papers.
#pragma once

#include <string>

namespace fayline::units {

enum class Mark {
    published,       // P: the published text itself was read
    transcribed,     // P*: read in somebody else's transcription or quotation of it
    fromMemory,      // M: from memory of the named source
    commonPractice,  // C: common practice, no source
    derived,         // D: derived or computed, can be derived again
};

struct Source {
    std::string text;  // "Wood Handbook Table 5-3b"; for common practice "common practice, no source"
    Mark mark = Mark::commonPractice;

    bool operator==(const Source&) const = default;
};

// A value with where it comes from.
struct Cited {
    double value = 0;  // unit and meaning are said where the member is declared
    Source source;
};

// "P", "P*", "M", "C" or "D", as written in the printed plan.
const char* markText(Mark mark);

// The mark written as `text`; throws InputError (with an empty path) when it is none of the five.
Mark readMark(const std::string& text);

// What a mark means, as a phrase for a person: "read in a transcription of the published text".
const char* markMeaning(Mark mark);

}  // namespace fayline::units
