// The line of questions: nine short words, the present answer under each, its worst finding; a click opens its panel.
//
// Each question is a button named "question0" to "question8", in the order of the job.
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <optional>
#include <vector>

#include "app/look/shown.hpp"

namespace fayline::app {

// One question: its word with the shape of its worst finding, and under it the answer in a line or two.
class QuestionButton : public QAbstractButton {
    Q_OBJECT
public:
    QuestionButton(plan::Question question, QWidget* parent);

    void show(const plan::Answer* answer, const units::Display& display, bool outOfDate);
    // There has never been a plan: `figures` say so in short, `why` in whole; `atFault` where the reason lies here.
    void showUnplanned(const QString& figures, const QString& why, bool atFault);
    plan::Question question() const { return question_; }
    // True when nothing of the texts is cut off at the button's present width.
    bool showsAll() const;

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void set(const QString& figures, bool answered, const std::optional<plan::Severity>& worst, bool outOfDate,
             const QString& sentence);
    void measureWidth(bool mayShrink);

    plan::Question question_;
    QString word_;
    QString figures_;
    bool answered_ = false;
    bool outOfDate_ = false;
    std::optional<plan::Severity> worst_;
    int least_ = 0;  // pixels of width that the texts need
};

class QuestionLine : public QWidget {
    Q_OBJECT
public:
    explicit QuestionLine(QWidget* parent = nullptr);
    void show(const Shown& shown);

    // In one row, or in two where that is too narrow for it.
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

signals:
    void questionChosen(plan::Question question);
    void clockAsked();  // C on the questions of time and record

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    bool event(QEvent* event) override;

private:
    void showUnplanned(const Shown& shown);
    int perRow(int width) const;
    int neededWidth(int perRow) const;
    void place();

    std::vector<QuestionButton*> buttons_;
};

}  // namespace fayline::app
