// Where proposed stations may stand, and how much of the glue line each presses.
#pragma once

#include <atomic>
#include <limits>
#include <vector>

#include "core/holding/held.hpp"
#include "core/holding/pressing.hpp"
#include "core/laminate/layers.hpp"

namespace fayline::holding {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double hair_m = 1e-9;  // places no further apart are one

// A station with the stretch of line that it presses: the spacing that pressingNeed allows, half to each side, as far
// as something is behind; without bounds where the glue asks for no pressing.
struct Site {
    model::Station station;
    laminate::Run pressed;
    PadReach pad = {};
    // Where something is behind the strips for it to press against: on posts the one it stands on, else everywhere.
    laminate::Run behind = {-std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
};

struct Sites {
    double lineLength_m = 0;
    laminate::Run strips;               // along the line, over-run included
    std::vector<Site> free;             // of one tool, along the line: where a station may be put
    std::vector<Site> kept;             // stations that stay, along the line; straps and side clamps among them
    std::vector<laminate::Run> straps;  // what the straps kept press, ascending
};

// The places for `like` (its at_m does not count) on a grid of `grid_m` from the strips' start to their end, the end
// included, at most 2000 on the whole length: a pad lies on the strips, its middle over form or boat, and on no pad
// that is kept. On posts: the middle of each, and where the whole pad lies on one. `stop` is looked at between places.
Sites sitesOf(const StackOnForm& work, const laminate::Run& strips, const std::vector<laminate::Run>& support,
              const std::vector<model::Station>& kept, const model::Station& like, double grid_m,
              const std::atomic<bool>& stop);

// What a site presses when its pad presses `factor` times as far as it does.
laminate::Run pressedBy(const Site& site, double factor = 1);

// Along the line, or from its end back to its start.
enum class Way { onward, back };

// How far from the trim line where `way` begins the glue is pressed without a break by `pressed` (in any order) and the
// straps, metres along the line in that direction: at the line's length or beyond, all of it is.
double pressedFor_m(const Sites& sites, std::vector<laminate::Run> pressed, Way way);

// As many places of sites.free as have room beside each other, from the start on.
std::vector<int> allThatFit(const Sites& sites);

// Length of line that no place of sites.free and no station kept presses, metres.
double unpressable_m(const Sites& sites);

}  // namespace fayline::holding
