// What follows from a piece: everything that Fayline answers, in SI, and what is wrong with it. Lists and studies are
// shared by copies, so that a plan is copied in a microsecond.
#pragma once

#include <array>
#include <atomic>
#include <optional>
#include <string>

#include "core/holding/at_hand.hpp"
#include "core/holding/places.hpp"
#include "core/laminate/springback/form_plan.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/fair.hpp"
#include "core/line/misread.hpp"
#include "core/math/shared.hpp"
#include "core/model/boat.hpp"
#include "core/plan/day/day_plan.hpp"
#include "core/plan/findings/finding.hpp"
#include "core/units/display.hpp"

namespace fayline::holding {
struct PropPlan;   // props/prop.hpp
struct ScrewPlan;  // props/screw.hpp
struct HullPlan;   // props/hull.hpp
}  // namespace fayline::holding

namespace fayline::laminate {
struct Learned;     // springback/learned.hpp
struct SprungHome;  // springback/sprung_home.hpp
}  // namespace fayline::laminate

namespace fayline::plan {

struct Shop;           // shop.hpp
struct HoldingStudy;   // study/holding_study.hpp
struct Choices;        // study/choices.hpp
struct BreakingStudy;  // study/breaking.hpp
struct StockStudy;     // study/stock_study.hpp

struct LinePlan {
    model::LineInput of;  // what it is the line of
    line::FairLine fair;
    line::Place tightest;
    line::Misread misread;                       // found by deepen: until then none is known of
    bool misreadSought = false;                  // whether they have been looked for
    math::SharedList<line::Place> samples;       // every 10 mm and at both ends
    math::SharedList<double> curvatureSd_per_m;  // at each sample: one standard deviation of its curvature
    double radiusFrom_m = 0;                     // of the tightest place, 19 times of 20
    double radiusTo_m = 0;
};

// What follows the hand.
struct HoldingPlan {
    math::SharedList<holding::StationPlace> stations;  // along the line; held.stations is in the same order
    holding::Held held;
    math::SharedList<holding::PressingNeed> pressing;  // at each station, in the same order
    math::SharedList<holding::PropPlan> props;
    math::SharedList<holding::ScrewPlan> screws;
    math::SharedList<holding::StrapPlan> straps;
    math::SharedList<holding::PostLoad> posts;
    holding::AtHand atHand;
    math::Shared<holding::HullPlan> hull;
};

// What takes longer than a frame, by its parts: worked out side by side when the hand has rested.
enum class Study { closing, overRun, proposal, carried, day, choices, breaking, misread, learned, corrected, stock };
inline constexpr std::array allStudies{Study::closing, Study::overRun,   Study::proposal, Study::carried,
                                       Study::day,     Study::choices,   Study::breaking, Study::misread,
                                       Study::learned, Study::corrected, Study::stock};

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
    math::Shared<HoldingStudy> holdingStudy;  // absent until worked out; so are the studies below
    DayPlan day;
    math::Shared<DayStudy> dayStudy;
    math::Shared<Choices> choices;
    math::Shared<BreakingStudy> breaking;
    math::Shared<StockStudy> stock;
    bool learnedSought = false;                     // whether the shop's recorded pieces have been read
    math::Shared<laminate::Learned> learned;        // of the shop's recorded pieces; none where there are none
    math::Shared<laminate::SprungHome> sprungHome;  // none where nothing is off the wanted line
    bool correctedSought = false;  // whether the piece with its misread offsets put right has been planned
    std::optional<math::SharedList<Finding>> ifCorrected;  // what that plan finds; none where no offset looks misread
    math::SharedList<Finding>
        findings;  // as hangFindings orders them; those of the studies among them where there are any
    math::SharedList<Answer> answers;  // all nine, in order
};

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

}  // namespace fayline::plan
