#include "app/panels/holding_words.hpp"

#include <QObject>
#include <QStringList>
#include <algorithm>
#include <cmath>
#include <optional>

#include "app/look/names.hpp"
#include "app/look/text.hpp"
#include "app/panels/reading.hpp"
#include "core/holding/props/hull.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/force.hpp"
#include "core/units/scale.hpp"

namespace fayline::app {

namespace {

// What the glue line asks of the stations there.
QString pressingWords(const holding::PressingNeed& need, const units::Display& display) {
    if (!std::isfinite(need.spacing_m) || need.pressure_Pa <= 0) return {};
    const auto by = [&] {
        switch (need.by) {
            case holding::SpacedBy::stiffness:
                return tr("set by the stiffness of the strips above");
            case holding::SpacedBy::spread:
                return tr("set by what lies below a pad");
            case holding::SpacedBy::strength:
                return tr("set by its strength");
        }
        return QString();
    };
    QString words = need.isWish ? tr(" To squeeze glue out there: %1") : tr(" The joint needs %1 there");
    words = words.arg(text(units::writePressure(need.pressure_Pa, display))) +
            tr(": pads no further apart than %1 (%2).").arg(text(plan::reachText(need.spacing_m, display)), by());
    if (text(plan::reachText(need.thinnerSpacing_m, display)) != text(plan::reachText(need.spacing_m, display)))
        words += tr(" With a mix half as stiff: %1.").arg(text(plan::reachText(need.thinnerSpacing_m, display)));
    return words;
}

}  // namespace

QString stationWords(const Shown& shown, int station) {
    if (!shown.plan || station < 0 || station >= math::countOf(shown.piece.holding.stations)) return {};
    const plan::HoldingPlan& holding = shown.plan->holding;
    for (std::size_t i = 0; i < holding.stations.size(); ++i) {
        const holding::StationPlace& place = holding.stations[i];
        if (place.index != station) continue;
        const model::Station& of = shown.piece.holding.stations[station];
        QString words = tr("Station %1, %2, at x %3, y %4 on the outside of the stack.")
                            .arg(QString::number(place.number), holdName(of.kind),
                                 writeLengthText(place.onOutside.x_m, shown.display),
                                 writeLengthText(place.onOutside.y_m, shown.display));
        if (i < holding.pressing.size() && !of.side) words += pressingWords(holding.pressing[i], shown.display);
        return words;
    }
    return {};
}

namespace {

QString unmetWords(std::optional<holding::Governs> unmet) {
    if (unmet == holding::Governs::gap) return tr("the gap limit is not met");
    if (unmet == holding::Governs::strength) return tr("the tools are too weak");
    if (unmet == holding::Governs::pressing) return tr("glue is not squeezed out everywhere");
    return tr("not every condition is met");
}

QString smallWords(double distance_m, const units::Display& display) {
    return smallFigure(distance_m, display) + QLatin1Char(' ') + smallUnit(display);
}

QString forceWords(double force_N, const units::Display& display) {
    return text(units::writeForce(force_N, display));
}

}  // namespace

QString proposalWords(const holding::Proposal& proposal, const units::Display& display) {
    if (proposal.stations.empty()) return tr("No stations suggested.");
    const auto count = math::countOf(proposal.stations);
    QString words = count == 1 ? tr("One station closes it") : tr("%1 stations close it").arg(count);
    const bool spread = !proposal.met && proposal.unmet == holding::Governs::pressing && proposal.withinCounts;
    if (spread) {
        words = tr("%1, up to %2 apart, close it within the gap limit and their strength")
                    .arg(count == 1 ? tr("One station") : tr("%1 stations").arg(count),
                         writeLengthText(proposal.largestSpacing_m, display));
    } else if (!proposal.met) {
        words = tr("No number of your tools closes it: with %1, %2")
                    .arg(QString::number(count), unmetWords(proposal.unmet));
    }
    if (std::isfinite(proposal.largest.gap_m))
        words += tr("; the largest gap is %1, %2 along")
                     .arg(smallWords(proposal.largest.gap_m, display), writeLengthText(proposal.largest.at_m, display));
    words += QLatin1Char('.');
    if (proposal.met && proposal.withoutPressing > 0 && proposal.withoutPressing < count)
        words += tr(" Squeeze-out sets that: gap and force alone need %1.").arg(proposal.withoutPressing);
    if (proposal.pressingIsWish && proposal.met) {
        if (proposal.forEverything > count)
            words += tr(" For squeeze-out everywhere: %1; this glue needs contact only.").arg(proposal.forEverything);
    } else if (spread && proposal.forEverything > 0) {
        words += tr(" For squeeze-out everywhere: %1.").arg(proposal.forEverything);
    } else if (spread) {
        words += tr(" No number of them squeezes glue out everywhere.");
    }
    if (proposal.tools == 0)
        words += tr(" Your list has no tools.");
    else if (!proposal.withinCounts)
        words += tr(" You have only %1.").arg(proposal.tools);
    else
        words += tr(" You have %1.").arg(proposal.tools);
    if (!proposal.finished) words += tr(" The search was not finished.");
    if (!proposal.searched) words += tr(" Fewer may close it: the search of so long a piece stops early.");
    return words;
}

QString carriedWords(const holding::Carried& carried, const units::Display& display) {
    if (carried.places_m.empty() || !std::isfinite(carried.sag_m) || carried.weight_N <= 0) return {};
    QStringList places;
    for (const double place_m : carried.places_m) places << text(units::writeLength(place_m, display));
    const QString last = places.takeLast();
    return tr("The loose stack weighs %1. Carried at %2 from the start of its strips it sags %3 (strain %4).")
        .arg(text(units::writeOnScale(units::massThatWeighs(carried.weight_N), display)),
             places.isEmpty() ? last : tr("%1 and %2").arg(places.join(tr(", ")), last),
             smallWords(carried.sag_m, display), text(units::writeShare(carried.strain)));
}

QString overRunWords(const QString& end, const holding::EndNeed& need, double runsPast_m,
                     const units::Display& display) {
    const QString there = text(units::writeLength(runsPast_m, display));
    QString words = tr("%1 the gap at the trim line is %2 with %3 of extra length.")
                        .arg(end, std::isfinite(need.gap_m) ? smallWords(need.gap_m, display) : tr("not known"), there);
    const bool enough = need.overRun_m && *need.overRun_m <= runsPast_m;
    if (!need.overRun_m || !std::isfinite(*need.overRun_m)) {
        words += tr(" No extra length up to a metre closes it with your tools.");
    } else if (*need.overRun_m <= 0) {
        words += tr(" It closes without any.");
    } else {
        words += enough ? tr(" It needs %1, with a clamp of %2 at the far end: enough.")
                        : tr(" It needs %1, with a clamp of %2 at the far end.");
        words = words.arg(text(units::writeLength(*need.overRun_m, display)), forceWords(need.clamp_N, display));
    }
    if (enough) return words;
    QStringList instead;
    if (need.strongerClamp_N && std::isfinite(*need.strongerClamp_N))
        instead << tr("a clamp of %1").arg(forceWords(*need.strongerClamp_N, display));
    if (need.caul_m && std::isfinite(*need.caul_m) && *need.caul_m > 0)
        instead << tr("a caul sawn to the curve of the outside, %1 thick,")
                       .arg(text(units::writeThickness(*need.caul_m, display)));
    if (instead.isEmpty()) return words + tr(" At this extra length neither a stronger clamp nor a caul closes it.");
    return words + tr(" At this extra length %1 closes it too.").arg(instead.join(tr(" or ")));
}

QString atHandWords(const holding::AtHand& atHand, const units::Display& display) {
    if (atHand.leftWithout <= 0) return {};
    QString words = atHand.leftWithout == 1 ? tr("One station has no tool.")
                                            : tr("%1 stations have no tool.").arg(atHand.leftWithout);
    QStringList instead;
    if (atHand.splitAfterStrip > 0)
        instead << tr("two glue-ups, parted after strip %1, leave %2 of the forces and %3 fewer short")
                       .arg(QString::number(atHand.splitAfterStrip), text(units::writeShare(atHand.splitShare)),
                            QString::number(atHand.splitServes));
    if (atHand.strapsWouldServe > 0)
        instead << tr("straps drawn to %1 do for %2")
                       .arg(forceWords(atHand.strapTension_N, display), QString::number(atHand.strapsWouldServe));
    if (atHand.wedgesWouldServe > 0) instead << tr("folding wedges under a bar do for %1").arg(atHand.wedgesWouldServe);
    if (instead.isEmpty()) return words;
    return words + tr(" Instead: %1.").arg(instead.join(QStringLiteral("; ")));
}

namespace {

QString failureWords(const holding::HullPlan& hull) {
    switch (hull.failsBy) {
        case holding::HullPlan::Failure::lifts:
            return tr("lifts");
        case holding::HullPlan::Failure::tips:
            return tr("tips");
        case holding::HullPlan::Failure::slides:
            return tr("slides");
        case holding::HullPlan::Failure::never:
            break;
    }
    return {};
}

}  // namespace

QString hullWords(const plan::HoldingPlan& holding, const units::Display& display) {
    if (!holding.hull) return {};
    const holding::HullPlan& hull = *holding.hull;
    if (!hull.standsAtRest) return tr("The boat does not stand on these blocks by its weight alone.");
    if (hull.totalPush_N <= 0) return tr("Nothing pushes on the boat.");
    QString words = tr("The props push %1 in all.").arg(forceWords(hull.totalPush_N, display));
    if (hull.lifts || hull.tips || hull.slides) {
        words += tr(" The boat %1.").arg(hull.lifts ? tr("lifts") : hull.tips ? tr("tips") : tr("slides"));
    } else if (std::isfinite(hull.margin) && hull.failsBy != holding::HullPlan::Failure::never) {
        words +=
            tr(" The boat %2 at %1 times this push.").arg(text(units::writeNumber(hull.margin, 2)), failureWords(hull));
    } else {
        words += tr(" The boat stays down.");
    }
    if (std::isfinite(hull.mostPush_N))
        words += tr(" With a margin of %1: up to %2.")
                     .arg(text(units::writeNumber(holding::marginAsked)), forceWords(hull.mostPush_N, display));
    for (const holding::StationPlace& place : holding.stations)
        if (hull.worstProp >= 0 && place.index == hull.worstProp)
            words += tr(" Station %1 pushes hardest on that margin.").arg(place.number);
    return words;
}

QString findingWords(const Shown& shown, const std::vector<std::string>& codes) {
    if (!shown.plan) return {};
    QStringList lines;
    for (const plan::Finding& finding : shown.plan->findings) {
        const std::string word = plan::codeWord(finding.code);
        const bool wanted =
            std::any_of(codes.begin(), codes.end(), [&](const std::string& code) { return word.starts_with(code); });
        if (wanted && plan::aboutOf(finding.code) == plan::About::holding)
            lines << text(plan::textOf(finding, shown.display));
    }
    return lines.join(QLatin1Char('\n'));
}

}  // namespace fayline::app
