#include "core/glue/adhesive.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "core/glue/pot_life.hpp"
#include "core/glue/ratio.hpp"
#include "core/measure/input_error.hpp"

namespace fayline::glue {
namespace {

TEST(Adhesives, EachBuiltInOneCanBeMixedAndItsPotLifeMet) {
    ASSERT_GE(builtInAdhesives().size(), 7u);
    for (const Adhesive& adhesive : builtInAdhesives()) {
        EXPECT_NO_THROW(checkRatios(adhesive, adhesive.id));
        const Kinetics kinetics = fitKinetics(adhesive, adhesive.id);
        EXPECT_LT(kinetics.worstMisfit, 0.01) << adhesive.id;
        EXPECT_FALSE(adhesive.potLifeSource.text.empty());
        EXPECT_GT(adhesive.openTime_s, 0);
        EXPECT_GT(adhesive.fullCure_s, adhesive.handling_s);
    }
    EXPECT_NE(findAdhesive(builtInAdhesives(), boat::Glue{}.adhesive), nullptr);  // the default of the file
}

TEST(Adhesives, AFaultInTheFileIsToldWithItsPlace) {
    const auto pathOf = [](const std::string& text) {
        try {
            readAdhesives(text);
        } catch (const measure::InputError& error) {
            return error.path();
        }
        return std::string("none");
    };
    EXPECT_EQ(pathOf("{"), "");
    EXPECT_EQ(pathOf("{}"), "adhesives");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"id": "a"}]})"), "adhesives[0].name");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"colour": 1}]})"), "adhesives[0].colour");
}

TEST(Adhesives, TheDensityOfAMixIsThatOfItsParts) {
    boat::OwnAdhesive own;
    own.partsByWeight = {1, 1};
    own.density_kg_m3 = {1000, 2000};
    EXPECT_NEAR(ownAdhesive(own).mixDensity_kg_m3(), 2 / (1 / 1000.0 + 1 / 2000.0), 1e-9);
}

}  // namespace
}  // namespace fayline::glue
