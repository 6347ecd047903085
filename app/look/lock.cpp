#include "app/look/lock.hpp"

#include <signal.h>

#include <QFile>
#include <QLockFile>
#include <QSysInfo>
#include <cerrno>

namespace fayline::app {

namespace {

// By the number that a lock names: on a full disk Qt cannot take a dead program's lock away and calls it held.
bool isOfADeadProgram(const QLockFile& lock) {
    qint64 number = 0;
    QString machine, program;
    if (!lock.getLockInfo(&number, &machine, &program) || machine != QSysInfo::machineHostName()) return false;
    return kill(static_cast<pid_t>(number), 0) != 0 && errno == ESRCH;
}

}  // namespace

bool isHeld(const QString& path) {
    if (!QFile::exists(path)) return false;
    QLockFile lock(path);
    lock.setStaleLockTime(0);  // a long day does not make it stale
    if (lock.tryLock(0) || lock.error() != QLockFile::LockFailedError) return false;
    return !isOfADeadProgram(lock);
}

}  // namespace fayline::app
