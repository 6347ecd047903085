// A copy of unsaved work, kept beside the user's files and offered after the program ended before its time.
#pragma once

#include <QLockFile>
#include <QObject>
#include <QString>
#include <QThreadPool>
#include <memory>
#include <optional>
#include <vector>

#include "core/model/boat.hpp"

namespace fayline::app {

// A copy that a program which no longer runs has left behind.
struct LeftBehind {
    QString id;
    QString fileName;  // of the boat it is a copy of; empty: it was never saved
    QString boatName;
    QString when;  // of the copy, in the locale's words
};

class Recovery : public QObject {
    Q_OBJECT
public:
    // Keeps copies in `folder`, which is made when the first is written.
    explicit Recovery(const QString& folder, QObject* parent = nullptr);
    ~Recovery() override;  // waits for a copy being written

    // Writes the copy on a thread of its own, whole or not at all, and reads it back; then kept() or failed().
    void keep(const model::Boat& boat, const QString& fileName);
    bool keepNow(const model::Boat& boat, const QString& fileName);  // the same at once; false: failed()
    // Keeps what was read of a copy left behind as a copy of its own. The one left behind stays until that is on the
    // disk, now or with a later keep(), or until the work is saved or given up.
    void takeOver(const LeftBehind& copy, const model::Boat& boat);
    void drop();            // the work is saved or given up: no copy is wanted any more
    void waitForWriting();  // until all that was asked for is on the disk

    // The copies of programs that no longer run, newest first. Those of running ones are theirs.
    std::vector<LeftBehind> leftBehind() const;
    model::Boat read(const LeftBehind& copy) const;  // throws units::InputError
    void forget(const LeftBehind& copy);
    // The newest copy of that file that can be read; nothing: there is none.
    std::optional<LeftBehind> lastGoodCopyOf(const QString& fileName) const;
    QString copyPath(const LeftBehind& copy) const { return path(copy.id, ".fayline"); }

    static QString standardFolder();

signals:
    void kept();
    void failed(const QString& why);

private:
    void lock();
    bool write(const model::Boat& boat, const QString& fileName);  // kept() or failed(); on any thread
    void forgetTakenOver();
    QString path(const QString& id, const QString& ending) const;

    QString folder_;
    QString id_;
    std::unique_ptr<QLockFile>
        mine_;  // held while this program runs, so that nobody else takes its copy for left behind
    std::optional<LeftBehind> takenOver_;  // still on the disk
    // One thread, so that the last asked is the last written; not the planner's, since a copy does not wait for a plan.
    QThreadPool writing_;
};

}  // namespace fayline::app
