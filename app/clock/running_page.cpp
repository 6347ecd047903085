#include "app/clock/running_page.hpp"

#include <QApplication>
#include <QHBoxLayout>
#include <QSettings>
#include <QTime>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_text.hpp"

namespace fayline::app {

using plan::Severity;
using schedule::Urgency;

namespace {

constexpr int mostSaid = 2;  // warnings at once: more nobody reads

QString capital(QString words) {
    if (!words.isEmpty()) words[0] = words[0].toUpper();
    return words;
}

Severity severityOf(Urgency urgency) {
    switch (urgency) {
        case Urgency::ample:
            return Severity::note;
        case Urgency::little:
            return Severity::caution;
        case Urgency::over:
            return Severity::stop;
    }
    return Severity::note;
}

QString nameOf(const schedule::Now& now, int task) {
    return text(now.run.tasks[task].name);
}

QString namesOf(const schedule::Now& now, const std::vector<int>& tasks) {
    QStringList names;
    for (const int task : tasks) names << nameOf(now, task);
    return names.join(QObject::tr(" and "));
}

// What each pair of hands does; in one where all do the same.
QString doingOf(const schedule::Now& now) {
    std::vector<int> tasks = now.ofHands;
    std::ranges::sort(tasks);
    tasks.erase(std::ranges::unique(tasks).begin(), tasks.end());
    if (tasks.size() <= 1) return capital(namesOf(now, now.doing));
    std::ranges::rotate(tasks, std::ranges::upper_bound(tasks, -1));  // who is free comes last
    QStringList lines;
    for (const int task : tasks) {
        QStringList hands;
        for (size_t i = 0; i < now.ofHands.size(); ++i) {
            if (now.ofHands[i] == task) hands << QString::number(i + 1);
        }
        lines << QObject::tr("Hands %1: %2")
                     .arg(hands.join(QObject::tr(" and ")), task < 0 ? QObject::tr("free") : nameOf(now, task));
    }
    return lines.join('\n');
}

QString faceName(int inner) {
    return inner == 0 ? QObject::tr("Joint on the boat") : QObject::tr("Joint %1-%2").arg(inner).arg(inner + 1);
}

}  // namespace

QString minutes(double time_s) {
    const auto seconds = qint64(std::floor(std::abs(time_s)));
    return QStringLiteral("%1%2:%3")
        .arg(time_s < 0 ? QStringLiteral("-") : QString())
        .arg(seconds / 60)
        .arg(seconds % 60, 2, 10, QLatin1Char('0'));
}

RunningPage::RunningPage(QWidget* parent)
    : Page(parent),
      keys_(new KeyRow),
      title_(new BigText(14, 28)),
      clock_(new BigText(20, 64)),
      now_(new BigText(24, 120)),
      next_(new BigText(16, 56)),
      first_(new Gauge),
      second_(new Gauge),
      third_(new Gauge),
      warning_(new BigText(14, 40)),
      caution_(new BigText(12, 24)) {
    setObjectName("clockRunning");
    title_->setObjectName("clockTitle");
    clock_->setObjectName("clockWall");
    now_->setObjectName("clockNow");
    next_->setObjectName("clockNext");
    first_->setObjectName("clockCup");
    second_->setObjectName("clockFace");
    third_->setObjectName("clockMargin");
    warning_->setObjectName("clockWarning");
    caution_->setObjectName("clockCaution");
    title_->setFaint(true);
    clock_->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    now_->setBold(true);
    next_->setFaint(true);
    caution_->setFaint(true);

    auto* head = new QHBoxLayout;
    head->addWidget(title_, 3);
    head->addWidget(clock_, 1);
    auto* gauges = new QHBoxLayout;
    gauges->setSpacing(3 * gridStep);
    for (Gauge* gauge : {first_, second_, third_}) gauges->addWidget(gauge, 1);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(3 * gridStep, gridStep, 3 * gridStep, 2 * gridStep);
    column->setSpacing(gridStep);
    column->addLayout(head, 2);
    column->addWidget(now_, 6);
    column->addWidget(next_, 2);
    column->addLayout(gauges, 6);
    column->addWidget(warning_, 3);
    column->addWidget(caution_, 2);
    column->addWidget(keys_);
    makeKeys();
}

void RunningPage::makeKeys() {
    const auto add = [this](const char* name, const QString& word, const QString& key, auto run, int stretch = 1) {
        BigKey* made = keys_->add(name, word, key, stretch);
        connect(made, &QAbstractButton::clicked, this, run);
        return made;
    };
    doneKey_ = add(
        "clockDone", tr("Done"), tr("Space, Enter"), [this] { done(); }, 2);
    doneKey_->setMain(true);
    undoKey_ = add("clockUndo", tr("Undo"), tr("Backspace"), [this] { run(&RunningDay::undo); });
    mixedKey_ = add("clockMixed", tr("Batch mixed"), "B", [this] { run(&RunningDay::batchMixed); });
    restKey_ = add("clockRest", tr("Rest"), "P", [this] { run(&RunningDay::rest); });
    airKey_ = add("clockAirKey", tr("Air"), "T", [this] { emit airAsked(); });
    soundKey_ = add("clockSound", tr("Sound"), "M", [this] {
        QSettings().setValue("clock/sound", !sounds());
        tick();
    });
    add("clockStop", tr("Stop"), "S", [this] { emit stopAsked(); });
}

bool RunningPage::sounds() const {
    return QSettings().value("clock/sound", false).toBool();
}

void RunningPage::follow(RunningDay* day) {
    day_ = day;
    wrong_.clear();
    warned_.clear();
    tick();
}

void RunningPage::resizeEvent(QResizeEvent* event) {
    Page::resizeEvent(event);
    // All letters grow with the window.
    now_->setSizes(height() / 26, height() / 7);
    next_->setSizes(height() / 40, height() / 14);
    title_->setSizes(height() / 50, height() / 24);
    clock_->setSizes(height() / 40, height() / 11);
    warning_->setSizes(height() / 50, height() / 20);
    caution_->setSizes(height() / 55, height() / 30);
}

void RunningPage::run(bool (RunningDay::*key)()) {
    if (!day_) return;
    wrong_.clear();
    (day_->*key)();
    tick();
}

void RunningPage::done() {
    if (!day_) return;
    if (day_->look().finished) {
        emit stopAsked();
    } else {
        run(day_->now().paused ? &RunningDay::rest : &RunningDay::done);
    }
}

bool RunningPage::press(const QKeyEvent& key) {
    const auto click = [](BigKey* pressed) {
        if (pressed->isEnabled()) pressed->click();
        return true;
    };
    switch (key.key()) {
        case Qt::Key_Space:
        case Qt::Key_Return:
        case Qt::Key_Enter:
            return click(doneKey_);
        case Qt::Key_Backspace:
            return click(undoKey_);
        case Qt::Key_B:
            return click(mixedKey_);
        case Qt::Key_P:
            return click(restKey_);
        case Qt::Key_T:
            return click(airKey_);
        case Qt::Key_M:
            return click(soundKey_);
        case Qt::Key_S:
            emit stopAsked();
            return true;
        case Qt::Key_Escape:
            emit leaveAsked();
            return true;
        default:
            return false;
    }
}

void RunningPage::tell(const QString& wrong) {
    wrong_ = wrong;
    tick();
}

void RunningPage::tick() {
    if (day_) show(day_->look());
}

void RunningPage::show(const schedule::Now& now) {
    showHeader(now);
    if (now.finished) {
        now_->setText(tr("All is done"));
        next_->setText(tr("Next: end the day"));
    } else {
        now_->setText(now.paused ? tr("Rest. The glue does not rest.\nThen %1").arg(namesOf(now, now.doing))
                                 : doingOf(now));
        next_->setText(now.next.empty() ? tr("Nothing after that") : tr("Next: %1").arg(namesOf(now, now.next)));
    }
    if (day_->day().dryFit) {
        showDryFit(now);
    } else {
        showGlue(now);
    }
    showWarnings(now);
    QStringList cautions;
    for (const std::string& one : plan::cautionsFor(day_->day(), now)) cautions << text(one);
    caution_->setText(cautions.join(' '));
    doneKey_->setWord(now.finished ? tr("End the day") : now.paused ? tr("Go on") : tr("Done"));
    restKey_->setWord(now.paused ? tr("Go on") : tr("Rest"));
    soundKey_->setWord(sounds() ? tr("Silence") : tr("Sound"));
    undoKey_->setEnabled(now.toUndo.has_value());
    mixedKey_->setEnabled(now.mixing.has_value() && !now.paused);
    restKey_->setEnabled(!now.finished);
    airKey_->setEnabled(!day_->day().dryFit);
}

void RunningPage::showHeader(const schedule::Now& now) {
    const auto finished = std::ranges::count_if(now.states, [](schedule::TaskState state) {
        return state == schedule::TaskState::done || state == schedule::TaskState::leftOut;
    });
    QStringList parts{text(day_->day().piece.name)};
    if (day_->day().dryFit) parts << tr("dry fit");
    if (day_->day().gluings() > 1)
        parts << tr("glue-up %1 of %2").arg(day_->day().gluing + 1).arg(day_->day().gluings());
    if (now.brokenAfter > 0) parts << tr("stops after strip %1").arg(now.brokenAfter);
    parts << tr("%1 of %2 done").arg(finished).arg(now.states.size());
    if (!day_->day().dryFit)
        parts << tr("air %1").arg(text(units::writeTemperature(day_->air_C(), day_->day().shop.display)));
    title_->setText(parts.join(QStringLiteral(", ")));
    clock_->setText(QTime::currentTime().toString(QStringLiteral("HH:mm")));
}

void RunningPage::showGlue(const schedule::Now& now) {
    if (now.cups.empty()) {
        first_->show(tr("Batch in use"), tr("none"), tr("nothing is mixed"), std::nullopt);
    } else {
        const schedule::CupNow& cup = now.cups.front();
        const Urgency urgency = schedule::urgencyOf(cup.left_s, cup.whole_s);
        const QString word = urgency == Urgency::over     ? tr("past its time")
                             : urgency == Urgency::little ? tr("use up now")
                             : cup.mixed                  ? tr("left to use it")
                                                          : tr("left, being mixed");
        first_->show(tr("Batch %1").arg(cup.number), minutes(cup.left_s), word, severityOf(urgency));
    }
    const bool closed = now.faces.empty() && now.at_s >= now.run.closed_s;
    if (now.faces.empty()) {
        second_->show(tr("Worst joint"), tr("none"), closed ? tr("all are clamped") : tr("nothing is wetted"),
                      std::nullopt);
    } else {
        const schedule::FaceNow& face = now.faces.front();
        const Urgency urgency = schedule::urgencyOf(face.left_s, face.whole_s);
        const QString word = urgency == Urgency::over     ? tr("TOO LATE")
                             : urgency == Urgency::little ? tr("clamp it now")
                                                          : tr("until too late");
        second_->show(faceName(face.inner), minutes(face.left_s), word, severityOf(urgency));
    }
    if (now.run.worstFace < 0) {
        third_->show(tr("Spare"), tr("-"), tr("no joint to clamp"), std::nullopt);
        return;
    }
    const schedule::FaceTimes& worst = now.run.faces[now.run.worstFace];
    const Urgency urgency = schedule::urgencyOf(now.margin_s, worst.openUntil_s - worst.wetted_s);
    const QString word = closed ? (now.margin_s < 0 ? tr("clamped too late") : tr("clamped in time"))
                         : urgency == Urgency::over ? tr("too late")
                         : now.marginAtPace_s < 0   ? tr("too late at this pace")
                                                    : tr("left when clamped");
    third_->show(closed ? tr("Spare") : tr("Spare at this pace"), text(units::writeDuration(now.margin_s)), word,
                 severityOf(urgency == Urgency::ample && now.marginAtPace_s < 0 ? Urgency::little : urgency));
}

void RunningPage::showDryFit(const schedule::Now& now) {
    first_->show(tr("Time so far"), minutes(now.at_s), tr("of the dry fit"), std::nullopt);
    if (now.doing.empty()) {
        second_->show(tr("This task"), tr("none"), {}, std::nullopt);
    } else {
        const schedule::Task& task = now.run.tasks[now.doing.front()];
        second_->show(tr("This task"), minutes(now.at_s - task.start_s),
                      tr("planned %1").arg(text(units::writeDuration(task.takes_s))), std::nullopt);
    }
    third_->show(tr("Finish"), text(units::writeDuration(std::abs(now.behind_s))),
                 now.behind_s > 0 ? tr("late") : tr("early"), std::nullopt);
}

void RunningPage::showWarnings(const schedule::Now& now) {
    QStringList words;
    bool stop = false;
    if (!wrong_.isEmpty()) {
        words << wrong_;
        stop = true;
    }
    bool fresh = false;
    for (const schedule::Warning& one : now.warnings) {
        if (words.size() < mostSaid) words << text(plan::writeTexts(plan::warningTexts(one), day_->day().shop.display));
        stop = stop || one.stop;
        fresh = fresh || std::ranges::none_of(warned_, [&](const auto& before) { return before.sameAs(one); });
    }
    const QString told = day_->toldOfTime();
    if (!told.isEmpty()) words << told;
    warning_->setShape(words.isEmpty() ? std::nullopt : std::optional(stop ? Severity::stop : Severity::caution));
    warning_->setText(words.join(' '));
    warned_ = now.warnings;
    if (!fresh) return;
    emit warned();
    if (sounds()) QApplication::beep();
}

}  // namespace fayline::app

#include "moc_running_page.cpp"
