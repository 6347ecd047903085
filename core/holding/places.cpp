#include "core/holding/places.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"
#include "core/math/count.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::holding {

namespace {

using units::InputError;

constexpr double furthestOff_m = 100;
constexpr double mostStations = 1000;

// Outer face of the stack.
laminate::Distance outside(const model::Stack& stack, model::Describes describes, double lineLength_m) {
    const std::vector<laminate::Layer> strips = laminate::layers(stack, describes, lineLength_m);
    return strips.empty() ? laminate::Distance{0, 0, lineLength_m} : strips.back().outer;
}

void checkPlace(const model::Station& station, std::size_t index, double length_m) {
    if (station.at_m >= -furthestOff_m && station.at_m <= length_m + furthestOff_m) return;
    const std::string path = "holding.stations[" + std::to_string(index) + "].at_mm";
    if (!std::isfinite(station.at_m)) throw InputError(path, "that is no number", "give a place along the line");
    throw InputError(path, units::writeNumber(units::toMillimetres(station.at_m), 6) + " is nowhere near the line",
                     "give a place from 0 to " + units::writeNumber(units::toMillimetres(length_m), 5));
}

}  // namespace

std::vector<StationPlace> stationPlaces(const model::Holding& holding, const model::Stack& stack,
                                        model::Describes describes, model::Side side, const line::Line& line) {
    const double sign = laminate::sideSign(side);
    const laminate::Distance face = outside(stack, describes, line.length());
    std::vector<std::size_t> order(holding.stations.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    for (const std::size_t index : order) checkPlace(holding.stations[index], index, line.length());
    std::ranges::stable_sort(
        order, [&](std::size_t a, std::size_t b) { return holding.stations[a].at_m < holding.stations[b].at_m; });

    std::vector<StationPlace> places;
    double reached_m = 0;  // along the line, and how far the tape along the outside has come there
    double tape_m = 0;
    for (const std::size_t index : order) {
        const double at = holding.stations[index].at_m;
        tape_m += laminate::lengthBeside(line, sign, face, reached_m, at);
        reached_m = at;
        const line::Place on = line.at(at);
        places.push_back({.number = math::countOf(places) + 1,
                          .index = static_cast<int>(index),
                          .at_m = at,
                          .alongOutside_m = tape_m,
                          .onLine = {on.x_m, on.y_m},
                          .onOutside = laminate::pointBeside(on, sign, face.at(at)),
                          .heading_rad = on.heading_rad});
    }
    return places;
}

double alongOutside(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    double at_m) {
    return laminate::lengthBeside(line, laminate::sideSign(side), outside(stack, describes, line.length()), 0, at_m);
}

std::vector<model::Station> evenStations(double from_m, double to_m, double spacing_m, const model::Station& like) {
    if (!std::isfinite(from_m) || !std::isfinite(to_m)) {
        throw InputError("holding.stations", "from and to must be numbers", "give places along the line");
    }
    if (!(std::isfinite(spacing_m) && spacing_m > 0)) {
        throw InputError(
            "holding.stations",
            units::writeNumber(units::toMillimetres(std::isfinite(spacing_m) ? spacing_m : 0), 6) + " is not a spacing",
            "give a spacing above 0");
    }
    if (to_m < from_m) std::swap(from_m, to_m);
    // A spacing that divides the length but for rounding needs no station more.
    const double spaces = std::max(1.0, std::ceil((to_m - from_m) / spacing_m * (1 - 1e-9)));
    if (!(spaces + 1 <= mostStations)) {
        throw InputError("holding.stations", "that would need more than 1000 stations", "give a wider spacing");
    }
    std::vector<model::Station> stations;
    const int count = to_m == from_m ? 0 : static_cast<int>(spaces);
    for (int i = 0; i <= count; ++i) {
        model::Station station = like;
        station.at_m = i == count ? to_m : from_m + (to_m - from_m) * i / spaces;
        stations.push_back(station);
    }
    return stations;
}

}  // namespace fayline::holding
