// What stands on the papers' sheets and how they are named: every sheet says what it belongs to, words stand clear of
// each other, and odd pieces, names and papers get their sheets or a plain refusal.
#include <QApplication>
#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QGraphicsItem>
#include <QGraphicsView>
#include <QLocale>
#include <QPainter>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QTemporaryDir>
#include <QTest>
#include <map>

#include "app/paper/papers.hpp"
#include "core/glue/library_errors.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/units/input_error.hpp"
#include "tests/app/paper_boats.hpp"
#include "tests/app/rendered_pages.hpp"

namespace fayline::test {

QByteArray bytesOf(const QString& fileName) {
    QFile file(fileName);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// What is dark in a picture of a page 210 mm wide, millimetres from its corner; two millimetres at the edge do not
// count.
QRectF inkOf(const QImage& page) {
    const double pixel_mm = 210.0 / page.width();
    const int edge = static_cast<int>(2 / pixel_mm);
    QRect ink;
    for (int y = edge; y < page.height() - edge; ++y) {
        for (int x = edge; x < page.width() - edge; ++x) {
            if (qGray(page.pixel(x, y)) < 160) ink |= QRect(x, y, 1, 1);
        }
    }
    return {ink.x() * pixel_mm, ink.y() * pixel_mm, ink.width() * pixel_mm, ink.height() * pixel_mm};
}

// The first page as a preview shows it, at 100 dots an inch.
QImage firstPageOf(const QPrintPreviewWidget& preview) {
    auto* view = preview.findChild<QGraphicsView*>();
    const QList<QGraphicsItem*> pages = view->scene()->items(Qt::AscendingOrder);
    QRectF paper = pages.constFirst()->sceneBoundingRect();
    for (const QGraphicsItem* page : pages) {
        if (page->scenePos().y() < paper.y() || page->scenePos().x() < paper.x()) paper = page->sceneBoundingRect();
    }
    // The shadow about each paper is a twenty-fifth of its longer side.
    const double shadow = paper.height() * (1.0 / 25) / (1 + 2.0 / 25);
    paper.adjust(shadow, shadow, -shadow, -shadow);
    QImage picture(827, 1169, QImage::Format_Grayscale8);
    picture.fill(Qt::white);
    QPainter painter(&picture);
    painter.setRenderHint(QPainter::Antialiasing);
    view->scene()->render(&painter, picture.rect(), paper, Qt::IgnoreAspectRatio);
    return picture;
}

// The stem with sixty stations crowded about its tightest place, a millimetre apart.
model::Piece crowded() {
    model::Piece piece = stem();
    piece.name = "Crowded";
    piece.holding.stations.clear();
    addStations(piece, 0.6, 0.659, 60);
    return piece;
}

// All papers of a boat.
struct Printed {
    model::Boat boat;
    QString folder;
    QStringList names;
    qint64 writtenAt_s = 0;  // when the last of them was

    Printed(const model::Boat& printed, const QString& into, const QPageLayout& layout)
        : boat(printed),
          folder(into),
          names(app::writePapers(printed, into, layout)),
          writtenAt_s(QDateTime::currentSecsSinceEpoch()) {}
    QString file(const QString& name) const { return QDir(folder).filePath(name); }
    // Those of one piece.
    QStringList of(const char* piece) const { return names.filter(QRegularExpression(QString("^%1-").arg(piece))); }
};

class PaperSheetsTest : public QObject {
    Q_OBJECT

private:
    QTemporaryDir folder_;
    int used_ = 0;
    std::map<units::LengthNotation, Printed> printed_;

    // A stem, a rail and a crowded stem on A4: made once for all tests.
    const Printed& onA4(units::LengthNotation notation = units::LengthNotation::millimetres) {
        const auto found = printed_.find(notation);
        if (found != printed_.end()) return found->second;
        model::Boat boat = boatOf({stem(), longRail(), crowded()});
        boat.display.lengths = notation;
        return printed_.try_emplace(notation, boat, freshFolder(), layoutOf(QPageSize(QPageSize::A4))).first->second;
    }

    QString freshFolder() { return folder_.filePath(QString("papers %1/deeper").arg(++used_)); }

    static void compareNames(const QStringList& names, const QStringList& expectedStems) {
        QStringList expected;
        for (const QString& stem : expectedStems) {
            for (const QString paper :
                 {"station-table", "story-stick", "full-size-line", "full-size-form", "batch-cards", "run-sheet"}) {
                expected << stem + "-" + paper + ".pdf";
            }
        }
        QCOMPARE(names, expected);
    }

private slots:
    void EverySheetNamesBoatPieceAndPaperAndItsNumberOfHowMany() {
        const Printed& printed = onA4(units::LengthNotation::feetInchesEighths);
        QCOMPARE(printed.names.size(), 24);  // all have clamps and screws
        for (const QString& name : printed.names) {
            const QStringList texts = textsOf(printed.file(name));
            QVERIFY(!texts.isEmpty());
            QString paper = name.section('-', 1).chopped(4).replace("full-size", "full size").replace('-', ' ');
            paper.replace("full size", "full-size");
            for (int page = 1; page <= texts.size(); ++page) {
                const QString& text = texts[page - 1];
                QVERIFY2(text.contains("Marram · " + name.section('-', 0, 0)), qPrintable(text));
                QVERIFY2(text.contains(paper, Qt::CaseInsensitive), qPrintable(paper + " in\n" + text));
                QVERIFY2(text.contains(QString("Sheet %1 of %2").arg(page).arg(texts.size())), qPrintable(text));
                const bool squares = text.contains("inner square 100 mm, outer square 4 in");
                QVERIFY2(squares || text.contains("nothing here is at full size"), qPrintable(text));
            }
        }
    }

    void WordsStandClearOfEachOther() {
        for (const auto notation : {units::LengthNotation::feetInchesEighths, units::LengthNotation::millimetres}) {
            const Printed& printed = onA4(notation);
            for (const QString& name : printed.names) {
                QStringList overlaps;
                for (const std::vector<Word>& words : wordsOf(printed.file(name))) overlaps += overlapsOf(words);
                QVERIFY2(overlaps.isEmpty(), qPrintable(name + ": " + overlaps.join("; ")));
            }
        }
    }

    void EveryStationStandsInTheTable() {
        const Printed printed(boatOf({crowded()}), freshFolder(), layoutOf(QPageSize(QPageSize::Letter)));
        const QStringList pages = textsOf(printed.file("Crowded-station-table.pdf"));
        QVERIFY(pages.size() > 1);
        const QString text = pages.join(' ');
        const plan::Plan plan = plan::makePlan(printed.boat.pieces[0], plan::shopOf(printed.boat));
        for (const holding::StationPlace& station : plan.holding.stations) {
            const QString row = QString("\\b%1\\s+(clamp|screw)\\s+%2\\s+%3\\s+%4\\s+%5\\b")
                                    .arg(station.number)
                                    .arg(station.at_m * 1000, 0, 'f', 1)
                                    .arg(station.alongOutside_m * 1000, 0, 'f', 1)
                                    .arg(station.onLine.x_m * 1000, 0, 'f', 1)
                                    .arg(station.onLine.y_m * 1000, 0, 'f', 1);
            QVERIFY2(text.contains(QRegularExpression(row)), qPrintable(row + " not in\n" + text));
        }
    }

    void MarksOfAnOrdinaryPieceAreAllNamed() {
        const Printed& printed = onA4();
        for (const QString& name : printed.of("Stem")) {
            const QString text = textsOf(printed.file(name)).join(' ').simplified();
            QVERIFY2(!text.contains("too close"), qPrintable(name + ": " + text));
        }
    }

    void MarksTooCloseToBeNamedAreSaidToBeSo() {
        const QString text = textsOf(onA4().file("Crowded-story-stick.pdf")).join(' ').simplified();
        QVERIFY(text.contains("too close together to be named"));
    }

    void APieceWithoutStationsHasItsPapers() {
        model::Piece piece = pieceAlong("Knee", 0.5, 0, 4, [](double) { return 0.9; });
        piece.stack.runsPastStart_m = 0;
        piece.stack.runsPastEnd_m = 0;
        const QString folder = freshFolder();
        compareNames(app::writePapers(boatOf({piece}), folder, layoutOf(QPageSize(QPageSize::A4))), {"Knee"});
    }

    void AStraightPieceIsCalledStraight() {
        const QString folder = freshFolder();
        const model::Piece piece = pieceAlong("Batten", 1, 0.3, 5, [](double) { return 0; });
        const QStringList names = app::writePapers(boatOf({piece}), folder, layoutOf(QPageSize(QPageSize::A4)));
        QString text;
        for (const QString& name : names) text += textsOf(QDir(folder).filePath(name)).join(' ');
        QVERIFY(text.contains("The line is straight."));
        QVERIFY2(!text.contains("tightest, radius"), qPrintable(text));
        QVERIFY(!text.contains("nan") && !text.contains("inf mm"));
    }

    void ABoatWithoutPiecesHasNoPapers() {
        QCOMPARE(app::writePapers(boatOf({}), freshFolder(), layoutOf(QPageSize(QPageSize::A4))), QStringList());
    }

    void OddNamesBecomeFileNamesThatAreSafeAndDiffer() {
        std::vector<model::Piece> pieces;
        for (const char* name : {"Stem", "stem", "Stem-2", "../etc/passwd", "", "///", "Bogsprød søm №1", "木の船首",
                                 "a very long name that goes on and on until no file system would take it any more"}) {
            pieces.push_back(pieceAlong(name, 0.5, 0, 4, [](double) { return 0.2; }));
        }
        const Printed printed(boatOf(pieces), freshFolder(), layoutOf(QPageSize(QPageSize::A3)));
        compareNames(printed.names, {"Stem", "stem-2", "Stem-2-2", "etc-passwd", "piece", "piece-2", "Bogsprød-søm-1",
                                     "木の船首", "a-very-long-name-that-goes-on-and-on-unt"});
        for (const QString& name : printed.names) QVERIFY2(QFile::exists(printed.file(name)), qPrintable(name));
        QCOMPARE(QDir(printed.folder).entryList(QDir::Files).size(), printed.names.size());
    }

    void ALongNameIsShortenedOnTheSheetNotCutOff() {
        model::Piece piece = stem();
        piece.name = std::string(40, 'M') + " and a name that is longer than any sheet is wide " + std::string(40, 'W');
        const QString folder = freshFolder();
        const QStringList names = app::writePapers(boatOf({piece}), folder, layoutOf(QPageSize(QPageSize::A4)));
        for (const QString& name : names) {
            const QString file = QDir(folder).filePath(name);
            const double width = pictureOf(file, 1, 50).width_mm();
            const std::vector<Word> words = wordsOf(file).front();
            for (const Word& word : words) {
                QVERIFY2(word.box.left() > 12 && word.box.right() < width - 12, qPrintable(name + ": " + word.text));
            }
            QVERIFY(textsOf(file).front().contains("…"));
        }
    }

    void ThePaperMayBeLargeARollOrLyingOnItsSide() {
        const model::Boat boat = boatOf({stem()});
        const QPageSize roll(QSizeF(610, 2600), QPageSize::Millimeter);
        const auto count = [](const Printed& printed, const QStringList& names) {
            int pages = 0;
            for (const QString& name : names) pages += pageCount(printed.file(name));
            return pages;
        };
        std::vector<int> sheets{count(onA4(), onA4().of("Stem"))};
        for (const QPageLayout& layout : {layoutOf(QPageSize(QPageSize::A4), QPageLayout::Landscape),
                                          layoutOf(QPageSize(QPageSize::A3)), layoutOf(roll)}) {
            const Printed printed(boat, freshFolder(), layout);
            sheets.push_back(count(printed, printed.names));
        }
        QVERIFY(sheets[2] < sheets[0]);
        QVERIFY(sheets[3] < sheets[2]);
        QCOMPARE(sheets[1], sheets[0]);  // the same paper, turned as each drawing needs it
    }

    void PaperThatIsTooSmallIsRefusedInWords() {
        const QString folder = freshFolder();
        try {
            app::writePapers(boatOf({stem()}), folder, layoutOf(QPageSize(QPageSize::A6)));
            QFAIL("A6 was taken");
        } catch (const units::InputError& error) {
            QVERIFY2(error.wrong().find("79 x 122 mm") != std::string::npos, error.what());
            QVERIFY2(error.accepted().find("155 x 200 mm") != std::string::npos, error.what());
        }
        QVERIFY(!QDir(folder).exists());
    }

    void APieceThatCannotBePlannedIsNamedAndNothingIsWritten() {
        model::Piece broken = stem();
        broken.line.points.resize(2);
        const QString folder = freshFolder();
        try {
            app::writePapers(boatOf({stem(), broken}), folder, layoutOf(QPageSize(QPageSize::A4)));
            QFAIL("two points were taken");
        } catch (const units::InputError& error) {
            QVERIFY2(QString::fromStdString(error.path()).startsWith("pieces[1].line.points"), error.what());
        }
        QVERIFY(!QDir(folder).exists());
    }

    void AFolderThatCannotBeMadeIsRefusedInWords() {
        QFile file(folder_.filePath("a file"));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.close();
        try {
            app::writePapers(boatOf({stem()}), file.fileName(), layoutOf(QPageSize(QPageSize::A4)));
            QFAIL("a file was taken for a folder");
        } catch (const units::InputError& error) {
            QVERIFY2(QString::fromStdString(error.path()).contains("a file"), error.what());
        }
    }

    void TheSameBoatGivesTheSameBytes() {
        const Printed& first = onA4();
        // A file that tells the time differs after a second.
        SOON_VERIFY(QDateTime::currentSecsSinceEpoch() > first.writtenAt_s);
        const Printed second(boatOf({stem()}), freshFolder(), layoutOf(QPageSize(QPageSize::A4)));
        QCOMPARE(first.of("Stem"), second.names);
        for (const QString& name : second.names) {
            const QByteArray bytes = bytesOf(first.file(name));
            QVERIFY(bytes.startsWith("%PDF"));
            QVERIFY(bytes == bytesOf(second.file(name)));
        }
    }

    void LettersAreBuiltIntoTheFiles() {
        const Printed& printed = onA4();
        for (const QString& name : printed.of("Stem")) {
            const QString fonts = outputOf("pdffonts", {printed.file(name)});
            QStringList rows = fonts.split('\n', Qt::SkipEmptyParts).mid(2);
            QVERIFY(!rows.isEmpty());
            const QRegularExpression embedded("\\byes\\s+(yes|no)\\s+yes\\s+\\d+\\s+\\d+\\s*$");
            for (const QString& row : rows) QVERIFY2(row.contains(embedded), qPrintable(row));
        }
    }

    // Printers differ in resolution, margins and how the paper lies; the check squares may not.
    void APrinterOfAnyResolutionPrintsAtTrueSize() {
        const model::Boat boat = boatOf({stem()});
        const plan::Plan plan = plan::makePlan(boat.pieces[0], plan::shopOf(boat));
        for (const int resolution : {300, 360, 1200}) {
            for (const auto orientation : {QPageLayout::Portrait, QPageLayout::Landscape}) {
                for (const app::Paper paper :
                     {app::Paper::stationTable, app::Paper::storyStick, app::Paper::line, app::Paper::form}) {
                    const QString file = folder_.filePath("printed.pdf");
                    {
                        QPrinter printer;
                        printer.setOutputFormat(QPrinter::PdfFormat);
                        printer.setOutputFileName(file);
                        printer.setResolution(resolution);
                        printer.setPageLayout({QPageSize(QPageSize::Letter), orientation, QMarginsF(5, 9, 17, 6),
                                               QPageLayout::Millimeter});
                        app::printPaper(paper, boat, boat.pieces[0], plan, printer);
                        QVERIFY(!printer.fullPage());
                    }
                    Picture picture = pictureOf(file, 1, 200);
                    std::vector<Word> words = wordsOf(file).front();
                    const bool lying = orientation == QPageLayout::Landscape;
                    const bool turned = std::any_of(words.begin(), words.end(), [](const Word& word) {
                        return word.text == "Measure" && word.box.height() > word.box.width();
                    });
                    if (paper == app::Paper::storyStick) QCOMPARE(turned, !lying);
                    if (paper == app::Paper::stationTable) QCOMPARE(turned, lying);
                    if (turned) {
                        for (Word& word : words) {
                            word.box = QRectF(word.box.top(), picture.width_mm() - word.box.right(), word.box.height(),
                                              word.box.width());
                        }
                        picture = picture.turnedBack();
                    }
                    const CheckSquares squares = checkSquares(picture, words);
                    const QString where = QString("%1 at %2, %3 x %4")
                                              .arg(app::paperName(paper))
                                              .arg(resolution)
                                              .arg(squares.innerWidth_mm)
                                              .arg(squares.innerHeight_mm);
                    QVERIFY2(std::abs(squares.innerWidth_mm - 100) < 0.1, qPrintable(where));
                    QVERIFY2(std::abs(squares.innerHeight_mm - 100) < 0.1, qPrintable(where));
                    QVERIFY2(std::abs(squares.outerWidth_mm - 101.6) < 0.1, qPrintable(where));
                    QVERIFY2(std::abs(squares.outerHeight_mm - 101.6) < 0.1, qPrintable(where));
                }
            }
        }
    }

    void OnlyTheSheetsThatWereAskedForArePrinted() {
        const model::Boat boat = boatOf({stem()});
        const plan::Plan plan = plan::makePlan(boat.pieces[0], plan::shopOf(boat));
        const QString file = folder_.filePath("some.pdf");
        {
            QPrinter printer;
            printer.setOutputFormat(QPrinter::PdfFormat);
            printer.setOutputFileName(file);
            printer.setPageSize(QPageSize(QPageSize::A4));
            printer.setPrintRange(QPrinter::PageRange);
            printer.setFromTo(2, 3);
            app::printPaper(app::Paper::storyStick, boat, boat.pieces[0], plan, printer);
        }
        QCOMPARE(pageCount(file), 2);
        QVERIFY(textsOf(file).front().simplified().contains("Sheet 2 of"));
    }

    void PrintAndPreviewLieWhereTheyShouldHoweverThePrinterCounts() {
        const model::Boat boat = boatOf({stem()});
        const plan::Plan plan = plan::makePlan(boat.pieces[0], plan::shopOf(boat));
        std::vector<std::pair<QString, QRectF>> inks;
        for (const bool fullPage : {true, false}) {
            const auto setUp = [fullPage](QPrinter& printer) {
                printer.setPageLayout({QPageSize(QPageSize::A4), QPageLayout::Portrait, QMarginsF(19, 13, 15, 17),
                                       QPageLayout::Millimeter});
                printer.setFullPage(fullPage);
            };
            const QString file = folder_.filePath("counted.pdf");
            {
                QPrinter printer;
                printer.setOutputFormat(QPrinter::PdfFormat);
                printer.setOutputFileName(file);
                setUp(printer);
                app::printPaper(app::Paper::line, boat, boat.pieces[0], plan, printer);
            }
            inks.emplace_back(fullPage ? "print" : "print within margins", inkOf(pictureOf(file, 1, 100).image()));

            QPrinter printer;
            setUp(printer);
            QPrintPreviewWidget preview(&printer);
            connect(&preview, &QPrintPreviewWidget::paintRequested, this,
                    [&](QPrinter* onto) { app::printPaper(app::Paper::line, boat, boat.pieces[0], plan, *onto); });
            preview.show();
            QVERIFY(QTest::qWaitForWindowExposed(&preview, fayline::test::patience_ms));
            preview.updatePreview();
            inks.emplace_back(fullPage ? "preview" : "preview within margins", inkOf(firstPageOf(preview)));
        }
        QVERIFY(inks[0].second.width() > 100);
        for (const auto& [name, ink] : inks) {
            const QRectF& first = inks[0].second;
            const QString where =
                QString("%1: %2 %3, %4 x %5").arg(name).arg(ink.x()).arg(ink.y()).arg(ink.width()).arg(ink.height());
            // A pixel of either picture is a quarter of a millimetre.
            QVERIFY2((ink.topLeft() - first.topLeft()).manhattanLength() < 1, qPrintable(where));
            QVERIFY2((ink.bottomRight() - first.bottomRight()).manhattanLength() < 1, qPrintable(where));
        }
    }

    void TheLocaleChoosesLetterOrA4() {
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedStates));
        QCOMPARE(app::defaultPageLayout().pageSize().id(), QPageSize::Letter);
        QLocale::setDefault(QLocale(QLocale::English, QLocale::UnitedKingdom));
        QCOMPARE(app::defaultPageLayout().pageSize().id(), QPageSize::A4);
        QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
        QCOMPARE(app::defaultPageLayout().pageSize().id(), QPageSize::A4);
        QLocale::setDefault(QLocale::c());
    }
};

}  // namespace fayline::test

int main(int argc, char** argv) {
    fayline::glue::letLibraryReturnErrors();
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    fayline::test::PaperSheetsTest test;
    return QTest::qExec(&test, argc, argv);
}

#include "paper_sheets_test.moc"
