// What every sentence about how a piece is held may need.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <vector>

#include "core/measure/units.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

struct HoldingScene {
    const boat::Piece& piece;
    const Shop& shop;
    const Plan& plan;

    double length_m() const { return plan.line.fair.line.length(); }
    std::string place(double at_m) const { return placeText(at_m, length_m(), shop.display); }
    std::string small(double distance_m) const { return smallText(distance_m, shop.display); }
    std::string span(double span_m) const { return spanText(span_m, shop.display); }
    std::string reach(double length_m) const { return reachText(length_m, shop.display); }
    std::string force(double force_N) const { return measure::writeForce(force_N, shop.display); }
    // A force and the limit that it is held against, with as many figures, from two on, as tell them apart.
    std::array<std::string, 2> forces(double force_N, double limit_N) const;
    std::string pressure(double pressure_Pa) const { return measure::writePressure(pressure_Pa, shop.display); }
    const boat::Station& station(int index) const { return piece.holding.stations[index]; }
    // "Clamp 4": number along the line of the station with this index in the piece.
    std::string name(int index) const;
    // "Clamps 2, 3 and 5", "Clamp 2 and prop 5"
    std::string names(const std::vector<int>& indices) const;
    double at_m(int index) const { return station(index).at_m; }
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
    std::optional<int> turnOf;  // index of the station being closed; absent: all are closed
    std::string instead = {};   // what would do while closing, as sentences that begin with a blank

    // Of what is found with all closed: the code of the same at this moment.
    Code code(Code ofAllClosed) const { return turnOf ? whileClosing(ofAllClosed) : ofAllClosed; }
    // "The pad of prop 5, 4-0-0 from the start, "; "At its turn the pad of prop 5, "; "At the turn of screw 6 the pad "
    std::string subject(const HoldingScene& scene, int station, const std::string& thePartOf = {}) const;
};

// The same with a small first letter: "clamp 4" within a sentence.
std::string lowered(std::string text);

// "Clamp", with a capital.
std::string kindName(boat::HoldKind kind);

// Stations as numbers of what they are: "eight clamps and two props".
std::string kindsText(const std::vector<boat::Station>& stations);
// How many of them are tools of which a proposal may use any it finds in the tools list: clamps, screws, wedges.
int toolsAmong(const std::vector<boat::Station>& stations);

// A finding about the holding, in this unit; text, numbers and place are filled in by the caller.
Finding aboutHolding(Severity severity, Code code, const std::string& unit, const measure::Source& source);

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
measure::Source contactSource();

}  // namespace fayline::plan
