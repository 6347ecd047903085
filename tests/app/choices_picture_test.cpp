// The picture of stacks that could be glued: what it draws, what it tells, what a click chooses, how that is taken.
#include "app/panels/choices_picture.hpp"

#include <QComboBox>
#include <QLabel>
#include <QPushButton>
#include <QSignalSpy>
#include <QTest>
#include <QUndoStack>
#include <atomic>
#include <set>

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
        panel.findChild<QToolButton*>("choicesHead")->click();
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
        panel.findChild<QToolButton*>("choicesHead")->click();
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        const plan::Choices& choices = *shown.plan->choices;
        QVERIFY(choices.namedIndex >= 0);
        auto* words = panel.findChild<QLabel*>("choiceNamed");
        const plan::Message& why = choices.all[std::size_t(choices.namedIndex)].named;
        QCOMPARE(words->text(), QString::fromStdString(plan::writeText(why, shown.display)));
    }

    void AClickChoosesAndChangesNothingTakingItIsOneStep() {
        Document document;
        document.open(QStringLiteral(FAYLINE_SAMPLES "/marram.fayline"));
        const model::Stack asItWas = document.boat().pieces[0].stack;
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
        Shown shown = studied();
        panel.show(shown);
        open(&panel);
        QObject::connect(&panel, &Panel::changeAsked, &document,
                         [&](const Change& change) { document.changePiece(0, change); });
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        auto* take = panel.findChild<QPushButton*>("takeChoice");
        const int mark = another(*shown.plan->choices);
        QVERIFY(mark >= 0);
        const QPoint at = picture->placeOf(mark).toPoint();
        QSignalSpy hovered(picture, &ChoicesPicture::hovered);
        QTest::mouseMove(picture, at);
        SOON_VERIFY(!hovered.isEmpty());
        const int told = hovered.last().at(0).toInt();
        QVERIFY(told >= 0);
        QTest::mouseClick(picture, Qt::LeftButton, {}, at);
        QCOMPARE(picture->chosen(), told);
        QVERIFY(picture->accessibleDescription().startsWith("Chosen"));
        QVERIFY(document.boat().pieces[0].stack == asItWas);
        QVERIFY(!document.undoStack().canUndo());
        QVERIFY(take->isEnabled());
        take->click();
        const plan::Choice& taken = shown.plan->choices->all[std::size_t(told)];
        QVERIFY(document.boat().pieces[0].stack == plan::adopt(asItWas, taken));
        QVERIFY(!(document.boat().pieces[0].stack == asItWas));
        QVERIFY(document.undoStack().undoText().startsWith("Choose"));
        // Planned anew, it is today's, and there is nothing to take.
        shown.piece = document.boat().pieces[0];
        planAnew(shown);
        deepenShown(shown);
        panel.show(shown);
        QVERIFY(shown.plan->choices->all[std::size_t(picture->chosen())].asItIs);
        QVERIFY(!take->isEnabled());
        document.undoStack().undo();
        QVERIFY(document.boat().pieces[0].stack == asItWas);
        QVERIFY(!document.undoStack().canUndo());
    }

    void ARowAndItsMarkAreChosenTogether() {
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
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
        for (int row = 0; row < table->model()->rowCount(); ++row) {
            QTest::mouseClick(table->viewport(), Qt::LeftButton, {},
                              (table->scrollTo(table->model()->index(row, 0)),
                               table->visualRect(table->model()->index(row, 0)).center()));
            QCOMPARE(picture->chosen(), paretoOptimal[std::size_t(row)]);
        }
        QTest::keyClick(table, Qt::Key_Up);
        QCOMPARE(picture->chosen(), paretoOptimal[paretoOptimal.size() - 2]);
        QTest::keyClick(table, Qt::Key_Return);
        QCOMPARE(asked.count(), 0);
        // A mark chooses its row, or none where another stack is better.
        for (std::size_t i = 0; i < all.size(); ++i) {
            emit picture->choiceAsked(static_cast<int>(i));
            QCOMPARE(picture->chosen(), static_cast<int>(i));
            const auto row = std::ranges::find(paretoOptimal, static_cast<int>(i));
            const std::vector<int> rows = table->chosenRows();
            if (row == paretoOptimal.end()) {
                QVERIFY(rows.empty());
            } else {
                QCOMPARE(rows, std::vector<int>{static_cast<int>(row - paretoOptimal.begin())});
            }
        }
        QCOMPARE(asked.count(), 0);
    }

    void WhatWouldChangeStandsBesideToday() {
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        const QAbstractItemModel* changes = panel.findChild<NotebookTable*>("choiceChanges")->model();
        const auto& all = shown.plan->choices->all;
        const auto today = std::ranges::find_if(all, &plan::Choice::asItIs);
        // A stack of thinner strips alone: less bend, more of them, longer work.
        const auto thinner = std::ranges::find_if(all, [&](const plan::Choice& choice) {
            return choice.possible && !choice.mixed && choice.thickness_m < 0.7 * today->thickness_m;
        });
        QVERIFY(thinner != all.end());
        emit picture->choiceAsked(static_cast<int>(thinner - all.begin()));
        const auto rowOf = [&](const QString& name) {
            for (int row = 0; row < changes->rowCount(); ++row)
                if (changes->index(row, 0).data().toString() == name) return row;
            return -1;
        };
        const auto said = [&](const QString& name) {
            return changes->index(rowOf(name), 2).data(Qt::AccessibleTextRole).toString();
        };
        QCOMPARE(changes->index(rowOf("Strips to handle"), 1).data().toString(), QString::number(today->count));
        QCOMPARE(changes->index(rowOf("Strips to handle"), 2).data().toString(), QString::number(thinner->count));
        QVERIFY(said("Bend, % of breaking").endsWith("better"));
        QVERIFY(said("Strips to handle").endsWith("worse"));
        QVERIFY(said("Springback at end").endsWith("better"));
        QVERIFY(said("Glue-up takes").endsWith("worse"));
        QVERIFY(said("Spare time").endsWith("worse"));
        QVERIFY(said("Glue").endsWith("worse"));
        QVERIFY(said("Strips to saw").endsWith("worse"));
        QVERIFY(said("Waste").endsWith("worse"));
        QVERIFY(rowOf("Spares") >= 0);
        for (int row = 0; row < changes->rowCount(); ++row)
            QVERIFY(!changes->index(row, 2).data(Qt::DecorationRole).value<QIcon>().isNull());
        // Today beside itself.
        emit picture->choiceAsked(static_cast<int>(today - all.begin()));
        for (int row = 0; row < changes->rowCount(); ++row)
            QVERIFY(changes->index(row, 2).data(Qt::AccessibleTextRole).toString().endsWith("alike"));
        QVERIFY(!panel.findChild<QPushButton*>("takeChoice")->isEnabled());
    }

    void WhatWillNotWorkCanBeReadButNotTaken() {
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        const auto& all = shown.plan->choices->all;
        const auto impossible = std::ranges::find(all, false, &plan::Choice::possible);
        QVERIFY(impossible != all.end());
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        emit picture->choiceAsked(static_cast<int>(impossible - all.begin()));
        QVERIFY(panel.findChild<QLabel*>("choiceChosen")->text().contains("will not work"));
        QVERIFY(!panel.findChild<QPushButton*>("takeChoice")->isEnabled());
    }

    void EveryRowIsNamedInFull() {
        const Shown shown = studied();
        const ChoiceRows made = choiceRows(*shown.plan->choices, shown.display);
        for (std::size_t row = 0; row < made.rows.size(); ++row) {
            const FigureCell& cell = made.rows[row].cells.front();
            const plan::Choice& choice = shown.plan->choices->all[std::size_t(made.indices[row])];
            const QString whole = QString(cell.text + ' ' + cell.under).replace('\n', ' ');
            QVERIFY2(whole.startsWith(choiceName(choice, shown.display)), qPrintable(whole));
            QVERIFY(cell.under.count('\n') < made.linesUnder);
        }
    }

    void TheKeyboardWalksTheMarksFromLeftToRight() {
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
        const Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        QSignalSpy asked(&panel, &Panel::changeAsked);
        picture->setFocus();
        const std::size_t count = shown.plan->choices->all.size();
        for (std::size_t i = 0; i < count; ++i) QTest::keyClick(picture, Qt::Key_Left);
        std::set<int> walked{picture->chosen()};
        double x = picture->placeOf(picture->chosen()).x();
        for (std::size_t i = 1; i < count; ++i) {
            QTest::keyClick(picture, Qt::Key_Right);
            QVERIFY(picture->placeOf(picture->chosen()).x() >= x);
            x = picture->placeOf(picture->chosen()).x();
            walked.insert(picture->chosen());
        }
        QCOMPARE(walked.size(), count);
        QCOMPARE(asked.count(), 0);
    }

    void WhatIsOutOfDateIsNotTakenOver() {
        StripsPanel panel;
        panel.findChild<QToolButton*>("choicesHead")->click();
        Shown shown = studied();
        panel.show(shown);
        open(&panel);
        auto* picture = panel.findChild<ChoicesPicture*>("choicesPicture");
        auto* take = panel.findChild<QPushButton*>("takeChoice");
        emit picture->choiceAsked(another(*shown.plan->choices));
        planAnew(shown);  // the plan without what takes longer
        panel.show(shown);
        QSignalSpy asked(&panel, &Panel::changeAsked);
        QVERIFY(panel.findChild<NotebookTable*>("choices")->model()->rowCount() > 0);
        QVERIFY(!take->isEnabled());
        QTest::mouseClick(take, Qt::LeftButton);
        QCOMPARE(asked.count(), 0);
        deepenShown(shown);
        panel.show(shown);
        QVERIFY(take->isEnabled());
        QTest::mouseClick(take, Qt::LeftButton);
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
            panel.findChild<QToolButton*>("choicesHead")->click();
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
