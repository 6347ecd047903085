// The day's clock: a window of its own over the whole screen, for the shed.
//
// Objects by name, for whoever looks for one: "clockScreen"; pages "clockQuestion", "clockRunning", "clockAir",
// "clockEnd". Questions: "clockBegin", "clockDryFit", "clockGluing", "clockBack"; "clockStay", "clockLeave",
// "clockEndDay", "clockBreak", "clockAllStrips" (keys). Running: "clockTitle", "clockWall", "clockNow", "clockNext",
// "clockWarning", "clockCaution" (BigText), "clockCup", "clockFace", "clockMargin" (Gauge), "clockDone", "clockUndo",
// "clockMixed", "clockRest", "clockAirKey", "clockSound", "clockStop" (keys). End: "clockAfter", "clockLearned"
// (labels), "clockCompared" (table), "clockTakeRates", "clockClose" (keys).
#pragma once

#include <QStackedWidget>
#include <QTimer>
#include <memory>

#include "app/clock/awake.hpp"
#include "app/clock/running_day.hpp"
#include "core/plan/day/day_learned.hpp"

namespace fayline::app {

class AirPage;
class EndPage;
class Page;
class QuestionPage;
class RunningPage;

class ClockScreen : public QStackedWidget {
    Q_OBJECT
public:
    // Logs of days are kept in `folder`.
    explicit ClockScreen(const QString& folder, const RunningDay::ReadClocks& clocks = schedule::readClocks,
                         QWidget* parent = nullptr);
    ~ClockScreen() override;

    // Ready to begin a day of that piece; a day that runs is shown instead. Throws units::InputError for a piece that
    // cannot be planned.
    void prepare(const model::Boat& boat, int index, const QString& fileName, bool dryFit);
    void goOn(const LeftDay& left);  // throws units::InputError

    const RunningDay* runningDay() const { return day_.get(); }
    bool isRunning() const { return day_ && !day_->now().stopped; }
    const model::Piece& piece() const { return day_->day().piece; }  // of the day that runs or has ended
    bool isDryFit() const { return day_->day().dryFit; }
    const schedule::Now& look() { return day_->look(); }  // as of now, of the day that runs or has ended
    // The record has been put where it belongs; until this is said the day is offered again after a crash.
    void recordIsKept();

signals:
    void runningChanged();  // a day has begun or ended, or the screen came to the front or left it
    void ended(const model::Record& record);
    void ratesTaken(const model::Rates& rates);
    void closed();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void closeEvent(QCloseEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void askToBegin();
    void begin();
    void run();
    void askAir();
    void askToStop();
    void askToLeave();
    void endDay();
    void leave();
    void turnTo(Page* page);
    void tick();

    QString folder_;
    RunningDay::ReadClocks clocks_;
    model::Boat boat_;
    int index_ = 0;
    QString fileName_;
    int gluing_ = 0;
    bool dryFit_ = false;
    std::unique_ptr<RunningDay> day_;
    plan::RatesLearned learned_;

    QuestionPage* question_;
    RunningPage* running_;
    AirPage* air_;
    EndPage* end_;
    QTimer second_;
    Awake awake_;
};

}  // namespace fayline::app
