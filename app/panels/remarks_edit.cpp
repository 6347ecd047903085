#include "app/panels/remarks_edit.hpp"

#include <QKeyEvent>
#include <QSignalBlocker>
#include <QTextDocument>
#include <QWheelEvent>
#include <algorithm>
#include <cmath>

namespace fayline::app {

namespace {

constexpr int leastLines = 2;

}  // namespace

RemarksEdit::RemarksEdit(const QString& object, QWidget* parent) : QPlainTextEdit(parent) {
    setObjectName(object);
    setTabChangesFocus(true);
    setUndoRedoEnabled(false);  // the window's steps have it
    setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    connect(this, &QPlainTextEdit::textChanged, this, [this] {
        fitHeight();
        emit typed(toPlainText());
    });
    fitHeight();
}

void RemarksEdit::show(const QString& words) {
    if (words == toPlainText()) return;
    const QSignalBlocker blocker(this);
    setPlainText(words);
    fitHeight();
}

// Undo and redo are the window's.
bool RemarksEdit::event(QEvent* event) {
    if (event->type() == QEvent::ShortcutOverride) {
        auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) return false;
    }
    return QPlainTextEdit::event(event);
}

void RemarksEdit::resizeEvent(QResizeEvent* event) {
    QPlainTextEdit::resizeEvent(event);
    fitHeight();
}

void RemarksEdit::wheelEvent(QWheelEvent* event) {
    event->ignore();  // the panel's
}

void RemarksEdit::fitHeight() {
    // Its layout counts in lines.
    const int lines = std::max(leastLines, int(std::ceil(document()->size().height())));
    const int margins = int(2 * document()->documentMargin()) + 2 * frameWidth();
    const int height = lines * fontMetrics().lineSpacing() + margins;
    if (height != minimumHeight() || height != maximumHeight()) setFixedHeight(height);
}

}  // namespace fayline::app

#include "moc_remarks_edit.cpp"
