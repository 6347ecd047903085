#include "core/glue/adhesive.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <clocale>
#include <cstdlib>
#include <string>

#include "core/glue/pot_life.hpp"
#include "core/glue/ratio.hpp"
#include "core/units/day_text.hpp"
#include "core/units/input_error.hpp"
#include "tests/refusal.hpp"
#include "tests/temporary_folder.hpp"

namespace fayline::glue {
namespace adhesive_test {

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
    EXPECT_NE(findAdhesive(builtInAdhesives(), model::Glue{}.adhesive), nullptr);  // the default of the file
}

// Each ratio comes with each pot life; the weights go with the volumes (makers' mixing pages, read there, P).
TEST(Adhesives, ARangeIsOneGlueOfEachMixWithEachPotLife) {
    const std::vector<Adhesive>& all = builtInAdhesives();
    EXPECT_EQ(std::ranges::count(all, "Epoxy", &Adhesive::family), 20);
    const Adhesive* even = findAdhesive(all, "epoxy_1_1_slow");
    ASSERT_TRUE(even);
    EXPECT_EQ(even->name, "Epoxy 1:1 (about 50 min)");
    EXPECT_NEAR(even->partsByWeight[1] / even->partsByWeight[0], 0.83, 1e-12);
    EXPECT_DOUBLE_EQ(findAdhesive(all, "epoxy_5_1_fast")->firstByWeight(), 5.0 / 6);
    EXPECT_EQ(nearestOf(all, "Epoxy", "3:1", "about 25 min")->id, "epoxy_3_1_medium");
    EXPECT_EQ(nearestOf(all, "Resorcinol resin", "3:1", "about 25 min")->id, "resorcinol");
    EXPECT_EQ(nearestOf(all, "Treacle", "3:1", ""), nullptr);
}

TEST(Adhesives, AFaultInTheFileIsToldWithItsPlace) {
    const auto pathOf = [](const std::string& text) { return made::refusedAt([&] { readAdhesives(text); }, "none"); };
    EXPECT_EQ(pathOf("{"), "");
    EXPECT_EQ(pathOf("{}"), "adhesives");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"id": "a"}]})"), "adhesives[0].name");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"colour": 1}]})"), "adhesives[0].colour");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"id": "a", "name": "A", "mixes": []}]})"), "adhesives[0].speeds");
    EXPECT_EQ(pathOf(R"({"adhesives": [{"id": "a", "name": "A", "mixes": [{}], "speeds": [{}]}]})"),
              "adhesives[0].mixes.name");
}

// A country's settings in which decimals stand after a comma, made from the system's own sources, since none may be
// installed; the program's text is the same under it.
class DecimalComma {
public:
    DecimalComma() {
        const std::string into = folder_.file("comma.UTF-8").string();
        made_ = std::system(("localedef -i de_DE -f UTF-8 " + into + " >/dev/null 2>&1").c_str()) == 0;
        setenv("LOCPATH", folder_.path().c_str(), 1);
        made_ = made_ && std::setlocale(LC_NUMERIC, "comma.UTF-8");
    }
    ~DecimalComma() {
        std::setlocale(LC_NUMERIC, "C");
        unsetenv("LOCPATH");
    }
    DecimalComma(const DecimalComma&) = delete;
    DecimalComma& operator=(const DecimalComma&) = delete;

    bool holds() const { return made_ && std::to_string(1.5) == "1,500000"; }

private:
    const made::TemporaryFolder folder_;
    bool made_ = false;
};

TEST(Adhesives, RatiosThatContradictAreToldWithAPointForTheDecimalsInEveryCountry) {
    const DecimalComma comma;
    ASSERT_TRUE(comma.holds()) << "localedef and the sources of de_DE (Debian's package locales) are needed";
    model::OwnAdhesive own{.partsByVolume = {2.5, 1}, .partsByWeight = {1.25, 1}, .density_kg_m3 = {1000, 1000}};
    const units::InputError error = made::refusal([&] { checkRatios(ownAdhesive(own), "glue"); });
    EXPECT_NE(std::string(error.what()).find("weighs 2.5 to 1, not 1.25"), std::string::npos) << error.what();
    EXPECT_EQ(units::writeMass(1.25, {}), "1.25 kg");
}

TEST(Adhesives, TheDensityOfAMixIsThatOfItsParts) {
    model::OwnAdhesive own{.partsByWeight = {1, 1}, .density_kg_m3 = {1000, 2000}};
    EXPECT_NEAR(ownAdhesive(own).mixDensity_kg_m3(), 2 / (1 / 1000.0 + 1 / 2000.0), 1e-9);
}

}  // namespace adhesive_test
}  // namespace fayline::glue
