#include "app/clock/running_day.hpp"

#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocale>
#include <QUuid>
#include <cmath>

#include "app/look/lock.hpp"
#include "core/io/file.hpp"
#include "core/plan/day/day_learned.hpp"
#include "core/units/day_text.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

using schedule::Event;
using schedule::EventKind;

namespace {

constexpr double movedBy_s = 60;  // from which the wall clock is said to have been moved

std::filesystem::path pathOf(const QString& fileName) {
    return fileName.toStdU16String();
}

QString lockOf(const QString& path) {
    return path + ".lock";
}

std::unique_ptr<QLockFile> lockFor(const QString& path) {
    auto lock = std::make_unique<QLockFile>(lockOf(path));
    lock->setStaleLockTime(0);  // a long day does not make it stale
    return lock;
}

// The words a log opens with: what the day is of, and the boat with that piece alone, so that the day can go on with
// the plan it was begun with whatever becomes of the file.
std::string aboutOf(const model::Boat& boat, int index, const QString& fileName, int gluing, bool dryFit) {
    model::Boat alone = boat;
    alone.pieces = {boat.pieces.at(static_cast<std::size_t>(index))};
    const QJsonObject about{{"file", fileName},
                            {"gluing", gluing},
                            {"dry_fit", dryFit},
                            {"boat", QString::fromStdString(io::writeBoat(alone))}};
    return QJsonDocument(about).toJson(QJsonDocument::Compact).toStdString();
}

QJsonObject aboutIn(const schedule::DayLog& log) {
    return QJsonDocument::fromJson(QByteArray::fromStdString(log.about)).object();
}

plan::DayInHand dayOf(const model::Boat& boat, int index, int gluing, bool dryFit) {
    return plan::dayInHand(boat.pieces.at(static_cast<std::size_t>(index)), plan::shopOf(boat), gluing, dryFit);
}

// What has been saved of a day that cannot be gone on with, an entry a line.
QString entriesOf(const schedule::DayLog& log) {
    QStringList entries;
    for (const schedule::LogLine& line : log.lines) {
        QString entry = QString::fromStdString(units::writeDuration(line.event.at_s)) + ": " +
                        QString::fromUtf8(schedule::eventWord(line.event.kind).data());
        if (line.event.task >= 0) entry += RunningDay::tr(", task %1").arg(line.event.task + 1);
        if (line.event.kind == EventKind::airTyped) entry += QStringLiteral(", %1 C").arg(line.event.air_C);
        if (line.event.strip > 0) entry += RunningDay::tr(", strip %1").arg(line.event.strip);
        entries << entry;
    }
    return entries.join(QLatin1Char('\n'));
}

LeftDay leftDay(const QString& path, const QDateTime& changed) {
    LeftDay left;
    left.path = path;
    left.begun = QLocale().toString(changed, QLocale::ShortFormat);
    try {
        const schedule::DayLog log = schedule::loadDayLog(pathOf(path));
        left.entries = entriesOf(log);
        if (!log.lines.empty()) {
            left.begun = QLocale().toString(QDateTime::fromSecsSinceEpoch(qint64(log.lines.front().clocks.wall_s)),
                                            QLocale::ShortFormat);
        }
        if (log.aboutLost) {
            left.lost = RunningDay::tr("The first line of its log, which has the plan, is damaged.");
            return left;
        }
        const QJsonObject about = aboutIn(log);
        left.fileName = about["file"].toString();
        left.dryFit = about["dry_fit"].toBool();
        const model::Boat boat = io::readBoat(about["boat"].toString().toStdString());
        if (boat.pieces.empty() || log.lines.empty()) {
            left.lost = RunningDay::tr("Its log does not say what it is of.");
            return left;
        }
        left.piece = QString::fromStdString(boat.pieces.front().name);
    } catch (const units::InputError& error) {
        left.lost = QString::fromUtf8(error.what());
    }
    return left;
}

}  // namespace

RunningDay::RunningDay(plan::DayInHand day, schedule::DayLogWriter log, QString path, QString fileName,
                       ReadClocks clocks)
    : day_(std::move(day)),
      log_(std::move(log)),
      path_(std::move(path)),
      fileName_(std::move(fileName)),
      clocks_(std::move(clocks)) {}

std::unique_ptr<RunningDay> RunningDay::begin(const QString& folder, const model::Boat& boat, int index,
                                              const QString& fileName, int gluing, bool dryFit,
                                              const ReadClocks& clocks) {
    plan::DayInHand day = dayOf(boat, index, gluing, dryFit);
    QDir().mkpath(folder);
    const QString path = folder + "/" + QUuid::createUuid().toString(QUuid::WithoutBraces) + ".day";
    auto lock = lockFor(path);
    if (!lock->tryLock(0)) {
        throw units::InputError(
            "", "the day's log in " + folder.toStdString() + " could not be written: nothing can be locked there",
            "make room on the disk and see that you may write there");
    }
    const schedule::Clocks start = clocks();
    auto log = schedule::DayLogWriter::begin(pathOf(path), aboutOf(boat, index, fileName, gluing, dryFit), start);
    std::unique_ptr<RunningDay> running(new RunningDay(std::move(day), std::move(log), path, fileName, clocks));
    running->mine_ = std::move(lock);
    running->first_ = running->anchor_ = {{EventKind::started, 0}, start};
    running->events_ = {running->first_.event};
    running->jobs_ = plan::jobsOf(running->day_, running->events_);
    running->look();
    return running;
}

std::unique_ptr<RunningDay> RunningDay::goOn(const LeftDay& left, const ReadClocks& clocks) {
    const schedule::DayLog log = schedule::loadDayLog(pathOf(left.path));
    const QJsonObject about = aboutIn(log);
    if (log.aboutLost) {
        throw units::InputError("", "the first line of this log, which has the plan, is damaged", "begin the day anew");
    }
    const model::Boat boat = io::readBoat(about["boat"].toString().toStdString());
    if (boat.pieces.empty() || log.lines.empty()) {
        throw units::InputError("", "this log of a day does not say what it is of", "begin the day anew");
    }
    plan::DayInHand day = dayOf(boat, 0, about["gluing"].toInt(), about["dry_fit"].toBool());
    auto lock = lockFor(left.path);
    if (!lock->tryLock(0)) {
        if (lock->error() == QLockFile::LockFailedError) {
            throw units::InputError("", "another window goes on with this day already", "use that one");
        }
        throw units::InputError("", "the day's log cannot be added to: nothing can be locked beside it",
                                "make room on the disk and see that you may write there");
    }
    std::unique_ptr<RunningDay> running(new RunningDay(std::move(day), schedule::DayLogWriter::goOn(pathOf(left.path)),
                                                       left.path, about["file"].toString(), clocks));
    running->mine_ = std::move(lock);
    for (const schedule::LogLine& line : log.lines) running->events_.push_back(line.event);
    running->jobs_ = plan::jobsOf(running->day_, running->events_);
    running->first_ = log.lines.front();
    const schedule::Clocks now = clocks();
    const schedule::DayTime time = schedule::dayTimeAt(log.lines.back(), now);
    running->anchor_ = {{EventKind::started, time.at_s}, now};
    running->reopened_ = QString::fromStdString(time.said);
    if (log.aboutMended) {
        running->reopened_ += tr(" One wrong bit in the log's plan was put right.");
    }
    if (log.damaged > 0) {
        running->reopened_ +=
            tr(" %n line(s) of its log could not be read and are missing from what is shown.", nullptr, log.damaged);
    }
    running->look();
    return running;
}

std::vector<LeftDay> RunningDay::leftBehind(const QString& folder) {
    std::vector<LeftDay> found;
    for (const QFileInfo& info : QDir(folder).entryInfoList({"*.day"}, QDir::Files, QDir::Time)) {
        const QString path = info.filePath();
        if (isHeld(lockOf(path))) continue;
        found.push_back(leftDay(path, info.lastModified()));
    }
    return found;
}

void RunningDay::forget(const LeftDay& left) {
    QFile::remove(left.path);
    QFile::remove(lockOf(left.path));
}

double RunningDay::at() const {
    const schedule::Clocks now = clocks_();
    return anchor_.event.at_s + now.up_s - anchor_.clocks.up_s;
}

const schedule::Now& RunningDay::look() {
    now_ = schedule::stateAt(jobs_, events_, at());
    return now_;
}

double RunningDay::startAt_s() const {
    const QTime begun = QDateTime::fromSecsSinceEpoch(qint64(first_.clocks.wall_s)).time();
    return begun.msecsSinceStartOfDay() / 1000.0;
}

double RunningDay::air_C() const {
    double air_C = day_.piece.glue.air_C;
    for (const Event& event : events_) {
        if (event.kind == EventKind::airTyped) air_C = event.air_C;
    }
    return air_C;
}

QString RunningDay::toldOfTime() const {
    const double moved_s = schedule::wallMovedSince(anchor_, clocks_());
    if (std::abs(moved_s) < movedBy_s) return reopened_;
    return reopened_ + (reopened_.isEmpty() ? "" : " ") +
           tr("The computer's clock was set %1 by %n minute(s). The day's time does not jump with it.", nullptr,
              int(std::lround(std::abs(moved_s) / 60)))
               .arg(moved_s < 0 ? tr("back") : tr("forward"));
}

model::Record RunningDay::record() const {
    const QString when =
        QDateTime::fromSecsSinceEpoch(qint64(first_.clocks.wall_s)).toString(QStringLiteral("yyyy-MM-ddTHH:mm"));
    return plan::recordOf(day_, events_, when.toStdString());
}

bool RunningDay::say(Event event) {
    if (now_.stopped) return false;
    const schedule::Clocks clocks = clocks_();
    event.at_s = anchor_.event.at_s + clocks.up_s - anchor_.clocks.up_s;
    try {
        log_.append(event, clocks);
    } catch (const units::InputError& error) {
        emit failed(QString::fromUtf8(error.what()));
        return false;
    }
    events_.push_back(event);
    if (event.kind == EventKind::airTyped) jobs_.push_back({event.at_s, plan::jobInAir(day_, event.air_C)});
    look();
    emit changed();
    return true;
}

bool RunningDay::done() {
    look();
    if (now_.doing.empty() || now_.paused) return false;
    int task = now_.doing.front();
    for (const int one : now_.doing) {
        if (now_.run.tasks[one].work != schedule::Work::mix) task = one;
    }
    const bool mixes = now_.run.tasks[task].work == schedule::Work::mix;
    return say({mixes ? EventKind::batchMixed : EventKind::done, 0, task});
}

bool RunningDay::batchMixed() {
    look();
    return now_.mixing && !now_.paused && say({EventKind::batchMixed, 0, *now_.mixing});
}

bool RunningDay::undo() {
    look();
    return now_.toUndo && say({EventKind::undone, 0, *now_.toUndo});
}

bool RunningDay::rest() {
    return say({now_.paused ? EventKind::resumed : EventKind::paused});
}

bool RunningDay::typeAir(double air_C) {
    return say({EventKind::airTyped, 0, -1, 0, air_C});
}

bool RunningDay::breakOff(int afterStrip) {
    return say({afterStrip > 0 ? EventKind::brokenOff : EventKind::carriedOn, 0, -1, afterStrip});
}

bool RunningDay::stop() {
    return say({EventKind::stopped});
}

void RunningDay::forgetLog() {
    QFile::remove(path_);
    mine_.reset();
}

}  // namespace fayline::app

#include "moc_running_day.cpp"
