// What every sentence about how a piece is held may need.
#pragma once

#include <optional>
#include <vector>

#include "core/holding/props/hull.hpp"
#include "core/holding/props/screw.hpp"
#include "core/plan/findings/findings.hpp"

namespace fayline::plan {

struct HoldingScene {
    const model::Piece& piece;
    const Shop& shop;
    const Plan& plan;

    double length_m() const { return plan.line.fair.line.length(); }
    Arg place(double at_m) const { return put::place(at_m, length_m()); }
    const model::Station& station(int index) const { return piece.holding.stations[index]; }
    double at_m(int index) const { return station(index).at_m; }
    // "clamp 4": number along the line of the station with this index in the piece.
    Message name(int index) const;
    // "clamps 2, 3 and 5", "clamps 2 to 5", "clamp 2 and prop 5"
    Message names(const std::vector<int>& indices) const;
    // "clamp 4 at 3-4-7"
    Message nameAt(int index) const;
};

// Two neighbours that stand further apart than pressing allows.
struct Apart {
    int before = 0;  // indices in the piece
    int after = 0;
    double at_m = 0;  // midway
    double apart_m = 0;
    double most_N = 0;  // of the weaker
    holding::PressingNeed need;
};
// The worst place of all; nothing where the glue line is pressed everywhere between the outermost stations.
std::optional<Apart> worstApart(const HoldingScene& scene);  // holding_findings.cpp

// When something is borne: with all stations closed, or at one station's turn while they are being closed.
struct LoadCase {
    std::optional<int> turnOf = {};     // index of the station being closed; absent: all are closed
    std::vector<Message> instead = {};  // what would do while closing

    // Of what is found with all closed: the code of the same at this moment.
    Code code(Code ofAllClosed) const { return turnOf ? whileClosing(ofAllClosed) : ofAllClosed; }
    // "prop 5 at 4-0-0"; "prop 5, as it goes on,"; "prop 5, when screw 6 goes on,"
    Message subject(const HoldingScene& scene, int station) const;
    // Puts what would do instead under the finding.
    void tellInstead(Finding& finding) const;
};

// "13 clamps": so many holds of one kind.
Message holdsOf(model::HoldKind kind, int count);
// Stations as numbers of what they are: "eight clamps and two props".
Message kindsOf(const std::vector<model::Station>& stations);
// How many of them are tools of which a proposal may use any it finds in the tools list: clamps, screws, wedges.
int toolsAmong(const std::vector<model::Station>& stations);

// A gap as a gauge shows it, from a quarter of an inch on as a tape does.
Arg gapArg(double gap_m);
// `phrase` with who bears a force, the force and the limit that it is held against, with as many figures as tell the
// two apart.
Message withForces(const Phrase& phrase, Arg who, double force_N, double limit_N);

// Findings by subject, each added to `findings`.
void addAtHand(std::vector<Finding>& findings, const HoldingScene& scene);  // tool_findings.cpp
void addStraps(std::vector<Finding>& findings, const HoldingScene& scene);  // tool_findings.cpp
void addProps(std::vector<Finding>& findings, const HoldingScene& scene);   // prop_findings.cpp
void addScrews(std::vector<Finding>& findings, const HoldingScene& scene);  // screw_findings.cpp
void addHull(std::vector<Finding>& findings, const HoldingScene& scene);    // hull_findings.cpp
void addClosing(std::vector<Finding>& findings, const HoldingScene& scene,  // closing_findings.cpp
                const HoldingStudy& study);

// What bears too much at one moment.
void addToolsShort(std::vector<Finding>& findings, const HoldingScene& scene, const holding::AtHand& atHand,
                   const LoadCase& moment);  // tool_findings.cpp
void addPropStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PropPlan& prop,
                     const LoadCase& moment);  // prop_findings.cpp
void addScrewStrength(std::vector<Finding>& findings, const HoldingScene& scene, const holding::ScrewPlan& screw,
                      const LoadCase& moment);  // screw_findings.cpp
void addPadCrush(std::vector<Finding>& findings, const HoldingScene& scene, int station, double pull_N,
                 const LoadCase& moment);  // holding_findings.cpp
void addPostLoad(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PostLoad& post,
                 const LoadCase& moment);  // holding_findings.cpp
void addHullAt(std::vector<Finding>& findings, const HoldingScene& scene, const holding::HullPlan& hull,
               const LoadCase& moment);  // hull_findings.cpp

// Where gaps and pulls come from: the contact of rod and form.
units::Source contactSource();

}  // namespace fayline::plan
