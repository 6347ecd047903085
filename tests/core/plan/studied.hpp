// Plans with their studies, each worked out once for all tests of a program, and with no more studies than are wanted.
#pragma once

#include <algorithm>
#include <atomic>
#include <list>
#include <set>
#include <string>

#include "core/export/print.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/studies.hpp"
#include "tests/core/plan/made_pieces.hpp"

namespace fayline::made {

using Studies = std::set<plan::Study>;

inline const Studies everyStudy(plan::allStudies.begin(), plan::allStudies.end());

// The plan of `piece` with the studies `wanted` and those that they need, as deepen puts them in.
inline plan::Plan planWith(const model::Piece& piece, const plan::Shop& shop, const Studies& wanted) {
    const std::atomic<bool> goOn = false;
    const plan::Plan live = plan::makePlan(piece, shop);
    plan::Plan plan = live;
    if (wanted == everyStudy) return plan::deepen(piece, shop, live, goOn).value();
    Studies all = wanted;
    for (const plan::StudyWork& work : plan::studies()) {
        if (wanted.contains(work.study) && work.needs) all.insert(*work.needs);
    }
    for (const plan::StudyWork& work : plan::studies()) {
        if (all.contains(work.study)) work.work(piece, shop, plan, goOn)(plan);
    }
    plan::wordStudies(piece, shop, plan);
    return plan;
}

// The same of the first piece of `boat`, worked out once.
inline const plan::Plan& studied(const model::Boat& boat, const Studies& wanted = everyStudy) {
    struct Known {
        model::Boat boat;
        Studies wanted;
        plan::Plan plan;
    };
    static std::list<Known> known;  // whose places stay
    for (const Known& one : known) {
        if (one.wanted == wanted && one.boat == boat) return one.plan;
    }
    return known.emplace_back(boat, wanted, planWith(boat.pieces.front(), plan::shopOf(boat), wanted)).plan;
}

inline model::Boat boatOf(const std::vector<model::Piece>& pieces) {
    model::Boat boat;
    boat.name = "Made";
    boat.pieces = pieces;
    return boat;
}

inline const plan::Plan& studied(const model::Piece& piece, const Studies& wanted = everyStudy) {
    return studied(boatOf({piece}), wanted);
}

inline const plan::Choices& choicesOf(const model::Piece& piece) {
    return *studied(piece, {plan::Study::choices}).choices;
}

// What printPlans says of `boat`, printed once.
inline const std::string& printed(const model::Boat& boat) {
    struct Known {
        model::Boat boat;
        std::string text;
    };
    static std::list<Known> known;
    const auto found = std::ranges::find(known, boat, &Known::boat);
    return found == known.end() ? known.emplace_back(boat, plan::printPlans(boat)).text : found->text;
}

}  // namespace fayline::made
