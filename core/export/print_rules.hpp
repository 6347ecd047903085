// How a value of a plan stands in the printed plan: the rules beside the keys of print_keys.hpp, and what reaches a
// value.
//
// A table of printed keys is walked by a visitor, the printer (print.cpp) or the one that makes the schema. It is
// called for every key, in the order of the printed plan, as
//     visit(key, get, rule)
// where `get` is a pointer to a member or a function that gives the value of an item; a function may also take what all
// is printed of, const Of&. It is called as
//     visit.inner(key, walk)
// for a group whose values are reached from the same item, and as
//     visit.same(get) or visit.same(get, walk)
// for keys in the same group of what `get` gives: those of its table, or those that `walk` visits. What `get` gives may
// be a pointer or an optional.
#pragma once

#include <functional>
#include <limits>
#include <optional>
#include <string_view>
#include <type_traits>

#include "core/model/rules.hpp"
#include "core/plan/plan.hpp"
#include "core/units/units.hpp"

namespace fayline::plan::printing {

using model::Group, model::ListOf, model::OrNull, model::Pair, model::Text, model::Truth, model::Whole, model::Words,
    model::words;

// A piece, its plan, and what the plan was made with.
struct Of {
    const model::Piece& piece;
    const Plan& plan;
    const Shop& shop;
};

// The end of a key, and what makes the value there of one in SI.
struct Unit {
    std::string_view symbol;  // "mm"; empty: a number without a unit
    double (*of)(double si) = [](double value) { return value; };
};

// A number with so many decimals at most, so that the last bits of a sum do not show (-1: to tens). Null where it is
// not finite: the rule is then OrNull.
struct Figure {
    Unit unit;
    int decimals = 6;
};

// For an optional, a pointer or a list: without it the key is left out.
template <class Rule>
struct OrAbsent {
    Rule rule;
};

template <class Rule>
OrAbsent(Rule) -> OrAbsent<Rule>;

namespace unit {
inline constexpr Unit mm{"mm", units::toMillimetres};
inline constexpr Unit deg{"deg", units::toDegrees};
inline constexpr Unit pct{"pct", [](double share) { return 100 * share; }};
inline constexpr Unit MPa{"MPa", [](double stress_Pa) { return stress_Pa / 1e6; }};
inline constexpr Unit kPa{"kPa", [](double pressure_Pa) { return pressure_Pa / 1e3; }};
inline constexpr Unit g{"g", [](double mass_kg) { return 1000 * mass_kg; }};
inline constexpr Unit g_m2{"g_m2", g.of};
inline constexpr Unit ml{"ml", [](double volume_m3) { return 1e6 * volume_m3; }};
inline constexpr Unit min{"min", [](double time_s) { return time_s / 60; }};
inline constexpr Unit h{"h", [](double time_s) { return time_s / 3600; }};
// A radius of a thousand kilometres or more is a straight line but for the last bits of the fit: none.
inline constexpr Unit radius{"mm", [](double radius_m) {
                                 constexpr double none = std::numeric_limits<double>::quiet_NaN();
                                 return radius_m < 1e6 ? units::toMillimetres(radius_m) : none;
                             }};
}  // namespace unit

inline constexpr Figure mm{unit::mm};
inline constexpr Figure radius_mm{unit::radius};
inline constexpr Figure pct{unit::pct};
inline constexpr Figure plain{};
inline constexpr Figure ratio{{}, 9};
inline constexpr Figure MPa{unit::MPa};
inline constexpr Figure N{{"N"}};
inline constexpr Figure N_m{{"N_m"}};
inline constexpr Figure grams{unit::g, 3};
inline constexpr Figure millilitres{unit::ml, 3};
inline constexpr Figure minutes{unit::min, 3};

// What `get` gives of the item.
template <class Get, class T>
decltype(auto) give(const Get& get, const T& item, const Of& of) {
    if constexpr (std::is_invocable_v<const Get&, const T&>) {
        return std::invoke(get, item);
    } else {
        return std::invoke(get, item, of);
    }
}

// The plan, of any item.
inline constexpr auto plan = [](const auto&, const Of& of) -> const Plan& { return of.plan; };

// `first`, then of what it gives the next, and so on. All but the last give references or pointers.
constexpr auto via(auto first) {
    return first;
}
constexpr auto via(auto first, auto... rest) {
    return [first, then = via(rest...)](const auto& item, const Of& of) -> decltype(auto) {
        return give(then, give(first, item, of), of);
    };
}

// The same of what `whole` gives, a pointer or an optional; nothing where that is empty.
constexpr auto ifAny(auto whole, auto... steps) {
    return [whole, then = via(steps...)](const auto& item, const Of& of) {
        decltype(auto) from = give(whole, item, of);
        constexpr bool stays = std::is_reference_v<decltype(from)> || std::is_pointer_v<decltype(from)>;
        if constexpr (stays && std::is_lvalue_reference_v<decltype(give(then, *from, of))>) {
            return from ? &give(then, *from, of) : nullptr;
        } else {
            return from ? std::optional(give(then, *from, of)) : std::nullopt;
        }
    };
}

// The item itself where `is` is true of it; for ifAny.
constexpr auto where(auto is) {
    return [=](const auto& item, const Of& of) { return give(is, item, of) ? &item : nullptr; };
}

// A number that says nothing unless it is above 0.
constexpr auto ifAbove0(auto get) {
    return ifAny(where([=](const auto& item) { return std::invoke(get, item) > 0; }), get);
}

// The words of an enumeration that has a function for them.
template <class Enum, class Word, std::size_t count>
Words<Enum, count> wordsBy(Word (*wordOf)(Enum), const Enum (&values)[count]) {
    Words<Enum, count> rule{};
    for (std::size_t i = 0; i < count; ++i) rule.words[i] = {values[i], wordOf(values[i])};
    return rule;
}

}  // namespace fayline::plan::printing
