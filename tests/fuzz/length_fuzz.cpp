// Random text against readLength: it gives a length or an InputError, and nothing else.
//
// Three kinds of text from a fixed seed: any bytes; signs and words that lengths are made of, in any order; lengths
// that are right with one place changed. Of each answer: a length is finite, no longer than is read, and comes back
// from every notation within half a step; an error says something and is valid UTF-8 (else JSON will not write it).
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <random>
#include <string>
#include <string_view>

#include "core/units/length.hpp"
#include "core/units/units.hpp"

namespace {

using namespace fayline::units;

std::mt19937_64 random64(20240607);

std::size_t below(std::size_t count) {
    return static_cast<std::size_t>(random64() % count);
}

std::string anyBytes() {
    std::string text(below(40), ' ');
    for (char& c : text) c = static_cast<char>(below(256));
    return text;
}

std::string partsInAnyOrder() {
    static constexpr std::array<std::string_view, 44> parts{
        "0",  "1",  "2",  "3",  "7",      "8",      "9",      "11",     "12",     "13",   "16",
        "64", "/",  "-",  "-",  "-",      "+",      ".",      ",",      " ",      "'",    "\"",
        "in", "mm", "cm", "m",  "ft",     "e",      "E-3",    "e400",   "nan",    "inf",  "\u00BD",
        "''", "''", "x",  "1/", "\u2032", "\u2033", "\u2212", "\u00A0", "\u215C", "\xE2", "27 1/2"};
    std::string text;
    for (std::size_t count = below(10); count > 0; --count) text += parts[below(parts.size())];
    return text;
}

std::string nearlyRight() {
    static constexpr std::array<std::string_view, 9> right{"2-3-4+",  "2'-3 1/2\"", "27 1/2 in", "698,5 mm", "0.6985 m",
                                                           "-0-0-4-", "6.985e2",    "2' 3\"",    "27\u00BD"};
    std::string text(right[below(right.size())]);
    const std::size_t at = below(text.size());
    switch (below(3)) {
        case 0:
            text[at] = static_cast<char>(below(256));
            break;
        case 1:
            text.erase(at, 1);
            break;
        default:
            text.insert(at, 1, static_cast<char>(' ' + below(95)));
    }
    return text;
}

[[noreturn]] void fail(const std::string& text, const char* why) {
    std::printf("%s, for the bytes", why);
    for (const char c : text) std::printf(" %02X", static_cast<unsigned>(static_cast<unsigned char>(c)));
    std::printf("\n");
    std::exit(1);
}

void checkLength(const std::string& text, double length_m) {
    if (!(std::abs(length_m) <= longestLength_m)) fail(text, "a length beyond the longest");
    const auto miss = [length_m](LengthNotation notation) {
        const double written_m = std::copysign(std::min(std::abs(length_m), 0.999 * longestLength_m), length_m);
        return std::abs(readLength(writeLength(written_m, notation), notation) - written_m);
    };
    constexpr double slack = 1 + 1e-6;
    if (miss(LengthNotation::feetInchesEighths) > sixteenth_m / 2 * slack)
        fail(text, "feet-inches-eighths do not come back");
    if (miss(LengthNotation::inches) > 0.0005 * inch_m * slack) fail(text, "inches do not come back");
    if (miss(LengthNotation::millimetres) > 0.00005 * slack) fail(text, "millimetres do not come back");
}

void checkError(const std::string& text, const InputError& error) {
    if (error.wrong().empty() || error.accepted().empty() || !error.path().empty())
        fail(text, "an error says too little");
    try {
        (void)nlohmann::json(error.what()).dump();
    } catch (const nlohmann::json::exception&) {
        fail(text, "an error is not valid UTF-8");
    }
}

}  // namespace

int main(int argc, char** argv) {
    const long rounds = argc > 1 ? std::strtol(argv[1], nullptr, 10) : 200000;
    long read = 0;
    for (long round = 0; round < rounds; ++round) {
        const std::string text = round % 3 == 0 ? anyBytes() : round % 3 == 1 ? partsInAnyOrder() : nearlyRight();
        for (const auto assumed :
             {LengthNotation::feetInchesEighths, LengthNotation::inches, LengthNotation::millimetres}) {
            try {
                checkLength(text, readLength(text, assumed));
                ++read;
            } catch (const InputError& error) {
                checkError(text, error);
            } catch (const std::exception& error) {
                fail(text, error.what());
            }
        }
    }
    std::printf("length_fuzz: %ld texts, %ld readings gave a length, the others an error\n", rounds, read);
    return rounds > 0 && read > 0 ? 0 : 1;
}
