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

    void show(const plan::Answer* answer, bool outOfDate);
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

signals:
    void questionChosen(plan::Question question);

protected:
    void keyPressEvent(QKeyEvent* event) override;

private:
    std::vector<QuestionButton*> buttons_;
};

}  // namespace fayline::app
