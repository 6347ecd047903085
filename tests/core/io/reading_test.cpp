// Reading a project file: defaults, and errors that name the place, what is wrong, and what would be accepted.
#include <gtest/gtest.h>

#include "tests/core/io/error_of.hpp"

namespace fayline::io {

using namespace model;
namespace reading_test {

TEST(Reading, AFileAsShortAsAllowedHasAllDefaults) {
    const Boat boat = readBoat(R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points": []}}]})");
    ASSERT_EQ(boat.pieces.size(), 1u);
    Piece piece;
    piece.id = "p1";
    piece.name = "Stem";
    EXPECT_EQ(boat.pieces[0], piece);
    EXPECT_EQ(boat.display, units::Display{});
    EXPECT_EQ(boat.pieces[0].stack.strips.size(), 1u);
    EXPECT_EQ(boat.pieces[0].stack.strips[0].count, 8);
    EXPECT_EQ(boat.pieces[0].stack.strips[0].thickness_m, 0.00635);
    EXPECT_EQ(boat.pieces[0].stack.widths[0].width_m, 0.051);

    EXPECT_TRUE(readBoat(R"({"fayline": 1})").pieces.empty());
}

TEST(Reading, AnItemOfAListHasTheDefaultsOfAnItem) {
    const Boat boat = readBoat(stripWith("\"species\": \"larch_eu\""));
    EXPECT_EQ(boat.pieces[0].stack.strips[0].count, 1);
    EXPECT_EQ(boat.pieces[0].stack.strips[0].thickness_m, 0.00635);
}

TEST(Reading, TheFormatsNumberIsChecked) {
    EXPECT_EQ(errorOf(R"({"pieces": []})"),
              "fayline: the number of the format is missing; begin the file with \"fayline\": 1");
    EXPECT_EQ(errorOf(R"({"fayline": 2})"), "fayline: written by a newer Fayline: format 2; this one reads 1");
    EXPECT_EQ(errorOf(R"({"fayline": 1e400})"),
              "line 1, column 13: 1e400 is too large for a number; give a smaller number");
    EXPECT_EQ(errorOf(R"({"fayline": 0})"), "fayline: 0 is not the number of a format; give 1");
    EXPECT_EQ(errorOf(R"({"fayline": 0.5})"), "fayline: 0.5 is not the number of a format; give 1");
    EXPECT_EQ(errorOf(R"({"fayline": "1"})"), "fayline: \"1\" is text, not a number; give 1");
    EXPECT_EQ(errorOf(R"({"fayline": null})"), "fayline: null stands here, not a number; give 1");
    EXPECT_EQ(errorOf(R"({"fayline": 1.0})"), "nothing");
    // A newer file is refused for being newer, whatever else is new in it.
    EXPECT_EQ(errorOf(R"({"pieces": 7, "fayline": 3})"),
              "fayline: written by a newer Fayline: format 3; this one reads 1");
}

TEST(Reading, WhatMustBeGivenIsMissed) {
    EXPECT_EQ(errorOf(R"({"fayline": 1, "pieces": [{"line": {"points": []}}]})"),
              "pieces[0].name: this is missing; give a text in double quotes");
    EXPECT_EQ(errorOf(R"({"fayline": 1, "pieces": [{"name": "Stem"}]})"),
              "pieces[0].line: this is missing; give a group of keys in braces");
    EXPECT_EQ(errorOf(R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {}}]})"),
              "pieces[0].line.points: this is missing; give a list of points, at most 5000");
    EXPECT_EQ(errorOf(pointsAre(R"({"x_mm": 1, "y_mm": 2}, {"x_mm": 3})")),
              "pieces[0].line.points[1].y_mm: this place is missing; give a number, or the length under \"written\"");
}

TEST(Reading, AnImpossibleNumberIsNamedWithItsPlace) {
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": -6")),
              "pieces[0].stack.strips[0].thickness_mm: -6 is not a thickness; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": 0")),
              "pieces[0].stack.strips[0].thickness_mm: 0 is not a thickness; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": 1e-300")),
              "pieces[0].stack.strips[0].thickness_mm: 1e-300 is not a thickness; "
              "give a number above 0, at least 0.000001");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": 1e300")),
              "pieces[0].stack.strips[0].thickness_mm: 1e300 is not a thickness; "
              "give a number above 0, at most 1000000000");
    EXPECT_EQ(errorOf(pointsAre(R"({"x_mm": -1e12, "y_mm": 0})")),
              "pieces[0].line.points[0].x_mm: -1e12 is not a place; give a number, at least -1000000000");
    EXPECT_EQ(errorOf(stripWith("\"count\": 0")),
              "pieces[0].stack.strips[0].count: 0 is not a number of strips; give a whole number from 1 to 1000");
    EXPECT_EQ(errorOf(stripWith("\"count\": 2.5")),
              "pieces[0].stack.strips[0].count: 2.5 is not a whole number; give a whole number from 1 to 1000");
    EXPECT_EQ(errorOf(stripWith("\"count\": 4294967297")),
              "pieces[0].stack.strips[0].count: 4294967297 is not a number of strips; "
              "give a whole number from 1 to 1000");
    EXPECT_EQ(errorOf(stackWith("\"widths\": [{\"width_mm\": -51}]")),
              "pieces[0].stack.widths[0].width_mm: -51 is not a width; give a number above 0");
    EXPECT_EQ(errorOf(pieceWith("\"glue\": {\"humidity_pct\": 101}")),
              "pieces[0].glue.humidity_pct: 101 is not a relative humidity; give a number from 0 to 100");
    EXPECT_EQ(errorOf(pieceWith("\"glue\": {\"tent\": {\"air_C\": -300}}")),
              "pieces[0].glue.tent.air_C: -300 is not a temperature; give a number from -60 to 150");
}

TEST(Reading, AWrongTypeSaysWhatWasFound) {
    const std::string place = "pieces[0].stack.strips[0].thickness_mm: ";
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": \"six\"")),
              place + "\"six\" is text, not a number; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": null")),
              place + "null stands here, not a number; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": true")),
              place + "true stands here, not a number; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": [6]")),
              place + "a list stands here, not a number; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"thickness_mm\": {}")),
              place + "a group of keys stands here, not a number; give a number above 0");
    EXPECT_EQ(errorOf(stripWith("\"species\": 7")),
              "pieces[0].stack.strips[0].species: 7 is a number, not text; give a text in double quotes");
    EXPECT_EQ(errorOf(stripWith("\"dry_face\": 1")),
              "pieces[0].stack.strips[0].dry_face: 1 is a number, neither true nor false; give true or false");
    EXPECT_EQ(errorOf(stackWith("\"strips\": {}")),
              "pieces[0].stack.strips: a group of keys stands here, not a list; "
              "give a list of 1 or more strips, at most 1000");
    EXPECT_EQ(errorOf(pieceWith("\"stack\": []")),
              "pieces[0].stack: a list stands here, not a group; give a group of keys in braces");
    EXPECT_EQ(errorOf(R"({"fayline": 1, "boat": "Marram"})"),
              "boat: \"Marram\" is text, not a group; give a group of keys in braces");
    EXPECT_EQ(errorOf("[1]"),
              "a list stands here, not a project file; give a group in braces that begins with \"fayline\": 1");
    EXPECT_EQ(errorOf(pieceWith("\"holding\": {\"stations\": [{\"section_mm\": [89]}]}")),
              "pieces[0].holding.stations[0].section_mm: this list holds 1, not two; "
              "give a list of two, each a number above 0");
    EXPECT_EQ(errorOf(pieceWith("\"holding\": {\"stations\": [{\"section_mm\": [89, -38]}]}")),
              "pieces[0].holding.stations[0].section_mm[1]: -38 is not a size; give a number above 0");
}

TEST(Reading, PropsScrewsAndHullsThatCannotBeAreRefusedWithTheirPlace) {
    const struct {
        const char* text;
        const char* error;
    } cases[] = {
        {R"("stations": [{"kind": "prop", "pad_mm": -1}])", "stations[0].pad_mm: -1 is not a length"},
        {R"("stations": [{"kind": "jack", "most_N": 0}])", "stations[0].most_N: 0 is not a force"},
        {R"("stations": [{"kind": "prop", "pull_N": -5}])", "stations[0].pull_N: -5 is not a pull"},
        {R"("stations": [{"kind": "prop", "foot_x_mm": "left"}])", "stations[0].foot_x_mm: \"left\" is text"},
        {R"("stations": [{"kind": "prop", "to": "wall"}])", "stations[0].to: \"wall\" is text that is not known here"},
        {R"("stations": [{"kind": "screw", "diameter_mm": 0}])", "stations[0].diameter_mm: 0 is not a size"},
        {R"("stations": [{"kind": "screw", "into_backbone_mm": -38}])", "stations[0].into_backbone_mm: -38 is not"},
        {R"("stations": [{"kind": "screw", "washer_mm": 0}])", "stations[0].washer_mm: 0 is not a size"},
        {R"("backbone": {"species": 3})", "backbone.species: 3 is a number, not text"},
        {R"("cauls": {"thickness_mm": -18})", "cauls.thickness_mm: -18 is not a thickness"},
        {R"("floor": {"friction": -0.3})", "floor.friction: -0.3 is not a coefficient of friction"},
        {R"("hull": {"weight_kg": -900})", "hull.weight_kg: -900 is not a weight"},
        {R"("hull": {"friction": -0.3})", "hull.friction: -0.3 is not a coefficient of friction"},
        {R"("hull": {"blocks": [{"x_mm": null}]})", "hull.blocks[0].x_mm: null stands here"},
    };
    for (const auto& [text, error] : cases) {
        const std::string told = errorOf(pieceWith("\"holding\": {" + std::string(text) + "}"));
        EXPECT_EQ(told.find("pieces[0].holding." + std::string(error)), 0u) << told;
        EXPECT_NE(told.find("; give "), std::string::npos) << told;
    }
}

TEST(Reading, AnUnknownWordListsTheWordsAccepted) {
    EXPECT_EQ(errorOf(R"({"fayline": 1, "display": {"lengths": "metres"}})"),
              "display.lengths: \"metres\" is text that is not known here; "
              "give \"feet-inches-eighths\", \"inches\" or \"millimetres\"");
    EXPECT_EQ(errorOf(pieceWith("\"form\": {\"kind\": 3}")),
              "pieces[0].form.kind: 3 is a number, not a word; give \"solid\", \"posts\" or \"in place\"");
    EXPECT_EQ(errorOf(pieceWith("\"stock\": {\"spares\": \"many\"}")),
              "pieces[0].stock.spares: \"many\" is text that is not known here; "
              "give a whole number from 0 to 1000, or \"auto\"");
}

TEST(Reading, TimesAreChecked) {
    for (const char* wrong : {"24:00", "08:60", "8:30", "08.30", "", "0830", "08:30:61", "-8:30"}) {
        const std::string text = std::string("\"") + wrong + "\"";
        EXPECT_EQ(errorOf(pieceWith("\"crew\": {\"start_at\": " + text + "}")),
                  "pieces[0].crew.start_at: " + text +
                      " is text, but not a time of day; "
                      "give a time of day like \"08:30\"");
    }
    EXPECT_EQ(readBoat(pieceWith(R"("crew": {"start_at": "23:59:30"})")).pieces[0].crew.startAt_s, 86370);
    for (const char* wrong :
         {"2026-02-29", "2026-13-01", "yesterday", "2026-05-02T25:00", "2026-05-02T", "2026-05-02x08:30"})
        EXPECT_NE(errorOf(pieceWith(std::string("\"record\": [{\"when\": \"") + wrong + "\"}]")), "nothing") << wrong;
    for (const char* right : {"2026-05-02T08:30", "2024-02-29", "2026-05-02 08:30:15", ""})
        EXPECT_EQ(errorOf(pieceWith(std::string("\"record\": [{\"when\": \"") + right + "\"}]")), "nothing") << right;
}

TEST(Reading, NullStandsForWhatIsNotSaid) {
    const Boat boat = readBoat(pieceWith(R"("stack": {"scarfed_start": null, "strips": [{"tapers_to_mm": null}]},
        "form": {"carries_on_start_mm": null}, "stock": {"spares": "auto"})"));
    EXPECT_FALSE(boat.pieces[0].stack.scarfedStart);
    EXPECT_FALSE(boat.pieces[0].stack.strips[0].tapersTo_m);
    EXPECT_FALSE(boat.pieces[0].form.carriesOnStart_m);
    EXPECT_FALSE(boat.pieces[0].stock.spares);
    EXPECT_EQ(readBoat(pieceWith(R"("stock": {"spares": 3})")).pieces[0].stock.spares, 3);
    EXPECT_EQ(readBoat(stackWith(R"("scarfed_end": {})")).pieces[0].stack.scarfedEnd->slope, 10);
}

TEST(Reading, NeighboursThatContradictEachOtherAreRefused) {
    EXPECT_EQ(errorOf(stackWith(R"("widths": [{"at_mm": 0}, {"at_mm": 900}, {"at_mm": 0.0}])")),
              "pieces[0].stack.widths[2].at_mm: a width is given twice for this place; give one width for each place");
    EXPECT_EQ(errorOf(stackWith(R"("strips": [{"count": 3}, {"count": 2}], "gluings": [2, 6])")),
              "pieces[0].stack.gluings[1]: 6 lies beyond the last strip; give a strip's place, 1 to 5");
    EXPECT_EQ(errorOf(stackWith(R"("gluings": [4, 4])")),
              "pieces[0].stack.gluings[1]: 4 does not follow 4; give the places in rising order, each once");
    EXPECT_EQ(errorOf(stackWith(R"("gluings": [0])")),
              "pieces[0].stack.gluings[0]: 0 is not a strip's place; give a whole number from 1 to 1000000");
    EXPECT_EQ(errorOf(stackWith(R"("strips": [])")),
              "pieces[0].stack.strips: this list holds nothing; give a list of 1 or more strips, at most 1000");
    EXPECT_EQ(errorOf(pieceWith(R"("stock": {"boards": [{"bad": [{"from_mm": 8, "to_mm": 9, "across_to_mm": 30,
                                                                   "across_from_mm": 40}]}]})")),
              "pieces[0].stock.boards[0].bad[0].across_to_mm: the bad stretch ends before it begins; "
              "give a place beyond across_from_mm");
    EXPECT_EQ(errorOf(pieceWith(R"("stock": {"pins": [{"place": 2, "board": "A"}, {"place": 2, "board": "B"}]})")),
              "pieces[0].stock.pins[1].place: this strip is pinned twice; give each strip one board");
    EXPECT_EQ(errorOf(pieceWith(R"("stock": {"cut": [{"place": 2, "across_from_mm": 9, "across_to_mm": 3}]})")),
              "pieces[0].stock.cut[0].across_to_mm: what was cut ends before it begins; "
              "give a place beyond across_from_mm");
    EXPECT_EQ(errorOf(pieceWith(R"("stock": {"boards": [{"bad": [{"from_mm": 9, "to_mm": 8}]}]})")),
              "pieces[0].stock.boards[0].bad[0].to_mm: the bad stretch ends before it begins; "
              "give a place beyond from_mm");
    EXPECT_EQ(errorOf(R"({"fayline": 1, "adhesives": [{"parts_by_volume": [0, 1]}]})"),
              "adhesives[0].parts_by_volume[0]: 0 is not a part of a mix; give a number above 0");
}

TEST(Reading, APieceUnderConstructionOpens) {
    EXPECT_EQ(errorOf(pointsAre("")), "nothing");
    EXPECT_EQ(errorOf(pointsAre(R"({"x_mm": 1, "y_mm": 2}, {"x_mm": 1, "y_mm": 2})")), "nothing");
    EXPECT_EQ(errorOf(stripWith("\"species\": \"a wood that nobody knows\"")), "nothing");
}

TEST(Reading, FiveThousandPointsOpenAndOneMoreDoesNot) {
    std::string points = R"({"x_mm": 0, "y_mm": 0})";
    for (int i = 1; i < 5000; ++i) points += ", {\"x_mm\": " + std::to_string(i) + ", \"y_mm\": 0}";
    EXPECT_EQ(readBoat(pointsAre(points)).pieces[0].line.points.size(), 5000u);
    EXPECT_EQ(errorOf(pointsAre(points + R"(, {"x_mm": -1, "y_mm": 0})")),
              "pieces[0].line.points: this list holds 5001; give a list of points, at most 5000");
}

TEST(Reading, APlaceMayStandOnlyAsItWasWritten) {
    const std::string feet = R"("display": {"lengths": "feet-inches-eighths"}, )";
    const Boat boat =
        readBoat(pointsAre(R"({"written": ["2-3-4+", "300 mm"]}, {"x_mm": 5, "written": ["", "27 1/2"]})", feet));
    const auto& points = boat.pieces[0].line.points;
    // 2 ft 3 4/8 in and a sixteenth = 27.5625 in = 700.0875 mm; 27 1/2 in = 698.5 mm.
    EXPECT_NEAR(points[0].x_m, 0.7000875, 1e-15);
    EXPECT_NEAR(points[0].y_m, 0.3, 1e-15);
    EXPECT_EQ(points[1].x_m, 0.005);
    EXPECT_NEAR(points[1].y_m, 0.6985, 1e-15);

    // Where a number stands too, the number counts.
    const Boat both = readBoat(pointsAre(R"({"x_mm": 1, "y_mm": 2, "written": ["2-3-4", "no length"]})", feet));
    EXPECT_EQ(both.pieces[0].line.points[0].x_m, 0.001);
    EXPECT_EQ(both.pieces[0].line.points[0].written[1], "no length");

    const std::string error = errorOf(pointsAre(R"({"written": ["2-3-4", "2-13-4"]})", feet));
    EXPECT_EQ(error.substr(0, 40), "pieces[0].line.points[0].written[1]: 13 ") << error;
}

TEST(Reading, AWordThatOnlyLooksKnownIsUnknownAndKept) {
    // A key of another group, and one in another case.
    const Boat boat = readBoat(stackWith(R"("x_mm": "anything", "Strips": -1)"));
    ASSERT_EQ(boat.pieces[0].stack.kept.unknown.size(), 2u);
    EXPECT_EQ(boat.pieces[0].stack.kept.unknown[0].key, "x_mm");
}

TEST(Reading, LongThingsAreShortenedInErrors) {
    const std::string error = errorOf(stripWith("\"thickness_mm\": \"" + std::string(100'000, 'x') + "\""));
    EXPECT_LT(error.size(), 200u);
    EXPECT_LT(errorOf("{\"fayline\": 1, " + std::string(100'000, 'x')).size(), 200u);
}

}  // namespace reading_test
}  // namespace fayline::io
