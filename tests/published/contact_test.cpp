// The rod in contact with its form against what others and other ways of computing say.
#include "core/holding/contact.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <functional>
#include <map>
#include <sstream>
#include <string>

namespace fayline::holding {
namespace {

using Along = std::function<double(double)>;

Along always(double value) {
    return [value](double) { return value; };
}

constexpr double bed_N_m2 = 1e9;
constexpr double step_m = 0.005;

Rod rodOf(const Mesh& mesh, double stiffness_N_m2, const Along& curvature, const Along& rate, double bed = bed_N_m2) {
    Rod rod;
    rod.mesh = mesh;
    for (const double s : gaussPlaces(mesh)) {
        rod.curvature_per_m.push_back(curvature(s));
        rod.curvatureRate_per_m2.push_back(rate(s));
        rod.stiffness_N_m2.push_back(stiffness_N_m2);
        rod.natural_per_m.push_back(0);
        rod.bed_N_m2.push_back(bed);
        rod.load_N_m.push_back(0);
    }
    return rod;
}

// The rows of rod_rows.csv, whose head says where they come from (mark D).
struct Row {
    double s_m;
    double gapPadsHold_mm;
    double gapPadsSlide_mm;
};

std::map<std::string, std::vector<Row>> publishedRows() {
    std::ifstream file(FAYLINE_PUBLISHED "/rod_rows.csv");
    EXPECT_TRUE(file.is_open());
    std::map<std::string, std::vector<Row>> rows;
    std::string line;
    while (std::getline(file, line)) {
        if (line.starts_with('#') || line.starts_with("case,")) continue;
        std::replace(line.begin(), line.end(), ',', ' ');
        std::istringstream words(line);
        std::string name;
        Row row{};
        words >> name >> row.s_m >> row.gapPadsHold_mm >> row.gapPadsSlide_mm;
        EXPECT_TRUE(words) << line;
        rows[name].push_back(row);
    }
    return rows;
}

struct RodCase {
    std::string name;
    double stiffness_N_m2;
    Along curvature;
    Along rate;
    double from_m;
    double to_m;
    std::vector<double> stations_m;
    std::vector<double> pulls_N;
};

double sech(double z) {
    return 1 / std::cosh(z);
}

std::vector<RodCase> rodCases() {
    const double stiffness = 127.02535;
    const Along round = always(1 / 1.2);
    const Along none = always(0);
    const Along stem = [](double s) { return 0.10 + 1.513 * std::pow(sech((s - 0.62) / 0.34), 2); };
    const Along stemRate = [](double s) {
        const double z = (s - 0.62) / 0.34;
        return -2 * 1.513 * std::pow(sech(z), 2) * std::tanh(z) / 0.34;
    };
    const Along hollow = [](double s) { return -0.8 * std::exp(-std::pow((s - 0.8) / 0.4, 2)); };
    const Along hollowRate = [hollow](double s) { return -2 * (s - 0.8) / (0.4 * 0.4) * hollow(s); };
    return {
        {"two_ends", stiffness, round, none, -0.83, 0.83, {-0.8, 0, 0.8}, {800, 0, 800}},
        {"two_ends_strong", stiffness, round, none, -0.83, 0.83, {-0.8, 0, 0.8}, {1500, 0, 1500}},
        {"two_ends_long", stiffness, round, none, -0.95, 0.95, {-0.935, 0, 0.935}, {800, 0, 800}},
        {"four", stiffness, round, none, -0.90, 0.90, {-0.885, -0.8, 0, 0.8, 0.885}, {700, 300, 0, 300, 700}},
        {"stem_like",
         90,
         stem,
         stemRate,
         -0.12,
         1.95,
         {-0.08, 0.2, 0.42, 0.6, 0.78, 1.0, 1.3, 1.62, 1.9},
         {400, 250, 300, 350, 350, 250, 120, 60, 60}},
        {"stem_weak", 90, stem, stemRate, -0.12, 1.95, {-0.08, 0.42, 0.78, 1.3, 1.9}, {250, 200, 200, 100, 60}},
        {"deck_beam",
         260,
         always(1 / 6.086),
         none,
         -0.10,
         2.00,
         {-0.05, 0.45, 0.95, 1.45, 1.95},
         {150, 100, 60, 100, 150}},
        {"hollow",
         35,
         hollow,
         hollowRate,
         -0.05,
         1.65,
         {0, 0.3, 0.55, 0.8, 1.05, 1.3, 1.6},
         {10, 20, 45, 70, 45, 20, 10}},
    };
}

Problem problemOf(const RodCase& each, boat::Pads pads, double step) {
    Problem problem;
    problem.rod = rodOf(meshBetween(each.from_m, each.to_m, each.stations_m, step), each.stiffness_N_m2, each.curvature,
                        each.rate);
    for (std::size_t i = 0; i < each.stations_m.size(); ++i)
        problem.holds.push_back({each.stations_m[i], 0, each.pulls_N[i], each.pulls_N[i]});
    problem.pads = pads;
    problem.anchor_m = each.stations_m[each.stations_m.size() / 2];
    return problem;
}

// Tolerance: 1 % of the case's largest gap or 0.02 mm, whichever is more; the rows themselves are good to half of that.
void expectRows(boat::Pads pads) {
    const auto rows = publishedRows();
    ASSERT_EQ(rows.size(), 8u);
    for (const RodCase& each : rodCases()) {
        SCOPED_TRACE(each.name);
        const Problem problem = problemOf(each, pads, step_m);
        const Contact contact = solve(problem);
        EXPECT_EQ(contact.outcome, Outcome::settled);
        double largest = 0;
        double worst = 0;
        for (const Row& row : rows.at(each.name)) {
            const double gap = pads == boat::Pads::hold ? row.gapPadsHold_mm : row.gapPadsSlide_mm;
            largest = std::max(largest, gap);
            worst = std::max(worst, std::abs(at(problem, contact, row.s_m).gap_m * 1000 - gap));
        }
        EXPECT_GE(rows.at(each.name).size(), 33u);
        EXPECT_LT(worst, std::max(0.01 * largest, 0.02));
        std::printf("%-16s %2d steps, largest gap %.3f mm, worst miss %.4f mm\n", each.name.c_str(), contact.steps,
                    largest, worst);
    }
}

TEST(PublishedRod, PadsThatHoldGiveTheExactGaps) {
    expectRows(boat::Pads::hold);
}

TEST(PublishedRod, PadsThatSlideGiveTheExactGaps) {
    expectRows(boat::Pads::slide);
}

TEST(PublishedRod, ElementsFourTimesFinerChangeGapsByLessThanHalfAPerCent) {
    for (const RodCase& each : rodCases())
        for (const boat::Pads pads : {boat::Pads::hold, boat::Pads::slide}) {
            SCOPED_TRACE(each.name);
            const Problem coarse = problemOf(each, pads, step_m);
            const Problem fine = problemOf(each, pads, step_m / 4);
            const Contact coarseContact = solve(coarse);
            const Contact fineContact = solve(fine);
            EXPECT_EQ(fineContact.outcome, Outcome::settled);
            double largest = 0;
            double change = 0;
            for (double s = each.from_m; s <= each.to_m; s += 0.0037) {
                const double gap = at(fine, fineContact, s).gap_m;
                largest = std::max(largest, gap);
                change = std::max(change, std::abs(at(coarse, coarseContact, s).gap_m - gap));
            }
            EXPECT_LT(change, 0.005 * largest);
        }
}

}  // namespace
}  // namespace fayline::holding
