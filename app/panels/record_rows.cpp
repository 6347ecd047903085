#include "app/panels/record_rows.hpp"

#include <QObject>
#include <QStringList>
#include <cmath>

#include "app/look/text.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/units/day_text.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

const QString unknown = QString(QChar(0x2013));

QString lasting(double time_s) {
    return text(units::writeDuration(time_s));
}

// What was, and under it what was planned.
FigureCell beside(const std::optional<double>& real_s, double planned_s) {
    FigureCell cell{real_s ? lasting(*real_s) : unknown};
    cell.under = lasting(planned_s);
    cell.sort = real_s.value_or(0);
    return cell;
}

QString kindOf(const model::Record& record, const Past& past) {
    if (record.dryFit) return tr("dry fit");
    if (past && past->gluings > 1) return tr("glue-up %1 of %2").arg(past->gluing + 1).arg(past->gluings);
    return tr("glue-up");
}

QString dayOf(const model::Record& record) {
    const QString written = text(record.when).left(10);
    return written.isEmpty() ? tr("no date") : written;
}

}  // namespace

std::vector<FigureColumn> dayColumns() {
    return {wordColumn(tr("Day"), "2026-05-02", tr("what")),
            figureColumn(tr("Last clamp"), "1 h 20 min", tr("planned"),
                         tr("Time until the last clamp was on; below it: as planned by the rates of now")),
            figureColumn(tr("In all"), "1 h 20 min", tr("planned"),
                         tr("Time until the day was ended; below it: as planned by the rates of now")),
            figureColumn(tr("Batches"), tr("Batches"), tr("planned"), tr("Batches mixed; below it: as planned")),
            figureColumn(tr("Pace"), "0.00", {}, tr("Time taken over time planned. 1.2: a fifth longer than planned"))};
}

FigureRow dayRow(const model::Record& record, const Past& past) {
    FigureCell day{dayOf(record)};
    day.under = kindOf(record, past);
    FigureRow row;
    row.hint = text(record.notes);
    if (!past) {
        row.cells = {day, {unknown}, {unknown}, {unknown}, {unknown}};
        return row;
    }
    FigureCell batches{record.dryFit ? unknown : QString::number(past->batches)};
    if (!record.dryFit) batches.under = QString::number(past->plannedBatches);
    FigureCell pace{past->pace ? QString::number(*past->pace, 'f', 2) : unknown};
    pace.sort = past->pace.value_or(0);
    row.cells = {day, beside(past->closed_s, past->plannedClosed_s), beside(past->end_s, past->plannedEnd_s), batches,
                 pace};
    return row;
}

QString dayWords(const model::Piece& piece, const model::Record& record, const Past& past,
                 const units::Display& display) {
    const QString at = text(record.when).section('T', 1);
    QString head = record.dryFit ? tr("Dry fit on %1") : tr("Glue-up on %1");
    head = head.arg(dayOf(record));
    if (!at.isEmpty()) head = tr("%1 at %2").arg(head, at);
    if (record.air_C) head += tr(", air %1").arg(text(units::writeTemperature(*record.air_C, display)));
    QStringList said{head + QStringLiteral(".")};
    if (!past) {
        said << (record.marks.empty() ? tr("Not timed by the clock.") : tr("Its tasks are not those of this piece."));
    } else {
        if (!past->closed_s) said << tr("It ended before the last clamp was on.");
        if (plan::hasChangedSince(piece, record)) said << tr("The piece has changed since: planned as it was then.");
    }
    return said.join(' ');
}

std::vector<FigureColumn> comparedColumns() {
    return {wordColumn(tr("Work"), tr("lay the fixed end down"), tr("how often")),
            figureColumn(tr("Planned"), "1 h 20 min"), figureColumn(tr("Real"), "1 h 20 min")};
}

std::vector<FigureRow> comparedRows(const plan::PastDay& past) {
    std::vector<FigureRow> rows;
    for (const plan::Compared& one : past.compared) {
        FigureCell work{text(one.what)};
        work.under = one.count == 1 ? tr("once") : tr("%1 times").arg(one.count);
        rows.push_back({{work, FigureCell{lasting(one.planned_s)}, FigureCell{lasting(one.real_s)}}});
    }
    return rows;
}

QString lessons(const plan::PastDay& past) {
    QStringList said;
    for (const std::string& one : past.learned.said) said << text(one);
    return said.isEmpty() ? tr("Your crew worked as fast as planned.") : said.join('\n');
}

std::vector<FigureColumn> pastTaskColumns() {
    return {
        wordColumn(tr("Task"), tr("carry the stack to its place"), tr("how")),
        figureColumn(tr("Begun"), "1 h 20 min", tr("planned"), tr("Time since the day began; below it: as planned")),
        figureColumn(tr("Took"), "1 h 20 min", tr("planned"), tr("Without rests; below it: as planned"))};
}

std::vector<FigureRow> pastTaskRows(const plan::PastDay& past) {
    std::vector<FigureRow> rows;
    for (const plan::PastTask& task : past.tasks) {
        const QString name = text(task.name);
        FigureCell of{name.section(QStringLiteral(", "), 0, 0)};
        of.under = name.section(QStringLiteral(", "), 1);
        rows.push_back({{of, beside(task.start_s, task.plannedStart_s), beside(task.took_s, task.planned_s)}});
    }
    return rows;
}

std::vector<FigureColumn> learnedColumns() {
    return {wordColumn(tr("Piece"), tr("Piece"), tr("when")),
            figureColumn(tr("After"), "20 days", {}, tr("Time since it came off the form")),
            figureColumn(tr("Springback"), tr("Springback"), tr("calculated"), tr("Share of its curve, as measured")),
            figureColumn(tr("Factor"), tr("Factor"), tr("range"))};
}

std::vector<FigureRow> learnedRows(const laminate::Learned& learned) {
    std::vector<FigureRow> rows;
    for (const laminate::SpringbackReading& reading : learned.readings) {
        FigureCell piece{text(reading.piece)};
        piece.under = text(reading.when).left(10);
        FigureCell gave{text(units::writeShare(reading.measured))};
        gave.under = text(units::writeShare(reading.theory));
        FigureCell times{text(units::writeNumber(reading.factor, 2))};
        times.under = text(units::writeNumber(reading.error, 1));
        rows.push_back({{piece, FigureCell{text(units::writeDuration(reading.after_s))}, gave, times}});
    }
    return rows;
}

}  // namespace fayline::app
