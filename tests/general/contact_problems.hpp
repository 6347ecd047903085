// Contact problems of several kinds for comparing solvers: a stem, a beam, a hollow, an S, posts; clamps that suffice
// and clamps that do not.
#pragma once

#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "core/contact/contact.hpp"

namespace fayline::general {

using Along = std::function<double(double s_m)>;

struct Form {
    Along curvature;
    Along rate;
};

// k(s) = level + swell sech^2((s - at) / length), as a stem has it.
inline Form swelling(double level, double swell, double at, double length) {
    return {[=](double s) { return level + swell / std::pow(std::cosh((s - at) / length), 2); },
            [=](double s) {
                const double u = (s - at) / length;
                return -2 * swell * std::tanh(u) / std::pow(std::cosh(u), 2) / length;
            }};
}

// k(s) = bend cos(turns s): round and hollow by turns.
inline Form waving(double bend, double turns) {
    return {[=](double s) { return bend * std::cos(turns * s); },
            [=](double s) { return -bend * turns * std::sin(turns * s); }};
}

inline Form level(double curvature) {
    return {[=](double) { return curvature; }, [](double) { return 0.0; }};
}

struct Laid {
    double from_m = 0;
    double to_m = 1;
    double step_m = 0.01;
    double stiffness_N_m2 = 100;
    double narrows = 0;  // share of the stiffness lost from one end to the other
    double foundation_N_m2 = 8e8;
    std::vector<std::pair<double, double>> posts;  // from, to; none: a solid form
};

inline contact::Problem problemOn(const Form& form, const Laid& laid, std::vector<contact::Hold> holds, bool padsHold,
                                  double anchor_m) {
    contact::Problem problem;
    std::vector<double> marks{anchor_m};
    for (const contact::Hold& hold : holds) {
        marks.insert(marks.end(), {hold.at_m - hold.pad_m / 2, hold.at_m, hold.at_m + hold.pad_m / 2});
    }
    for (const auto& [from, to] : laid.posts) marks.insert(marks.end(), {from, to});
    problem.rod.mesh = contact::meshBetween(laid.from_m, laid.to_m, marks, laid.step_m);
    for (const double s : contact::gaussPlaces(problem.rod.mesh)) {
        problem.rod.curvature_per_m.push_back(form.curvature(s));
        problem.rod.curvatureRate_per_m2.push_back(form.rate(s));
        problem.rod.stiffness_N_m2.push_back(laid.stiffness_N_m2 *
                                             (1 - laid.narrows * (s - laid.from_m) / (laid.to_m - laid.from_m)));
        problem.rod.natural_per_m.push_back(0);
        bool supported = laid.posts.empty();
        for (const auto& [from, to] : laid.posts) supported = supported || (s > from && s < to);
        problem.rod.foundation_N_m2.push_back(supported ? laid.foundation_N_m2 : 0);
        problem.rod.load_N_m.push_back(0);
    }
    problem.holds = std::move(holds);
    problem.padsHold = padsHold;
    problem.anchor_m = anchor_m;
    return problem;
}

inline std::vector<contact::Hold> clampsAt(const std::vector<double>& places, double most_N, double pad_m = 0.04) {
    std::vector<contact::Hold> holds;
    for (const double at : places) holds.push_back({at, pad_m, most_N, std::nullopt});
    return holds;
}

struct Named {
    std::string name;
    contact::Problem problem;
};

inline std::vector<Named> contactProblems() {
    std::vector<Named> all;
    const Form stem = swelling(0.10, 1.513, 0.62, 0.34);
    const Laid stemLaid{.from_m = -0.12, .to_m = 1.95, .step_m = 0.015, .stiffness_N_m2 = 90, .narrows = 0.2};
    for (const bool padsHold : {true, false}) {
        const std::string how = padsHold ? ", pads hold" : ", pads slide";
        all.push_back({"stem, clamps that suffice" + how,
                       problemOn(stem, stemLaid, clampsAt({-0.08, 0.2, 0.42, 0.6, 0.78, 1.0, 1.3, 1.62, 1.9}, 2500),
                                 padsHold, -0.08)});
        all.push_back({"stem, weak clamps" + how,
                       problemOn(stem, stemLaid, clampsAt({-0.08, 0.42, 0.78, 1.3, 1.9}, 160), padsHold, 0.42)});
        std::vector<contact::Hold> given = clampsAt({-0.8, 0.0, 0.8}, 800, 0.04);
        given[0].pull_N = 800;
        given[2].pull_N = 800;
        all.push_back(
            {"circle, given pulls at its ends" + how,
             problemOn(level(1 / 1.2), {.from_m = -0.83, .to_m = 0.83, .stiffness_N_m2 = 127}, given, padsHold, 0)});
        all.push_back({"hollow and round by turns" + how,
                       problemOn(waving(0.6, 4), {.from_m = 0, .to_m = 2.0, .step_m = 0.0125, .stiffness_N_m2 = 60},
                                 clampsAt({0.06, 0.4, 0.75, 1.1, 1.5, 1.94}, 900), padsHold, 0.06)});
        all.push_back({"beam on posts" + how,
                       problemOn(level(1 / 3.0),
                                 {.from_m = -0.1,
                                  .to_m = 2.0,
                                  .step_m = 0.0125,
                                  .stiffness_N_m2 = 260,
                                  .posts = {{-0.02, 0.02}, {0.46, 0.5}, {0.94, 0.98}, {1.42, 1.46}, {1.88, 1.92}}},
                                 clampsAt({0.0, 0.48, 0.96, 1.44, 1.9}, 1200), padsHold, 0.96)});
    }
    return all;
}

}  // namespace fayline::general
