// The risks of a plan, subject by subject: what is looked for, how bad it is, and the sentence that says so.
//
// To add one: a code with its row in finding.cpp, a phrase in the subject's *_texts.hpp with the place and both numbers
// put in, and the source of the limit with its mark.
#pragma once

#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// One whose value is held against a limit, both in the unit of its code; one whose value is held against nothing.
Finding foundAgainst(Code code, units::Source source, double value, double limit);
Finding foundWithoutLimit(Code code, units::Source source, double value);
// The finding with its line and what opens under it; at a place along the line.
Finding said(Finding finding, Message text, std::vector<Message> details = {});
Finding said(Finding finding, double at_m, Message text, std::vector<Message> details = {});

std::vector<Finding> lineFindings(const model::Piece& piece, const LinePlan& line);

std::vector<Finding> stackFindings(const model::Piece& piece, const Shop& shop, const LinePlan& line,
                                   const laminate::StackPlan& stack);

// Where the boat's own trials say otherwise of a wood than the plan takes it (wood_findings.cpp).
std::vector<Finding> woodFindings(const model::Piece& piece, const Shop& shop, const laminate::StackPlan& stack);

// What earlier pieces say about springback, and what it takes to spring this one home; never used by itself
// (learned_findings.cpp).
std::vector<Finding> learnedFindings(const Plan& plan);

// What rules for classed vessels usually ask and the stack does otherwise: notes (rule_findings.cpp).
std::vector<Finding> ruleFindings(const model::Piece& piece, const LinePlan& line, const laminate::StackPlan& stack);

// What stays in a piece that nothing lets go (in_place_findings.cpp). None where it is let go.
std::vector<Finding> inPlaceFindings(const model::Piece& piece, const LinePlan& line, const laminate::FormPlan& form);

// Springback, the form, moisture, planing: what the shape does once the form lets go.
std::vector<Finding> formFindings(const model::Piece& piece, const Shop& shop, const Plan& plan);

// How the piece is held: stations, contact, pads, posts (holding_findings.cpp); tools, props, screws, the boat have
// files of their own.
std::vector<Finding> holdingFindings(const model::Piece& piece, const Shop& shop, const Plan& plan);

// What the longer look at the holding adds: closing order (closing_findings.cpp), over-run, stations proposed.
std::vector<Finding> studyFindings(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const HoldingStudy& study);

// Amounts, cups, conditions and cure (glue_findings.cpp); the timed run (day_findings.cpp).
std::vector<Finding> glueFindings(const model::Piece& piece, const Plan& plan);
std::vector<Finding> dayFindings(const Plan& plan);

// What the simulated days and the remedies add.
std::vector<Finding> dayStudyFindings(const Plan& plan, const DayStudy& study);

// What the stock does not give of all choices.
std::vector<Finding> choiceFindings(const Shop& shop, const Choices& choices);

// What the boards give: short boards, scarfs, moisture, pins (stock_findings.cpp); and the answer.
std::vector<Finding> stockFindings(const model::Piece& piece, const Plan& plan);
Answer stockAnswer(const Plan& plan);

// What would keep strips whole, and what becomes of the plan when one breaks.
std::vector<Finding> breakingFindings(const Plan& plan);

// All of a plan without its study, by subject.
std::vector<Finding> allFindings(const model::Piece& piece, const Shop& shop, const Plan& plan);

// The question that what is about this belongs to.
Question questionOf(About about);

// The nine answers of a plan whose parts and findings are made.
std::vector<Answer> answersOf(const model::Piece& piece, const Shop& shop, const Plan& plan);

}  // namespace fayline::plan
