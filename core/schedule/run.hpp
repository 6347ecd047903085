// The timed run of a gluing: who does what when, and when each face is wetted, closed, and gone off.
//
// Plain data in, plain data out: what is to be done comes from `plan`, which knows stack, holding and glue. Time 0 is
// the start of the first task; all times are seconds.
//
// The practised order: faces are wiped or sanded; the end grain of scarfs and then strip after strip is wetted out on
// both faces, turned over and laid on the pile, which so comes out reversed; spread in reverse from the top of the pile
// the order is restored. The face on the boat, or of what has cured on the form, comes last; then all carry the stack,
// lay the fixed end down and close station after station. Squeeze-out is scraped at the end.
//
// Hands are pairs of hands. A cup is mixed by one pair, and as late as can be: from when the others begin the last
// strip of the cup before it, wet-out or spread, or, with one pair, after it. Where the wet-out is to soak in, the cup
// after it is mixed in the last minutes of that. Other work is done by as many as can stand at it (two at a strip or a
// station). Each task begins as soon as what it waits for is done and its hands are free, in the order of the list.
// Source: common practice, no source.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace fayline::schedule {

enum class Work { wipe, sand, mix, wetOut, soak, spread, carry, place, close, scrape };

struct StationJob {
    int number = 1;    // as on paper
    std::string kind;  // "clamp"
    double takes_s = 60;
};

enum class CupFor { endGrain, wetOut, spread };

struct CupJob {
    int number = 1;
    CupFor use = CupFor::spread;
    double useWithin_s = 0;  // from the start of mixing
    double area_m2 = 0;      // of faces that it covers once
};

// What there is to wet and spread of one strip; of the face on the boat `strip` is 0.
struct StripJob {
    int strip = 1;
    double wet_m2 = 0;      // both faces, as far as they get glue
    double spread_m2 = 0;   // coats of both faces together
    bool hasCured = false;  // it is on the form from an earlier gluing: its face is glued where it is, nobody turns it

    bool isFixed() const { return strip == 0 || hasCured; }
};

// All that a gluing asks for.
struct Job {
    int gluing = 0;
    int hands = 2;
    std::vector<StripJob> strips;      // from the form outwards; the boat's face, if it is glued, first
    std::vector<int> faces;            // glue lines, each named by its inner strip (0: on the boat)
    double endGrain_m2 = 0;            // of scarf faces, both sides
    std::vector<CupJob> cups;          // in order of use: end grain, wet-out, spread
    std::vector<StationJob> stations;  // in closing order
    double openTime_s = 0;             // of a film, from wetting
    double mix_s = 0;
    double wetOut_m2_s = 0;  // by one pair of hands
    double spread_m2_s = 0;
    double stackStrip_s = 0;
    double carry_s = 0;
    double place_s = 0;
    double soak_s = 0;
    double scrape_s = 0;  // by one pair of hands; the next three likewise
    double wipe_s = 0;
    double sand_s = 0;
};

struct Task {
    Work work = Work::mix;
    std::string name;    // "wet out strip 3, turn it over"
    double takes_s = 0;  // with its hands
    int hands = 1;
    std::vector<int> after;  // tasks that it waits for
    int strip = -1;          // 0: the boat's face; -1: none
    int station = 0;         // number; 0: none
    int cup = 0;             // number of the cup that is mixed or used; 0: none
    double start_s = 0;
    double end_s = 0;
    std::vector<int> lanes;  // which hands, for the chart
};

// A glue line: from the first wetting of either face until it is pressed along its whole length.
struct FaceTimes {
    int inner = 0;  // between strip `inner` and the next; 0: on the boat
    double wetted_s = 0;
    double closed_s = 0;
    double openUntil_s = 0;
    double margin_s() const { return openUntil_s - closed_s; }
};

struct CupTimes {
    int number = 1;
    double mixedFrom_s = 0;
    double emptied_s = 0;
    double useBy_s = 0;
    double margin_s() const { return useBy_s - emptied_s; }
};

struct Run {
    int hands = 1;
    std::vector<Task> tasks;  // in the order of the list
    std::vector<FaceTimes> faces;
    std::vector<CupTimes> cups;
    int worstFace = -1;  // index into faces
    int worstCup = -1;
    double closed_s = 0;  // the last station is on
    double end_s = 0;

    // The least margin of any face, and of any cup; 0 without one.
    double margin_s() const { return worstFace < 0 ? 0 : faces[worstFace].margin_s(); }
    double cupMargin_s() const { return worstCup < 0 ? 0 : cups[worstCup].margin_s(); }
};

// The tasks of a job with their times.
// Throws InputError (`crew.hands`, `crew.rates.wet_out_m2_min`, ...) for hands below one and rates of nothing.
Run runOf(const Job& job);

// Start and end of each task of `run` when task i takes `factors[i]` times as long and begins `delays_s[i]` after it
// could (both as long as the tasks, or empty: none); faces, cups and ends follow.
void retime(const Job& job, const std::vector<double>& factors, const std::vector<double>& delays_s, Run& run);

// A word for each task that stays the same whatever language it is named in and is its alone: "spread:3" by strip
// (0: the boat's face; "end_grain"), "mix:2" by cup, "close:4" by station, "carry"; the second part of one
// "spread:3:2".
std::vector<std::string> taskWords(const Run& run);

// The whole crew rests, or waits.
struct Pause {
    double from_s = 0;
    double to_s = 0;
};

// What is known of a task on the day itself.
struct Happened {
    std::optional<double> start_s;
    std::optional<double> end_s;
    bool leftOut = false;  // not done on this day: takes no time and no hands
};

// Times of `run` as they happened and as the rest follows from that at `now_s`. A task that has ended keeps its end;
// its start, where it is not known, is when it could begin, and if that was after its end as long before as it is
// planned to take. One under way ends as planned, pauses added, but not before `now_s`; one that needs nobody ends by
// itself. Nothing begins during a pause. Lanes follow too.
void retimeAsHappened(const Job& job, const std::vector<Happened>& happened, const std::vector<Pause>& pauses,
                      double now_s, Run& run);

// From `start_s` to `end_s` without the pauses.
double workedFor(double start_s, double end_s, const std::vector<Pause>& pauses);

}  // namespace fayline::schedule
