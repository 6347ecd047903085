// The sentences of the holding panel: what follows from the stations, in the units that a user reads in.
//
// Each is empty where there is nothing to say. What the core has worded, findings and answers, is not said again here.
#pragma once

#include <QString>

#include "app/look/shown.hpp"

namespace fayline::app {

// Where a station lies, and what the glue line asks for there. `station`: index in boat::Holding::stations.
QString stationWords(const Shown& shown, int station);

}  // namespace fayline::app
