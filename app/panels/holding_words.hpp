// The sentences of the holding panel: what follows from the stations, in the units that a user reads in.
//
// Each is empty where there is nothing to say. What the core has worded, findings and answers, is not said again here.
#pragma once

#include <QString>
#include <string>
#include <vector>

#include "app/look/shown.hpp"
#include "core/holding/closing.hpp"
#include "core/holding/over_run.hpp"
#include "core/holding/propose/propose.hpp"

namespace fayline::app {

// Where a station lies, and what the glue line asks for there. `station`: index in model::Holding::stations.
QString stationWords(const Shown& shown, int station);

// How many stations do, whether they are at hand, and what governs their number.
QString proposalWords(const holding::Proposal& proposal, const units::Display& display);

// How the loose stack sags while it is carried.
QString carriedWords(const holding::Carried& carried, const units::Display& display);

// Of one end, called `end` ("At the start"): what over-run it needs, and what would do instead of more.
QString overRunWords(const QString& end, const holding::EndNeed& need, double runsPast_m,
                     const units::Display& display);

// What is short at hand, and what would do instead.
QString atHandWords(const holding::AtHand& atHand, const units::Display& display);

// How the boat stands on its blocks under the props.
QString hullWords(const plan::HoldingPlan& holding, const units::Display& display);

// The findings with one of these beginnings of codes, each a line; they say what work can do to hands and heads.
QString findingWords(const Shown& shown, const std::vector<std::string>& codes);

}  // namespace fayline::app
