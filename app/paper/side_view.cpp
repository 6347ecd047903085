#include "app/paper/side_view.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "app/look/names.hpp"
#include "app/paper/bench_figures.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/placing.hpp"
#include "app/paper/room.hpp"
#include "core/holding/props/prop.hpp"
#include "core/holding/props/screw.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double highestView_mm = 86;
constexpr double foot_mm = 9;     // below the drawing: scale and bar
constexpr double border_mm = 11;  // about the drawing, for names
constexpr double letters_mm = 2.7;

QPointF toMillimetres(const line::Xy& place) {
    return {units::toMillimetres(place.x_m), units::toMillimetres(place.y_m)};
}

QPolygonF faceLine(const std::vector<line::Xy>& face) {
    QPolygonF line;
    for (const line::Xy& place : face) line << toMillimetres(place);
    return line;
}

struct Seen {
    QPolygonF inner;
    QPolygonF outer;
    std::optional<double> floor_mm;
    std::optional<double> overhead_mm;
    QRectF bounds;
};

void reach(QRectF& bounds, const QPointF& place, bool& any) {
    if (!std::isfinite(place.x()) || !std::isfinite(place.y())) return;
    if (!any) bounds = QRectF(place, QSizeF(0, 0));
    any = true;
    bounds.setLeft(std::min(bounds.left(), place.x()));
    bounds.setRight(std::max(bounds.right(), place.x()));
    bounds.setTop(std::min(bounds.top(), place.y()));
    bounds.setBottom(std::max(bounds.bottom(), place.y()));
}

Seen look(const model::Piece& piece, const plan::Plan& plan) {
    Seen seen;
    if (!plan.stack.faces.empty()) {
        seen.inner = faceLine(plan.stack.faces.front());
        seen.outer = faceLine(plan.stack.faces.back());
    }
    bool any = false;
    for (const QPolygonF& line : {seen.inner, seen.outer}) {
        for (const QPointF& place : line) reach(seen.bounds, place, any);
    }
    for (const holding::PropPlan& prop : plan.holding.props) {
        reach(seen.bounds, toMillimetres(prop.head), any);
        reach(seen.bounds, toMillimetres(prop.foot), any);
        const double y = units::toMillimetres(prop.foot.y_m);
        const model::Station& station = piece.holding.stations.at(static_cast<std::size_t>(prop.index));
        const bool overhead = station.strut.to == model::PropTo::overhead;
        if (overhead)
            seen.overhead_mm = std::max(y, seen.overhead_mm.value_or(y));
        else
            seen.floor_mm = std::min(y, seen.floor_mm.value_or(y));
    }
    if (piece.holding.hull.weight_kg > 0) {
        const model::Hull& hull = piece.holding.hull;
        reach(seen.bounds, toMillimetres({hull.centreX_m, hull.centreY_m}), any);
        for (const model::Block& block : hull.blocks) reach(seen.bounds, toMillimetres({block.x_m, block.y_m}), any);
    }
    return seen;
}

// The drawing is 1 : this.
double roundScale(double needed, const units::Display& display) {
    static constexpr std::array metric = {1.0, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 7.5};
    static constexpr std::array imperial = {1.0, 2.0, 4.0, 8.0, 12.0, 16.0, 24.0, 32.0, 48.0, 64.0, 96.0};
    if (display.lengths != units::LengthNotation::millimetres) {
        for (const double scale : imperial) {
            if (scale >= needed) return scale;
        }
    }
    for (double tens = 1; tens < 1e9; tens *= 10) {
        for (const double step : metric) {
            if (step * tens >= needed && step * tens == std::floor(step * tens)) return step * tens;
        }
    }
    return needed;
}

double scaleOf(const QRectF& bounds, double width_mm, const units::Display& display) {
    const double highest_mm = highestView_mm - foot_mm - 2 * border_mm;
    return roundScale(std::max({bounds.width() / (width_mm - 2 * border_mm), bounds.height() / highest_mm, 1.0}),
                      display);
}

class View {
public:
    View(Sheet& sheet, const QRectF& box, const model::Piece& piece, const plan::Plan& plan)
        : sheet_(sheet),
          box_(box.adjusted(0, 0, 0, -foot_mm)),
          piece_(piece),
          plan_(plan),
          seen_(look(piece, plan)),
          room_(box_) {
        scale_ = scaleOf(seen_.bounds, box.width(), plan.display);
        const QRectF inner = box_.adjusted(border_mm, border_mm, -border_mm, -border_mm);
        const QSizeF size = seen_.bounds.size() / scale_;
        placing_ = {
            seen_.bounds, {inner.center().x() - size.width() / 2, inner.center().y() + size.height() / 2}, 1 / scale_};
    }

    void draw() {
        drawStack();
        drawFloor();
        for (const holding::PropPlan& prop : plan_.holding.props) drawProp(prop);
        for (const holding::ScrewPlan& screw : plan_.holding.screws) drawScrew(screw);
        if (piece_.holding.hull.weight_kg > 0) drawHull();
        for (const Label& label : labels_) named_ = placeLabel(sheet_, room_, label) && named_;
        drawScale();
    }

private:
    Sheet& sheet_;
    QRectF box_;
    const model::Piece& piece_;
    const plan::Plan& plan_;
    Seen seen_;
    Room room_;
    double scale_ = 1;
    Placing placing_;
    std::vector<Label> labels_;  // written when all ink is there
    bool named_ = true;

    QPointF on(const line::Xy& place) const { return placing_(toMillimetres(place)); }

    void ink(const QPolygonF& line, double width_mm, Dash dash = Dash::solid, bool filled = false) {
        sheet_.strokes.push_back({line, width_mm, dash, filled});
        room_.addInk(line);
    }

    int numberOf(int index) const {
        for (const holding::StationPlace& place : plan_.holding.stations) {
            if (place.index == index) return place.number;
        }
        return 0;
    }

    void drawStack() {
        for (const QPolygonF& line : {seen_.inner, seen_.outer}) ink(placing_(line), 0.3);
        for (const bool atEnd : {false, true}) {
            if (seen_.inner.isEmpty() || seen_.outer.isEmpty()) return;
            const QPolygonF across{atEnd ? QPolygonF({seen_.inner.last(), seen_.outer.last()})
                                         : QPolygonF({seen_.inner.first(), seen_.outer.first()})};
            ink(placing_(across), 0.3);
        }
    }

    // A level line with short strokes on the side of the ground.
    void drawLevel(double y_mm, double towards, const QString& name) {
        const double y = placing_({0, y_mm}).y();
        const double left = box_.left() + 1;
        const double right = box_.right() - 1;
        ink({{left, y}, {right, y}}, 0.35);
        for (double x = left + 2; x < right; x += 4) addLine(sheet_, {x, y}, {x - 1.5, y + towards * 1.5}, 0.12);
        room_.addBox(QRectF(left, std::min(y, y + towards * 1.5), right - left, 1.5));
        labels_.push_back({name, {right - 6, y}, {-0.2, towards}, letters_mm, false, 2.2});
    }

    void drawFloor() {
        if (seen_.floor_mm) drawLevel(*seen_.floor_mm, 1, "floor");
        if (seen_.overhead_mm) drawLevel(*seen_.overhead_mm, -1, "overhead");
    }

    // A filled head of an arrow that points along `way`, its tip at `tip`.
    void arrowHead(const QPointF& tip, const QPointF& way) {
        const double length = std::hypot(way.x(), way.y());
        if (!(length > 0)) return;
        const QPointF along = way / length * 2.6;
        const QPointF aside(-along.y() * 0.32, along.x() * 0.32);
        ink({tip, tip - along + aside, tip - along - aside, tip}, 0.1, Dash::solid, true);
    }

    void drawProp(const holding::PropPlan& prop) {
        const QPointF foot = on(prop.foot);
        const QPointF head = on(prop.head);
        ink({foot, head}, 0.6);
        arrowHead(head, head - foot);
        ink({foot - QPointF(2, 0), foot + QPointF(2, 0)}, 0.6);
        const QString kind = holdName(piece_.holding.stations.at(static_cast<std::size_t>(prop.index)).kind);
        const QPointF way = head - foot;
        labels_.push_back({QString("%1 %2, ").arg(numberOf(prop.index)).arg(kind) +
                               forceText(prop.thrust_N, plan_.display).replace(QChar(QChar::Nbsp), ' '),
                           (foot + head) / 2,
                           {-way.y(), way.x()},
                           letters_mm,
                           true});
    }

    void drawScrew(const holding::ScrewPlan& screw) {
        for (const holding::StationPlace& place : plan_.holding.stations) {
            if (place.index != screw.index) continue;
            const double sign = piece_.line.stripsOn == model::Side::left ? 1 : -1;
            const QPointF outwards(-sign * std::sin(place.heading_rad), -sign * std::cos(place.heading_rad));
            const QPointF head = on(place.onOutside);
            const QPointF aside(outwards.y() * 1.2, -outwards.x() * 1.2);
            ink({head + 1.2 * outwards, head - 5 * outwards}, 0.35);
            ink({head + 1.2 * outwards - aside, head + 1.2 * outwards + aside}, 0.5);
            labels_.push_back(
                {QString("%1 screw").arg(place.number), head + 1.2 * outwards, outwards, letters_mm, true});
        }
    }

    void drawBlock(const model::Block& block, int number, const holding::BlockPush* push) {
        const QPointF top = on({block.x_m, block.y_m});
        ink({top, top + QPointF(3, 4), top + QPointF(-3, 4), top}, 0.35);
        QString name = QString("block %1").arg(number);
        if (push && push->lifts) name += ", lifts";
        if (push && !push->lifts) {
            name += ", " + forceText(push->push_N, plan_.display).replace(QChar(QChar::Nbsp), ' ');
        }
        labels_.push_back({name, top, {0, -1}, letters_mm});
    }

    void drawHull() {
        const model::Hull& hull = piece_.holding.hull;
        for (std::size_t i = 0; i < hull.blocks.size(); ++i) {
            const holding::BlockPush* push = nullptr;
            if (plan_.holding.hull) {
                for (const holding::BlockPush& one : plan_.holding.hull->blocks) {
                    if (one.index == static_cast<int>(i)) push = &one;
                }
            }
            drawBlock(hull.blocks[i], static_cast<int>(i) + 1, push);
        }
        const QPointF centre = on({hull.centreX_m, hull.centreY_m});
        QPolygonF ring;
        for (int i = 0; i <= 24; ++i) {
            const double angle = 2 * M_PI * i / 24;
            ring << centre + 1.8 * QPointF(std::cos(angle), std::sin(angle));
        }
        ink(ring, 0.3);
        ink({centre - QPointF(2.6, 0), centre + QPointF(2.6, 0)}, 0.2);
        ink({centre - QPointF(0, 2.6), centre + QPointF(0, 6)}, 0.2);
        arrowHead(centre + QPointF(0, 8), {0, 1});
        const QString weight = QString::fromStdString(units::writeOnScale(hull.weight_kg, plan_.display));
        labels_.push_back({"boat, " + weight, centre, {1, -0.5}, letters_mm});
    }

    void drawScale() {
        const double base = box_.bottom() + 5;
        const bool metric = plan_.display.lengths == units::LengthNotation::millimetres;
        // A bar of a round length, between 15 and 60 mm long.
        double bar_m = metric ? 0.01 : units::inch_m;
        for (const double step : {2.0, 2.5, 2.0, 2.0, 2.5, 2.0, 2.0, 2.5, 2.0, 2.0, 2.5, 2.0}) {
            if (units::toMillimetres(bar_m) / scale_ >= 15) break;
            bar_m *= metric ? step : (bar_m < units::foot_m / 2 ? 2 : (bar_m < units::foot_m ? 1.5 : 2));
        }
        const double bar = units::toMillimetres(bar_m) / scale_;
        const double left = box_.left() + 1;
        addLine(sheet_, {left, base}, {left + bar, base}, 0.35);
        for (const double x : {left, left + bar}) addLine(sheet_, {x, base - 1}, {x, base + 1}, 0.2);
        QString text = QString("%1    drawn 1 : %2").arg(lengthText(bar_m, plan_.display), numberText(scale_, 0));
        if (!named_) text += "    what is not named here stands in the tables";
        addWords(sheet_, text, {left + bar + 2, base + 1}, letters_mm);
    }
};

}  // namespace

Picture sideView(const model::Piece& piece, const plan::Plan& plan, double width_mm) {
    const QRectF bounds = look(piece, plan).bounds;
    const double drawn_mm = bounds.height() / scaleOf(bounds, width_mm, plan.display);
    return {drawn_mm + 2 * border_mm + foot_mm,
            [&piece, &plan](Sheet& sheet, const QRectF& box) { View(sheet, box, piece, plan).draw(); }};
}

}  // namespace fayline::app::paper
