// The file of the user's shed.
#include <gtest/gtest.h>

#include <filesystem>

#include "core/io/shed_file.hpp"
#include "tests/refusal.hpp"
#include "tests/temporary_folder.hpp"

namespace fayline::io {

using namespace model;
namespace shed_test {

Shed full() {
    Shed shed;
    shed.display = UsualUnits{units::inchShop, {}};
    shed.tools = std::vector<Tool>{Tool{.name = "Bar clamp", .most_N = 3000, .count = 7, .opening_m = 0.6}};
    shed.glue.emplace().glue.adhesive = "mine";
    shed.glue->glue.waste = 0.2;
    shed.air.emplace().glue.air_C = 24;
    shed.air->glue.tent.lasts_s = 7200;
    shed.crew.emplace().hands = 3;
    shed.crew->rates.mix_s = 300;
    shed.stock.emplace().boards = {Board{.name = "Oak", .count = 2}};
    shed.adhesives = {OwnAdhesive{.id = "mine", .name = "Mine"}};
    shed.species = {OwnSpecies{.id = "ash_here", .name = "Ash from here"}};
    shed.trials = {Trial{.species = "ash_here"}};
    return shed;
}

TEST(ShedFile, ComesBackAsItWasWritten) {
    const std::string text = writeShed(full());
    EXPECT_EQ(readShed(text), full());
    EXPECT_EQ(writeShed(readShed(text)), text);
    EXPECT_EQ(text.rfind("{\n  \"fayline_shed\": 1,\n", 0), 0U) << text;
}

TEST(ShedFile, AnEmptyOneHasNothing) {
    EXPECT_EQ(writeShed(Shed{}), "{\n  \"fayline_shed\": 1\n}\n");
    const Shed read = readShed("{\"fayline_shed\": 1}");
    for (const ShedPart part : allShedParts()) EXPECT_FALSE(has(read, part)) << int(part);
}

// Given, though as by default: that is another thing than never given.
TEST(ShedFile, APartAsByDefaultIsGiven) {
    Shed shed;
    shed.tools.emplace();
    shed.glue.emplace();
    shed.air.emplace();
    shed.crew.emplace();
    shed.stock.emplace();
    shed.display.emplace();
    EXPECT_EQ(readShed(writeShed(shed)), shed);
}

TEST(ShedFile, KeepsWhatItDoesNotKnow) {
    const std::string text =
        "{\n  \"fayline_shed\": 1,\n  \"air\": {\"air_C\": 21, \"draught\": true},\n  \"radio\": \"on\"\n}\n";
    EXPECT_EQ(writeShed(readShed(text)), text);
}

TEST(ShedFile, TheGlueHasNoAirAndTheAirNoGlue) {
    for (const Key& key : shedKeys()) {
        EXPECT_NE(key.path, "glue.air_C");
        EXPECT_NE(key.path, "air.adhesive");
    }
    EXPECT_EQ(readShed(R"({"fayline_shed": 1, "air": {"air_C": 30}})").air->glue.air_C, 30);
}

TEST(ShedFile, NamesWhatIsWrongAndWhere) {
    const auto refused = [](const std::string& text) -> std::string {
        return made::refusalText([&] { readShed(text); });
    };
    EXPECT_EQ(refused("[]"),
              "a list stands here, not a shed file; give a group in braces that begins with "
              "\"fayline_shed\": 1");
    EXPECT_EQ(refused("{\"fayline\": 1}"),
              "fayline_shed: the number of the format is missing; begin the file with \"fayline_shed\": 1");
    EXPECT_EQ(refused(R"({"fayline_shed": 1, "tools": [{"most_N": -1}]})"),
              "tools[0].most_N: -1 is not a force; give a number above 0");
    EXPECT_EQ(refused(R"({"fayline_shed": 1, "adhesives": [{"id": "a"}, {"id": "a"}]})"),
              "adhesives[1].id: \"a\" is the id of adhesives[0] too; give each an id of its own");
}

TEST(ShedFile, ANewerOneIsNoDamage) {
    EXPECT_THROW(readShed("{\"fayline_shed\": 2}"), NewerFormat);
    try {
        readShed("{\"fayline_shed\": 0}");
        FAIL() << "format 0 was read";
    } catch (const NewerFormat&) {
        FAIL() << "format 0 is none";
    } catch (const units::InputError&) {
    }
}

TEST(ShedFile, IsWrittenAndReadOnTheDisk) {
    const made::TemporaryFolder folder;
    const std::filesystem::path path = folder.file("my_shed.fayline-shed");
    EXPECT_EQ(loadText(path, "a shed file"), std::nullopt);
    saveShed(full(), path);
    EXPECT_EQ(readShed(loadText(path, "a shed file").value()), full());
}

// A value that no file may have leaves the one that is there as it was.
TEST(ShedFile, IsNotReplacedByOneThatCouldNotBeRead) {
    const made::TemporaryFolder folder;
    const std::filesystem::path path = folder.file("my_shed.fayline-shed");
    saveShed(full(), path);
    Shed wrong = full();
    wrong.tools->front().most_N = -1;
    EXPECT_THROW(saveShed(wrong, path), units::InputError);
    EXPECT_EQ(readShed(loadText(path, "a shed file").value()), full());
}

}  // namespace shed_test
}  // namespace fayline::io
