// Columns: what a prop carries before it buckles.
#include <gtest/gtest.h>

#include "core/holding/props/prop.hpp"
#include "core/units/units.hpp"

namespace fayline::holding {
namespace column_test {

using units::foot_m, units::inch_m, units::poundForce_N, units::psi_Pa;

struct Row {
    double length, slenderness, stability, allowable;
};

// Source: NDS 3.7 (M), worked with 30 figures (D): 89 x 89 mm, E_min = 4 000 MPa, F_c* = 10 MPa, c = 0.8, hinged.
// Tolerance: half of the last figure given.
TEST(PublishedColumn, AllowableLoadInMillimetresAndKilonewtons) {
    const Row rows[] = {{600, 6.742, 0.96996, 76.83},   {1200, 13.483, 0.84951, 67.29}, {1800, 20.225, 0.61142, 48.43},
                        {2400, 26.966, 0.39913, 31.62}, {3000, 33.708, 0.26950, 21.35}, {4000, 44.944, 0.15693, 12.43}};
    for (const Row& row : rows) {
        const Column column = ndsColumn(row.length / 1000, 0.089, 0.089, 4000e6, 10e6);
        EXPECT_NEAR(column.slenderness, row.slenderness, 0.0005) << row.length;
        EXPECT_NEAR(column.stability, row.stability, 0.000005) << row.length;
        EXPECT_NEAR(column.allowable_N / 1000, row.allowable, 0.005) << row.length;
    }
}

// Source: as above (D), 3.5 x 3.5 in, E_min = 580 000 psi, F_c* = 1 552.5 psi, lengths in feet, loads in pounds.
TEST(PublishedColumn, AllowableLoadInInchesAndPounds) {
    const Row rows[] = {{4, 13.714, 0.82900, 15766},
                        {6, 20.571, 0.57241, 10886},
                        {8, 27.429, 0.36595, 6960},
                        {10, 34.286, 0.24530, 4665}};
    for (const Row& row : rows) {
        const Column column =
            ndsColumn(row.length * foot_m, 3.5 * inch_m, 3.5 * inch_m, 580000 * psi_Pa, 1552.5 * psi_Pa);
        EXPECT_NEAR(column.slenderness, row.slenderness, 0.0005) << row.length;
        EXPECT_NEAR(column.stability, row.stability, 0.000005) << row.length;
        EXPECT_NEAR(column.allowable_N / poundForce_N, row.allowable, 0.5) << row.length;
    }
}

// Source: Euler (M), 89 mm square, E = 12 000 MPa (D).
TEST(PublishedColumn, EulerLoad) {
    const double second = 0.089 * 0.089 * 0.089 * 0.089 / 12;
    EXPECT_NEAR(eulerLoad(2.4, 12e9, second) / 1000, 107.507, 0.0005);
    EXPECT_NEAR(eulerLoad(3.0, 12e9, second) / 1000, 68.805, 0.0005);
}

}  // namespace column_test
}  // namespace fayline::holding
