#include "core/model/validate.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "core/model/keys_boat.hpp"
#include "core/model/together.hpp"

namespace fayline::model {

namespace {

template <class T>
class Validator;

// What the file would say to the value: written as it would be written, read as it would be read.
template <class T, class Rule>
void asInFile(const T& value, const Place& place, const Rule& rule) {
    T again{};
    read(write(value, place, rule), place, rule, again);
}

// A number well inside its range needs no text; one at or near a bound is judged by its figures, as the file's is.
void check(double value, const Place& place, const Number& rule) {
    constexpr double nearly = 1e-9;
    constexpr double ordinary = 1e8;
    const double inFile = value / (std::pow(10.0, rule.unit.tens) * double(rule.unit.times));
    const double least = std::max(rule.least, -ordinary);
    const double most = std::min(rule.most, ordinary);
    const double closeTo = rule.above ? 1e-5 : nearly * std::max(1.0, std::abs(least));
    const bool onLeast = !rule.above && value == 0 && rule.least == 0;
    if (onLeast || (inFile > least + closeTo && inFile < most - nearly * std::max(1.0, std::abs(most)))) return;
    asInFile(value, place, rule);
}

void check(int value, const Place& place, const Whole& rule) {
    if (value < rule.least || value > rule.most) asInFile(value, place, rule);
}

void check(const std::string&, const Place&, const Text&) {}

void check(bool, const Place&, const Truth&) {}

void check(double value, const Place& place, const Clock& rule) {
    asInFile(value, place, rule);
}

void check(const std::string& value, const Place& place, const DateTime& rule) {
    asInFile(value, place, rule);
}

template <class Enum, std::size_t count>
void check(const Enum& value, const Place& place, const Words<Enum, count>& rule) {
    for (const auto& known : rule.words)
        if (known.value == value) return;
    refuse(place, "this is none of the words that may stand here", accepted(rule));
}

template <class Rule, class T>
void check(const std::array<T, 2>& value, const Place& place, const Pair<Rule>& rule);
template <class Rule, class T>
void check(const std::vector<T>& value, const Place& place, const ListOf<Rule>& rule);

template <class T>
void check(const T& value, const Place& place, const Group&) {
    Validator<T> validator(value, place);
    keysOf(validator, static_cast<const T*>(nullptr));
}

template <class Rule, class T>
void check(const std::optional<T>& value, const Place& place, const OrNull<Rule>& rule) {
    if (value) check(*value, place, rule.rule);
}

template <class Rule, class T>
void check(const std::optional<T>& value, const Place& place, const OrWord<Rule>& rule) {
    if (value) check(*value, place, rule.rule);
}

template <class Rule, class T>
void check(const std::array<T, 2>& value, const Place& place, const Pair<Rule>& rule) {
    for (int i = 0; i < 2; ++i) check(value[std::size_t(i)], Place{&place, {}, i}, rule.rule);
}

template <class Rule, class T>
void check(const std::vector<T>& value, const Place& place, const ListOf<Rule>& rule) {
    if (value.size() < std::size_t(rule.least) || value.size() > std::size_t(rule.most))
        refuse(place, "this list holds " + (value.empty() ? "nothing" : std::to_string(value.size())), accepted(rule));
    for (std::size_t i = 0; i < value.size(); ++i) check(value[i], Place{&place, {}, int(i)}, rule.rule);
}

template <class T>
class Validator {
public:
    Validator(const T& value, const Place& place) : value_(value), place_(place) {}

    template <class Member, class Rule>
    void operator()(std::string_view key, Member member, const Rule& rule, When = When::said) {
        check(std::invoke(member, value_), Place{&place_, key}, rule);
    }

    template <class OfKept, class Walk>
    void inner(std::string_view key, OfKept, Walk walk) {
        const Place place{&place_, key};
        Validator within(value_, place);
        walk(within);
    }

private:
    const T& value_;
    const Place& place_;
};

}  // namespace

void validate(const Piece& piece) {
    const Place root{};
    check(piece, root, Group{});
    checkTogether(piece, "");
}

}  // namespace fayline::model
