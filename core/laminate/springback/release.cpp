#include "core/laminate/springback/release.hpp"

#include <algorithm>

#include "core/laminate/checks.hpp"
#include "core/laminate/course.hpp"
#include "core/laminate/parallels.hpp"
#include "core/laminate/stack.hpp"
#include "core/math/table.hpp"
#include "core/wood/bending.hpp"

namespace fayline::laminate {

namespace {

// To either side of where a strip ends.
constexpr double besideBreak_m = 1e-9;

std::vector<double> moduliOf(const model::Stack& stack, const std::vector<wood::Species>& species) {
    const std::vector<const wood::Species*> woods = woodsOf(stack, species);
    std::vector<double> moduli;
    for (std::size_t i = 0; i < woods.size(); ++i) {
        moduli.push_back(wood::bending(*woods[i], stack.moisture, stack.grainSlope, stack.strips[i].moe_Pa).modulus_Pa);
    }
    return moduli;
}

}  // namespace

std::vector<BentStrip> looseStrips(const model::Stack& stack, model::Describes describes, double lineLength_m,
                                   const std::vector<double>& moduli_Pa) {
    const std::vector<Layer> all = layers(stack, describes, lineLength_m);
    std::vector<BentStrip> strips;
    strips.reserve(all.size());
    for (const Layer& layer : all) {
        const auto group = static_cast<std::size_t>(layer.group);
        const model::Strips& given = stack.strips[group];
        BentStrip strip{.layer = layer,
                        .runs = runsOf(stack, all, layer.place, lineLength_m),
                        .modulus_Pa = moduli_Pa[group],
                        .stillToBend = given.bentBefore ? 1 - given.bentBefore->set : 1.0};
        const bool lastOfGroup =
            static_cast<std::size_t>(layer.place) == all.size() || all[layer.place].group != layer.group;
        strip.partsOutside = given.dryFace && lastOfGroup && static_cast<std::size_t>(layer.place) != all.size();
        strip.sacrificial = given.sacrificial;
        strips.push_back(strip);
    }
    return strips;
}

std::vector<Places> partPlaces(const std::vector<BentStrip>& strips) {
    std::vector<Places> parts;
    int first = 1;
    for (const BentStrip& strip : strips) {
        const bool last = static_cast<std::size_t>(strip.layer.place) == strips.size();
        if (!strip.partsOutside && !last) continue;
        parts.push_back({first, strip.layer.place});
        first = strip.layer.place + 1;
    }
    return parts;
}

double ownCurvatureShare(const line::Place& place, double side, const Layer& layer, double axisFromLine_m,
                         double share) {
    const double k = stackCurvature(place, side);
    const double axis = 1 + axisFromLine_m * k;
    const double own = axis + (layer.middle.at(place.at_m) - axisFromLine_m) * share * k;
    return own > 0 && axis > 0 ? axis / own : 1.0;
}

Release releaseAt(const std::vector<BentStrip>& strips, const Places& part, const line::Place& place, double side,
                  double width_m, double presentAt_m, double share) {
    Release release;
    release.at_m = place.at_m;
    const auto first = strips.begin() + (part.first - 1);
    const auto last = strips.begin() + part.last;
    double area = 0;
    double moment = 0;
    double face = 0;
    for (auto strip = first; strip != last; ++strip) {
        if (!strip->runs.bent.holds(presentAt_m)) continue;
        if (release.strips == 0) face = strip->layer.inner.at(place.at_m);
        const double weight = strip->modulus_Pa * strip->layer.thicknessAt(place.at_m);
        area += weight;
        moment += weight * strip->layer.middle.at(place.at_m);
        ++release.strips;
    }
    if (release.strips == 0) return release;
    const double axis = moment / area;
    for (auto strip = first; strip != last; ++strip) {
        if (!strip->runs.bent.holds(presentAt_m)) continue;
        const double t = strip->layer.thicknessAt(place.at_m);
        const double own = strip->modulus_Pa * width_m * t * t * t / 12;
        const double away = strip->layer.middle.at(place.at_m) - axis;
        release.wet_N_m2 += own * strip->stillToBend * ownCurvatureShare(place, side, strip->layer, axis, share);
        release.solid_N_m2 += own + strip->modulus_Pa * width_m * t * away * away;
    }
    release.neutralAxis_m = axis - face;
    release.neutralAxisFromLine_m = axis;
    release.ratio = release.wet_N_m2 / release.solid_N_m2;
    return release;
}

double ratioAtPlace(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    const std::vector<wood::Species>& species, double at_m) {
    checkStack(stack);
    const std::vector<BentStrip> strips = looseStrips(stack, describes, line.length(), moduliOf(stack, species));
    return releaseAt(strips, partPlaces(strips).front(), line.at(at_m), sideSign(side), 1.0, at_m).ratio;
}

std::vector<Part> partsOf(const model::Stack& stack, model::Describes describes, model::Side side,
                          const line::Line& line, const std::vector<wood::Species>& species) {
    checkStack(stack);
    const std::vector<BentStrip> strips = looseStrips(stack, describes, line.length(), moduliOf(stack, species));
    const Course course = courseOf(stack, side, line);
    std::vector<Part> parts;
    for (const Places& places : partPlaces(strips)) {
        Part part{places.first, places.last, {}};
        std::vector<line::Place> at = course.places;
        at.insert(at.end(), course.peaks.begin(), course.peaks.end());
        std::vector<double> jumps;
        for (int place = places.first; place <= places.last; ++place) {
            const Run& run = strips[place - 1].runs.bent;
            for (const double end : {run.from_m, run.to_m}) {
                jumps.push_back(end);
                at.push_back(line.at(end));
            }
        }
        std::ranges::sort(at, [](const auto& a, const auto& b) { return a.at_m < b.at_m; });
        double before = -1e9;
        for (const line::Place& place : at) {
            if (place.at_m == before) continue;
            before = place.at_m;
            const double width = widthAt(stack, place.at_m);
            const bool jump = std::ranges::find(jumps, place.at_m) != jumps.end();
            for (const double aside : {-besideBreak_m, besideBreak_m}) {
                if (!jump && aside > 0) continue;
                const Release release =
                    releaseAt(strips, places, place, course.side, width, jump ? place.at_m + aside : place.at_m);
                if (release.strips > 0) part.along.push_back(release);
            }
        }
        parts.push_back(part);
    }
    return parts;
}

double ratioAt(const Part& part, double at_m, double factor) {
    if (part.along.empty()) return 0;
    return factor * math::lookUp(part.along, at_m, &Release::at_m, &Release::ratio);
}

}  // namespace fayline::laminate
