#include "core/holding/prop_place.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "core/holding/places.hpp"
#include "core/laminate/stack.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

constexpr double usualHeight_m = 0.6;  // of a head above the floor, where no foot is given

// +1 for a prop to the floor, -1 for one overhead: seen upside down the two are the same.
double upOf(model::PropTo to) {
    return to == model::PropTo::floor ? 1 : -1;
}

// Lowest of the feet that are given and of all heads, for one kind of ground, seen with `up`.
struct Levels {
    double foot_m = std::numeric_limits<double>::infinity();
    double head_m = std::numeric_limits<double>::infinity();
};

Levels levelsOf(const std::vector<model::Station>& stations, const std::vector<PropPlace>& places, model::PropTo to) {
    Levels levels;
    for (const PropPlace& place : places) {
        const model::Strut& strut = *model::as<model::Strut>(stations[static_cast<std::size_t>(place.index)]);
        if (strut.to != to) continue;
        levels.head_m = std::min(levels.head_m, upOf(to) * place.head.y_m);
        if (strut.footY_m) levels.foot_m = std::min(levels.foot_m, upOf(to) * *strut.footY_m);
    }
    return levels;
}

void setFoot(PropPlace& place, const model::Strut& strut, const Levels& levels) {
    const double up = upOf(strut.to);
    const double head = up * place.head.y_m;
    const double usual = levels.foot_m < head ? levels.foot_m : levels.head_m - usualHeight_m;
    place.footAssumed = !strut.footX_m || !strut.footY_m;
    place.foot.x_m = strut.footX_m.value_or(place.head.x_m);
    place.foot.y_m = strut.footY_m.value_or(up * usual);
    place.footAboveHead = up * place.foot.y_m >= head;
    place.level_m = place.footAboveHead ? up * usual : place.foot.y_m;
}

void setSlants(PropPlace& place, double up) {
    const double x = place.head.x_m - place.foot.x_m;
    const double y = place.head.y_m - place.foot.y_m;
    place.length_m = std::hypot(x, y);
    place.slant_rad = place.footSlant_rad = std::numbers::pi / 2;
    if (place.length_m <= 0) return;
    const double into = -(x * place.outward.x_m + y * place.outward.y_m);
    const double beside = x * place.outward.y_m - y * place.outward.x_m;
    place.slant_rad = std::atan2(std::abs(beside), into);
    place.footSlant_rad = std::atan2(std::abs(x), up * y);
    place.squareShare = place.slant_rad < steepest_rad ? into / place.length_m : 0;
}

}  // namespace

bool isProp(const model::Station& station) {
    return model::is<model::Strut>(station.kind) && !station.side;
}

std::vector<PropPlace> propPlaces(const model::Piece& piece, const line::Line& line,
                                  const std::vector<model::Station>& stations) {
    if (std::ranges::none_of(stations, isProp)) return {};
    model::Holding asked;
    asked.stations = stations;
    const double side = laminate::sideSign(piece.line.stripsOn);
    std::vector<PropPlace> places;
    for (const StationPlace& station :
         stationPlaces(asked, piece.stack, piece.line.describes, piece.line.stripsOn, line)) {
        if (!isProp(stations[station.index])) continue;
        const line::Xy outward{-side * std::sin(station.heading_rad), side * std::cos(station.heading_rad)};
        const double caul = piece.holding.cauls.thickness_m;
        places.push_back(
            {.index = station.index,
             .number = station.number,
             .head = {station.onOutside.x_m + caul * outward.x_m, station.onOutside.y_m + caul * outward.y_m},
             .outward = outward});
    }

    const Levels floor = levelsOf(stations, places, model::PropTo::floor);
    const Levels overhead = levelsOf(stations, places, model::PropTo::overhead);
    for (std::size_t i = 0; i < places.size(); ++i) {
        const model::Strut& strut = *model::as<model::Strut>(stations[static_cast<std::size_t>(places[i].index)]);
        setFoot(places[i], strut, strut.to == model::PropTo::floor ? floor : overhead);
        setSlants(places[i], upOf(strut.to));
    }
    return places;
}

std::vector<double> sharesSquare(const model::Piece& piece, const line::Line& line,
                                 const std::vector<model::Station>& stations) {
    std::vector<double> shares(stations.size(), 1.0);
    for (const PropPlace& place : propPlaces(piece, line, stations)) {
        shares[place.index] = place.squareShare;
    }
    return shares;
}

}  // namespace fayline::holding
