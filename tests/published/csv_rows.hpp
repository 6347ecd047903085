// The rows of a table in this folder, by the names of its columns.
#pragma once

#include <fstream>
#include <map>
#include <stdexcept>
#include <string>
#include <vector>

namespace fayline::published {

using Row = std::map<std::string, std::string>;

// A line of fields parted by commas or another sign; a field in quotation marks may have that sign itself.
inline std::vector<std::string> fieldsOf(const std::string& line, char separator = ',') {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == separator && !quoted) {
            fields.emplace_back();
        } else {
            fields.back() += c;
        }
    }
    return fields;
}

// The fields of each line of `name`, that of the columns first; lines that begin with # are its sources.
inline std::vector<std::vector<std::string>> linesOf(const std::string& name) {
    std::ifstream file(std::string(FAYLINE_PUBLISHED) + "/" + name);
    std::vector<std::vector<std::string>> lines;
    for (std::string line; std::getline(file, line);) {
        if (!line.starts_with('#') && !line.empty()) lines.push_back(fieldsOf(line));
    }
    if (lines.empty()) throw std::runtime_error("no lines in " + name);
    return lines;
}

// All rows of `name` below its line of columns, in order.
inline std::vector<Row> rowsOf(const std::string& name) {
    const std::vector<std::vector<std::string>> lines = linesOf(name);
    std::vector<Row> rows(lines.size() - 1);
    for (std::size_t i = 0; i < rows.size(); ++i) {
        for (std::size_t k = 0; k < lines[0].size(); ++k) rows[i][lines[0][k]] = lines[i + 1].at(k);
    }
    return rows;
}

inline double number(const Row& row, const std::string& column) {
    return std::stod(row.at(column));
}

}  // namespace fayline::published
