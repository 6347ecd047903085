// Offsets that were probably misread.
//
// Method. (1) Each point is left out and compared with what its neighbours foretell (leave_out.hpp); the one that is
// furthest out, against the scatter that the others show, is set aside, and the rest are asked again until nobody
// stands out. A point's own misfit would not do: a line held to within a sixteenth of every point bends towards the
// wrong one and blames its neighbours. (2) The line about each is made fair without those set aside. A suspect stays
// one only if it is off that line by more than reading explains and the line has become fairer. (3) Of the slips of
// writing that could have led to what was written, the likeliest that puts the point back on that line is offered.
//
// An end point that lies far beyond the others, as a displaced decimal point puts it, is beyond any forecast: it is
// found by its gap before all else (far_end.hpp).
//
// What is far along the line says nothing of a point, so forecasts, trials and fits all look at a neighbourhood: the
// cost of each does not grow with the number of points.
#include "core/line/misread.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/line/far_end.hpp"
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
// Of the points about the one that is furthest out so many are set aside on trial, the worst of them.
constexpr int mostTrials = 12;

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

// Integral of the squared rate of change of curvature between two places, 1/m^5.
double roughness(const Line& line, double from_m, double to_m) {
    constexpr int parts = 400;
    double sum = 0;
    const double step = (to_m - from_m) / parts;
    for (int i = 0; i < parts; ++i) {
        const double rate = line.at(from_m + (i + 0.5) * step).curvatureRate_per_m2;
        sum += rate * rate * step;
    }
    return sum;
}

// What is written of the points, for telling which of two suspects a slip explains.
struct Writing {
    const std::vector<std::array<std::string, 2>>& written;
    units::LengthNotation notation;
    double takeOff_m;
    const std::vector<Read>& reads;
};

// How hard it is to believe that this point alone was miswritten: the rarity of the likeliest slip that agrees with its
// neighbours. A slip that fits none of the known ones is taken for as rare as `noSlip`.
double rarity(const Writing& writing, const Xy& place, int point, const LeftOut& judged) {
    constexpr double noSlip = 6;
    double rarest = noSlip;
    for (const Slip& slip : possibleSlips(writing.written[point], {place.x_m, place.y_m}, writing.takeOff_m,
                                          writing.notation, writing.reads[point])) {
        const double times = judged.awayIfAt(slip.value_m[0], slip.value_m[1]) / judged.scatter_m;
        rarest = std::min(rarest, times * times / 2 + slip.unlikely);
    }
    return rarest;
}

// How far the furthest out of the points `first` to `last` is, those aside not counted, and which that is (-1: none).
struct Furthest {
    int point = -1;
    double times = 0;
};

Furthest furthestOut(const std::vector<LeftOut>& judged, const std::vector<bool>& aside, int first, int last) {
    Furthest furthest;
    for (int i = first; i <= last; ++i) {
        const double times = std::abs(judged[i].times());
        if (!aside[i] && times > furthest.times) furthest = {i, times};
    }
    return furthest;
}

Furthest furthestOut(const std::vector<LeftOut>& judged, const std::vector<bool>& aside) {
    return furthestOut(judged, aside, 0, static_cast<int>(judged.size()) - 1);
}

constexpr double agreeing = 3;  // standard deviations within which points are taken to agree

// Whether one point, and a slip that is not too rare, explains all that stands out.
bool oneSlipExplains(const std::vector<Xy>& places, const std::vector<bool>& aside, const Writing& writing,
                     const std::vector<LeftOut>& judged) {
    if (std::ranges::count(aside, true) != 1 || furthestOut(judged, aside).times > agreeing) return false;
    constexpr double notTooRare = 3;
    const int point = static_cast<int>(std::ranges::find(aside, true) - aside.begin());
    return rarity(writing, places[point], point, judged[point]) < notTooRare;
}

// `input` from one point to another, without those set aside, and free to miss as reading explains.
FairInput without(const FairInput& input, const std::vector<bool>& aside, int from, int to) {
    FairInput rest = input;
    rest.points.clear();
    for (int i = from; i <= to; ++i)
        if (!aside[i]) rest.points.push_back(input.points[i]);
    // A heading holds for the end that it was given for.
    if (from > 0 || aside.front()) rest.startHeading_rad.reset();
    if (to + 1 < static_cast<int>(aside.size()) || aside.back()) rest.endHeading_rad.reset();
    rest.fairWithin_m = std::max(input.fairWithin_m, 2 * readingStep(input));
    return rest;
}

// The search as it goes on.
struct Search {
    const FairInput& input;
    const std::vector<Xy>& places;
    double readTo_m;
    const Writing& writing;
    const std::atomic<bool>& stop;
    int forecasts;  // how many may still be made
    std::vector<LeftOut> judged;
    std::vector<bool> aside;
    std::vector<int> order;  // of those aside, as they were set aside
    bool all = true;         // nobody is left that stands out

    std::array<std::optional<FarEnd>, 2> farEnds;

    void setFarEndsAside();
    void setAside();
    int trial(int worst);
    int endOr(int beside, double againstEnd, double againstBeside);
    std::vector<int> tried(int worst) const;
    void judgeAnew(int point, std::vector<LeftOut>& into);
};

// Leaving a point out changes only what is said of those that have it among their neighbours.
void Search::judgeAnew(int point, std::vector<LeftOut>& into) {
    const auto [from, to] = reachOf(aside, point);
    forecasts -= to - from + 1;
    for (int k = from; k <= to && !stop; ++k) into[k] = leaveOneOut(places, aside, k, readTo_m, writing.reads);
}

// Those about the one furthest out that stand out as well, the worst first.
std::vector<int> Search::tried(int worst) const {
    const double least = std::max(timesScatter, 0.3 * std::abs(judged[worst].times()));
    const auto [from, to] = reachOf(aside, worst);
    std::vector<int> points;
    for (int i = from; i <= to; ++i) {
        if (!aside[i] && std::abs(judged[i].times()) >= least) points.push_back(i);
    }
    std::ranges::stable_sort(points,
                             [&](int a, int b) { return std::abs(judged[a].times()) > std::abs(judged[b].times()); });
    if (points.size() > mostTrials) points.resize(mostTrials);
    return points;
}

// A wrong point makes its neighbours stand out too, near the ends even more than itself. So each that stands out is set
// aside on trial; the one without which the others agree best, and which a slip explains best, goes. -1: the forecasts
// ran out.
int Search::trial(int worst) {
    const std::vector<int> points = tried(worst);
    const int first = reachOf(aside, *std::ranges::min_element(points))[0];
    const int last = reachOf(aside, *std::ranges::max_element(points))[1];
    int chosen = -1;
    double leastAgainst = std::numeric_limits<double>::infinity();
    std::array<double, 2> againstEnd{leastAgainst, leastAgainst};
    for (const int i : points) {
        // Half a round of trials could choose the wrong one.
        if (forecasts <= 0) return -1;
        std::vector<LeftOut> without(judged.begin() + first, judged.begin() + last + 1);
        aside[i] = true;
        std::swap_ranges(without.begin(), without.end(), judged.begin() + first);
        judgeAnew(i, judged);
        const double remaining = std::max(0.0, furthestOut(judged, aside, first, last).times - agreeing);
        const double against = remaining * remaining / 2 + rarity(writing, places[i], i, judged[i]);
        std::swap_ranges(without.begin(), without.end(), judged.begin() + first);
        aside[i] = false;
        if (stop) return -1;
        if (i == 0) againstEnd[0] = against;
        if (i + 1 == static_cast<int>(places.size())) againstEnd[1] = against;
        if (against >= leastAgainst) continue;
        leastAgainst = against;
        chosen = i;
    }
    if (chosen == 1) chosen = endOr(chosen, againstEnd[0], leastAgainst);
    if (chosen + 2 == static_cast<int>(places.size())) chosen = endOr(chosen, againstEnd[1], leastAgainst);
    return chosen;
}

// A wrong end point and the one beside it nearly explain each other: without either the others agree. Where the end is
// nearly as good an explanation, the one without which the line is much fairer is wrong.
int Search::endOr(int beside, double againstEnd, double againstBeside) {
    constexpr double nearly = 4;
    constexpr double muchFairer = 3;
    if (againstEnd > againstBeside + nearly) return beside;
    const int last = static_cast<int>(places.size()) - 1;
    const int end = beside == 1 ? 0 : last;
    const int from = std::max(0, beside - mostRefitted / 2);
    const int to = std::min(last, beside + mostRefitted / 2);
    const auto roughWithout = [&](int point) {
        aside[point] = true;
        const FairLine rest = fair(without(input, aside, from, to), stop);
        aside[point] = false;
        return roughness(rest.line, 0, rest.line.length());
    };
    return muchFairer * roughWithout(end) < roughWithout(beside) ? end : beside;
}

void Search::setFarEndsAside() {
    const int last = static_cast<int>(places.size()) - 1;
    for (const int end : {0, last}) {
        const std::vector<Slip> slips = possibleSlips(writing.written[end], {places[end].x_m, places[end].y_m},
                                                      writing.takeOff_m, writing.notation, writing.reads[end]);
        std::optional<FarEnd>& far = farEnds[end == 0 ? 0 : 1];
        far = farEnd(places, aside, end, readTo_m, writing.reads, slips);
        if (!far || stop) continue;
        aside[end] = true;
        order.push_back(end);
        judgeAnew(end, judged);
    }
}

// Sets aside, one after the other, the points that stand out. `judged` is what all say of each point, and afterwards
// what the rest say.
void Search::setAside() {
    const std::size_t most = std::min<std::size_t>(places.size() / 4, mostSuspects);
    for (;;) {
        const Furthest worst = furthestOut(judged, aside);
        if (worst.times < timesScatter) return;
        all = false;
        if (order.size() == most) return;
        const int chosen = trial(worst.point);
        if (chosen < 0) return;
        aside[chosen] = true;
        order.push_back(chosen);
        judgeAnew(chosen, judged);
        all = true;
    }
}

// The points about one, without those set aside, and the line that is fair through them.
struct Neighbourhood {
    int from = 0;
    int to = -1;
    FairLine line;
    double gain = 0;  // how many times fairer that is
};

Neighbourhood makeFair(const FairInput& input, const FairLine& fairLine, const std::vector<bool>& aside, int from,
                       int to, const std::atomic<bool>& stop) {
    Neighbourhood about{from, to, fair(without(input, aside, from, to), stop), 0};
    if (stop) return about;
    // A point far out can leave no line at all through all points; without it the gain is then without measure.
    const double rough = fairLine.settled
                             ? roughness(fairLine.line, fairLine.points[from].at_m, fairLine.points[to].at_m)
                             : std::numeric_limits<double>::infinity();
    about.gain =
        std::min(rough / std::max(roughness(about.line.line, 0, about.line.line.length()), 1e-12), mostFairnessGain);
    return about;
}

// Signed distance of a point, take-off included, from the stretch of the line where the point belongs, from `from_m` to
// `to_m`: a point with its coordinates exchanged may lie near quite another place of the line. Beyond the stretch, the
// distance from its end.
double misfitWithin(const FairInput& input, const Line& line, double from_m, double to_m, double x_m, double y_m) {
    const Nearest nearest = line.nearest(x_m, y_m);
    // The nearest place of all is an end for every point beyond it: there the line is taken to run on.
    const bool beyond = (from_m < 0 && nearest.at_m <= 0) || (to_m > line.length() && nearest.at_m >= line.length());
    if (!beyond && nearest.at_m >= from_m && nearest.at_m <= to_m) return nearest.distance_m + input.takeOff_m;
    double least = std::numeric_limits<double>::infinity();
    double misfit = 0;
    constexpr int parts = 64;
    for (int i = 0; i <= parts; ++i) {
        const Place place = line.at(from_m + (to_m - from_m) * i / parts);
        const double away = std::hypot(x_m - place.x_m, y_m - place.y_m);
        const double left =
            std::cos(place.heading_rad) * (y_m - place.y_m) - std::sin(place.heading_rad) * (x_m - place.x_m);
        if (away >= least) continue;
        least = away;
        misfit = i == 0 || i == parts ? std::copysign(away, left) : left;
    }
    return misfit + input.takeOff_m;
}

// Where along the line, fair without the points set aside, the point belongs: between its neighbours that were kept.
struct Stretch {
    double from_m = 0;
    double to_m = 0;
};

Stretch stretchOf(const Neighbourhood& about, const std::vector<bool>& aside, int point) {
    const FairLine& rest = about.line;
    const int kept = static_cast<int>(std::count(aside.begin() + about.from, aside.begin() + point, false));
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
void offerRepair(const FairInput& input, const Line& line, const Stretch& stretch, const std::vector<Slip>& slips,
                 double scatter_m, Suspect& suspect) {
    const Offset& point = input.points[suspect.point];
    double best = std::numeric_limits<double>::infinity();
    for (const Slip& slip : slips) {
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
                                   const std::vector<std::string>& labels, units::LengthNotation notation,
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
    Search search{input, places, readTo_m, writing, stop, mostForecasts, judgedByAll, none, {}, true, {}};
    search.setFarEndsAside();
    search.setAside();
    if (stop) return std::nullopt;
    found.searchedAll = search.all;
    found.forecasts = static_cast<int>(places.size()) + mostForecasts - search.forecasts;
    if (!oneSlipExplains(places, search.aside, writing, search.judged)) {
        found.repeated = repeatedSlips(places, judgedByAll, labels, readTo_m, input.takeOff_m, notation, reads, stop);
        if (stop) return std::nullopt;
        if (!found.repeated.empty()) return found;  // it explains what stands out
    }

    Neighbourhood about;
    for (const int i : search.order) {
        constexpr int eachSide = mostRefitted / 2;
        const int from = std::max(0, i - eachSide);
        const int to = std::min(static_cast<int>(places.size()) - 1, i + eachSide);
        if (from != about.from || to != about.to) {
            if (std::count(search.aside.begin() + from, search.aside.begin() + to + 1, false) < fewestForMisread - 1) {
                continue;
            }
            about = makeFair(input, fairLine, search.aside, from, to, stop);
            found.refitted += static_cast<int>(about.line.points.size());
        }
        if (stop) return std::nullopt;
        const bool end = i == 0 || i + 1 == static_cast<int>(places.size());
        const std::optional<FarEnd>& far = search.farEnds[i == 0 ? 0 : 1];
        const LeftOut& judged = end && far ? far->after : search.judged[i];
        Suspect suspect;
        suspect.point = i;
        const Stretch stretch = stretchOf(about, search.aside, i);
        suspect.away_m =
            misfitWithin(input, about.line.line, stretch.from_m, stretch.to_m, places[i].x_m, places[i].y_m);
        suspect.scatter_m = judged.scatter_m;
        suspect.fairnessGain = about.gain;
        const bool fairer = (end && far) || about.gain >= leastFairnessGain || std::abs(judged.times()) >= beyondDoubt;
        const double share = scatterShare(reads[i], judged.direction.x_m, judged.direction.y_m);
        if (!fairer || std::abs(suspect.away_m) < stepsOff * share * readTo_m) continue;
        const std::vector<Slip> slips =
            end && far ? std::vector<Slip>{far->slip}
                       : possibleSlips(written[i], {places[i].x_m, places[i].y_m}, input.takeOff_m, notation, reads[i]);
        offerRepair(input, about.line.line, stretch, slips, judged.scatter_m, suspect);
        // Beyond its neighbours a forecast is worth little: an end point must be twice as far out, and needs a slip
        // that explains it as well.
        const bool beyond = stretch.from_m < 0 || stretch.to_m > about.line.line.length();
        const bool farOut = (end && far) || std::abs(judged.times()) >= 2 * timesScatter;
        if (beyond && (suspect.slip.empty() || !farOut)) continue;
        found.suspects.push_back(suspect);
    }
    std::ranges::stable_sort(found.suspects, [](const Suspect& a, const Suspect& b) {
        return std::abs(a.away_m) / a.scatter_m > std::abs(b.away_m) / b.scatter_m;
    });
    return found;
}

}  // namespace fayline::line
