// How what is better or worse than before is shown.
#pragma once

#include <QIcon>
#include <QString>

#include "core/plan/compare.hpp"

namespace fayline::app {

// Its shape and colour: a tick, a cross, both; else signs in ink.
QIcon judgedIcon(plan::Judged judged);

QString judgedText(plan::Judged judged);  // "better"

}  // namespace fayline::app
