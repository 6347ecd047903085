// Published cutting-stock and bin-packing instances with known best values. Each best value was proved (an integer
// answer equal to the rounded-up bound of the pattern relaxation, D) but where its row says otherwise.
#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

#include "core/stock/stock.hpp"

namespace fayline::stock {
namespace cutting_stock_test {

struct Ordered {
    double length = 0;
    int number = 1;
};

struct Instance {
    const char* name;
    double stock;
    std::vector<Ordered> pieces;
    int best;
    int firstFit;  // first-fit decreasing, computed beside the best (D); 0: not said
    const char* source;
};

std::vector<Ordered> single(std::initializer_list<double> lengths) {
    std::vector<Ordered> pieces;
    for (double length : lengths) pieces.push_back({length, 1});
    return pieces;
}

std::vector<Instance> instances() {
    return {
        {"c1",
         5600,
         {{1380, 22},
          {1520, 25},
          {1560, 12},
          {1710, 14},
          {1820, 18},
          {1880, 18},
          {1930, 20},
          {2000, 10},
          {2050, 12},
          {2100, 14},
          {2140, 16},
          {2150, 18},
          {2200, 20}},
         73,
         82,
         "encyclopedia article on the problem, in a public solver example (P*)"},
        {"c2",
         100,
         {{45, 97}, {36, 610}, {31, 395}, {14, 211}},
         453,
         485,
         "Chvatal, Linear Programming, ch. 13, data in two public model libraries (P*; 453 M)"},
        {"c3",
         20,
         {{9, 511}, {8, 301}, {7, 263}, {6, 383}},
         601,
         622,
         "textbook exercise, data in a public test file (P*)"},
        {"c4",
         90,
         {{60, 3}, {30, 21}, {25.5, 94}, {20, 50}, {17.25, 288}, {15, 178}, {12.75, 112}, {10, 144}},
         164,
         167,
         "Chvatal, data in ampl/ampls-api, CuttingCases (P*)"},
        {"c5", 64.5, {{6.77, 10}, {7.56, 40}, {17.46, 33}, {18.76, 10}}, 18, 19, "the same folder (P*)"},
        {"c6", 22, {{7, 110}, {5, 120}, {3, 80}}, 74, 78, "course exercise, data in a public repository (P*)"},
        {"c7", 115, {{25, 50}, {40, 36}, {50, 24}, {55, 8}, {70, 30}}, 60, 61, "made for this (D)"},
        {"c8", 17, {{9, 15}, {5, 20}, {3, 25}}, 19, 19, "operations-research textbook (M)"},
        {"c9", 6000, {{1500, 9}, {1250, 8}, {1080, 7}, {1000, 6}, {950, 5}}, 7, 8, "public test file (P*)"},
        {"c10", 5950, {{1520, 30}, {1420, 30}, {1250, 20}}, 20, 20, "public test file (P*)"},
        {"t60_00", 1000,
         single({495, 474, 473, 472, 466, 450, 445, 444, 439, 430, 419, 414, 410, 395, 372, 370, 366, 366, 366, 363,
                 361, 357, 355, 351, 350, 350, 347, 320, 315, 307, 303, 299, 298, 298, 292, 288, 287, 283, 275, 275,
                 274, 273, 273, 272, 272, 271, 269, 269, 268, 263, 262, 261, 259, 258, 255, 254, 252, 252, 252, 251}),
         20, 23,
         "Falkenauer, in the library of Delorme, Iori and Martello (P); every board full, a cover is known (D)"},
        {"u120_00",
         150,
         {{98, 3}, {96, 2}, {94},    {93, 2}, {92},    {91, 2}, {90},    {87},    {86},    {85, 2}, {84, 5}, {83, 2},
          {82, 2}, {81},    {80, 3}, {79, 2}, {78, 4}, {76},    {74, 2}, {73, 4}, {72},    {71},    {70, 3}, {69, 3},
          {67},    {66},    {64},    {62, 2}, {60, 2}, {59},    {58, 3}, {57, 4}, {55, 3}, {50},    {49, 3}, {47},
          {46, 2}, {45, 2}, {44, 2}, {43, 4}, {42, 5}, {41, 3}, {39, 2}, {38, 3}, {37},    {36, 3}, {35},    {33, 3},
          {32, 2}, {30, 3}, {29},    {28},    {27, 2}, {26},    {25, 2}, {24},    {23, 2}, {20}},
         48,
         49,
         "Falkenauer, the same library; 48 printed in the OR-Library file (P)"},
        {"N1C1W1_A", 100,
         single({99, 99, 96, 96, 92, 92, 91, 88, 87, 86, 85, 76, 74, 72, 69, 67, 67, 62, 61, 56, 52, 51, 49, 46, 44,
                 42, 40, 40, 33, 33, 30, 30, 29, 28, 28, 27, 25, 24, 23, 22, 21, 20, 17, 14, 13, 11, 10, 7,  7,  3}),
         25, 25, "Scholl, the same library (P)"},
        {"N1C1W1_C", 100,
         single({92, 89, 87, 84, 82, 82, 81, 75, 73, 71, 67, 67, 63, 59, 57, 56, 52, 49, 48, 47, 46, 41, 39, 38, 36,
                 35, 34, 34, 30, 29, 26, 21, 20, 19, 18, 15, 15, 13, 11, 10, 10, 10, 9,  8,  8,  7,  6,  6,  6,  3}),
         20, 21, "Scholl, the same library (P)"},
        {"N1C1W4_A", 100,
         single({99, 95, 93, 92, 91, 89, 89, 88, 88, 85, 84, 84, 84, 80, 80, 79, 77, 76, 72, 69, 65, 64, 64, 63, 63,
                 60, 56, 56, 53, 53, 52, 51, 50, 50, 49, 49, 47, 44, 41, 41, 40, 40, 40, 35, 35, 34, 32, 31, 31, 30}),
         35, 35, "Scholl, the same library (P); bounds by area 32, by pairs 34, by patterns 34.33"},
    };
}

// Boards of one lane, a millimetre for each unit.
Job jobOf(const Instance& instance, double kerf) {
    constexpr double unit = 1e-3;
    Job job;
    job.rules.kerf_m = kerf * unit;
    job.rules.planing_m = 0;
    job.rules.sawing = Sawing::ripped;
    int number = 0;
    for (const Ordered& piece : instance.pieces) {
        for (int i = 0; i < piece.number; ++i)
            job.strips.push_back({.piece = "order",
                                  .place = 1,
                                  .species = "oak",
                                  .length_m = (piece.length - kerf) * unit,
                                  .width_m = 0.03,
                                  .thickness_m = 0.006});
        number += piece.number;
    }
    job.boards.push_back({.name = "stock",
                          .species = "oak",
                          .length_m = (instance.stock - kerf) * unit,
                          .width_m = 0.006,
                          .thickness_m = 0.03,
                          .count = number});
    return job;
}

void solves(const Instance& instance, double kerf) {
    SCOPED_TRACE(std::string(instance.name) + ", saw cut " + std::to_string(kerf) + ": " + instance.source);
    const std::atomic<bool> stop{false};
    const Job job = jobOf(instance, kerf);
    if (instance.firstFit > 0) {
        EXPECT_EQ(firstCutPlan(job).boards.size(), static_cast<std::size_t>(instance.firstFit));
    }
    const CutPlan plan = bestCutPlan(job, {}, stop);
    EXPECT_TRUE(plan.missing.empty());
    EXPECT_EQ(plan.boards.size(), static_cast<std::size_t>(instance.best));
    EXPECT_EQ(plan.cuts.size(), job.strips.size());
    // Proven, and a bound that lies above what is known to be possible would be wrong.
    EXPECT_TRUE(plan.proven);
    const double board_m3 = job.boards[0].length_m * 0.006 * 0.03;
    EXPECT_LE(plan.bound, instance.best * board_m3 * (1 + 1e-9));
    EXPECT_NEAR(plan.bound, plan.value, 1e-9 * plan.value);
}

TEST(PublishedCuttingStock, IsSolvedToTheKnownBest) {
    for (const Instance& instance : instances()) solves(instance, 0);
}

// With a saw cut k pieces fit when the sum of (length + k) is at most stock + k (D): pieces and stock shorter by k.
TEST(PublishedCuttingStock, IsSolvedWithASawCutToo) {
    for (const Instance& instance : instances()) solves(instance, instance.stock < 200 ? 0.5 : 3);
}

}  // namespace cutting_stock_test
}  // namespace fayline::stock
