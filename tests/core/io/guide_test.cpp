// The user guide's lists of keys are the code's tables of keys, written out.
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "core/io/shed_file.hpp"

namespace fayline::io {

using namespace model;
namespace guide_test {

std::string tableOf(const std::vector<Key>& keys) {
    std::string text =
        "| key | default | accepted |\n"
        "| --- | --- | --- |\n";
    for (const Key& key : keys) {
        text += "| `" + key.path + "` | ";
        text += key.defaultValue.empty() ? "must be given" : "`" + key.defaultValue + "`";
        std::string accepted = key.accepted;
        for (std::size_t at = 0; (at = accepted.find('|', at)) != std::string::npos; at += 2) accepted.insert(at, "\\");
        text += " | " + accepted + " |\n";
    }
    return text;
}

// The page is `head` and the table of `keys`.
void expectPage(const std::string& name, const std::string& head, const std::vector<Key>& keys) {
    std::ifstream file(FAYLINE_RESOURCES "/guide/" + name);
    std::stringstream found;
    found << file.rdbuf();
    const std::string expected = head + tableOf(keys);
    if (found.str() != expected) {
        const std::string aside = testing::TempDir() + name;
        std::ofstream(aside) << expected;
        FAIL() << "resources/guide/" << name << " differs from the table in the code; what it should be lies in "
               << aside;
    }
}

TEST(Guide, ListsEveryKeyWithTheDefaultInForce) {
    expectPage(
        "project_file.md",
        "# The project file, key by key\n"
        "\n"
        "One JSON file a boat, named `*.fayline`. Lengths are numbers in millimetres, other units stand at the end of "
        "the\n"
        "key. A key that is left out has the default given here; `must be given` marks the few that have none. `[]`\n"
        "stands for each member of a list. Keys that are not known are kept and written back. `at_mm` is arc length "
        "along\n"
        "the fair line from its first point.\n"
        "\n",
        fileKeys());
}

TEST(Guide, ListsEveryKeyOfTheShed) {
    expectPage(
        "my_shed.md",
        "# My shed\n"
        "\n"
        "What you have and do in every job, given once for all boats: tools at hand, usual glue and coats, air and "
        "night,\n"
        "crew and rates, boards on hand, units, your own glues, your woods and trials.\n"
        "\n"
        "- New boats and new pieces begin with what the shed has. Those that are there keep what they have.\n"
        "- A line says whether the piece is as in your shed: under the tools in the Holding panel, in *Measuring, "
        "glues of your\n"
        "  own* and *Night, humidity, tent* of the Glue panel, in *How long things take* of the Time panel.\n"
        "  *Use my shed's* changes the piece, in one step to undo; *Keep in my shed* changes the shed.\n"
        "- Your own glues and woods in the shed stand in the lists of every boat. Choose one, and the boat takes a "
        "copy along,\n"
        "  with the trials of a wood of which it has none. So a boat opens alike elsewhere, and a change in the shed "
        "changes\n"
        "  no boat.\n"
        "- *Boat, My shed* lists what is there, takes and gives each part, undoes, imports and exports. An import "
        "takes the\n"
        "  place of the parts that the file has; glues and woods are added.\n"
        "\n"
        "## The file\n"
        "\n"
        "One JSON file, `my_shed.fayline-shed`, in the folder of your data (on Linux "
        "`~/.local/share/fayline/fayline`); "
        "*Boat,\n"
        "My shed* says where. Each change is written at once, aside, then renamed. A file that is damaged is renamed "
        "to\n"
        "`my_shed.damaged-DATE.fayline-shed` and told of; boats open without it. One that a newer Fayline wrote, or "
        "that may\n"
        "not be read, is left as it is, and nothing is kept until that is put right. Keys and units are those of the\n"
        "[project file](project_file.md); a part that is left out, or null, was never given.\n"
        "\n",
        shedKeys());
}

}  // namespace guide_test
}  // namespace fayline::io
