#include "core/io/resource_file.hpp"

#include "core/units/input_error.hpp"

namespace fayline::io {

ResourceFile::ResourceFile(std::string_view text, const std::string& whatFile) {
    try {
        file_ = Json::parse(text);
    } catch (const Json::parse_error& error) {
        throw units::InputError("", "the text is not JSON at byte " + std::to_string(error.byte), "give " + whatFile);
    }
    if (!file_.is_object()) throw units::InputError("", "the file holds no object", "give " + whatFile);
}

const ResourceFile::Json& ResourceFile::listAt(const char* key, const char* whatItems) const {
    const auto found = file_.find(key);
    if (found == file_.end() || !found->is_array()) {
        throw units::InputError(key, "is missing or not a list", std::string("give a list of ") + whatItems);
    }
    return *found;
}

units::Source ResourceFile::sourceOf(const Json& value, const std::string& path,
                                     const std::set<std::string>& more) const {
    if (!value.is_object()) {
        throw units::InputError(path, value.dump() + " has no source", "give {\"value\", \"mark\", \"source\"}");
    }
    std::set<std::string> known{"value", "mark", "source", "note"};
    known.insert(more.begin(), more.end());
    refuseUnknownKeys(value, known, path);
    const std::string& key = textAt(value, "source", path);
    const auto sources = file_.find("sources");
    if (sources == file_.end() || !sources->is_object() || !sources->contains(key)) {
        throw units::InputError(path + ".source", "\"" + key + "\" is not among the sources",
                                "name it under \"sources\"");
    }
    const std::string text = textAt(*sources, key.c_str(), "sources");
    units::Source source;
    source.text = value.contains("note") ? text + "; " + textAt(value, "note", path) : text;
    const std::string& mark = textAt(value, "mark", path);
    try {
        source.mark = units::readMark(mark);
    } catch (const units::InputError& error) {
        throw error.within(path + ".mark");
    }
    return source;
}

const std::string& ResourceFile::textAt(const Json& object, const char* key, const std::string& path) {
    const auto found = object.find(key);
    const std::string full = path + "." + key;
    if (found == object.end()) throw units::InputError(full, "is missing", "give a text");
    if (!found->is_string()) throw units::InputError(full, found->dump() + " is not a text", "give a text in quotes");
    return found->get_ref<const std::string&>();
}

bool ResourceFile::truthAt(const Json& object, const char* key, bool absent, const std::string& path) {
    const auto found = object.find(key);
    if (found == object.end()) return absent;
    if (!found->is_boolean()) {
        throw units::InputError(path + "." + key, found->dump() + " is not a yes or no", "give true or false");
    }
    return found->get<bool>();
}

void ResourceFile::refuseUnknownKeys(const Json& object, const std::set<std::string>& known, const std::string& path) {
    std::string list;
    for (const std::string& key : known) list += (list.empty() ? "" : ", ") + key;
    for (const auto& [key, value] : object.items()) {
        if (!known.contains(key))
            throw units::InputError(path + "." + key, "is not a known key", "give one of " + list);
    }
}

}  // namespace fayline::io
