#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <set>
#include <string>

#include "core/units/input_error.hpp"
#include "core/units/units.hpp"
#include "core/wood/species.hpp"
#include "tests/refusal.hpp"

namespace fayline::wood {

extern const char* const builtInSpeciesText;

namespace species_file_test {

std::string fileText() {
    std::ifstream file(std::string(FAYLINE_RESOURCES) + "/species.json", std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

TEST(BuiltInSpecies, TextIsTheFileByteForByte) {
    const std::string text = fileText();
    ASSERT_GT(text.size(), 10000U);
    EXPECT_LT(text.size(), 65536U);  // as long as a compiler has to take a text
    EXPECT_EQ(text, builtInSpeciesText);
}

TEST(BuiltInSpecies, EveryValueIsFiniteAndHasASource) {
    const std::vector<Species>& all = builtInSpecies();
    ASSERT_EQ(all.size(), 40U);
    std::set<std::string> ids;
    for (const Species& one : all) {
        EXPECT_TRUE(ids.insert(one.id).second) << one.id;
        EXPECT_FALSE(one.name.empty()) << one.id;
        EXPECT_FALSE(one.botanical.empty()) << one.id;
        EXPECT_FALSE(one.own) << one.id;
        for (const units::Cited* cited : {&one.sg, &one.mor_Pa, &one.moe_Pa, &one.moistureOfIntersection}) {
            EXPECT_GT(cited->value, 0) << one.id;
            EXPECT_FALSE(cited->source.text.empty()) << one.id;
        }
        // What any wood of a boat lies within.
        EXPECT_GT(one.sg.value, 0.25) << one.id;
        EXPECT_LT(one.sg.value, 1.0) << one.id;
        EXPECT_GT(one.mor_Pa.value / one.moe_Pa.value, 0.005) << one.id;
        EXPECT_LT(one.mor_Pa.value / one.moe_Pa.value, 0.011) << one.id;
        EXPECT_LT(one.shrinkRadial->value, one.shrinkTangential->value) << one.id;
    }
}

TEST(BuiltInSpecies, WarnWhereTheSourcesDoNotAgree) {
    const std::vector<Species>& all = builtInSpecies();
    EXPECT_NE(findSpecies(all, "spruce_sitka")->warning.find("2021"), std::string::npos);
    EXPECT_NE(findSpecies(all, "iroko")->warning.find("12.8"), std::string::npos);
    EXPECT_NE(findSpecies(all, "larch_eu")->warning.find("13.8"), std::string::npos);
    for (const char* imported : {"mahogany_hond", "khaya", "sapele", "iroko", "teak", "angelique", "purpleheart",
                                 "meranti_dark_red", "spanish_cedar", "okoume"}) {
        EXPECT_NE(findSpecies(all, imported)->warning.find("green volume"), std::string::npos) << imported;
    }
    EXPECT_TRUE(findSpecies(all, "oak_white")->warning.empty());
}

TEST(BuiltInSpecies, SouthernPineAndSoftwoodsAreToldApart) {
    const std::vector<Species>& all = builtInSpecies();
    for (const Species& one : all) EXPECT_EQ(one.southernPine, one.id == "pine_longleaf") << one.id;
    EXPECT_FALSE(findSpecies(all, "pine_longleaf")->hardwood);
    EXPECT_FALSE(findSpecies(all, "larch_eu")->hardwood);
    EXPECT_TRUE(findSpecies(all, "yellow_poplar")->hardwood);
    EXPECT_TRUE(findSpecies(all, "spanish_cedar")->hardwood);
}

TEST(FindSpecies, UnknownIdGivesNothing) {
    EXPECT_EQ(findSpecies(builtInSpecies(), "oak"), nullptr);
    EXPECT_EQ(findSpecies({}, "oak_white"), nullptr);
}

// A file of one wood, one line of it exchanged for another.
std::string fileWith(const std::string& line, const std::string& instead) {
    std::string text = R"({"sources": {"a": "A book"}, "species": [{"id": "x", "name": "X", "botanical": "X x",
"sg": {"value": 0.5, "mark": "P", "source": "a", "note": "page 3"},
"mor_psi": {"value": 10000, "mark": "M", "source": "a"},
"moe_Mpsi": {"value": 1.5, "mark": "P*", "source": "a"}}]})";
    if (!line.empty()) text.replace(text.find(line), line.size(), instead);
    return text;
}

TEST(ReadSpecies, ValuesComeInSiWithMarkAndSource) {
    const std::vector<Species> all = readSpecies(fileWith("", ""));
    ASSERT_EQ(all.size(), 1U);
    EXPECT_EQ(all[0].mor_Pa.value, 10000 * units::psi_Pa);
    EXPECT_NEAR(all[0].moe_Pa.value, 1.5e6 * units::psi_Pa, 1);
    EXPECT_EQ(all[0].mor_Pa.source.mark, units::Mark::fromMemory);
    EXPECT_EQ(all[0].mor_Pa.source.text, "A book");
    EXPECT_EQ(all[0].sg.source.text, "A book; page 3");
    EXPECT_FALSE(all[0].shear_Pa);
    EXPECT_TRUE(all[0].hardwood);
    EXPECT_EQ(all[0].moistureOfIntersection.value, 0.25);
}

TEST(ReadSpecies, SgFollowsFromADensity) {
    const std::vector<Species> all =
        readSpecies(fileWith("\"sg\": {\"value\": 0.5", "\"density_kg_m3\": {\"value\": 560"));
    EXPECT_DOUBLE_EQ(all[0].sg.value, 0.5);
    EXPECT_EQ(all[0].sg.source.mark, units::Mark::derived);
    EXPECT_NE(all[0].sg.source.text.find("A book; page 3 (P)"), std::string::npos);
}

TEST(ReadSpecies, MistakesAreNamedByTheirPath) {
    struct Mistake {
        std::string line;
        std::string instead;
        std::string path;
    };
    const std::vector<Mistake> mistakes{
        {"{\"sources\"", "[\"sources\"", ""},
        {"\"species\": [", "\"woods\": [", "species"},
        {"\"id\": \"x\"", "\"id\": 3", "species[0].id"},
        {"\"id\": \"x\", ", "", "species[0].id"},
        {"\"name\": \"X\"", "\"title\": \"X\"", "species[0].title"},
        {"\"mor_psi\"", "\"mor_ksi\"", "species[0].mor_ksi"},
        {"\"mor_psi\"", "\"shear_psi\"", "species[0].mor_psi"},
        {"10000", "-1", "species[0].mor_psi.value"},
        {"10000", "\"a\"", "species[0].mor_psi.value"},
        {"\"value\": 10000, ", "", "species[0].mor_psi.value"},
        {"\"mark\": \"M\"", "\"mark\": \"Q\"", "species[0].mor_psi.mark"},
        {"\"mark\": \"M\", ", "", "species[0].mor_psi.mark"},
        {"\"mark\": \"M\", \"source\": \"a\"", "\"mark\": \"M\", \"source\": \"b\"", "species[0].mor_psi.source"},
        {"\"note\"", "\"page\"", "species[0].sg.page"},
        {"{\"value\": 0.5, \"mark\": \"P\", \"source\": \"a\", \"note\": \"page 3\"}", "0.5", "species[0].sg"},
        {"\"sg\"", "\"hardwood\": 1, \"sg\"", "species[0].hardwood"},
        {"\"sg\"", "\"mor_MPa\": {\"value\": 1, \"mark\": \"M\", \"source\": \"a\"}, \"sg\"", "species[0].mor_MPa"},
        {"\"sg\"", "\"density_kg_m3\": {\"value\": 1, \"mark\": \"M\", \"source\": \"a\"}, \"sg\"",
         "species[0].density_kg_m3"},
        {"\"sg\"", "\"moisture_of_intersection_pct\": {\"value\": 12, \"mark\": \"M\", \"source\": \"a\"}, \"sg\"",
         "species[0].moisture_of_intersection_pct"},
        {"}}]}", "}}, 7]}", "species[1]"},
    };
    for (const Mistake& mistake : mistakes) {
        const units::InputError error = made::refusal([&] { readSpecies(fileWith(mistake.line, mistake.instead)); });
        EXPECT_EQ(error.path(), mistake.path) << error.what();
        EXPECT_FALSE(error.accepted().empty());
    }
}

TEST(ReadSpecies, TwoWoodsWithOneIdAreRefused) {
    std::string text = fileText();
    text.replace(text.find("\"oak_red_n\""), 11, "\"oak_white\"");
    EXPECT_EQ(made::refusal([&] { readSpecies(text); }).path(), "species[1].id");
}

TEST(OwnSpecies, KeepsTheUsersValuesAndSource) {
    model::OwnSpecies own{
        .id = "padauk", .mor_Pa = 120e6, .shear_Pa = 13e6, .hardwood = false, .source = "Grandfather's notebook"};
    const Species species = ownSpecies(own);
    EXPECT_TRUE(species.own);
    EXPECT_EQ(species.id, "padauk");
    EXPECT_EQ(species.name, "padauk");
    EXPECT_FALSE(species.hardwood);
    EXPECT_EQ(species.mor_Pa.value, 120e6);
    EXPECT_EQ(species.shear_Pa->value, 13e6);
    EXPECT_FALSE(species.shrinkRadial);
    EXPECT_EQ(species.mor_Pa.source.text, "Grandfather's notebook");
    EXPECT_EQ(species.mor_Pa.source.mark, units::Mark::fromMemory);

    own.source.clear();
    EXPECT_EQ(ownSpecies(own).moe_Pa.source.text, "the user's own value");
    EXPECT_EQ(ownSpecies(own).moe_Pa.source.mark, units::Mark::commonPractice);
}

}  // namespace species_file_test
}  // namespace fayline::wood
