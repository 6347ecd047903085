#include "core/export/print.hpp"

#include <cmath>
#include <nlohmann/json.hpp>
#include <type_traits>

#include "core/export/print_keys.hpp"
#include "core/plan/study/deepen.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace printing {

namespace {

using Json = nlohmann::ordered_json;

// A pointer, an optional or a list that holds something, a text that says something, a number that is one: those that
// say "none" by less than 0 or by no finite number.
template <class T>
bool isThere(const T& value) {
    if constexpr (std::is_floating_point_v<T>) {
        return std::isfinite(value);
    } else if constexpr (std::is_integral_v<T>) {
        return value >= 0;
    } else if constexpr (requires { value.empty(); }) {
        return !value.empty();
    } else {
        return static_cast<bool>(value);
    }
}

template <class T>
const auto& within(const T& value) {
    if constexpr (requires { *value; }) {
        return *value;
    } else {
        return value;
    }
}

Json print(double value, const Figure& figure, const Of&) {
    const double shown = figure.unit.of(value);
    if (!std::isfinite(shown)) return nullptr;
    const double tens = std::pow(10.0, std::abs(figure.decimals));
    if (figure.decimals < 0) return tens * std::round(shown / tens) + 0.0;  // no -0
    const double rounded = std::abs(shown) < 1e15 / tens ? std::round(shown * tens) / tens : shown;
    return rounded + 0.0;
}

template <class T>
Json print(T value, const Whole&, const Of&) {
    static_assert(std::is_integral_v<T>);
    return value;
}

Json print(bool value, const Truth&, const Of&) {
    return value;
}

template <class T>
Json print(const T& text, const Text&, const Of&) {
    return within(text);
}

template <class Enum, std::size_t count>
Json print(Enum value, const Words<Enum, count>& rule, const Of&) {
    return std::string(model::wordOf(value, rule));
}

template <class T, class Walk>
void printInto(Json& printed, const T& item, const Of& of, const Walk& walk);

template <class T>
Json print(const T& value, const Group&, const Of& of) {
    Json printed = Json::object();
    printInto(printed, within(value), of, table);
    return printed;
}

template <class Items, class Rule>
Json printAll(const Items& items, const Rule& rule, const Of& of) {
    Json printed = Json::array();
    for (const auto& item : items) printed.push_back(print(item, rule, of));
    return printed;
}

template <class Items, class Rule>
Json print(const Items& items, const ListOf<Rule>& list, const Of& of) {
    return printAll(items, list.rule, of);
}

template <class Items, class Rule>
Json print(const Items& items, const Pair<Rule>& pair, const Of& of) {
    return printAll(items, pair.rule, of);
}

template <class T, class Rule>
Json print(const T& value, const OrNull<Rule>& rule, const Of& of) {
    return isThere(value) ? print(within(value), rule.rule, of) : Json(nullptr);
}

// Prints the values of `item` into `printed`.
template <class T>
class Printer {
public:
    Printer(Json& printed, const T& item, const Of& of) : printed_(printed), item_(item), of_(of) {}

    template <class Get, class Rule>
    void operator()(std::string_view key, const Get& get, const Rule& rule) {
        printed_[std::string(key)] = print(give(get, item_, of_), rule, of_);
    }

    template <class Get, class Rule>
    void operator()(std::string_view key, const Get& get, const OrAbsent<Rule>& rule) {
        const auto& value = give(get, item_, of_);
        if (isThere(value)) printed_[std::string(key)] = print(within(value), rule.rule, of_);
    }

    template <class Walk>
    void inner(std::string_view key, const Walk& walk) {
        Json group = Json::object();
        printInto(group, item_, of_, walk);
        printed_[std::string(key)] = std::move(group);
    }

    template <class Get, class Walk = decltype(table)>
    void same(const Get& get, const Walk& walk = table) {
        const auto& value = give(get, item_, of_);
        if constexpr (requires { *value; }) {
            if (!value) return;
        }
        printInto(printed_, within(value), of_, walk);
    }

private:
    Json& printed_;
    const T& item_;
    const Of& of_;
};

template <class T, class Walk>
void printInto(Json& printed, const T& item, const Of& of, const Walk& walk) {
    Printer<T> printer(printed, item, of);
    walk(printer);
}

}  // namespace

}  // namespace printing

namespace {

Plan planOf(const model::Boat& boat, const Shop& shop, std::size_t index) {
    try {
        const model::Piece& piece = boat.pieces[index];
        const Plan plan = makePlan(piece, shop);
        const std::atomic<bool> stop = false;
        return deepen(piece, shop, plan, stop).value_or(plan);
    } catch (const units::InputError& error) {
        throw error.within("pieces[" + std::to_string(index) + "].");
    }
}

// Names may hold bytes that are no text; they are replaced rather than the plan be lost.
std::string textOf(const printing::Json& document) {
    return document.dump(2, ' ', false, printing::Json::error_handler_t::replace) + "\n";
}

}  // namespace

std::string printPlan(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    return textOf(printing::print(plan, printing::Group{}, {piece, plan, shop}));
}

std::string printPlans(const model::Boat& boat) {
    using printing::Json;
    const Shop shop = shopOf(boat);
    Json pieces = Json::array();
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const Plan plan = planOf(boat, shop, i);
        pieces.push_back(printing::print(plan, printing::Group{}, {boat.pieces[i], plan, shop}));
    }
    return textOf({{"fayline_plan", 1}, {"boat", boat.name}, {"pieces", pieces}});
}

std::string summarizePlans(const model::Boat& boat, bool all) {
    const Shop shop = shopOf(boat);
    std::string text;
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const Plan plan = planOf(boat, shop, i);
        if (i > 0) text += "\n";
        text += plan.piece + ": " + writeText(verdictOf(plan).text, plan.display) + "\n";
        for (const Answer& answer : plan.answers) {
            text += std::string("  ") + questionName(answer.question) + ": " + answerText(answer, plan.display) + "\n";
        }
        for (const Finding& finding : plan.findings) {
            if (!all && (levelOf(finding) == Level::fact || finding.root >= 0)) continue;
            text += std::string(finding.root >= 0 ? "    " : "  ") + severityText(finding.severity) + ": " +
                    textOf(finding, plan.display) + "\n";
            if (!all) continue;
            const std::string details = detailsOf(finding, plan.display);
            text += (details.empty() ? "" : "      " + details + "\n") + "      [" + finding.source.text + ", " +
                    units::markText(finding.source.mark) + "]\n";
        }
    }
    return text;
}

}  // namespace fayline::plan
