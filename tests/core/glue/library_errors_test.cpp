// What the numerical library does about an error is set once, as a program starts, and nowhere else.
#include "core/glue/library_errors.hpp"

#include <gsl/gsl_errno.h>
#include <gtest/gtest.h>

#include <thread>
#include <vector>

#include "tests/core/glue/made_glue.hpp"

namespace fayline::glue {
namespace library_errors_test {

void ofTheTest(const char*, const char*, int, int) {}

// The handler is one for all threads: whoever changes and restores it while another does the same leaves it wrong.
TEST(LibraryErrors, FitsOnManyThreadsLeaveTheHandlerAlone) {
    gsl_set_error_handler(ofTheTest);
    std::vector<std::thread> threads;
    for (int i = 0; i < 4; ++i) {
        threads.emplace_back([i] {
            for (int k = 0; k < 25; ++k) made::fittedOf(made::epoxy(20 + i + k));
        });
    }
    for (std::thread& thread : threads) thread.join();
    gsl_error_handler_t* const left = gsl_set_error_handler_off();
    EXPECT_EQ(left, ofTheTest);
}

TEST(LibraryErrors, AreReturnedOnceTheProgramHasSaidSo) {
    letLibraryReturnErrors();
    // The library's own handler for that: it returns, where the default aborts.
    gsl_error_handler_t* const now = gsl_set_error_handler_off();
    EXPECT_EQ(now, gsl_set_error_handler_off());
    EXPECT_NE(now, nullptr);
}

}  // namespace library_errors_test
}  // namespace fayline::glue
