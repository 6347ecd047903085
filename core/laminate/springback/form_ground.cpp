#include "core/laminate/springback/form_ground.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "core/laminate/springback/planing.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::laminate {

namespace {

constexpr double step_m = 0.01;
// To either side of where a strip ends.
constexpr double hair_m = 1e-9;

Run formRun(const model::Piece& piece, double length_m) {
    const model::Stack& stack = piece.stack;
    return {-std::max(stack.runsPastStart_m, std::max(0.0, piece.form.carriesOnStart_m.value_or(0))),
            length_m + std::max(stack.runsPastEnd_m, std::max(0.0, piece.form.carriesOnEnd_m.value_or(0)))};
}

double fixedAt(const model::Piece& piece, double length_m, const Run& run) {
    if (piece.form.fixedAt_m) {
        const double at = *piece.form.fixedAt_m;
        if (std::isfinite(at) && run.holds(at)) return at;
        const auto mm = [](double m) { return units::writeNumber(units::toMillimetres(m), 6); };
        throw units::InputError("form.fixed_at_mm", mm(at) + " does not lie on the form",
                                "give a place from " + mm(run.from_m) + " to " + mm(run.to_m));
    }
    if (!piece.stack.pins.empty()) return std::clamp(piece.stack.pins.front().at_m, run.from_m, run.to_m);
    return heldFirstAt(piece.holding.from, length_m);
}

// Evenly spaced places between those that must be there.
std::vector<double> placesOf(std::vector<double> musts) {
    std::ranges::sort(musts);
    // Closer than this two are one.
    musts.erase(std::unique(musts.begin(), musts.end(), [](double a, double b) { return b - a < 2 * hair_m; }),
                musts.end());
    std::vector<double> at{musts.front()};
    for (std::size_t i = 1; i < musts.size(); ++i) {
        const double from = musts[i - 1];
        const double to = musts[i];
        const int count = std::max(1, static_cast<int>(std::ceil((to - from) / step_m - 1e-6)));
        for (int j = 1; j < count; ++j) at.push_back(from + (to - from) * j / count);
        at.push_back(to);
    }
    return at;
}

struct Breaks {
    std::vector<double> at_m;
    bool holds(double at_m_) const {
        return std::ranges::any_of(at_m, [&](double b) { return std::abs(b - at_m_) < 2 * hair_m; });
    }
};

Ground::Place groundPlace(const line::Line& line, const Distance& faying, double at_m, double aside_m) {
    Ground::Place place{line.at(at_m), faying.at(at_m), faying.slopeAt(at_m + aside_m)};
    if (at_m + aside_m < 0 || at_m + aside_m > line.length()) place.line.curvatureRate_per_m2 = 0;
    return place;
}

PartAlong alongPart(const FormGround& ground, const Places& places, const model::Stack& stack) {
    PartAlong part;
    part.places = places;
    const double side = ground.ground.side;
    for (std::size_t i = 0; i < ground.ground.places.size(); ++i) {
        const line::Place& place = ground.ground.places[i].line;
        part.sections.push_back(
            releaseAt(ground.strips, places, place, side, widthAt(stack, place.at_m), place.at_m + ground.aside_m[i]));
    }
    // Where only the form carries on, the last section of the strips stands.
    const auto there = [](const Release& section) { return section.strips > 0; };
    const auto first = std::ranges::find_if(part.sections, there);
    Release last = first == part.sections.end() ? Release{} : *first;
    for (Release& section : part.sections) {
        const double at_m = section.at_m;
        if (there(section)) last = section;
        section = last;
        section.at_m = at_m;
    }
    for (const Release& section : part.sections) part.axisFromLine_m.push_back(section.neutralAxisFromLine_m);
    return part;
}

}  // namespace

double heldFirstAt(model::From from, double length_m) {
    return from == model::From::start ? 0 : from == model::From::middle ? length_m / 2 : length_m;
}

FormGround formGround(const model::Piece& piece, const line::Line& line, const StackPlan& stack) {
    std::vector<double> moduli(piece.stack.strips.size(), 0.0);
    for (const Strip& strip : stack.strips) moduli[strip.group] = strip.modulus_Pa;

    FormGround ground;
    ground.strips = looseStrips(piece.stack, piece.line.describes, line.length(), moduli);
    checkPlaned(piece.stack, ground.strips, line.length());
    ground.ground.side = sideSign(piece.line.stripsOn);
    const Run run = formRun(piece, line.length());
    const double fixed = fixedAt(piece, line.length(), run);
    Breaks breaks{{0, line.length()}};
    for (const BentStrip& strip : ground.strips) {
        if (strip.runs.bent.from_m > run.from_m) breaks.at_m.push_back(strip.runs.bent.from_m);
        if (strip.runs.bent.to_m < run.to_m) breaks.at_m.push_back(strip.runs.bent.to_m);
    }
    std::ranges::sort(breaks.at_m);
    breaks.at_m.erase(std::unique(breaks.at_m.begin(), breaks.at_m.end()), breaks.at_m.end());
    std::vector<double> musts = breaks.at_m;
    for (const double at : {run.from_m, run.to_m, fixed, stack.tightestAt_m}) musts.push_back(at);

    const Distance& faying = ground.strips.front().layer.inner;
    for (const double at : placesOf(musts)) {
        const bool isBreak = breaks.holds(at);
        if (at >= -hair_m && at <= hair_m) ground.ground.start = ground.ground.places.size() + (isBreak ? 1 : 0);
        if (std::abs(at - fixed) < 2 * hair_m) ground.ground.fixed = ground.ground.places.size();
        if (std::abs(at - stack.tightestAt_m) < 2 * hair_m)
            ground.tightest = ground.ground.places.size() + (isBreak && at < line.length() / 2 ? 1 : 0);
        if (std::abs(at - line.length()) < 2 * hair_m) ground.ground.end = ground.ground.places.size();
        for (const double by : {-hair_m, hair_m}) {
            if (!isBreak && by > 0) continue;
            ground.ground.places.push_back(groundPlace(line, faying, at, isBreak ? by : 0));
            ground.aside_m.push_back(isBreak ? by : 0);
        }
    }
    for (const Places& places : partPlaces(ground.strips)) {
        ground.parts.push_back(alongPart(ground, places, piece.stack));
    }
    return ground;
}

std::vector<double> ratiosOn(const FormGround& ground, const PartAlong& part, const std::vector<double>& share) {
    std::vector<double> ratios(share.size());
    std::optional<double> last;
    for (std::size_t i = 0; i < share.size(); ++i) {
        const line::Place& place = ground.ground.places[i].line;
        const Release release = releaseAt(ground.strips, part.places, place, ground.ground.side, 1.0,
                                          place.at_m + ground.aside_m[i], share[i]);
        if (release.strips > 0) {
            // Those before the first strip take that one's.
            if (!last) std::fill(ratios.begin(), ratios.begin() + static_cast<std::ptrdiff_t>(i), release.ratio);
            last = release.ratio;
        }
        ratios[i] = last.value_or(0);
    }
    return ratios;
}

std::vector<double> allowedRatios(const PartAlong& part, const std::vector<double>& ratios) {
    const bool several = part.places.last > part.places.first;
    const auto counts = [&](std::size_t i) { return !several || part.sections[i].strips > 1; };
    std::vector<double> allowed = ratios;
    std::optional<std::size_t> last;
    for (std::size_t i = 0; i < allowed.size(); ++i) {
        if (counts(i)) {
            // Those before the first that counts take that one's.
            if (!last) std::fill(allowed.begin(), allowed.begin() + static_cast<std::ptrdiff_t>(i), ratios[i]);
            last = i;
        }
        if (last) allowed[i] = ratios[*last];
    }
    return allowed;
}

}  // namespace fayline::laminate
