// A gluing small enough to be worked by hand.
#pragma once

#include "core/schedule/run.hpp"

namespace fayline::made {

// Three strips on a solid form, so two faces: 0.10 m2 between strips 1 and 2, 0.14 m2 between 2 and 3. Each is wetted
// and spread on both sides. Cup 1 is for the wet-out, cups 2 and 3 for the paste, each good for 20 minutes. A pair of
// hands wets 0.12 m2 and spreads 0.06 m2 a minute, turns or lays a strip in 30 s, wipes all faces in 2 min, scrapes
// in 10.
inline schedule::Job threeStrips(int hands) {
    return {.hands = hands,
            .strips = {{1, 0.10, 0.10}, {2, 0.24, 0.24}, {3, 0.14, 0.14}},
            .faces = {1, 2},
            .cups = {{1, schedule::CupFor::wetOut, 1200, 0.48},
                     {2, schedule::CupFor::spread, 1200, 0.24},
                     {3, schedule::CupFor::spread, 1200, 0.24}},
            .stations = {{4, "clamp", 60}, {5, "clamp", 60}, {6, "prop", 120}},
            .openTime_s = 3600,
            .mix_s = 240,
            .wetOut_m2_s = 0.12 / 60,
            .spread_m2_s = 0.06 / 60,
            .stackStrip_s = 30,
            .carry_s = 180,
            .place_s = 60,
            .scrape_s = 600,
            .wipe_s = 120};
}

}  // namespace fayline::made
