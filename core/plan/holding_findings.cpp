#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

const char* kindWord(boat::HoldKind kind) {
    switch (kind) {
        case boat::HoldKind::clamp:
            return "Clamp";
        case boat::HoldKind::prop:
            return "Prop";
        case boat::HoldKind::jack:
            return "Jack";
        case boat::HoldKind::screw:
            return "Screw";
        case boat::HoldKind::strap:
            return "Strap";
        case boat::HoldKind::wedge:
            return "Wedge";
    }
    return "Station";
}

Finding about(Severity severity, const std::string& code, double at_m) {
    Finding finding;
    finding.severity = severity;
    finding.about = About::holding;
    finding.code = code;
    finding.at_m = at_m;
    finding.unit = "mm";
    finding.source = {"lengths along the line (derived)", Mark::derived};
    return finding;
}

std::string stationText(const holding::StationPlace& place, const boat::Station& station) {
    return std::string(kindWord(station.kind)) + " " + std::to_string(place.number);
}

// From where to where a station bears on the stack, along the line.
struct Bearing {
    double from_m = 0;
    double to_m = 0;
};

Bearing bearingOf(const boat::Station& station) {
    if (station.kind == boat::HoldKind::strap) {
        const double other = station.to_m.value_or(station.at_m);
        return {std::min(station.at_m, other), std::max(station.at_m, other)};
    }
    return {station.at_m - station.pad_m / 2, station.at_m + station.pad_m / 2};
}

void addOffTheStrips(std::vector<Finding>& findings, const boat::Piece& piece, const LinePlan& line,
                     const HoldingPlan& holding, const measure::Display& display) {
    const double length = line.fair.line.length();
    const double starts = -piece.stack.runsPastStart_m;
    const double ends = length + piece.stack.runsPastEnd_m;
    constexpr double rounding_m = 1e-9;
    for (const holding::StationPlace& place : holding.stations) {
        const boat::Station& station = piece.holding.stations[static_cast<std::size_t>(place.index)];
        const Bearing bearing = bearingOf(station);
        const bool before = bearing.from_m < starts - rounding_m;
        if (!before && bearing.to_m <= ends + rounding_m) continue;
        const double reaches = before ? bearing.from_m : bearing.to_m;
        const double limit = before ? starts : ends;
        Finding finding = about(Severity::caution, "station_off_the_strips", place.at_m);
        finding.value = toMillimetres(reaches);
        finding.limit = toMillimetres(limit);
        finding.text = stationText(place, station) + ", " + placeText(place.at_m, length, display) +
                       ", reaches off the strips: it bears as far as " + placeText(reaches, length, display) +
                       ", and the strips end " + placeText(limit, length, display) + ".";
        findings.push_back(finding);
    }
}

void addPadsOverlap(std::vector<Finding>& findings, const boat::Piece& piece, const LinePlan& line,
                    const HoldingPlan& holding, const measure::Display& display) {
    const holding::StationPlace* last = nullptr;
    for (const holding::StationPlace& place : holding.stations) {
        const boat::Station& station = piece.holding.stations[static_cast<std::size_t>(place.index)];
        if (station.kind == boat::HoldKind::strap) continue;
        const holding::StationPlace* previous = last;
        last = &place;
        if (!previous) continue;
        const boat::Station& other = piece.holding.stations[static_cast<std::size_t>(previous->index)];
        const double apart = place.at_m - previous->at_m;
        const double needed = (station.pad_m + other.pad_m) / 2;
        if (apart >= needed - 1e-9) continue;
        Finding finding = about(Severity::caution, "pads_overlap", place.at_m);
        finding.value = toMillimetres(apart);
        finding.limit = toMillimetres(needed);
        finding.text = stationText(*previous, other) + " and " +
                       (station.kind == other.kind ? std::to_string(place.number) : stationText(place, station)) +
                       ", " + placeText(place.at_m, line.fair.line.length(), display) + ", stand " +
                       spanText(apart, display) + " apart, and their pads need " + spanText(needed, display) + ".";
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> holdingFindings(const boat::Piece& piece, const LinePlan& line, const HoldingPlan& holding,
                                     const measure::Display& display) {
    std::vector<Finding> findings;
    addOffTheStrips(findings, piece, line, holding, display);
    addPadsOverlap(findings, piece, line, holding, display);
    return findings;
}

}  // namespace fayline::plan
