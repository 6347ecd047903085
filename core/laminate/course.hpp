// The places along a line at which a stack is looked at, and where something is greatest along them.
#pragma once

#include <functional>
#include <vector>

#include "core/laminate/layers.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::laminate {

// Where the strips lie, and the line there.
struct Course {
    double side = 1;                  // +1 where the strips lie to the left of the line, else -1
    double length_m = 0;              // of the line
    Run run;                          // over-run included
    std::vector<line::Place> places;  // 10 mm apart on the line's own grid, with the trim lines and the ends
    std::vector<line::Place> peaks;   // between them, where the curvature peaks near its greatest of either sense
};
Course courseOf(const model::Stack& stack, model::Side side, const line::Line& line);

struct Peak {
    double value = 0;
    line::Place place;
};

// The greatest `value`, 0 or more, over the places and peaks of the course within `run` and at the ends of `run`; of
// equals the first. `refine` searches on round the best of them, for what peaks elsewhere than the line's curvature.
Peak greatest(const Course& course, const line::Line& line, const Run& run,
              const std::function<double(const line::Place&)>& value, bool refine);

}  // namespace fayline::laminate
