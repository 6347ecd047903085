#include "app/panels/holding_rows.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/force.hpp"

namespace fayline::app {

namespace {

constexpr int stop = int(plan::Severity::stop);
constexpr int caution = int(plan::Severity::caution);

const QString notKnown(QChar(0x2013));

FigureCell whole(int number) {
    return {QString::number(number), {}, double(number)};
}

FigureCell force(double force_N, const units::Display& display, const QString& under = {}) {
    return {text(units::writeForce(force_N, display)), under, force_N};
}

FigureCell place(double at_m, const units::Display& display, const QString& under = {}) {
    return {writeLengthText(at_m, display), under, at_m};
}

FigureCell small(double distance_m, const units::Display& display, const QString& under = {}) {
    if (!std::isfinite(distance_m)) return {notKnown, under, 0};
    constexpr double small_m = 0.1;  // beyond that hundredths of a millimetre say nothing
    if (distance_m > small_m) return place(distance_m, display, under);
    return {smallFigure(distance_m, display) + ' ' + smallUnit(display), under, distance_m};
}

// A light pull is told as that, as in the table of stations.
FigureCell pull(double pull_N, holding::HoldState state, const units::Display& display, const QString& under = {}) {
    FigureCell cell = force(pull_N, display, under);
    if (holding::pullsLightly(state, pull_N)) cell.text = tr("light");
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

// In the order of holding::Governs.
QString governedWord(holding::Governs governs) {
    return QStringList{tr("gap"), tr("force"), tr("squeeze"), tr("fixed"), tr("end")}.value(int(governs));
}

}  // namespace

std::vector<FigureColumn> proposalColumns() {
    return {wordColumn(tr("Held by"), tr("squeeze"), tr("set by"),
                       tr("Below it: what sets its distance from the one before")),
            figureColumn(tr("Along"), "12-11-7+", {}, tr("Along the line from its first point")),
            figureColumn(tr("Pull"), "12300 N", {}, tr("What it pulls, square to the form")),
            figureColumn(tr("Gap"), "12.34 mm", {}, tr("What is left under its pad"))};
}

std::vector<FigureRow> proposalRows(const plan::HoldingStudy& study, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::Proposed& proposed : study.proposal.stations) {
        const model::Station& station = proposed.station;
        rows.push_back({{FigureCell{holdName(station.kind), governedWord(proposed.governedBy)},
                         place(station.at_m, display), pull(proposed.pull_N, proposed.state, display),
                         holding::closesGap(station) ? small(proposed.gap_m, display) : FigureCell{notKnown}},
                        station.at_m});
    }
    return rows;
}

std::vector<FigureColumn> closingColumns() {
    return {wordColumn(tr("Close"), "00", {}, tr("In this order")),
            wordColumn(tr("Station"), "00", tr("margin"),
                       tr("Its number. Below it: times this push before the boat lifts, tips or slides.")),
            figureColumn(tr("Pull"), "12300 N", tr("Gap before"),
                         tr("Force needed with all before it closed. Below it: the gap before.")),
            figureColumn(tr("Free end"), tr("in the way"), tr("floor"),
                         tr("Gap from form to free end. Below it: whether the floor is in its way.")),
            figureColumn(tr("Tip x"), "12-11-7+", tr("y"), tr("Where the tip of the free end then is"))};
}

namespace {

// The station of a step, with the boat's margin at that moment below it.
FigureCell stationThen(const plan::HoldingStudy& study, const holding::ClosingStep& step) {
    const auto row = static_cast<std::size_t>(step.order - 1);
    const std::vector<std::optional<holding::HullPlan>>& hulls = study.closingLoads.hulls;
    FigureCell cell{QString::number(step.number)};
    if (row >= hulls.size() || !hulls[row] || !std::isfinite(hulls[row]->margin)) return cell;
    cell.under = QString::fromStdString(units::writeNumber(hulls[row]->margin, 2));
    if (hulls[row]->margin < 1)
        cell.severity = stop;
    else if (hulls[row]->margin < holding::marginAsked)
        cell.severity = caution;
    return cell;
}

}  // namespace

std::vector<FigureRow> closingRows(const plan::HoldingStudy& study, const model::Piece& piece,
                                   const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::ClosingStep& step : study.closing) {
        const auto index = static_cast<std::size_t>(step.index);
        const bool known = index < piece.holding.stations.size();
        const holding::HoldState state = step.closed.empty() ? holding::HoldState::slack : step.closed.back().state;
        FigureCell pulled = pull(step.pull_N, state, display, small(step.standsOff_m, display).text);
        const bool settled = holding::inBalance(step.outcome);
        if (!settled) pulled = FigureCell{tr("unsettled"), pulled.under};
        if (step.outcome == holding::Outcome::snaps) pulled.severity = stop;
        FigureCell tail = small(step.tailOff_m, display, step.floorInTheWay ? tr("in the way") : QString());
        if (step.floorInTheWay) tail.severity = caution;
        FigureCell tip = place(step.tip.x_m, display, writeLengthText(step.tip.y_m, display));
        if (!settled) tail = tip = FigureCell{notKnown};
        rows.push_back({{whole(step.order), stationThen(study, step), pulled, tail, tip},
                        known ? std::optional<double>(piece.holding.stations[index].at_m) : std::nullopt});
    }
    return rows;
}

namespace {

// In the order of holding::Slips.
QString slipsWord(const holding::PropPlan& prop) {
    if (prop.footAboveHead) return tr("foot wrong");
    if (prop.cannotPress) return tr("cannot press");
    return QStringList{tr("holds"), tr("at its head"), tr("at its foot"), tr("at both ends")}.value(int(prop.slips));
}

QString stopWord(const holding::PropPlan& prop) {
    if (prop.slips == holding::Slips::no) return {};
    return prop.stopsHold ? tr("stops hold") : tr("no stop");
}

}  // namespace

std::vector<FigureColumn> propColumns() {
    return {wordColumn(tr("No."), "00", {}, tr("Its number along the line")),
            figureColumn(tr("Thrust"), "12300 N", tr("may carry"),
                         tr("Along the prop. Below it: allowed as a column, or its rated load.")),
            figureColumn(tr("Slant"), "at foot", tr("at foot"),
                         tr("Degrees off square to the stack at its head; below it: at its foot")),
            wordColumn(tr("Slips"), tr("at both ends"), tr("stops"), tr("By friction alone, without its stops")),
            figureColumn(tr("Foot x"), "12-11-7+", tr("y"), tr("Nearest foot that holds without another stop"))};
}

std::vector<FigureRow> propRows(const plan::HoldingPlan& holding, const model::Piece&, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::PropPlan& prop : holding.props) {
        const double may_N = std::min(prop.allowable_N, prop.most_N);
        FigureCell thrust = force(prop.thrust_N, display, text(units::writeForce(may_N, display)));
        if (prop.thrust_N > may_N || prop.tooSlender) thrust.severity = stop;
        thrust.source = sourceText(prop.columnSource);
        FigureCell slips{slipsWord(prop), stopWord(prop)};
        const bool bad =
            prop.footAboveHead || prop.cannotPress || (prop.slips != holding::Slips::no && !prop.stopsHold);
        if (bad) slips.severity = stop;
        slips.source = sourceText(prop.frictionSource);
        const FigureCell foot = prop.footThatHolds ? place(prop.footThatHolds->x_m, display,
                                                           writeLengthText(prop.footThatHolds->y_m, display))
                                                   : FigureCell{tr("none")};
        rows.push_back(
            {{whole(prop.number), thrust,
              FigureCell{text(units::writeAngle(prop.slant_rad)), text(units::writeAngle(prop.footSlant_rad))}, slips,
              foot},
             placeOf(holding, prop.index)});
    }
    return rows;
}

std::vector<FigureColumn> screwColumns() {
    return {wordColumn(tr("No."), "00", {}, tr("Its number along the line")),
            figureColumn(tr("Pull"), "12300 N", tr("allowed"), tr("Below it: what wood and steel allow")),
            figureColumn(tr("Washer"), "0.00 MPa", tr("may"),
                         tr("Pressure under the washer. Below it: what the outer strip takes.")),
            figureColumn(tr("Hole"), "15/64 in", tr("pilot"),
                         tr("Clearance hole through the stack; below it: pilot hole in the backbone")),
            figureColumn(tr("Long"), "3 15/64 in", tr("later"),
                         tr("Length under the head. Below it: diameter of the fastening that fills the hole "
                            "later."))};
}

std::vector<FigureRow> screwRows(const plan::HoldingPlan& holding, const units::Display& display) {
    const auto thick = [&](double length_m) { return text(units::writeThickness(length_m, display)); };
    std::vector<FigureRow> rows;
    for (const holding::ScrewPlan& screw : holding.screws) {
        FigureCell pull = force(screw.pull_N, display, text(units::writeForce(screw.allowable_N(), display)));
        if (screw.pull_N > screw.allowable_N()) pull.severity = screw.pull_N > screw.ultimate_N() ? stop : caution;
        const bool byWood = screw.withdrawalAllowable_N <= screw.steelAllowable_N;
        pull.source = sourceText(byWood ? screw.withdrawalSource : screw.steelSource);
        FigureCell washer =
            FigureCell{text(units::writePressure(screw.washerPressure_Pa, display)),
                       screw.washerKnown ? text(units::writePressure(screw.washerMay_Pa, display)) : notKnown};
        if (screw.washerKnown && screw.washerPressure_Pa > screw.washerMay_Pa) washer.severity = caution;
        washer.source = sourceText(screw.washerSource);
        FigureCell hole{thick(screw.clearanceHole_m), thick(screw.pilotHole_m)};
        hole.source = sourceText(screw.holeSource);
        rows.push_back(
            {{whole(screw.number), pull, washer, hole, FigureCell{thick(screw.length_m), thick(screw.laterDiameter_m)}},
             placeOf(holding, screw.index)});
    }
    return rows;
}

std::vector<FigureColumn> strapColumns() {
    return {wordColumn(tr("No."), "00", {}, tr("Its number along the line")),
            figureColumn(tr("Presses"), "12300 N", {}, tr("Whole thrust on the form")),
            figureColumn(tr("Least"), "12300 N", {}, tr("Tension where it is least")),
            figureColumn(tr("Turned"), "180.0\u00B0", {}, tr("On what it touches")),
            figureColumn(tr("Idle"), "12-11-7+", tr("from"),
                         tr("Length that presses nothing; below it: where the longest such part begins"))};
}

std::vector<FigureRow> strapRows(const plan::HoldingPlan& holding, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const holding::StrapPlan& strap : holding.straps) {
        const QString from = strap.idle_m > 0 ? writeLengthText(strap.longestIdleFrom_m, display) : QString();
        FigureCell pressed = force(strap.total_N, display);
        if (strap.lacksEnd) pressed = FigureCell{tr("no end")};
        rows.push_back({{whole(numberOf(holding, strap.index)), pressed, force(strap.leastTension_N, display),
                         FigureCell{text(units::writeAngle(strap.turned_rad))}, place(strap.idle_m, display, from)},
                        placeOf(holding, strap.index)});
    }
    return rows;
}

std::vector<FigureColumn> countColumns() {
    return {wordColumn(tr("Kind"), "clamp"), figureColumn(tr("Need"), "000", {}, tr("Stations that need one")),
            figureColumn(tr("Have"), tr("not listed"), {}, tr("Tools of this kind on your list")),
            figureColumn(tr("Short"), "000", {}, tr("Stations with no tool that is strong enough and reaches"))};
}

std::vector<FigureRow> countRows(const holding::AtHand& atHand) {
    std::vector<FigureRow> rows;
    for (const holding::Counted& counted : atHand.counts) {
        FigureCell without = whole(math::countOf(counted.withoutTool));
        if (!counted.withoutTool.empty()) without.severity = stop;
        rows.push_back({{FigureCell{holdName(counted.kind)}, whole(counted.asked),
                         counted.listed ? whole(counted.there) : FigureCell{tr("not listed")},
                         counted.listed ? without : FigureCell{notKnown}},
                        std::nullopt});
    }
    return rows;
}

std::vector<FigureColumn> servedColumns() {
    return {wordColumn(tr("No."), "00", {}, tr("Its number along the line")),
            wordColumn(tr("Tool"), "bar", {}, tr("Which tool does it, or why none can")),
            figureColumn(tr("Turns"), "0.00", {}, tr("Of the screw past snug, from its pitch: rule of thumb"))};
}

namespace {

// In the order of holding::Lacks.
QString lacksWord(holding::Lacks lacks) {
    return QStringList{notKnown, tr("none is strong enough"), tr("none opens far enough"),
                       tr("none reaches far enough"), tr("all in use elsewhere")}
        .value(int(lacks));
}

}  // namespace

std::vector<FigureRow> servedRows(const plan::HoldingPlan& holding, const model::Piece& piece) {
    std::vector<FigureRow> rows;
    const std::vector<model::Tool>& tools = piece.holding.tools;
    for (const holding::StationPlace& place : holding.stations) {
        const auto index = static_cast<std::size_t>(place.index);
        if (index >= holding.atHand.served.size()) continue;
        const holding::Served& served = holding.atHand.served[index];
        const bool any = served.tool >= 0 && static_cast<std::size_t>(served.tool) < tools.size();
        FigureCell tool{any ? text(tools[served.tool].name) : lacksWord(served.lacks)};
        if (!any && served.lacks != holding::Lacks::nothing) tool.severity = stop;
        const bool turns = served.turnsPastSnug && std::isfinite(*served.turnsPastSnug);
        rows.push_back({{whole(place.number), tool,
                         FigureCell{turns ? text(units::writeNumber(*served.turnsPastSnug, 2)) : notKnown}},
                        place.at_m});
    }
    return rows;
}

}  // namespace fayline::app
