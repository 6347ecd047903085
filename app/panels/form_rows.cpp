#include "app/panels/form_rows.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/panels/reading.hpp"
#include "core/plan/form_off.hpp"

namespace fayline::app {

namespace {

// A signed small length as a figure of its column.
FigureCell small(double length_m, const units::Display& display) {
    FigureCell cell{text(units::writeSmall(length_m, display))};
    cell.sort = length_m;
    return cell;
}

// The row's name is in two short lines, so that the figures have room beside it; `means` says it in full.
struct OpeningName {
    QString name;
    QString under;
    QString means;
};

FigureRow openingRow(const OpeningName& name, const laminate::Opening& opening, const units::Display& display,
                     const units::Source& source) {
    FigureRow row;
    FigureCell first{name.name};
    first.under = name.under;
    first.source = name.means + QStringLiteral("\n") + sourceText(source);
    FigureCell between = small(opening.chord_m, display);
    between.under = text(units::writeSmall(opening.rise_m, display));
    FigureCell ends = small(opening.start_m, display);
    ends.under = text(units::writeSmall(opening.end_m, display));
    row.cells = {first, between, ends};
    return row;
}

}  // namespace

std::optional<AlongPlot::Picture> formPicture(const std::shared_ptr<const Shown>& shown) {
    if (shown->pieceIndex < 0 || !shown->plan) return std::nullopt;
    const std::vector<plan::FormOff> off = plan::formOff(shown->piece, *shown->plan);
    if (off.size() < 2) return std::nullopt;
    AlongPlot::Picture picture;
    picture.display = shown->display;
    picture.caption = tr("Form's edge beside the wanted one, toward the strips");
    picture.from_m = off.front().at_m;
    picture.to_m = off.back().at_m;
    AlongPlot::Curve curve;
    double least = 0;
    double most = 0;
    for (const plan::FormOff& one : off) {
        curve.points.append({one.at_m, one.off_m});
        least = std::min(least, one.off_m);
        most = std::max(most, one.off_m);
    }
    const double span = std::max(most - least, 1e-4);
    picture.least = least - 0.1 * span;
    picture.most = most + 0.1 * span;
    const double step = niceStep(span, 3, shown->display);
    for (double value = step * std::ceil(picture.least / step); value <= picture.most; value += step) {
        picture.ticks.push_back({value, text(units::writeSmall(value, shown->display))});
    }
    picture.curves.push_back(std::move(curve));
    const double length_m = shown->plan->line.fair.line.length();
    picture.marks = {{0, tr("trim"), true}, {length_m, tr("trim"), true}};
    picture.reading = [off, display = shown->display](double at_m) {
        const auto next = std::lower_bound(off.begin(), off.end(), at_m,
                                           [](const plan::FormOff& one, double at) { return one.at_m < at; });
        const plan::FormOff& one = next == off.end() ? off.back() : *next;
        return tr("%1 along: %2").arg(writeLengthText(at_m, display), text(units::writeSmall(one.off_m, display)));
    };
    return picture;
}

std::vector<FigureColumn> openingColumns() {
    return {wordColumn(tr("Shape"), tr("as it came off"), tr("against")),
            figureColumn(tr("Chord"), "+000.00 mm", tr("rise"),
                         tr("How much the chord from end to end grows; below it: how much the rise over it falls")),
            figureColumn(tr("Start opens"), "+000.00 mm", tr("end opens"),
                         tr("Gap at the start with the end laid on; below it: at the end with the start on"))};
}

std::vector<FigureRow> openingRows(const plan::Plan& plan, const units::Display& display) {
    const laminate::FormPlan& form = plan.form;
    std::vector<FigureRow> rows;
    if (!form.letsGo) return rows;
    const units::Source theory{"beam theory: moment of the loose strips over the stiffness of the glued stack",
                               units::Mark::derived};
    const bool several = form.parts.size() > 1;
    for (const laminate::PartForm& part : form.parts) {
        const auto add = [&](const OpeningName& name, const laminate::Opening& opening) {
            OpeningName of = name;
            if (several) of.name += tr(", strips %1-%2").arg(part.firstPlace).arg(part.lastPlace);
            rows.push_back(openingRow(of, opening, display, theory));
        };
        add({tr("off the form"), tr("its form"), tr("How the piece, off the form, fits the form.")}, part.opens);
        add({tr("without overbend"), tr("the wanted line"),
             tr("How it fits the wanted line, if the form has that line itself.")},
            part.uncorrected);
        if (part.planed) {
            add({tr("planed after glue-up"), tr("as it came off"), tr("What planing it does once it is off the form.")},
                *part.planed);
        }
    }
    if (form.moisture.known) {
        rows.push_back(openingRow({tr("in service moisture"), tr("the wanted line"),
                                   tr("What the change from the glue-up's moisture to that in service does.")},
                                  form.moisture.opening, display, form.moisture.source));
    }
    return rows;
}

std::vector<FigureColumn> stressColumns() {
    return {wordColumn(tr("End"), tr("start")),
            figureColumn(tr("Moment"), "123 lbf ft", {}, tr("With which the bent strips pull there")),
            figureColumn(tr("Peel"), "0.00 MPa", tr("allowed"), tr("Stress that pulls the end off, across the grain")),
            figureColumn(tr("Fastening"), "12300 N", tr("from the end"), tr("What a fastening there has to hold"))};
}

std::vector<FigureRow> stressRows(const laminate::StressLeft& stress, double length_m, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const laminate::EndStress* end : {&stress.start, &stress.end}) {
        FigureRow row;
        row.at_m = end->atStart ? 0 : length_m;
        FigureCell name{end->atStart ? tr("start") : tr("end")};
        FigureCell peel{end->scarfed ? tr("scarfed") : text(units::writeStress(end->peel_Pa, display))};
        peel.under = text(units::writeStress(end->acrossStrength_Pa, display));
        peel.source = sourceText(end->acrossSource);
        FigureCell fastening =
            FigureCell{end->wantsFastening ? text(units::writeForce(end->fastening_N, display)) : tr("none")};
        if (end->wantsFastening) fastening.under = text(units::writeThickness(end->fasteningFrom_m, display));
        row.cells = {name, FigureCell{text(units::writeMoment(end->moment_N_m, display))}, peel, fastening};
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace fayline::app
