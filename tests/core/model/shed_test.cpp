// What a shed gives to pieces and boats, and takes from them.
#include "core/model/shed.hpp"

#include <gtest/gtest.h>

#include <algorithm>

namespace fayline::model {
namespace shed_test {

Piece ofShop() {
    Piece piece;
    piece.holding.tools = {Tool{.name = "Bar clamp", .count = 7}};
    piece.glue.adhesive = "mine";
    piece.glue.waste = 0.3;
    piece.glue.air_C = 26;
    piece.glue.airOverNight_C = 17;
    piece.crew.hands = 4;
    piece.stock.boards = {Board{.species = "ash_here"}};
    piece.stack.strips.front().species = "ash_here";
    return piece;
}

Boat boatOfShop() {
    Boat boat;
    boat.display = units::inchShop;
    boat.adhesives = {OwnAdhesive{.id = "mine"}, OwnAdhesive{.id = "other"}};
    boat.species = {OwnSpecies{.id = "ash_here"}, OwnSpecies{.id = "elm_here"}};
    boat.trials = {Trial{.species = "ash_here"}, Trial{.species = "oak_white"}};
    boat.pieces = {ofShop()};
    return boat;
}

Shed kept() {
    Shed shed;
    for (const ShedPart part : allShedParts()) keep(shed, part, boatOfShop(), ofShop());
    return shed;
}

TEST(Shed, GivesANewPieceWhatItKept) {
    const Piece piece = withShed(Piece{}, kept());
    EXPECT_EQ(piece.holding, ofShop().holding);
    EXPECT_EQ(piece.glue, ofShop().glue);
    EXPECT_EQ(piece.crew, ofShop().crew);
    EXPECT_EQ(piece.stock, ofShop().stock);
    EXPECT_EQ(piece.stack, Piece{}.stack);  // the strips are the job's
}

TEST(Shed, KeepsBoardsAndSawingButNotWhichStripsWereWantedOrCut) {
    Boat boat = boatOfShop();
    Piece piece = ofShop();
    piece.stock.kerf_m = 0.003;
    piece.stock.pins = {StripPin{.place = 2, .board = "A"}};
    piece.stock.cut = {StripCut{.place = 1, .board = "A"}};
    Shed shed;
    keep(shed, ShedPart::stock, boat, piece);
    EXPECT_TRUE(shed.stock->pins.empty());
    EXPECT_TRUE(shed.stock->cut.empty());
    EXPECT_EQ(shed.stock->kerf_m, 0.003);
    EXPECT_TRUE(isUsed(shed, ShedPart::stock, piece));

    Piece other;
    other.stock.cut = {StripCut{.place = 4, .board = "B"}};
    use(shed, ShedPart::stock, other);
    EXPECT_EQ(other.stock.boards, piece.stock.boards);
    EXPECT_EQ(other.stock.cut.at(0).place, 4);

    // Of a piece that lists none, the boards that the boat's pieces share.
    boat.boards = {Board{.name = "Shared", .species = "elm_here"}};
    piece.stock.boards.clear();
    keep(shed, ShedPart::stock, boat, piece);
    EXPECT_EQ(shed.stock->boards, boat.boards);
    EXPECT_TRUE(std::ranges::any_of(shed.species, [](const OwnSpecies& one) { return one.id == "elm_here"; }));
}

TEST(Shed, EachPartIsKeptAndUsedByItself) {
    for (const ShedPart part : allShedParts()) {
        Shed shed;
        keep(shed, part, boatOfShop(), ofShop());
        for (const ShedPart other : allShedParts()) {
            const bool comesAlong = (part == ShedPart::glue && other == ShedPart::glues) ||
                                    (part == ShedPart::stock && other == ShedPart::woods);
            EXPECT_EQ(has(shed, other), other == part || comesAlong) << int(part) << " " << int(other);
            if (!isOfPiece(other)) continue;
            Piece piece;
            EXPECT_EQ(isUsed(shed, other, piece), other != part) << int(part) << " " << int(other);
            use(shed, other, piece);
            EXPECT_TRUE(isUsed(shed, other, piece));
            EXPECT_EQ(piece == Piece{}, other != part) << int(part) << " " << int(other);
        }
        drop(shed, part);
        EXPECT_FALSE(has(shed, part));
    }
}

TEST(Shed, TheGlueIsUsedWithoutItsAirAndTheAirWithoutTheGlue) {
    Piece piece;
    use(kept(), ShedPart::glue, piece);
    EXPECT_EQ(piece.glue.waste, 0.3);
    EXPECT_EQ(piece.glue.air_C, Glue{}.air_C);
    piece = {};
    use(kept(), ShedPart::air, piece);
    EXPECT_EQ(piece.glue.waste, Glue{}.waste);
    EXPECT_EQ(piece.glue.airOverNight_C, 17);
}

// What an older or newer program wrote beside a piece's own keys stays with it.
TEST(Shed, LeavesTheUnknownKeysOfAPiecesGlue) {
    Piece piece;
    piece.glue.kept.unknown = {Member{"brand", textValue("x")}};
    use(kept(), ShedPart::glue, piece);
    use(kept(), ShedPart::air, piece);
    EXPECT_EQ(piece.glue.kept.unknown.size(), 1U);
    Shed shed;
    keep(shed, ShedPart::glue, Boat{}, piece);
    EXPECT_TRUE(shed.glue->glue.kept.unknown.empty());
}

TEST(Shed, AddsGluesAndWoodsToThoseThatAreThere) {
    Shed shed = kept();
    Boat other;
    other.adhesives = {OwnAdhesive{.id = "mine", .name = "Better"}, OwnAdhesive{.id = "third"}};
    other.trials = {Trial{.species = "oak_white", .span_m = 0.8}, Trial{.species = "oak_white", .span_m = 0.9}};
    keep(shed, ShedPart::glues, other, {});
    keep(shed, ShedPart::woods, other, {});
    ASSERT_EQ(shed.adhesives.size(), 3U);
    EXPECT_EQ(shed.adhesives[0].name, "Better");
    EXPECT_EQ(shed.adhesives[2].id, "third");
    EXPECT_EQ(shed.species, kept().species);
    ASSERT_EQ(shed.trials.size(), 3U);  // one of ash as before, two of oak in place of one
    EXPECT_EQ(shed.trials[0].species, "ash_here");
    EXPECT_EQ(shed.trials[1].span_m, 0.8);
}

TEST(Shed, KeepsTheOwnGlueThatThePieceIsGluedWith) {
    Shed shed;
    keep(shed, ShedPart::glue, boatOfShop(), ofShop());
    ASSERT_EQ(shed.adhesives.size(), 1U);
    EXPECT_EQ(shed.adhesives[0].id, "mine");
    drop(shed, ShedPart::glues);
    EXPECT_EQ(shed.glue->glue.adhesive, Glue{}.adhesive);
}

TEST(Shed, ABoatTakesAlongWhatAPieceBeginsToUse) {
    Boat boat;
    const Brought brought = lackingFor(boat, nullptr, ofShop(), kept());
    ASSERT_EQ(brought.adhesives.size(), 1U);
    EXPECT_EQ(brought.adhesives[0].id, "mine");
    ASSERT_EQ(brought.species.size(), 1U);
    EXPECT_EQ(brought.species[0].id, "ash_here");
    ASSERT_EQ(brought.trials.size(), 1U);
    bring(boat, brought);
    EXPECT_FALSE(lackingFor(boat, nullptr, ofShop(), kept()).any());
}

TEST(Shed, ABackboneOfNoWoodOfItsOwnNamesNone) {
    Shed shed;
    shed.species = {OwnSpecies{.name = "Without an id"}};
    EXPECT_FALSE(lackingFor(Boat{}, nullptr, Piece{}, shed).any());
}

TEST(Shed, NothingComesAlongForWhatAPieceNamedBefore) {
    const Piece before = ofShop();
    Piece after = before;
    after.crew.hands = 9;
    EXPECT_FALSE(lackingFor(Boat{}, &before, after, kept()).any());
    after.stack.strips.front().species = "oak_white";
    const Brought brought = lackingFor(Boat{}, &before, after, kept());
    EXPECT_TRUE(brought.species.empty());
    EXPECT_EQ(brought.trials.size(), 1U);  // measured in the shop, of a wood that everybody knows
}

TEST(Shed, ABoatsOwnCopyIsNotReplaced) {
    Boat boat;
    boat.adhesives = {OwnAdhesive{.id = "mine", .name = "As it was"}};
    boat.trials = {Trial{.species = "ash_here", .span_m = 1}};
    bring(boat, lacking(boat, ShedPart::glues, kept()));
    bring(boat, lacking(boat, ShedPart::woods, kept()));
    ASSERT_EQ(boat.adhesives.size(), 2U);
    EXPECT_EQ(boat.adhesives[0].name, "As it was");
    EXPECT_EQ(boat.species.size(), 2U);
    ASSERT_EQ(boat.trials.size(), 2U);
    EXPECT_EQ(boat.trials[0].span_m, 1);
    EXPECT_EQ(boat.trials[1].species, "oak_white");
}

}  // namespace shed_test
}  // namespace fayline::model
