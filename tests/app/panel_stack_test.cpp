// The panels of the window: what is folded stays folded, and the wheel scrolls the panels and nothing else.
#include "app/window/panel_stack.hpp"

#include <QComboBox>
#include <QLineEdit>
#include <QScrollBar>
#include <QSettings>
#include <QTableView>
#include <QTest>
#include <QToolButton>
#include <QWheelEvent>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/panel_scroll.hpp"
#include "tests/app/own_home.hpp"
#include "tests/app/window_bench.hpp"

using namespace fayline;
using namespace fayline::app;

namespace {

// As the window system sends it: to the widget under the pointer, one notch.
void turnWheel(QWidget* over, int by = -120) {
    const QPointF at = over->rect().center();
    QWheelEvent turn(at, over->mapToGlobal(at), {}, QPoint(0, by), Qt::NoButton, Qt::NoModifier, Qt::NoScrollPhase,
                     false);
    QApplication::sendEvent(over, &turn);
}

}  // namespace

class PanelStackTest : public QObject {
    Q_OBJECT

public:
    static void initMain() { useHomeOfItsOwn(); }

private slots:
    void init() { QSettings().clear(); }

    void whatIsFoldedAndOpenedStaysSoAtTheNextStart() {
        const auto isOpen = [](Bench& bench, const char* head) {
            return bench.find<QToolButton>(head)->accessibleName().contains("open");
        };
        {
            Bench bench;
            QVERIFY(isOpen(bench, "stripsHead"));
            QVERIFY(!isOpen(bench, "closingHead"));
            bench.find<QToolButton>("stripsHead")->click();
            bench.find<QToolButton>("closingHead")->click();
        }
        Bench bench;
        QVERIFY(!isOpen(bench, "stripsHead"));
        QVERIFY(isOpen(bench, "closingHead"));
    }

    // At first each panel has at most two sections open, as a first reader needs them.
    void fewSectionsAreOpenAtFirst() {
        Bench bench;
        for (const char* panel :
             {"linePanel", "stripsPanel", "formPanel", "holdingPanel", "gluePanel", "schedulePanel"}) {
            int open = 0;
            int all = 0;
            for (const QToolButton* button : bench.find<Panel>(panel)->findChildren<QToolButton*>()) {
                if (!button->objectName().endsWith("Head")) continue;
                ++all;
                if (button->accessibleName().contains("open")) ++open;
            }
            QVERIFY2(all >= 2 && open >= 1 && open <= 2, panel);
        }
    }

    void theWheelScrollsThePanelsWhateverItPassesOver() {
        Bench bench;
        auto* stack = bench.find<PanelStack>();
        for (const int question : {0, 1, 2, 3, 4, 5, 7, 8})
            bench.action("openPanel" + QString::number(question))->trigger();
        for (QToolButton* button : stack->findChildren<QToolButton*>())
            if (button->objectName().endsWith("Head") && button->accessibleName().contains("folded")) button->click();
        QVERIFY(bench.settle());
        const model::Boat before = bench.document().boat();
        QScrollBar* bar = stack->verticalScrollBar();
        SOON_VERIFY(bar->maximum() > 3000);
        int passed = 0;
        for (QWidget* part : stack->widget()->findChildren<QWidget*>()) {
            const bool takesWheels = qobject_cast<QComboBox*>(part) || qobject_cast<AlongPlot*>(part) ||
                                     qobject_cast<QTableView*>(part->parentWidget()) || qobject_cast<QLineEdit*>(part);
            if (!takesWheels || !part->isVisible() || qobject_cast<QScrollBar*>(part)) continue;
            const auto* table = qobject_cast<QTableView*>(part->parentWidget());
            const auto* choice = qobject_cast<QComboBox*>(part);
            const int chosen = choice ? choice->currentIndex() : 0;
            const int within = table ? table->verticalScrollBar()->value() : 0;
            bar->setValue(bar->maximum() / 2);
            part->setFocus();
            const int from = bar->value();
            turnWheel(part);
            QVERIFY2(bar->value() > from, qPrintable(part->objectName()));
            if (choice) QCOMPARE(choice->currentIndex(), chosen);
            if (table) QCOMPARE(table->verticalScrollBar()->value(), within);
            ++passed;
        }
        QVERIFY(passed > 60);
        for (const char* choice : {"choiceUp", "choiceAcross", "paperSize"})
            QVERIFY(bench.find<QComboBox>(choice)->isVisible());
        QVERIFY(bench.document().boat() == before);
    }

    // A table is as high as its rows, so that there is no bar within the bar.
    void tablesShowAllTheirRows() {
        Bench bench;
        for (int question = 0; question < 6; ++question)
            bench.action("openPanel" + QString::number(question))->trigger();
        bench.find<QToolButton>("choicesHead")->click();
        QVERIFY(bench.settle());
        for (const QTableView* table : bench.find<PanelStack>()->findChildren<QTableView*>()) {
            if (!table->isVisible()) continue;
            SOON_VERIFY2(table->verticalScrollBar()->maximum() == 0, qPrintable(table->objectName()));
        }
    }

    void theKeyboardBringsTheCellThatItGoesToIntoSight() {
        Bench bench;
        auto* stack = bench.find<PanelStack>();
        stack->goToPoint(0);
        auto* offsets = bench.find<QTableView>("offsets");
        bench.window.resize(1024, 400);
        SOON_VERIFY(stack->verticalScrollBar()->maximum() > 100);
        offsets->setFocus();
        offsets->setCurrentIndex(offsets->model()->index(0, 1));
        for (int row = 0; row < 11; ++row) QTest::keyClick(offsets, Qt::Key_Down);
        const QRect cell = offsets->visualRect(offsets->currentIndex());
        const QPoint at = offsets->viewport()->mapTo(stack->viewport(), cell.center());
        QVERIFY(stack->viewport()->rect().contains(at));
    }

    // Whatever Tab may go to, in the whole window, looks another way while it has the focus.
    void theFocusIsSeenWhereverItIs() {
        applyGround(Ground::paper);
        Bench bench;
        for (const int question : {0, 1, 2, 3, 4, 5, 7, 8})
            bench.action("openPanel" + QString::number(question))->trigger();
        for (QToolButton* button : bench.find<PanelStack>()->findChildren<QToolButton*>())
            if (button->objectName().endsWith("Head") && button->accessibleName().contains("folded")) button->click();
        QVERIFY(bench.settle());
        const auto laidOut = [&] {  // nothing is pressed together any more
            return std::ranges::all_of(bench.find<PanelStack>()->findChildren<QToolButton*>(), [](QToolButton* one) {
                return !one->isVisible() || one->height() >= one->minimumSizeHint().height();
            });
        };
        SOON_VERIFY(laidOut());
        bench.window.activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(&bench.window, test::patience_ms));
        int seen = 0;
        QStringList unseen;
        for (QWidget* part : bench.window.findChildren<QWidget*>()) {
            const bool stops = part->focusPolicy() & Qt::TabFocus && !part->focusProxy();
            if (!stops || !part->isVisible() || !part->isEnabled() || part->window() != &bench.window) continue;
            bringIntoSight(part, part->rect());  // else nothing of it is drawn
            part->setFocus(Qt::TabFocusReason);
            if (QApplication::focusWidget() != part) continue;  // it gives the focus on
            const QImage with = part->grab().toImage();
            bench.window.setFocus();
            const QString named = QString("%1 %2").arg(part->metaObject()->className(), part->objectName());
            if (part->grab().toImage() == with) unseen << named;
            ++seen;
        }
        QVERIFY2(unseen.isEmpty(), qPrintable(unseen.join("; ")));
        QVERIFY2(seen > 120, qPrintable(QString::number(seen)));
    }

    void holdingLeadsToTheFormThatItClampsTo() {
        Bench bench;
        bench.action("openPanel3")->trigger();
        QVERIFY(!bench.find<Panel>("formPanel")->isVisible());
        bench.find<QPushButton>("toForm")->click();
        QVERIFY(bench.find<Panel>("formPanel")->isVisible());
    }
};

#include "tests/app/run_test.hpp"
int main(int argc, char** argv) {
    return fayline::app::runTest<QApplication, PanelStackTest>(argc, argv);
}
#include "panel_stack_test.moc"
