// What is in a part of the user's shed, in plain words.
#pragma once

#include <QStringList>

#include "core/model/shed.hpp"

namespace fayline::app {

// A line for each thing, in the units of `display`; none where the shed has nothing of it.
QStringList shedWords(const model::Shed& shed, model::ShedPart part, const units::Display& display);

}  // namespace fayline::app
