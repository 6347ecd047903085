// The cut list and the buying list: every strip with its board and sizes, boards drawn, what is to be bought.
#include <QApplication>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>

#include "app/paper/papers.hpp"
#include "core/glue/library_errors.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/plan/study/studies.hpp"
#include "tests/app/paper_boats.hpp"
#include "tests/app/pdf_printer.hpp"
#include "tests/app/rendered_pages.hpp"

namespace fayline::test {

model::Board board(const char* name, double length_m, double width_m, double thickness_m = 0.070) {
    return {.name = name, .length_m = length_m, .width_m = width_m, .thickness_m = thickness_m};
}

class PaperStockTest : public QObject, private PdfPrinter {
    Q_OBJECT

private:
    units::Display display_;

    plan::Shop shop() const {
        model::Boat boat = boatOf({});
        boat.display = display_;
        return plan::shopOf(boat);
    }

    plan::Plan planOf(const model::Piece& piece) const {
        const std::atomic<bool> goOn = false;
        plan::Plan plan = plan::makePlan(piece, shop());
        plan.stock = plan::stockFor(piece, shop(), plan, goOn);
        plan::wordStudies(piece, shop(), plan);
        return plan;
    }

    static model::Piece boarded() {
        model::Piece piece = stem();
        piece.stock.boards = {board("Oak A", 2.7, 0.15), board("Oak B", 2.4, 0.12)};
        piece.stock.boards[0].bad = {{.from_m = 0.64, .to_m = 0.76}};
        return piece;
    }

private slots:
    void init() { display_ = {}; }

    void OnlyAPieceWithBoardsHasACutList() {
        const auto has = [](const std::vector<app::Paper>& papers, app::Paper paper) {
            return std::find(papers.begin(), papers.end(), paper) != papers.end();
        };
        model::Piece piece = stem();
        QVERIFY(!has(app::papersOf(piece), app::Paper::cutList));
        QVERIFY(has(app::papersOf(piece, true), app::Paper::cutList));  // the boat's boards
        piece = boarded();
        QVERIFY(has(app::papersOf(piece), app::Paper::cutList));
        QVERIFY(!has(app::papersOf(piece), app::Paper::buying));
        piece.stock.buy = {board("Long", 4, 0.2)};
        QVERIFY(has(app::papersOf(piece), app::Paper::buying));
    }

    void EachStripStandsInTheCutListWithItsBoardAndLength() {
        const model::Piece piece = boarded();
        const plan::Plan plan = planOf(piece);
        QVERIFY(plan.stock->missing.empty());
        const QString file = print(app::Paper::cutList, piece, plan);
        const QString text = textsOf(file).join('\n');
        int strips = 0;
        for (const plan::BoardCuts& on : plan.stock->boards) {
            if (on.parts.empty()) continue;
            QVERIFY(text.contains("Board " + QString::fromStdString(on.name) + ":"));
            for (const plan::SawnPart& part : on.parts) {
                ++strips;
                const QString length = QString::number(std::round(part.length_m * 10000) / 10, 'f', 1);
                QVERIFY2(text.contains(QString("rip %1").arg(part.rip)), qPrintable(text));
                QVERIFY2(text.contains(length.endsWith(".0") ? length.chopped(2) : length), qPrintable(length));
            }
        }
        QCOMPARE(strips, plan.stock->stripsNeeded);
    }

    void FiguresAreAsLargeAsAnEyeAtTheBenchNeeds() {
        const model::Piece piece = boarded();
        const QString file = print(app::Paper::cutList, piece, planOf(piece));
        // 14 point are 4.94 mm of body; the box of a word is as high as its font's line, here on a sheet that is
        // turned.
        double tallest = 0;
        const std::vector<std::vector<Word>> pages = wordsOf(file);
        for (const Word& word : pages.front())
            if (word.text == "1") tallest = std::max({tallest, word.box.height(), word.box.width()});
        QVERIFY2(tallest >= 4.94, qPrintable(QString::number(tallest)));
    }

    void WhatMustBeBoughtStandsInTheBuyingListWithItsPrice() {
        model::Piece piece = boarded();
        piece.stock.boards = {board("Oak B", 2.4, 0.030)};
        piece.stock.buy = {board("Yard plank", 3.0, 0.2)};
        piece.stock.buy[0].count = 10;
        piece.stock.buy[0].price = 84.5;
        const plan::Plan plan = planOf(piece);
        const QString text = textsOf(print(app::Paper::buying, piece, plan)).join('\n');
        const auto bought = std::ranges::count_if(
            plan.stock->boards, [](const plan::BoardCuts& one) { return one.toBuy && !one.parts.empty(); });
        QVERIFY(bought > 0);
        for (const QString& one : {QString("Yard plank"), QString("white oak"), QString::number(84.5 * bought, 'f', 2)})
            QVERIFY2(text.contains(one), qPrintable(one + " not in\n" + text));
        piece = boarded();
        piece.stock.buy = {board("Yard plank", 3.0, 0.2)};
        QVERIFY(textsOf(print(app::Paper::buying, piece, planOf(piece))).join('\n').contains("Nothing to buy"));
    }

    void StripsThatNoBoardGivesAreNamed() {
        model::Piece piece = boarded();
        piece.stock.boards = {board("Oak B", 2.4, 0.030)};
        const plan::Plan plan = planOf(piece);
        QVERIFY(!plan.stock->missing.empty());
        const QString text = textsOf(print(app::Paper::cutList, piece, plan)).join('\n');
        QVERIFY2(text.contains("NOT on any board"), qPrintable(text));
        // Without a study, and with nothing laid out, that is said.
        plan::Plan none = plan;
        none.stock.reset();
        QVERIFY(textsOf(print(app::Paper::cutList, piece, none)).join('\n').contains("still being laid out"));
    }

    void WordsStandClearOfEachOtherAndNothingIsCut() {
        model::Piece busy = boarded();
        busy.stock.boards = {board("A plank with a long name", 1.1, 0.15), board("B", 1.3, 0.15),
                             board("C", 1.2, 0.20)};
        busy.stock.buy = {board("Yard plank", 3.0, 0.2)};
        model::Piece resawn = boarded();
        resawn.stock.saw = model::Saw::face;
        for (const auto lengths : {units::LengthNotation::millimetres, units::LengthNotation::feetInchesEighths}) {
            display_.lengths = lengths;
            for (const model::Piece& piece : {boarded(), busy, resawn}) {
                const plan::Plan plan = planOf(piece);
                for (const QPageLayout& layout :
                     {layoutOf(QPageSize(QPageSize::A4)), layoutOf(QPageSize(QPageSize::Letter))}) {
                    for (const app::Paper paper : {app::Paper::cutList, app::Paper::buying}) {
                        const QString file = print(paper, piece, plan, layout);
                        for (const std::vector<Word>& words : wordsOf(file)) {
                            const QStringList overlaps = overlapsOf(words);
                            QVERIFY2(overlaps.isEmpty(), qPrintable(app::paperName(paper) + overlaps.join("; ")));
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
    fayline::test::PaperStockTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "paper_stock_test.moc"
