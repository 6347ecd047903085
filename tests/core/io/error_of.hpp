// The error that reading a text gives, for tests.
#pragma once

#include <string>
#include <string_view>

#include "core/io/file.hpp"
#include "tests/refusal.hpp"

namespace fayline::io {

using namespace model;

// What the user is told; "nothing" if the text was read.
inline std::string errorOf(std::string_view text) {
    return made::refusalText([&] { readBoat(text); });
}

// A file with one piece of three points, and `more` among the piece's keys.
inline std::string pieceWith(const std::string& more) {
    return R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points": [{"x_mm": 0, "y_mm": 0}, )"
           R"({"x_mm": 500, "y_mm": 60}, {"x_mm": 1000, "y_mm": 0}]}, )" +
           more + "}]}";
}

inline std::string stackWith(const std::string& keys) {
    return pieceWith("\"stack\": {" + keys + "}");
}
inline std::string stripWith(const std::string& keys) {
    return stackWith("\"strips\": [{" + keys + "}]");
}

// A file with one piece whose line has these points.
inline std::string pointsAre(const std::string& points, const std::string& before = "") {
    return "{\"fayline\": 1, " + before + "\"pieces\": [{\"name\": \"Stem\", \"line\": {\"points\": [" + points +
           "]}}]}";
}

}  // namespace fayline::io
