// The rows of a table in this folder, by the names of its columns.
#pragma once

#include <fstream>
#include <map>
#include <string>
#include <vector>

namespace fayline::published {

using Row = std::map<std::string, std::string>;

// A line of fields parted by commas; a field in quotation marks may have commas itself.
inline std::vector<std::string> fieldsOf(const std::string& line) {
    std::vector<std::string> fields(1);
    bool quoted = false;
    for (const char c : line) {
        if (c == '"') {
            quoted = !quoted;
        } else if (c == ',' && !quoted) {
            fields.emplace_back();
        } else {
            fields.back() += c;
        }
    }
    return fields;
}

// All rows of `name` below its line of columns, in order; lines that begin with # are its sources.
inline std::vector<Row> rowsOf(const std::string& name) {
    std::ifstream file(std::string(FAYLINE_PUBLISHED) + "/" + name);
    std::vector<std::string> columns;
    std::vector<Row> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.starts_with('#') || line.empty()) continue;
        const std::vector<std::string> fields = fieldsOf(line);
        if (columns.empty()) {
            columns = fields;
            continue;
        }
        Row row;
        for (std::size_t i = 0; i < columns.size(); ++i) row[columns[i]] = fields.at(i);
        rows.push_back(row);
    }
    return rows;
}

inline double number(const Row& row, const std::string& column) {
    return std::stod(row.at(column));
}

}  // namespace fayline::published
