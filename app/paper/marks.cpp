#include "app/paper/marks.hpp"

#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "core/holding/places.hpp"
#include "core/laminate/stack.hpp"
#include "core/math/count.hpp"
#include "core/units/display.hpp"
#include "core/units/figures.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

std::vector<Mark> marksOf(const model::Piece& piece, const plan::Plan& plan) {
    const line::Line& line = plan.line.fair.line;
    std::vector<Mark> marks;
    const auto add = [&](MarkKind kind, const QString& name, double at_m) {
        const double outside_m =
            holding::alongOutside(piece.stack, piece.line.describes, piece.line.stripsOn, line, at_m);
        marks.push_back({kind, 0, name, at_m, outside_m});
    };
    const model::Stack& stack = piece.stack;
    const double end_m = line.length();
    // A scarf runs from its feather end at the trim line, on the form, to its heel on the outside.
    const int outside = math::countOf(plan.stack.strips);
    const auto depth_m = [&](double at_m) {
        return laminate::faceDistance(stack, piece.line.describes, line, outside, at_m) -
               laminate::faceDistance(stack, piece.line.describes, line, 0, at_m);
    };
    if (stack.scarfedStart) add(MarkKind::scarfFeather, "scarf feather", 0);
    if (stack.scarfedEnd) add(MarkKind::scarfFeather, "scarf feather", end_m);
    if (stack.scarfedStart) add(MarkKind::scarfHeel, "scarf heel", stack.scarfedStart->slope * depth_m(0));
    if (stack.scarfedEnd) add(MarkKind::scarfHeel, "scarf heel", end_m - stack.scarfedEnd->slope * depth_m(end_m));
    if (stack.runsPastStart_m > 0) add(MarkKind::stripEnd, "end of strips", -stack.runsPastStart_m);
    add(MarkKind::trimLine, "start trim line", 0);
    for (const holding::StationPlace& station : plan.holding.stations) {
        const model::Station& given = piece.holding.stations.at(static_cast<std::size_t>(station.index));
        marks.push_back({MarkKind::station, station.number,
                         QString("%1 %2").arg(station.number).arg(holdName(given.kind)), station.at_m,
                         station.alongOutside_m});
    }
    for (const model::Pin& pin : stack.pins) add(MarkKind::pin, "pin", pin.at_m);
    for (const model::Post& post : piece.form.posts) {
        if (piece.form.kind == model::FormKind::posts) add(MarkKind::post, "post", post.at_m);
    }
    add(MarkKind::trimLine, "end trim line", end_m);
    if (stack.runsPastEnd_m > 0) add(MarkKind::stripEnd, "end of strips", end_m + stack.runsPastEnd_m);
    std::stable_sort(marks.begin(), marks.end(), [](const Mark& a, const Mark& b) { return a.at_m < b.at_m; });
    return marks;
}

std::optional<double> radius_m(double curvature_per_m) {
    // Over a whole boat's length such a curve rises by less than a hair.
    constexpr double straight_m = 1e5;
    const double radius = 1 / std::abs(curvature_per_m);
    if (!(radius > 0 && radius < straight_m)) return std::nullopt;
    return radius;
}

QString describesName(model::Describes describes) {
    switch (describes) {
        case model::Describes::innerFace:
            return "inner face";
        case model::Describes::middle:
            return "middle";
        case model::Describes::outerFace:
            return "outer face";
    }
    return {};
}

QString lengthText(double length_m, const units::Display& display) {
    return QString::fromStdString(units::writeLengthWithUnit(length_m, display.lengths));
}

QString numberText(double value, int decimals) {
    if (!std::isfinite(value)) return units::noFigure;
    QString text = QString::number(value, 'f', decimals);
    if (text.toDouble() == 0 && text.startsWith('-')) text.remove(0, 1);
    return text;
}

QString millimetresText(double length_m) {
    return numberText(units::toMillimetres(length_m), 1) + " mm";
}

double gridStep_m(const units::Display& display) {
    return display.lengths == units::LengthNotation::millimetres ? 0.1 : 6 * units::inch_m;
}

}  // namespace fayline::app::paper
