// The text of a project file as a tree of values, before anything is known about its keys.
//
// Numbers stay the figures that stood in the file: nothing is rounded by way of a double, and what this version does
// not know is written back as it was.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace fayline::model {

struct Member;

struct Value {
    enum class Kind { null, truth, number, text, list, group };

    Kind kind = Kind::null;
    bool truth = false;
    std::string text;             // of a text, in UTF-8; of a number, its figures
    std::vector<Value> items;     // of a list
    std::vector<Member> members;  // of a group (a JSON object), in the order of the file, no key twice

    bool operator==(const Value&) const;  // the order of members counts
};

struct Member {
    std::string key;
    Value value;

    bool operator==(const Member&) const = default;
};

Value truthValue(bool truth);
Value numberValue(std::string figures);
Value textValue(std::string text);
Value listValue();
Value groupValue();

// The value that `text` (JSON in UTF-8) describes.
//
// Throws InputError with an empty path, its line and column (in characters, from 1) and what would be accepted there:
// text that is not JSON, bytes that are not UTF-8, a key given twice in one group, numbers beyond a double, more than
// 100 groups and lists within one another.
Value parseText(std::string_view text);

// The value on one line: {"x_mm": 0, "y_mm": 12.5}.
std::string writeOnOneLine(const Value& value);

// The value over as many lines as a person wants to read, ending with a newline: two-space indent, every member of a
// group on its own line, but short groups of plain values on one line, and every item of a list (a point, a strip, a
// station) on one line where it fits, so that files compare line by line.
std::string writeOverLines(const Value& value);

// Where `text` stops being UTF-8; its size if it does not.
std::size_t endOfUtf8(std::string_view text);

}  // namespace fayline::model
