// What may stand under a key of the project file, and how it becomes a value and figures again.
//
// Each kind of rule is a small struct with three functions: read (throws InputError at its place), write, and accepted
// (the words of the error and of the table of keys: "a number above 0").
#pragma once

#include <array>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/boat.hpp"
#include "core/model/value.hpp"
#include "core/units/file_unit.hpp"
#include "core/units/input_error.hpp"

namespace fayline::model {

// A place in the file, as a chain from the inside out.
struct Place {
    const Place* above = nullptr;
    std::string_view key;
    int item = -1;  // of the list above

    std::string path() const;
};

// Throws InputError for what stands at `place`: `found` (its figures or its kind) `isNot` ("is not a thickness").
[[noreturn]] void refuse(const Place& place, const std::string& wrong, const std::string& accepted);
// The same of a value that is not such a list, pair or word: out of the templates below, which stand for every key.
[[noreturn]] void refuseList(const Value& value, const Place& place, const std::string& accepted);
[[noreturn]] void refusePair(const Value& value, const Place& place, const std::string& accepted);
[[noreturn]] void refuseWord(const Value& value, const Place& place, const std::string& accepted);

// What stands there, for an error: "six" is text; 12 is a number; a list stands here.
std::string found(const Value& value);

inline constexpr double unbounded = std::numeric_limits<double>::infinity();

struct Number {
    units::FileUnit unit;
    double least = -unbounded;  // in the unit of the file, like `most`
    double most = unbounded;
    bool above = false;     // `least` itself is not accepted
    std::string_view what;  // "a thickness"
};

constexpr Number any(units::FileUnit unit, std::string_view what) {
    return {unit, -unbounded, unbounded, false, what};
}
constexpr Number above0(units::FileUnit unit, std::string_view what) {
    return {unit, 0, unbounded, true, what};
}
constexpr Number from0(units::FileUnit unit, std::string_view what) {
    return {unit, 0, unbounded, false, what};
}
constexpr Number within(double least, double most, units::FileUnit unit, std::string_view what) {
    return {unit, least, most, false, what};
}

struct Whole {
    int least = 0;
    int most = std::numeric_limits<int>::max();
    std::string_view what;
};

struct Text {};
struct Truth {};
struct Clock {};     // "08:30"
struct DateTime {};  // "2026-05-02T08:30"; may be empty

template <class Enum>
struct Word {
    Enum value;
    std::string_view word;
};

template <class Enum, std::size_t count>
struct Words {
    std::array<Word<Enum>, count> words;
};

template <class Enum, std::size_t count>
constexpr Words<Enum, count> words(const Word<Enum> (&list)[count]) {
    return {std::to_array(list)};
}

// The word of a value; empty where it has none.
template <class Enum, std::size_t count>
constexpr std::string_view wordOf(Enum value, const Words<Enum, count>& rule) {
    for (const auto& [choice, word] : rule.words)
        if (choice == value) return word;
    return {};
}

// For an optional: null stands for "not said".
template <class Rule>
struct OrNull {
    Rule rule;
};

// For an optional: a word stands for "not said".
template <class Rule>
struct OrWord {
    Rule rule;
    std::string_view word;
};

// For an array of two.
template <class Rule>
struct Pair {
    Rule rule;
};

// For a struct with a table of keys of its own (keys.hpp); read and written by who walks the table.
struct Group {};

// For a vector.
template <class Rule>
struct ListOf {
    Rule rule;
    int least = 0;
    int most = std::numeric_limits<int>::max();
    std::string_view what;  // "strips"
};

void read(const Value& value, const Place& place, const Number& rule, double& target);
void read(const Value& value, const Place& place, const Whole& rule, int& target);
void read(const Value& value, const Place& place, const Text& rule, std::string& target);
void read(const Value& value, const Place& place, const Truth& rule, bool& target);
void read(const Value& value, const Place& place, const Clock& rule, double& target);
void read(const Value& value, const Place& place, const DateTime& rule, std::string& target);

Value write(double value, const Place& place, const Number& rule);
Value write(int value, const Place& place, const Whole& rule);
Value write(const std::string& value, const Place& place, const Text& rule);
Value write(bool value, const Place& place, const Truth& rule);
Value write(double value, const Place& place, const Clock& rule);
Value write(const std::string& value, const Place& place, const DateTime& rule);

std::string accepted(const Number& rule);
std::string accepted(const Whole& rule);
std::string accepted(const Text& rule);
std::string accepted(const Truth& rule);
std::string accepted(const Clock& rule);
std::string accepted(const DateTime& rule);

// Any of some words: "left" or "right".
std::string acceptedWords(const std::vector<std::string_view>& words);

template <class Enum, std::size_t count>
std::string accepted(const Words<Enum, count>& rule) {
    std::vector<std::string_view> list;
    for (const auto& [value, word] : rule.words) list.push_back(word);
    return acceptedWords(list);
}

template <class Enum, std::size_t count>
void read(const Value& value, const Place& place, const Words<Enum, count>& rule, Enum& target) {
    if (value.kind == Value::Kind::text)
        for (const auto& [choice, word] : rule.words)
            if (word == value.text) {
                target = choice;
                return;
            }
    refuseWord(value, place, accepted(rule));
}

template <class Enum, std::size_t count>
Value write(Enum value, const Place& place, const Words<Enum, count>& rule) {
    if (const std::string_view word = wordOf(value, rule); !word.empty()) return textValue(std::string(word));
    refuse(place, "this choice has no word in the file", accepted(rule));
}

template <class Rule>
std::string accepted(const OrNull<Rule>& rule) {
    return accepted(rule.rule) + ", or null";
}

template <class Rule, class T>
void read(const Value& value, const Place& place, const OrNull<Rule>& rule, std::optional<T>& target) {
    if (value.kind == Value::Kind::null)
        target.reset();
    else
        read(value, place, rule.rule, target.emplace());
}

template <class Rule, class T>
Value write(const std::optional<T>& value, const Place& place, const OrNull<Rule>& rule) {
    return value ? write(*value, place, rule.rule) : Value{};
}

template <class Rule>
std::string accepted(const OrWord<Rule>& rule) {
    return accepted(rule.rule) + ", or \"" + std::string(rule.word) + "\"";
}

template <class Rule, class T>
void read(const Value& value, const Place& place, const OrWord<Rule>& rule, std::optional<T>& target) {
    if (value == textValue(std::string(rule.word)))
        target.reset();
    else if (value.kind == Value::Kind::text)
        refuseWord(value, place, accepted(rule));
    else
        read(value, place, rule.rule, target.emplace());
}

template <class Rule, class T>
Value write(const std::optional<T>& value, const Place& place, const OrWord<Rule>& rule) {
    return value ? write(*value, place, rule.rule) : textValue(std::string(rule.word));
}

template <class Rule>
std::string accepted(const Pair<Rule>& rule) {
    return "a list of two, each " + accepted(rule.rule);
}

template <class Rule, class T>
void read(const Value& value, const Place& place, const Pair<Rule>& rule, std::array<T, 2>& target) {
    if (value.kind != Value::Kind::list || value.items.size() != 2) refusePair(value, place, accepted(rule));
    for (int i = 0; i < 2; ++i) read(value.items[i], Place{&place, {}, i}, rule.rule, target[i]);
}

template <class Rule, class T>
Value write(const std::array<T, 2>& value, const Place& place, const Pair<Rule>& rule) {
    Value result = listValue();
    for (int i = 0; i < 2; ++i) result.items.push_back(write(value[i], Place{&place, {}, i}, rule.rule));
    return result;
}

// Walk the table of T's keys; defined beside the reader and the writer, in file.cpp.
template <class T>
void read(const Value& value, const Place& place, const Group& rule, T& target);
template <class T>
Value write(const T& value, const Place& place, const Group& rule);

inline std::string accepted(const Group&) {
    return "a group of keys in braces";
}

template <class Rule>
std::string accepted(const ListOf<Rule>& rule) {
    constexpr int endless = std::numeric_limits<int>::max();
    const std::string few = rule.least > 0 ? " of " + std::to_string(rule.least) + " or more " : " of ";
    const std::string many = rule.most < endless ? ", at most " + std::to_string(rule.most) : "";
    return "a list" + few + std::string(rule.what) + many;
}

template <class Rule, class T>
void read(const Value& value, const Place& place, const ListOf<Rule>& rule, std::vector<T>& target) {
    const std::size_t size = value.items.size();
    if (value.kind != Value::Kind::list || size < std::size_t(rule.least) || size > std::size_t(rule.most))
        refuseList(value, place, accepted(rule));
    target.clear();
    for (std::size_t i = 0; i < size; ++i) {
        T item{};
        read(value.items[i], Place{&place, {}, int(i)}, rule.rule, item);
        target.push_back(std::move(item));
    }
}

template <class Rule, class T>
Value write(const std::vector<T>& value, const Place& place, const ListOf<Rule>& rule) {
    Value result = listValue();
    for (std::size_t i = 0; i < value.size(); ++i)
        result.items.push_back(write(value[i], Place{&place, {}, int(i)}, rule.rule));
    return result;
}

}  // namespace fayline::model
