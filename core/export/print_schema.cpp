#include <nlohmann/json.hpp>
#include <type_traits>

#include "core/export/print.hpp"
#include "core/export/print_keys.hpp"

namespace fayline::plan {

namespace printing {

namespace {

using Json = nlohmann::ordered_json;

// What stands in a value: of a pointer or an optional what it may hold.
template <class T>
auto insideOf() {
    if constexpr (requires(const T& value) { *value; }) {
        return std::type_identity<std::remove_cvref_t<decltype(*std::declval<const T&>())>>();
    } else {
        return std::type_identity<T>();
    }
}

template <class T>
using Inside = typename decltype(insideOf<std::remove_cvref_t<T>>())::type;

// Each `describe` gives the schema of a value of type T that is printed by this rule.

template <class T>
Json describe(const Figure& figure) {
    std::string step = figure.decimals > 0
                           ? "0." + std::string(static_cast<std::size_t>(figure.decimals) - 1, '0') + "1"
                           : "1" + std::string(static_cast<std::size_t>(-figure.decimals), '0');
    const std::string unit = figure.unit.symbol.empty() ? "" : "in " + std::string(figure.unit.symbol) + ", ";
    return {{"type", "number"}, {"description", unit + "to " + step}};
}

template <class T>
Json describe(const Whole&) {
    return {{"type", "integer"}};
}

template <class T>
Json describe(const Truth&) {
    return {{"type", "boolean"}};
}

template <class T>
Json describe(const Text&) {
    return {{"type", "string"}};
}

template <class T, class Enum, std::size_t count>
Json describe(const Words<Enum, count>& rule) {
    Json words = Json::array();
    for (const auto& [value, word] : rule.words) words.push_back(std::string(word));
    return {{"type", "string"}, {"enum", words}};
}

template <class T, class Walk>
void describeInto(Json& properties, Json& required, const Walk& walk);

template <class T, class Walk>
Json describeGroup(const Walk& walk) {
    Json properties = Json::object();
    Json required = Json::array();
    describeInto<T>(properties, required, walk);
    return {{"type", "object"}, {"required", required}, {"properties", properties}};
}

template <class T>
Json describe(const Group&) {
    return describeGroup<Inside<T>>(table);
}

template <class T, class Rule>
Json describe(const ListOf<Rule>& list) {
    return {{"type", "array"}, {"items", describe<typename Inside<T>::value_type>(list.rule)}};
}

template <class T, class Rule>
Json describe(const Pair<Rule>& pair) {
    Json schema = describe<T>(ListOf<Rule>{pair.rule});
    schema["minItems"] = schema["maxItems"] = 2;
    return schema;
}

template <class T, class Rule>
Json describe(const OrNull<Rule>& rule) {
    Json schema = describe<Inside<T>>(rule.rule);
    schema["type"] = {schema["type"], "null"};
    if (schema.contains("enum")) schema["enum"].push_back(nullptr);
    return schema;
}

// Describes the values of a T into the properties and required keys of a group.
template <class T>
class Describer {
public:
    Describer(Json& properties, Json& required) : properties_(properties), required_(required) {}

    template <class Get, class Rule>
    void operator()(std::string_view key, const Get&, const Rule& rule) {
        add(key, describe<Given<Get>>(rule));
    }

    template <class Get, class Rule>
    void operator()(std::string_view key, const Get&, const OrAbsent<Rule>& rule) {
        properties_[std::string(key)] = describe<Inside<Given<Get>>>(rule.rule);
    }

    template <class Walk>
    void inner(std::string_view key, const Walk& walk) {
        add(key, describeGroup<T>(walk));
    }

    template <class Get, class Walk = decltype(table)>
    void same(const Get&, const Walk& walk = table) {
        using Item = Inside<Given<Get>>;
        Json none = Json::array();
        describeInto<Item>(properties_, std::is_same_v<Item, Given<Get>> ? required_ : none, walk);
    }

private:
    template <class Get>
    using Given = std::remove_cvref_t<decltype(give(std::declval<const Get&>(), std::declval<const T&>(),
                                                    std::declval<const Of&>()))>;

    void add(std::string_view key, Json schema) {
        properties_[std::string(key)] = std::move(schema);
        required_.push_back(std::string(key));
    }

    Json& properties_;
    Json& required_;
};

template <class T, class Walk>
void describeInto(Json& properties, Json& required, const Walk& walk) {
    Describer<T> describer(properties, required);
    walk(describer);
}

}  // namespace

}  // namespace printing

std::string printedPlanSchema() {
    using namespace printing;
    const Json schema{{"$schema", "https://json-schema.org/draft/2020-12/schema"},
                      {"title", "The plan that fayline --plan prints"},
                      {"type", "object"},
                      {"required", {"fayline_plan", "boat", "pieces"}},
                      {"properties",
                       {{"fayline_plan", {{"const", 1}}},
                        {"boat", describe<std::string>(Text{})},
                        {"pieces", describe<std::vector<Plan>>(ListOf<Group>{})}}}};
    return schema.dump(2) + "\n";
}

}  // namespace fayline::plan
