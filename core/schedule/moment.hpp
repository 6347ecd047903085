// What stands at one moment of a run as it is planned.
#pragma once

#include <vector>

#include "core/schedule/run.hpp"

namespace fayline::schedule {

enum class FaceState { dry, open, closed, goneOff };  // gone off: it was not closed in time

struct Moment {
    double at_s = 0;
    std::vector<int> doing;        // tasks under way
    std::vector<int> wetted;       // strips wetted out by then, ascending; 0: the face on the boat
    std::vector<int> spread;       // strips spread and laid down by then, ascending
    bool inPlace = false;          // the stack lies where it is closed
    std::vector<int> closed;       // numbers of the stations that are on, in closing order
    std::vector<FaceState> faces;  // as in Run::faces
    std::vector<int> cups;         // numbers of those mixed and not used up

    bool operator==(const Moment&) const = default;
};

// At `at_s` from the start, before which nothing stands. What ends at that very moment is done.
Moment momentOf(const Run& run, double at_s);

// The index of the face that is open and has least time left; -1: none is.
int mostPressing(const Run& run, const Moment& moment);

}  // namespace fayline::schedule
