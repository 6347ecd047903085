#include "app/paper/closing_sheet.hpp"

#include <algorithm>

#include "app/look/names.hpp"
#include "app/paper/bench_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/marks.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/places.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/figures.hpp"

namespace fayline::app::paper {

namespace {

const model::Station& stationOf(const model::Piece& piece, const holding::ClosingStep& step) {
    return piece.holding.stations.at(static_cast<std::size_t>(step.index));
}

double tapeOf(const plan::Plan& plan, int index) {
    for (const holding::StationPlace& place : plan.holding.stations) {
        if (place.index == index) return place.alongOutside_m;
    }
    return 0;
}

bool knowsFloor(const model::Piece& piece) {
    const auto stands = [](const model::Station& station) {
        const auto* strut = model::as<model::Strut>(station);
        return strut && strut->to == model::PropTo::floor && strut->footY_m.has_value();
    };
    return std::any_of(piece.holding.stations.begin(), piece.holding.stations.end(), stands);
}

// What to look out for at a step; empty: nothing.
QString watchText(const model::Piece& piece, const plan::Plan& plan, const holding::ClosingStep& step) {
    QStringList texts;
    // A strap has no pad: no gap is told of it.
    if (holding::closesGap(stationOf(piece, step)) && step.gap_m > piece.holding.gapLimit_m)
        texts << "leaves " + smallText(step.gap_m, plan.display);
    const auto row = static_cast<std::size_t>(step.order - 1);
    const auto& hulls = plan.holdingStudy->closingLoads.hulls;
    if (row < hulls.size() && hulls[row]) {
        const holding::HullPlan& hull = *hulls[row];
        if (hull.lifts || hull.tips) {
            texts << (hull.lifts ? "the boat lifts" : "the boat tips");
        } else if (hull.slides) {
            texts << "the boat slides";
        } else if (hull.margin < holding::marginAsked) {
            texts << "boat's margin " + QString::fromStdString(units::writeNumber(hull.margin, 2));
        }
    }
    if (step.floorInTheWay) texts << "floor in the way";
    if (step.outcome == holding::Outcome::snaps) texts << "may jump over";
    if (step.snapUndecided) texts << "assume that it may jump over";
    if (!holding::inBalance(step.outcome)) texts << "no balance found";
    return texts.join("; ");
}

Table stepsTable(const model::Piece& piece, const plan::Plan& plan, const std::vector<holding::ClosingStep>& steps) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "Station by station. Lengths in " + lengthHead(display) + ".";
    table.size_mm = 3.8;
    table.columns = {{"Done", {}, Lean::left},
                     {"Order", {}, Lean::centre},
                     {"Station", "what holds it", Lean::left},
                     {"Tape along the outside"},
                     {"Force needed", "below: on a scale"},
                     {"Gap", "before"},
                     {"Free end", "then"},
                     {"Tip x", "then"},
                     {"Tip y", "then"},
                     {"Watch", {}, Lean::left}};
    for (const holding::ClosingStep& step : steps) {
        const QString held = holdName(stationOf(piece, step).kind);
        const QString tool = toolText(piece, plan, step.index);
        const QString watch = watchText(piece, plan, step);
        const holding::HoldState state = step.closed.empty() ? holding::HoldState::slack : step.closed.back().state;
        const bool known = holding::inBalance(step.outcome);
        const QString dash = units::noFigure;
        const auto then = [&](double length_m) { return known ? lengthCell(length_m, display) : textCell(dash); };
        table.rows.push_back(
            {Cell{{}, {}, false, true}, textCell(QString::number(step.order), true),
             textCell(inOnePiece(QString("%1 %2").arg(step.number).arg(held)), true, tool),
             lengthCell(tapeOf(plan, step.index), display, true),
             known ? pullCell(step.pull_N, state, display, onScaleText(step.pull_N, display)) : textCell(dash),
             lengthCell(step.standsOff_m, display), then(step.tailOff_m), then(step.tip.x_m), then(step.tip.y_m),
             textCell(watch, true)});
    }
    return table;
}

QString carriedText(const holding::Carried& carried, const units::Display& display) {
    QStringList places;
    for (const double place_m : carried.places_m) places << inOnePiece(lengthText(place_m, display));
    constexpr double leastSag_m = 0.001;    // less than a hand or an eye tells
    constexpr double leastStrain = 0.0005;  // a tenth of what a strip bears: less needs no word
    QString text = QString("Carry the loose stack flat-wise at %1 points%2: it weighs %3 and %4")
                       .arg(QString::number(carried.points),
                            places.isEmpty() ? QString() : " (" + places.join(", ") + " from the strips' start)",
                            onScaleText(carried.weight_N, display),
                            carried.sag_m < leastSag_m ? QString("hardly sags")
                                                       : "sags " + inOnePiece(lengthText(carried.sag_m, display)));
    if (carried.strain >= leastStrain) {
        text +=
            ", which strains its strips by " + inOnePiece(QString::fromStdString(units::writeShare(carried.strain)));
    }
    return text + ".";
}

// As the findings have it, who picture it by a weight thrown up.
QString storedText(const plan::Plan& plan) {
    const auto found = std::ranges::find(plan.findings, plan::Code::storedBend, &plan::Finding::code);
    const QString source = " (engineering judgement, C).";
    if (found == plan.findings.end())
        return "Bent strips can whip: rope the stack, and stay clear of the ends" + source;
    return QString::fromStdString(plan::textOf(*found, plan.display)).chopped(1) + source;
}

std::vector<Paragraph> notesOf(const model::Piece& piece, const plan::Plan& plan) {
    std::vector<Paragraph> texts{{storedText(plan), 3, true}, {localRulesCaution(), 2.7, false}};
    if (!plan::has(plan, plan::Study::closing)) return texts;
    if (plan::has(plan, plan::Study::carried))
        texts.push_back({carriedText(plan.holdingStudy->carried, plan.display), 2.9, true});
    texts.push_back(
        {"Force needed: with all before it closed. Gap before: from form to stack, square to the form. Free end then: "
         "from the form, run on, to the tip of the open side; x and y give the tip.",
         2.4, false});
    if (!knowsFloor(piece)) {
        texts.push_back({"No prop gives the floor's place: look for yourself whether the tip clears it.", 2.4});
    }
    texts.push_back({"On a scale: a bathroom scale under the clamp once shows what that force feels like (C).", 2.4});
    texts.push_back({"Derived from a bent rod lying on its form (D); wood scatters, so make a dry fit.", 2.4});
    return texts;
}

}  // namespace

std::vector<Sheet> closingSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    Listing listing;
    listing.name = "in closing order";
    listing.notes = notesOf(piece, plan);
    if (piece.holding.stations.empty()) {
        listing.blocks.push_back(Paragraph{"This piece has no stations to close.", 3.8, true});
    } else if (plan.holding.held.outcome == holding::Outcome::notPressed) {
        listing.blocks.push_back(
            Paragraph{"How the stack lies on its form is not calculated, so this sheet has no order.", 3.8, true});
    } else if (!plan::has(plan, plan::Study::closing)) {
        listing.blocks.push_back(
            Paragraph{"The closing order is still being calculated: wait a moment, then print again.", 3.8, true});
    } else {
        const std::vector<holding::ClosingStep>& steps = plan.holdingStudy->closing;
        listing.blocks.push_back(stepsTable(piece, plan, steps));
        if (steps.size() < piece.holding.stations.size()) {
            listing.blocks.push_back(Paragraph{
                QString("%1 of %2 stations stand here; the others press nothing on the form, or were not calculated.")
                    .arg(steps.size())
                    .arg(piece.holding.stations.size()),
                2.9});
        }
    }
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
