// What tells the kinds of hold apart, and what was said of a station for a kind that it is not.
#include "core/model/hold_traits.hpp"

#include <gtest/gtest.h>

#include <set>

#include "core/io/file.hpp"
#include "tests/core/io/error_of.hpp"

namespace fayline::io {

using namespace model;
namespace hold_traits_test {

std::string stationWith(const std::string& keys) {
    return pieceWith("\"holding\": {\"stations\": [{" + keys + "}]}");
}

TEST(HoldTraits, EachKindHasAWordOfItsOwn) {
    std::set<std::string_view> words;
    for (const HoldTraits& traits : holdTraits) {
        EXPECT_FALSE(traits.word.empty());
        EXPECT_TRUE(words.insert(traits.word).second) << traits.word;
        EXPECT_EQ(holdWord(traits.kind), traits.word);
    }
}

// Props and jacks stand on a foot, screws hold in the backbone, straps go round: facts of the things themselves.
TEST(HoldTraits, OnlyAStationOfSuchAKindIsTakenForAStrutAScrewOrAStrap) {
    for (const HoldTraits& traits : holdTraits) {
        Station station;
        station.kind = traits.kind;
        const bool prop = traits.kind == HoldKind::prop || traits.kind == HoldKind::jack;
        EXPECT_EQ(as<Strut>(station), prop ? &station.strut : nullptr) << traits.word;
        EXPECT_EQ(as<Screw>(station), traits.kind == HoldKind::screw ? &station.screw : nullptr) << traits.word;
        EXPECT_EQ(as<Strap>(station), traits.kind == HoldKind::strap ? &station.strap : nullptr) << traits.word;
    }
}

TEST(HoldTraits, WhatWasSaidForAnotherKindIsReadAndWrittenAgainInThePlaceOfItsKey) {
    const std::string keys =
        R"("kind": "clamp", "at_mm": 250, "foot_x_mm": 300, "stop": "none", "to": "overhead", )"
        R"("diameter_mm": null, "washer_mm": 25, "to_mm": 900, "friction": 0.3, "note": "from the shed")";
    const Boat boat = readBoat(stationWith(keys));
    const Station& station = boat.pieces[0].holding.stations.at(0);
    EXPECT_EQ(station.strut.footX_m, 0.3);
    EXPECT_EQ(station.screw.washer_m, 0.025);
    EXPECT_EQ(station.strap.to_m, 0.9);
    EXPECT_NE(writeBoat(boat).find("{" + keys + "}"), std::string::npos) << writeBoat(boat);
    EXPECT_EQ(readBoat(writeBoat(boat)), boat);
}

TEST(HoldTraits, WhatWasSaidForAnotherKindIsJudgedLikeThatOfItsOwn) {
    EXPECT_EQ(errorOf(stationWith(R"("kind": "clamp", "diameter_mm": 0)")),
              errorOf(stationWith(R"("kind": "screw", "diameter_mm": 0)")));
    EXPECT_NE(errorOf(stationWith(R"("kind": "wedge", "stop": "knee")")), errorOf(stationWith(R"("kind": "wedge")")));
}

TEST(HoldTraits, AKindThatIsChangedBackFindsWhatWasSaidOfIt) {
    Boat boat = readBoat(stationWith(R"("kind": "prop", "foot_x_mm": 300, "section_mm": [89, 38])"));
    const Boat before = boat;
    Station& station = boat.pieces[0].holding.stations[0];
    station.kind = HoldKind::clamp;
    EXPECT_NE(boat, before);
    boat = readBoat(writeBoat(boat));
    boat.pieces[0].holding.stations[0].kind = HoldKind::prop;
    EXPECT_EQ(boat, before);
}

}  // namespace hold_traits_test
}  // namespace fayline::io
