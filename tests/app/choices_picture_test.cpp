// The picture of stacks that could be glued: what it draws, what it tells, and that a click takes one over.
#include "app/panels/choices_picture.hpp"

#include <QComboBox>
#include <QLabel>
#include <QSignalSpy>
#include <QTest>
#include <QUndoStack>
#include <atomic>

#include "app/look/theme.hpp"
#include "app/panels/strips_panel.hpp"
#include "app/window/document.hpp"
#include "core/math/count.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/shown_panel.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

Shown studied(int piece = 0, int lengths = -1) {
    Shown shown = shownSample("marram.fayline", piece);
    if (lengths >= 0) {
        shown.display.lengths = static_cast<units::LengthNotation>(lengths);
        planAnew(shown);
    }
    deepenShown(shown);
    return shown;
}

// The first that can be, none beats and that is not there already.
int another(const plan::Choices& choices) {
    for (std::size_t i = 0; i < choices.all.size(); ++i) {
        if (choices.all[i].paretoOptimal && !choices.all[i].asItIs) return static_cast<int>(i);
    }
    return -1;
}

}  // namespace

class ChoicesPictureTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { applyGround(Ground::paper); }

    void EveryChoiceHasItsMarkInsideThePicture() {
        StripsPanel panel;
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        const auto& all = shown.plan->choices->all;
        QVERIFY(all.size() > 12);
        for (std::size_t i = 0; i < all.size(); ++i) {
            const QPointF at = picture->placeOf(static_cast<int>(i));
            QVERIFY2(QRectF(picture->rect()).adjusted(4, 4, -4, -4).contains(at), qPrintable(QString::number(i)));
        }
        // Fewer strips lie further left, less strain lower.
        auto* across = panel.findChild<QComboBox*>("choiceAcross");
        auto* up = panel.findChild<QComboBox*>("choiceUp");
        for (std::size_t i = 1; i < all.size(); ++i) {
            if (!all[i].possible || !all[0].possible) continue;
            const QPointF one = picture->placeOf(0);
            const QPointF other = picture->placeOf(static_cast<int>(i));
            QCOMPARE(one.x() < other.x(), all[0].count < all[i].count);
            QCOMPARE(one.y() > other.y(), all[0].shareOnForm < all[i].shareOnForm);
        }
        // Other counts, other places.
        const QPointF before = picture->placeOf(0);
        across->setCurrentIndex(static_cast<int>(ChoiceCount::glue));
        up->setCurrentIndex(static_cast<int>(ChoiceCount::endPull));
        QVERIFY(picture->placeOf(0) != before);
    }

    void TheNamedOneSaysWhy() {
        StripsPanel panel;
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        const plan::Choices& choices = *shown.plan->choices;
        QVERIFY(choices.namedIndex >= 0);
        auto* words = panel.findChild<QLabel*>("choiceNamed");
        const plan::Message& why = choices.all[std::size_t(choices.namedIndex)].named;
        QCOMPARE(words->text(), QString::fromStdString(plan::writeText(why, shown.display)));
    }

    void HoveringTellsAndAClickTakesItOverUndoneInOneStep() {
        Document document;
        document.open(QStringLiteral(FAYLINE_SAMPLES "/marram.fayline"));
        const model::Stack asItWas = document.boat().pieces[0].stack;
        StripsPanel panel;
        Shown shown = studied();
        panel.show(shown);
        open(&panel);
        QObject::connect(&panel, &Panel::changeAsked, &document,
                         [&](const Change& change) { document.changePiece(0, change); });
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        const int mark = another(*shown.plan->choices);
        QVERIFY(mark >= 0);
        const QPoint at = picture->placeOf(mark).toPoint();
        QSignalSpy hovered(picture, &ChoicesPicture::hovered);
        QTest::mouseMove(picture, at);
        SOON_VERIFY(!hovered.isEmpty());
        const int told = hovered.last().at(0).toInt();
        QVERIFY(told >= 0);
        QVERIFY(!picture->accessibleDescription().isEmpty());
        QTest::mouseClick(picture, Qt::LeftButton, {}, at);
        const plan::Choice& taken = shown.plan->choices->all[std::size_t(told)];
        QVERIFY(document.boat().pieces[0].stack == plan::adopt(asItWas, taken));
        QVERIFY(!(document.boat().pieces[0].stack == asItWas));
        QVERIFY(document.undoStack().undoText().startsWith("Choose"));
        document.undoStack().undo();
        QVERIFY(document.boat().pieces[0].stack == asItWas);
        QVERIFY(!document.undoStack().canUndo());
    }

    void EnterOnARowTakesItOverAndTheRowLightsItsMark() {
        StripsPanel panel;
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* table = panel.findChild<NotebookTable*>("choices");
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        const auto& all = shown.plan->choices->all;
        std::vector<int> paretoOptimal;
        for (std::size_t i = 0; i < all.size(); ++i)
            if (all[i].paretoOptimal) paretoOptimal.push_back(static_cast<int>(i));
        QCOMPARE(table->model()->rowCount(), math::countOf(paretoOptimal));
        QSignalSpy asked(&panel, &Panel::changeAsked);
        table->setFocus();
        int expected = 0;
        for (int row = 0; row < table->model()->rowCount(); ++row) {
            table->setCurrentIndex(table->model()->index(row, 0));
            QCOMPARE(picture->lit(), paretoOptimal[std::size_t(row)]);
            QTest::keyClick(table, Qt::Key_Return);
            const plan::Choice& choice = all[std::size_t(paretoOptimal[std::size_t(row)])];
            if (!(plan::adopt(shown.piece.stack, choice) == shown.piece.stack)) ++expected;
            QCOMPARE(asked.count(), expected);
        }
        QVERIFY(expected > 0);
    }

    void TheKeyboardWalksTheMarksFromLeftToRight() {
        StripsPanel panel;
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        picture->setFocus();
        QTest::keyClick(picture, Qt::Key_Right);
        double x = picture->placeOf(picture->lit()).x();
        for (std::size_t i = 1; i < shown.plan->choices->all.size(); ++i) {
            QTest::keyClick(picture, Qt::Key_Right);
            QVERIFY(picture->placeOf(picture->lit()).x() >= x);
            x = picture->placeOf(picture->lit()).x();
        }
    }

    void WhatIsOutOfDateIsNotTakenOver() {
        StripsPanel panel;
        Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        const QPoint at = picture->placeOf(another(*shown.plan->choices)).toPoint();
        planAnew(shown);  // the plan without what takes longer
        panel.show(shown);
        QSignalSpy asked(&panel, &Panel::changeAsked);
        QVERIFY(panel.findChild<NotebookTable*>("choices")->model()->rowCount() > 0);
        QTest::mouseClick(picture, Qt::LeftButton, {}, at);
        QCOMPARE(asked.count(), 0);
        deepenShown(shown);
        panel.show(shown);
        QTest::mouseClick(picture, Qt::LeftButton, {}, at);
        QCOMPARE(asked.count(), 1);
    }

    void NothingIsCutOff_data() {
        QTest::addColumn<int>("piece");
        QTest::addColumn<int>("lengths");
        const auto pieces = io::loadBoat(std::string(FAYLINE_SAMPLES "/marram.fayline")).pieces.size();
        for (int piece = 0; piece < static_cast<int>(pieces); ++piece)
            for (const int lengths : {0, 2}) QTest::addRow("piece %d, notation %d", piece, lengths) << piece << lengths;
    }
    void NothingIsCutOff() {
        QFETCH(int, piece);
        QFETCH(int, lengths);
        const Shown shown = studied(piece, lengths);
        for (const int width : {narrowest, widest}) {
            StripsPanel panel;
            panel.show(shown);
            QVERIFY(panel.findChild<NotebookTable*>("choices")->model()->rowCount() > 0);
            checkFits(&panel, width);
        }
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, ChoicesPictureTest>(argc, argv);
}
#include "choices_picture_test.moc"
