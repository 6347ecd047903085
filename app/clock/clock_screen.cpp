#include "app/clock/clock_screen.hpp"

#include <QCloseEvent>
#include <QTime>

#include "app/clock/end_page.hpp"
#include "app/clock/page.hpp"
#include "app/clock/running_page.hpp"
#include "app/look/theme.hpp"
#include "core/units/day_text.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

namespace {

const std::vector<int> enterKeys{Qt::Key_Return, Qt::Key_Enter, Qt::Key_Space};

}  // namespace

ClockScreen::ClockScreen(const QString& folder, const RunningDay::ReadClocks& clocks, QWidget* parent)
    : QStackedWidget(parent),
      folder_(folder),
      clocks_(clocks),
      question_(new QuestionPage),
      running_(new RunningPage),
      air_(new AirPage),
      end_(new EndPage) {
    setObjectName("clockScreen");
    setWindowFlag(Qt::Window);
    setWindowTitle(tr("Glue-up clock - Fayline"));
    setFocusPolicy(Qt::StrongFocus);
    setAutoFillBackground(true);
    for (QWidget* page : {static_cast<QWidget*>(question_), static_cast<QWidget*>(running_),
                          static_cast<QWidget*>(air_), static_cast<QWidget*>(end_)}) {
        addWidget(page);
    }
    connect(running_, &RunningPage::airAsked, this, &ClockScreen::askAir);
    connect(running_, &RunningPage::stopAsked, this, &ClockScreen::askToStop);
    connect(running_, &RunningPage::leaveAsked, this, &ClockScreen::askToLeave);
    connect(air_, &AirPage::taken, this, [this](double air_C) {
        day_->typeAir(air_C);
        turnTo(running_);
    });
    connect(air_, &AirPage::left, this, [this] { turnTo(running_); });
    connect(end_, &EndPage::ratesAsked, this, [this] { emit ratesTaken(learned_.rates); });
    connect(end_, &EndPage::closeAsked, this, &ClockScreen::leave);
    second_.setSingleShot(true);
    second_.setTimerType(Qt::PreciseTimer);
    connect(&second_, &QTimer::timeout, this, &ClockScreen::tick);
}

ClockScreen::~ClockScreen() = default;

void ClockScreen::prepare(const model::Boat& boat, int index, const QString& fileName, bool dryFit) {
    if (isRunning()) return turnTo(running_);
    day_.reset();
    running_->follow(nullptr);
    boat_ = boat;
    index_ = index;
    fileName_ = fileName;
    gluing_ = 0;
    dryFit_ = dryFit;
    askToBegin();
}

void ClockScreen::askToBegin() {
    const plan::DayInHand day = plan::dayInHand(boat_.pieces.at(size_t(index_)), plan::shopOf(boat_), gluing_, dryFit_);
    std::vector<QuestionPage::Answer> answers{
        {"clockBegin", dryFit_ ? tr("Begin the timed dry fit") : tr("Begin"), tr("Space, Enter"), enterKeys,
         [this] { begin(); }, true},
        {"clockDryFit", dryFit_ ? tr("With glue") : tr("Dry fit"), "D", {Qt::Key_D}, [this] {
             dryFit_ = !dryFit_;
             askToBegin();
         }}};
    if (day.gluings() > 1) {
        answers.push_back({"clockGluing", tr("Other glue-up"), "G", {Qt::Key_G}, [this, count = day.gluings()] {
                               gluing_ = (gluing_ + 1) % count;
                               askToBegin();
                           }});
    }
    answers.push_back({"clockBack", tr("Back"), "Esc", {Qt::Key_Escape}, [this] { leave(); }});
    const QString piece = QString::fromStdString(day.piece.name);
    question_->ask(dryFit_ ? tr("Timed dry fit of %1").arg(piece) : tr("Glue-up of %1").arg(piece),
                   joined(plan::beforeSaid(day)) + '\n' +
                       tr("The clock starts with the first task when you begin. Gloves on, air moving, everything laid "
                          "out?"),
                   answers);
    turnTo(question_);
}

void ClockScreen::begin() {
    try {
        day_ = RunningDay::begin(folder_, boat_, index_, fileName_, gluing_, dryFit_, clocks_);
    } catch (const units::InputError& error) {
        question_->ask(
            tr("The day cannot begin"), QString::fromUtf8(error.what()),
            {{"clockBack", tr("Back"), "Esc", {Qt::Key_Escape, Qt::Key_Return, Qt::Key_Enter}, [this] { leave(); }}});
        return turnTo(question_);
    }
    run();
}

void ClockScreen::goOn(const LeftDay& left) {
    day_ = RunningDay::goOn(left, clocks_);
    // Ended already, and the program as well before the record was kept.
    if (day_->now().stopped) return endDay();
    run();
}

void ClockScreen::run() {
    connect(day_.get(), &RunningDay::failed, running_, &RunningPage::tell);
    running_->follow(day_.get());
    turnTo(running_);
    awake_.set(true, tr("A glue-up is running"));
    emit runningChanged();
}

void ClockScreen::askAir() {
    air_->ask(day_->air_C(), day_->day().shop.display,
              [this](double air_C) { return QString::fromStdString(plan::airSaid(day_->day(), air_C)); });
    turnTo(air_);
}

void ClockScreen::askToStop() {
    const schedule::Now& now = day_->look();
    if (now.stopped) return;
    const auto back = [this] { turnTo(running_); };
    const auto end = [this] {
        if (!day_->stop()) return turnTo(running_);
        endDay();
    };
    std::vector<QuestionPage::Answer> answers{{"clockStay", tr("Go on"), "Esc", {Qt::Key_Escape}, back}};
    if (now.finished) {
        answers.push_back(
            {"clockEndDay", tr("End the day"), tr("E, Enter"), {Qt::Key_E, Qt::Key_Return, Qt::Key_Enter}, end, true});
    } else {
        answers.front().main = true;
        answers.push_back({"clockEndDay", tr("End the day"), "E", {Qt::Key_E}, end});
    }
    QString explained;
    if (!now.finished) {
        explained = day_->day().dryFit
                        ? tr("Not everything is done. The record keeps what was measured.")
                        : tr("Not everything is done. Spread glue cures all the same. The record keeps what happened.");
    }
    if (now.breakOff && now.brokenAfter == 0) {
        const int strip = now.breakOff->afterStrip;
        explained += '\n' + tr("Stop after strip %1: %2 to spare. Glue the rest another day, after you wash and sand.")
                                .arg(strip)
                                .arg(QString::fromStdString(units::writeDuration(now.breakOff->margin_s)));
        answers.push_back({"clockBreak", tr("Stop after strip %1").arg(strip), "K", {Qt::Key_K}, [this, strip, back] {
                               day_->breakOff(strip);
                               back();
                           }});
    } else if (now.brokenAfter > 0) {
        answers.push_back({"clockAllStrips", tr("All strips after all"), "A", {Qt::Key_A}, [this, back] {
                               day_->breakOff(0);
                               back();
                           }});
    }
    question_->ask(now.finished ? tr("All is done. End the day?") : tr("Stop here?"), explained, answers);
    turnTo(question_);
}

void ClockScreen::askToLeave() {
    question_->ask(tr("The day is running. Leave its clock?"),
                   tr("It runs on; the window's menu brings it back. The computer may fall asleep."),
                   {{"clockStay", tr("Stay"), "Esc", {Qt::Key_Escape}, [this] { turnTo(running_); }, true},
                    {"clockLeave", tr("Leave it running"), "L", {Qt::Key_L}, [this] { leave(); }}});
    turnTo(question_);
}

void ClockScreen::endDay() {
    awake_.set(false, {});
    running_->follow(nullptr);
    day_->look();
    learned_ = plan::ratesOf(day_->day(), day_->now());
    end_->show(*day_, learned_);
    turnTo(end_);
    emit runningChanged();
    emit ended(day_->record());
}

void ClockScreen::recordIsKept() {
    day_->forgetLog();
}

void ClockScreen::leave() {
    hide();
    emit closed();
}

void ClockScreen::turnTo(Page* page) {
    setCurrentWidget(page);
    setFocus();
    tick();
}

// Once a second, just after the second has turned.
void ClockScreen::tick() {
    second_.stop();
    if (!isVisible() || !isRunning()) return;
    static_cast<Page*>(currentWidget())->tick();
    constexpr int after_ms = 5;
    second_.start(1000 - QTime::currentTime().msec() + after_ms);
}

void ClockScreen::keyPressEvent(QKeyEvent* event) {
    // A key that is held says a thing once.
    if (event->isAutoRepeat() || static_cast<Page*>(currentWidget())->press(*event)) return event->accept();
    QStackedWidget::keyPressEvent(event);
}

void ClockScreen::closeEvent(QCloseEvent* event) {
    if (isRunning()) {
        event->ignore();
        if (currentWidget() != question_) askToLeave();
        return;
    }
    event->accept();
    emit closed();
}

void ClockScreen::showEvent(QShowEvent* event) {
    QStackedWidget::showEvent(event);
    if (isRunning()) awake_.set(true, tr("A glue-up is running"));
    setFocus();
    tick();
    emit runningChanged();
}

void ClockScreen::hideEvent(QHideEvent* event) {
    QStackedWidget::hideEvent(event);
    awake_.set(false, {});
    second_.stop();
    emit runningChanged();
}

void ClockScreen::changeEvent(QEvent* event) {
    QStackedWidget::changeEvent(event);
    if (event->type() == QEvent::ActivationChange) emit runningChanged();
}

}  // namespace fayline::app

#include "moc_clock_screen.cpp"
