#include <algorithm>
#include <cmath>

#include "core/holding/closing.hpp"
#include "core/holding/pressed.hpp"
#include "core/math/count.hpp"
#include "core/math/skyline_ldlt.hpp"

namespace fayline::holding {

namespace {

constexpr double gravity_m_s2 = 9.80665;
constexpr double beamStep_m = 0.01;
constexpr double apart_m = 1e-6;  // places nearer than this are one

// A straight piece of the strips between two nodes.
struct BeamElement {
    double length_m = 0;
    double stiffness_N_m2 = 0;
    double weight_N_m = 0;
    double thickest_m = 0;  // of its strips
};

struct Beam {
    std::vector<double> nodes_m;  // along the strips from their start
    std::vector<BeamElement> elements;
    std::vector<bool> carried;  // at each node
};

double length_mOf(const Ready& ready) {
    if (!ready.middle.room) return ready.strips.to_m - ready.strips.from_m;
    return alongMiddle(ready.middle, ready.strips.to_m) - alongMiddle(ready.middle, ready.strips.from_m);
}

// Along the strips from their start to along the line and back. Strips that have no room on their line are as long.
double onLine(const Ready& ready, double along_m) {
    if (!ready.middle.room) return ready.strips.from_m + along_m;
    return alongLine(ready.middle, alongMiddle(ready.middle, ready.strips.from_m) + along_m);
}

double onStrips(const Ready& ready, double at_m) {
    if (!ready.middle.room) return at_m - ready.strips.from_m;
    return alongMiddle(ready.middle, at_m) - alongMiddle(ready.middle, ready.strips.from_m);
}

std::vector<double> densities(const StackOnForm& work) {
    std::vector<double> densities;
    for (const model::Strips& strips : work.piece.stack.strips) {
        const wood::Species* species = wood::findSpecies(work.species, strips.species);
        densities.push_back(1120 * species->sg.value);
    }
    return densities;
}

BeamElement elementAt(const Ready& ready, const std::vector<double>& densities, double at_m, double length_m) {
    const LooseSection section = sectionAt(ready.loose, at_m);
    BeamElement element{length_m, section.stiffness_N_m2, 0, 0};
    for (const LooseStrip* strip : stripsThere(ready.loose, at_m)) {
        const double t = strip->layer.thicknessAt(at_m);
        element.weight_N_m += gravity_m_s2 * densities[strip->layer.group] * section.width_m * t;
        element.thickest_m = std::max(element.thickest_m, t);
    }
    return element;
}

Beam beamOf(const StackOnForm& work, const Ready& ready, const std::vector<double>& places_m) {
    const double length = length_mOf(ready);
    std::vector<double> marks{0, length};
    for (const double place : places_m) marks.push_back(std::clamp(place, 0.0, length));
    for (const double end : ready.loose.ends_m) marks.push_back(std::clamp(onStrips(ready, end), 0.0, length));
    std::ranges::sort(marks);

    Beam beam;
    beam.nodes_m = {0};
    const std::vector<double> weights = densities(work);
    for (const double mark : marks) {
        const double from = beam.nodes_m.back();
        if (mark - from < apart_m) continue;
        const int parts = static_cast<int>(std::ceil((mark - from) / beamStep_m));
        for (int i = 0; i < parts; ++i) {
            const double part = (mark - from) / parts;
            beam.elements.push_back(elementAt(ready, weights, onLine(ready, from + (i + 0.5) * part), part));
            beam.nodes_m.push_back(i + 1 == parts ? mark : from + (i + 1) * part);
        }
    }
    beam.carried.assign(beam.nodes_m.size(), false);
    for (const double place : places_m) {
        const double at = std::clamp(place, 0.0, length);
        const auto nearest = std::ranges::min_element(
            beam.nodes_m, [&](double a, double b) { return std::abs(a - at) < std::abs(b - at); });
        beam.carried[nearest - beam.nodes_m.begin()] = true;
    }
    return beam;
}

// Stiffness of an element by its ends' sinking and slope times length, over B / length^3.
constexpr double stiff[4][4] = {{12, 6, -12, 6}, {6, 4, -6, 2}, {-12, -6, 12, -6}, {6, 2, -6, 4}};
// Its weight on them, over weight times length.
constexpr double nodeLoads[4] = {0.5, 1.0 / 12, 0.5, -1.0 / 12};

double lengthPower(std::size_t end, double length_m) {
    return end % 2 == 0 ? 1 : length_m;
}

// Sinking (> 0 down) and slope at each node.
std::vector<double> sinkings(const Beam& beam) {
    const std::size_t unknowns = 2 * beam.nodes_m.size();
    const auto carriers = std::ranges::count(beam.carried, true);
    const auto fixed = [&](std::size_t i) { return beam.carried[i / 2] && (i % 2 == 0 || carriers == 1); };
    std::vector<std::size_t> first(unknowns);
    for (std::size_t i = 0; i < unknowns; ++i) first[i] = i < 2 ? 0 : i - i % 2 - 2;
    math::SkylineLdlt matrix(first);
    matrix.clear();
    std::vector<double> right(unknowns, 0);
    for (std::size_t e = 0; e < beam.elements.size(); ++e) {
        const BeamElement& element = beam.elements[e];
        const double h = element.length_m;
        for (std::size_t i = 0; i < 4; ++i) {
            if (fixed(2 * e + i)) continue;
            right[2 * e + i] += nodeLoads[i] * element.weight_N_m * h * lengthPower(i, h);
            for (std::size_t j = 0; j <= i; ++j) {
                if (fixed(2 * e + j)) continue;
                matrix(2 * e + i, 2 * e + j) +=
                    stiff[i][j] * element.stiffness_N_m2 / (h * h * h) * lengthPower(i, h) * lengthPower(j, h);
            }
        }
    }
    for (std::size_t i = 0; i < unknowns; ++i) {
        if (fixed(i)) matrix(i, i) = 1;
    }
    if (matrix.factorise()) matrix.solve(right);
    return right;
}

// Greatest moment at an element's ends, N m.
double momentOf(const BeamElement& element, const double* ends) {
    const double h = element.length_m;
    double greatest = 0;
    for (const std::size_t i : {1u, 3u}) {
        double moment = -nodeLoads[i] * element.weight_N_m * h * h;
        for (std::size_t j = 0; j < 4; ++j) {
            moment += stiff[i][j] * element.stiffness_N_m2 / (h * h) * lengthPower(j, h) * ends[j];
        }
        greatest = std::max(greatest, std::abs(moment));
    }
    return greatest;
}

Carried carry(const StackOnForm& work, const Ready& ready, const std::vector<double>& places_m) {
    const Beam beam = beamOf(work, ready, places_m);
    const std::vector<double> sunk = sinkings(beam);
    Carried carried{.points = math::countOf(places_m), .places_m = places_m, .length_m = beam.nodes_m.back()};
    for (std::size_t n = 0; n < beam.nodes_m.size(); ++n) {
        if (sunk[2 * n] <= carried.sag_m) continue;
        carried.sag_m = sunk[2 * n];
        carried.sagAt_m = beam.nodes_m[n];
    }
    for (std::size_t e = 0; e < beam.elements.size(); ++e) {
        const BeamElement& element = beam.elements[e];
        carried.weight_N += element.weight_N_m * element.length_m;
        const double curvature = momentOf(element, sunk.data() + 2 * e) / element.stiffness_N_m2;
        carried.strain = std::max(carried.strain, curvature * element.thickest_m / 2);
    }
    return carried;
}

}  // namespace

Carried carriedAt(const StackOnForm& work, int points) {
    const Ready ready = makeReady(work);
    const double length = length_mOf(ready);
    if (points <= 1) return carry(work, ready, {length / 2});
    const double overhang = 1 / std::sqrt(6.0);
    const double spacing = length / (points - 1 + 2 * overhang);
    std::vector<double> places;
    for (int i = 0; i < points; ++i) places.push_back((overhang + i) * spacing);
    return carry(work, ready, places);
}

Carried carriedOn(const StackOnForm& work, const std::vector<double>& places_m) {
    return carry(work, makeReady(work), places_m);
}

}  // namespace fayline::holding
