// What follows from a piece: everything that Fayline answers, in SI, and what is wrong with it.
#pragma once

#include <array>
#include <atomic>
#include <functional>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "core/holding/at_hand.hpp"
#include "core/holding/closing.hpp"
#include "core/holding/held.hpp"
#include "core/holding/over_run.hpp"
#include "core/holding/places.hpp"
#include "core/holding/pressing.hpp"
#include "core/holding/propose/propose.hpp"
#include "core/holding/props/closing_loads.hpp"
#include "core/holding/props/hull.hpp"
#include "core/holding/props/prop.hpp"
#include "core/holding/props/screw.hpp"
#include "core/holding/strap.hpp"
#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/laminate/springback/sprung_home.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/fair.hpp"
#include "core/line/misread.hpp"
#include "core/model/boat.hpp"
#include "core/plan/day_plan.hpp"
#include "core/plan/findings/finding.hpp"
#include "core/plan/study/breaking.hpp"
#include "core/plan/study/choices.hpp"
#include "core/units/display.hpp"
#include "core/units/source.hpp"
#include "core/wood/species.hpp"
#include "core/wood/trial.hpp"

namespace fayline::plan {

struct LinePlan {
    LinePlan();
    LinePlan(const LinePlan& other);
    LinePlan(LinePlan&& other) noexcept;
    LinePlan& operator=(const LinePlan& other);
    LinePlan& operator=(LinePlan&& other) noexcept;
    ~LinePlan();

    model::LineInput of;  // what it is the line of
    line::FairLine fair;
    line::Place tightest;
    line::Misread misread;                  // found by deepen: until then none is known of
    bool misreadSought = false;             // whether they have been looked for
    std::vector<line::Place> samples;       // every 10 mm and at both ends
    std::vector<double> curvatureSd_per_m;  // at each sample: one standard deviation of its curvature
    double radiusFrom_m = 0;                // of the tightest place, 19 times of 20
    double radiusTo_m = 0;
};

// What follows the hand.
struct HoldingPlan {
    HoldingPlan();
    HoldingPlan(const HoldingPlan& other);
    HoldingPlan(HoldingPlan&& other) noexcept;
    HoldingPlan& operator=(const HoldingPlan& other);
    HoldingPlan& operator=(HoldingPlan&& other) noexcept;
    ~HoldingPlan();

    std::vector<holding::StationPlace> stations;  // along the line; held.stations is in the same order
    holding::Held held;
    std::vector<holding::PressingNeed> pressing;  // at each station, in the same order
    std::vector<holding::PropPlan> props;
    std::vector<holding::ScrewPlan> screws;
    std::vector<holding::StrapPlan> straps;
    std::vector<holding::PostLoad> posts;
    holding::AtHand atHand;
    std::optional<holding::HullPlan> hull;
};

// The closing begun elsewhere than the piece has it.
struct OtherOrder {
    model::From from = model::From::start;
    holding::ClosingLoads loads;
};

// What takes longer than a frame, by its parts: worked out side by side when the hand has rested.
enum class Study { closing, overRun, proposal, carried, day, choices, breaking, misread, learned, corrected };
inline constexpr std::array allStudies{Study::closing, Study::overRun,  Study::proposal, Study::carried,
                                       Study::day,     Study::choices,  Study::breaking, Study::misread,
                                       Study::learned, Study::corrected};

// What of it is about holding.
struct HoldingStudy {
    HoldingStudy();
    HoldingStudy(const HoldingStudy& other);
    HoldingStudy(HoldingStudy&& other) noexcept;
    HoldingStudy& operator=(const HoldingStudy& other);
    HoldingStudy& operator=(HoldingStudy&& other) noexcept;
    ~HoldingStudy();

    std::vector<holding::ClosingStep> closing;  // in the order of closing
    holding::ClosingLoads closingLoads;         // what bears at those steps
    std::vector<OtherOrder> otherOrders;        // only where something bears too much while closing
    holding::OverRun overRun;
    holding::Proposal proposal;
    holding::Carried carried;
    std::set<Study> awaited;        // of the first four: its members above say nothing yet
    std::vector<Finding> findings;  // those that follow from what is not awaited
};

// The nine questions of the job. An answer is a few figures; a question whose part is not built yet says so.
enum class Question { line, strips, form, holding, glue, time, stock, paper, record };
struct Answer {
    Question question = Question::line;
    Message figures;            // "9 x 1/4 in, 0.52 %"; empty: not answered yet
    Message sentence;           // the same in one plain sentence: verdict, number, place
    std::vector<Message> more;  // what else there is to know or to do
    std::optional<Severity> worst;
};
const char* questionName(Question question);  // "Strips"
// The sentence and what else there is to say.
std::string answerText(const Answer& answer, const units::Display& display, const Translate& translate = {});

// What the nine answers come to: how many causes there are of each severity, and whether the piece can be glued.
struct Verdict {
    std::array<int, 3> count{};  // stops, cautions, notes
    Message text;                // "Ready to glue", "2 things first", and what is not answered yet

    int stops() const { return count[0]; }
    int cautions() const { return count[1]; }
    int notes() const { return count[2]; }
};

struct Plan {
    Plan();
    Plan(const Plan& other);
    Plan(Plan&& other) noexcept;
    Plan& operator=(const Plan& other);
    Plan& operator=(Plan&& other) noexcept;
    ~Plan();

    std::string id;     // of the piece
    std::string piece;  // its name
    units::Display display;
    LinePlan line;
    laminate::StackPlan stack;
    laminate::FormPlan form;
    HoldingPlan holding;
    std::optional<HoldingStudy> holdingStudy;  // absent until worked out; so are the studies below
    DayPlan day;
    std::optional<DayStudy> dayStudy;
    std::optional<Choices> choices;
    std::optional<BreakingStudy> breaking;
    bool learnedSought = false;                      // whether the shop's recorded pieces have been read
    std::optional<laminate::Learned> learned;        // of the shop's recorded pieces; none where there are none
    std::optional<laminate::SprungHome> sprungHome;  // none where nothing is off the wanted line
    bool correctedSought = false;  // whether the piece with its misread offsets put right has been planned
    std::optional<std::vector<Finding>> ifCorrected;  // what that plan finds; none where no offset looks misread
    std::vector<Finding> findings;  // as hangFindings orders them; those of the studies among them where there are any
    std::vector<Answer> answers;    // all nine, in order
};

// What a plan needs beside the piece.
struct Shop {
    Shop();
    Shop(const Shop& other);
    Shop(Shop&& other) noexcept;
    Shop& operator=(const Shop& other);
    Shop& operator=(Shop&& other) noexcept;
    ~Shop();

    units::Display display;
    std::vector<wood::Species> species;        // the user's own before the built-in ones
    std::vector<glue::Adhesive> adhesives;     // the user's own before the built-in ones
    std::vector<model::Piece> recorded;        // the boat's pieces whose springback was measured
    std::vector<wood::WoodMeasured> measured;  // what the boat's trials say of its woods
};

// The shop of a boat: its display units, its own woods, the built-in ones.
Shop shopOf(const model::Boat& boat);

// The plan of one piece. Pure: no clock, no files, no globals; the same input gives the same bits.
//
// Throws InputError with a path from the piece on (`line.points[3]`, `stack.strips[0].species`) for a piece that no
// plan can be made of. Risks are findings. A line longer than 500 m is refused (mistyped units); so plans stay quick.
// `before` is an earlier plan of nearly the same piece, to begin its slower parts from: the answers are the same within
// the methods' own errors. Where its line is of the same offsets it is taken over with what is known of them.
Plan makePlan(const model::Piece& piece, const Shop& shop, const Plan* before = nullptr);

// The same, given up once `stop` is set: then nothing is returned. It is looked at between the stages and within every
// step of the contact.
std::optional<Plan> makePlan(const model::Piece& piece, const Shop& shop, const Plan* before,
                             const std::atomic<bool>& stop);

// Whether `plan` has this study; and whether it has them all.
bool has(const Plan& plan, Study study);
bool isStudied(const Plan& plan);

Verdict verdictOf(const Plan& plan);

// `plan`, which is of this piece and shop, with every study: the same bits whatever the number of `threads` on which
// they are worked out (0: as many as the machine has cores). Pure as well. `stop` is looked at every few milliseconds;
// once it is set, nothing is returned. What one study throws is thrown when the others have ended.
std::optional<Plan> deepen(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop,
                           unsigned threads = 0);

// The same, and `onPart` is given the plan with what is there so far, findings and answers made anew, each time that
// something has come and more is to come. It is called in the caller's thread; what comes meanwhile comes together.
using OnPart = std::function<void(Plan)>;
std::optional<Plan> deepenStepwise(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop, const OnPart& onPart, unsigned threads = 0);

}  // namespace fayline::plan
