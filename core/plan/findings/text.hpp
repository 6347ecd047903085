// Texts that users see, as a pattern in English and what is put into it. What is put in keeps its type (a length, a
// share, a place), so that the text is made only where it is shown: in the units that a user reads in, and in another
// language where there is one.
//
// Every pattern is written within FAYLINE_TEXT or FAYLINE_TEXT_N, which do nothing but let lupdate find it, as it finds
// the tr() of the window: one list for translators, with the plural rules of their language.
//   lupdate -tr-function-alias QT_TRANSLATE_NOOP+=FAYLINE_TEXT,QT_TRANSLATE_N_NOOP+=FAYLINE_TEXT_N
#pragma once

#include <functional>
#include <initializer_list>
#include <optional>
#include <string>
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
    Message(const Phrase& phrase, std::vector<Arg> args = {}, int count = 1);
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

// What is put into a pattern; SI.
struct Arg {
    enum class Kind {
        words,         // as they stand: a name
        list,          // messages: one alone, or "a, b and c"
        alternatives,  // messages: one alone, or "a, b or c"
        sentences,     // messages one after the other
        number,        // a number with `figures` significant figures
        count,         // a whole number in figures
        countWord,     // "one" to "twelve", then figures
        share,         // "61 %", `figures` significant
        chance,        // "about 1 in 20"
        place,         // along a line of length `beside`: "at 3-4-7", "1/2 in past the end"
        length,        // in the notation of lengths: "3-4-7"
        span,          // a length under a foot as a thickness
        small,         // a gap or misfit, without its sign: "0.31 mm", "0.012 in"
        thickness,     // "1/4 in", "6.35 mm"
        atLeast,       // a thickness upward to a sixteenth or a millimetre, so that what is read is not too thin
        tape,          // what a tape shows, to a sixteenth or a millimetre
        reach,         // how far apart pads may stand, in whole steps
        known,         // a length in the coarsest step within `beside`, to which it is known
        force,         // two figures
        pull,          // the same; "light, under 200 N" where `beside` is 1
        forceBeside,   // with as many figures as tell it apart from `beside`
        moment,
        mass,
        onScale,  // a mass as a scale for people shows it
        weight,   // the same, in pounds where lengths are read in feet or inches
        volume,
        area,
        temperature,
        peak,  // of a mix that heats itself, from and to ten degrees: "190 to 250 °C", "about 40 °C"
        coat,  // of glue on a face, to a gram: "410 g/m2"
        pressure,
        stress,
        angle,        // whole degrees
        angleBeside,  // with as many figures as tell it apart from `beside`
        duration,
        clock,  // seconds after midnight
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
inline Arg number(double value, int figures = 3) {
    return {Arg::Kind::number, value, 0, figures};
}
inline Arg count(double value) {
    return {Arg::Kind::count, value};
}
inline Arg countWord(double value) {
    return {Arg::Kind::countWord, value};
}
inline Arg share(double value, int figures = 2) {
    return {Arg::Kind::share, value, 0, figures};
}
inline Arg chance(double value) {
    return {Arg::Kind::chance, value};
}
inline Arg place(double at_m, double lineLength_m) {
    return {Arg::Kind::place, at_m, lineLength_m};
}
inline Arg length(double length_m) {
    return {Arg::Kind::length, length_m};
}
inline Arg span(double length_m) {
    return {Arg::Kind::span, length_m};
}
inline Arg small(double length_m) {
    return {Arg::Kind::small, length_m};
}
inline Arg thickness(double length_m) {
    return {Arg::Kind::thickness, length_m};
}
inline Arg atLeast(double length_m) {
    return {Arg::Kind::atLeast, length_m};
}
inline Arg tape(double length_m) {
    return {Arg::Kind::tape, length_m};
}
inline Arg reach(double length_m) {
    return {Arg::Kind::reach, length_m};
}
inline Arg known(double length_m, double known_m) {
    return {Arg::Kind::known, length_m, known_m};
}
inline Arg force(double force_N) {
    return {Arg::Kind::force, force_N};
}
inline Arg pull(double force_N, bool light) {
    return {Arg::Kind::pull, force_N, light ? 1.0 : 0.0};
}
inline Arg forceBeside(double force_N, double other_N) {
    return {Arg::Kind::forceBeside, force_N, other_N};
}
inline Arg moment(double moment_N_m) {
    return {Arg::Kind::moment, moment_N_m};
}
inline Arg mass(double mass_kg) {
    return {Arg::Kind::mass, mass_kg};
}
inline Arg onScale(double mass_kg) {
    return {Arg::Kind::onScale, mass_kg};
}
inline Arg weight(double mass_kg) {
    return {Arg::Kind::weight, mass_kg};
}
inline Arg volume(double volume_m3) {
    return {Arg::Kind::volume, volume_m3};
}
inline Arg area(double area_m2) {
    return {Arg::Kind::area, area_m2};
}
inline Arg temperature(double celsius) {
    return {Arg::Kind::temperature, celsius};
}
inline Arg peak(double from_C, double to_C) {
    return {Arg::Kind::peak, to_C, from_C};
}
inline Arg coat(double coat_kg_m2) {
    return {Arg::Kind::coat, coat_kg_m2};
}
inline Arg pressure(double pressure_Pa) {
    return {Arg::Kind::pressure, pressure_Pa};
}
inline Arg stress(double stress_Pa) {
    return {Arg::Kind::stress, stress_Pa};
}
inline Arg angle(double angle_rad) {
    return {Arg::Kind::angle, angle_rad};
}
inline Arg angleBeside(double angle_rad, double other_rad) {
    return {Arg::Kind::angleBeside, angle_rad, other_rad};
}
inline Arg duration(double time_s) {
    return {Arg::Kind::duration, time_s};
}
inline Arg clock(double clock_s) {
    return {Arg::Kind::clock, clock_s};
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
