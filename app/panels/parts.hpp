// Small parts that panels are put together from: the answer, a heading with its rule, a section that folds away.
#pragma once

#include <QLabel>
#include <QPushButton>
#include <QToolButton>
#include <QWidget>
#include <functional>
#include <map>
#include <memory>
#include <utility>

#include "app/look/shown.hpp"

class QGridLayout;
class QVBoxLayout;

namespace fayline::app {

// Heights of what was measured: by its width and the shape of its words (textShape).
using Heights = std::map<std::pair<int, QString>, int>;

// The answer in one sentence, and under it why the piece as it stands has none.
//
// Places its two labels itself: while a point is dragged the sentence changes with every plan, and the panels round it
// are laid out anew only when it takes more height; what it needs no longer it gives back when the hand rests.
class AnswerNote : public QWidget {
    Q_OBJECT
public:
    AnswerNote(plan::Question question, const QString& pathBegins, QWidget* parent = nullptr);
    void show(const Shown& shown);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void place();
    void measureAnew();

    mutable Heights heights_;  // layouts ask again and again
    int kept_ = 0;             // height that is kept while the hand moves
    plan::Question question_;
    QString pathBegins_;  // of the part of the piece that this panel is about: "line"
    QLabel* sentence_;
    QLabel* reason_;
};

// A small heading with a thin rule after it.
class Heading : public QLabel {
    Q_OBJECT
public:
    explicit Heading(const QString& text, QWidget* parent = nullptr);
    QSize minimumSizeHint() const override;

protected:
    void paintEvent(QPaintEvent* event) override;
};

// A flat button with an icon of resources/icons and an accessible name that is also its tool tip.
QToolButton* iconButton(const QString& object, const QString& iconName, const QString& name, QWidget* parent);

// A button with words on it.
QPushButton* wordButton(const QString& object, const QString& words, QWidget* parent);

// Words that wrap; `warning` in the colour of stop. Hidden while it has none.
class Words : public QLabel {
    Q_OBJECT
public:
    explicit Words(const QString& object, bool warning, QWidget* parent = nullptr);
    void say(const QString& text);
};

// A sentence that changes with every plan: the parts round it are laid out anew only when it takes another height.
// Hidden while it has nothing to say.
class SteadyWords : public QWidget {
    Q_OBJECT
public:
    explicit SteadyWords(const QString& object, QWidget* parent = nullptr);
    void say(const QString& text);

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    int heightForWidth(int width) const override;

protected:
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void measureAnew();

    mutable Heights heights_;
    QLabel* label_;
};

// Makes a dialog as high as what it says now needs; it does not shrink under the hand.
void growToFit(QWidget* dialog);

// Whether a widget that is shown lies wholly outside of what is to be seen, as one that is scrolled away does.
bool isOutOfSight(const QWidget& widget);

// Whether this follows a hand: what takes longer will come once it rests.
bool followsHand(const Shown& shown);

// A part of a panel under a heading that folds it away. What is folded is not told what it would show; what is scrolled
// away is told when it comes into sight or the hand rests.
class Section : public QWidget {
    Q_OBJECT
public:
    using Show = std::function<void(const std::shared_ptr<const Shown>&)>;

    // The heading is named `object`. `show` brings what is inside up to date.
    Section(const QString& object, const QString& name, bool open, Show show, QWidget* parent = nullptr);
    void add(QWidget* part);
    void setShow(Show show) { show_ = std::move(show); }
    QString object() const { return button_->objectName(); }
    bool isOpen() const { return open_; }
    void setOpen(bool open);
    void setNote(const QString& note);  // small at the right of the heading: "calculating"
    void show(const std::shared_ptr<const Shown>& shown);

signals:
    void folded(bool open);  // by the user

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    void nameButton();
    void catchUp();

    QString name_;
    QString note_;
    bool open_;
    QToolButton* button_;
    QWidget* inside_;
    Show show_;
    std::shared_ptr<const Shown> stale_;  // not shown yet, being folded or out of sight
};

// Shows or hides a part, and touches no layout where it is so already.
void showIf(QWidget* part, bool on);

// A name and what it is the name of, side by side.
void addLabelled(QGridLayout* grid, int row, const QString& name, QWidget* control);

// The layout of a panel: one part under the other, nothing wider than the panel.
QVBoxLayout* panelLayout(QWidget* panel);

// Lets the Tab key go through `panel` in the order of its layouts; to be called when all is in place.
void tabInReadingOrder(QWidget* panel);

}  // namespace fayline::app
