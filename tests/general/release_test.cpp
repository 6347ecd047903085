// The release of a glued stack, rho of core/laminate/springback/release, against finite elements.
//
// The elements know what the project's beam leaves out: shear in the wood (its shear modulus is a sixteenth of that
// along the grain), squeezing across the grain, sections that warp. What both assume: the strips slid freely on each
// other until the glue was hard, wood is elastic, glue lines have no thickness.
#include "core/laminate/springback/release.hpp"

#include <gtest/gtest.h>

#include <cstdio>

#include "tests/core/laminate/made_lines.hpp"
#include "tests/general/glued_arc.hpp"
#include "tests/temporary_folder.hpp"

namespace fayline::laminate {
namespace release_test {

struct Compared {
    double elements = 0;  // fall of curvature over the curvature on the form, at the neutral axis
    double rule = 0;      // rho
};

Compared compare(const std::vector<general::ArcStrip>& strips, double formRadius_m) {
    model::Stack stack;
    stack.strips.clear();
    for (const general::ArcStrip& strip : strips) {
        stack.strips.push_back(model::Strips{.count = 1, .thickness_m = strip.thickness_m, .moe_Pa = strip.modulus_Pa});
    }
    stack.glueLine_m = 0;
    stack.runsPastStart_m = stack.runsPastEnd_m = 0;
    const std::vector<Part> parts = partsOf(stack, model::Describes::innerFace, model::Side::left,
                                            made::arc(-formRadius_m, 1.0), wood::builtInSpecies());
    const Release& middle = parts.at(0).along.at(parts.at(0).along.size() / 2);
    const made::TemporaryFolder folder;
    const double fall =
        general::curvatureLetGo({.strips = strips, .formRadius_m = formRadius_m}, folder.path().string());
    const Compared compared{fall * (formRadius_m + middle.neutralAxis_m), middle.ratio};
    std::printf("%zu strips: elements %.5f, rule %.5f, apart %.3f %%\n", strips.size(), compared.elements,
                compared.rule, 100 * (compared.rule / compared.elements - 1));
    return compared;
}

constexpr double within = 0.03;

TEST(ReleaseByElements, TwoThreeAndEightEqualStrips) {
    for (const std::size_t count : {2U, 3U, 8U}) {
        const Compared compared = compare(std::vector<general::ArcStrip>(count, {0.006, 13.5e9}), 0.6);
        EXPECT_NEAR(compared.rule, compared.elements, within * compared.elements) << count;
    }
}

// An ice-boat's plank: ash, pine and ash, 5/16, 1/2 and 5/16 in, with 1.1 times their tabled moduli.
TEST(ReleaseByElements, ThickPineBetweenThinAsh) {
    const Compared compared = compare({{0.0079375, 13.2e9}, {0.0127, 9.4e9}, {0.0079375, 13.2e9}}, 1.0);
    EXPECT_NEAR(compared.rule, compared.elements, within * compared.elements);
}

// Nothing alike on both sides of the neutral axis, and a bend of only eight times the depth.
TEST(ReleaseByElements, ThinToThickAndStiffToSoftOnATightBend) {
    const Compared compared = compare({{0.003, 14e9}, {0.005, 14e9}, {0.008, 8e9}, {0.010, 8e9}}, 0.2);
    EXPECT_NEAR(compared.rule, compared.elements, within * compared.elements);
}

}  // namespace release_test
}  // namespace fayline::laminate
