// Where the stations lie: along the line, along the outermost strip, in the plane.
#pragma once

#include <vector>

#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::holding {

struct StationPlace {
    int number = 1;             // as on paper: along the line, from the start
    int index = 0;              // in model::Holding::stations
    double at_m = 0;            // along the line
    double alongOutside_m = 0;  // along the outside of the stack, from the start trim line
    line::Xy onLine;            // metres
    line::Xy onOutside;         // where the tape and the pad (or the caul under it) are
    double heading_rad = 0;     // of the line there
};

// The places of all stations of `holding`, ordered along the line; of two at one place the first given comes first.
// They may lie beyond the line's ends, which run on as arcs. Throws InputError (holding.stations[i].at_mm) for a place
// that is no number or further than 100 m off the line's ends.
std::vector<StationPlace> stationPlaces(const model::Holding& holding, const model::Stack& stack,
                                        model::Describes describes, model::Side side, const line::Line& line);

// Length along the outside of the stack from the start trim line to `at_m` (negative before it), metres. Exact for
// strips that do not taper; for tapering ones the outside is integrated.
double alongOutside(const model::Stack& stack, model::Describes describes, model::Side side, const line::Line& line,
                    double at_m);

// Stations `spacing_m` apart at most, evenly from `from_m` to `to_m` along the line, both ends included, alike but for
// their place to `like`. Throws InputError (path holding.stations) for a spacing that is not above 0, or that would
// need more than 1000 stations.
std::vector<model::Station> evenStations(double from_m, double to_m, double spacing_m, const model::Station& like);

}  // namespace fayline::holding
