// Texts that users see, as a pattern in English and what is put into it. What is put in keeps its type (a length, a
// share, a place), so that the text is made only where it is shown: in the units that a user reads in, and in another
// language where there is one.
//
// Every pattern is written within FAYLINE_TEXT or FAYLINE_TEXT_N, which do nothing but let lupdate find it, as it finds
// the tr() of the window: one list for translators, with the plural rules of their language.
//   lupdate -tr-function-alias QT_TRANSLATE_NOOP+=FAYLINE_TEXT,QT_TRANSLATE_N_NOOP+=FAYLINE_TEXT_N
#pragma once

#include <functional>
#include <string>
#include <utility>
#include <vector>

#include "core/units/display.hpp"

#define FAYLINE_TEXT(context, text) text
#define FAYLINE_TEXT_N(context, text) text

namespace fayline::plan {

// A pattern: %1 to %9 stand for what is put in, %n for the number by which `one` or `many` is chosen. The first letter
// of a sentence becomes a capital by itself.
struct Phrase {
    const char* one = "";
    const char* many = nullptr;  // none where the text does not depend on a number
};

struct Arg;

// A pattern with what is put into it.
struct Message {
    Phrase phrase;
    std::vector<Arg> args;
    int count = 1;  // by which one or many is chosen

    Message();
    Message(const Phrase& phrase);
    Message(const Phrase& phrase, std::vector<Arg> args, int count = 1);
    Message(std::string words);  // words that are the same in every language: a name that the user gave
    Message(const Message& other);
    Message(Message&& other) noexcept;
    Message& operator=(const Message& other);
    Message& operator=(Message&& other) noexcept;
    ~Message();

    bool empty() const;
    bool is(const Phrase& other) const;  // whether it is made from this pattern
    bool operator==(const Message& other) const;
};

// What is put into a pattern.
struct Arg {
    enum class Kind {
        words,         // as they stand: a name
        list,          // messages: one alone, or "a, b and c"
        alternatives,  // messages: one alone, or "a, b or c"
        sentences,     // messages one after the other
        number,        // a number with `figures` significant figures
        count,         // a whole number in figures
        countWord,     // "one" to "twelve", then figures
        share,         // 0.61 as "61 %", `figures` significant
        chance,        // 0.05 as "about 1 in 20"
        place,         // m along a line of length `beside`: "3-4-7", "the end", "1/2 in past the end"
        length,        // m, in the notation of lengths: "3-4-7"
        span,          // m; under a foot as a thickness
        small,         // m: a gap or misfit, without its sign: "0.31 mm", "0.012 in"
        thickness,     // m: "1/4 in", "6.35 mm"
        atLeast,       // m: a thickness upward to a sixteenth or a millimetre, so that what is read is not too thin
        tape,          // m: what a tape shows, to a sixteenth or a millimetre
        reach,         // m: how far apart pads may stand, in whole steps
        known,         // m, in the coarsest step within `beside`, to which it is known
        force,         // N, two figures
        pull,          // N; "light, under 200 N" where `beside` is 1
        forceBeside,   // N, with as many figures as tell it apart from `beside`
        moment,        // N m
        mass,          // kg, as a scale in the shed shows it
        weight,        // kg, in pounds where lengths are read in feet or inches
        temperature,   // C
        peak,          // C of a mix that heats itself, from `beside` to value, to ten degrees: "190 to 250 °C"
        coat,          // kg/m2 of glue on a face, to a gram: "410 g/m2"
        pressure,      // Pa
        stress,        // Pa
        angle,         // rad, in whole degrees
        angleBeside,   // rad, with as many figures as tell it apart from `beside`
        duration,      // s
        clock,         // s after midnight
    };
    Kind kind = Kind::words;
    double value = 0;
    double beside = 0;
    int figures = 2;
    std::string words;
    std::vector<Message> messages;

    Arg(Kind kind, double value, double beside = 0, int figures = 2);
    Arg(std::string words);
    Arg(const char* words);
    Arg(Message message);
    Arg(Kind kind, std::vector<Message> messages);
    Arg(const Arg& other);
    Arg(Arg&& other) noexcept;
    Arg& operator=(const Arg& other);
    Arg& operator=(Arg&& other) noexcept;
    ~Arg();

    bool operator==(const Arg& other) const;
};

// The text of a pattern in another language, for so many; called with the English of `many` where there is one.
using Translate = std::function<std::string(const char* english, int count)>;

// The text of a message: in English where there is no `translate`. Its first letter is a capital one.
std::string writeText(const Message& message, const units::Display& display, const Translate& translate = {});
// The same without the capital, as it stands within a sentence.
std::string writeWithin(const Message& message, const units::Display& display, const Translate& translate = {});
// Several, a blank between them.
std::string writeTexts(const std::vector<Message>& messages, const units::Display& display,
                       const Translate& translate = {});

// What is put in, by what it is.
namespace put {

template <Arg::Kind kind>
Arg one(double value) {
    return {kind, value};
}
inline constexpr auto count = one<Arg::Kind::count>;
inline constexpr auto countWord = one<Arg::Kind::countWord>;
inline constexpr auto chance = one<Arg::Kind::chance>;
inline constexpr auto length = one<Arg::Kind::length>;
inline constexpr auto span = one<Arg::Kind::span>;
inline constexpr auto small = one<Arg::Kind::small>;
inline constexpr auto thickness = one<Arg::Kind::thickness>;
inline constexpr auto atLeast = one<Arg::Kind::atLeast>;
inline constexpr auto tape = one<Arg::Kind::tape>;
inline constexpr auto reach = one<Arg::Kind::reach>;
inline constexpr auto force = one<Arg::Kind::force>;
inline constexpr auto moment = one<Arg::Kind::moment>;
inline constexpr auto mass = one<Arg::Kind::mass>;
inline constexpr auto weight = one<Arg::Kind::weight>;
inline constexpr auto temperature = one<Arg::Kind::temperature>;
inline constexpr auto coat = one<Arg::Kind::coat>;
inline constexpr auto pressure = one<Arg::Kind::pressure>;
inline constexpr auto stress = one<Arg::Kind::stress>;
inline constexpr auto angle = one<Arg::Kind::angle>;
inline constexpr auto duration = one<Arg::Kind::duration>;
inline constexpr auto clock = one<Arg::Kind::clock>;

inline Arg number(double value, int figures = 3) {
    return {Arg::Kind::number, value, 0, figures};
}
inline Arg share(double value, int figures = 2) {
    return {Arg::Kind::share, value, 0, figures};
}
inline Arg place(double at_m, double lineLength_m) {
    return {Arg::Kind::place, at_m, lineLength_m};
}
inline Arg known(double length_m, double known_m) {
    return {Arg::Kind::known, length_m, known_m};
}
inline Arg pull(double force_N, bool light) {
    return {Arg::Kind::pull, force_N, light ? 1.0 : 0.0};
}
inline Arg forceBeside(double force_N, double other_N) {
    return {Arg::Kind::forceBeside, force_N, other_N};
}
inline Arg angleBeside(double angle_rad, double other_rad) {
    return {Arg::Kind::angleBeside, angle_rad, other_rad};
}
inline Arg peak(double from_C, double to_C) {
    return {Arg::Kind::peak, to_C, from_C};
}
inline Arg list(std::vector<Message> messages) {
    return {Arg::Kind::list, std::move(messages)};
}
inline Arg alternatives(std::vector<Message> messages) {
    return {Arg::Kind::alternatives, std::move(messages)};
}
inline Arg sentences(std::vector<Message> messages) {
    return {Arg::Kind::sentences, std::move(messages)};
}

}  // namespace put

}  // namespace fayline::plan
