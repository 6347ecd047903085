// The glue of a piece: faces, amounts, batches, conditions, and when clamps come off.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/glue/adhesive.hpp"
#include "core/glue/cure.hpp"
#include "core/glue/pot_life.hpp"
#include "core/measure/source.hpp"

namespace fayline::glue {

// One glue line: between strip `inner` (0: the form, the boat) and the next; or the plane of a scarf.
struct GlueLine {
    int inner = 0;
    int gluing = 0;      // which gluing it belongs to, 0 the first
    double area_m2 = 0;  // of one face, as bent, over-run included
    bool scarf = false;  // end grain is cut: it drinks more
};

enum class BatchFor { wetOut, spread, endGrain };

struct Batch {
    int number = 1;  // through the day
    int gluing = 0;
    BatchFor use = BatchFor::spread;
    std::array<double, 2> parts_kg{};  // as scale or cup reads
    std::array<double, 2> parts_m3{};
    double filler_kg = 0;
    double thinner_kg = 0;
    double area_m2 = 0;      // of faces that it covers once
    double takes_s = 0;      // mixing, and to use it up at this crew's rates
    double potLife_s = 0;    // from mixing until the cup goes off
    double useWithin_s = 0;  // by when it is to be used up, some kept in hand
    double fills = 0;        // share of the vessel
    double leftPeak_C = 0;   // of what is left over in the vessel (the waste)
    double fullPeak_C = 0;   // if the whole of it is left standing
    double ratioError = 0;   // of the parts as rounded, share of the ratio
    bool inTime = true;      // takes_s within useWithin_s

    double mixed_kg() const { return parts_kg[0] + parts_kg[1]; }
};

// So much of the pot life may be planned for; the rest is kept in hand. Common practice, no source.
inline constexpr double shareOfPotLife = 0.75;
// A vessel is filled so far at most, to leave room to stir. Common practice, no source.
inline constexpr double fillsAtMost = 0.7;
// End grain is wetted with so many times the wet-out. Common practice, no source.
inline constexpr double endGrainDrinks = 2;
// More batches than this nobody mixes.
inline constexpr int mostBatches = 200;

// The same mix in another vessel or portion, for comparison.
struct VesselTried {
    boat::Vessel vessel = boat::Vessel::cup;
    double mixed_kg = 0;
    double potLife_s = 0;
    double peak_C = 0;
};

struct GluePlan {
    Adhesive adhesive;
    std::vector<GlueLine> lines;
    double area_m2 = 0;                // of faces that are wetted out, both of each line
    double needed_kg = 0;              // resin and hardener that the faces take, waste counted
    double mixed_kg = 0;               // as mixed in the batches
    std::array<double, 2> parts_kg{};  // sums over the batches
    std::array<double, 2> parts_m3{};
    double filler_kg = 0;
    double thinner_kg = 0;
    std::vector<Batch> batches;        // gluing by gluing: end grain, wet-out, spread
    std::vector<VesselTried> vessels;  // of the largest batch: as given, the other vessel, half of it in each
    Kinetics kinetics;
    double openTime_s = 0;   // of a film in this air
    double slowdown = 1;     // rates of wetting and spreading over those at 20 C
    double airMoisture = 0;  // that wood comes to in this air
    double dewPoint_C = 0;
    CurePlan cure;
};

// Rates of wetting out and spreading in this air over those at 20 C: a mix grows twice as thick for each 5 K colder (an
// aircraft kit's manual, P), and spreading slows with the cube root of that (C).
double slowdownAt(double air_C);

// The glue for these lines, which the caller finds from the stack. `adhesives`: the user's own before the built-in
// ones. `closedAt_s`: when the last clamp is on, seconds after midnight.
//   (1) the batches' parts add up to parts_kg, and each face's need is met
//   (2) of each use and gluing the fewest equal batches that fit vessel and pot life
// Throws InputError with paths from `glue.`: a glue that is not known, whose parts cannot be mixed or whose pot lives
// contradict, more glue than mostBatches vessels hold.
GluePlan planGlue(const boat::Glue& glue, const boat::Crew& crew, const std::vector<Adhesive>& adhesives,
                  const std::vector<GlueLine>& lines, double closedAt_s);

// The glue with this id. Throws InputError with `path`.
const Adhesive& adhesiveNamed(const std::string& id, const std::string& path, const std::vector<Adhesive>& adhesives);

}  // namespace fayline::glue
