// Amounts and times of a gluing as they are read at the bench.
#pragma once

#include <QString>

#include "core/model/boat.hpp"
#include "core/plan/day/day_plan.hpp"

namespace fayline::app::paper {

// Wall time of so many seconds after the crew's start: "08:47".
QString clockText(const model::Piece& piece, double after_s);
QString durationText(double time_s);  // "16 min"
QString massText(double mass_kg, const units::Display& display);
QString volumeText(double volume_m3, const units::Display& display);

// "strips 9 to 5, the face on the boat": what of a gluing comes from a cup, in the order in which it is done.
QString usedForText(const plan::GluingDay& day, int cup);

// "A", "A and B", "all three": who of the crew, by their places in the chart; empty for a task that needs nobody.
QString whoText(const schedule::Task& task, int hands);

// A line of so many millimetres to write a real time on.
QString roomToWrite(double width_mm, double size_mm);

// What uncured resin, heat, solvent and dust ask for, with marks.
QString skinCaution();
QString hotCupCaution();
QString dustAndRagsCaution(const model::Piece& piece);

}  // namespace fayline::app::paper
