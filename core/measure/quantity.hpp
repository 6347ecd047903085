// A number with its unit as hands type it, for the functions that read one kind of quantity.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace fayline::measure {

struct NamedUnit {
    std::string_view name;  // in lower case
    double si;
};

// A number, then a unit of `units` or nothing: then `bare` holds. A decimal comma is read like a point; upper and lower
// case are one. Nothing where the text is no such thing.
std::optional<double> readQuantity(std::string_view text, std::span<const NamedUnit> units, double bare);

// The text without blanks about it, in quotation marks, as errors name it.
std::string quoted(std::string_view text);

// The same without the quotation marks.
std::string_view trimmed(std::string_view text);

}  // namespace fayline::measure
