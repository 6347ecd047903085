// The main of test programs that work glue out.
#include <gtest/gtest.h>

#include "core/glue/library_errors.hpp"

int main(int argc, char** argv) {
    testing::InitGoogleTest(&argc, argv);
    fayline::glue::letLibraryReturnErrors();
    return RUN_ALL_TESTS();
}
