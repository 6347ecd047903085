#include "app/paper/pull_table.hpp"

#include "app/look/names.hpp"
#include "app/paper/bench_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/marks.hpp"
#include "core/holding/kinds.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/units/figures.hpp"

namespace fayline::app::paper {

namespace {

// None where no balance was found: what was tried last is nothing to work by.
const holding::HeldStation* heldAt(const plan::Plan& plan, int index) {
    if (!holding::inBalance(plan.holding.held.outcome)) return nullptr;
    for (const holding::HeldStation& held : plan.holding.held.stations) {
        if (held.index == index) return &held;
    }
    return nullptr;
}

QString stateText(const model::Station& station, holding::HoldState state) {
    if (station.side) return "edges only";
    if (!model::traitsOf(station.kind).closesGap) return "whole thrust";
    switch (state) {
        case holding::HoldState::slack:
            return "snug";
        case holding::HoldState::closes:
            return "as needed";
        case holding::HoldState::full:
            return "max force";
        case holding::HoldState::given:
            return "fixed";
    }
    return {};
}

QString turnsText(const plan::Plan& plan, int station) {
    for (const holding::Served& served : plan.holding.atHand.served) {
        if (served.station != station || !served.turnsPastSnug) continue;
        return QString::fromStdString(units::upToDecimals(*served.turnsPastSnug, 1));
    }
    return {};
}

Table stationsTable(const model::Piece& piece, const plan::Plan& plan) {
    const units::Display& display = plan.display;
    Table table;
    table.size_mm = 3.8;
    table.columns = {{"No.", {}, Lean::right},
                     {"What holds it", {}, Lean::left},
                     {"Tape along the outside", lengthHead(display)},
                     {"Force", "square to the form"},
                     {"Max force", {}},
                     {"Weigh once", "on a scale"},
                     {"Turns past snug", "estimate"},
                     {"Gap left", "under the pad"}};
    for (const holding::StationPlace& place : plan.holding.stations) {
        const model::Station& station = piece.holding.stations.at(static_cast<std::size_t>(place.index));
        const holding::HeldStation* held = heldAt(plan, place.index);
        const QString dash = units::noFigure;
        const QString kind = station.side ? "side " + holdName(station.kind) : holdName(station.kind);
        std::vector<Cell> row{textCell(QString::number(place.number), true),
                              textCell(kind, true, toolText(piece, plan, place.index)),
                              lengthCell(place.alongOutside_m, display, true)};
        if (held) {
            const QString turns = turnsText(plan, place.index);
            const bool light = holding::pullsLightly(held->state, held->pull_N);
            row.push_back(pullCell(held->pull_N, held->state, display, stateText(station, held->state)));
            row.push_back(textCell(forceText(held->most_N, display)));
            row.push_back(textCell(light ? dash : onScaleText(held->pull_N, display)));
            row.push_back(textCell(turns.isEmpty() ? dash : turns));
            row.push_back(textCell(holding::closesGap(station) ? smallText(held->gap_m, display) : dash));
        } else {
            row.insert(row.end(),
                       {textCell(dash, false, station.side ? "edges only" : QString()),
                        textCell(forceText(station.most_N, display)), textCell(dash), textCell(dash), textCell(dash)});
        }
        table.rows.push_back(std::move(row));
    }
    return table;
}

QString outcomeText(holding::Outcome outcome) {
    switch (outcome) {
        case holding::Outcome::settled:
            break;
        case holding::Outcome::snaps:
            return "The stack can jump on its way to this shape: keep clear of it, and rope it.";
        case holding::Outcome::notConverged:
            return "No balance was found, so no forces and gaps stand here.";
        case holding::Outcome::notPressed:
            return "How the stack lies on its form is not calculated, so no forces and gaps stand here.";
    }
    return {};
}

std::vector<Paragraph> strapTexts(const model::Piece& piece, const plan::Plan& plan) {
    std::vector<Paragraph> texts;
    for (const holding::StrapPlan& strap : plan.holding.straps) {
        const model::Station& station = piece.holding.stations.at(static_cast<std::size_t>(strap.index));
        int number = 0;
        for (const holding::StationPlace& place : plan.holding.stations) {
            if (place.index == strap.index) number = place.number;
        }
        QString text = QString("Strap %1: draw it with %2; it presses %3 in all, and its tension falls to %4.")
                           .arg(number)
                           .arg(forceText(station.pull_N.value_or(station.most_N), plan.display),
                                forceText(strap.total_N, plan.display), forceText(strap.leastTension_N, plan.display));
        if (strap.lacksEnd) {
            text = QString("Strap %1 has no end: give where it ends.").arg(number);
        } else {
            text +=
                QString(
                    " Its ends pull with %1 and %2 on what they are fast to; their press on the stack is not counted.")
                    .arg(forceText(strap.startPull_N, plan.display), forceText(strap.endPull_N, plan.display));
        }
        if (!strap.lacksEnd && strap.idle_m > 0) {
            text += QString(" On %1 of its length, straight or hollow, it presses nothing.")
                        .arg(inOnePiece(lengthText(strap.idle_m, plan.display)));
        }
        texts.push_back({text, 2.9});
    }
    return texts;
}

QString gapsText(const model::Piece& piece, const plan::Plan& plan) {
    const holding::Held& held = plan.holding.held;
    return QString(
               "Largest gap between the trim lines: %1, %2; at the start trim line %3, at the end trim line %4. The "
               "limit is %5.")
        .arg(smallText(held.largest.gap_m, plan.display),
             QString::fromStdString(plan::placeText(held.largest.at_m, plan.line.fair.line.length(), plan.display)),
             smallText(held.gapAtStart_m, plan.display), smallText(held.gapAtEnd_m, plan.display),
             smallText(piece.holding.gapLimit_m, plan.display));
}

QString fallsInsideText(const plan::Plan& plan) {
    const holding::LargestGap& falls = plan.holding.held.fallsInside;
    return QString("Between its supports the stack falls inside the line by up to %1, %2.")
        .arg(smallText(falls.gap_m, plan.display),
             QString::fromStdString(plan::placeText(falls.at_m, plan.line.fair.line.length(), plan.display)));
}

QString endText(const QString& end, const holding::EndNeed& need, double there_m, const units::Display& display) {
    const QString there = inOnePiece(lengthText(there_m, display));
    if (!need.overRun_m) return QString("no extra length up to a metre closes the %1 (now %2)").arg(end, there);
    return QString("%1 past the %2 (now %3)").arg(inOnePiece(lengthText(*need.overRun_m, display)), end, there);
}

QString overRunText(const model::Piece& piece, const plan::Plan& plan) {
    const holding::OverRun& need = plan.holdingStudy->overRun;
    return "Extra length that the ends need with your clamps: " +
           endText("start", need.start, piece.stack.runsPastStart_m, plan.display) + ", " +
           endText("end", need.end, piece.stack.runsPastEnd_m, plan.display) + ".";
}

void addFindings(Listing& listing, const plan::Plan& plan) {
    for (const plan::Finding& finding : plan.findings) {
        const bool ofHolding = plan::aboutOf(finding.code) == plan::About::holding;
        if (!ofHolding || !plan::isCause(finding) || finding.severity == plan::Severity::note) continue;
        const QString severity = QString::fromUtf8(plan::severityText(finding.severity));
        QString text = severity.at(0).toUpper() + severity.mid(1) + ": " +
                       QString::fromStdString(plan::textOf(finding, plan.display));
        if (!finding.source.text.empty()) {
            text +=
                " [" + QString::fromStdString(finding.source.text) + " (" + units::markText(finding.source.mark) + ")]";
        }
        listing.blocks.push_back(Paragraph{text, 2.7, finding.severity == plan::Severity::stop});
    }
}

std::vector<Paragraph> pullNotes(const model::Piece& piece, const plan::Plan& plan) {
    std::vector<Paragraph> texts;
    const plan::HoldingPlan& holding = plan.holding;
    if (const QString outcome = outcomeText(holding.held.outcome); !outcome.isEmpty())
        texts.push_back({outcome, 2.9, true});
    if (!holding.held.stations.empty() && holding::inBalance(holding.held.outcome))
        texts.push_back({gapsText(piece, plan), 2.7});
    if (holding.held.fallsInside.gap_m > 0) texts.push_back({fallsInsideText(plan), 2.7});
    if (plan::has(plan, plan::Study::overRun) && holding.held.outcome != holding::Outcome::notPressed)
        texts.push_back({overRunText(piece, plan), 2.7});
    texts.push_back({bentStackCaution(), 2.4});
    texts.push_back({localRulesCaution(), 2.4});
    texts.push_back(
        {"Weigh once: a bathroom scale under the clamp, screwed until it shows this, teaches the hand that force (C). "
         "Turns past snug are an estimate (C): a clamp's screw scatters by half at the same feel.",
         2.4});
    texts.push_back(
        {"Forces and gaps are derived from a bent rod lying on its form (D); wood scatters by a fifth, so make a dry "
         "fit.",
         2.4});
    return texts;
}

}  // namespace

std::vector<Sheet> pullTable(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    if (plan.holding.stations.empty()) return {};
    Listing listing;
    listing.name = "forces";
    listing.notes = pullNotes(piece, plan);
    if (plan.holding.held.stations.empty()) {
        listing.blocks.push_back(Paragraph{"The forces of this plan are still being calculated.", 3.4, true});
    }
    listing.blocks.push_back(stationsTable(piece, plan));
    for (const Paragraph& text : strapTexts(piece, plan)) listing.blocks.push_back(text);
    addFindings(listing, plan);
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
