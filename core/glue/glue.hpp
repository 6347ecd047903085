// The glue of a piece: faces, amounts, batches, conditions, and when clamps come off.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/glue/adhesive.hpp"
#include "core/glue/cure.hpp"
#include "core/glue/pot_life.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::glue {

// One glue line: between strip `inner` (0: the form, the boat) and the next; or the plane of a scarf.
struct GlueLine {
    int inner = 0;
    int gluing = 0;               // which gluing it belongs to, 0 the first
    double area_m2 = 0;           // of one face, as bent, over-run included
    bool scarf = false;           // end grain is cut: it drinks more
    double thickness_m = 0.3e-3;  // that it shall have once pressed
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
    double area_m2 = 0;                 // of faces that it covers once
    double takes_s = 0;                 // mixing, and to use it up at this crew's rates
    Between potLife_s;                  // from mixing until the cup goes off
    double useWithin_s = 0;             // by when it is to be used up: shareOfPotLife of the shortest that it may last
    double fills = 0;                   // share of the vessel
    std::optional<Between> leftPeak_C;  // of what is left over in the vessel (the waste); nothing: nothing is
    Between fullPeak_C;                 // if the whole of it is left standing
    double ratioError = 0;              // of the parts as rounded, share of the ratio
    bool inTime = true;                 // takes_s within useWithin_s

    double mixed_kg() const { return parts_kg[0] + parts_kg[1]; }
};

// So much of the pot life may be planned for; the rest is kept in hand. Common practice, no source.
inline constexpr double shareOfPotLife = 0.7;
// More than this of a mix that heats itself is not put into one cup (into a tray it is), unless the data sheet's points
// say how its mass hastens it. Common practice, no source; makers advise against held masses from 100 g (P) and 8 fl
// oz, some 260 g (P), on.
inline constexpr double mostInCup_kg = 0.300;
// A vessel is filled so far at most, to leave room to stir. Common practice, no source.
inline constexpr double fillsAtMost = 0.7;
// End grain is wetted with so many times the wet-out. Common practice, no source.
inline constexpr double endGrainDrinks = 2;
// More batches than this nobody mixes.
inline constexpr int mostBatches = 200;

// The same mix in another vessel or portion, for comparison.
struct VesselTried {
    model::Vessel vessel = model::Vessel::cup;
    double mixed_kg = 0;
    Between potLife_s;
    Between peak_C;
};

// What was tried for a batch that is not used up in time.
enum class CupRemedyKind { smallerCups, tray, slowerGlue };
struct CupRemedy {
    CupRemedyKind kind = CupRemedyKind::smallerCups;
    std::string adhesive;  // of a slower glue: its name
    double mixed_kg = 0;   // of one batch
    double takes_s = 0;
    Between potLife_s;
    bool mends = false;
};

// Where the glue goes, resin and hardener without what is added: line_kg + soaksIn_kg + squeezedOut_kg + waste_kg is
// GluePlan::mixed_kg.
struct Amounts {
    double joint_m2 = 0;        // one for each two faces
    double applied_kg = 0;      // on the faces, without waste
    double wanted_kg = 0;       // of lines as thick as they shall be
    double line_kg = 0;         // what stays in the lines: as wanted, or what there is for them where that is less
    double soaksIn_kg = 0;      // into the wood
    double squeezedOut_kg = 0;  // what the lines do not hold
    double waste_kg = 0;        // what stays in cups and on tools, and what scale or marks round up
    double perJoint_kg_m2() const { return joint_m2 > 0 ? applied_kg / joint_m2 : 0; }
};

// Share of a wet-out that soaks into a face. Common practice, no source.
double soaksIn(model::Faces faces);

struct GluePlan {
    Adhesive adhesive;
    std::vector<GlueLine> lines;
    double area_m2 = 0;    // of faces that are wetted out, both of each line
    double needed_kg = 0;  // resin and hardener that the faces take, waste counted
    double mixed_kg = 0;   // as mixed in the batches
    Amounts amounts;
    std::array<double, 2> parts_kg{};  // sums over the batches
    std::array<double, 2> parts_m3{};
    double filler_kg = 0;
    double thinner_kg = 0;
    std::vector<Batch> batches;          // gluing by gluing: end grain, wet-out, spread
    std::vector<VesselTried> vessels;    // of the largest batch: as given, the other vessel, half of it in each
    std::vector<CupRemedy> cupRemedies;  // tried for the first batch that is not in time; empty where all are
    Kinetics kinetics;                   // the likeliest, which the cure goes by
    Fitted fitted;
    std::shared_ptr<const KnownLives> lives;  // that were asked for, for the next plan
    double openTime_s = 0;                    // of a film in this air
    double slowdown = 1;                      // rates of wetting and spreading over those at 20 C
    double airMoisture = 0;                   // that wood comes to in this air
    double dewPoint_C = 0;
    CurePlan cure;
};

// Rates of wetting out and spreading in this air over those at 20 C: a mix grows twice as thick for each 5 K colder (an
// aircraft kit's manual, P), and spreading slows with the cube root of that (C).
double slowdownAt(double air_C);

// The glue for these lines, which the caller finds from the stack. `adhesives`: the user's own before the built-in
// ones. `closedAt_s`: when the last clamp is on, seconds after midnight. `before`: an earlier plan, whatever it was
// for, or null: what it knows of the same glue is not worked out again; the answer is the same to the bit.
//   (1) the batches' parts add up to parts_kg, and each face's need is met
//   (2) of each use and gluing the fewest equal batches that fit vessel, mostInCup_kg and pot life
// Throws InputError with paths from `glue.`: a glue that is not known, whose parts cannot be mixed or whose pot lives
// contradict, more glue than mostBatches vessels hold.
GluePlan planGlue(const model::Glue& glue, const model::Crew& crew, const std::vector<Adhesive>& adhesives,
                  const std::vector<GlueLine>& lines, double closedAt_s, const GluePlan* before = nullptr);

// By when a batch of this mass is to be used up if it is mixed in this air, seconds from mixing.
double usedWithin(const GluePlan& plan, const model::Glue& glue, double mixed_kg, double air_C);

// The glue with this id. Throws InputError with `path`.
const Adhesive& adhesiveNamed(const std::string& id, const std::string& path, const std::vector<Adhesive>& adhesives);

}  // namespace fayline::glue
