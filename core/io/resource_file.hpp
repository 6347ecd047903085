// Reading a table of resources/: JSON in which every value has a mark and names its source.
//
//     {"sources": {"key": "text"}, "...": [{"value": 12, "mark": "M", "source": "key", "note": "..."}]}
#pragma once

#include <nlohmann/json.hpp>
#include <set>
#include <string>
#include <string_view>

#include "core/units/source.hpp"

namespace fayline::io {

// The whole of such a file, with its sources. All of these throw InputError with the path of the place at fault.
class ResourceFile {
public:
    using Json = nlohmann::ordered_json;

    // `whatFile`: "a species file".
    ResourceFile(std::string_view text, const std::string& whatFile);

    const Json& listAt(const char* key, const char* whatItems) const;

    // The source of a value {"value", "mark", "source", "note"} and that it has no other key than these and `more`.
    units::Source sourceOf(const Json& value, const std::string& path, const std::set<std::string>& more = {}) const;

    static const std::string& textAt(const Json& object, const char* key, const std::string& path);
    static bool truthAt(const Json& object, const char* key, bool absent, const std::string& path);
    static void refuseUnknownKeys(const Json& object, const std::set<std::string>& known, const std::string& path);

private:
    Json file_;
};

}  // namespace fayline::io
