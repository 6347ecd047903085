// What was typed for a wood and the ids that are offered for it.
#include "core/laminate/nearest_ids.hpp"

#include <gtest/gtest.h>

namespace fayline::laminate {
namespace nearest_ids_test {

using Ids = std::vector<std::string>;

Ids nearest(std::string_view typed, std::size_t most = 3) {
    return nearestIds(typed, wood::builtInSpecies(), most);
}

TEST(NearestIds, SwappedLettersOfAPartFindTheWoodsThatHaveIt) {
    EXPECT_EQ(nearest("oka"), (Ids{"oak_white", "oak_red_n", "oak_live"}));
}

TEST(NearestIds, APartOfAnIdFindsAllThatHaveItInTheOrderOfTheTable) {
    EXPECT_EQ(nearest("oak", 4), (Ids{"oak_white", "oak_red_n", "oak_live", "oak_eu"}));
    EXPECT_EQ(nearest("larch", 2), (Ids{"larch_western", "larch_eu"}));
}

TEST(NearestIds, TheBeginningOfAPartIsEnough) {
    EXPECT_EQ(nearest("maho", 1), Ids{"mahogany_hond"});
    EXPECT_EQ(nearest("doug", 1), Ids{"douglas_fir_coast"});
    EXPECT_EQ(nearest("purpel", 1), Ids{"purpleheart"});
}

TEST(NearestIds, OrderCapitalsAndSignsBetweenThePartsDoNotCount) {
    EXPECT_EQ(nearest("White Oak", 1), Ids{"oak_white"});
    EXPECT_EQ(nearest("sitka-spruce", 1), Ids{"spruce_sitka"});
    EXPECT_EQ(nearest("yellowpoplar", 1), Ids{"yellow_poplar"});
}

TEST(NearestIds, OneWrongLetterFindsTheWoodItself) {
    EXPECT_EQ(nearest("oka_white", 1), Ids{"oak_white"});
    EXPECT_EQ(nearest("tek", 1), Ids{"teak"});
    EXPECT_EQ(nearest("sapelle", 1), Ids{"sapele"});
}

TEST(NearestIds, EveryIdIsNearestToItself) {
    for (const wood::Species& wood : wood::builtInSpecies()) EXPECT_EQ(nearest(wood.id, 1), Ids{wood.id});
}

TEST(NearestIds, NothingTypedAndNothingToChooseFromAreAnswered) {
    EXPECT_EQ(nearest("").size(), 3u);
    EXPECT_EQ(nearest("__ \xff").size(), 3u);
    EXPECT_TRUE(nearestIds("oak", {}, 3).empty());
}

}  // namespace nearest_ids_test
}  // namespace fayline::laminate
