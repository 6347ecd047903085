// The day of a piece: its glue and its timed run, made from stack and holding.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/glue/glue.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"
#include "core/schedule/days.hpp"
#include "core/schedule/run.hpp"

namespace fayline::plan {

struct Shop;

enum class RemedyKind { moreHands, slowerGlue, coolerAir, trays, plannedBreak, fewerStrips };

// What would mend a short margin, tried by making the day anew.
struct Remedy {
    RemedyKind kind = RemedyKind::moreHands;
    Message what;               // "one more pair of hands"
    Message brief;              // the same for a table: at most some thirty letters
    std::string adhesive;       // of a slower glue: its id
    std::vector<Message> asks;  // what else it takes, in full sentences; may be empty
    double margin_s = 0;
    double cupMargin_s = 0;
    double chanceInTime = 0;
    int breakAfterStrip = 0;  // of a planned break, else 0
};

struct GluingDay {
    schedule::Job job;
    schedule::Run run;
};

struct DayPlan {
    glue::GluePlan glue;
    math::SharedList<GluingDay> gluings;  // one for each, in order
    int worstGluing = 0;
    double margin_s = 0;     // the least of any face, of all gluings
    double cupMargin_s = 0;  // of any cup
    double closed_s = 0;     // of the first gluing, from its start
};

// What takes longer than a frame.
struct DayStudy {
    schedule::Days days;    // of the worst gluing
    double paceMiddle = 1;  // of the simulated days, as given or by the record: see paceOf
    double paceScatter = 0;
    int paceFrom = 0;                           // recorded gluings
    std::vector<Remedy> remedies;               // the best margin first; empty where the margin is ample
    std::vector<glue::PotLifeByMass> potLives;  // in this air: in a cup, in a tray
};

// How many days are simulated, and from which seed.
inline constexpr int daysSimulated = 10'000;
inline constexpr unsigned daysSeed = 1;

// The glue lines of a stack: between neighbours that are glued, on the boat for work in place, and the planes of
// scarfs. Areas are of the strips as bent, with their rip allowance and over-run, along each line's own length.
std::vector<glue::GlueLine> glueLinesOf(const model::Piece& piece, const line::Line& line,
                                        const laminate::StackPlan& stack);

// `before`: as in glue::planGlue.
// Throws InputError with paths from `glue.` and `crew.`.
DayPlan planDay(const model::Piece& piece, const Shop& shop, const line::Line& line, const laminate::StackPlan& stack,
                const glue::GluePlan* before = nullptr);

// `stop` as in deepen.
std::optional<DayStudy> studyDay(const model::Piece& piece, const Shop& shop, const line::Line& line,
                                 const DayPlan& day, const std::atomic<bool>& stop);

// How fast this crew is on the days of this piece, and how far that scatters: as given, narrowed by the record.
struct Pace {
    double middle = 1;   // of the middle day, over what the rates say: 1.1 takes a tenth longer
    double scatter = 0;  // standard deviation of the logarithm
    int days = 0;        // recorded gluings that took part
};

// The pace given in `crew` counts as two days seen before, each at the planned pace and scattered as given; each
// recorded gluing adds the logarithm x of its real working minutes over the planned ones, by the present rates in that
// day's air. Middle and scatter are mean and standard deviation of all of these together:
//   m = sum x / (2 + n),   s^2 = (2 (given^2 + m^2) + sum (x - m)^2) / (2 + n)
// So three gluings that went just as planned narrow 20 % to 13 %, and gluings that differ widely widen it. A record
// counts that covers half of the planned work or more and took between a quarter and four times of it: what lies
// outside was not the work as planned. Dry fits do not count. That the given pace is worth two days is common practice,
// no source.
Pace paceOf(const model::Piece& piece, const Shop& shop, const DayPlan& day);

// All that a day can differ in, for schedule::simulateDays.
schedule::Uncertain uncertainOf(const model::Crew& crew, const Pace& pace);

// Throws InputError (`crew.pace_pct`, ...) for shares of the crew outside 0..1 and mishaps of negative time: the bounds
// of the project file, for values that came by another way.
void checkCrew(const model::Crew& crew);

}  // namespace fayline::plan
