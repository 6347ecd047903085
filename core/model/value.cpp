#include "core/model/value.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

#include "core/model/cut_short.hpp"
#include "core/units/input_error.hpp"

namespace fayline::model {

using units::InputError;

bool Value::operator==(const Value&) const = default;

Value truthValue(bool truth) {
    return {.kind = Value::Kind::truth, .truth = truth};
}

Value numberValue(std::string figures) {
    return {.kind = Value::Kind::number, .text = std::move(figures)};
}

Value textValue(std::string text) {
    return {.kind = Value::Kind::text, .text = std::move(text)};
}

Value listValue() {
    Value value;
    value.kind = Value::Kind::list;
    return value;
}

Value groupValue() {
    Value value;
    value.kind = Value::Kind::group;
    return value;
}

std::size_t endOfUtf8(std::string_view text) {
    std::size_t i = 0;
    while (i < text.size()) {
        const auto byte = [&](std::size_t k) { return static_cast<unsigned char>(text[k]); };
        const unsigned lead = byte(i);
        const std::size_t length = lead < 0x80                    ? 1
                                   : lead >= 0xC2 && lead <= 0xDF ? 2
                                   : lead >= 0xE0 && lead <= 0xEF ? 3
                                   : lead >= 0xF0 && lead <= 0xF4 ? 4
                                                                  : 0;
        if (length == 0 || i + length > text.size()) return i;
        for (std::size_t k = 1; k < length; ++k)
            if ((byte(i + k) & 0xC0) != 0x80) return i;
        // Longer than needed, half of a UTF-16 pair, or beyond the last code point.
        if (lead == 0xE0 && byte(i + 1) < 0xA0) return i;
        if (lead == 0xED && byte(i + 1) > 0x9F) return i;
        if (lead == 0xF0 && byte(i + 1) < 0x90) return i;
        if (lead == 0xF4 && byte(i + 1) > 0x8F) return i;
        i += length;
    }
    return text.size();
}

namespace {

constexpr int mostDeep = 100;

// "line 3, column 12" of the byte at `offset`.
std::string placeIn(std::string_view text, std::size_t offset) {
    const std::string_view before = text.substr(0, std::min(offset, text.size()));
    const auto line = 1 + std::ranges::count(before, '\n');
    const auto lineStart = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
    const std::string_view row = before.substr(lineStart);
    const auto column =
        1 + std::ranges::count_if(row, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });
    return "line " + std::to_string(line) + ", column " + std::to_string(column);
}

std::string shortened(std::string_view text) {
    constexpr std::size_t most = 40;
    std::string result;
    for (const char c : text.substr(0, most)) result += static_cast<unsigned char>(c) < 0x20 ? ' ' : c;
    result.resize(endOfUtf8(result));
    return text.size() > most ? result + "..." : result;
}

// Builds the tree from what the library's parser meets.
class TreeBuilder {
public:
    using number_integer_t = nlohmann::json::number_integer_t;
    using number_unsigned_t = nlohmann::json::number_unsigned_t;
    using number_float_t = nlohmann::json::number_float_t;
    using string_t = nlohmann::json::string_t;
    using binary_t = nlohmann::json::binary_t;

    explicit TreeBuilder(std::string_view text) : text_(text) {}

    Value root() { return std::move(root_); }

    bool null() { return add({}); }
    bool boolean(bool truth) { return add(truthValue(truth)); }
    bool number_integer(number_integer_t number) { return add(numberValue(std::to_string(number))); }
    bool number_unsigned(number_unsigned_t number) { return add(numberValue(std::to_string(number))); }
    bool number_float(number_float_t, const string_t& figures) {
        // The parser puts the decimal point of the machine's language in its place.
        string_t plain = figures;
        for (char& c : plain)
            if (std::string_view("0123456789+-eE").find(c) == std::string_view::npos) c = '.';
        return add(numberValue(std::move(plain)));
    }
    bool string(string_t& text) { return add(textValue(std::move(text))); }
    bool binary(binary_t&) { return false; }

    bool start_object(std::size_t) { return open(Value::Kind::group); }
    bool start_array(std::size_t) { return open(Value::Kind::list); }
    bool end_object() { return close(); }
    bool end_array() { return close(); }

    bool key(string_t& key) {
        Level& level = levels_.back();
        if (!level.keys.insert(key).second)
            throw InputError(pathOf(key), "this key is given twice in one group", "give it once");
        level.value.members.push_back({std::move(key), {}});
        keyIsOpen_ = true;
        return true;
    }

    bool parse_error(std::size_t position, const std::string&, const nlohmann::json::exception& error) {
        constexpr int outOfRange = 406;
        explain(position, error.id == outOfRange);
    }

private:
    struct Level {
        Value value;
        std::set<std::string> keys;
    };

    bool add(Value value) {
        keyIsOpen_ = false;
        if (levels_.empty())
            root_ = std::move(value);
        else if (levels_.back().value.kind == Value::Kind::group)
            levels_.back().value.members.back().value = std::move(value);
        else
            levels_.back().value.items.push_back(std::move(value));
        return true;
    }

    bool open(Value::Kind kind) {
        if (levels_.size() >= mostDeep)
            throw InputError("", "more than " + std::to_string(mostDeep) + " groups and lists stand within one another",
                             "give a project file, which needs no more than ten");
        levels_.emplace_back().value.kind = kind;
        keyIsOpen_ = false;
        return true;
    }

    bool close() {
        Value value = std::move(levels_.back().value);
        levels_.pop_back();
        return add(std::move(value));
    }

    // Path of a key of the group that is open.
    std::string pathOf(const std::string& key) const {
        std::string path;
        for (const Level& level : levels_) {
            if (level.value.kind == Value::Kind::list) {
                path += "[" + std::to_string(level.value.items.size()) + "]";
                continue;
            }
            const std::string& step = &level == &levels_.back() ? key : level.value.members.back().key;
            path += (path.empty() ? "" : ".") + shortened(step);
        }
        return path;
    }

    // Says in plain words what stands at the place where the parser gave up and what would be accepted there.
    [[noreturn]] void explain(std::size_t position, bool tooLarge) const {
        const std::size_t start = startOfToken(position);
        const std::string_view token = text_.substr(start, endOfWord(start) - start);
        const std::string place = placeIn(text_, start) + ": ";
        const std::string reported = shortened(token);
        if (tooLarge) throw InputError("", place + reported + " is too large for a number", "give a smaller number");
        if (token.empty()) throw CutShort("", place + "the text ends too early", "give " + expectedBefore(start));
        const bool toTheEnd = start + token.size() >= text_.size();
        if (token[0] == '"' && !isWhole(token) && toTheEnd) throw CutShort("", place + faultOfText(token), quoting);
        if (toTheEnd && isTorn(token)) throw CutShort("", place + "the text ends within " + reported, "give the rest");
        if (token[0] == '"' && !isWhole(token)) throw InputError("", place + faultOfText(token), quoting);
        if (token[0] == '\'') throw InputError("", place + "a text in single quotes stands here", quoting);
        if (token[0] == '/' || token[0] == '#')
            throw InputError("", place + "a comment stands here, which a project file cannot hold",
                             "take it out, or put it as a text under a key of its own");
        if (std::string_view("+-.0123456789").find(token[0]) != std::string_view::npos && !isWhole(token))
            throw InputError("", place + reported + " is not written as a number is here",
                             "write it like 51, 6.35 or -0.5");
        throw InputError("", place + reported + " cannot stand here", "give " + expectedBefore(start));
    }

    static constexpr const char* quoting =
        "write a text between double quotes on one line, with \\\" for a quote and \\\\ for a backslash in it";

    static bool isSpace(char c) { return c == ' ' || c == '\t' || c == '\n' || c == '\r'; }

    // Where the word begins that the parser could not take after reading `position` bytes: the first that is none, else
    // the last one read; the end of the text if the parser wanted more.
    std::size_t startOfToken(std::size_t position) const {
        std::size_t last = text_.size();
        for (std::size_t i = 0; i < text_.size() && i < position;) {
            if (isSpace(text_[i])) {
                ++i;
                continue;
            }
            last = i;
            i = endOfWord(i);
            const std::string_view word = text_.substr(last, i - last);
            if (signs.find(word[0]) == std::string_view::npos && !isWhole(word)) return last;
        }
        const bool wantedMore = position > text_.size();
        return wantedMore ? text_.size() : last;
    }

    // Past the text in quotes, the sign, or the number or word that starts at `start`.
    std::size_t endOfWord(std::size_t start) const {
        if (start >= text_.size()) return start;
        if (text_[start] == '"') {
            std::size_t i = start + 1;
            while (i < text_.size() && text_[i] != '"' && text_[i] != '\n') i += text_[i] == '\\' ? 2 : 1;
            return std::min(i < text_.size() && text_[i] == '"' ? i + 1 : i, text_.size());
        }
        if (signs.find(text_[start]) != std::string_view::npos) return start + 1;
        std::size_t i = start + 1;
        while (i < text_.size() && !isSpace(text_[i]) && text_[i] != '"' &&
               signs.find(text_[i]) == std::string_view::npos)
            ++i;
        return i;
    }

    // Whether a word is a right one, so that only its place is wrong.
    static bool isWhole(std::string_view token) { return nlohmann::json::accept(token); }

    // Whether it is the beginning of a number or of one of the words.
    static bool isTorn(std::string_view token) {
        if (isWhole(token)) return false;
        if (isWhole(std::string(token) + "0")) return true;
        for (const std::string_view word : {"true", "false", "null"})
            if (word.starts_with(token)) return true;
        return false;
    }

    static std::string faultOfText(std::string_view token) {
        const std::string text = "the text " + shortened(token);
        if (token.size() < 2 || token.back() != '"') return text + " is not closed";
        const auto isControl = [](char c) { return static_cast<unsigned char>(c) < 0x20; };
        if (std::ranges::any_of(token, isControl)) return text + " has a tab or control character in it";
        return text + " has a backslash that means nothing";
    }

    std::string expectedBefore(std::size_t start) const {
        std::size_t i = std::min(start, text_.size());
        while (i > 0 && isSpace(text_[i - 1])) --i;
        const bool byteOrderMark = i == 3 && text_.starts_with("\xEF\xBB\xBF");
        if (i == 0 || byteOrderMark) return "a project file, which begins with {";
        if (levels_.empty()) return "nothing more after the last }";
        const bool inGroup = levels_.back().value.kind == Value::Kind::group;
        if (text_[i - 1] == ':') return anyValue;
        if (keyIsOpen_) return "a : after the key";
        if (text_[i - 1] == ',') return inGroup ? "a key in double quotes after the comma" : anyValue;
        if (text_[i - 1] == '{') return "a key in double quotes, or }";
        if (text_[i - 1] == '[') return std::string(anyValue) + ", or ]";
        return inGroup ? "a comma, or }" : "a comma, or ]";
    }

    static constexpr std::string_view signs = "{}[]:,";
    static constexpr const char* anyValue = "a value: a number, a text in double quotes, true, false, null, [ or {";

    std::string_view text_;
    Value root_;
    std::vector<Level> levels_;
    bool keyIsOpen_ = false;
};

}  // namespace

Value parseText(std::string_view text) {
    const std::size_t end = endOfUtf8(text);
    if (end < text.size())
        throw InputError("", placeIn(text, end) + ": a byte that is not UTF-8 stands here",
                         "save the file as UTF-8 text");
    const std::size_t zero = text.find('\0');  // which the parser would take for the end
    if (zero != std::string_view::npos)
        throw InputError("", placeIn(text, zero) + ": a zero byte stands here", "save the file as UTF-8 text");
    TreeBuilder builder(text);
    nlohmann::json::sax_parse(text.begin(), text.end(), &builder);
    return builder.root();
}

}  // namespace fayline::model
