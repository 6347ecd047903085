#include "app/formview/ground_marks.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/formview/sheet.hpp"
#include "app/look/text.hpp"
#include "core/holding/props/hull.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/scale.hpp"

namespace fayline::app {

namespace {

bool finite(const line::Xy& place) {
    return std::isfinite(place.x_m) && std::isfinite(place.y_m);
}

QPainterPath strokesBeyond(const QLineF& line, bool overhead) {
    constexpr double apart_px = 8;
    constexpr double long_px = 6;
    QPainterPath strokes;
    const double way = overhead ? -long_px : long_px;
    const double from = std::max(line.x1(), -1e4);
    const double to = std::min(line.x2(), 1e4);
    for (double x = from + apart_px; x <= to; x += apart_px) {
        strokes.moveTo(x, line.y1());
        strokes.lineTo(x - long_px, line.y1() + way);
    }
    return strokes;
}

bool slipsAt(holding::Slips slips, holding::Slips end) {
    return slips == end || slips == holding::Slips::both;
}

// 1, 2, 5, 10, ...: so many times shorter that a greatest force of `units` is drawn no longer than two units.
double timesShorter(double units) {
    constexpr double longest = 2;
    double times = 1;
    for (const double factor : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0}) {
        times = factor;
        if (units / factor <= longest) break;
    }
    return times;
}

}  // namespace

std::optional<line::Xy> footOf(const Shown& shown, int station) {
    const auto* given = model::as<model::Strut>(shown.piece.holding.stations.at(station));
    if (!given) return std::nullopt;
    const holding::PropPlan* plan = shown.plan ? propPlan(*shown.plan, station) : nullptr;
    if (given->footX_m || given->footY_m || plan) {
        line::Xy foot;
        if (plan) foot = plan->foot;
        if (!plan && !(given->footX_m && given->footY_m)) return std::nullopt;
        if (given->footX_m) foot.x_m = *given->footX_m;
        if (given->footY_m) foot.y_m = *given->footY_m;
        if (finite(foot)) return foot;
    }
    return std::nullopt;
}

std::vector<GroundMark> groundOf(const Shown& shown, const Transform& transform) {
    constexpr double beyond_px = 30;
    constexpr double level_px = 1.5;
    std::vector<GroundMark> ground;
    const auto& stations = shown.piece.holding.stations;
    for (size_t i = 0; i < stations.size(); ++i) {
        const auto foot = footOf(shown, static_cast<int>(i));
        if (!foot) continue;
        const QPointF at = transform.toScreen(*foot);
        const bool overhead = model::as<model::Strut>(stations[i])->to == model::PropTo::overhead;
        const auto same = std::find_if(ground.begin(), ground.end(), [&](const GroundMark& mark) {
            return mark.overhead == overhead && std::abs(mark.line.y1() - at.y()) < level_px;
        });
        if (same == ground.end()) {
            ground.push_back({QLineF(at.x() - beyond_px, at.y(), at.x() + beyond_px, at.y()), overhead, {}});
            continue;
        }
        same->line = QLineF(std::min(same->line.x1(), at.x() - beyond_px), same->line.y1(),
                            std::max(same->line.x2(), at.x() + beyond_px), same->line.y1());
    }
    for (GroundMark& mark : ground) mark.strokes = strokesBeyond(mark.line, mark.overhead);
    return ground;
}

std::vector<PropTrouble> propTroubles(const Shown& shown, const Transform& transform) {
    std::vector<PropTrouble> troubles;
    for (const holding::PropPlan& prop : shown.plan->holding.props) {
        const auto& stations = shown.piece.holding.stations;
        if (prop.index < 0 || prop.index >= math::countOf(stations)) continue;
        const auto foot = footOf(shown, prop.index);
        if (!foot || !finite(prop.head)) continue;
        const QPointF head_px = transform.toScreen(prop.head);
        const QPointF foot_px = transform.toScreen(*foot);
        const auto at = [&](double share) { return head_px + (foot_px - head_px) * share; };
        std::optional<QPointF> holds;
        if (prop.footThatHolds && finite(*prop.footThatHolds)) holds = transform.toScreen(*prop.footThatHolds);
        if (prop.footAboveHead || prop.cannotPress) {
            troubles.push_back({prop.index, at(0.5), true, QObject::tr("cannot push from there"), holds});
            continue;
        }
        const model::Strut& strut = *model::as<model::Strut>(stations[prop.index]);
        if (slipsAt(prop.slips, holding::Slips::head) && !strut.stoppedAt(model::Stop::head)) {
            troubles.push_back({prop.index, at(0.12), false, QObject::tr("head slips"), holds});
        }
        if (slipsAt(prop.slips, holding::Slips::foot) && !strut.stoppedAt(model::Stop::foot)) {
            troubles.push_back({prop.index, at(0.9), false, QObject::tr("foot slips"), holds});
        }
        if (std::isfinite(prop.allowable_N) && prop.allowable_N > 0 && prop.thrust_N > prop.allowable_N) {
            troubles.push_back({prop.index,
                                at(0.5),
                                true,
                                QObject::tr("allowed %1").arg(text(units::writeForce(prop.allowable_N, shown.display))),
                                {}});
        }
    }
    return troubles;
}

HullMark hullOf(const Shown& shown, const Transform& transform, const ForceScale& scale, bool forces) {
    constexpr double half_px = 11;
    constexpr double high_px = 14;
    HullMark mark;
    const model::Hull& hull = shown.piece.holding.hull;
    if (hull.weight_kg > 0 && std::isfinite(hull.weight_kg) && std::isfinite(hull.centreX_m + hull.centreY_m)) {
        mark.centre = transform.toScreen({hull.centreX_m, hull.centreY_m});
        mark.weight = QObject::tr("weight %1").arg(text(units::writeOnScale(hull.weight_kg, shown.display)));
    }
    const math::Shared<holding::HullPlan> none;
    const auto& plan = shown.plan ? shown.plan->holding.hull : none;
    double greatest_N = 0;
    if (plan) {
        for (const auto& block : plan->blocks) {
            if (std::isfinite(block.push_N)) greatest_N = std::max(greatest_N, block.push_N);
        }
    }
    // A hull weighs many times what a clamp pulls: by the same scale one of the two could not be seen.
    const ForceScale own = scale.unit_N > 0 ? scale : forceScaleFor({greatest_N}, shown.display);
    if (scale.unit_N > 0) mark.times = timesShorter(greatest_N / own.unit_N);
    for (size_t i = 0; i < hull.blocks.size(); ++i) {
        const model::Block& block = hull.blocks[i];
        if (!std::isfinite(block.x_m) || !std::isfinite(block.y_m)) continue;
        BlockMark made;
        made.index = static_cast<int>(i);
        made.top = transform.toScreen({block.x_m, block.y_m});
        made.body = QRectF(made.top.x() - half_px, made.top.y(), 2 * half_px, high_px);
        if (plan) {
            for (const auto& push : plan->blocks) {
                if (push.index != made.index || !std::isfinite(push.push_N)) continue;
                made.lifts = push.lifts;
                if (!forces || push.lifts) continue;
                ForceArrow arrow;
                arrow.way = QPointF(0, -1);
                const QPointF tip = made.top + QPointF(0, high_px + 3);
                const double length_px = std::min(own.toPixels(push.push_N) / mark.times, 1e5);
                arrow.shaft = QLineF(tip + QPointF(0, length_px), tip);
                arrow.figure = text(units::writeForce(push.push_N, shown.display));
                arrow.towards = QPointF(1, 0);
                if (push.push_N <= 0) arrow.state = ForceState::slack;
                made.push = arrow;
            }
        }
        mark.blocks.push_back(made);
    }
    return mark;
}

std::vector<FarMark> farMarks(const Shown& shown, const Drawing& drawing, const Transform& transform,
                              const QRectF& view, const QRectF& inside) {
    constexpr double together_px = 48;
    struct Far {
        FarMark mark;
        QStringList blocks;  // their numbers
        QStringList names;   // of what is no block
        double away_m = 0;
    };
    std::vector<Far> all;
    if (drawing.places.empty() || inside.width() <= 0 || inside.height() <= 0) return {};
    const auto add = [&](const line::Xy& place, QStringList Far::*list, const QString& name) {
        const QPointF target = transform.toScreen(place);
        if (!finite(place) || view.contains(target)) return;
        const double away_m = std::abs(shown.plan->line.fair.line.nearest(place.x_m, place.y_m).distance_m);
        const QPointF run = target - inside.center();
        const double share = std::min(inside.width() / 2 / std::max(std::abs(run.x()), 1e-9),
                                      inside.height() / 2 / std::max(std::abs(run.y()), 1e-9));
        Far far;
        far.mark.at = inside.center() + run * share;
        far.mark.way = run / std::hypot(run.x(), run.y());
        far.*list = QStringList{name};
        far.away_m = away_m;
        for (Far& other : all) {
            if (QLineF(other.mark.at, far.mark.at).length() > together_px) continue;
            other.*list << name;
            other.away_m = std::min(other.away_m, away_m);
            return;
        }
        all.push_back(far);
    };
    const model::Hull& hull = shown.piece.holding.hull;
    for (size_t i = 0; i < hull.blocks.size(); ++i) {
        add({hull.blocks[i].x_m, hull.blocks[i].y_m}, &Far::blocks, QString::number(i + 1));
    }
    if (hull.weight_kg > 0) add({hull.centreX_m, hull.centreY_m}, &Far::names, QObject::tr("weight"));
    for (size_t i = 0; i < shown.piece.holding.stations.size(); ++i) {
        const auto foot = footOf(shown, static_cast<int>(i));
        if (!foot) continue;
        const DrawnPlace head = placeAt(drawing, shown.piece.holding.stations[i].at_m);
        if (view.contains(transform.toScreen(head.onOutside))) {
            add(*foot, &Far::names, QObject::tr("foot of %1").arg(stationName(shown, static_cast<int>(i))));
        }
    }
    std::vector<FarMark> marks;
    for (Far& far : all) {
        constexpr qsizetype named = 3;
        const QString away = text(units::writeLength(far.away_m, shown.display));
        const bool single = far.blocks.size() + far.names.size() == 1;
        QStringList names = far.names;
        if (far.blocks.size() == 1) names.prepend(QObject::tr("block %1").arg(far.blocks.first()));
        if (far.blocks.size() > 1) names.prepend(QObject::tr("blocks %1").arg(far.blocks.join(QStringLiteral(", "))));
        if (names.size() > named) names = names.mid(0, named) << QObject::tr("%1 more").arg(names.size() - named);
        const QString joined = names.join(QStringLiteral(", "));
        far.mark.words =
            single ? QObject::tr("%1, %2 away").arg(joined, away) : QObject::tr("%1, from %2 away").arg(joined, away);
        marks.push_back(far.mark);
    }
    return marks;
}

}  // namespace fayline::app
