// The timed run of a gluing: who does what when, and when each face is wetted, closed, and gone off.
//
// Plain data in, plain data out: what is to be done comes from `plan`, which knows stack, holding and glue. Time 0 is
// the start of the first task on the clock; all times are seconds.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace fayline::schedule {

enum class Work { wipe, sand, mix, wetOut, soak, spread, stack, carry, place, close, scrape, wash };

struct StationJob {
    int number = 1;       // as on paper
    std::string kind;     // "clamp"
    double takes_s = 60;  // one pair of hands
};

struct BatchJob {
    int number = 1;
    bool wetOut = false;     // else thickened
    double useWithin_s = 0;  // from the end of mixing
    double area_m2 = 0;
};

struct StripJob {
    int place = 1;
    double innerFace_m2 = 0;  // area of each face that gets glue; 0: none
    double outerFace_m2 = 0;
};

// All that a gluing asks for, in the practised order.
struct Job {
    int gluing = 0;
    int hands = 2;                     // pairs of hands
    std::vector<StripJob> strips;      // from the form outwards
    double baseFace_m2 = 0;            // on the form or boat; 0: none
    std::vector<BatchJob> batches;     // wet-out first, in order of use
    std::vector<StationJob> stations;  // in closing order
    double openTime_s = 0;             // of a film, from wetting
    double mix_s = 0;
    double wetOut_m2_s = 0;  // by one pair of hands, slowdown counted
    double spread_m2_s = 0;
    double stackStrip_s = 0;
    double carry_s = 0;
    double place_s = 0;
    double soak_s = 0;
    double scrape_s = 0;      // in all
    double scrapeFrom_s = 0;  // after the last station
    double wipe_s = 0;        // in all, before the first wetting
    double sand_s = 0;
    bool bothFacesSpread = true;
};

struct Task {
    Work work = Work::mix;
    std::string name;  // "wet out strip 3, then turn it over"
    double start_s = 0;
    double end_s = 0;
    int hands = 1;  // pairs of hands at it
    int lane = 0;   // of the first pair of hands, for the chart
    int strip = 0;
    int station = 0;
    int batch = 0;
    std::vector<int> after;  // tasks it waits for
};

struct FaceTimes {
    int inner = 0;        // between strip `inner` and `inner + 1`; 0: the form
    double wetted_s = 0;  // the earlier of its two faces
    double spread_s = 0;
    double closed_s = 0;  // pressed along its whole length
    double openUntil_s = 0;
    double margin_s = 0;
};

struct CupTimes {
    int batch = 1;
    double mixed_s = 0;
    double emptied_s = 0;
    double useBy_s = 0;
    double margin_s = 0;
};

struct Run {
    std::vector<Task> tasks;  // by start
    std::vector<FaceTimes> faces;
    std::vector<CupTimes> cups;
    int worstFace = 0;    // index into faces
    double margin_s = 0;  // the worst of faces and cups
    bool worstIsCup = false;
    int worstCup = 0;
    double closed_s = 0;  // the last station
    double end_s = 0;
};

// The run of a job with these durations. `factors`: one for each task in order, to stretch its duration by; empty: 1.
// Throws InputError (`crew.hands: ...`) for hands below one, rates of nothing.
Run runOf(const Job& job, const std::vector<double>& factors = {});

}  // namespace fayline::schedule
