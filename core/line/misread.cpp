// Offsets that were probably misread.
//
// Method. (1) Each point is left out and compared with what its neighbours foretell (leave_out.hpp); the one that is
// furthest out, against the scatter that the others show, is set aside, and the rest are asked again until nobody
// stands out. A point's own misfit would not do: a line held to within a sixteenth of every point bends towards the
// wrong one and blames its neighbours. (2) The line is made fair without those set aside. A suspect stays one only if
// it is off that line by more than reading explains and the line has become fairer. (3) Of the slips of
// writing that could have led to what was written, the likeliest that puts the point back on that line is offered.
#include "core/line/misread.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/line/leave_out.hpp"
#include "core/line/repeated.hpp"
#include "core/line/slips.hpp"

namespace fayline::line {

namespace {

// How many standard deviations off its neighbours' forecast a point must be. Found on random fair lines rounded to a
// sixteenth: see tests/core/line/misread_test.cpp for the rates of false alarms and of slips found.
constexpr double timesScatter = 4.0;
// ... and off the line that is fair without it, in steps of reading: rounding alone reaches half a step.
constexpr double stepsOff = 1.5;
constexpr double leastFairnessGain = 5;
// A line can reach a point with exchanged coordinates by a wide loop that is very fair. So far out, a point needs no
// gain in fairness to be a suspect.
constexpr double beyondDoubt = 30;
constexpr double mostFairnessGain = 1e6;
// Forecasts in the search, beside one for each point: they take about 40 us each.
constexpr int mostForecasts = 4000;

std::vector<Xy> placesOf(const FairInput& input) {
    std::vector<Xy> places;
    places.reserve(input.points.size());
    for (const Offset& point : input.points) places.push_back({point.x_m, point.y_m});
    return places;
}

std::vector<Read> readsOf(const FairInput& input) {
    std::vector<Read> reads;
    reads.reserve(input.points.size());
    for (const Offset& point : input.points) reads.push_back(point.read);
    return reads;
}

double readingStep(const FairInput& input) {
    return std::max(input.readTo_m, 1e-5);
}

// Integral of the squared rate of change of curvature, 1/m^5.
double roughness(const Line& line) {
    constexpr int parts = 400;
    double sum = 0;
    const double step = line.length() / parts;
    for (int i = 0; i < parts; ++i) {
        const double rate = line.at((i + 0.5) * step).curvatureRate_per_m2;
        sum += rate * rate * step;
    }
    return sum;
}

// What is written of the points, for telling which of two suspects a slip explains.
struct Writing {
    const std::vector<std::array<std::string, 2>>& written;
    measure::LengthNotation notation;
    double takeOff_m;
    const std::vector<Read>& reads;
};

// How hard it is to believe that this point alone was miswritten: the rarity of the likeliest slip that agrees with its
// neighbours. A slip that fits none of the known ones is taken for as rare as `noSlip`.
double rarity(const Writing& writing, const Xy& place, int point, const LeftOut& judged) {
    constexpr double noSlip = 6;
    double rarest = noSlip;
    for (const Slip& slip :
         possibleSlips(writing.written[point], {place.x_m, place.y_m}, writing.takeOff_m, writing.notation,
                       writing.reads[point])) {
        const double times = judged.awayIfAt(slip.value_m[0], slip.value_m[1]) / judged.scatter_m;
        rarest = std::min(rarest, times * times / 2 + slip.unlikely);
    }
    return rarest;
}

double largestTimes(const std::vector<LeftOut>& judged, const std::vector<bool>& aside) {
    double largest = 0;
    for (std::size_t i = 0; i < judged.size(); ++i)
        if (!aside[i]) largest = std::max(largest, std::abs(judged[i].times()));
    return largest;
}

constexpr double agreeing = 3;  // standard deviations within which points are taken to agree

// Whether one point, and a slip that is not too rare, explains all that stands out.
bool oneSlipExplains(const std::vector<Xy>& places, const std::vector<bool>& aside, const Writing& writing,
                     const std::vector<LeftOut>& judged) {
    if (std::count(aside.begin(), aside.end(), true) != 1 || largestTimes(judged, aside) > agreeing) return false;
    constexpr double notTooRare = 3;
    const int point = static_cast<int>(std::find(aside.begin(), aside.end(), true) - aside.begin());
    return rarity(writing, places[point], point, judged[point]) < notTooRare;
}

// Sets aside, one after the other, the points that stand out. `judged` is what all say of each point, and afterwards
// what the rest say.
//
// A wrong point makes its neighbours stand out too, near the ends even more than itself. So each that stands out is
// set aside on trial; the one without which the others agree best, and which a slip explains best, goes.
//
// Leaving a point out changes only what is said of those that have it among their neighbours. `forecasts` is how many
// may still be made.
std::vector<bool> setAside(const std::vector<Xy>& places, double readTo_m, const Writing& writing,
                           std::vector<LeftOut>& judged, int& forecasts, const std::atomic<bool>& stop) {
    const int size = static_cast<int>(places.size());
    std::vector<bool> aside(places.size(), false);
    for (int count = 0; count < size / 4; ++count) {
        const double worst = largestTimes(judged, aside);
        if (worst < timesScatter) break;
        int chosen = -1;
        double leastAgainst = std::numeric_limits<double>::infinity();
        std::vector<LeftOut> judgedWithout;
        for (int i = 0; i < size && forecasts > 0; ++i) {
            if (aside[i] || std::abs(judged[i].times()) < std::max(timesScatter, 0.3 * worst)) continue;
            aside[i] = true;
            std::vector<LeftOut> trial = judged;
            const auto [from, to] = reachOf(aside, i);
            for (int k = from; k <= to; ++k) {
                if (stop) return aside;
                trial[k] = leaveOneOut(places, aside, k, readTo_m, writing.reads);
            }
            forecasts -= to - from + 1;
            const double remaining = std::max(0.0, largestTimes(trial, aside) - agreeing);
            const double against = remaining * remaining / 2 + rarity(writing, places[i], i, trial[i]);
            aside[i] = false;
            if (against >= leastAgainst) continue;
            leastAgainst = against;
            chosen = i;
            judgedWithout = std::move(trial);
        }
        // Half a round of trials could choose the wrong one.
        if (chosen < 0 || forecasts <= 0) break;
        aside[chosen] = true;
        judged = std::move(judgedWithout);
    }
    return aside;
}

// `input` without the points set aside, and free to miss as reading explains.
FairInput without(const FairInput& input, const std::vector<bool>& aside) {
    FairInput rest = input;
    rest.points.clear();
    for (std::size_t i = 0; i < input.points.size(); ++i)
        if (!aside[i]) rest.points.push_back(input.points[i]);
    // A heading holds for the end that it was given for.
    if (aside.front()) rest.startHeading_rad.reset();
    if (aside.back()) rest.endHeading_rad.reset();
    rest.fairWithin_m = std::max(input.fairWithin_m, 2 * readingStep(input));
    return rest;
}

// Signed distance of a point, take-off included, from the stretch of the line where the point belongs, from `from_m` to
// `to_m`: a point with its coordinates exchanged may lie near quite another place of the line. Beyond the stretch, the
// distance from its end.
double misfitWithin(const FairInput& input, const Line& line, double from_m, double to_m, double x_m, double y_m) {
    const Nearest nearest = line.nearest(x_m, y_m);
    if (nearest.at_m >= from_m && nearest.at_m <= to_m) return nearest.distance_m + input.takeOff_m;
    double least = std::numeric_limits<double>::infinity();
    constexpr int parts = 64;
    for (int i = 0; i <= parts; ++i) {
        const Place place = line.at(from_m + (to_m - from_m) * i / parts);
        const double away = std::hypot(x_m - place.x_m, y_m - place.y_m);
        const double left =
            std::cos(place.heading_rad) * (y_m - place.y_m) - std::sin(place.heading_rad) * (x_m - place.x_m);
        if (away < std::abs(least)) least = std::copysign(away, left);
    }
    return least + input.takeOff_m;
}

// Where along the line, fair without the points set aside, the point belongs: between its neighbours that were kept.
struct Stretch {
    double from_m = 0;
    double to_m = 0;
};

Stretch stretchOf(const FairLine& rest, const std::vector<bool>& aside, int point) {
    const int kept = static_cast<int>(std::count(aside.begin(), aside.begin() + point, false));
    const int last = static_cast<int>(rest.points.size()) - 1;
    return {kept > 0 ? rest.points[kept - 1].at_m : -0.5 * rest.line.length(),
            kept <= last ? rest.points[kept].at_m : 1.5 * rest.line.length()};
}

// The value of one coordinate that puts the point on the line while the other stays; what was read where the line
// runs along that axis and no value would.
double expectedOnLine(const FairInput& input, const Line& line, const Stretch& stretch, const Offset& point,
                      char axis) {
    double at_m = std::clamp((stretch.from_m + stretch.to_m) / 2, 0.0, line.length());
    for (int step = 0; step < 30; ++step) {
        const Place place = parallel(line.at(at_m), -input.takeOff_m);
        const double c = std::cos(place.heading_rad);
        const double s = std::sin(place.heading_rad);
        const double along = axis == 'x' ? s : c;
        const double miss = axis == 'x' ? point.y_m - place.y_m : point.x_m - place.x_m;
        if (std::abs(along) < 0.05) break;
        const double move = std::clamp(miss / along, -0.25 * line.length(), 0.25 * line.length());
        at_m += move;
        if (std::abs(move) > 1e-9) continue;
        return axis == 'x' ? place.x_m : place.y_m;
    }
    return axis == 'x' ? point.x_m : point.y_m;
}

// The likeliest slip that puts the point back, weighing how far from the line it then is against how rare it is.
void offerRepair(const FairInput& input, const Line& line, const Stretch& stretch,
                 const std::array<std::string, 2>& written, measure::LengthNotation notation, double scatter_m,
                 Suspect& suspect) {
    const Offset& point = input.points[suspect.point];
    double best = std::numeric_limits<double>::infinity();
    for (const Slip& slip : possibleSlips(written, {point.x_m, point.y_m}, input.takeOff_m, notation, point.read)) {
        const double away = misfitWithin(input, line, stretch.from_m, stretch.to_m, slip.value_m[0], slip.value_m[1]);
        const double times = away / scatter_m;
        if (std::abs(times) > 3) continue;
        const double against = times * times / 2 + slip.unlikely;
        if (against >= best) continue;
        best = against;
        suspect.axis = slip.axis == 'b' ? 'x' : slip.axis;
        suspect.slip = slip.says;
        suspect.tryWritten = slip.written;
        suspect.try_m = slip.value_m;
    }
    if (suspect.slip.empty()) {
        // No slip fits: blame the coordinate that was read, or else the one that the line crosses the more squarely.
        const double heading = line.at(line.nearest(point.x_m, point.y_m).at_m).heading_rad;
        const bool upright = std::abs(std::sin(heading)) > std::abs(std::cos(heading));
        suspect.axis = point.read == Read::x || (point.read == Read::both && upright) ? 'x' : 'y';
    }
    suspect.expected_m = expectedOnLine(input, line, stretch, point, suspect.axis);
}

}  // namespace

std::optional<Misread> findMisread(const FairInput& input, const FairLine& fairLine,
                                   const std::vector<std::array<std::string, 2>>& written,
                                   const std::vector<std::string>& labels, measure::LengthNotation notation,
                                   const std::atomic<bool>& stop) {
    Misread found;
    if (static_cast<int>(input.points.size()) < fewestForMisread) return found;

    const std::vector<Xy> places = placesOf(input);
    const std::vector<Read> reads = readsOf(input);
    const double readTo_m = readingStep(input);
    const Writing writing{written, notation, input.takeOff_m, reads};
    const std::vector<bool> none(places.size(), false);
    std::vector<LeftOut> judgedByAll(places.size());
    for (int i = 0; i < static_cast<int>(places.size()); ++i) {
        if (stop) return std::nullopt;
        judgedByAll[i] = leaveOneOut(places, none, i, readTo_m, reads);
    }
    std::vector<LeftOut> judged = judgedByAll;
    int forecasts = mostForecasts;
    const std::vector<bool> aside = setAside(places, readTo_m, writing, judged, forecasts, stop);
    found.searchedAll = forecasts > 0;
    if (stop) return std::nullopt;
    if (!oneSlipExplains(places, aside, writing, judged)) {
        found.repeated =
            repeatedSlips(places, judgedByAll, labels, readTo_m, input.takeOff_m, notation, reads, stop);
        if (stop) return std::nullopt;
        if (!found.repeated.empty()) return found;  // it explains what stands out
    }

    if (std::find(aside.begin(), aside.end(), true) != aside.end()) {
        const FairLine rest = fair(without(input, aside), stop);
        if (stop) return std::nullopt;
        // A point far out can leave no line at all through all points; without it the gain is then without measure.
        const double rough = fairLine.settled ? roughness(fairLine.line) : std::numeric_limits<double>::infinity();
        const double gain = std::min(rough / std::max(roughness(rest.line), 1e-12), mostFairnessGain);
        for (int i = 0; i < static_cast<int>(aside.size()); ++i) {
            if (!aside[i]) continue;
            if (stop) return std::nullopt;
            Suspect suspect;
            suspect.point = i;
            const Stretch stretch = stretchOf(rest, aside, i);
            suspect.away_m = misfitWithin(input, rest.line, stretch.from_m, stretch.to_m, places[i].x_m, places[i].y_m);
            suspect.scatter_m = judged[i].scatter_m;
            suspect.fairnessGain = gain;
            const bool fairer = gain >= leastFairnessGain || std::abs(judged[i].times()) >= beyondDoubt;
            const double share = scatterShare(reads[i], judged[i].direction.x_m, judged[i].direction.y_m);
            if (!fairer || std::abs(suspect.away_m) < stepsOff * share * readTo_m) continue;
            offerRepair(input, rest.line, stretch, written[i], notation, judged[i].scatter_m, suspect);
            // Beyond its neighbours a forecast is worth little: an end point needs a slip that explains it as well.
            const bool beyond = stretch.from_m < 0 || stretch.to_m > rest.line.length();
            if (beyond && suspect.slip.empty()) continue;
            found.suspects.push_back(suspect);
        }
        std::sort(found.suspects.begin(), found.suspects.end(), [](const Suspect& a, const Suspect& b) {
            return std::abs(a.away_m) / a.scatter_m > std::abs(b.away_m) / b.scatter_m;
        });
    }
    return found;
}

}  // namespace fayline::line
