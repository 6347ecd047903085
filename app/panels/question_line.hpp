// The line of questions: nine short words, the present answer under each, its worst finding; a click opens its panel.
#pragma once

#include <QWidget>

#include "app/look/shown.hpp"

namespace fayline::app {

class QuestionLine : public QWidget {
    Q_OBJECT
public:
    explicit QuestionLine(QWidget* parent = nullptr);
    void show(const Shown& shown);

signals:
    void questionChosen(plan::Question question);
};

}  // namespace fayline::app
