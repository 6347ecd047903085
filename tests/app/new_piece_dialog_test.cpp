// A new piece is asked for by its name and as much as its kind needs.
#include "app/window/new_piece_dialog.hpp"

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>
#include <cmath>

#include "app/look/theme.hpp"
#include "app/panels/offsets_dialog.hpp"
#include "core/model/new_piece.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

model::Boat boat() {
    model::Boat one;
    one.pieces = {model::newPiece("Stem")};
    one.pieces[0].line.points[2].y_m = 0.4;
    one.pieces[0].stack.strips[0].count = 5;
    return one;
}

struct Asked {
    NewPieceDialog dialog;

    explicit Asked(NewPieceDialog::Kind kind, bool boatToo = false)
        : dialog(boatToo ? model::Boat{} : boat(), "Piece 2", boatToo) {
        dialog.show();
        find<QComboBox>("pieceKind")->setCurrentIndex(kind);
    }
    template <class Widget>
    Widget* find(const char* object) {
        return dialog.findChild<Widget*>(object);
    }
    void type(const char* field, const char* text) {
        auto* edit = find<QLineEdit>(field);
        edit->selectAll();
        QTest::keyClicks(edit, text);
    }
    QString words(const char* label) { return find<QLabel>(label)->text(); }
    bool mayAdd() { return find<QPushButton>("addNew")->isEnabled(); }
};

}  // namespace

class NewPieceDialogTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void ABeamComesFromLengthAndRound() {
        Asked asked(NewPieceDialog::beam);
        asked.type("beamLength", "2 m");
        asked.type("beamRound", "5 %");
        QCOMPARE(asked.words("comesOut"), QString("Rises 100 mm in the middle: an arc of radius 5.05 m, 2.01 m long."));
        const model::LineInput& line = asked.dialog.piece().line;
        QCOMPARE(line.describes, model::Describes::outerFace);
        QCOMPARE(line.points[line.points.size() / 2].y_m, 0.1);
        asked.type("beamRound", "4 in");
        QCOMPARE(asked.words("comesOut").left(12), QString("Rises 102 mm"));
        QVERIFY(asked.mayAdd());
    }

    void AnArcIsToldByRiseOrRadius() {
        Asked asked(NewPieceDialog::arc);
        asked.type("arcChord", "8 m");
        asked.type("arcValue", "2 m");
        QCOMPARE(asked.words("comesOut").left(15), QString("Radius 5.00 m, "));
        auto* by = asked.find<QComboBox>("arcBy");
        by->setCurrentIndex(1);
        emit by->activated(1);
        QCOMPARE(asked.find<QLineEdit>("arcValue")->text(), QString("5000 mm"));
        QCOMPARE(asked.words("comesOut").left(12), QString("Rise 2.00 m,"));
        asked.type("arcValue", "17 m");
        QVERIFY(std::abs(model::arcOfRadius(8, 17).rise_m - asked.dialog.piece().line.points[4].y_m) < 1e-12);
    }

    void WhatCannotBeIsSaidAtItsField_data() {
        QTest::addColumn<int>("kind");
        QTest::addColumn<QByteArray>("field");
        QTest::addColumn<QByteArray>("typed");
        QTest::newRow("rise over half the chord")
            << int(NewPieceDialog::arc) << QByteArray("arcValue") << QByteArray("2 m");
        QTest::newRow("no chord") << int(NewPieceDialog::arc) << QByteArray("arcChord") << QByteArray("0");
        QTest::newRow("no length") << int(NewPieceDialog::beam) << QByteArray("beamLength") << QByteArray("0 mm");
        QTest::newRow("nonsense") << int(NewPieceDialog::beam) << QByteArray("beamLength") << QByteArray("two yards");
        QTest::newRow("nothing") << int(NewPieceDialog::beam) << QByteArray("beamRound") << QByteArray(" ");
        QTest::newRow("percent of what") << int(NewPieceDialog::beam) << QByteArray("beamRound") << QByteArray("x %");
        QTest::newRow("too round") << int(NewPieceDialog::beam) << QByteArray("beamRound") << QByteArray("60 %");
        QTest::newRow("nothing left") << int(NewPieceDialog::copy) << QByteArray("scale") << QByteArray("0");
    }
    void WhatCannotBeIsSaidAtItsField() {
        QFETCH(int, kind);
        QFETCH(QByteArray, field);
        QFETCH(QByteArray, typed);
        Asked asked{NewPieceDialog::Kind(kind)};
        QVERIFY(asked.mayAdd());
        asked.type(field.constData(), typed.constData());
        QVERIFY(!asked.mayAdd());
        auto* reason = asked.find<QLabel>((field + "Reason").constData());
        QVERIFY(reason->isVisible());
        QVERIFY(reason->height() >= reason->heightForWidth(reason->width()));
        QVERIFY2(reason->text().contains("; "), qPrintable(reason->text()));  // what is wrong; what would be accepted
        QTest::keyClick(&asked.dialog, Qt::Key_Return);
        QVERIFY(asked.dialog.isVisible());
        // Another kind is not held up by it.
        asked.find<QComboBox>("pieceKind")->setCurrentIndex(NewPieceDialog::offsets);
        QVERIFY(asked.mayAdd());
    }

    void ACopyIsMirroredAndScaledWithAllThatBelongsToIt() {
        Asked asked(NewPieceDialog::copy);
        asked.find<QCheckBox>("endForEnd")->click();
        asked.type("scale", "50");
        const model::Piece& copy = asked.dialog.piece();
        QCOMPARE(copy.name, std::string("Piece 2"));
        QCOMPARE(copy.stack.strips[0].count, 5);
        QCOMPARE(copy.line.stripsOn, model::Side::right);
        QCOMPARE(copy.line.points[2].y_m, 0.2);
        QVERIFY(asked.words("comesOut").startsWith("3 points, "));
    }

    void OffsetsAreTypedLaterOrTakenNow() {
        Asked asked(NewPieceDialog::offsets);
        QVERIFY(asked.dialog.isToBeTyped());
        QVERIFY(model::isUntouchedSample(asked.dialog.piece().line.points));
        QApplication::clipboard()->setText("A\t0\t0\nB\t1000\t200\nC\t2000\t0\n");
        asked.find<QPushButton>("pasteNew")->click();
        auto* dialog = asked.find<OffsetsDialog>("offsetsDialog");
        QVERIFY(dialog);
        dialog->findChild<QPushButton*>("take")->click();
        QVERIFY(!asked.dialog.isToBeTyped());
        QCOMPARE(asked.words("comesOut"), QString("3 points, 2.04 m long."));
        QCOMPARE(asked.dialog.piece().line.points[1].label, std::string("B"));
        QApplication::clipboard()->setText(" ");
        asked.find<QPushButton>("pasteNew")->click();
        QVERIFY(asked.find<QLabel>("offsetsReason")->isVisible());
    }

    void ANameIsAskedForPieceAndBoat() {
        Asked piece(NewPieceDialog::offsets);
        QVERIFY(!piece.find<QLineEdit>("boatName"));
        piece.type("pieceName", " ");
        QVERIFY(!piece.mayAdd());
        piece.type("pieceName", "Knee");
        QVERIFY(piece.mayAdd());
        QCOMPARE(piece.dialog.piece().name, std::string("Knee"));
        Asked both(NewPieceDialog::beam, true);
        QCOMPARE(both.find<QComboBox>("pieceKind")->count(), 3);  // there is nothing to copy
        QTest::keyClicks(both.find<QLineEdit>("boatName"), "Marram");
        QCOMPARE(both.dialog.boatName(), QString("Marram"));
    }

    // The program takes what comes out: each kind is a piece that can be planned, with the radius that was said.
    void WhatComesOutCanBePlanned() {
        for (const auto kind :
             {NewPieceDialog::offsets, NewPieceDialog::beam, NewPieceDialog::arc, NewPieceDialog::copy}) {
            Asked asked(kind);
            const plan::Plan plan = plan::makePlan(asked.dialog.piece(), plan::shopOf(boat()));
            if (kind == NewPieceDialog::beam || kind == NewPieceDialog::arc) {
                const double radius_m = kind == NewPieceDialog::beam ? model::arcOfRise(2.4, 0.096).radius_m()
                                                                     : model::arcOfRise(1.2, 0.15).radius_m();
                QVERIFY(plan.line.samples.size() > 10);
                for (const line::Place& place : plan.line.samples)
                    QVERIFY2(std::abs(std::abs(place.curvature_per_m) * radius_m - 1) < 0.001,
                             qPrintable(QString::number(place.curvature_per_m * radius_m)));
            }
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, NewPieceDialogTest>(argc, argv);
}
#include "new_piece_dialog_test.moc"
