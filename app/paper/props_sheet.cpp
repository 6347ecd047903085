#include "app/paper/props_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "app/look/names.hpp"
#include "app/paper/bench_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/side_view.hpp"
#include "core/holding/props/hull.hpp"
#include "core/holding/props/screw.hpp"
#include "core/model/hold_traits.hpp"
#include "core/units/figures.hpp"

namespace fayline::app::paper {

namespace {

bool pushes(const model::Station& station) {
    return model::is<model::Strut>(station.kind);
}

const model::Station& stationAt(const model::Piece& piece, int index) {
    return piece.holding.stations.at(static_cast<std::size_t>(index));
}

QString numberOf(const plan::Plan& plan, int index) {
    for (const holding::StationPlace& place : plan.holding.stations) {
        if (place.index == index) return QString::number(place.number);
    }
    return units::noFigure;
}

// A strength; a dash where there is none to give.
QString strengthText(double force_N, const units::Display& display) {
    return std::isfinite(force_N) && force_N > 0 ? forceText(force_N, display) : QString(units::noFigure);
}

Cell kindCell(const model::Piece& piece, const plan::Plan& plan, int index) {
    const model::Station& station = stationAt(piece, index);
    QString below = toolText(piece, plan, index);
    const auto* strut = model::as<model::Strut>(station);
    if (strut && strut->to == model::PropTo::overhead) below += below.isEmpty() ? "overhead" : ", overhead";
    return textCell(holdName(station.kind), true, below);
}

Table propPlaces(const model::Piece& piece, const plan::Plan& plan) {
    const units::Display& display = plan.display;
    const QString lengths = lengthHead(display);
    Table table;
    table.title = "Props and jacks: where they stand";
    table.columns = {{"No.", {}},         {"Kind", {}, Lean::left},
                     {"Foot x", lengths}, {"Foot y", lengths},
                     {"Head x", lengths}, {"Head y", lengths},
                     {"Length", lengths}, {"Slant", "off square, below: at the foot"}};
    for (const holding::PropPlan& prop : plan.holding.props) {
        Cell kind = kindCell(piece, plan, prop.index);
        if (prop.footAssumed) kind.below += kind.below.isEmpty() ? "foot assumed" : ", foot assumed";
        table.rows.push_back({textCell(numberOf(plan, prop.index), true), kind, lengthCell(prop.foot.x_m, display),
                              lengthCell(prop.foot.y_m, display), lengthCell(prop.head.x_m, display),
                              lengthCell(prop.head.y_m, display), lengthCell(prop.length_m, display, true),
                              textCell(degreesText(prop.slant_rad), false, degreesText(prop.footSlant_rad))});
    }
    return table;
}

bool slipsAt(holding::Slips slips, holding::Slips end) {
    return slips == end || slips == holding::Slips::both;
}

// What keeps the ends of a prop where they are, or what is missing.
Cell endsCell(const model::Piece& piece, const plan::Plan& plan, const holding::PropPlan& prop) {
    const auto& strut = stationAt(piece, prop.index).strut;
    if (prop.footAboveHead) return textCell("It pulls: its foot is beyond its head.", true);
    if (prop.cannotPress) return textCell("It slants too much to press.", true);
    QStringList missing;
    QStringList fitted;
    const auto look = [&](holding::Slips end, model::Stop stop, const QString& name) {
        const bool stopped = strut.stoppedAt(stop);
        if (slipsAt(prop.slips, end) && !stopped) missing << name;
        if (stopped) fitted << name;
    };
    look(holding::Slips::head, model::Stop::head, "head");
    look(holding::Slips::foot, model::Stop::foot, "foot");
    QString below = QString("friction counted on: head %1, foot %2")
                        .arg(QString::fromStdString(units::upToDecimals(prop.headFriction, 2)),
                             QString::fromStdString(units::upToDecimals(prop.footFriction, 2)));
    if (missing.isEmpty()) {
        if (fitted.isEmpty()) return textCell("holds by friction", false, below);
        return textCell("stop fitted at the " + fitted.join(" and the "), false, below);
    }
    const QString needed = "NEEDS A STOP at the " + missing.join(" and the ");
    if (prop.footThatHolds) {
        below = QString("or its foot at x %1, y %2; ")
                    .arg(inOnePiece(lengthText(prop.footThatHolds->x_m, plan.display)),
                         inOnePiece(lengthText(prop.footThatHolds->y_m, plan.display))) +
                below;
    }
    return textCell(needed, true, below);
}

// "89 x 38 mm, assumed, too slender"
QString sectionText(const holding::PropPlan& prop, const units::Display& display) {
    QString text =
        inOnePiece(thicknessText(prop.section_m[0], display) + " x " + thicknessText(prop.section_m[1], display));
    if (prop.sectionAssumed) text += " assumed";
    if (prop.tooSlender) text += ", TOO SLENDER";
    return text;
}

Table propLoads(const model::Piece& piece, const plan::Plan& plan) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "Props and jacks: their loads";
    table.columns = {{"No.", {}},
                     {"Kind", {}, Lean::left},
                     {"Thrust", "below: on a scale"},
                     {"Allowed", "as rated or given"},
                     {"Column", "allowed, below: Euler"},
                     {"Ends", {}, Lean::left}};
    for (const holding::PropPlan& prop : plan.holding.props) {
        const bool rated = model::traitsOf(stationAt(piece, prop.index).kind).isRated;
        const QString buckles =
            prop.woodenColumn && prop.bucklesAt_N
                ? "buckles at " + strengthText(*prop.bucklesAt_N, display) + ", " + sectionText(prop, display)
                : QString("as rated");
        table.rows.push_back({textCell(numberOf(plan, prop.index), true), kindCell(piece, plan, prop.index),
                              textCell(forceText(prop.thrust_N, display), true, onScaleText(prop.thrust_N, display)),
                              textCell(strengthText(prop.most_N, display), rated, rated ? "rated load" : ""),
                              textCell(strengthText(prop.allowable_N, display), false, buckles),
                              endsCell(piece, plan, prop)});
    }
    return table;
}

Table screwHoles(const model::Piece& piece, const plan::Plan& plan) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "Screws: what to drill";
    table.columns = {{"No.", {}},
                     {"Screw", "diameter"},
                     {"Clearance hole", "through the stack"},
                     {"Pilot hole", "in the backbone"},
                     {"Length", "under the head"},
                     {"Into the backbone", {}},
                     {"Washer", "diameter"},
                     {"Later fastening", "fills the clearance hole"}};
    for (const holding::ScrewPlan& screw : plan.holding.screws) {
        const auto& given = stationAt(piece, screw.index).screw;
        const auto size = [&](double length_m, bool isGiven) {
            return textCell(thicknessText(length_m, display), false, isGiven ? "" : "assumed");
        };
        table.rows.push_back({textCell(numberOf(plan, screw.index), true),
                              size(screw.diameter_m, given.diameter_m.has_value()),
                              textCell(thicknessText(screw.clearanceHole_m, display), true),
                              textCell(thicknessText(screw.pilotHole_m, display), true),
                              textCell(thicknessText(screw.length_m, display), true),
                              size(screw.intoBackbone_m, given.intoBackbone_m.has_value()),
                              size(screw.washer_m, given.washer_m.has_value()),
                              textCell(thicknessText(screw.laterDiameter_m, display))});
    }
    return table;
}

Table screwLoads(const plan::Plan& plan) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "Screws: their loads, and how far from the edges";
    table.columns = {{"No.", {}},
                     {"Pull", "below: on a scale"},
                     {"Draws out at", "allowed, below: ultimate"},
                     {"Steel", "allowed, below: breaks"},
                     {"Washer presses", "below: it may"},
                     {"To the edge", "below: needed"},
                     {"To the trim line", "below: needed"}};
    for (const holding::ScrewPlan& screw : plan.holding.screws) {
        table.rows.push_back(
            {textCell(numberOf(plan, screw.index), true),
             textCell(forceText(screw.pull_N, display), true, onScaleText(screw.pull_N, display)),
             textCell(strengthText(screw.withdrawalAllowable_N, display), false,
                      strengthText(screw.withdrawalUltimate_N, display)),
             textCell(strengthText(screw.steelAllowable_N, display), false,
                      strengthText(screw.steelUltimate_N, display)),
             textCell(pressureText(screw.washerPressure_Pa, display), false,
                      screw.washerKnown ? pressureText(screw.washerMay_Pa, display) : QString("not known")),
             textCell(thicknessText(screw.fromEdge_m, display), false, thicknessText(screw.fromEdgeNeeded_m, display)),
             textCell(thicknessText(screw.fromEnd_m, display), false, thicknessText(screw.fromEndNeeded_m, display))});
    }
    return table;
}

Table blocksTable(const model::Piece& piece, const plan::Plan& plan) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "The boat on its blocks";
    table.columns = {{"Block", {}},
                     {"x", lengthHead(display)},
                     {"y", lengthHead(display)},
                     {"Push", "below: on a scale"},
                     {"At rest", "without props"},
                     {"", {}, Lean::left}};
    for (const holding::BlockPush& push : plan.holding.hull->blocks) {
        const model::Block& block = piece.holding.hull.blocks.at(static_cast<std::size_t>(push.index));
        table.rows.push_back({textCell(QString::number(push.index + 1), true), lengthCell(block.x_m, display),
                              lengthCell(block.y_m, display),
                              textCell(forceText(push.push_N, display), true, onScaleText(push.push_N, display)),
                              textCell(forceText(push.atRest_N, display)),
                              textCell(push.lifts ? "the boat LIFTS off it" : "", true)});
    }
    return table;
}

QString failureText(holding::HullPlan::Failure failure) {
    switch (failure) {
        case holding::HullPlan::Failure::never:
            break;
        case holding::HullPlan::Failure::lifts:
            return "lifts off its blocks";
        case holding::HullPlan::Failure::tips:
            return "tips";
        case holding::HullPlan::Failure::slides:
            return "slides";
    }
    return "gives way";
}

QString marginText(const plan::Plan& plan) {
    const holding::HullPlan& hull = *plan.holding.hull;
    QString text = "The boat stays down.";
    if (std::isfinite(hull.margin)) {
        text = QString("The boat %2 at %1 times all these pushes (margin needed: %3).")
                   .arg(QString::fromStdString(units::writeNumber(hull.margin, 2)), failureText(hull.failsBy),
                        QString::fromStdString(units::writeNumber(holding::marginAsked, 2)));
    }
    text += " Total push " + forceText(hull.totalPush_N, plan.display);
    if (std::isfinite(hull.mostPush_N)) {
        text += ", at most " + forceText(hull.mostPush_N, plan.display) + " with that margin";
    }
    text += ".";
    if (hull.worstProp < 0) return text;
    text += " Station " + numberOf(plan, hull.worstProp) + " pushes hardest on the margin";
    if (std::isfinite(hull.marginWithoutWorst)) {
        text += "; without it it is " + QString::fromStdString(units::writeNumber(hull.marginWithoutWorst, 2));
    }
    return text + ".";
}

std::vector<Paragraph> hullTexts(const plan::Plan& plan) {
    const holding::HullPlan& hull = *plan.holding.hull;
    const units::Display& display = plan.display;
    std::vector<Paragraph> texts;
    QStringList goes;
    if (hull.lifts) goes << "lifts off its blocks";
    if (hull.tips) goes << "tips";
    if (hull.slides) goes << "slides";
    if (!hull.standsAtRest) {
        texts.push_back({"Stop: the boat does not stand on these blocks even without props.", 3.2, true});
    } else if (!goes.isEmpty()) {
        texts.push_back({"Stop: under these pushes the boat " + goes.join(", ") + ".", 3.2, true});
    }
    texts.push_back({marginText(plan), 2.9, true});
    texts.push_back({QString("Along the floor the pushes come to %1; friction on the blocks bears %2.")
                         .arg(forceText(hull.level_N, display), forceText(hull.frictionMay_N, display)),
                     2.9});
    return texts;
}

std::vector<Paragraph> cautions(const model::Piece& piece) {
    const auto any = [&](const auto& which) {
        return std::any_of(piece.holding.stations.begin(), piece.holding.stations.end(), which);
    };
    const bool jacks = any([](const model::Station& one) { return model::traitsOf(one.kind).isRated; });
    std::vector<Paragraph> texts;
    if (jacks) {
        texts.push_back(
            {"Jacks: the rated load marked on a jack is never exceeded; block or crib its base where the "
             "ground is not firm; put wood between its cap and the load where that may slip: 29 CFR "
             "1926.305 (P).",
             2.6, true});
    }
    if (any(pushes) || piece.holding.hull.weight_kg > 0) {
        texts.push_back(
            {"Block or crib the boat before anyone is under it, never rely on jacks alone: WAC "
             "296-307-22509 (P).",
             2.6, true});
    }
    if (any(pushes)) {
        texts.push_back(
            {"Props off floor and roof can lift the roof: keep the total push within what the roof is known "
             "to carry (engineering judgement, C). No hand or head beside a prop while it is tightened.",
             2.6});
    }
    texts.push_back({bentStackCaution(), 2.4});
    texts.push_back({localRulesCaution(), 2.4});
    return texts;
}

std::vector<Paragraph> screwTexts(const plan::Plan& plan) {
    const holding::ScrewPlan& first = plan.holding.screws.front();
    const QString wood = QString::fromStdString(first.backbone);
    return {{QString("The backbone is taken for %1%2; out of its end grain nothing of this holds.")
                 .arg(wood.isEmpty() ? QString("a wood that is not known") : wood,
                      first.backboneAssumed ? ", as the strip next to it" : ""),
             2.7},
            {"Use a washer and nothing tapered under the head: a taper splits the strip. Without the clearance hole a "
             "screw holds strip and backbone apart and cannot draw. Wax it, and back it out when the glue has cured.",
             2.7},
            {"Centre of the backbone: set a gauge to about half its width and scribe one mark from either side. The "
             "centre is half way between the two marks, whether they fall short of each other or overlap; the width "
             "there is twice the gauge and what they fall short, or less what they overlap (D).",
             2.7}};
}

std::vector<units::Source> sourcesOf(const plan::Plan& plan) {
    std::vector<units::Source> sources;
    for (const holding::PropPlan& prop : plan.holding.props) {
        sources.push_back(prop.columnSource);
        sources.push_back(prop.frictionSource);
    }
    for (const holding::ScrewPlan& screw : plan.holding.screws) {
        sources.insert(sources.end(),
                       {screw.withdrawalSource, screw.washerSource, screw.holeSource, screw.spacingSource});
    }
    if (plan.holding.hull) sources.push_back(plan.holding.hull->source);
    return sources;
}

// Stations that the plan says nothing about: theirs is not worked out.
bool lacksSome(const model::Piece& piece, const plan::Plan& plan) {
    std::size_t props = 0;
    std::size_t screws = 0;
    for (const model::Station& station : piece.holding.stations) {
        if (pushes(station)) ++props;
        if (model::is<model::Screw>(station.kind)) ++screws;
    }
    return plan.holding.props.size() < props || plan.holding.screws.size() < screws ||
           (piece.holding.hull.weight_kg > 0 && !plan.holding.hull);
}

}  // namespace

bool hasProps(const model::Piece& piece) {
    return piece.holding.hull.weight_kg > 0 ||
           std::any_of(piece.holding.stations.begin(), piece.holding.stations.end(), [](const model::Station& station) {
               return pushes(station) || model::is<model::Screw>(station.kind);
           });
}

std::vector<Sheet> propsSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    Listing listing;
    listing.name = "props and screws";
    listing.notes = cautions(piece);
    if (!hasProps(piece)) {
        listing.blocks.push_back(Paragraph{"This piece has no props, jacks or screws.", 3.8, true});
        return layOut(listing, page);
    }
    if (lacksSome(piece, plan)) {
        listing.blocks.push_back(Paragraph{
            "Props, screws and blocks are still being calculated: wait a moment, then print again.", 3.4, true});
    }
    listing.blocks.push_back(sideView(piece, plan, page.area.width()));
    if (!plan.holding.props.empty()) {
        listing.blocks.push_back(propLoads(piece, plan));
        listing.blocks.push_back(propPlaces(piece, plan));
    }
    if (plan.holding.hull) {
        listing.blocks.push_back(blocksTable(piece, plan));
        for (const Paragraph& text : hullTexts(plan)) listing.blocks.push_back(text);
    }
    if (!plan.holding.screws.empty()) {
        listing.blocks.push_back(screwHoles(piece, plan));
        listing.blocks.push_back(screwLoads(plan));
        for (const Paragraph& text : screwTexts(plan)) listing.blocks.push_back(text);
    }
    if (const QString sources = sourcesText(sourcesOf(plan)); !sources.isEmpty()) {
        listing.blocks.push_back(Paragraph{sources, 2.1});
    }
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
