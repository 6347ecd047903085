// Each piece has an id that outlives its place and its name.
#include <gtest/gtest.h>

#include "core/io/file.hpp"
#include "tests/core/io/error_of.hpp"

namespace fayline::io {

using namespace model;
namespace identity_test {

std::string piece(const std::string& id) {
    return "{" + (id.empty() ? "" : "\"id\": \"" + id + "\", ") +
           R"("name": "Stem", "line": {"points": [{"x_mm": 0, "y_mm": 0}, {"x_mm": 900, "y_mm": 80}]}})";
}

std::string boatOf(const std::string& a, const std::string& b, const std::string& c) {
    return R"({"fayline": 1, "pieces": [)" + piece(a) + ", " + piece(b) + ", " + piece(c) + "]}";
}

TEST(Identity, IsMadeFromThePlaceWhereItIsMissing) {
    const Boat boat = readBoat(boatOf("", "p1", ""));
    EXPECT_EQ(boat.pieces[0].id, "p2");  // p1 is taken
    EXPECT_EQ(boat.pieces[1].id, "p1");
    EXPECT_EQ(boat.pieces[2].id, "p3");
    EXPECT_TRUE(readBoat(boatOf("", "p1", "")) == boat);
}

TEST(Identity, IsWrittenIntoAFileThatHadNone) {
    const std::string text = writeBoat(readBoat(boatOf("", "", "")));
    EXPECT_NE(text.find("\"id\": \"p3\""), std::string::npos) << text;
    EXPECT_EQ(writeBoat(readBoat(text)), text);
}

TEST(Identity, OutlivesOrderAndName) {
    Boat boat = readBoat(boatOf("", "", ""));
    std::swap(boat.pieces[0], boat.pieces[2]);
    boat.pieces[0].name = "Rail";
    const Boat back = readBoat(writeBoat(boat));
    EXPECT_EQ(back.pieces[0].id, "p3");
    EXPECT_EQ(back.pieces[2].id, "p1");
}

TEST(Identity, OfTwoPiecesIsNeverTheSame) {
    EXPECT_EQ(errorOf(boatOf("stem", "rail", "stem")),
              "pieces[2].id: \"stem\" is the id of pieces[0] too; give each piece an id of its own, or leave one out");
    EXPECT_EQ(errorOf(boatOf(std::string(65, 'x'), "", "")),
              "pieces[0].id: this id is longer than 64 bytes; give a short text that no other piece has");
}

}  // namespace identity_test
}  // namespace fayline::io
