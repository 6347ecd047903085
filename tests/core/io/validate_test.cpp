// A piece in memory is held to the ranges of the file, in the words that reading the file would give.
#include "core/model/validate.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

#include "core/io/file.hpp"
#include "core/model/new_piece.hpp"
#include "tests/refusal.hpp"

namespace fayline::io {

using namespace model;
namespace validate_test {

std::string told(const Piece& piece) {
    return made::refusalText([&] { validate(piece); });
}

// What opening a file with the piece in it says, without the place of the piece in the boat.
std::string toldByFile(const Piece& piece) {
    Boat boat;
    boat.pieces.push_back(piece);
    try {
        readBoat(writeBoat(boat));
    } catch (const units::InputError& error) {
        const std::string what = error.what();
        return what.substr(what.find('.') + 1);
    }
    return "nothing";
}

TEST(Validate, SaysWhatTheFileWouldSay) {
    const std::vector<std::function<void(Piece&)>> slips{
        [](Piece& p) { p.stack.strips.at(0).thickness_m = -0.006; },
        [](Piece& p) { p.stack.strips.at(0).thickness_m = 0; },
        [](Piece& p) { p.stack.strips.at(0).count = 0; },
        [](Piece& p) { p.stack.moisture = 2.01; },
        [](Piece& p) { p.stack.strips.clear(); },
        [](Piece& p) { p.stack.gluings = {1000}; },
        [](Piece& p) { p.stack.widths.push_back(p.stack.widths.at(0)); },
        [](Piece& p) { p.line.points.at(1).x_m = 1e12; },
        [](Piece& p) { p.line.readTo_m = std::nan(""); },
        [](Piece& p) { p.crew.rates.wetOut_m2_s = 0; },
        [](Piece& p) { p.crew.hands = 0; },
        [](Piece& p) { p.glue.cup_m3 = 1e-13; },
        [](Piece& p) { p.glue.air_C = 151; },
        [](Piece& p) {
            p.stock.boards.resize(1);
            p.stock.boards[0].width_m = -1;
        },
        [](Piece& p) {
            p.record.resize(1);
            p.record[0].when = "yesterday";
        },
    };
    for (std::size_t i = 0; i < slips.size(); ++i) {
        Piece piece = newPiece("Stem");
        slips[i](piece);
        EXPECT_NE(told(piece), "nothing") << i;
        EXPECT_EQ(told(piece), toldByFile(piece)) << i;
    }
}

TEST(Validate, LeavesTextsToWhoSaves) {
    Piece piece = newPiece("St\xffm");
    EXPECT_EQ(told(piece), "nothing");
}

TEST(Validate, TakesWhatTheFileTakes) {
    Piece piece = newPiece("Stem");
    EXPECT_EQ(told(piece), "nothing");
    piece.glue.air_C = 150;
    piece.stack.moisture = 2;
    piece.stack.glueLine_m = 0;
    piece.line.readTo_m = 0;
    piece.stock.spares = 1000;
    EXPECT_EQ(told(piece), toldByFile(piece));
    EXPECT_EQ(told(piece), "nothing");
}

}  // namespace validate_test
}  // namespace fayline::io
