// The document: every change can be undone, drags are one step, files come and go whole.
#include "app/window/document.hpp"

#include <QDir>
#include <QFile>
#include <QProcess>
#include <QRandomGenerator>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>
#include <set>

#include "app/window/recovery.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"
#include "core/units/input_error.hpp"
#include "tests/app/full_disk.hpp"
#include "tests/app/patience.hpp"

using namespace fayline;
using namespace fayline::app;
using fayline::test::FullDisk;

namespace {

model::Piece movedTo(const model::Piece& piece, int point, double x_m) {
    model::Piece after = piece;
    after.line.points[size_t(point)].x_m = x_m;
    return after;
}

const model::Piece& first(const Document& document) {
    return document.boat().pieces.front();
}

bool write(const QString& path, const QByteArray& text) {
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text) == text.size();
}

QByteArray read(const QString& path) {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
}

// What stays behind of a lock when its holder is killed: number of the process, program, machine.
QByteArray lockOfTheDead() {
    QProcess gone;
    gone.start("true", QStringList());
    gone.waitForStarted();
    const qint64 number = gone.processId();
    gone.waitForFinished();
    return QByteArray::number(number) + "\nfayline\n" + QSysInfo::machineHostName().toUtf8() + "\n";
}

}  // namespace

class DocumentTest : public QObject {
    Q_OBJECT

private slots:
    void startsWithOnePieceToDragAndNothingToSave() {
        const Document document;
        QCOMPARE(document.boat().pieces.size(), size_t(1));
        QVERIFY(first(document).line.points.size() >= 3);
        QVERIFY(!document.hasUnsavedChanges());
        QCOMPARE(document.currentPiece(), 0);
    }

    void piecesAddedHaveIdsOfTheirOwn() {
        Document document;
        const std::string id = first(document).id;
        QVERIFY(!id.empty());
        document.addPiece(first(document));  // as pasted
        document.addPiece(model::newPiece("Rail"));
        std::set<std::string> ids;
        for (const model::Piece& piece : document.boat().pieces) ids.insert(piece.id);
        QCOMPARE(ids.size(), size_t(3));
        QVERIFY(!ids.contains(""));
        QCOMPARE(document.pieceWithId(id), 0);
        const quint64 number = document.boatNumber();
        document.startNew();
        QVERIFY(document.boatNumber() != number);
        QCOMPARE(document.pieceWithId(id), -1);
    }

    void changesOfOneDragAreOneStepNamedForIt() {
        Document document;
        const model::Piece before = first(document);
        for (int i = 1; i <= 20; ++i) {
            document.changePiece(0, {"Move WL 12", "drag point 1", movedTo(before, 1, 1 + 0.01 * i)});
        }
        QCOMPARE(document.undoStack().count(), 1);
        QCOMPARE(document.undoStack().undoText(), QString("Move WL 12"));
        QCOMPARE(first(document).line.points[1].x_m, 1.2);
        document.undoStack().undo();
        QVERIFY(first(document) == before);
        QVERIFY(!document.hasUnsavedChanges());
    }

    void boardsOfTheBoatChangeWithThePieceInOneStep() {
        Document document;
        const model::Piece before = first(document);
        model::Piece after = before;
        after.stock.kerf_m = 0.003;
        document.changePiece(0, {"Share the boards", {}, after, std::vector<model::Board>{{.name = "A"}}});
        QCOMPARE(document.undoStack().count(), 1);
        QCOMPARE(document.boat().boards.size(), size_t(1));
        QCOMPARE(first(document).stock.kerf_m, 0.003);
        document.changePiece(0, {"Change nothing", {}, after, document.boat().boards});
        QCOMPARE(document.undoStack().count(), 1);
        document.undoStack().undo();
        QVERIFY(document.boat().boards.empty());
        QVERIFY(first(document) == before);
    }

    void twoDragsOfOnePointAreTwoSteps() {
        Document document;
        const model::Piece before = first(document);
        document.changePiece(0, {"Move WL 12", "drag point 1", movedTo(before, 1, 1.1)});
        document.endStep();
        document.changePiece(0, {"Move WL 12", "drag point 1", movedTo(before, 1, 1.2)});
        QCOMPARE(document.undoStack().count(), 2);
        document.undoStack().undo();
        QCOMPARE(first(document).line.points[1].x_m, 1.1);
    }

    void changesOfDifferentThingsDoNotMerge() {
        Document document;
        const model::Piece before = first(document);
        document.changePiece(0, {"Move A", "drag point 0", movedTo(before, 0, 0.1)});
        document.changePiece(0, {"Move B", "drag point 1", movedTo(first(document), 1, 1.1)});
        document.changePiece(0, {"Type C", {}, movedTo(first(document), 2, 2.1)});
        document.changePiece(0, {"Type C", {}, movedTo(first(document), 2, 2.2)});
        QCOMPARE(document.undoStack().count(), 4);
    }

    void dragThatEndsWhereItBeganLeavesNoStep() {
        Document document;
        const model::Piece before = first(document);
        document.changePiece(0, {"Move WL 12", "drag point 1", movedTo(before, 1, 9)});
        document.changePiece(0, {"Move WL 12", "drag point 1", movedTo(before, 1, 8)});
        QVERIFY(document.hasUnsavedChanges());
        document.changePiece(0, {"Move WL 12", "drag point 1", before});
        QCOMPARE(document.undoStack().count(), 0);
        QVERIFY(!document.hasUnsavedChanges());
        QVERIFY(first(document) == before);
    }

    void changeThatChangesNothingIsNoStep() {
        Document document;
        document.changePiece(0, {"Type", {}, first(document)});
        document.changeBoat("Units", {}, document.boat());
        document.movePiece(0, 0);
        document.changePiece(7, {"Type", {}, first(document)});
        document.removePiece(-1);
        QCOMPARE(document.undoStack().count(), 0);
    }

    void undoToTheStartAndRedoToTheEndGiveEqualBoats() {
        Document document;
        const model::Boat start = document.boat();
        QRandomGenerator dice(7);
        std::vector<model::Boat> after{start};
        while (document.undoStack().count() < 150) {
            const int steps = document.undoStack().count();
            const int pieces = math::countOf(document.boat().pieces);
            const int piece = pieces ? dice.bounded(pieces) : -1;
            switch (dice.bounded(6)) {
                case 0:
                    document.addPiece(model::newPiece("Piece " + std::to_string(steps)));
                    break;
                case 1:
                    document.removePiece(piece);
                    break;
                case 2:
                    document.movePiece(piece, pieces ? dice.bounded(pieces) : -1);
                    break;
                case 3: {
                    model::Boat changed = document.boat();
                    changed.name = "Boat " + std::to_string(steps);
                    document.changeBoat("Name", {}, changed);
                    break;
                }
                default:
                    if (piece < 0) break;
                    document.changePiece(piece,
                                         {"Move", dice.bounded(2) ? "drag" : "",
                                          movedTo(document.boat().pieces[size_t(piece)], 1, dice.generateDouble())});
            }
            if (document.undoStack().count() == steps) {
                after.back() = document.boat();  // merged into the step before, or nothing to do
            } else {
                after.push_back(document.boat());
            }
        }
        const model::Boat end = document.boat();
        for (int i = document.undoStack().count(); i >= 0; --i) {
            document.undoStack().setIndex(i);
            QVERIFY(document.boat() == after[size_t(i)]);
            QVERIFY(document.currentPiece() < math::countOf(document.boat().pieces));
        }
        QVERIFY(document.boat() == start);
        QVERIFY(!document.hasUnsavedChanges());
        document.undoStack().setIndex(document.undoStack().count());
        QVERIFY(document.boat() == end);
    }

    void undoShowsThePieceThatChanges() {
        Document document;
        document.addPiece(model::newPiece("Beam"));
        QCOMPARE(document.currentPiece(), 1);
        document.changePiece(1, {"Move", {}, movedTo(document.boat().pieces[1], 1, 0.7)});
        document.setCurrentPiece(0);
        document.undoStack().undo();
        QCOMPARE(document.currentPiece(), 1);
        document.undoStack().undo();
        QCOMPARE(document.boat().pieces.size(), size_t(1));
        QCOMPARE(document.currentPiece(), 0);
    }

    void unitsChangeKeepsThePieceAndThePlacePointedAt() {
        Document document;
        document.setHoveredPlace(0.4);
        QSignalSpy changed(&document, &Document::currentPieceChanged);
        model::Boat after = document.boat();
        after.display.lengths = units::LengthNotation::inches;
        document.changeBoat("Change units", {}, after);
        QCOMPARE(changed.count(), 0);
        QCOMPARE(document.hoveredPlace(), std::optional<double>(0.4));
    }

    void savedAndReopenedIsEqual() {
        const QTemporaryDir folder;
        const QString path = folder.filePath("sloop.fayline");
        Document document;
        document.addPiece(model::newPiece("Beam"));
        document.changePiece(1, {"Move", {}, movedTo(document.boat().pieces[1], 1, 0.7)});
        document.save(path);
        QVERIFY(!document.hasUnsavedChanges());
        QCOMPARE(document.fileName(), path);
        Document again;
        again.open(path);
        QVERIFY(again.boat().pieces == document.boat().pieces);
        QCOMPARE(again.undoStack().count(), 0);
        document.undoStack().undo();
        QVERIFY(document.hasUnsavedChanges());
        document.undoStack().redo();
        QVERIFY(!document.hasUnsavedChanges());
    }

    void changeAfterSavingIsAStepOfItsOwnEvenInOneDrag() {
        const QTemporaryDir folder;
        Document document;
        const model::Piece before = first(document);
        document.changePiece(0, {"Move", "drag", movedTo(before, 1, 0.7)});
        document.save(folder.filePath("a.fayline"));
        document.changePiece(0, {"Move", "drag", movedTo(before, 1, 0.8)});
        QCOMPARE(document.undoStack().count(), 2);
        QVERIFY(document.hasUnsavedChanges());
    }

    void fileThatCannotBeOpenedLeavesTheBoatAsItIs_data() {
        QTest::addColumn<QByteArray>("text");
        QTest::newRow("no JSON") << QByteArray("2-3-4");
        QTest::newRow("cut off") << QByteArray("{\"fayline\": 1, \"pieces\": [");
        QTest::newRow("newer") << QByteArray("{\"fayline\": 2, \"pieces\": []}");
        QTest::newRow("wrong type") << QByteArray("{\"fayline\": 1, \"pieces\": 3}");
        QTest::newRow("piece without name") << QByteArray("{\"fayline\": 1, \"pieces\": [{}]}");
        QTest::newRow("empty") << QByteArray("");
    }
    void fileThatCannotBeOpenedLeavesTheBoatAsItIs() {
        QFETCH(QByteArray, text);
        const QTemporaryDir folder;
        const QString path = folder.filePath("bad.fayline");
        QVERIFY(write(path, text));
        Document document;
        document.changePiece(0, {"Move", {}, movedTo(first(document), 1, 0.7)});
        const model::Boat before = document.boat();
        QSignalSpy replaced(&document, &Document::boatReplaced);
        QVERIFY_EXCEPTION_THROWN(document.open(path), units::InputError);
        QVERIFY_EXCEPTION_THROWN(document.open(folder.filePath("none.fayline")), units::InputError);
        QVERIFY_EXCEPTION_THROWN(document.open(folder.path()), units::InputError);
        QVERIFY(document.boat() == before);
        QCOMPARE(document.undoStack().count(), 1);
        QVERIFY(document.fileName().isEmpty());
        QCOMPARE(replaced.count(), 0);
    }

    void saveThatFailsLeavesFileAndDocumentAsTheyAre() {
        const QTemporaryDir folder;
        Document document;
        document.changePiece(0, {"Move", {}, movedTo(first(document), 1, 0.7)});
        QVERIFY_EXCEPTION_THROWN(document.save(folder.filePath("no/such/folder/a.fayline")), units::InputError);
        QVERIFY(document.hasUnsavedChanges());
        QVERIFY(document.fileName().isEmpty());
        QVERIFY(QDir(folder.path()).isEmpty());
    }

    void unsavedWorkIsFoundAfterACrashAndNotBefore() {
        const QTemporaryDir folder;
        Document document;
        document.changePiece(0, {"Move", {}, movedTo(first(document), 1, 0.7)});
        {
            Recovery running(folder.path());
            QVERIFY(running.leftBehind().empty());
            running.keep(document.boat(), "/boats/sloop.fayline");
            running.waitForWriting();
            // Another window of a program that runs does not take it for left behind.
            QVERIFY(Recovery(folder.path()).leftBehind().empty());
        }  // ends without drop(), as a crash does
        Recovery next(folder.path());
        const std::vector<LeftBehind> found = next.leftBehind();
        QCOMPARE(found.size(), size_t(1));
        QCOMPARE(found[0].fileName, QString("/boats/sloop.fayline"));
        QVERIFY(next.read(found[0]).pieces == document.boat().pieces);

        Document again;
        again.recover(next.read(found[0]), found[0].fileName);
        QVERIFY(again.hasUnsavedChanges());
        QVERIFY(again.boat().pieces == document.boat().pieces);
        next.forget(found[0]);
        QVERIFY(next.leftBehind().empty());
        QVERIFY(QDir(folder.path()).entryList(QDir::Files).isEmpty());
    }

    void lockOfAKilledProgramDoesNotHideItsCopy() {
        const QTemporaryDir folder;
        io::saveBoat(Document().boat(), folder.filePath("lost.fayline").toStdString());
        QVERIFY(write(folder.filePath("lost.lock"), lockOfTheDead()));
        QCOMPARE(Recovery(folder.path()).leftBehind().size(), size_t(1));
    }

    void lockThatCannotBeTriedOnAFullDiskHidesNoCopy() {
        const QTemporaryDir folder;
        io::saveBoat(Document().boat(), folder.filePath("lost.fayline").toStdString());
        QVERIFY(write(folder.filePath("lost.lock"), lockOfTheDead()));
        const FullDisk full;
        QCOMPARE(Recovery(folder.path()).leftBehind().size(), size_t(1));
    }

    void copyTakenOverStaysUntilItsSuccessorIsOnTheDisk() {
        const QTemporaryDir folder;
        Document document;
        io::saveBoat(document.boat(), folder.filePath("lost.fayline").toStdString());
        Recovery recovery(folder.path());
        QSignalSpy failed(&recovery, &Recovery::failed);
        const LeftBehind copy = recovery.leftBehind().at(0);
        {
            const FullDisk full;
            recovery.takeOver(copy, document.boat());
        }
        QCOMPARE(failed.size(), 1);
        QVERIFY(recovery.read(copy).pieces == document.boat().pieces);
        // With room again the next copy is kept, and the one left behind goes.
        QSignalSpy kept(&recovery, &Recovery::kept);
        recovery.keep(document.boat(), {});
        SOON_COMPARE(kept.size(), 1);
        QCOMPARE(QDir(folder.path()).entryList({"*.fayline"}, QDir::Files).size(), 1);
        QVERIFY(!QFile::exists(folder.filePath("lost.fayline")));
    }

    void savedWorkLeavesNoCopy() {
        const QTemporaryDir folder;
        {
            Recovery running(folder.path());
            running.keep(Document().boat(), {});
            running.drop();
        }
        QVERIFY(Recovery(folder.path()).leftBehind().empty());
        QVERIFY(QDir(folder.path()).entryList({"*.fayline"}, QDir::Files).isEmpty());
    }

    void copyIsNeverHalfWritten() {
        const QTemporaryDir folder;
        Recovery running(folder.path());
        Document document;
        for (int i = 0; i < 20; ++i) {
            document.changePiece(0, {"Move", {}, movedTo(first(document), 1, 0.01 * i)});
            running.keep(document.boat(), {});
        }
        running.waitForWriting();
        const QStringList copies = QDir(folder.path()).entryList({"*.fayline"}, QDir::Files);
        QCOMPARE(copies.size(), 1);
        QVERIFY(io::readBoat(read(folder.filePath(copies[0])).toStdString()).pieces == document.boat().pieces);
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QCoreApplication, DocumentTest>(argc, argv);
}
#include "document_test.moc"
