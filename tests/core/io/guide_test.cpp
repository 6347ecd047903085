// The user guide's list of keys is the code's one table of keys, written out.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/io/file.hpp"

namespace fayline::io {

using namespace model;
namespace {

std::string guideText() {
    std::string text =
        "# The project file, key by key\n"
        "\n"
        "One JSON file a boat, named `*.fayline`. Lengths are numbers in millimetres, other units stand at the end of "
        "the\n"
        "key. A key that is left out has the default given here; `must be given` marks the few that have none. `[]`\n"
        "stands for each member of a list. Keys that are not known are kept and written back. `at_mm` is arc length "
        "along\n"
        "the fair line from its first point.\n"
        "\n"
        "| key | default | accepted |\n"
        "| --- | --- | --- |\n";
    for (const Key& key : fileKeys()) {
        text += "| `" + key.path + "` | ";
        text += key.defaultValue.empty() ? "must be given" : "`" + key.defaultValue + "`";
        std::string accepted = key.accepted;
        for (std::size_t at = 0; (at = accepted.find('|', at)) != std::string::npos; at += 2) accepted.insert(at, "\\");
        text += " | " + accepted + " |\n";
    }
    return text;
}

TEST(Guide, ListsEveryKeyWithTheDefaultInForce) {
    std::ifstream file(FAYLINE_RESOURCES "/guide/project_file.md");
    std::stringstream found;
    found << file.rdbuf();
    const std::string expected = guideText();
    if (found.str() != expected) {
        const std::string aside = testing::TempDir() + "project_file.md";
        std::ofstream(aside) << expected;
        FAIL() << "resources/guide/project_file.md differs from the table in the code; what it should be lies in "
               << aside;
    }
}

}  // namespace
}  // namespace fayline::io
