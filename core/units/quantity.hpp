// A number with its unit as hands type it, for the functions that read one kind of quantity.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace fayline::units {

struct NamedUnit {
    std::string_view name;  // in lower case
    double si;
};

// The text with its number as the program reads it: a decimal point, no grouping. A comma with one to three digits
// before it (not 0) and three behind it might be either, as in lengths (length.hpp): InputError with an empty path, and
// both that it may mean. With a point behind ("1,200.5"), or more than one comma ("1,200,000"), commas group thousands;
// any other comma is a decimal one ("0,125", "12,5").
std::string withoutCommas(std::string_view text);

// A number, then a unit of `units` or nothing: then `bare` holds. Commas as withoutCommas reads them; upper and lower
// case are one. Nothing where the text is no such thing.
std::optional<double> readQuantity(std::string_view text, std::span<const NamedUnit> units, double bare);

// The text without blanks about it, in quotation marks, as errors name it.
std::string quoted(std::string_view text);

// The same without the quotation marks.
std::string_view trimmed(std::string_view text);

}  // namespace fayline::units
