// What a user types into a field, read as a value in SI; and a value written as such a field shows it.
//
// Lengths go through core/units. Every function that reads throws units::InputError with an empty path: what was
// found and what would be accepted. Commas as units::withoutCommas reads
// them: "1,5" is 1.5, "1,200" is refused because it may be either.
#pragma once

#include <QString>
#include <QVariant>
#include <array>
#include <optional>
#include <vector>

#include "app/look/text.hpp"
#include "core/model/boat.hpp"
#include "core/units/display.hpp"
#include "core/units/source.hpp"

namespace fayline::app {

double readLengthText(const QString& text, const units::Display& display);  // metres
QString writeLengthText(double length_m, const units::Display& display);    // as readLengthText takes it back

double readNumber(const QString& text);
int readWhole(const QString& text);
double readShare(const QString& text);  // "12" and "12 %" are 0.12
// The same for shares that the project file accepts from 0 to 100 % only. Throws InputError for others.
double readShareWithin1(const QString& text);
QString writeShareText(double share);  // "12 %"

// A slope of grain: "1 in 33", "1:33", "33" or "3 %"; "straight" or 0 is none.
double readGrainSlope(const QString& text);
QString writeGrainSlope(double slope);

// A scarf's slope, 1 in so much: "1 in 10", "1:10", "10"; empty: no scarf.
std::optional<double> readScarf(const QString& text);
QString writeScarf(const std::optional<model::Scarf>& scarf);

// Degrees anticlockwise from +x, in radians; empty: free.
std::optional<double> readHeading(const QString& text);
QString writeHeading(const std::optional<double>& heading_rad);

std::optional<double> readOptionalLength(const QString& text, const units::Display& display);

// Lengths or whole numbers with ";" between them.
std::vector<double> readLengths(const QString& text, const units::Display& display);
std::vector<int> readWholes(const QString& text);

// A coordinate of a point as its owner wrote it; written anew where that text no longer says the coordinate.
QString coordinateText(const model::Point& point, int axis, const units::Display& display);

// Two lengths with "x" between them, "89 x 38"; empty: none.
std::optional<std::array<double, 2>> readSection(const QString& text, const units::Display& display);
QString writeSection(const std::optional<std::array<double, 2>>& section_m, const units::Display& display);

// A small distance without its sign and unit, for a column of figures: "0.31", "0.012". Not finite: a dash.
QString smallFigure(double distance_m, const units::Display& display);
QString smallUnit(const units::Display& display);  // that such a figure is in

// Throws the InputError that opening a file with `after` in it would give, unless `before` gave the same already.
void refuseImpossible(const model::Piece& before, const model::Piece& after);

// "Wood Handbook Table 5-3b. P*: read in a transcription of the published text."
QString sourceText(const units::Source& source);

QString why(const units::InputError& error);  // without the path

}  // namespace fayline::app
