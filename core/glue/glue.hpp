// The glue of a piece: faces, amounts, batches, conditions, and when clamps come off.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/glue/adhesive.hpp"
#include "core/glue/pot_life.hpp"
#include "core/measure/source.hpp"

namespace fayline::glue {

// One glue line: between strip `inner` (0: the form, the boat) and strip `outer`.
struct GlueLine {
    int inner = 0;
    int outer = 1;
    int gluing = 0;          // which gluing it belongs to, 0 the first
    double area_m2 = 0;      // of one face, as bent, over-run included
    double endGrain_m2 = 0;  // of scarf faces in it
    bool dry = false;
};

enum class BatchFor { wetOut, spread, endGrain };

struct Batch {
    int number = 1;
    int gluing = 0;
    BatchFor use = BatchFor::spread;
    std::array<double, 2> parts_kg{};  // rounded to what scale or cup reads
    std::array<double, 2> parts_m3{};
    double filler_kg = 0;
    double thinner_kg = 0;
    double area_m2 = 0;      // what it covers
    double potLife_s = 0;    // until the cup goes off
    double useWithin_s = 0;  // by when it must be used, margin taken
    double takes_s = 0;      // to use it up at this crew's rates
    double peak_C = 0;
    bool smokes = false;
    double fills = 0;  // share of the vessel
};

// The same amount in other vessels or portions, for comparison.
struct VesselTried {
    boat::Vessel vessel = boat::Vessel::cup;
    double mass_kg = 0;
    double potLife_s = 0;
    double peak_C = 0;
};

struct GluePlan {
    std::string adhesive;  // id
    std::string adhesiveName;
    std::vector<GlueLine> lines;
    double area_m2 = 0;   // of faces that are wetted, both sides counted
    double mixed_kg = 0;  // resin and hardener, waste counted
    double wetOut_kg = 0;
    double spread_kg = 0;
    double endGrain_kg = 0;
    std::array<double, 2> parts_kg{};
    std::array<double, 2> parts_m3{};
    double filler_kg = 0;
    double thinner_kg = 0;
    std::vector<Batch> batches;
    std::vector<VesselTried> vessels;
    Kinetics kinetics;
    double openTime_s = 0;    // of a film in this air
    double slowdown = 1;      // spreading slows as the mix gets colder and thicker: rate over that at 20 C
    double woodMoisture = 0;  // that the wood comes to in this air
    double dewPoint_C = 0;
    double clampsOff_s = 0;  // after the last clamp is on, by the night's temperatures
    double work_s = 0;       // it can be planed
    double full_s = 0;
    double scrapeFrom_s = 0;  // squeeze-out can be scraped, after closing
    double scrapeUntil_s = 0;
    std::vector<double> cureAt_s;  // for a plot: degree of cure over time
    std::vector<double> cure;
};

// The lines are given by the caller, who knows the stack. Throws InputError with paths from `glue.`.
GluePlan planGlue(const boat::Piece& piece, const std::vector<Adhesive>& adhesives, const std::vector<GlueLine>& lines);

}  // namespace fayline::glue
