// The day while it runs: what to do now, what is next, what is left of cup and face, and the keys for gloves.
#pragma once

#include <QElapsedTimer>
#include <vector>

#include "app/clock/gauge.hpp"
#include "app/clock/page.hpp"
#include "app/clock/running_day.hpp"

namespace fayline::app {

// "12:34", "-2:10": minutes and seconds, as a clock that counts down has them.
QString minutes(double time_s);

class RunningPage : public Page {
    Q_OBJECT
public:
    explicit RunningPage(QWidget* parent = nullptr);

    void follow(RunningDay* day);  // null: none
    void tick() override;
    bool press(const QKeyEvent& key) override;
    void tell(const QString& wrong);  // stands until the next key

signals:
    void airAsked();
    void stopAsked();
    void leaveAsked();
    void warned();  // something new is wrong

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void makeKeys();
    void run(bool (RunningDay::*key)());
    void done();
    void show(const schedule::Now& now);
    void showHeader(const schedule::Now& now);
    void showGlue(const schedule::Now& now);
    void showDryFit(const schedule::Now& now);
    void showWarnings(const schedule::Now& now);
    bool sounds() const;

    RunningDay* day_ = nullptr;
    QString wrong_;
    std::vector<schedule::Warning> warned_;
    KeyRow* keys_;
    BigText* title_;
    BigText* clock_;
    BigText* now_;
    BigText* next_;
    Gauge* first_;
    Gauge* second_;
    Gauge* third_;
    BigText* warning_;
    BigText* caution_;
    BigKey* doneKey_ = nullptr;
    BigKey* undoKey_ = nullptr;
    BigKey* mixedKey_ = nullptr;
    BigKey* restKey_ = nullptr;
    BigKey* airKey_ = nullptr;
    BigKey* soundKey_ = nullptr;
};

}  // namespace fayline::app
