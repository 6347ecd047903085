// The line of questions: all nine, what each says, what can be read, clicked and reached by keys.
#include "app/panels/question_line.hpp"

#include <QSignalSpy>
#include <QTest>

#include "core/math/count.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/shown_piece.hpp"

using namespace fayline;
using namespace fayline::app;

class QuestionLineTest : public QObject {
    Q_OBJECT
private slots:
    void initTestCase() { qRegisterMetaType<plan::Question>("plan::Question"); }

    void AllNineAreThereInTheOrderOfTheJob() {
        QuestionLine line;
        line.show(shownSample());
        const auto buttons = line.findChildren<QuestionButton*>();
        QCOMPARE(buttons.size(), 9);
        for (int i = 0; i < 9; ++i) {
            QCOMPARE(static_cast<int>(buttons[i]->question()), i);
            QCOMPARE(buttons[i]->objectName(), QStringLiteral("question%1").arg(i));
        }
    }

    void EachSaysThePlansAnswerAndADashWhereThereIsNone() {
        QuestionLine line;
        const Shown shown = shownSample();
        line.show(shown);
        int notBuilt = 0;
        for (const plan::Answer& answer : shown.plan->answers) {
            const auto* button =
                line.findChild<QuestionButton*>(QStringLiteral("question%1").arg(static_cast<int>(answer.question)));
            const QString figures = answer.figures.empty()
                                        ? QString(QChar(0x2013))
                                        : QString::fromStdString(plan::writeWithin(answer.figures, shown.display));
            notBuilt += answer.figures.empty();
            QVERIFY2(button->accessibleName().contains(figures), qPrintable(button->accessibleName()));
            QCOMPARE(button->accessibleName().contains("Worst finding"), answer.worst.has_value());
        }
        QVERIFY(notBuilt > 0);
    }

    void APieceThatNeverHadAPlanSaysSoAndWhereToLook() {
        Shown shown = shownSample();
        shown.plan.reset();
        shown.piece.line.points[1] = shown.piece.line.points[0];
        QuestionLine line;
        line.show(shown);  // under way
        for (const auto* button : line.findChildren<QuestionButton*>())
            QVERIFY(!button->accessibleName().contains("no plan yet"));
        planAnew(shown);
        QVERIFY(!shown.plan && !shown.reason.isEmpty());
        line.resize(1280, line.sizeHint().height());
        line.show(shown);
        line.QWidget::show();
        QVERIFY(QTest::qWaitForWindowExposed(&line, fayline::test::patience_ms));
        for (const auto* button : line.findChildren<QuestionButton*>()) {
            const bool atFault = button->question() == plan::Question::line;
            QVERIFY2(button->accessibleName().contains(atFault ? "cannot be planned" : "no plan yet: see Line"),
                     qPrintable(button->accessibleName()));
            QCOMPARE(button->accessibleName().contains("Worst finding: Stop"), atFault);
            QVERIFY2(button->toolTip().contains(shown.reason), qPrintable(button->toolTip()));
            QVERIFY2(button->showsAll(), qPrintable(button->accessibleName()));
        }
        shown = shownSample();
        shown.plan.reset();
        shown.piece.stack.strips[0].species = "oka";
        planAnew(shown);
        line.show(shown);
        QVERIFY(line.findChild<QuestionButton*>("question0")->accessibleName().contains("no plan yet: see Strips"));
        QVERIFY(line.findChild<QuestionButton*>("question1")->accessibleName().contains("cannot be planned"));
        line.show(shownSample());
        for (const auto* button : line.findChildren<QuestionButton*>())
            QVERIFY(!button->accessibleName().contains("no plan yet"));
    }

    void NothingIsCutOffIn1280PixelsForAnySampleInAnyUnits() {
        for (const char* file : {"marram.fayline", "marram_misread.fayline", "minimal.fayline"}) {
            const model::Boat boat = io::loadBoat(std::string(FAYLINE_SAMPLES "/") + file);
            for (int piece = 0; piece < math::countOf(boat.pieces); ++piece) {
                for (const auto lengths : {units::LengthNotation::feetInchesEighths, units::LengthNotation::inches,
                                           units::LengthNotation::millimetres}) {
                    Shown shown = shownSample(file, piece);
                    shown.display.lengths = lengths;
                    planAnew(shown);
                    QuestionLine line;
                    line.show(shown);
                    line.resize(1280, line.sizeHint().height());
                    line.QWidget::show();
                    QVERIFY(QTest::qWaitForWindowExposed(&line, fayline::test::patience_ms));
                    QVERIFY2(line.minimumSizeHint().width() <= 1280, file);
                    for (const auto* button : line.findChildren<QuestionButton*>())
                        QVERIFY2(button->showsAll(), qPrintable(button->accessibleName()));
                }
            }
        }
    }

    void AClickAndTheSpaceBarChooseAQuestionAndArrowsWalkTheLine() {
        QuestionLine line;
        line.show(shownSample());
        line.QWidget::show();
        line.activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(&line, fayline::test::patience_ms));
        QSignalSpy chosen(&line, &QuestionLine::questionChosen);
        auto* strips = line.findChild<QuestionButton*>("question1");
        QTest::mouseClick(strips, Qt::LeftButton);
        QCOMPARE(chosen.count(), 1);
        QCOMPARE(chosen.takeFirst().at(0).value<plan::Question>(), plan::Question::strips);
        strips->setFocus();
        QTest::keyClick(strips, Qt::Key_Right);
        auto* form = line.findChild<QuestionButton*>("question2");
        QVERIFY(form->hasFocus());
        QTest::keyClick(form, Qt::Key_Space);
        QCOMPARE(chosen.takeFirst().at(0).value<plan::Question>(), plan::Question::form);
    }

    void ANarrowLineStandsInTwoRowsWithNothingCutOff() {
        QuestionLine line;
        line.show(shownSample("marram_in_place.fayline"));
        const int wide = line.sizeHint().width();
        QVERIFY(line.minimumSizeHint().width() < wide * 3 / 4);
        for (const int width : {wide + 100, wide, wide - 1, line.minimumSizeHint().width()}) {
            line.resize(width, line.heightForWidth(width));
            line.QWidget::show();
            QRect last;
            for (const auto* button : line.findChildren<QuestionButton*>()) {
                QVERIFY(button->width() >= button->sizeHint().width());
                QVERIFY(line.rect().contains(button->geometry()));
                QVERIFY(!last.intersects(button->geometry()));
                last = button->geometry();
            }
            QCOMPARE(last.top() > 0, width < wide);
        }
    }

    void WidthsDoNotFollowEveryFigureWhileAPointIsDragged() {
        QuestionLine line;
        Shown shown = shownSample();
        line.show(shown);
        auto* button = line.findChild<QuestionButton*>("question0");
        const int width = button->sizeHint().width();
        plan::Plan shorter = *shown.plan;
        shorter.answers[0].figures = plan::Message(std::string("radius 9"));
        shown.plan = std::make_shared<const plan::Plan>(shorter);
        line.show(shown);
        QCOMPARE(button->sizeHint().width(), width);
    }

    void ABoatWithoutPiecesHasNoAnswers() {
        QuestionLine line;
        line.show(Shown{});
        for (const auto* button : line.findChildren<QuestionButton*>())
            QVERIFY(button->accessibleName().contains(QChar(0x2013)));
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, QuestionLineTest>(argc, argv);
}
#include "question_line_test.moc"
