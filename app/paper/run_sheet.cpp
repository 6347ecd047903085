#include "app/paper/run_sheet.hpp"

#include <algorithm>
#include <cmath>

#include "app/paper/bench_figures.hpp"
#include "app/paper/day_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/verdict_lines.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/day_words.hpp"

namespace fayline::app::paper {

namespace {

constexpr double tasksSize_mm = 3.8;
constexpr double blank_mm = 15;

// Strips that go through the pile in this gluing, in the order of that work.
std::vector<int> stripsOf(const plan::GluingDay& day, schedule::Work work) {
    std::vector<int> strips;
    for (const schedule::Task& task : day.run.tasks) {
        const auto job = std::find_if(day.job.strips.begin(), day.job.strips.end(),
                                      [&](const schedule::StripJob& one) { return one.strip == task.strip; });
        const bool isNew = std::find(strips.begin(), strips.end(), task.strip) == strips.end();
        if (task.work == work && isNew && job != day.job.strips.end() && !job->isFixed()) strips.push_back(task.strip);
    }
    return strips;
}

std::vector<const schedule::Task*> byBeginning(const schedule::Run& run) {
    std::vector<const schedule::Task*> tasks;
    for (const schedule::Task& task : run.tasks) tasks.push_back(&task);
    std::stable_sort(tasks.begin(), tasks.end(),
                     [](const schedule::Task* a, const schedule::Task* b) { return a->start_s < b->start_s; });
    return tasks;
}

// What it is done with, or where: "cup 3", "from cup 3".
QString withText(const schedule::Task& task) {
    if (task.cup > 0 && task.work != schedule::Work::mix) return QString("from batch %1").arg(task.cup);
    if (task.work == schedule::Work::mix) return "as its card says";
    return {};
}

Table tasksTable(const model::Piece& piece, const plan::GluingDay& day) {
    Table table;
    table.title = "Task after task";
    table.size_mm = tasksSize_mm;
    table.columns = {{"Done", {}, Lean::left},   {"From", "as planned"},  {"To", {}},
                     {"What", {}, Lean::left},   {"Who", {}, Lean::left}, {"Begun at", "write it", Lean::left},
                     {"Done at", {}, Lean::left}};
    const QString blank = roomToWrite(blank_mm, tasksSize_mm);
    for (const schedule::Task* task : byBeginning(day.run)) {
        table.rows.push_back({Cell{{}, {}, false, true}, textCell(clockText(piece, task->start_s), true),
                              textCell(clockText(piece, task->end_s)),
                              textCell(QString::fromStdString(task->name), true, withText(*task)),
                              textCell(whoText(*task, day.run.hands)), textCell(blank), textCell(blank)});
    }
    return table;
}

QString faceName(int inner) {
    return inner == 0 ? QString("on the boat") : QString("%1 and %2").arg(inner).arg(inner + 1);
}

Table facesTable(const model::Piece& piece, const plan::GluingDay& day) {
    Table table;
    table.title = "When each joint's open time ends";
    table.columns = {{"Joint between strips", {}, Lean::left},
                     {"First wetted"},
                     {"Closed"},
                     {"Open until"},
                     {"Spare", "as planned"},
                     {"", {}, Lean::left}};
    for (std::size_t i = 0; i < day.run.faces.size(); ++i) {
        const schedule::FaceTimes& face = day.run.faces[i];
        const bool worst = static_cast<int>(i) == day.run.worstFace;
        const bool late = face.margin_s() < 0;
        table.rows.push_back({textCell(faceName(face.inner), worst), textCell(clockText(piece, face.wetted_s)),
                              textCell(clockText(piece, face.closed_s)),
                              textCell(clockText(piece, face.openUntil_s), true),
                              textCell((late ? "-" : "") + durationText(std::abs(face.margin_s())), worst || late),
                              textCell(late    ? "TOO LATE"
                                       : worst ? "the worst"
                                               : "",
                                       true)});
    }
    return table;
}

QString orderText(const plan::GluingDay& day) {
    const std::vector<int> wetted = stripsOf(day, schedule::Work::wetOut);
    const std::vector<int> spread = stripsOf(day, schedule::Work::spread);
    if (wetted.size() < 2 || spread.size() < 2) {
        return "Number the strips on their ends in pencil before anything is wet, 1 next to the form, all at the same "
               "end.";
    }
    const auto row = [](const std::vector<int>& strips) {
        QStringList numbers;
        for (const int strip : strips) numbers << QString::number(strip);
        return numbers.join(", ");
    };
    return QString(
               "Number the strips on their ends in pencil before anything is wet, 1 next to the form, all at the same "
               "end. "
               "Wet out in the order %1: each is turned over on to the pile, so the pile lies reversed with strip %2 "
               "on top. "
               "Spread from the top, %3: so the order is restored, strip %4 comes to lie on top, ready to go next to "
               "the "
               "form. Look at the pencilled ends before the first clamp.")
        .arg(row(wetted))
        .arg(wetted.back())
        .arg(row(spread))
        .arg(spread.back());
}

QString headText(const model::Piece& piece, const plan::Plan& plan, const plan::GluingDay& day) {
    const schedule::Run& run = day.run;
    const QString hands = run.hands == 1 ? QString("one pair of hands") : QString("%1 pairs of hands").arg(run.hands);
    QString text;
    if (plan.dayStudy && day.job.gluing == plan.day.worstGluing && run.worstFace >= 0) {
        text = QString::fromStdString(plan::oddsWords(plan.day.margin_s, plan.dayStudy->days)) + ". ";
    }
    text += QString("Begin at %1 with %2; the last station is on by %3.")
                .arg(clockText(piece, 0), hands, clockText(piece, run.closed_s));
    if (run.worstFace >= 0) {
        const schedule::FaceTimes& face = run.faces[run.worstFace];
        const QString which =
            face.inner == 0 ? QString("the joint on the boat") : "the joint between strips " + faceName(face.inner);
        text += QString(" The first open time to end is that of %1, at %2: %3 to spare.")
                    .arg(which, clockText(piece, face.openUntil_s),
                         (face.margin_s() < 0 ? "minus " : "") + durationText(std::abs(face.margin_s())));
    }
    return text;
}

// What a later gluing begins with, and what an earlier one leaves to do.
std::vector<Paragraph> betweenTexts(const plan::Plan& plan, const plan::GluingDay& day) {
    std::vector<Paragraph> texts;
    if (day.job.gluing > 0) {
        texts.push_back(
            {"First let the glue-up before this cure on the form. Wash its outside with water and a scouring pad and "
             "dry it: amines on the surface, which you cannot see, keep glue off (P). Then sand it dull all over, wipe "
             "the dust off, and lay the new strips on it dry: no gaps.",
             3, true});
        texts.push_back({"Clock times count from the same hour of the day as the first glue-up's.", 2.7});
    }
    if (day.job.gluing + 1 < math::countOf(plan.day.gluings)) {
        texts.push_back(
            {"After this glue-up all stays clamped until it has cured enough for clamps off; the next glue-up has its "
             "own sheet.",
             3, true});
    }
    return texts;
}

QString afterText(const model::Piece& piece, const plan::Plan& plan) {
    const glue::CurePlan& cure = plan.day.glue.cure;
    const double closed_s = cure.closedAt_s - piece.crew.startAt_s;
    const auto at = [&](double after_s) {
        return std::isfinite(after_s) ? clockText(piece, closed_s + after_s) : QString("not within three weeks");
    };
    return QString(
               "By the air of day and night as given: squeeze-out is soft until %1 and best scraped like rubber until "
               "%2; "
               "clamps may come off %3, planing from %4, full strength %5. An estimate (D): what is hard under a "
               "thumbnail "
               "counts, not the clock.")
        .arg(at(cure.softUntil_s), at(cure.scrapeUntil_s), at(cure.clampsOff_s), at(cure.work_s), at(cure.full_s));
}

// What would mend a margin that is short, as tried by the plan.
QString remediesText(const plan::Plan& plan) {
    if (!plan.dayStudy || plan.dayStudy->remedies.empty()) return {};
    QStringList texts;
    for (const plan::Remedy& remedy : plan.dayStudy->remedies) {
        texts << QString("%1 (%2%3 to spare, in time on %4 days)")
                     .arg(QString::fromStdString(plan::writeWithin(remedy.what, plan.display)),
                          remedy.margin_s < 0 ? "minus " : "", durationText(std::abs(remedy.margin_s)),
                          inOnePiece(QString::fromStdString(plan::inHundred(remedy.chanceInTime))));
    }
    return "To gain time: " + texts.join("; ") + ".";
}

std::vector<Paragraph> notesOf(const model::Piece& piece) {
    return {{skinCaution(), 2.7, true},
            {bentStackCaution(), 2.7},
            {hotCupCaution(), 2.4},
            {dustAndRagsCaution(piece), 2.4},
            {localRulesCaution(), 2.4}};
}

void addVerdict(Listing& listing, const plan::Plan& plan) {
    for (const Paragraph& line : verdictLines(plan)) listing.blocks.push_back(line);
}

std::vector<Sheet> gluingSheets(const model::Piece& piece, const plan::Plan& plan, const plan::GluingDay& day,
                                const Page& page) {
    Listing listing;
    const bool several = plan.day.gluings.size() > 1;
    listing.name = several ? QString("glue-up %1 of %2").arg(day.job.gluing + 1).arg(plan.day.gluings.size())
                           : QString("task after task");
    listing.notes = notesOf(piece);
    if (day.job.gluing == 0) addVerdict(listing, plan);
    if (several) {
        listing.blocks.push_back(
            Paragraph{QString("Glue-up %1 of %2").arg(day.job.gluing + 1).arg(plan.day.gluings.size()), 5, true});
    }
    listing.blocks.push_back(Paragraph{headText(piece, plan, day), 3.4, true});
    for (const Paragraph& text : betweenTexts(plan, day)) listing.blocks.push_back(text);
    listing.blocks.push_back(Paragraph{orderText(day), 3});
    listing.blocks.push_back(tasksTable(piece, day));
    if (!day.run.faces.empty()) listing.blocks.push_back(facesTable(piece, day));
    if (day.job.gluing + 1 == math::countOf(plan.day.gluings)) {
        listing.blocks.push_back(Paragraph{afterText(piece, plan), 3});
    }
    if (const QString remedies = remediesText(plan); !remedies.isEmpty() && day.job.gluing == plan.day.worstGluing) {
        listing.blocks.push_back(Paragraph{remedies, 2.7});
    }
    listing.blocks.push_back(
        Paragraph{"Times come from the rates in the file: common practice until a dry fit has measured your own (C). " +
                      sourcesText({plan.day.glue.adhesive.openTimeSource}),
                  2.1});
    return layOut(listing, page);
}

}  // namespace

std::vector<Sheet> runSheet(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    std::vector<Sheet> sheets;
    if (!plan.day.glue.lines.empty()) {
        for (const plan::GluingDay& day : plan.day.gluings) {
            const std::vector<Sheet> more = gluingSheets(piece, plan, day, page);
            sheets.insert(sheets.end(), more.begin(), more.end());
        }
    }
    if (!sheets.empty()) return sheets;
    Listing listing;
    listing.name = "task after task";
    addVerdict(listing, plan);
    listing.blocks.push_back(Paragraph{"Nothing of this piece is glued.", 3.8, true});
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
