// Rods on forms as no builder would choose them: for what must hold whatever the piece is.
#pragma once

#include <algorithm>
#include <cmath>
#include <random>
#include <vector>

#include "core/contact/contact.hpp"
#include "core/math/count.hpp"

namespace fayline::contact {

// Bent by a few bumps of curvature along it: all convex, all hollow, or both.
struct RandomForm {
    struct Bump {
        double height_per_m;
        double middle_m;
        double width_m;
    };
    double level_per_m = 0;
    std::vector<Bump> bumps;

    double curvature(double s) const {
        double sum = level_per_m;
        for (const Bump& bump : bumps)
            sum += bump.height_per_m * std::exp(-std::pow((s - bump.middle_m) / bump.width_m, 2));
        return sum;
    }
    double rate(double s) const {
        double sum = 0;
        for (const Bump& bump : bumps) {
            const double z = (s - bump.middle_m) / bump.width_m;
            sum -= bump.height_per_m * 2 * z / bump.width_m * std::exp(-z * z);
        }
        return sum;
    }
};

class RandomRods {
public:
    explicit RandomRods(unsigned seed) : engine_(seed) {}

    double between(double low, double high) { return std::uniform_real_distribution<double>(low, high)(engine_); }
    // As many small ones as large ones.
    double sized(double low, double high) { return std::exp(between(std::log(low), std::log(high))); }
    int count(int low, int high) { return std::uniform_int_distribution<int>(low, high)(engine_); }
    bool chance(double part) { return between(0, 1) < part; }

    RandomForm form(double length_m) {
        RandomForm form;
        const int kind = count(0, 2);  // convex, hollow, both
        const auto sign = [&] { return kind == 0 ? 1.0 : kind == 1 ? -1.0 : chance(0.5) ? 1.0 : -1.0; };
        form.level_per_m = sign() * between(0, 0.4);
        for (int bumps = count(0, 3); bumps > 0; --bumps)
            form.bumps.push_back({sign() * between(0.1, 1.4), between(0, length_m), between(0.15, 0.5)});
        return form;
    }

    Problem problem(double step_m = 0.005) {
        const double length = between(0.6, 2.5);
        const RandomForm onForm = form(length);
        Problem problem;
        std::vector<double> marks;
        for (int holds = count(2, 12); holds > 0; --holds) {
            Hold hold{
                .at_m = between(0, length), .pad_m = chance(0.3) ? 0 : between(0.01, 0.08), .most_N = sized(20, 5000)};
            if (chance(0.2)) hold.pull_N = sized(5, 500);
            for (const double end : {-0.5, 0.0, 0.5}) marks.push_back(hold.at_m + end * hold.pad_m);
            problem.holds.push_back(hold);
        }
        // Solid, or posts of their own widths; the form may end before the rod does.
        struct Stretch {
            double from_m, to_m;
        };
        std::vector<Stretch> stretches;
        if (chance(0.6)) {
            stretches.push_back({chance(0.5) ? 0 : between(0, 0.1), chance(0.5) ? length : length - between(0, 0.1)});
        } else {
            for (double s = between(0, 0.1); s < length; s += between(0.1, 0.3))
                stretches.push_back({s, s + between(0.015, 0.06)});
        }
        for (const Stretch& stretch : stretches) marks.insert(marks.end(), {stretch.from_m, stretch.to_m});
        problem.rod.mesh = meshBetween(0, length, marks, step_m);
        const double stiffness = sized(3, 600);
        const double taper = chance(0.5) ? 0 : between(-0.6, 0.6);
        const double foundation = sized(1e8, 2e9);
        const double natural = chance(0.7) ? 0 : between(0, 0.5);
        const double load = chance(0.7) ? 0 : between(0, 300);
        for (const double s : gaussPlaces(problem.rod.mesh)) {
            problem.rod.curvature_per_m.push_back(onForm.curvature(s));
            problem.rod.curvatureRate_per_m2.push_back(onForm.rate(s));
            problem.rod.stiffness_N_m2.push_back(stiffness * (1 + taper * (s / length - 0.5)));
            problem.rod.natural_per_m.push_back(natural * onForm.curvature(s));
            problem.rod.load_N_m.push_back(load);
            const bool borne = std::ranges::any_of(
                stretches, [s](const Stretch& stretch) { return s > stretch.from_m && s < stretch.to_m; });
            problem.rod.foundation_N_m2.push_back(borne ? foundation : 0);
        }
        problem.padsHold = chance(0.5);
        problem.anchor_m = problem.holds[count(0, math::countOf(problem.holds) - 1)].at_m;
        return problem;
    }

private:
    std::mt19937 engine_;
};

}  // namespace fayline::contact
