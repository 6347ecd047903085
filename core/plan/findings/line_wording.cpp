#include "core/plan/findings/line_wording.hpp"

#include <cmath>
#include <vector>

#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

constexpr Phrase radiusBetween{FAYLINE_TEXT("plan", "%1 to %2")};
constexpr Phrase radiusOrMore{FAYLINE_TEXT("plan", "%1 or more")};

// What the radius is known to: half of the nearer side of its band.
double knownTo(const LinePlan& line) {
    return (1 / std::abs(line.tightest.curvature_per_m) - line.radiusFrom_m) / 2;
}

}  // namespace

double knownLength(double length_m, double known_m, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const double inch = units::inch_m;
    const std::vector<double> steps =
        metric ? std::vector<double>{1e-3, 2e-3, 5e-3, 1e-2, 2e-2, 5e-2, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100}
               : std::vector<double>{inch / 8, inch / 4,  inch / 2,  inch,       3 * inch,
                                     6 * inch, 12 * inch, 60 * inch, 120 * inch, 600 * inch};
    double chosen = 0;
    for (const double step : steps) {
        if (step <= known_m && step <= length_m) chosen = step;
    }
    return chosen > 0 ? chosen * std::round(length_m / chosen) : length_m;
}

double tightestOff(const LinePlan& line) {
    const double curvature = std::abs(line.tightest.curvature_per_m);
    return curvature > 0 ? 1 / (line.radiusFrom_m * curvature) - 1 : 0;
}

double shownRadius(const LinePlan& line, const units::Display& display) {
    return knownLength(1 / std::abs(line.tightest.curvature_per_m), knownTo(line), display);
}

Arg tightestRadius(const LinePlan& line) {
    return put::known(1 / std::abs(line.tightest.curvature_per_m), knownTo(line));
}

Message radiusBand(const LinePlan& line) {
    const double known_m = knownTo(line);
    const Arg least = put::known(line.radiusFrom_m, known_m);
    if (!(line.radiusTo_m < 1000)) return {radiusOrMore, {least}};
    return {radiusBetween, {least, put::known(line.radiusTo_m, known_m)}};
}

bool tightestAtEnd(const LinePlan& line) {
    const std::vector<line::Foot>& points = line.fair.points;
    if (points.size() < 3) return true;
    return line.tightest.at_m < points[1].at_m || line.tightest.at_m > points[points.size() - 2].at_m;
}

}  // namespace fayline::plan
