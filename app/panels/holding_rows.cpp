#include "app/panels/holding_rows.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

namespace {

constexpr int stop = int(plan::Severity::stop);
constexpr int caution = int(plan::Severity::caution);

const QString notKnown(QChar(0x2013));

FigureCell words(const QString& text, const QString& under = {}) {
    return {text, under, 0, std::nullopt, {}};
}

FigureCell whole(int number) {
    return {QString::number(number), {}, double(number), std::nullopt, {}};
}

FigureCell force(double force_N, const measure::Display& display, const QString& under = {}) {
    return {text(measure::writeForce(force_N, display)), under, force_N, std::nullopt, {}};
}

FigureCell place(double at_m, const measure::Display& display, const QString& under = {}) {
    return {writeLengthText(at_m, display), under, at_m, std::nullopt, {}};
}

FigureCell small(double distance_m, const measure::Display& display, const QString& under = {}) {
    if (!std::isfinite(distance_m)) return {notKnown, under, 0, std::nullopt, {}};
    constexpr double small_m = 0.1;  // beyond that hundredths of a millimetre say nothing
    if (distance_m > small_m) return place(distance_m, display, under);
    return {smallFigure(distance_m, display) + ' ' + smallUnit(display), under, distance_m, std::nullopt, {}};
}

// A light pull is told as that: "under 200 N".
FigureCell pull(double pull_N, holding::HoldState state, const measure::Display& display, const QString& under = {}) {
    FigureCell cell = force(pull_N, display, under);
    if (holding::pullsLightly(state, pull_N))
        cell.text = QObject::tr("under %1").arg(text(measure::writeForce(holding::lightPull_N, display)));
    return cell;
}

// A number of a station along the line, from its index; 0: the plan has none.
int numberOf(const plan::HoldingPlan& holding, int index) {
    for (const holding::StationPlace& place : holding.stations)
        if (place.index == index) return place.number;
    return 0;
}

std::optional<double> placeOf(const plan::HoldingPlan& holding, int index) {
    for (const holding::StationPlace& place : holding.stations)
        if (place.index == index) return place.at_m;
    return std::nullopt;
}

FigureColumn figures(const QString& name, const QString& under, const QString& hint) {
    return {name, under, hint, false};
}

FigureColumn left(const QString& name, const QString& under, const QString& hint) {
    return {name, under, hint, true};
}

QString governedWord(holding::Governs governs) {
    switch (governs) {
        case holding::Governs::gap:
            return QObject::tr("by gap");
        case holding::Governs::strength:
            return QObject::tr("by strength");
        case holding::Governs::pressing:
            return QObject::tr("by pressing");
        case holding::Governs::fixedOne:
            return QObject::tr("fixed");
        case holding::Governs::end:
            return QObject::tr("end");
    }
    return {};
}

}  // namespace

std::vector<FigureColumn> proposalColumns() {
    return {left(QObject::tr("Held by"), QObject::tr("governed"),
                 QObject::tr("Below it: what sets its distance to the one before")),
            figures(QObject::tr("Along"), {}, QObject::tr("Along the line from its first point")),
            figures(QObject::tr("Pull"), {}, QObject::tr("What it pulls, square to the form")),
            figures(QObject::tr("Gap"), {}, QObject::tr("What is left under its pad"))};
}

std::vector<FigureRow> proposalRows(const plan::HoldingStudy& study, const measure::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::Proposed& proposed : study.proposal.stations) {
        const boat::Station& station = proposed.station;
        rows.push_back({{words(holdName(station.kind), governedWord(proposed.governedBy)), place(station.at_m, display),
                         pull(proposed.pull_N, proposed.state, display),
                         holding::closesGap(station) ? small(proposed.gap_m, display) : words(notKnown)},
                        station.at_m});
    }
    return rows;
}

std::vector<FigureColumn> closingColumns() {
    return {left(QObject::tr("Close"), {}, QObject::tr("In this order")),
            left(QObject::tr("Station"), QObject::tr("margin"),
                 QObject::tr("Its number along the line. Below it: all that pushes on the boat then may grow so many "
                             "times before it lifts, tips or slides.")),
            figures(QObject::tr("Pull"), QObject::tr("stood off"),
                    QObject::tr("Needed there with all before it closed. Below it: the gap there before.")),
            figures(QObject::tr("Tail off"), QObject::tr("floor"),
                    QObject::tr("How far the free end then stands off the form. Below it: whether the floor is in "
                                "its way.")),
            figures(QObject::tr("Tip x"), QObject::tr("y"), QObject::tr("Where the tip of the free end then is"))};
}

namespace {

// The station of a step, with the boat's margin at that moment below it.
FigureCell stationThen(const plan::HoldingStudy& study, const holding::ClosingStep& step) {
    const auto row = static_cast<std::size_t>(step.order - 1);
    const std::vector<std::optional<holding::HullPlan>>& hulls = study.closingLoads.hulls;
    FigureCell cell = words(QString::number(step.number));
    if (row >= hulls.size() || !hulls[row] || !std::isfinite(hulls[row]->margin)) return cell;
    cell.under = QString::fromStdString(measure::writeNumber(hulls[row]->margin, 2));
    if (hulls[row]->margin < 1)
        cell.severity = stop;
    else if (hulls[row]->margin < holding::marginAsked)
        cell.severity = caution;
    return cell;
}

}  // namespace

std::vector<FigureRow> closingRows(const plan::HoldingStudy& study, const boat::Piece& piece,
                                   const measure::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::ClosingStep& step : study.closing) {
        const auto index = static_cast<std::size_t>(step.index);
        const bool known = index < piece.holding.stations.size();
        const holding::HoldState state = step.closed.empty() ? holding::HoldState::slack : step.closed.back().state;
        FigureCell pulled = pull(step.pull_N, state, display, small(step.standsOff_m, display).text);
        const bool settled = holding::inBalance(step.outcome);
        if (!settled) pulled = words(QObject::tr("unsettled"), pulled.under);
        if (step.outcome == holding::Outcome::snaps) pulled.severity = stop;
        FigureCell tail = small(step.tailOff_m, display, step.floorInTheWay ? QObject::tr("in the way") : QString());
        if (step.floorInTheWay) tail.severity = caution;
        FigureCell tip = place(step.tip.x_m, display, writeLengthText(step.tip.y_m, display));
        if (!settled) tail = tip = words(notKnown);
        rows.push_back({{whole(step.order), stationThen(study, step), pulled, tail, tip},
                        known ? std::optional<double>(piece.holding.stations[index].at_m) : std::nullopt});
    }
    return rows;
}

namespace {

QString slipsWord(const holding::PropPlan& prop) {
    if (prop.footAboveHead) return QObject::tr("foot wrong");
    if (prop.cannotPress) return QObject::tr("cannot press");
    switch (prop.slips) {
        case holding::Slips::no:
            return QObject::tr("holds");
        case holding::Slips::head:
            return QObject::tr("at its head");
        case holding::Slips::foot:
            return QObject::tr("at its foot");
        case holding::Slips::both:
            return QObject::tr("at both ends");
    }
    return {};
}

QString stopWord(const holding::PropPlan& prop) {
    if (prop.slips == holding::Slips::no) return {};
    return prop.stopsHold ? QObject::tr("stops hold") : QObject::tr("no stop");
}

}  // namespace

std::vector<FigureColumn> propColumns() {
    return {
        left(QObject::tr("No."), {}, QObject::tr("Its number along the line")),
        figures(QObject::tr("Thrust"), QObject::tr("may carry"),
                QObject::tr("Along the prop. Below it: what it may carry as a column, or its rated load.")),
        figures(QObject::tr("Slant"), QObject::tr("at foot"),
                QObject::tr("Between the prop and what is square to the stack at its head; below it: at its foot")),
        left(QObject::tr("Slips"), QObject::tr("stops"), QObject::tr("By friction alone, without its stops")),
        figures(QObject::tr("Foot x"), QObject::tr("y"), QObject::tr("Nearest foot that holds without another stop"))};
}

std::vector<FigureRow> propRows(const plan::HoldingPlan& holding, const boat::Piece&, const measure::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::PropPlan& prop : holding.props) {
        const double may_N = std::min(prop.allowable_N, prop.most_N);
        FigureCell thrust = force(prop.thrust_N, display, text(measure::writeForce(may_N, display)));
        if (prop.thrust_N > may_N || prop.tooSlender) thrust.severity = stop;
        thrust.source = sourceText(prop.columnSource);
        FigureCell slips = words(slipsWord(prop), stopWord(prop));
        const bool bad =
            prop.footAboveHead || prop.cannotPress || (prop.slips != holding::Slips::no && !prop.stopsHold);
        if (bad) slips.severity = stop;
        slips.source = sourceText(prop.frictionSource);
        const FigureCell foot = prop.footThatHolds ? place(prop.footThatHolds->x_m, display,
                                                           writeLengthText(prop.footThatHolds->y_m, display))
                                                   : words(QObject::tr("none"));
        rows.push_back(
            {{whole(prop.number), thrust,
              words(text(measure::writeAngle(prop.slant_rad)), text(measure::writeAngle(prop.footSlant_rad))), slips,
              foot},
             placeOf(holding, prop.index)});
    }
    return rows;
}

std::vector<FigureColumn> screwColumns() {
    return {left(QObject::tr("No."), {}, QObject::tr("Its number along the line")),
            figures(QObject::tr("Pull"), QObject::tr("allowed"),
                    QObject::tr("Below it: what wood and steel may be asked for")),
            figures(QObject::tr("Washer"), QObject::tr("may"),
                    QObject::tr("Pressure under the washer. Below it: what the outer strip may bear.")),
            figures(QObject::tr("Hole"), QObject::tr("pilot"),
                    QObject::tr("Clearance hole through the stack; below it: pilot hole in the backbone")),
            figures(QObject::tr("Long"), QObject::tr("later"),
                    QObject::tr("Length under the head. Below it: diameter of the fastening that fills the hole "
                                "later."))};
}

std::vector<FigureRow> screwRows(const plan::HoldingPlan& holding, const measure::Display& display) {
    const auto thick = [&](double length_m) { return text(measure::writeThickness(length_m, display)); };
    std::vector<FigureRow> rows;
    for (const holding::ScrewPlan& screw : holding.screws) {
        FigureCell pull = force(screw.pull_N, display, text(measure::writeForce(screw.allowable_N(), display)));
        if (screw.pull_N > screw.allowable_N()) pull.severity = screw.pull_N > screw.ultimate_N() ? stop : caution;
        const bool byWood = screw.withdrawalAllowable_N <= screw.steelAllowable_N;
        pull.source = sourceText(byWood ? screw.withdrawalSource : screw.steelSource);
        FigureCell washer =
            words(text(measure::writePressure(screw.washerPressure_Pa, display)),
                  screw.washerKnown ? text(measure::writePressure(screw.washerMay_Pa, display)) : notKnown);
        if (screw.washerKnown && screw.washerPressure_Pa > screw.washerMay_Pa) washer.severity = caution;
        washer.source = sourceText(screw.washerSource);
        FigureCell hole = words(thick(screw.clearanceHole_m), thick(screw.pilotHole_m));
        hole.source = sourceText(screw.holeSource);
        rows.push_back(
            {{whole(screw.number), pull, washer, hole, words(thick(screw.length_m), thick(screw.laterDiameter_m))},
             placeOf(holding, screw.index)});
    }
    return rows;
}

std::vector<FigureColumn> strapColumns() {
    return {left(QObject::tr("No."), {}, QObject::tr("Its number along the line")),
            figures(QObject::tr("Presses"), {}, QObject::tr("Whole thrust on the form")),
            figures(QObject::tr("Least"), {}, QObject::tr("Tension where it is least")),
            figures(QObject::tr("Turned"), {}, QObject::tr("On what it touches")),
            figures(QObject::tr("Idle"), QObject::tr("from"),
                    QObject::tr("Length on which it does nothing; below it: where the longest such stretch begins"))};
}

std::vector<FigureRow> strapRows(const plan::HoldingPlan& holding, const measure::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::StrapPlan& strap : holding.straps) {
        const QString from = strap.idle_m > 0 ? writeLengthText(strap.longestIdleFrom_m, display) : QString();
        FigureCell pressed = force(strap.total_N, display);
        if (strap.lacksEnd) pressed = words(QObject::tr("no end"));
        rows.push_back({{whole(numberOf(holding, strap.index)), pressed, force(strap.leastTension_N, display),
                         words(text(measure::writeAngle(strap.turned_rad))), place(strap.idle_m, display, from)},
                        placeOf(holding, strap.index)});
    }
    return rows;
}

std::vector<FigureColumn> countColumns() {
    return {left(QObject::tr("Kind"), {}, {}), figures(QObject::tr("Asked"), {}, QObject::tr("Stations that want one")),
            figures(QObject::tr("There"), {}, QObject::tr("That the list has")),
            figures(QObject::tr("Without"), {},
                    QObject::tr("Stations left without one that is strong enough and reaches"))};
}

std::vector<FigureRow> countRows(const holding::AtHand& atHand) {
    std::vector<FigureRow> rows;
    for (const holding::Counted& counted : atHand.counts) {
        FigureCell without = whole(math::countOf(counted.withoutTool));
        if (!counted.withoutTool.empty()) without.severity = stop;
        rows.push_back({{words(holdName(counted.kind)), whole(counted.asked),
                         counted.listed ? whole(counted.there) : words(QObject::tr("not listed")),
                         counted.listed ? without : words(notKnown)},
                        std::nullopt});
    }
    return rows;
}

std::vector<FigureColumn> servedColumns() {
    return {left(QObject::tr("No."), {}, QObject::tr("Its number along the line")),
            left(QObject::tr("Tool"), {}, QObject::tr("That serves it, or why none does")),
            figures(QObject::tr("Turns"), {},
                    QObject::tr("Of the screw past snug, from its pitch and what gives way: an estimate"))};
}

namespace {

QString lacksWord(holding::Lacks lacks) {
    switch (lacks) {
        case holding::Lacks::nothing:
            return notKnown;
        case holding::Lacks::strength:
            return QObject::tr("none is strong enough");
        case holding::Lacks::opening:
            return QObject::tr("none opens far enough");
        case holding::Lacks::throat:
            return QObject::tr("none reaches far enough");
        case holding::Lacks::count:
            return QObject::tr("all in use elsewhere");
    }
    return {};
}

}  // namespace

std::vector<FigureRow> servedRows(const plan::HoldingPlan& holding, const boat::Piece& piece) {
    std::vector<FigureRow> rows;
    const std::vector<boat::Tool>& tools = piece.holding.tools;
    for (const holding::StationPlace& place : holding.stations) {
        const auto index = static_cast<std::size_t>(place.index);
        if (index >= holding.atHand.served.size()) continue;
        const holding::Served& served = holding.atHand.served[index];
        const bool any = served.tool >= 0 && static_cast<std::size_t>(served.tool) < tools.size();
        FigureCell tool = words(any ? text(tools[served.tool].name) : lacksWord(served.lacks));
        if (!any && served.lacks != holding::Lacks::nothing) tool.severity = stop;
        const bool turns = served.turnsPastSnug && std::isfinite(*served.turnsPastSnug);
        rows.push_back({{whole(place.number), tool,
                         words(turns ? text(measure::writeNumber(*served.turnsPastSnug, 2)) : notKnown)},
                        place.at_m});
    }
    return rows;
}

}  // namespace fayline::app
