// Locks of files that one running program has for itself.
#pragma once

#include <QString>

namespace fayline::app {

// Whether a program that runs holds the lock at `path`. The lock of one that was killed stays; Qt sees by the number of
// its process that it is dead. A lock that cannot be tried, since the disk is full or the folder may not be written,
// is held by nobody.
bool isHeld(const QString& path);

}  // namespace fayline::app
