// Names of files that every system takes, one for each piece and paper.
#pragma once

#include <QString>
#include <QStringList>

namespace fayline::app::paper {

// For each name a stem of a file name: letters, figures and hyphens only (of any script), at most 40 characters, none
// empty, no two alike even where capitals do not count; the second "Stem" becomes "Stem-2".
QStringList fileStems(const QStringList& names);

}  // namespace fayline::app::paper
