#include "app/formview/force_marks.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/text.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

template <class Plan>
const Plan* ofStation(const math::SharedList<Plan>& plans, int index) {
    const auto found =
        std::find_if(plans.begin(), plans.end(), [index](const Plan& each) { return each.index == index; });
    return found == plans.end() ? nullptr : &*found;
}

QPointF turned(const QPointF& way) {
    return {-way.y(), way.x()};
}

}  // namespace

ForceScale forceScaleFor(const std::vector<double>& forces_N, const units::Display& display) {
    constexpr double longest = 1.5;  // units
    double greatest_N = 0;
    for (const double force_N : forces_N) {
        if (std::isfinite(force_N)) greatest_N = std::max(greatest_N, force_N);
    }
    constexpr double nothing_N = 1e-3;
    if (greatest_N < nothing_N) return {};
    const double one_N = units::forceUnit_N(display);
    const double least = greatest_N / longest / one_N;
    double decade = std::pow(10, std::floor(std::log10(least)));
    for (const double round : {1.0, 2.0, 5.0, 10.0}) {
        if (round * decade < least * (1 - 1e-12)) continue;
        const double unit_N = round * decade * one_N;
        return {unit_N, text(units::writeForce(unit_N, display))};
    }
    return {};
}

ForceScale forceScaleOf(const plan::Plan& plan, const units::Display& display) {
    std::vector<double> forces_N;
    for (const auto& station : plan.holding.held.stations) {
        if (!strapPlan(plan, station.index)) forces_N.push_back(station.pull_N);
    }
    for (const auto& strap : plan.holding.straps) {
        if (strap.places.empty()) continue;
        forces_N.push_back(strap.places.front().tension_N);
        forces_N.push_back(strap.places.back().tension_N);
    }
    for (const auto& post : plan.holding.posts) {
        if (post.thrust_N > post.holds_N) forces_N.push_back(post.thrust_N);
    }
    return forceScaleFor(forces_N, display);
}

const holding::HeldStation* heldStation(const plan::Plan& plan, int index) {
    if (!holding::inBalance(plan.holding.held.outcome)) return nullptr;
    const auto* held = ofStation(plan.holding.held.stations, index);
    return held && std::isfinite(held->pull_N) ? held : nullptr;
}

const holding::PropPlan* propPlan(const plan::Plan& plan, int index) {
    return ofStation(plan.holding.props, index);
}

const holding::StrapPlan* strapPlan(const plan::Plan& plan, int index) {
    return ofStation(plan.holding.straps, index);
}

ForceArrow stationArrow(const holding::HeldStation& held, const StationFrame& frame, double reach,
                        const ForceScale& scale, const units::Display& display) {
    constexpr double off_px = 3;
    constexpr double besideStrut_px = 11;
    ForceArrow arrow;
    arrow.station = held.index;
    arrow.way = -frame.outwards;
    QPointF tip = frame.base + frame.outwards * (reach + off_px);
    QPointF side = frame.along;
    if (frame.foot) {  // beside the strut, on the side from which it leans away
        const QPointF run = *frame.foot - frame.base;
        if (QPointF::dotProduct(run, frame.along) > 0) side = -side;
        tip = frame.base + frame.outwards * (off_px + 3) + side * besideStrut_px;
    }
    const double length_px = std::min(scale.toPixels(std::max(held.pull_N, 0.0)), 1e5);
    arrow.shaft = QLineF(tip + frame.outwards * length_px, tip);
    arrow.towards = side;
    arrow.figure = text(plan::pullText(held.pull_N, held.state, display));
    switch (held.state) {
        case holding::HoldState::slack:
            arrow.state = ForceState::slack;
            arrow.figure = QObject::tr("snug");
            break;
        case holding::HoldState::full:
            arrow.state = ForceState::full;
            arrow.figure += QObject::tr(", full");
            break;
        case holding::HoldState::closes:
        case holding::HoldState::given:
            break;
    }
    if (held.pull_N <= 0 && arrow.state == ForceState::pulls) arrow.state = ForceState::slack;
    return arrow;
}

std::vector<ForceArrow> overloadedPosts(const plan::Plan& plan, const FormEdge& edge, const ForceScale& scale,
                                        const units::Display& display) {
    std::vector<ForceArrow> arrows;
    if (edge.places.empty()) return arrows;
    for (const holding::PostLoad& post : plan.holding.posts) {
        if (!std::isfinite(post.thrust_N) || post.thrust_N <= post.holds_N) continue;
        const EdgePlace place = edgeAt(edge, post.at_m);
        ForceArrow arrow;
        arrow.way = place.in;
        const double length_px = std::min(scale.toPixels(post.thrust_N), 1e5);
        arrow.shaft = QLineF(place.onEdge(), place.onEdge() + place.in * length_px);
        arrow.state = ForceState::over;
        arrow.figure =
            QObject::tr("%1, post holds %2")
                .arg(text(units::writeForce(post.thrust_N, display)), text(units::writeForce(post.holds_N, display)));
        arrow.towards = turned(place.in);
        arrows.push_back(arrow);
    }
    return arrows;
}

StrapMark strapMark(const model::Station& station, const holding::StrapPlan* plan, const Drawing& drawing,
                    const Transform& transform) {
    constexpr double off_px = 3;
    constexpr double longest_px = 9;
    constexpr double apart_px = 6;
    StrapMark mark;
    const double other_m = station.strap.to_m.value_or(station.at_m);
    const double from_m = std::min(station.at_m, other_m);
    const double to_m = std::max(station.at_m, other_m);
    // Before its thrust is known all of it is drawn as if it pressed.
    std::vector<holding::StrapPlace> places;
    if (plan) places = plan->places;
    std::sort(places.begin(), places.end(), [](const auto& a, const auto& b) { return a.at_m < b.at_m; });
    if (places.size() < 2) {
        places.clear();
        places.push_back({from_m, 0, 0});
        for (const DrawnPlace& each : drawing.places) {
            if (each.at_m > from_m && each.at_m < to_m) places.push_back({each.at_m, 0, 0});
        }
        places.push_back({to_m, 0, 0});
        plan = nullptr;
    }
    double greatest_N_m = 0;
    for (const auto& place : places) {
        if (std::isfinite(place.thrust_N_m)) greatest_N_m = std::max(greatest_N_m, place.thrust_N_m);
    }
    QPointF last;
    int before = -1;  // 0 idle, 1 presses
    double left_px = 0;
    for (const auto& place : places) {
        if (!std::isfinite(place.at_m)) continue;
        const DrawnPlace drawn = placeAt(drawing, place.at_m);
        const QPointF out(drawn.outwards.x_m, -drawn.outwards.y_m);
        const QPointF at = transform.toScreen(drawn.onOutside) + out * off_px;
        const double thrust_N_m = std::isfinite(place.thrust_N_m) ? place.thrust_N_m : 0;
        const int now = !plan || thrust_N_m > 0 ? 1 : 0;
        QPainterPath& path = now ? mark.band : mark.idle;
        if (before != now) path.moveTo(before < 0 ? at : last);
        if (before >= 0) {
            path.lineTo(at);
            left_px -= QLineF(last, at).length();
        }
        if (thrust_N_m > 0 && left_px <= 0) {
            mark.thrust.moveTo(at + out * 2);
            mark.thrust.lineTo(at + out * (2 + longest_px * thrust_N_m / greatest_N_m));
            left_px = apart_px;
        }
        last = at;
        before = now;
    }
    return mark;
}

std::vector<ForceArrow> strapArrows(const model::Station& station, const holding::StrapPlan& plan,
                                    const Drawing& drawing, const Transform& transform, const ForceScale& scale,
                                    const units::Display& display) {
    constexpr double off_px = 3;
    std::vector<ForceArrow> arrows;
    const auto add = [&](double at_m, double other_m) {
        const auto nearest = std::min_element(
            plan.places.begin(), plan.places.end(),
            [at_m](const auto& a, const auto& b) { return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m); });
        if (nearest == plan.places.end() || !std::isfinite(nearest->tension_N)) return;
        const DrawnPlace place = placeAt(drawing, at_m);
        const QPointF out(place.outwards.x_m, -place.outwards.y_m);
        ForceArrow arrow;
        arrow.station = plan.index;
        arrow.way = QPointF(std::cos(place.heading_rad), -std::sin(place.heading_rad)) * (at_m < other_m ? -1 : 1);
        const QPointF tail = transform.toScreen(place.onOutside) + out * off_px;
        const double length_px = std::min(scale.toPixels(std::max(nearest->tension_N, 0.0)), 1e5);
        arrow.shaft = QLineF(tail, tail + arrow.way * length_px);
        arrow.figure = text(units::writeForce(nearest->tension_N, display));
        arrow.towards = out;
        if (nearest->tension_N <= 0) arrow.state = ForceState::slack;
        arrows.push_back(arrow);
    };
    const auto& strap = station.strap;
    const double to_m = strap.to_m.value_or(station.at_m);
    if (strap.pullsFrom != model::PullsFrom::end) add(station.at_m, to_m);
    if (strap.pullsFrom != model::PullsFrom::start) add(to_m, station.at_m);
    return arrows;
}

QString gapText(double gap_m, const units::Display& display) {
    QString words = text(units::writeSmall(std::max(gap_m, 0.0), display));
    if (words.startsWith(QLatin1Char('+'))) words.remove(0, 1);
    return words;
}

QString holdingWords(const Shown& shown, int station) {
    if (!shown.plan) return {};
    const auto* held = heldStation(*shown.plan, station);
    if (!held) return {};
    const auto force = [&](double force_N) { return text(units::writeForce(force_N, shown.display)); };
    QStringList words;
    if (const auto* strap = strapPlan(*shown.plan, station); strap && std::isfinite(strap->total_N)) {
        words << QObject::tr("presses %1 in all").arg(force(strap->total_N));
    } else if (held->state == holding::HoldState::slack || held->pull_N <= 0) {
        words << QObject::tr("snug");
    } else if (held->state == holding::HoldState::full) {
        words << QObject::tr("pulls %1, its max force").arg(force(held->pull_N));
    } else if (held->state == holding::HoldState::given) {
        words << QObject::tr("pulls its fixed %1").arg(force(held->pull_N));
    } else if (std::isfinite(held->most_N)) {
        words << QObject::tr("pulls %1 of %2").arg(force(held->pull_N), force(held->most_N));
    } else {
        words << QObject::tr("pulls %1").arg(force(held->pull_N));
    }
    if (std::isfinite(held->gap_m)) words << QObject::tr("gap %1").arg(gapText(held->gap_m, shown.display));
    if (const auto* prop = propPlan(*shown.plan, station)) {
        if (prop->footAboveHead || prop->cannotPress) {
            words << QObject::tr("its foot cannot push from there");
        } else if (std::isfinite(prop->thrust_N)) {
            words << QObject::tr("thrust %1 along it").arg(force(prop->thrust_N));
        }
        if (prop->slips == holding::Slips::head) words << QObject::tr("slips at its head");
        if (prop->slips == holding::Slips::foot) words << QObject::tr("slips at its foot");
        if (prop->slips == holding::Slips::both) words << QObject::tr("slips at head and foot");
        if (std::isfinite(prop->allowable_N) && prop->allowable_N > 0 && prop->thrust_N > prop->allowable_N) {
            words << QObject::tr("allowed %1").arg(force(prop->allowable_N));
        }
    }
    return words.join(QStringLiteral(", "));
}

}  // namespace fayline::app
