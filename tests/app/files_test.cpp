// Boats and papers to and from the disk through the window: nothing is lost unasked, everything odd is told.
#include <QAbstractItemView>
#include <QDir>
#include <QFile>
#include <QLabel>
#include <QPushButton>
#include <QSettings>
#include <QTemporaryDir>
#include <QTest>

#include "core/io/file.hpp"
#include "tests/app/full_disk.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

QByteArray read(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// Takes what is proposed, and adds the piece.
void takeOffsets(Bench& bench) {
    bench.find<QPushButton>("take")->click();
    bench.find<QPushButton>("addNew")->click();
    QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
}

}  // namespace

class FilesTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void savedAndReopenedIsEqual() {
        Bench bench;
        const QString path = bench.folder.filePath("again.fayline");
        bench.type(wl12, xColumn, "1-8-3");
        bench.document().save(path);
        QVERIFY(!bench.window.isWindowModified());
        bench.dragPoint(wl12, {20, 10});
        bench.action("save")->trigger();
        QVERIFY(!bench.window.isWindowModified());
        Bench other(path);
        QVERIFY(other.document().boat() == bench.document().boat());
        QVERIFY(QSettings().value("recent").toStringList().contains(path));
    }

    void brokenFileLeavesTheBoatAndSaysWhereAndWhy() {
        Bench bench;
        bench.type(wl12, xColumn, "1-8-3");
        const model::Boat before = bench.document().boat();
        const QString title = bench.window.windowTitle();
        const QString path = bench.folder.filePath("broken.fayline");
        QVERIFY(write(path, R"({"fayline": 1, "pieces": [{"name": "Stem", "line": {"points": 4}}]})"));
        Answering answer(QMessageBox::Ok);
        QVERIFY(!bench.window.openFile(path));
        QVERIFY2(answer.text.contains(path) && answer.text.contains("pieces[0].line.points"), qPrintable(answer.text));
        QVERIFY(bench.document().boat() == before);
        QCOMPARE(bench.window.windowTitle(), title);
        QVERIFY(bench.action("undo")->isEnabled());
    }

    // What was left of it when a disk was full, say; the copy is of a program that was killed at its work on it.
    void fileThatIsCutShortSaysSoAndNamesTheLastGoodCopy() {
        Bench bench;
        QFile whole(marram);
        QVERIFY(whole.open(QIODevice::ReadOnly));
        const QByteArray text = whole.readAll();
        const QString path = bench.folder.filePath("short.fayline");
        for (const qsizetype left : {qsizetype(0), qsizetype(17), text.size() / 3, text.size() - 3}) {
            QVERIFY(write(path, text.left(left)));
            Answering answer(QMessageBox::Ok);
            QVERIFY(!bench.window.openFile(path));
            QVERIFY2(answer.text.contains("short.fayline is cut short"), qPrintable(answer.text));
            QVERIFY2(answer.text.contains("no copy of it"), qPrintable(answer.text));
        }
        const auto keep = [&](const char* id, const QByteArray& copy) {
            return write(bench.folder.filePath(QString(id) + ".fayline"), copy) &&
                   write(bench.folder.filePath(QString(id) + ".of"), path.toUtf8());
        };
        QVERIFY(keep("good", text) && keep("torn", text.left(500)));
        Answering answer(QMessageBox::Ok);
        QVERIFY(!bench.window.openFile(path));
        QVERIFY2(answer.text.contains("The last good copy is of") &&
                     answer.text.contains(QDir::toNativeSeparators(bench.folder.filePath("good.fayline"))),
                 qPrintable(answer.text));
    }

    void fileThatIsGoneLeavesTheListOfRecentFiles() {
        Bench bench;
        const QString gone = bench.folder.filePath("gone.fayline");
        QSettings().setValue("recent", QStringList{gone, marram});
        Answering answer(QMessageBox::Ok);
        QVERIFY(!bench.window.openFile(gone));
        QVERIFY(!answer.text.isEmpty());
        QCOMPARE(QSettings().value("recent").toStringList(), QStringList{marram});
    }

    void closingWithUnsavedChangesAsks() {
        Bench bench;
        const QString path = bench.folder.filePath("mine.fayline");
        bench.document().save(path);
        bench.type(wl12, xColumn, "1-8-3");
        {
            Answering cancel(QMessageBox::Cancel);
            QVERIFY(!bench.window.close());
            QVERIFY(cancel.text.contains("Marram"));
        }
        QVERIFY(bench.window.isVisible());
        {
            Answering cancel(QMessageBox::Cancel);
            bench.action("newBoat")->trigger();
            QVERIFY(!cancel.text.isEmpty());
            QCOMPARE(bench.document().fileName(), path);
        }
        {
            Answering save(QMessageBox::Save);
            QVERIFY(bench.window.close());
        }
        QVERIFY(io::loadBoat(path.toStdString()).pieces == bench.document().boat().pieces);
    }

    void closingWithDiscardLeavesTheFileAndNoCopy() {
        Bench bench;
        const QTemporaryDir home;
        const QString path = home.filePath("mine.fayline");
        bench.document().save(path);
        const auto saved = io::loadBoat(path.toStdString());
        bench.type(wl12, xColumn, "1-8-3");
        Answering discard(QMessageBox::Discard);
        QVERIFY(bench.window.close());
        QVERIFY(io::loadBoat(path.toStdString()) == saved);
        QVERIFY(Recovery(bench.folder.path()).leftBehind().empty());
        QVERIFY(QDir(bench.folder.path()).entryList({"*.fayline"}).isEmpty());
    }

    void closingWithoutChangesDoesNotAsk() {
        Bench bench;
        QVERIFY(bench.window.close());
    }

    void unsavedWorkIsCopiedWithinSecondsAndOfferedNextTime() {
        QVERIFY(WindowTimes().copyAfter_ms <= 2000);
        WindowTimes times = handNeverRests();
        times.copyAfter_ms = 1;
        Bench bench(marram, times);
        bench.type(wl12, xColumn, "1-8-3");
        SOON_VERIFY(!QDir(bench.folder.path()).entryList({"*.fayline"}).isEmpty());
        // The program ends here without a word: what it wrote stays, its lock is nobody's any more.
        const QTemporaryDir after;
        for (const QString& name : QDir(bench.folder.path()).entryList(QDir::Files)) {
            if (!name.endsWith(".lock")) QVERIFY(QFile::copy(bench.folder.filePath(name), after.filePath(name)));
        }
        MainWindow next(after.path());
        Answering open(QMessageBox::NoButton);  // the first button opens the copy
        next.offerLeftBehind();
        QVERIFY2(open.text.contains("Marram"), qPrintable(open.text));
        QVERIFY(next.document().boat().pieces == bench.document().boat().pieces);
        QVERIFY(next.isWindowModified());
        QVERIFY(next.windowTitle().contains("marram.fayline"));
        next.document().undoStack().setClean();
    }

    void workWithoutACopySaysSoUntilThereIsOne() {
        WindowTimes times = handNeverRests();
        times.copyAfter_ms = 1;
        Bench bench(marram, times);
        auto* band = bench.find<QLabel>("noCopy");
        QVERIFY(!band->isVisible());
        {
            const test::FullDisk full;
            bench.type(wl12, xColumn, "1-8-3");
            SOON_VERIFY(band->isVisible());
            QVERIFY2(band->text().contains("no copy"), qPrintable(band->text()));
        }
        SOON_VERIFY(!band->isVisible());
        QVERIFY(!QDir(bench.folder.path()).entryList({"*.fayline"}).isEmpty());
    }

    void fileChangedBySomeoneElseIsNotOverwrittenUnasked() {
        Bench bench;
        const QString path = bench.folder.filePath("shared.fayline");
        bench.document().save(path);
        const QByteArray ours = read(path);
        bench.type(wl12, xColumn, "1-8-3");
        // The same size, as when one figure of an offset was put right.
        QByteArray theirs = ours;
        theirs.replace("Marram", "Sedges");
        QCOMPARE(theirs.size(), ours.size());
        QVERIFY(write(path, theirs));
        {
            Answering cancel(QMessageBox::Cancel);
            bench.action("save")->trigger();
            QVERIFY2(cancel.text.contains(path) && cancel.text.contains("Someone else"), qPrintable(cancel.text));
        }
        QCOMPARE(read(path), theirs);
        QVERIFY(bench.window.isWindowModified());
        {
            Answering anyway("Save &over theirs");
            bench.action("save")->trigger();
            QVERIFY(!anyway.text.isEmpty());
        }
        QVERIFY(!bench.window.isWindowModified());
        QVERIFY(io::loadBoat(path.toStdString()) == bench.document().boat());
        // What was written here is not someone else's.
        bench.dragPoint(wl12, {20, 10});
        Answering none(QMessageBox::Cancel);
        bench.action("save")->trigger();
        QVERIFY2(none.text.isEmpty(), qPrintable(none.text));
        QVERIFY(!bench.window.isWindowModified());
    }

    void fileThatWasTakenAwayIsWrittenAgain() {
        Bench bench;
        const QString path = bench.folder.filePath("gone.fayline");
        bench.document().save(path);
        bench.type(wl12, xColumn, "1-8-3");
        QVERIFY(QFile::remove(path));
        Answering none(QMessageBox::Cancel);
        bench.action("save")->trigger();
        QVERIFY2(none.text.isEmpty(), qPrintable(none.text));
        QVERIFY(io::loadBoat(path.toStdString()) == bench.document().boat());
    }

    void importedOffsetsAreANewPieceInOneStep() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        QVERIFY(bench.window.importOffsets(QStringLiteral(FAYLINE_PUBLISHED "/marram_stem.csv")));
        QVERIFY(bench.document().boat() == before);
        takeOffsets(bench);
        QCOMPARE(bench.document().boat().pieces.size(), before.pieces.size() + 1);
        QCOMPARE(bench.piece().name, std::string("marram_stem"));
        QCOMPARE(bench.piece().line.points.size(), size_t(12));
        QCOMPARE(bench.document().undoStack().count(), 1);
        QVERIFY(bench.settle());
        QVERIFY(bench.window.shown().plan && bench.window.shown().reason.isEmpty());
        // Once more: a name of its own, so that the two can be told apart.
        QVERIFY(bench.window.importOffsets(QStringLiteral(FAYLINE_PUBLISHED "/marram_stem.csv")));
        takeOffsets(bench);
        QCOMPARE(bench.piece().name, std::string("marram_stem 2"));
        bench.action("undo")->trigger();
        bench.action("undo")->trigger();
        QVERIFY(bench.document().boat() == before);
    }

    void offsetsThatAreNotTakenLeaveNoTrace() {
        Bench bench;
        const model::Boat before = bench.document().boat();
        const QString path = bench.folder.filePath("odd.csv");
        QVERIFY(write(path, QByteArray("A,2-13-0,x\n").repeated(400)));
        QVERIFY(bench.window.importOffsets(path));
        auto* asked = bench.find<QDialog>("offsetsDialog");
        QVERIFY(asked && !asked->findChild<QPushButton*>("take")->isEnabled());
        QTest::keyClick(asked, Qt::Key_Escape);
        QTest::keyClick(bench.find<QDialog>("newPieceDialog"), Qt::Key_Escape);
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
        QVERIFY(!bench.find<QDialog>("newPieceDialog"));
        QVERIFY(bench.document().boat() == before);
        QCOMPARE(bench.document().undoStack().count(), 0);
    }

    void aFileWithoutOffsetsIsToldAbout() {
        Bench bench;
        const QString path = bench.folder.filePath("odd.csv");
        QVERIFY(write(path, "# nothing yet\n"));
        for (const QString& file : {path, bench.folder.filePath("none.csv")}) {
            Answering told(QMessageBox::Ok);
            QVERIFY(!bench.window.importOffsets(file));
            QVERIFY2(told.text.contains(file), qPrintable(told.text));
            QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
            QVERIFY(!bench.find<QDialog>("newPieceDialog"));
        }
    }

    void papersOfAllPiecesAreSavedInAFolder() {
        Bench bench;
        const QString folder = bench.folder.filePath("papers");
        QVERIFY(bench.window.savePapers(folder));
        const QStringList files = QDir(folder).entryList(QDir::Files);
        // Table, stick, closing order, line and form, batch cards and run sheet of each piece; none of the boat's is
        // propped. The stem alone lists boards and so has a cut list.
        QCOMPARE(files.size(), qsizetype(7 * bench.document().boat().pieces.size() + 1));
        for (const QString& file : files) QVERIFY2(read(folder + "/" + file).startsWith("%PDF"), qPrintable(file));
        QVERIFY(!bench.window.isWindowModified());
    }

    void papersThatCannotBeSavedAreToldAboutAndNoneIsWritten() {
        Bench bench;
        model::Piece doubled = bench.piece();
        doubled.line.points[4] = doubled.line.points[3];
        bench.document().changePiece(0, {"Double", {}, doubled});
        const QString folder = bench.folder.filePath("papers");
        {
            Answering told(QMessageBox::Ok);
            QVERIFY(!bench.window.savePapers(folder));
            QVERIFY2(told.text.contains("pieces[0].line.points"), qPrintable(told.text));
        }
        QVERIFY(!QDir(folder).exists());
        bench.action("undo")->trigger();
        QVERIFY(write(folder, "a file where the folder should be"));
        Answering told(QMessageBox::Ok);
        QVERIFY(!bench.window.savePapers(folder));
        QVERIFY2(told.text.contains(folder), qPrintable(told.text));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, FilesTest>(argc, argv);
}
#include "files_test.moc"
