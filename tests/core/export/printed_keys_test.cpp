// The keys of the printed plan follow the rules of its format, and the user guide's list of them is the code's.
#include <gtest/gtest.h>

#include <cctype>
#include <fstream>
#include <functional>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "core/export/print.hpp"

namespace fayline::plan {
namespace printed_keys_test {

using Json = nlohmann::ordered_json;
using OnKey = std::function<void(const std::string& path, const std::string& key, const Json& schema, bool always)>;

// Calls `onKey` for every key of a group and of the groups in it, in their order.
void walk(const Json& schema, const std::string& path, const OnKey& onKey) {
    if (schema.contains("items")) walk(schema["items"], path + "[]", onKey);
    if (!schema.contains("properties")) return;
    const auto required = schema["required"].get<std::set<std::string>>();
    for (const auto& [key, value] : schema["properties"].items()) {
        const std::string here = path.empty() ? key : path + "." + key;
        onKey(here, key, value, required.contains(key));
        walk(value, here, onKey);
    }
}

std::vector<std::string> wordsOf(const std::string& key) {
    std::vector<std::string> words;
    std::stringstream rest(key);
    for (std::string word; std::getline(rest, word, '_');) words.push_back(word);
    return words;
}

// The unit that a number is in by its description, "in N_m, to 0.01"; empty: none.
std::string unitOf(const Json& schema) {
    const std::string text = schema.value("description", "");
    return text.starts_with("in ") ? text.substr(3, text.find(',') - 3) : "";
}

// Words in lower case with underscores, the unit at the end; only symbols of units hold capitals.
TEST(PrintedKeys, AreLowerCaseWordsWithTheUnitAtTheEnd) {
    static const std::set<std::string> symbols{"J", "MPa", "N", "kPa", "C"};
    static const std::set<std::string> units{"mm", "deg", "pct", "MPa", "kPa", "g", "ml", "min", "h", "N", "J", "C"};
    int keys = 0;
    const OnKey check = [&keys](const std::string& path, const std::string& key, const Json& schema, bool) {
        ++keys;
        const std::vector<std::string> words = wordsOf(key);
        ASSERT_FALSE(words.empty()) << path;
        for (const std::string& word : words) {
            if (symbols.contains(word)) continue;
            EXPECT_FALSE(word.empty()) << path;
            for (const char c : word) {
                EXPECT_TRUE(std::islower(static_cast<unsigned char>(c)) || std::isdigit(static_cast<unsigned char>(c)))
                    << path;
            }
        }
        const Json& number = schema.contains("items") ? schema["items"] : schema;
        const std::string unit = unitOf(number);
        EXPECT_TRUE(unit.empty() || key.ends_with("_" + unit)) << path << " is in " << unit;
        if (words.size() > 1 && units.contains(words.back())) {
            EXPECT_FALSE(unit.empty()) << path << " is in no unit";
        }
    };
    walk(Json::parse(printedPlanSchema()), "", check);
    EXPECT_GT(keys, 300);
}

std::string valueText(const Json& schema) {
    if (schema.contains("const")) return "`" + schema["const"].dump() + "`";
    const bool mayBeNull = schema["type"].is_array();
    const std::string type = mayBeNull ? schema["type"][0] : schema["type"];
    std::string text;
    if (schema.contains("enum")) {
        for (const Json& word : schema["enum"]) {
            if (!word.is_null()) text += (text.empty() ? "`" : ", `") + word.get<std::string>() + "`";
        }
    } else if (type == "array") {
        const bool two = schema.contains("maxItems");
        const std::string item = valueText(schema["items"]);
        text = std::string(two ? "a list of two" : "a list") + (item == "a group" ? "" : ", each " + item);
    } else if (type == "number") {
        const std::string description = schema["description"];
        const std::string step = description.substr(description.find("to "));
        text = "a number" + (step == "to 0.000001" ? "" : " " + step);
    } else {
        text = type == "integer"   ? "a whole number"
               : type == "string"  ? "text"
               : type == "boolean" ? "true or false"
                                   : "a group";
    }
    return text + (mayBeNull ? ", or null" : "");
}

TEST(PrintedKeys, AreListedInTheGuide) {
    std::string expected =
        "# The printed plan, key by key\n"
        "\n"
        "`fayline --plan FILE` prints the plans of a project file as one JSON document; `fayline --plan-schema` prints "
        "what\n"
        "is said here as a JSON Schema. Units stand at the end of the key; numbers are rounded to a millionth, or as "
        "said. "
        "What\n"
        "is not known is null, never 0. A key marked *may be absent* is left out where there is no such thing. Groups "
        "and "
        "lists\n"
        "(`[]`: each member) that are always there are not listed for themselves. `at_mm` is arc length along the fair "
        "line "
        "from\n"
        "its first point.\n"
        "\n"
        "| key | value |\n"
        "| --- | --- |\n";
    walk(Json::parse(printedPlanSchema()), "",
         [&expected](const std::string& path, const std::string&, const Json& schema, bool always) {
             const std::string value = valueText(schema);
             if (always && (value == "a group" || value == "a list")) return;
             expected += "| `" + path + "` | " + value + (always ? "" : "; *may be absent*") + " |\n";
         });
    std::ifstream file(FAYLINE_RESOURCES "/guide/printed_plan.md");
    std::stringstream found;
    found << file.rdbuf();
    if (found.str() != expected) {
        const std::string aside = testing::TempDir() + "printed_plan.md";
        std::ofstream(aside) << expected;
        FAIL() << "resources/guide/printed_plan.md differs from the tables in the code; what it should be lies in "
               << aside;
    }
}

}  // namespace printed_keys_test
}  // namespace fayline::plan
