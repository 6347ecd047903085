// The places along a piece that are marked on paper, by name.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

enum class MarkKind { station, trimLine, stripEnd, pin, scarfFeather, scarfHeel, post };

struct Mark {
    MarkKind kind = MarkKind::station;
    int number = 0;             // of a station, as on screen; 0: has none
    QString name;               // "3 clamp", "start trim line"
    double at_m = 0;            // along the line from the start trim line
    double alongOutside_m = 0;  // along the outside of the stack from the start trim line
};

// All marks of a piece, in order along the line.
std::vector<Mark> marksOf(const model::Piece& piece, const plan::Plan& plan);

// Radius of a curve's curvature, metres; nothing where it is so great that nobody can tell it from straight.
std::optional<double> radius_m(double curvature_per_m);

QString describesName(model::Describes describes);  // "inner face"

// A length in the boat's display units, with its unit.
QString lengthText(double length_m, const units::Display& display);
// The same length in millimetres: "412.5 mm".
QString millimetresText(double length_m);
QString numberText(double value, int decimals);  // a dash for what is not finite

// A round step of grids and scales in the boat's display units: 100 mm or 6 in.
double gridStep_m(const units::Display& display);

}  // namespace fayline::app::paper
