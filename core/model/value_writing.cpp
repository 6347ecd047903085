// How a tree of values is laid out as text.
#include <algorithm>

#include "core/model/value.hpp"
#include "core/units/input_error.hpp"

namespace fayline::model {

namespace {

std::string quoted(const std::string& text) {
    if (endOfUtf8(text) < text.size())
        throw units::InputError("", "a text holds bytes that are not UTF-8", "give text in UTF-8");
    std::string result = "\"";
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        constexpr char hex[] = "0123456789abcdef";
        if (c == '"' || c == '\\')
            result += std::string("\\") + c;
        else if (c == '\n')
            result += "\\n";
        else if (c == '\t')
            result += "\\t";
        else if (byte < 0x20)
            result += std::string("\\u00") + hex[byte >> 4] + hex[byte & 15];
        else
            result += c;
    }
    return result + "\"";
}

// Groups and lists of groups within one another: 0 for plain values and lists of them.
int depth(const Value& value) {
    int most = 0;
    for (const Member& member : value.members) most = std::max(most, depth(member.value));
    for (const Value& item : value.items) most = std::max(most, depth(item));
    const bool counts = value.kind == Value::Kind::group || most > 0;
    return most + (counts ? 1 : 0);
}

class Lines {
public:
    std::string text;

    void add(const Value& value, int indent, bool isItem) {
        const std::string line = writeOnOneLine(value);
        if (fits(value, line, indent, isItem)) {
            text += line;
            return;
        }
        const bool isGroup = value.kind == Value::Kind::group;
        text += isGroup ? "{\n" : "[\n";
        for (std::size_t i = 0; i < value.members.size(); ++i) {
            text += std::string(indent + 2, ' ') + quoted(value.members[i].key) + ": ";
            add(value.members[i].value, indent + 2, false);
            text += i + 1 < value.members.size() ? ",\n" : "\n";
        }
        for (std::size_t i = 0; i < value.items.size(); ++i) {
            text += std::string(indent + 2, ' ');
            add(value.items[i], indent + 2, true);
            text += i + 1 < value.items.size() ? ",\n" : "\n";
        }
        text += std::string(indent, ' ') + (isGroup ? "}" : "]");
    }

private:
    static bool fits(const Value& value, const std::string& line, int indent, bool isItem) {
        if (value.members.empty() && value.items.empty()) return true;
        if (indent == 0) return false;
        const std::size_t width = line.size() + indent;
        const int deep = depth(value);
        // A station with all that can be said of it is about 220 long; what is longer reads better key by key.
        if (isItem) return (deep <= 2 && width <= 240) || (deep <= 3 && width <= 180);
        return deep <= 1 && (value.kind == Value::Kind::group || deep == 0) && width <= 100;
    }
};

}  // namespace

std::string writeOnOneLine(const Value& value) {
    switch (value.kind) {
        case Value::Kind::null:
            return "null";
        case Value::Kind::truth:
            return value.truth ? "true" : "false";
        case Value::Kind::number:
            return value.text;
        case Value::Kind::text:
            return quoted(value.text);
        default:
            break;
    }
    const bool isGroup = value.kind == Value::Kind::group;
    std::string text = isGroup ? "{" : "[";
    for (const Member& member : value.members) {
        if (text.size() > 1) text += ", ";
        text += quoted(member.key) + ": " + writeOnOneLine(member.value);
    }
    for (const Value& item : value.items) {
        if (text.size() > 1) text += ", ";
        text += writeOnOneLine(item);
    }
    return text + (isGroup ? "}" : "]");
}

std::string writeOverLines(const Value& value) {
    Lines lines;
    lines.add(value, 0, false);
    return lines.text + "\n";
}

}  // namespace fayline::model
