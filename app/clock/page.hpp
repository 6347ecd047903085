// What the pages of the clock's screen have in common.
#pragma once

#include <QKeyEvent>
#include <QWidget>
#include <functional>
#include <vector>

#include "app/clock/big_key.hpp"
#include "app/clock/big_text.hpp"

namespace fayline::app {

// One sentence to a line.
inline QString joined(const std::vector<std::string>& sentences) {
    QStringList all;
    for (const std::string& one : sentences) all << QString::fromStdString(one);
    return all.join('\n');
}

class Page : public QWidget {
    Q_OBJECT
public:
    using QWidget::QWidget;
    // Does what the key stands for; false: nothing here.
    virtual bool press(const QKeyEvent& key) = 0;
    virtual void tick() {}  // once a second
};

// A question over the whole screen, answered by one of a few large keys.
class QuestionPage : public Page {
    Q_OBJECT
public:
    struct Answer {
        QString name;  // of its key, for whoever looks for one
        QString word;
        QString keyText;
        std::vector<int> keys;  // of the keyboard
        std::function<void()> run;
        bool main = false;
    };

    explicit QuestionPage(QWidget* parent = nullptr);
    // The first question is large, what is explained under it smaller.
    void ask(const QString& question, const QString& explained, std::vector<Answer> answers);
    bool press(const QKeyEvent& key) override;

private:
    BigText* question_;
    BigText* explained_;
    KeyRow* keys_;
    std::vector<Answer> answers_;
};

// The air temperature read anew, typed or stepped.
class AirPage : public Page {
    Q_OBJECT
public:
    explicit AirPage(QWidget* parent = nullptr);
    // `explain` says in words what an air would change.
    void ask(double air_C, const units::Display& display, std::function<QString(double)> explain);
    bool press(const QKeyEvent& key) override;

signals:
    void taken(double air_C);
    void left();

private:
    void step(double by);
    void type(const QString& typed);
    void show();
    double air_C() const;
    bool isAir() const;

    BigText* question_;
    BigText* value_;
    BigText* explained_;
    BigKey* take_;
    std::function<QString(double)> explain_;
    bool fahrenheit_ = false;
    QString typed_;      // as it stands, in the unit that is shown
    bool fresh_ = true;  // the next figure begins anew
};

}  // namespace fayline::app
