// How much a study still does once its stop is set, counted in what it asks of the heap, which every step of a contact,
// every candidate and every trial does: the same on every machine. The unit is what a whole makePlan of the piece asks.
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <new>

#include "core/plan/parts.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/studies.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace heap {

thread_local long asked = 0;  // of the heap, by this thread
thread_local long stopAt = -1;
thread_local std::atomic<bool>* toStop = nullptr;

void* allocate(std::size_t size) {
    if (++asked == stopAt && toStop) *toStop = true;
    if (void* const memory = std::malloc(size == 0 ? 1 : size)) return memory;
    throw std::bad_alloc();
}

}  // namespace heap

// NOLINTBEGIN(misc-new-delete-overloads): for the whole test program
void* operator new(std::size_t size) {
    return heap::allocate(size);
}
void* operator new[](std::size_t size) {
    return heap::allocate(size);
}
void* operator new(std::size_t size, const std::nothrow_t&) noexcept {
    return std::malloc(size > 0 ? size : 1);
}
void* operator new[](std::size_t size, const std::nothrow_t&) noexcept {
    return std::malloc(size > 0 ? size : 1);
}
void operator delete(void* memory) noexcept {
    std::free(memory);
}
void operator delete[](void* memory) noexcept {
    std::free(memory);
}
void operator delete(void* memory, std::size_t) noexcept {
    std::free(memory);
}
void operator delete[](void* memory, std::size_t) noexcept {
    std::free(memory);
}
// NOLINTEND(misc-new-delete-overloads)

namespace fayline::plan {
namespace stopping_test {

const std::atomic<bool> goOn = false;

// A piece whose every study has something to do: too short a day, springback on record, a bend that may break strips.
model::Piece busyStem() {
    model::Piece piece = made::heldStem();
    piece.glue.air_C = 32;
    return piece;
}

TEST(Stopping, EveryStudyEndsWithinTheWorkOfAFewPlans) {
    constexpr int places = 24;
    // A makePlan of this piece takes 4 ms, so five would be the 20 ms allowed. The study of breaking asks for 5.3
    // plans' worth in one go, of small parts of strips let go, but all of it takes less than one plan.
    constexpr double fewPlans = 6;
    const model::Piece piece = busyStem();
    const Shop shop = made::shop();
    heap::asked = 0;
    const Plan live = makePlan(piece, shop);
    const long ofAPlan = heap::asked;
    ASSERT_GT(ofAPlan, 100);
    Plan given = live;
    given.choices = choicesFor(piece, shop, live, goOn);
    for (const StudyWork& work : studies()) {
        heap::asked = 0;
        (void)work.work(piece, shop, given, goOn);
        const long whole = heap::asked;
        long most = 0;
        for (int i = 0; i < places; ++i) {
            std::atomic<bool> stop = false;
            heap::toStop = &stop;
            heap::stopAt = 1 + whole * i / places;
            heap::asked = 0;
            (void)work.work(piece, shop, given, stop);
            const long after = heap::asked - heap::stopAt;
            heap::toStop = nullptr;
            heap::stopAt = -1;
            most = std::max(most, after);
        }
        std::printf("study %d: %.2f plans' work, at most %.2f after its stop\n", static_cast<int>(work.study),
                    static_cast<double>(whole) / static_cast<double>(ofAPlan),
                    static_cast<double>(most) / static_cast<double>(ofAPlan));
        EXPECT_LT(static_cast<double>(most), fewPlans * static_cast<double>(ofAPlan))
            << "study " << static_cast<int>(work.study);
    }
}

// Points of which no line settles, so that the fit goes through all its rounds and misread ones are looked for at once.
TEST(Stopping, APlanOfAWildLineEndsWhereverItIsStopped) {
    model::Piece piece = made::stem(400, false);
    for (std::size_t i = 10; i < piece.line.points.size(); i += 20) piece.line.points[i].y_m += 0.0254;
    const Shop shop = made::shop();
    heap::asked = 0;
    const Plan whole = makePlan(piece, shop);
    ASSERT_FALSE(whole.line.fair.settled);
    ASSERT_TRUE(whole.line.misreadSought);
    // The line alone: what comes after it stops as the studies do.
    std::atomic<bool> begun = false;
    heap::asked = 0;
    LinePlan line;
    line.of = piece.line;
    line.fair = line::fair(fairInputOf(piece.line));
    ASSERT_TRUE(seekMisread(line, shop.display, begun));
    const long ofTheLine = heap::asked;
    constexpr int places = 16;
    long most = 0;
    for (int i = 0; i < places; ++i) {
        std::atomic<bool> stop = false;
        heap::toStop = &stop;
        heap::stopAt = 1 + ofTheLine * i / places;
        heap::asked = 0;
        EXPECT_FALSE(makePlan(piece, shop, nullptr, stop).has_value()) << "stopped at " << heap::stopAt;
        most = std::max(most, heap::asked - heap::stopAt);
        heap::toStop = nullptr;
        heap::stopAt = -1;
    }
    std::printf("a line of 400 points asks %ld times, at most %ld after its stop\n", ofTheLine, most);
    EXPECT_LT(most, ofTheLine / 20);
}

}  // namespace stopping_test
}  // namespace fayline::plan
