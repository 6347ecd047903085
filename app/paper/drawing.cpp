#include "app/paper/drawing.hpp"

#include <algorithm>
#include <cmath>

#include "app/paper/marks.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

// At this step a chord stays within 0.01 mm of a curve of 50 mm radius.
constexpr double step_m = 0.002;

QPointF toMillimetres(double x_m, double y_m) {
    return {units::toMillimetres(x_m), units::toMillimetres(y_m)};
}

// A curve of a piece that marks stand on: the place and the direction to the strips at an arc length of the line.
class Path {
public:
    Path(const model::Piece& piece, const plan::Plan& plan, bool formEdge)
        : piece_(piece), line_(plan.line.fair.line), form_(formEdge ? &plan.form.line : nullptr) {}

    line::Place at(double at_m) const { return form_ ? form_->faying(at_m) : line_.at(at_m); }

    QPointF on(double at_m) const {
        const line::Place place = at(at_m);
        return toMillimetres(place.x_m, place.y_m);
    }

    QPointF towardsStrips(double at_m) const {
        const double sign = laminate::sideSign(piece_.line.stripsOn);
        const double heading = form_ ? form_->section(at_m).heading_rad : line_.at(at_m).heading_rad;
        return sign * QPointF(-std::sin(heading), std::cos(heading));
    }

    QPolygonF points(double from_m, double to_m) const {
        const int count = std::max(1, static_cast<int>(std::ceil((to_m - from_m) / step_m)));
        QPolygonF points;
        for (int i = 0; i <= count; ++i) points << on(from_m + (to_m - from_m) * i / count);
        return points;
    }

private:
    const model::Piece& piece_;
    const line::Line& line_;
    const laminate::FormLine* form_;  // null: the wanted line
};

CrossMark markAcross(const Path& path, double at_m, double toForm_mm, double toStrips_mm, const QString& name,
                     double width_mm = 0.2, bool bold = false) {
    const QPointF on = path.on(at_m);
    const QPointF outwards = path.towardsStrips(at_m);
    const QPointF a = on - toForm_mm * outwards;
    const QPointF b = on + toStrips_mm * outwards;
    return toStrips_mm >= toForm_mm ? CrossMark{on, a, b, width_mm, name, bold}
                                    : CrossMark{on, b, a, width_mm, name, bold};
}

// Marks of the piece across `path`; their names stand on the side of the strips or of the form.
void addMarks(Drawing& drawing, const Path& path, const model::Piece& piece, const plan::Plan& plan,
              bool towardsStrips) {
    const auto add = [&](double at_m, double near_mm, double far_mm, const QString& name, double width_mm, bool bold) {
        drawing.marks.push_back(towardsStrips ? markAcross(path, at_m, near_mm, far_mm, name, width_mm, bold)
                                              : markAcross(path, at_m, far_mm, near_mm, name, width_mm, bold));
    };
    for (const Mark& mark : marksOf(piece, plan)) {
        switch (mark.kind) {
            case MarkKind::trimLine:
                add(mark.at_m, 12, 30, mark.name, 0.5, true);
                break;
            case MarkKind::station:
                add(mark.at_m, 6, 20, mark.name, 0.2, true);
                break;
            case MarkKind::post:
                break;  // drawn by its two sides, on the form only
            default:
                add(mark.at_m, 6, 14, mark.name, 0.2, false);
        }
    }
}

bool isOn(const QPolygonF& points, const QPointF& place) {
    return std::any_of(points.begin(), points.end(),
                       [&](const QPointF& point) { return QLineF(point, place).length() < 3; });
}

// Beyond its ends a line is not drawn; marks out there have nothing to stand on.
void dropMarksBeyond(Drawing& drawing) {
    std::erase_if(drawing.marks, [&](const CrossMark& mark) { return !isOn(drawing.curves.front().points, mark.on); });
}

// What the plan says of springback. The wanted edge is not drawn beside the form's: somebody would cut to it.
void addSpringback(Drawing& drawing, const plan::Plan& plan) {
    for (const plan::Finding& finding : plan.findings) {
        if (finding.code == plan::Code::springback || finding.code == plan::Code::springbackNotAllowedFor) {
            drawing.notes << QString::fromStdString(plan::textOf(finding, plan.display));
        }
    }
    if (plan.form.corrected) drawing.notes << "This is the form's own edge; the wanted line has a paper of its own.";
}

void addTightest(Drawing& drawing, const Path& path, const plan::Plan& plan, bool towardsStrips) {
    const bool ofForm = !towardsStrips;
    const line::Place tightest = path.at(ofForm ? plan.form.tightestAt_m : plan.line.tightest.at_m);
    const auto radius = radius_m(tightest.curvature_per_m);
    if (!radius) return;
    const double shown_m = ofForm ? *radius : plan::shownRadius(plan.line, plan.display);
    const QString name = "tightest, radius " + lengthText(shown_m, plan.display);
    drawing.marks.push_back(markAcross(path, tightest.at_m, towardsStrips ? 12 : 3, towardsStrips ? 3 : 12, name, 0.2));
}

}  // namespace

Drawing lineDrawing(const model::Piece& piece, const plan::Plan& plan) {
    const Path path(piece, plan, false);
    Drawing drawing;
    drawing.name = "Full-size line";
    drawing.display = plan.display;
    drawing.grid_mm = units::toMillimetres(gridStep_m(plan.display));
    drawing.curves.push_back({path.points(0, plan.line.fair.line.length())});
    addMarks(drawing, path, piece, plan, true);
    dropMarksBeyond(drawing);
    addTightest(drawing, path, plan, true);
    for (std::size_t i = 0; i < piece.line.points.size(); ++i) {
        const model::Point& point = piece.line.points[i];
        const double at_m = i < plan.line.fair.points.size() ? plan.line.fair.points[i].at_m : 0;
        const QString label = QString::fromStdString(point.label);
        drawing.spots.push_back({toMillimetres(point.x_m, point.y_m), -path.towardsStrips(at_m),
                                 label.isEmpty() ? QString("point %1").arg(i + 1) : label});
    }
    drawing.notes << "The thick line is the " + describesName(piece.line.describes) +
                         " of the stack between the trim lines, made fair through the measured points; small rings are "
                         "the points as measured.";
    if (piece.line.takeOff_m > 0) {
        drawing.notes << lengthText(piece.line.takeOff_m, plan.display) +
                             " of planking is deducted square to the line, so the points lie that far outside it.";
    }
    return drawing;
}

Drawing formDrawing(const model::Piece& piece, const plan::Plan& plan) {
    const Path path(piece, plan, true);
    const model::Form& form = piece.form;
    const bool inPlace = form.kind == model::FormKind::inPlace;
    const double start_m = form.carriesOnStart_m.value_or(inPlace ? 0 : piece.stack.runsPastStart_m);
    const double end_m = form.carriesOnEnd_m.value_or(inPlace ? 0 : piece.stack.runsPastEnd_m);
    Drawing drawing;
    drawing.name = "Full-size form";
    drawing.display = plan.display;
    drawing.grid_mm = units::toMillimetres(gridStep_m(plan.display));
    drawing.curves.push_back({path.points(-start_m, plan.line.fair.line.length() + end_m)});
    addMarks(drawing, path, piece, plan, false);
    if (form.kind == model::FormKind::posts) {
        int number = 0;
        for (const model::Post& post : form.posts) {
            const QString name = QString("post %1").arg(++number);
            drawing.marks.push_back(markAcross(path, post.at_m - post.width_m / 2, 16, 0, {}));
            drawing.marks.push_back(markAcross(path, post.at_m + post.width_m / 2, 16, 0, name));
        }
    }
    dropMarksBeyond(drawing);
    addTightest(drawing, path, plan, false);
    drawing.notes << (inPlace ? QString("The thick line is where the first strip lies on the boat.")
                              : QString("The thick line is the edge of the form, where the first strip lies; the names "
                                        "stand on the form's own side."));
    addSpringback(drawing, plan);
    return drawing;
}

}  // namespace fayline::app::paper
