// Batch cards and run sheets: every cup and every task stands there with its amounts and wall times, in order.
#include <QApplication>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>

#include "app/paper/day_figures.hpp"
#include "app/paper/papers.hpp"
#include "app/paper/verdict_lines.hpp"
#include "core/glue/library_errors.hpp"
#include "core/io/file.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/deepen.hpp"
#include "tests/app/paper_boats.hpp"
#include "tests/app/pdf_printer.hpp"
#include "tests/app/rendered_pages.hpp"

namespace fayline::test {

// The demo boat's stem.
model::Piece demoStem() {
    return io::loadBoat(FAYLINE_SAMPLES "/marram.fayline").pieces.at(0);
}

// With a planned break after the fourth strip.
model::Piece stemInTwo() {
    model::Piece piece = demoStem();
    piece.stack.gluings = {4};
    return piece;
}

// `count` causes, the first a stop, the others cautions, then what does not come first: one that follows from the
// first, a note, and what is always so.
std::vector<plan::Finding> causes(int count) {
    static constexpr plan::Phrase cause{FAYLINE_TEXT("test", "Cause %1")};
    static constexpr plan::Phrase follows{FAYLINE_TEXT("test", "This follows")};
    static constexpr plan::Phrase note{FAYLINE_TEXT("test", "This is a note")};
    static constexpr plan::Phrase always{FAYLINE_TEXT("test", "This is safety")};
    std::vector<plan::Finding> findings;
    for (int i = 1; i <= count; ++i) {
        plan::Finding& one = findings.emplace_back(plan::found(plan::Code::gapOverLimit));
        one.severity = i == 1 ? plan::Severity::stop : plan::Severity::caution;
        one.text = {cause, {plan::put::count(i)}};
    }
    plan::Finding& following = findings.emplace_back(findings.front());
    following.root = 0;
    following.text = {follows};
    plan::Finding& lesser = findings.emplace_back(plan::found(plan::Code::gapOverLimit));
    lesser.severity = plan::Severity::note;
    lesser.text = {note};
    plan::Finding& safety = findings.emplace_back(plan::found(plan::Code::storedBend));
    safety.text = {always};
    return findings;
}

class PaperDayTest : public QObject, private PdfPrinter {
    Q_OBJECT

private:
    units::Display display_;

    plan::Shop shop() const {
        model::Boat boat = boatOf({});
        boat.display = display_;
        return plan::shopOf(boat);
    }

    // Each of `wanted` stands in `text`, one after the other.
    static void hasInOrder(const QString& text, const QStringList& wanted) {
        qsizetype from = 0;
        for (const QString& one : wanted) {
            const qsizetype at = text.indexOf(one, from);
            QVERIFY2(at >= 0, qPrintable("'" + one + "' not in its place in\n" + text));
            from = at;
        }
    }

private slots:
    void init() { display_ = {}; }

    void EveryCupHasItsPartsAndItsWallTimes() {
        const model::Piece piece = demoStem();
        const plan::Plan plan = plan::makePlan(piece, shop());
        const QString text = wholeText(print(app::Paper::batches, piece, plan));
        QVERIFY(plan.day.glue.batches.size() >= 3);
        for (const glue::Batch& batch : plan.day.glue.batches) {
            const auto times = std::find_if(plan.day.gluings[0].run.cups.begin(), plan.day.gluings[0].run.cups.end(),
                                            [&](const schedule::CupTimes& cup) { return cup.number == batch.number; });
            // 08:30 and so many minutes, worked out here.
            const auto wall = [&](double after_s) {
                const int minutes = static_cast<int>(std::lround((8.5 * 3600 + after_s) / 60));
                return QString("%1:%2").arg(minutes / 60, 2, 10, QChar('0')).arg(minutes % 60, 2, 10, QChar('0'));
            };
            hasInOrder(text, {QString("Batch %1:").arg(batch.number),
                              QString("%1 g").arg(std::lround(1000 * batch.parts_kg[0])),
                              QString("%1 g").arg(std::lround(1000 * batch.parts_kg[1])), wall(times->mixedFrom_s),
                              wall(times->useBy_s)});
        }
        hasInOrder(text, {"Resin", "Hardener", "USE UP BY", "Use it up within"});
        for (const char* const caution : {"allergic", "gloves", "LEFT STANDING FULL", "Carry it outdoors",
                                          "safety sheet and local rules", "thickened, to spread", "strips"}) {
            QVERIFY2(text.contains(caution), qPrintable(caution + ("\n" + text)));
        }
    }

    void ByTheMarksOfACupTheMarksAreCounted() {
        model::Piece piece = demoStem();
        piece.glue.measuredBy = model::MeasuredBy::cup;
        piece.glue.cupReads_m3 = 10e-6;
        const plan::Plan plan = plan::makePlan(piece, shop());
        const QString text = wholeText(print(app::Paper::batches, piece, plan));
        QVERIFY(text.contains("by volume, not by weight"));
        for (const glue::Batch& batch : plan.day.glue.batches) {
            for (const double part_m3 : batch.parts_m3) {
                const long marks = std::lround(part_m3 / 10e-6);
                hasInOrder(text, {QString("%1 ml").arg(10 * marks), QString("%1 mark").arg(marks)});
            }
        }
    }

    void TheRunSheetHasEveryTaskByItsBeginningAndTheOrderOfTheStrips() {
        const model::Piece piece = demoStem();
        const plan::Plan plan = plan::makePlan(piece, shop());
        const QString text = wholeText(print(app::Paper::run, piece, plan));
        std::vector<const schedule::Task*> tasks;
        for (const schedule::Task& task : plan.day.gluings[0].run.tasks) tasks.push_back(&task);
        std::stable_sort(tasks.begin(), tasks.end(),
                         [](const schedule::Task* a, const schedule::Task* b) { return a->start_s < b->start_s; });
        QStringList names;
        for (const schedule::Task* task : tasks) {
            names << app::paper::clockText(piece, task->start_s).replace(QChar::Nbsp, ' ');
        }
        hasInOrder(text.mid(text.indexOf("Task after task")), names);
        for (const schedule::Task* task : tasks) {
            // A name may be parted over two lines of its cell.
            QVERIFY2(text.contains(QString::fromStdString(task->name)), task->name.c_str());
        }
        hasInOrder(text, {"Begin at 08:30 with 2 pairs of hands", "in pencil", "1, 2, 3, 4, 5, 6, 7, 8, 9",
                          "strip 9 on top", "9, 8, 7, 6, 5, 4, 3, 2, 1", "strip 1 comes to lie on top"});
        for (const char* const wanted : {"A + B", "the worst", "clamps may come off", "write it", "Local rules"}) {
            QVERIFY2(text.contains(wanted), wanted);
        }
    }

    void TwoGluingsHaveARunSheetEach() {
        const model::Piece piece = stemInTwo();
        const plan::Plan plan = plan::makePlan(piece, shop());
        QCOMPARE(plan.day.gluings.size(), std::size_t{2});
        const QString text = wholeText(print(app::Paper::run, piece, plan));
        hasInOrder(text, {"Glue-up 1 of 2", "1, 2, 3, 4:", "4, 3, 2, 1:", "Glue-up 2 of 2", "Wash its outside",
                          "sand the strips"});
        QVERIFY(text.contains("glue-up 2 of 2"));
        const QString cards = wholeText(print(app::Paper::batches, piece, plan));
        hasInOrder(cards, {"Glue-up 1, Batch 1:", "Glue-up 2, Batch "});
    }

    void AfterTheStudyChanceAndRemediesStandThere() {
        model::Piece piece = demoStem();
        piece.crew.hands = 1;
        piece.glue.adhesive = "epoxy_2_1_fast";
        piece.glue.air_C = 25;
        const plan::Shop shop = this->shop();
        plan::Plan plan = plan::makePlan(piece, shop);
        const std::atomic<bool> stop{false};
        plan.dayStudy = plan::studyDay(piece, shop, plan.line.fair.line, plan.day, stop);
        QVERIFY(plan.dayStudy && !plan.dayStudy->remedies.empty());
        const QString text = wholeText(print(app::Paper::run, piece, plan));
        // The margin, the odds, what 95 in 100 would take; nothing is certain.
        const QString flat = QString(text).simplified();
        const auto odds = flat.indexOf(" in 100 days");
        QVERIFY2(odds > 0 && flat.indexOf("too late") >= 0 && flat.indexOf("too late") < odds, qPrintable(flat));
        QVERIFY(odds < flat.indexOf("for 95 in 100"));
        QVERIFY(!QString(flat).remove("rint at 100 %").contains("100 %"));  // the scale to print at is one
        QVERIFY(text.contains("TOO LATE"));
        QVERIFY(text.contains("To gain time:"));
        for (const plan::Remedy& remedy : plan.dayStudy->remedies) {
            const std::string what = plan::writeWithin(remedy.what, plan.display);
            QVERIFY2(text.contains(QString::fromStdString(what)), what.c_str());
        }
    }

    void TheVerdictAndItsCausesStandAtTheTopOfTheFirstSheet() {
        const model::Piece piece = stemInTwo();
        const plan::Shop shop = this->shop();
        const std::atomic<bool> stop{false};
        plan::Plan plan = plan::deepen(piece, shop, plan::makePlan(piece, shop), stop).value();
        plan.findings = causes(5);
        QCOMPARE(plan::verdictOf(plan).stops() + plan::verdictOf(plan).cautions(), 5);
        const QString verdict = QString::fromStdString(plan::writeText(plan::verdictOf(plan).text, plan.display));
        QCOMPARE(verdict, "5 things first");
        for (const app::Paper paper : {app::Paper::stationTable, app::Paper::run}) {
            // Letters that are set as one, such as fi, are two again.
            const QStringList pages = textsOf(print(paper, piece, plan));
            const QString first = pages.front().normalized(QString::NormalizationForm_KC).simplified();
            const QString head = paper == app::Paper::run ? "Begin at" : "No.";
            hasInOrder(first, {verdict, "Stop: Cause 1", "Caution: Cause 2", "Caution: Cause 3", "and 2 more", head});
            for (const char* const other : {"Cause 4", "follows", "note", "safety"}) {
                const QString above = first.left(first.indexOf(head, first.indexOf("and 2 more")));
                QVERIFY2(!above.contains(other), qPrintable(other + (" in\n" + above)));
            }
            for (const QString& page : pages.mid(1)) QVERIFY2(!page.contains("things"), qPrintable(page));
        }
        const std::vector<app::paper::Paragraph> lines = app::paper::verdictLines(plan);
        QVERIFY(lines.front().bold);
        // With nothing to see to first the verdict stands alone, and three causes need no count of more.
        plan.findings = causes(3);
        QCOMPARE(app::paper::verdictLines(plan).size(), 4u);
        plan.findings.clear();
        QCOMPARE(app::paper::verdictLines(plan).size(), 1u);
        QCOMPARE(app::paper::verdictLines(plan).front().text, "Ready to glue");
    }

    void OnePieceOfWoodHasNeither() {
        model::Piece piece = stem();
        piece.stack.strips.resize(1);
        piece.stack.strips[0].count = 1;
        const std::vector<app::Paper> papers = app::papersOf(piece);
        for (const app::Paper paper : {app::Paper::batches, app::Paper::run}) {
            QVERIFY(std::find(papers.begin(), papers.end(), paper) == papers.end());
        }
        const plan::Plan plan = plan::makePlan(piece, shop());
        for (const app::Paper paper : {app::Paper::batches, app::Paper::run}) {
            QVERIFY(wholeText(print(paper, piece, plan)).contains("Nothing of this piece is glued."));
        }
    }

    void WordsStandClearOfEachOtherAndNothingIsCutOnAnyPaper() {
        const QPageLayout small(QPageSize(QSizeF(165, 210), QPageSize::Millimeter), QPageLayout::Portrait,
                                QMarginsF(5, 5, 5, 5), QPageLayout::Millimeter);
        model::Piece busy = stemInTwo();
        busy.glue.thinner = 0.05;
        busy.glue.cup_m3 = 100e-6;
        busy.crew.hands = 3;
        busy.glue.surfaceWork = model::SurfaceWork::sandedAndWiped;
        for (const bool ounces : {false, true}) {
            display_.weights = ounces ? units::WeightUnit::ounce : units::WeightUnit::gram;
            display_.volumes = ounces ? units::VolumeUnit::fluidOunce : units::VolumeUnit::millilitre;
            display_.temperatures = ounces ? units::TemperatureUnit::fahrenheit : units::TemperatureUnit::celsius;
            for (const model::Piece& piece : {demoStem(), busy}) {
                const plan::Plan plan = plan::makePlan(piece, shop());
                for (const QPageLayout& layout :
                     {layoutOf(QPageSize(QPageSize::A4)), layoutOf(QPageSize(QPageSize::Letter)), small}) {
                    for (const app::Paper paper : {app::Paper::batches, app::Paper::run}) {
                        const QString file = print(paper, piece, plan, layout);
                        const QRectF area = layout.paintRect(QPageLayout::Millimeter);
                        for (const std::vector<Word>& words : wordsOf(file)) {
                            const QStringList overlaps = overlapsOf(words);
                            QVERIFY2(overlaps.isEmpty(), qPrintable(app::paperName(paper) + overlaps.join("; ")));
                            const QStringList outside = wordsOutside(words, area);
                            QVERIFY2(outside.isEmpty(), qPrintable(app::paperName(paper) + ": " + outside.join(", ")));
                        }
                    }
                }
            }
        }
    }
};

}  // namespace fayline::test

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    fayline::test::PaperDayTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "paper_day_test.moc"
