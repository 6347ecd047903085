// A comma in a number: of decimals, of thousands, or refused because it may be either.
#include "core/units/quantity.hpp"

#include <gtest/gtest.h>

#include "core/units/input_error.hpp"
#include "tests/refusal.hpp"

namespace fayline::units {
namespace quantity_test {

TEST(Quantity, ACommaThatMayBeEitherIsRefused) {
    for (const auto* text : {"1,200", "12,345 kg", "-1,200"}) EXPECT_THROW(withoutCommas(text), InputError) << text;
    EXPECT_STREQ(made::refusal([&] { withoutCommas("1,200 N"); }).what(),
                 "1,200 may mean 1200 or 1.200; write 1200 or 1.200");
    constexpr NamedUnit units[] = {{"n", 1}};
    EXPECT_THROW(readQuantity("1,200 N", units, 1), InputError);
    EXPECT_EQ(readQuantity("1,200.5 N", units, 1), 1200.5);
}

TEST(Quantity, OtherCommasAreReadAsTheyMustBe) {
    EXPECT_EQ(withoutCommas("1,200.5"), "1200.5");
    EXPECT_EQ(withoutCommas("1,200,000 N"), "1200000 N");
    EXPECT_EQ(withoutCommas("0,125"), "0.125");
    EXPECT_EQ(withoutCommas("12,5 %"), "12.5 %");
    EXPECT_EQ(withoutCommas("1,2000"), "1.2000");
    EXPECT_EQ(withoutCommas(",5"), ".5");
    EXPECT_EQ(withoutCommas("1234,567"), "1234.567");
    EXPECT_EQ(withoutCommas("1.5"), "1.5");
    EXPECT_EQ(withoutCommas("no number"), "no number");
}

}  // namespace quantity_test
}  // namespace fayline::units
