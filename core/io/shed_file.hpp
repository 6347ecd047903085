// The file of the user's shed: read and written as project files are (file.hpp), with keys of the same names.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/io/file.hpp"
#include "core/model/shed.hpp"

namespace fayline::io {

class NewerFormat : public units::InputError {
    using InputError::InputError;
};

// The shed that the text of a shed file describes. Throws InputError with its path as readBoat does; and NewerFormat
// for one that a newer program wrote, which is no damage.
model::Shed readShed(std::string_view text);

// Its text, in the form and with the promises of writeBoat.
std::string writeShed(const model::Shed& shed);

// The text of the file at `path`, which is `whatFile`, "a shed file"; nullopt: there is none. Throws InputError with an
// empty path for one that is there and cannot be read.
std::optional<std::string> loadText(const std::filesystem::path& path, const std::string& whatFile);

// Writes the file whole or not at all, as saveBoat does, and throws as that does.
void saveShed(const model::Shed& shed, const std::filesystem::path& path);

// Every key of the shed file in its order.
std::vector<Key> shedKeys();

}  // namespace fayline::io
