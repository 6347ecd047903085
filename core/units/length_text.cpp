#include "core/units/length_text.hpp"

#include <array>
#include <cstdint>

#include "core/units/input_error.hpp"

namespace fayline::units {
namespace {

constexpr std::size_t mostBytes = 64;
constexpr const char* acceptedLength = "write a length like 2-3-4+, 27 1/2 in or 698.5 mm";

struct Typographic {
    std::string_view sign;  // UTF-8
    std::string_view plain;
};

// Fractions get a blank before them, so that 3 with the sign for a half after it becomes 3 1/2.
constexpr std::array<Typographic, 40> typographic{{
    {"\u2032", "'"},    {"\u2019", "'"},    {"\u2018", "'"},    {"\u00B4", "'"},    {"\u02B9", "'"},
    {"\u2033", "\""},   {"\u201D", "\""},   {"\u201C", "\""},   {"\u02BA", "\""},   {"\u2212", "-"},
    {"\u2010", "-"},    {"\u2011", "-"},    {"\u2012", "-"},    {"\u2013", "-"},    {"\u2014", "-"},
    {"\u2044", "/"},    {"\u2215", "/"},    {"\u00A0", " "},    {"\u202F", " "},    {"\u2009", " "},
    {"\u2007", " "},    {"\u2002", " "},    {"\u2003", " "},    {"\u200A", " "},    {"\u3000", " "},
    {"\uFEFF", " "},    {"\uFF0B", "+"},    {"\uFF0D", "-"},    {"\u2153", " 1/3"}, {"\u2154", " 2/3"},
    {"\u00BC", " 1/4"}, {"\u00BD", " 1/2"}, {"\u00BE", " 3/4"}, {"\u215B", " 1/8"}, {"\u215C", " 3/8"},
    {"\u215D", " 5/8"}, {"\u215E", " 7/8"}, {"\u2008", " "},    {"\u200B", " "},    {"\u2060", " "},
}};

// How many bytes the UTF-8 sign at the start of `text` takes; 0 if it is not well formed.
std::size_t signLength(std::string_view text) {
    const auto first = static_cast<std::uint8_t>(text[0]);
    std::size_t length = 0;
    if (first < 0x80) {
        length = 1;
    } else if (first >= 0xC2 && first < 0xE0) {
        length = 2;
    } else if (first >= 0xE0 && first < 0xF0) {
        length = 3;
    } else if (first >= 0xF0 && first < 0xF5) {
        length = 4;
    }
    if (length == 0 || length > text.size()) return 0;
    for (std::size_t i = 1; i < length; ++i) {
        if ((static_cast<std::uint8_t>(text[i]) & 0xC0) != 0x80) return 0;
    }
    const auto second = length > 1 ? static_cast<std::uint8_t>(text[1]) : std::uint8_t{0};
    const bool overlong = (first == 0xE0 && second < 0xA0) || (first == 0xF0 && second < 0x90);
    const bool beyond = (first == 0xED && second >= 0xA0) || (first == 0xF4 && second >= 0x90);
    return overlong || beyond ? 0 : length;
}

[[noreturn]] void refuseSign(std::string_view text) {
    const std::size_t length = signLength(text);
    const auto first = static_cast<std::uint8_t>(text[0]);
    if (length == 0 || first < 0x20 || first == 0x7F) {
        constexpr std::string_view hex = "0123456789ABCDEF";
        const std::string shown{hex[first >> 4], hex[first & 15]};
        throw InputError("", "a byte (hexadecimal " + shown + ") that is not text", acceptedLength);
    }
    throw InputError("", "\"" + std::string(text.substr(0, length)) + "\" has no meaning in a length", acceptedLength);
}

std::string plainText(std::string_view text) {
    std::string plain;
    while (!text.empty()) {
        if (static_cast<std::uint8_t>(text[0]) < 0x80) {
            plain += text[0];
            text.remove_prefix(1);
            continue;
        }
        bool known = false;
        for (const auto& [sign, replacement] : typographic) {
            if (!text.starts_with(sign)) continue;
            plain += replacement;
            text.remove_prefix(sign.size());
            known = true;
            break;
        }
        if (!known) refuseSign(text);
    }
    return plain;
}

bool isDigit(char c) {
    return c >= '0' && c <= '9';
}
bool isLetter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}
bool isBlank(char c) {
    return c == ' ' || (c >= '\t' && c <= '\r');
}
bool isDecimalMark(char c) {
    return c == '.' || c == ',';
}

std::size_t digitsFrom(std::string_view text, std::size_t at) {
    while (at < text.size() && isDigit(text[at])) ++at;
    return at;
}

// Bytes of the number at the start of `text`: 12, 12.5, 12,5, .5, 1.2E-3.
std::size_t numberLength(std::string_view text) {
    std::size_t end = digitsFrom(text, 0);
    if (end < text.size() && isDecimalMark(text[end])) end = digitsFrom(text, end + 1);
    if (end < text.size() && isDecimalMark(text[end])) {
        std::size_t all = end;
        while (all < text.size() && (isDigit(text[all]) || isDecimalMark(text[all]))) ++all;
        throw InputError("", std::string(text.substr(0, all)) + " has more than one decimal mark",
                         "write thousands without a mark between them, like 1250.5");
    }
    if (end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
        std::size_t exponent = end + 1;
        if (exponent < text.size() && (text[exponent] == '-' || text[exponent] == '+')) ++exponent;
        const std::size_t after = digitsFrom(text, exponent);
        if (after > exponent) end = after;
    }
    return end;
}

Token wordToken(std::string_view text) {
    std::string word;
    for (const char c : text) {
        if (!isLetter(c)) break;
        word += c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    }
    return {TokenKind::word, word};
}

Token nextToken(std::string_view text) {
    const char c = text[0];
    if (isDigit(c) || (isDecimalMark(c) && text.size() > 1 && isDigit(text[1]))) {
        return {TokenKind::number, std::string(text.substr(0, numberLength(text)))};
    }
    if (text.starts_with("''")) return {TokenKind::inchMark, "''"};
    if (c == '\'') return {TokenKind::footMark, "'"};
    if (c == '"') return {TokenKind::inchMark, "\""};
    if (c == '/') return {TokenKind::slash, "/"};
    if (c == '-') return {TokenKind::dash, "-"};
    if (c == '+') return {TokenKind::plus, "+"};
    if (isLetter(c)) return wordToken(text);
    refuseSign(text);
}

}  // namespace

std::vector<Token> lengthTokens(std::string_view text) {
    if (text.size() > mostBytes) throw InputError("", "a text of more than 64 characters", acceptedLength);
    const std::string plain = plainText(text);
    std::string_view rest = plain;
    std::vector<Token> tokens;
    while (!rest.empty()) {
        if (isBlank(rest[0])) {
            rest.remove_prefix(1);
            continue;
        }
        tokens.push_back(nextToken(rest));
        const Token& token = tokens.back();
        rest.remove_prefix(token.text.size());
        // "in." and "ft." end in a point that says nothing.
        if (token.is(TokenKind::word) && rest.starts_with('.')) rest.remove_prefix(1);
    }
    if (tokens.empty()) throw InputError("", "nothing is written", acceptedLength);
    return tokens;
}

}  // namespace fayline::units
