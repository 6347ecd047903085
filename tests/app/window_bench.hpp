// A window on the bench with the sample boat in it: what a hand does to it, and answers to what it asks.
#pragma once

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QAction>
#include <QApplication>
#include <QFile>
#include <QLineEdit>
#include <QMessageBox>
#include <QMouseEvent>
#include <QTemporaryDir>
#include <QTest>
#include <QTimer>
#include <algorithm>
#include <functional>
#include <optional>

#include "app/formview/form_view.hpp"
#include "app/window/main_window.hpp"
#include "tests/app/patience.hpp"

namespace fayline::app {

inline const QString marram = QString(FAYLINE_SAMPLES) + "/marram.fayline";
constexpr int wl12 = 5;  // in the stem of the sample
constexpr int xColumn = 1;

// Of a window that does nothing but what it is asked: what waits for the hand to rest never comes.
inline WindowTimes handNeverRests() {
    constexpr int day_ms = 24 * 3600 * 1000;
    return {{.restsAfter_ms = day_ms, .oldAfter_ms = day_ms, .toldAfter_ms = day_ms}, day_ms};
}

// A window with its own folder for copies of unsaved work.
struct Bench {
    QTemporaryDir folder;
    MainWindow window;

    explicit Bench(const QString& file = marram, const WindowTimes& times = handNeverRests())
        : window(folder.path(), nullptr, times) {
        window.resize(1280, 800);
        window.show();
        if (!file.isEmpty()) {
            if (!window.openFile(file) || !settle()) qFatal("no plan of %s is shown", qPrintable(file));
        }
    }
    ~Bench() { window.document().undoStack().setClean(); }

    Document& document() { return window.document(); }
    const model::Piece& piece() { return document().boat().pieces[size_t(document().currentPiece())]; }
    template <class Widget>
    Widget* find(const QString& name = {}) {
        return window.findChild<Widget*>(name);
    }
    QAction* action(const QString& name) { return window.findChild<QAction*>(name); }

    // A new piece as it is proposed.
    void addPiece() {
        action("addPiece")->trigger();
        find<QAbstractButton>("addNew")->click();
        QCoreApplication::sendPostedEvents(nullptr, QEvent::DeferredDelete);
    }

    // Until the plan of the piece as it stands is shown, or that there is none.
    bool settle() {
        std::optional<plan::Plan> expected;
        return test::soon([&] {
            const Shown& shown = window.shown();
            if (document().currentPiece() < 0 || !shown.reason.isEmpty()) return true;
            if (!shown.plan || shown.piece != piece() || shown.plan->piece != piece().name) return false;
            if (!expected) expected = plan::makePlan(piece(), plan::shopOf(document().boat()));
            return std::ranges::equal(
                shown.plan->line.fair.points, expected->line.fair.points,
                [](const line::Foot& a, const line::Foot& b) { return a.at_m == b.at_m && a.misfit_m == b.misfit_m; });
        });
    }

    void type(int row, int column, const QString& text) {
        auto* table = window.findChild<QWidget*>("linePanel")->findChild<QAbstractItemView*>("offsets");
        const QModelIndex cell = table->model()->index(row, column);
        table->setCurrentIndex(cell);
        table->edit(cell);
        auto* editor = table->findChild<QLineEdit*>("cellEditor");
        QVERIFY(editor);
        editor->selectAll();
        QTest::keyClicks(editor, text);
        QTest::keyClick(editor, Qt::Key_Return);
    }

    void dragPoint(int index, QPoint by, int steps = 8) {
        auto* view = find<FormView>();
        const model::Point& point = piece().line.points[size_t(index)];
        const QPoint from = view->transform().toScreen({point.x_m, point.y_m}).toPoint();
        QTest::mousePress(view, Qt::LeftButton, {}, from);
        for (int i = 1; i <= steps; ++i) {
            const QPointF at = QPointF(from) + QPointF(by) * i / steps;
            QMouseEvent move(QEvent::MouseMove, at, view->mapToGlobal(at), Qt::NoButton, Qt::LeftButton, {});
            QCoreApplication::sendEvent(view, &move);
            QCoreApplication::processEvents();
        }
        QTest::mouseRelease(view, Qt::LeftButton, {}, from + by);
    }
};

// Answers the next question that pops up by clicking `button`, and keeps its text.
class Answering {
public:
    explicit Answering(QMessageBox::StandardButton button) {
        answerWith([button](const QMessageBox& box) {
            QAbstractButton* found = box.button(button);
            return found ? found : box.buttons().constFirst();
        });
    }
    explicit Answering(const char* words) {
        answerWith([words](const QMessageBox& box) -> QAbstractButton* {
            for (QAbstractButton* button : box.buttons()) {
                if (button->text() == words) return button;
            }
            return nullptr;  // the test then hangs until it is stopped, which is a failure
        });
    }
    QString text;

private:
    void answerWith(const std::function<QAbstractButton*(const QMessageBox&)>& choose) {
        timer_.setInterval(10);
        QObject::connect(&timer_, &QTimer::timeout, [this, choose] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box) return;
            text = box->text() + "\n" + box->informativeText();
            QAbstractButton* clicked = choose(*box);
            if (!clicked) return;
            timer_.stop();
            clicked->click();
        });
        timer_.start();
    }
    QTimer timer_;
};

inline bool write(const QString& path, const QByteArray& text) {
    QFile file(path);
    return file.open(QIODevice::WriteOnly) && file.write(text) == text.size();
}

}  // namespace fayline::app
