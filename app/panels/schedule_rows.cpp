#include "app/panels/schedule_rows.hpp"

#include <QObject>
#include <algorithm>

#include "app/look/text.hpp"
#include "app/panels/glue_rows.hpp"
#include "app/panels/reading.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app {

namespace {

QString clock(const Shown& shown, double at_s) {
    return text(units::writeClock(shown.piece.crew.startAt_s + at_s));
}

QString writtenDuration(double time_s) {
    return text(units::writeDuration(time_s));
}

// A time in hand, marked where there is none.
FigureCell margin(double margin_s, plan::Severity late, std::optional<int> little = std::nullopt) {
    FigureCell cell{writtenDuration(margin_s)};
    cell.sort = margin_s;
    cell.severity = margin_s < 0 ? std::optional<int>(static_cast<int>(late)) : little;
    return cell;
}

QString faceName(int inner) {
    return inner == 0 ? tr("boat") : QStringLiteral("%1-%2").arg(inner).arg(inner + 1);
}

LanesChart::Worst worst(bool isWorst, double margin_s) {
    if (!isWorst) return LanesChart::Worst::no;
    return margin_s < 0 ? LanesChart::Worst::late : LanesChart::Worst::inTime;
}

// The number of the strip, station or cup that a task is about.
QString briefName(const schedule::Task& task) {
    if (task.station > 0) return QString::number(task.station);
    if (task.strip > 0) return QString::number(task.strip);
    return task.cup > 0 ? QString::number(task.cup) : QString();
}

// What several hands do between them is drawn on each of their lanes.
LanesChart::Group handsGroup(const schedule::Run& run) {
    LanesChart::Group group{tr("Hands"), {}};
    for (int hand = 0; hand < run.hands; ++hand) group.lanes.push_back({tr("pair %1").arg(hand + 1), {}, {}, {}});
    for (std::size_t i = 0; i < run.tasks.size(); ++i) {
        const schedule::Task& task = run.tasks[i];
        for (const int hand : task.lanes) {
            if (hand >= run.hands) continue;
            const bool full = task.work == schedule::Work::mix || task.work == schedule::Work::close;
            group.lanes[hand].bars.push_back(
                {task.start_s, task.end_s, text(task.name), briefName(task), static_cast<int>(i), full});
        }
    }
    return group;
}

LanesChart::Group cupsGroup(const schedule::Run& run) {
    LanesChart::Group group{tr("Batches, from mixing to the last of it; the line is the time to use it by"), {}};
    for (std::size_t i = 0; i < run.cups.size(); ++i) {
        const schedule::CupTimes& cup = run.cups[i];
        const auto of = static_cast<int>(i) == run.worstCup;
        group.lanes.push_back({tr("batch %1").arg(cup.number),
                               {{cup.mixedFrom_s, cup.emptied_s, {}, {}, -1, false}},
                               cup.useBy_s,
                               worst(of, cup.margin_s())});
    }
    return group;
}

LanesChart::Group facesGroup(const schedule::Run& run) {
    LanesChart::Group group{tr("Joints, from wetting to the last station; the line is when the open time ends"), {}};
    for (std::size_t i = 0; i < run.faces.size(); ++i) {
        const schedule::FaceTimes& face = run.faces[i];
        const auto of = static_cast<int>(i) == run.worstFace;
        group.lanes.push_back({faceName(face.inner),
                               {{face.wetted_s, face.closed_s, {}, {}, -1, false}},
                               face.openUntil_s,
                               worst(of, face.margin_s())});
    }
    return group;
}

}  // namespace

const plan::GluingDay* gluingOf(const Shown& shown, int gluing) {
    if (shown.pieceIndex < 0 || !shown.plan || shown.plan->day.glue.batches.empty()) return nullptr;
    const std::vector<plan::GluingDay>& gluings = shown.plan->day.gluings;
    if (gluing >= 0 && gluing < math::countOf(gluings)) return &gluings[gluing];
    return &gluings[shown.plan->day.worstGluing];
}

LanesChart::Picture lanesPicture(const Shown& shown, const plan::GluingDay& gluing) {
    const schedule::Run& run = gluing.run;
    LanesChart::Picture picture;
    picture.start_s = shown.piece.crew.startAt_s;
    picture.faint = shown.outOfDate;
    picture.groups = {handsGroup(run), cupsGroup(run), facesGroup(run)};
    picture.to_s = run.end_s;
    // Limits are shown as far as they lie near what they limit.
    for (const schedule::FaceTimes& face : run.faces)
        picture.to_s = std::max(picture.to_s, std::min(face.openUntil_s, 1.5 * run.end_s));
    return picture;
}

PointedMoment pointedMoment(const Shown& shown, const plan::GluingDay& gluing, double at_s) {
    PointedMoment pointed;
    for (const schedule::StripJob& strip : gluing.job.strips)
        if (!strip.hasCured) pointed.strips.push_back(strip.strip);
    pointed.moment = schedule::momentOf(gluing.run, at_s);
    pointed.words =
        text(plan::writeTexts(plan::momentTexts(gluing, pointed.moment, shown.piece.crew.startAt_s), shown.display));
    return pointed;
}

std::vector<FigureColumn> faceColumns() {
    return {wordColumn(tr("Joint"), "00-00", {}, tr("Named by the strips on both sides of it")),
            figureColumn(tr("Wetted"), "00:00", {}, tr("When its first side is wetted")),
            figureColumn(tr("Closed"), "00:00", {}, tr("When the last station is on")),
            figureColumn(tr("Open until"), tr("Open until"), {}, tr("When its open time ends")),
            figureColumn(tr("Spare"), "-1 h 20 min")};
}

std::vector<FigureRow> faceRows(const Shown& shown, const plan::GluingDay& gluing) {
    std::vector<FigureRow> rows;
    const QString source = sourceText(shown.plan->day.glue.adhesive.openTimeSource);
    for (std::size_t i = 0; i < gluing.run.faces.size(); ++i) {
        const schedule::FaceTimes& face = gluing.run.faces[i];
        const bool isWorst = static_cast<int>(i) == gluing.run.worstFace;
        FigureRow row;
        row.cells = {FigureCell{faceName(face.inner)}, FigureCell{clock(shown, face.wetted_s)},
                     FigureCell{clock(shown, face.closed_s)}, FigureCell{clock(shown, face.openUntil_s)},
                     margin(face.margin_s(), plan::Severity::stop,
                            isWorst ? severityOf(*shown.plan, {plan::Code::marginShort}) : std::nullopt)};
        row.cells[3].source = source;
        rows.push_back(std::move(row));
    }
    return rows;
}

std::vector<FigureColumn> cupColumns() {
    return {wordColumn(tr("Batch"), "00"), figureColumn(tr("Mixed"), "00:00", {}, tr("When mixing begins")),
            figureColumn(tr("Used up"), tr("Used up")),
            figureColumn(tr("Use by"), "00:00", {}, tr("Three quarters of its pot life after mixing began")),
            figureColumn(tr("Spare"), "-1 h 20 min")};
}

std::vector<FigureRow> cupRows(const Shown& shown, const plan::GluingDay& gluing) {
    std::vector<FigureRow> rows;
    for (const schedule::CupTimes& cup : gluing.run.cups) {
        rows.push_back({{FigureCell{QString::number(cup.number)}, FigureCell{clock(shown, cup.mixedFrom_s)},
                         FigureCell{clock(shown, cup.emptied_s)}, FigureCell{clock(shown, cup.useBy_s)},
                         margin(cup.margin_s(), plan::Severity::caution)}});
    }
    return rows;
}

std::vector<FigureColumn> taskColumns() {
    return {wordColumn(tr("Task"), tr("carry the stack to its place"), tr("how")),
            figureColumn(tr("At"), "00:00", tr("hands")), figureColumn(tr("Takes"), "1 h 20 min")};
}

std::vector<FigureRow> taskRows(const Shown& shown, const plan::GluingDay& gluing) {
    std::vector<FigureRow> rows;
    for (const schedule::Task& task : gluing.run.tasks) {
        const QString name = text(task.name);
        rows.push_back(
            {{FigureCell{name.section(QStringLiteral(", "), 0, 0), name.section(QStringLiteral(", "), 1)},
              FigureCell{clock(shown, task.start_s), task.hands > 0 ? QString::number(task.hands) : tr("none")},
              FigureCell{writtenDuration(task.end_s - task.start_s)}}});
    }
    return rows;
}

std::vector<FigureColumn> remedyColumns() {
    return {wordColumn(tr("With"), tr("one more pair of hands")),
            figureColumn(tr("Spare"), "-1 h 20 min", tr("batches"),
                         tr("Least spare time of any joint; below it: of any batch")),
            figureColumn(tr("In time"), tr("> 99"), tr("of 100"), tr("Of a hundred trial runs"))};
}

std::vector<FigureRow> remedyRows(const std::vector<plan::Remedy>& remedies, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const plan::Remedy& remedy : remedies) {
        FigureRow row;
        FigureCell inHand = margin(remedy.margin_s, plan::Severity::stop);
        inHand.under = writtenDuration(remedy.cupMargin_s);
        row.cells = {FigureCell{text(plan::writeWithin(remedy.brief, display))}, inHand,
                     FigureCell{text(plan::inHundredBrief(remedy.chanceInTime))}};
        row.cells[2].sort = remedy.chanceInTime;
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace fayline::app
