// One word per thing: texts that users see use none of the words that DEVELOPERS.md replaces by others.
#include <gtest/gtest.h>

#include <algorithm>
#include <cctype>
#include <cstring>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <regex>
#include <string>
#include <vector>

namespace words_test {

// A literal, those that follow each other as one. Words are within tr() or FAYLINE_TEXT, or hold a space: others are
// keys and names of objects.
struct Literal {
    std::string text;
    bool words = false;
};

// Whether what begins after `before` is within tr() or FAYLINE_TEXT.
bool isForWords(const std::string& before) {
    static const std::regex form(R"re((\btr|FAYLINE_TEXT|FAYLINE_TEXT_N)\(\s*("\w*",\s*)?$)re");
    return std::regex_search(before, form);
}

// The place after the comment, include, character or literal that begins at `from`; `from` itself where none does.
std::size_t pastToken(const std::string& source, std::size_t from) {
    const auto past = [&](const std::string& end) { return std::min(source.find(end, from), source.size()); };
    const auto starts = [&](const char* with) { return source.compare(from, std::strlen(with), with) == 0; };
    if (starts("//") || starts("#include")) return past("\n");
    if (starts("R\"")) {
        const std::size_t open = source.find('(', from);
        return past(")" + source.substr(from + 2, open - from - 2) + "\"") + open - from;
    }
    const char quote = source[from];
    const bool separates = quote == '\'' && from > 0 && std::isalnum(static_cast<unsigned char>(source[from - 1]));
    if ((quote != '"' && quote != '\'') || separates) return from;
    std::size_t at = from + 1;
    while (at < source.size() && source[at] != quote) at += source[at] == '\\' ? 2 : 1;
    return at + 1;
}

// The literals of a source, without comments and includes.
std::vector<Literal> literalsOf(const std::string& source) {
    std::vector<Literal> literals;
    std::size_t end = std::string::npos;  // of the literal before
    for (std::size_t at = 0; at < source.size();) {
        const std::size_t next = pastToken(source, at);
        if (next > at && source[at] == '"') {
            const std::string text = source.substr(at + 1, next - at - 2);
            const bool goesOn = end != std::string::npos && source.find_first_not_of(" \n", end) == at;
            if (!goesOn) {
                const std::size_t from = at > 80 ? at - 80 : 0;
                literals.push_back({"", isForWords(source.substr(from, at - from))});
            }
            Literal& literal = literals.back();
            literal.text += text;
            literal.words |= literal.text.find(' ') != std::string::npos;
            end = next;
        }
        at = std::max(next, at + 1);
    }
    return literals;
}

// The word that is not to be used; empty: none.
std::string forbiddenIn(const Literal& literal) {
    static const std::regex forbidden(
        R"re(\b(told|stands? off|tail off|(un)?beaten|in hand|wished for|gluings?|cups?|curvature comb|over-runs?)\b)re",
        std::regex::icase);
    std::smatch found;
    return literal.words && std::regex_search(literal.text, found, forbidden) ? found.str() : std::string();
}

TEST(Words, ALiteralIsReadWhole) {
    const auto of = [](const std::string& source) {
        std::string found;
        for (const Literal& literal : literalsOf(source)) found += forbiddenIn(literal) + ";";
        return found;
    };
    EXPECT_EQ(of("tr(\"Cup\")"), "Cup;");
    EXPECT_EQ(of("FAYLINE_TEXT(\"plan\", \"told\")"), ";told;");
    EXPECT_EQ(of("text = \"two \"\n    \"cups\";  // a cup"), "cups;");
    EXPECT_EQ(of("QStringLiteral(\"cup\"); 'x'; QStringLiteral(\"gluing\")"), ";;");  // a key, and an object's name
    EXPECT_EQ(of("tr(\"15 min to spare, each batch\")"), ";");
}

TEST(Words, NoTextUsesAWordThatAnotherHasReplaced) {
    int read = 0;
    for (const char* folder : {"app", "core"}) {
        for (const auto& entry :
             std::filesystem::recursive_directory_iterator(std::filesystem::path(FAYLINE_SOURCE) / folder)) {
            const std::string extension = entry.path().extension().string();
            if (extension != ".cpp" && extension != ".hpp") continue;
            std::ifstream file(entry.path());
            const std::string source{std::istreambuf_iterator<char>(file), {}};
            for (const Literal& literal : literalsOf(source)) {
                read += literal.words;
                const std::string word = forbiddenIn(literal);
                EXPECT_TRUE(word.empty()) << entry.path().string() << ": \"" << word << "\" in " << literal.text;
            }
        }
    }
    EXPECT_GT(read, 1500);
}

}  // namespace words_test
