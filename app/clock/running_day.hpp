// A day that runs: its plan, what was said so far, and the log that keeps it. Has no face of its own.
//
// Every event is on the disk before anything shows it. The day ends when it is stopped and its record has been taken
// over; until then its log stays and is offered when the program starts again.
#pragma once

#include <QLockFile>
#include <QObject>
#include <QString>
#include <functional>
#include <memory>
#include <vector>

#include "core/plan/day/day_clock.hpp"
#include "core/schedule/day_log.hpp"

namespace fayline::app {

// The log of a day that a program which no longer runs has left behind.
struct LeftDay {
    QString path;
    QString fileName;  // of the boat; empty: it was never saved
    QString piece;
    QString begun;  // in the locale's words
    bool dryFit = false;
    QString lost;     // why it cannot be gone on with; empty: it can
    QString entries;  // what was said on that day as far as it can be read, an entry a line
};

class RunningDay : public QObject {
    Q_OBJECT
public:
    using ReadClocks = std::function<schedule::Clocks()>;

    // Begins a day of the piece of `boat` that `index` names, with a new log in `folder`. `fileName`: where the boat is
    // saved. Throws units::InputError when the piece cannot be planned or the log not be written.
    static std::unique_ptr<RunningDay> begin(const QString& folder, const model::Boat& boat, int index,
                                             const QString& fileName, int gluing, bool dryFit,
                                             const ReadClocks& clocks = schedule::readClocks);
    // Goes on with a day left behind, with the plan that it was begun with. Throws units::InputError.
    static std::unique_ptr<RunningDay> goOn(const LeftDay& left, const ReadClocks& clocks = schedule::readClocks);

    // The newest first, those too whose log is damaged. Those of running programs are theirs.
    static std::vector<LeftDay> leftBehind(const QString& folder);
    static void forget(const LeftDay& left);

    const plan::DayInHand& day() const { return day_; }
    const QString& fileName() const { return fileName_; }
    const std::vector<schedule::Event>& events() const { return events_; }
    double at() const;                                 // seconds of the day, now
    const schedule::Now& now() const { return now_; }  // as of the last look
    const schedule::Now& look();                       // as of now
    double startAt_s() const;                          // seconds after local midnight at which it began
    double air_C() const;                              // typed last
    QString toldOfTime() const;                        // what is to be known of its clocks; empty: nothing
    model::Record record() const;

    // What was said. False and failed() when it could not be written: then it does not count.
    bool done();        // what the hands are at, mixing aside where others do something else
    bool batchMixed();  // the batch under way, or the next one, mixed ahead
    bool undo();        // what was done last
    bool rest();        // or go on
    bool typeAir(double air_C);
    bool breakOff(int afterStrip);  // 0: all strips after all
    bool stop();

    // The record is where it belongs: the log is no longer needed.
    void forgetLog();

signals:
    void changed();
    void failed(const QString& why);

private:
    RunningDay(plan::DayInHand day, schedule::DayLogWriter log, QString path, QString fileName, ReadClocks clocks);
    bool say(schedule::Event event);

    plan::DayInHand day_;
    schedule::DayLogWriter log_;
    QString path_;
    QString fileName_;
    ReadClocks clocks_;
    std::unique_ptr<QLockFile> mine_;
    std::vector<schedule::Event> events_;
    std::vector<schedule::JobFrom> jobs_;
    schedule::LogLine first_;
    schedule::LogLine anchor_;  // day time and clocks that belong together, on this start of the machine
    QString reopened_;          // what was to be said when it was opened again
    schedule::Now now_;
};

}  // namespace fayline::app
