// Work of seconds that the user waits for, off the window's thread. It has a thread of its own and not the planner's,
// because it must neither wait behind studies nor be given up when something newer is asked for.
#pragma once

#include <QString>
#include <atomic>
#include <functional>

class QWidget;

namespace fayline::app {

// What such work is given: it looks at `stop` every few milliseconds and ends once that is set; it may tell how many of
// how many steps are done. Both from the thread of the work.
struct AtWork {
    const std::atomic<bool>& stop;
    std::function<void(int done, int of)> onStep;
};

// Runs `work` on a thread of its own. The window goes on painting; when it takes longer than a moment, a dialog over
// `parent` says `what` is done, how far it is, and stops it when asked to. True: the work was done; false: it was
// stopped, or the program ends. What the work throws is thrown here.
bool runAtWork(QWidget* parent, const QString& what, const std::function<void(const AtWork&)>& work);

}  // namespace fayline::app
