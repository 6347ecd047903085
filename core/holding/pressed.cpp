#include "core/holding/pressed.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/closing.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/prop_place.hpp"
#include "core/holding/strap.hpp"
#include "core/laminate/stack.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::holding {

namespace {

using units::InputError;

constexpr double slipsOut_m = 0.001;       // an end has slipped out when it lies this far within the pad's inner edge
constexpr double furthestStation_m = 100;  // of a station off the line's ends; beyond it was mistyped

void needForce(const std::string& path, double force_N) {
    if (std::isfinite(force_N) && force_N >= 0) return;
    throw InputError(
        path,
        std::isfinite(force_N) ? units::writeNumber(force_N, 6) + " is not a force" : std::string("that is no number"),
        "give 0 or more");
}

void checkStation(const model::Station& station, std::size_t index, double length_m) {
    const std::string path = "holding.stations[" + std::to_string(index) + "].";
    needForce(path + "most_N", station.most_N);
    if (station.pull_N) needForce(path + "pull_N", *station.pull_N);
    if (!(std::isfinite(station.pad_m) && station.pad_m >= 0)) {
        throw InputError(path + "pad_mm", "that is not a width", "give 0 or more");
    }
    if (!(station.at_m >= -furthestStation_m && station.at_m <= length_m + furthestStation_m)) {
        throw InputError(path + "at_mm", "that is no place near the line",
                         "give a place from 0 to " + units::writeNumber(units::toMillimetres(length_m), 5));
    }
}

void addSupport(std::vector<laminate::Run>& support, laminate::Run run, const laminate::Run& strips) {
    run.from_m = std::max(run.from_m, strips.from_m);
    run.to_m = std::min(run.to_m, strips.to_m);
    if (run.to_m > run.from_m) support.push_back(run);
}

// Runs that touch become one.
std::vector<laminate::Run> joined(std::vector<laminate::Run> runs) {
    std::ranges::sort(runs, [](const auto& a, const auto& b) { return a.from_m < b.from_m; });
    std::vector<laminate::Run> apart;
    for (const laminate::Run& run : runs) {
        if (!apart.empty() && run.from_m <= apart.back().to_m) {
            apart.back().to_m = std::max(apart.back().to_m, run.to_m);
        } else {
            apart.push_back(run);
        }
    }
    return apart;
}

std::vector<laminate::Run> supportOf(const model::Form& form, const laminate::Run& strips, double length_m) {
    std::vector<laminate::Run> support;
    if (form.kind == model::FormKind::posts) {
        for (const model::Post& post : form.posts) {
            addSupport(support, {post.at_m - post.width_m / 2, post.at_m + post.width_m / 2}, strips);
        }
        return joined(support);
    }
    // The boat itself ends where the finished piece does, unless something is said to carry on.
    const bool inPlace = form.kind == model::FormKind::inPlace;
    const double before = form.carriesOnStart_m.value_or(inPlace ? 0 : -strips.from_m);
    const double after = form.carriesOnEnd_m.value_or(inPlace ? 0 : strips.to_m - length_m);
    addSupport(support, {-before, length_m + after}, strips);
    return support;
}

// From where to where a hold bears, along s, no further than the rod; nothing if its middle lies off the rod.
std::optional<laminate::Run> padOf(const Ready& ready, const StackOnForm& work, const model::Station& station,
                                   const laminate::Run& rod) {
    constexpr double rounding_m = 1e-9;
    const double at = alongMiddle(ready.middle, station.at_m);
    if (at < rod.from_m - rounding_m || at > rod.to_m + rounding_m) return {};
    const double half = halfPad_m(station, work.piece.holding.cauls);
    return laminate::Run{std::max(rod.from_m, at - half), std::min(rod.to_m, at + half)};
}

struct LaidStrap {
    std::size_t station = 0;
    Strap strap;
};

std::vector<double> marksOf(const Ready& ready, const StackOnForm& work, const std::vector<Hold>& holds,
                            const std::vector<LaidStrap>& straps, double anchor_m, const std::optional<Caul>& caul) {
    const auto s = [&](double at_m) { return alongMiddle(ready.middle, at_m); };
    std::vector<double> marks{0, s(work.line.length()), anchor_m};
    for (const Hold& hold : holds) {
        for (const double at : {hold.at_m, hold.at_m - hold.pad_m / 2, hold.at_m + hold.pad_m / 2}) marks.push_back(at);
    }
    for (const laminate::Run& run : ready.support) marks.insert(marks.end(), {s(run.from_m), s(run.to_m)});
    for (const double at : ready.loose.ends_m) marks.push_back(s(at));
    for (const model::Pin& pin : work.piece.stack.pins) marks.push_back(s(pin.at_m));
    for (const LaidStrap& laid : straps) marks.insert(marks.end(), {s(laid.strap.from_m), s(laid.strap.to_m)});
    if (caul) marks.insert(marks.end(), {caul->from_s_m, caul->to_s_m});
    return marks;
}

// Where the rod is held lengthways: at the first pin, else at the station that is closed first.
double anchorOf(const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations,
                const std::vector<int>& holds, const laminate::Run& rod) {
    const auto within = [&](double at_m) { return std::clamp(alongMiddle(ready.middle, at_m), rod.from_m, rod.to_m); };
    if (!work.piece.stack.pins.empty()) return within(work.piece.stack.pins.front().at_m);
    for (const int index : closingOrder(stations, work.piece.holding.from, work.line.length())) {
        if (holds[index] >= 0) return within(stations[index].at_m);
    }
    return rod.from_m;
}

bool supportedAt(const std::vector<laminate::Run>& support, double at_m) {
    return std::ranges::any_of(support, [&](const laminate::Run& run) { return run.holds(at_m); });
}

// A caul sawn to the curve bends with the stack from there: its own curvature is the form's.
void stiffen(Rod& rod, std::size_t i, const LooseSection& section, double curvature_per_m, const Caul& caul) {
    const double t = caul.thickness_m;
    const double added = caul.modulus_Pa * section.width_m * t * t * t / 12;
    const double all = rod.stiffness_N_m2[i] + added;
    rod.natural_per_m[i] = (rod.stiffness_N_m2[i] * rod.natural_per_m[i] + added * curvature_per_m) / all;
    rod.stiffness_N_m2[i] = all;
}

void describeRod(Pressed& pressed, const Ready& ready, const std::vector<LaidStrap>& straps,
                 const std::optional<Caul>& caul) {
    Rod& rod = pressed.problem.rod;
    const std::vector<double> places = gaussPlaces(rod.mesh);
    for (std::vector<double>* each : {&rod.curvature_per_m, &rod.curvatureRate_per_m2, &rod.stiffness_N_m2,
                                      &rod.natural_per_m, &rod.foundation_N_m2, &rod.load_N_m}) {
        each->assign(places.size(), 0);
    }
    static constexpr double weights[3] = {5.0 / 18, 8.0 / 18, 5.0 / 18};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const MiddlePlace place = middleAt(ready.middle, places[i]);
        const LooseSection section = sectionAt(ready.loose, place.at_m);
        rod.curvature_per_m[i] = place.curvature_per_m;
        rod.curvatureRate_per_m2[i] = place.curvatureRate_per_m2;
        rod.stiffness_N_m2[i] = section.stiffness_N_m2;
        rod.natural_per_m[i] = section.set * place.curvature_per_m;
        rod.foundation_N_m2[i] = supportedAt(ready.support, place.at_m) ? section.foundation_N_m2 : 0;
        if (caul && places[i] > caul->from_s_m && places[i] < caul->to_s_m) {
            stiffen(rod, i, section, place.curvature_per_m, *caul);
        }
        for (const LaidStrap& laid : straps) {
            const double thrust = bearingTension_N(laid.strap, place.at_m) * std::max(0.0, place.curvature_per_m);
            const std::size_t element = i / 3;
            const double length = rod.mesh.nodes_m[element + 1] - rod.mesh.nodes_m[element];
            rod.load_N_m[i] += thrust;
            pressed.strapThrust_N[laid.station] += thrust * weights[i % 3] * length;
        }
    }
}

// Of a strip at a node of the middle: half its thickness times what curvature is left to bend, its own.
double strainShare(const LooseStrip& strip, const Middle& middle, const MiddleNode& node) {
    const double beside = strip.layer.middle.at(node.at_m) - middle.distance.at(node.at_m);
    const double room = 1 + beside * node.curvature_per_m;
    if (!(room > 0)) return 0;  // the form, turned for springback, leaves less than the line, where there was room
    const double curvature = std::abs(node.curvature_per_m) / room;
    return strip.layer.thicknessAt(node.at_m) * curvature * (1 - strip.set) / 2 / strip.breakingStrain;
}

StrainShare worstStrainOf(const Ready& ready) {
    double greatest_per_m = 0;
    for (const MiddleNode& node : ready.middle.nodes) {
        greatest_per_m = std::max(greatest_per_m, std::abs(node.curvature_per_m));
    }
    StrainShare worst;
    // Strips that do not taper are strained most where the bend is about tightest.
    const double look_per_m = ready.loose.tapers ? 0 : 0.7 * greatest_per_m;
    for (const MiddleNode& node : ready.middle.nodes) {
        if (std::abs(node.curvature_per_m) < look_per_m) continue;
        for (const LooseStrip& strip : ready.loose.strips) {
            if (!strip.run.holds(node.at_m)) continue;
            const double share = strainShare(strip, ready.middle, node);
            if (share > worst.share) worst = {share, node.at_m};
        }
    }
    return worst;
}

}  // namespace

Ready makeReady(const StackOnForm& work) {
    const model::Piece& piece = work.piece;
    Ready ready;
    ready.loose = looseStack(piece.stack, piece.line.describes, work.line.length(), work.species);
    std::vector<laminate::Layer> layers;
    for (const LooseStrip& strip : ready.loose.strips) layers.push_back(strip.layer);
    ready.middle = middleOf(work.line, laminate::sideSign(piece.line.stripsOn), layers, work.form);
    ready.strips = {-piece.stack.runsPastStart_m, work.line.length() + piece.stack.runsPastEnd_m};
    ready.support = supportOf(piece.form, ready.strips, work.line.length());
    if (work.ruledOut != NotPressed::none) {
        ready.notPressed = work.ruledOut;
        return ready;
    }
    if (!ready.middle.room) {
        ready.notPressed = NotPressed::noRoom;
        return ready;
    }
    ready.worstStrain = worstStrainOf(ready);
    if (ready.worstStrain.share >= breaksManyTimes) {
        ready.notPressed = NotPressed::breaks;
    } else if (ready.support.empty()) {
        ready.notPressed = NotPressed::unsupported;
    }
    return ready;
}

bool stripsReach(const Ready& ready, const Problem& problem, const Contact& contact) {
    const double first = alongMiddle(ready.middle, ready.strips.from_m) - slipsOut_m;
    const double last = alongMiddle(ready.middle, ready.strips.to_m) + slipsOut_m;
    for (std::size_t i = 0; i < problem.holds.size(); ++i) {
        const Hold& hold = problem.holds[i];
        const double ofStrips = hold.at_m - contact.holds[i].slip_m;  // what part of the strips lies under the pad
        if (ofStrips + hold.pad_m / 2 < first || ofStrips - hold.pad_m / 2 > last) return false;
    }
    return true;
}

Contact solveWithin(const Ready& ready, const Problem& problem, const Contact* start) {
    Contact contact = solve(problem, start);
    if (!stripsReach(ready, problem, contact)) contact.outcome = Outcome::notConverged;
    return contact;
}

double halfPad_m(const model::Station& station, const model::Cauls& cauls) {
    const auto* screw = model::as<model::Screw>(station);
    return (screw ? screw->washer_m.value_or(station.pad_m) : station.pad_m) / 2 + cauls.thickness_m;
}

Pressed press(const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations, double from_s_m,
              double to_s_m, const std::optional<Caul>& caul, double step_m) {
    const laminate::Run rod{from_s_m, to_s_m};
    Pressed pressed;
    std::vector<LaidStrap> straps;
    pressed.strapThrust_N.assign(stations.size(), 0);
    const std::vector<double> shares = sharesSquare(work.piece, work.line, stations);
    for (std::size_t i = 0; i < stations.size(); ++i) {
        const model::Station& station = stations[i];
        checkStation(station, i, work.line.length());
        pressed.holds.push_back(-1);
        pressed.most_N.push_back(0);
        if (pressesOnForm(station) && model::is<model::Strap>(station.kind))
            straps.push_back({i, layStrap(station, static_cast<int>(i), work)});
        if (!closesGap(station)) continue;
        const std::optional<laminate::Run> pad = padOf(ready, work, station, rod);
        if (!pad) continue;
        pressed.holds.back() = math::countOf(pressed.problem.holds);
        pressed.most_N.back() = station.most_N * shares[i];
        pressed.problem.holds.push_back(
            {(pad->from_m + pad->to_m) / 2, pad->to_m - pad->from_m, pressed.most_N.back(), station.pull_N});
    }
    pressed.problem.padsHold = work.piece.holding.pads == model::Pads::hold;
    pressed.problem.effort = work.effort;
    pressed.problem.anchor_m = anchorOf(ready, work, stations, pressed.holds, rod);
    const std::vector<double> marks =
        marksOf(ready, work, pressed.problem.holds, straps, pressed.problem.anchor_m, caul);
    pressed.problem.rod.mesh = contact::meshBetween(from_s_m, to_s_m, marks, step_m);
    describeRod(pressed, ready, straps, caul);
    for (const LaidStrap& laid : straps) {
        const model::Station& station = stations[laid.station];
        const double thrust = pressed.strapThrust_N[laid.station];
        pressed.most_N[laid.station] = laid.strap.pulled_N > 0 ? thrust * station.most_N / laid.strap.pulled_N : 0;
    }
    return pressed;
}

Pressed pressAll(const Ready& ready, const StackOnForm& work, const std::vector<model::Station>& stations,
                 const std::optional<Caul>& caul) {
    return press(ready, work, stations, alongMiddle(ready.middle, ready.strips.from_m),
                 alongMiddle(ready.middle, ready.strips.to_m), caul);
}

}  // namespace fayline::holding
