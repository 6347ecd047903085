#include "core/io/offsets_table.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <regex>

#include "core/model/offsets.hpp"

namespace fayline::io {

namespace {

using units::LengthNotation;

enum class Separator { tab, semicolon, comma, blanks };
constexpr std::size_t longestCell = 64;  // of a length, or of a name that says anything
constexpr std::array separators{Separator::tab, Separator::semicolon, Separator::comma, Separator::blanks};

bool isBlank(char c) {
    return c == ' ' || (c >= '\t' && c <= '\r');
}

std::string_view trimmed(std::string_view text) {
    while (!text.empty() && isBlank(text.front())) text.remove_prefix(1);
    while (!text.empty() && isBlank(text.back())) text.remove_suffix(1);
    return text;
}

std::string lower(std::string_view text) {
    std::string low(text);
    for (char& c : low) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return low;
}

bool hasFigure(std::string_view text) {
    return std::ranges::any_of(text, [](char c) { return c >= '0' && c <= '9'; });
}

// Figures, or the signs of fractions.
bool mayBeLength(std::string_view text) {
    return std::ranges::any_of(text,
                               [](char c) { return (c >= '0' && c <= '9') || static_cast<unsigned char>(c) >= 0x80; });
}

struct Line {
    int number = 0;  // from 1
    std::string_view text;
};

// Lines that hold something.
std::vector<Line> linesOf(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    std::vector<Line> lines;
    for (int number = 1; !text.empty(); ++number) {
        const std::size_t end = std::min(text.find_first_of("\r\n"), text.size());
        const std::string_view line = text.substr(0, end);
        text.remove_prefix(std::min(end + (text.substr(end).starts_with("\r\n") ? 2 : 1), text.size()));
        const std::string_view held = trimmed(line);
        if (!held.empty() && !held.starts_with('#')) lines.push_back({number, line});
    }
    return lines;
}

std::vector<std::string> splitAt(std::string_view line, char separator) {
    std::vector<std::string> fields;
    std::string field;
    bool quoted = false;
    bool wasQuoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char c = line[i];
        // An inch mark stands after a figure, so only a quote that opens a field quotes it.
        if (c == '"' && !quoted && !wasQuoted && trimmed(field).empty()) {
            quoted = true;
            field.clear();
        } else if (c == '"' && quoted) {
            const bool doubled = i + 1 < line.size() && line[i + 1] == '"';
            if (doubled) field += line[i++];
            quoted = doubled;
            wasQuoted = !doubled;
        } else if (c == separator && !quoted) {
            fields.emplace_back(trimmed(field));
            field.clear();
            wasQuoted = false;
        } else {
            field += c;
        }
    }
    fields.emplace_back(trimmed(field));
    return fields;
}

// Fields with two blanks or a tab between them. Single blanks also stand within a length (27 1/2, 2' 3") and within a
// name: where there are no others and nothing of that kind, the last two words are the coordinates.
std::vector<std::string> splitAtBlanks(std::string_view line) {
    line = trimmed(line);
    std::vector<std::string> words;
    std::vector<std::string> fields;
    for (std::size_t from = 0; from < line.size();) {
        const std::size_t end = std::min(line.find_first_of(" \t", from), line.size());
        const std::size_t next = std::min(line.find_first_not_of(" \t", end), line.size());
        const std::string word(line.substr(from, end - from));
        words.push_back(word);
        if (fields.empty() || from == 0) {
            fields.assign(1, word);
        } else {
            const bool wide = line[from - 1] == '\t' || (from > 1 && isBlank(line[from - 2]));
            wide ? fields.push_back(word) : void(fields.back() += " " + word);
        }
        from = next;
    }
    if (fields.size() > 1 || words.size() < 2 || line.find_first_of("/'\"") != std::string_view::npos) return fields;
    const std::string up = words.back();
    const std::string along = words[words.size() - 2];
    if (words.size() == 2) return {along, up};
    std::string name = words.front();
    for (std::size_t i = 1; i + 2 < words.size(); ++i) name += " " + words[i];
    return {name, along, up};
}

std::vector<std::string> fieldsOf(std::string_view line, Separator separator) {
    switch (separator) {
        case Separator::tab:
            return splitAt(line, '\t');
        case Separator::semicolon:
            return splitAt(line, ';');
        case Separator::comma:
            return splitAt(line, ',');
        case Separator::blanks:
            break;
    }
    return splitAtBlanks(line);
}

std::optional<double> lengthOf(const std::string& text, LengthNotation notation) {
    if (text.size() > longestCell || !mayBeLength(text)) return std::nullopt;  // sooner than by an error
    try {
        return units::readLength(text, notation);
    } catch (const units::InputError&) {
        return std::nullopt;
    }
}

// "2 3 4", "2.3.4" and "2:3:4" as "2-3-4"; empty: it is no such thing.
std::string asFeetInchesEighths(const std::string& cell) {
    static const std::regex form(R"((-?\d+)\s*[ .:]\s*(\d+)\s*[ .:]\s*(\d+)\s*([+-]?))");
    std::smatch found;
    const auto marks = std::ranges::count_if(cell, [](char c) { return c == ' ' || c == '.' || c == ':'; });
    if (marks < 2 || cell.size() > longestCell || !std::regex_match(cell, found, form)) return {};
    return found.str(1) + "-" + found.str(2) + "-" + found.str(3) + found.str(4);
}

bool isLength(const std::string& cell) {
    return lengthOf(cell, LengthNotation::millimetres) ||
           lengthOf(asFeetInchesEighths(cell), LengthNotation::feetInchesEighths);
}

// Whether what the number means depends on the unit that is assumed.
bool isBare(const std::string& cell) {
    const auto one = lengthOf(cell, LengthNotation::millimetres);
    return one && *one != lengthOf(cell, LengthNotation::inches);
}

const char* unitText(TableUnit unit) {
    switch (unit) {
        case TableUnit::millimetres:
            return "mm";
        case TableUnit::centimetres:
            return "cm";
        case TableUnit::metres:
            return "m";
        case TableUnit::feetInchesEighths:
        case TableUnit::inches:
            return "in";
        case TableUnit::feet:
            return "ft";
        case TableUnit::asWritten:
            break;
    }
    return "";
}

// The name of a column and the unit that stands behind it.
std::pair<std::string, std::string> nameAndUnit(const std::string& header) {
    static const std::regex form(R"(^(.*?)(?:[ _]+|\s*[\(\[]\s*)(mm|cm|m|in|inch|inches|ft|feet)\s*[\)\]]?$)");
    const std::string low = lower(header);
    std::smatch found;
    if (low.size() > longestCell || !std::regex_match(low, found, form)) return {low, ""};
    const std::string unit = found.str(2);
    return {found.str(1), unit.starts_with("in") ? "in" : unit == "feet" ? "ft" : unit};
}

// The column of one of these names, the first of them before the others and bare before one with a unit; -1: none.
int columnNamed(const OffsetsTable& table, std::initializer_list<const char*> names) {
    for (const char* name : names) {
        int withUnit = -1;
        for (int i = 0; i < std::ssize(table.header); ++i) {
            if (nameAndUnit(table.header[i]).first != name) continue;
            if (table.headerUnits[i].empty()) return i;
            if (withUnit < 0) withUnit = i;
        }
        if (withUnit >= 0) return withUnit;
    }
    return -1;
}

std::vector<ColumnUse> proposedUses(const OffsetsTable& table) {
    const auto count = static_cast<int>(table.header.size());
    std::vector<ColumnUse> uses(count, ColumnUse::leftOut);
    const int along = columnNamed(table, {"x", "along"});
    const int up = columnNamed(table, {"y", "up", "out", "height", "half-breadth", "half breadth"});
    if (along >= 0 && up >= 0) {
        const int name = columnNamed(table, {"label", "name", "point", "mark", "station"});
        if (name >= 0) uses[name] = ColumnUse::name;
        uses[along] = ColumnUse::along;
        uses[up] = ColumnUse::up;
        return uses;
    }
    if (count == 2) return {ColumnUse::along, ColumnUse::up};
    if (count == 3) return {ColumnUse::name, ColumnUse::along, ColumnUse::up};
    std::vector<int> lengths;
    std::vector<int> words;
    for (int i = 0; i < count; ++i) {
        const bool all = std::ranges::all_of(table.rows, [i](const auto& row) { return isLength(row.cells[i]); });
        const bool none = std::ranges::none_of(table.rows, [i](const auto& row) { return isLength(row.cells[i]); });
        if (all) lengths.push_back(i);
        if (none) words.push_back(i);
    }
    if (lengths.size() != 2 || table.rows.empty()) return uses;
    uses[lengths[0]] = ColumnUse::along;
    uses[lengths[1]] = ColumnUse::up;
    if (!words.empty() && words.front() < lengths[0]) uses[words.front()] = ColumnUse::name;
    return uses;
}

// A line of words before the figures: no length, and a figure only in a title that stands alone.
bool isHeading(const std::vector<std::string>& cells) {
    const auto held = std::ranges::count_if(cells, [](const auto& cell) { return !cell.empty(); });
    return std::ranges::none_of(cells,
                                [&](const auto& cell) { return isLength(cell) || (held > 1 && hasFigure(cell)); });
}

OffsetsTable tableWith(const std::vector<Line>& lines, Separator separator) {
    OffsetsTable table;
    for (const Line& line : lines) {
        OffsetsRow row{line.number, fieldsOf(line.text, separator)};
        if (std::ranges::any_of(row.cells, [](const auto& cell) { return !cell.empty(); }))
            table.rows.push_back(std::move(row));
    }
    const auto first = std::ranges::find_if(table.rows, [](const auto& row) { return !isHeading(row.cells); });
    const bool figures = std::any_of(first, table.rows.end(),
                                     [](const OffsetsRow& row) { return std::ranges::any_of(row.cells, isLength); });
    if (figures && first != table.rows.begin()) {
        table.header = (first - 1)->cells;
        if (table.header.size() == 1) table.header.clear();  // a title
        table.rows.erase(table.rows.begin(), first);
    }
    // Spreadsheets fill short rows up, beyond what any row holds.
    std::size_t columns = 0;
    const auto held = [](const std::vector<std::string>& cells) {
        std::size_t count = cells.size();
        while (count > 0 && cells[count - 1].empty()) --count;
        return count;
    };
    for (const OffsetsRow& row : table.rows) columns = std::max(columns, held(row.cells));
    columns = std::max(columns, held(table.header));
    for (OffsetsRow& row : table.rows) row.cells.resize(columns);
    table.header.resize(columns);
    for (const std::string& name : table.header) table.headerUnits.push_back(nameAndUnit(name).second);
    table.uses = proposedUses(table);
    return table;
}

// How many rows are points as it is proposed, in whatever unit.
int understood(const OffsetsTable& table) {
    const auto along = std::ranges::find(table.uses, ColumnUse::along) - table.uses.begin();
    const auto up = std::ranges::find(table.uses, ColumnUse::up) - table.uses.begin();
    if (std::max(along, up) >= std::ssize(table.uses)) return 0;
    return static_cast<int>(std::ranges::count_if(
        table.rows, [&](const OffsetsRow& row) { return isLength(row.cells[along]) && isLength(row.cells[up]); }));
}

// The text of a coordinate that the boat's notation takes for the same length, and that length.
std::pair<std::string, double> coordinate(const std::string& cell, const std::string& headerUnit, TableUnit unit,
                                          LengthNotation notation) {
    if (cell.empty()) throw units::InputError("", "the cell is empty", "give a length such as 2-3-4+ or 698.5 mm");
    if (unit == TableUnit::feetInchesEighths) {
        const std::string joined = asFeetInchesEighths(cell);
        if (!joined.empty()) return {joined, units::readLength(joined, notation)};
    }
    const std::string behind = headerUnit.empty() ? unitText(unit) : headerUnit;
    if (!behind.empty() && isBare(cell)) {
        const std::string whole = cell + " " + behind;
        const double length_m = units::readLength(whole, notation);
        return {lengthOf(cell, notation) == length_m ? cell : whole, length_m};
    }
    return {cell, units::readLength(cell, notation)};
}

int columnOf(const std::vector<ColumnUse>& uses, ColumnUse use) {
    const auto found = std::ranges::find(uses, use);
    return found == uses.end() ? -1 : static_cast<int>(found - uses.begin());
}

}  // namespace

OffsetsTable readTable(std::string_view text) {
    if (text.size() > longestTable)
        throw units::InputError("", "this is too long for a table of offsets", "take the columns of one piece");
    const std::vector<Line> lines = linesOf(text);
    if (lines.empty()) return {};
    // The beginning tells the separator.
    const std::vector<Line> some(lines.begin(), lines.begin() + std::min<std::ptrdiff_t>(200, std::ssize(lines)));
    Separator best = Separator::tab;
    int most = -1;
    for (const Separator separator : separators) {
        const OffsetsTable table = tableWith(some, separator);
        // Where nothing is read as points, the first separator that is there.
        const int points = 2 * understood(table) + (table.header.size() > 1 ? 1 : 0);
        if (points <= most) continue;
        most = points;
        best = separator;
    }
    return tableWith(lines, best);
}

OffsetsRead readPoints(const OffsetsTable& table, const std::vector<ColumnUse>& uses, TableUnit unit,
                       LengthNotation notation) {
    OffsetsRead read;
    const int name = columnOf(uses, ColumnUse::name);
    const std::array axes{columnOf(uses, ColumnUse::along), columnOf(uses, ColumnUse::up)};
    if (axes[0] < 0 || axes[1] < 0) return read;
    for (int row = 0; row < std::ssize(table.rows); ++row) {
        const std::vector<std::string>& cells = table.rows[row].cells;
        model::Point point;
        if (name >= 0) point.label = cells[name];
        bool understood = true;
        for (const std::size_t axis : {0, 1}) {
            double& into = axis == 0 ? point.x_m : point.y_m;
            try {
                std::tie(point.written[axis], into) =
                    coordinate(cells[axes[axis]], table.headerUnits[axes[axis]], unit, notation);
            } catch (const units::InputError& error) {
                read.unread.push_back({row, axes[axis], error.wrong() + "; " + error.accepted()});
                understood = false;
            }
        }
        if (understood) read.points.push_back(std::move(point));
    }
    return read;
}

std::vector<UnitReading> unitReadings(const OffsetsTable& table, const std::vector<ColumnUse>& uses,
                                      LengthNotation notation) {
    bool bare = false;
    bool threeNumbers = false;
    for (const ColumnUse use : {ColumnUse::along, ColumnUse::up}) {
        const int column = columnOf(uses, use);
        if (column < 0) continue;
        for (const OffsetsRow& row : table.rows) {
            bare = bare || (isBare(row.cells[column]) && table.headerUnits[column].empty());
            threeNumbers = threeNumbers || !asFeetInchesEighths(row.cells[column]).empty();
        }
    }
    std::vector<TableUnit> wanted;
    using enum TableUnit;
    if (threeNumbers) wanted.push_back(feetInchesEighths);
    if (!threeNumbers && !bare) wanted.push_back(asWritten);
    const bool metric = notation == LengthNotation::millimetres;
    if (bare && metric) wanted.insert(wanted.end(), {millimetres, centimetres, metres, inches, feet});
    if (bare && !metric) wanted.insert(wanted.end(), {inches, feet, millimetres, centimetres, metres});
    std::vector<UnitReading> readings;
    std::size_t most = 0;
    for (const TableUnit unit : wanted) {
        const std::vector<model::Point> points = readPoints(table, uses, unit, notation).points;
        if (points.size() > most) readings.clear();  // beyond any length in that unit
        if (points.size() >= most) readings.push_back({unit, model::lengthThrough(points)});
        most = std::max(most, points.size());
    }
    std::ranges::stable_partition(readings, [&](const UnitReading& reading) {
        return reading.unit == feetInchesEighths ||
               (reading.length_m >= shortestPiece_m && reading.length_m <= longestPiece_m);
    });
    return readings;
}

}  // namespace fayline::io
