// The panel of papers: what a piece has, the ways to it, and the size of paper that is kept and laid out for.
#include "app/window/paper_panel.hpp"

#include <QAbstractButton>
#include <QComboBox>
#include <QDir>
#include <QLabel>
#include <QLocale>
#include <QSettings>
#include <QSignalSpy>
#include <QTest>

#include "app/window/panel_stack.hpp"
#include "core/math/count.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/pdf_pages.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// Width and height of each page in points, as poppler reads them.
QList<QSizeF> pageSizes(const QString& pdf) {
    const QString info = test::outputOf("pdfinfo", {"-f", "1", "-l", "1000", pdf});
    static const QRegularExpression size(R"(Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts)");
    QList<QSizeF> sizes;
    for (auto match = size.globalMatch(info); match.hasNext();) {
        const auto one = match.next();
        sizes << QSizeF(one.captured(1).toDouble(), one.captured(2).toDouble());
    }
    return sizes;
}

bool isSize(QSizeF size, double width_pt, double height_pt) {
    if (size.width() > size.height()) size.transpose();
    return std::abs(size.width() - width_pt) < 1 && std::abs(size.height() - height_pt) < 1;
}

}  // namespace

class PaperPanelTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void itListsThePapersOfThePieceEachWithItsPurpose() {
        PaperPanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        const auto* table = panel.findChild<NotebookTable*>("papers");
        const std::vector<Paper> papers = papersOf(shown.piece);
        QCOMPARE(table->model()->rowCount(), math::countOf(papers));
        for (int row = 0; row < math::countOf(papers); ++row) {
            const QModelIndex cell = table->model()->index(row, 0);
            QCOMPARE(cell.data().toString(), paperName(papers[row]));
            QVERIFY(!cell.data(underRole).toString().isEmpty());
        }
        QVERIFY(table->isVisible() && table->currentIndex().isValid());
    }

    // As many as the pages of what is then saved.
    void itSaysHowManySheetsEachPaperTakes() {
        for (const auto size : {QPageSize::A4, QPageSize::Letter}) {
            setPaperSize(size);
            Shown shown = shownSample();
            deepenShown(shown);
            model::Boat boat;
            boat.display = shown.display;
            boat.pieces = {shown.piece};
            PaperPanel panel;
            panel.show(shown);
            open(&panel);
            const auto* table = panel.findChild<NotebookTable*>("papers");
            const auto sheets = [&](int row) { return table->model()->index(row, 1).data().toString(); };
            const std::vector<Paper> papers = papersOf(shown.piece);
            SOON_VERIFY(!sheets(0).isEmpty());
            QTemporaryDir folder;
            const QStringList names = writePapers(boat, folder.path(), defaultPageLayout());
            qsizetype all = 0;
            QCOMPARE(names.size(), papers.size());
            for (int row = 0; row < names.size(); ++row) {
                const qsizetype pages = pageSizes(folder.filePath(names[row])).size();
                QCOMPARE(sheets(row), QString::number(pages));
                all += pages;
            }
            QCOMPARE(panel.findChild<QLabel*>("sheetsInAll")->text(), QString("%1 sheets in all").arg(all));
        }
    }

    void buttonsAndEnterAskForTheChosenPaper() {
        PaperPanel panel;
        const Shown shown = shownSample();
        panel.show(shown);
        open(&panel);
        QSignalSpy asked(&panel, &Panel::actionAsked);
        auto* table = panel.findChild<NotebookTable*>("papers");
        const std::vector<Paper> papers = papersOf(shown.piece);
        table->setFocus();
        QTest::keyClick(table, Qt::Key_Down);
        QTest::keyClick(table, Qt::Key_Return);
        panel.findChild<QAbstractButton*>("printPaper")->click();
        panel.findChild<QAbstractButton*>("previewPaper")->click();
        panel.findChild<QAbstractButton*>("saveAllPapers")->click();
        const QString number = QString::number(int(papers[1]));
        QStringList names;
        for (const auto& one : asked) names << one[0].toString();
        QCOMPARE(names, QStringList({"preview" + number, "print" + number, "preview" + number, "savePapers"}));
        // Each is an action of the window.
        Bench bench;
        for (const QString& name : names) QVERIFY2(bench.action(name), qPrintable(name));
    }

    void nothingIsCutOff() {
        for (const int width : {narrowest, widest}) {
            PaperPanel panel;
            panel.show(shownSample());
            checkFits(&panel, width);
        }
    }

    void theQuestionsOfPaperAndRecordOpenTheirPanels() {
        Bench bench;
        for (const auto& [question, panel] : {std::pair("question7", "paperPanel"), {"question8", "recordPanel"}}) {
            bench.find<QAbstractButton>(question)->click();
            QVERIFY2(bench.find<QWidget>(panel)->isVisible(), panel);
        }
        bench.find<PanelStack>()->setOpenQuestions({});
        bench.action("openPanel7")->trigger();
        QVERIFY(bench.find<QWidget>("paperPanel")->isVisible());
        // In the order of the job.
        QVERIFY(bench.find<QWidget>("panelHead5")->y() < bench.find<QWidget>("panelHead7")->y());
        QVERIFY(bench.find<QWidget>("panelHead7")->y() < bench.find<QWidget>("panelHead8")->y());
    }

    void letterIsChosenRememberedAndOnEveryPageOfThePapers() {
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
        QTemporaryDir folder;
        const QString letter = folder.filePath("letter");
        {
            Bench bench;
            bench.find<QAbstractButton>("question7")->click();
            auto* size = bench.find<QComboBox>("paperSize");
            QVERIFY2(size->currentText().startsWith("A4"), qPrintable(size->currentText()));
            size->setFocus();
            QTest::keyClick(size, Qt::Key_Down);
            QVERIFY2(size->currentText().startsWith("Letter"), qPrintable(size->currentText()));
            QVERIFY(bench.action("paperLetter")->isChecked());
            QVERIFY(bench.window.savePapers(letter));
        }
        const QStringList files = QDir(letter).entryList({"*.pdf"});
        QVERIFY(files.size() > 6);
        for (const QString& file : files) {
            const QList<QSizeF> sizes = pageSizes(letter + '/' + file);
            QVERIFY2(!sizes.isEmpty(), qPrintable(file));
            for (const QSizeF& one : sizes) QVERIFY2(isSize(one, 612, 792), qPrintable(file));  // 8.5 x 11 in
        }
        // The next start has it, for printer and preview as well; and back.
        Bench again;
        QCOMPARE(defaultPageLayout().pageSize().id(), QPageSize::Letter);
        again.find<QAbstractButton>("question7")->click();
        QVERIFY(again.find<QComboBox>("paperSize")->currentText().startsWith("Letter"));
        again.action("paperA4")->trigger();
        QCOMPARE(defaultPageLayout().pageSize().id(), QPageSize::A4);
        SOON_VERIFY(again.find<QComboBox>("paperSize")->currentText().startsWith("A4"));
        QLocale::setDefault(QLocale::c());
    }

    void sizesOtherThanTheTwoAreNotTaken() {
        const QPageSize::PageSizeId before = paperSize();
        QVERIFY(!setPaperSize(QPageSize::A5));
        QCOMPARE(paperSize(), before);
        QSettings().setValue("paper/size", "parchment");
        QCOMPARE(paperSize(), before);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PaperPanelTest>(argc, argv);
}
#include "paper_panel_test.moc"
