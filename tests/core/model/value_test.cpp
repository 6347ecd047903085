// Text that is not JSON: line and column, and in plain words what stands there and what would be accepted.
#include "core/model/value.hpp"

#include <gtest/gtest.h>

#include "core/model/cut_short.hpp"
#include "core/units/input_error.hpp"
#include "tests/refusal.hpp"

namespace fayline::model {
namespace value_test {

std::string errorOfText(std::string_view text) {
    return made::refusalText([&] { parseText(text); });
}

constexpr const char* value = "give a value: a number, a text in double quotes, true, false, null, [ or {";
constexpr const char* quotes =
    "write a text between double quotes on one line, with \\\" for a quote and \\\\ for a backslash in it";

TEST(Text, SaysWhatIsMissingBetweenParts) {
    EXPECT_EQ(errorOfText("{\"a\": 1 \"b\": 2}"), "line 1, column 9: \"b\" cannot stand here; give a comma, or }");
    EXPECT_EQ(errorOfText("{\"a\": [1 2]}"), "line 1, column 10: 2 cannot stand here; give a comma, or ]");
    EXPECT_EQ(errorOfText("{\"a\" 1}"), "line 1, column 6: 1 cannot stand here; give a : after the key");
    EXPECT_EQ(errorOfText("{\"a\": }"), std::string("line 1, column 7: } cannot stand here; ") + value);
    EXPECT_EQ(errorOfText("{a: 1}"), "line 1, column 2: a cannot stand here; give a key in double quotes, or }");
    EXPECT_EQ(errorOfText("{1: 1}"), "line 1, column 2: 1 cannot stand here; give a key in double quotes, or }");
    EXPECT_EQ(errorOfText("{\"a\": 1]"), "line 1, column 8: ] cannot stand here; give a comma, or }");
}

TEST(Text, SaysThatAListOrGroupEndsWithAComma) {
    EXPECT_EQ(errorOfText("{\n  \"a\": 1,\n}\n"),
              "line 3, column 1: } cannot stand here; give a key in double quotes after the comma");
    EXPECT_EQ(errorOfText("[1, 2, ]"), std::string("line 1, column 8: ] cannot stand here; ") + value);
    EXPECT_EQ(errorOfText("[,]"), std::string("line 1, column 2: , cannot stand here; ") + value + ", or ]");
}

TEST(Text, SaysThatTheTextEndsTooEarly) {
    EXPECT_EQ(errorOfText(""), "line 1, column 1: the text ends too early; give a project file, which begins with {");
    EXPECT_EQ(errorOfText(" \n"),
              "line 2, column 1: the text ends too early; give a project file, which begins with {");
    EXPECT_EQ(errorOfText("{"), "line 1, column 2: the text ends too early; give a key in double quotes, or }");
    EXPECT_EQ(errorOfText("{\"a\": [1,\n 2\n"), "line 3, column 1: the text ends too early; give a comma, or ]");
    EXPECT_EQ(errorOfText("{\"a\""), "line 1, column 5: the text ends too early; give a : after the key");
    EXPECT_EQ(errorOfText("{\"a\":"), std::string("line 1, column 6: the text ends too early; ") + value);
    EXPECT_EQ(errorOfText("{\"a\": 12"), "line 1, column 9: the text ends too early; give a comma, or }");
}

// A file that a full disk left, wherever it was cut within its outermost group.
TEST(Text, ThatIsCutAnywhereIsSaidToBeCutShort) {
    const std::string whole = "{\"fayline\": 1, \"a\": [12.5, -3e2, true, null, \"st\\\"em\"], \"b\": {\"c\": false}}";
    ASSERT_NO_THROW(parseText(whole));
    for (std::size_t left = 0; left < whole.size(); ++left)
        EXPECT_THROW(parseText(whole.substr(0, left)), CutShort) << whole.substr(0, left);
    for (const char* wrong : {"{\"a\": oak}", "{\"a\" 1}", "{} oak", "{\"a\": 'stem'}"}) {
        try {
            parseText(wrong);
            ADD_FAILURE() << wrong;
        } catch (const CutShort& error) {
            ADD_FAILURE() << error.what();
        } catch (const units::InputError&) {
        }
    }
}

TEST(Text, SaysWhatIsTooMuch) {
    EXPECT_EQ(errorOfText("{} {}"), "line 1, column 4: { cannot stand here; give nothing more after the last }");
    EXPECT_EQ(errorOfText("{}\n}"), "line 2, column 1: } cannot stand here; give nothing more after the last }");
}

TEST(Text, SaysThatCommentsCannotBeHeld) {
    const std::string told =
        "a comment stands here, which a project file cannot hold; take it out, or put it as a text under a key of its "
        "own";
    EXPECT_EQ(errorOfText("{\n  \"a\": 1, // the stem\n  \"b\": 2}"), "line 2, column 11: " + told);
    EXPECT_EQ(errorOfText("/* Marram */ {}"), "line 1, column 1: " + told);
    EXPECT_EQ(errorOfText("# Marram\n{}"), "line 1, column 1: " + told);
}

TEST(Text, SaysWhichTextIsWrong) {
    EXPECT_EQ(errorOfText("{\"a\": \"stem\n}"),
              std::string("line 1, column 7: the text \"stem is not closed; ") + quotes);
    EXPECT_EQ(errorOfText("{\"a\": \"stem"), std::string("line 1, column 7: the text \"stem is not closed; ") + quotes);
    EXPECT_EQ(errorOfText("{\"a\": \"C:\\stem\"}"),
              std::string("line 1, column 7: the text \"C:\\stem\" has a backslash that means nothing; ") + quotes);
    EXPECT_EQ(errorOfText("{\"a\": \"x\ty\"}"),
              std::string("line 1, column 7: the text \"x y\" has a tab or control character in it; ") + quotes);
    EXPECT_EQ(errorOfText("{'a': 1}"), std::string("line 1, column 2: a text in single quotes stands here; ") + quotes);
    EXPECT_EQ(errorOfText("{\"a\": \"\\ud800\"}"),
              std::string("line 1, column 7: the text \"\\ud800\" has a backslash that means nothing; ") + quotes);
}

TEST(Text, SaysWhichNumberIsWrong) {
    const std::string told = " is not written as a number is here; write it like 51, 6.35 or -0.5";
    for (const std::string wrong : {"01", ".5", "+1", "1.", "0x10", "1e", "--1", "6,35x", "1_000", "-"}) {
        const std::string shown = wrong == "6,35x" ? "35x" : wrong;
        const std::string column = wrong == "6,35x" ? "9" : "7";
        const std::string error = errorOfText("{\"a\": " + wrong + "}");
        EXPECT_EQ(error, "line 1, column " + column + ": " + shown + told) << wrong;
    }
    EXPECT_EQ(errorOfText("{\"a\": 1e400}"),
              "line 1, column 7: 1e400 is too large for a number; give a smaller number");
    EXPECT_EQ(errorOfText("{\"a\":\n-1e400}"),
              "line 2, column 1: -1e400 is too large for a number; give a smaller number");
    for (const std::string wrong : {"NaN", "Infinity", "nan", "True", "tru", "nul"})
        EXPECT_EQ(errorOfText("{\"a\": " + wrong + "}"), "line 1, column 7: " + wrong + " cannot stand here; " + value);
    EXPECT_EQ(errorOfText("[-Infinity]"), "line 1, column 2: -Infinity" + told);
    EXPECT_EQ(errorOfText("[tru x"), std::string("line 1, column 2: tru cannot stand here; ") + value + ", or ]");
    EXPECT_EQ(errorOfText("[tru"), "line 1, column 2: the text ends within tru; give the rest");
}

TEST(Text, CountsColumnsInCharacters) {
    EXPECT_EQ(errorOfText("{\"Dörte\": 1 x}"), "line 1, column 13: x cannot stand here; give a comma, or }");
}

TEST(Text, RefusesBytesThatAreNotUtf8) {
    const std::string told = "a byte that is not UTF-8 stands here; save the file as UTF-8 text";
    EXPECT_EQ(errorOfText("{\"a\": \"D\xF6rte\"}"), "line 1, column 9: " + told);
    for (const std::string wrong :
         {"\x80", "\xC0\xAF", "\xE0\x80\x80", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xF8", "\xE2\x82", "\xFF"})
        EXPECT_EQ(errorOfText("\"" + wrong + "\""), "line 1, column 2: " + told);
    for (const std::string right : {"\xC3\xB6", "\xE2\x82\xAC", "\xF0\x9F\x9B\xB6", "\xED\x9F\xBF", "\xF4\x8F\xBF\xBF"})
        EXPECT_EQ(parseText("\"" + right + "\"").text, right);
    EXPECT_EQ(parseText("\xEF\xBB\xBF{}"), groupValue()) << "a byte order mark is passed over";
    EXPECT_EQ(errorOfText(std::string_view("{}\0", 3)),
              "line 1, column 3: a zero byte stands here; save the file as UTF-8 text");
    EXPECT_NE(errorOfText(std::string("\xFF\xFE{\0}\0", 6)), "nothing") << "UTF-16";
}

TEST(Text, RefusesAKeyGivenTwice) {
    EXPECT_EQ(errorOfText(R"({"pieces": [{}, {"name": "a", "line": {}, "name": "b"}]})"),
              "pieces[1].name: this key is given twice in one group; give it once");
    EXPECT_EQ(errorOfText(R"({"a": {"b": 1}, "c": {"b": 2}})"), "nothing");
    EXPECT_EQ(errorOfText(R"({"a": 1, "\u0061": 1})"), "a: this key is given twice in one group; give it once");
}

TEST(Text, RefusesBottomlessNesting) {
    const auto nested = [](int depth) { return std::string(depth, '[') + std::string(depth, ']'); };
    EXPECT_EQ(errorOfText(nested(100)), "nothing");
    const std::string told =
        "more than 100 groups and lists stand within one another; give a project file, which needs no more than ten";
    EXPECT_EQ(errorOfText(nested(101)), told);
    EXPECT_EQ(errorOfText(std::string(1'000'000, '[')), told);
    std::string groups;
    for (int i = 0; i < 200'000; ++i) groups += "{\"a\":";
    EXPECT_EQ(errorOfText(groups), told);
}

TEST(Text, KeepsTheFiguresOfANumber) {
    for (const std::string figures :
         {"1.10", "6.35", "1e3", "-0.5", "123456789012345678901234567890", "0.1e-2", "1E+2"})
        EXPECT_EQ(writeOnOneLine(parseText(figures)), figures);
}

TEST(Text, WritesWhatItReads) {
    for (const std::string text :
         {R"({"a": [1, {"b": null}, "x\"y\\z\n\t\u0001ö"], "c": {}, "d": [], "e": true})", "[]", "\"\""}) {
        EXPECT_EQ(writeOnOneLine(parseText(text)), text);
        EXPECT_EQ(parseText(writeOverLines(parseText(text))), parseText(text));
    }
}

TEST(Text, PutsEveryItemOfAListOnALine) {
    EXPECT_EQ(writeOverLines(parseText(R"({"a": {"b": 1}, "list": [{"x": 1, "of": [1, 2]}, {"x": 2}], "n": [1, 2]})")),
              "{\n"
              "  \"a\": {\"b\": 1},\n"
              "  \"list\": [\n"
              "    {\"x\": 1, \"of\": [1, 2]},\n"
              "    {\"x\": 2}\n"
              "  ],\n"
              "  \"n\": [1, 2]\n"
              "}\n");
}

}  // namespace value_test
}  // namespace fayline::model
