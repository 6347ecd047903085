// What the schedule panel's chart, tables and words say of a plan.
#pragma once

#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/lanes_chart.hpp"

namespace fayline::app {

// The gluing that is shown: `gluing` if there is such a one, else the one with least time in hand; null: no plan.
const plan::GluingDay* gluingOf(const Shown& shown, int gluing);

LanesChart::Picture lanesPicture(const Shown& shown, const plan::GluingDay& gluing);

// `at_s` of a gluing, for whoever shows what is wet and held by then.
PointedMoment pointedMoment(const Shown& shown, const plan::GluingDay& gluing, double at_s);

std::vector<FigureColumn> faceColumns();
std::vector<FigureRow> faceRows(const Shown& shown, const plan::GluingDay& gluing);

std::vector<FigureColumn> cupColumns();
std::vector<FigureRow> cupRows(const Shown& shown, const plan::GluingDay& gluing);

std::vector<FigureColumn> taskColumns();
std::vector<FigureRow> taskRows(const Shown& shown, const plan::GluingDay& gluing);

std::vector<FigureColumn> remedyColumns();
std::vector<FigureRow> remedyRows(const std::vector<plan::Remedy>& remedies, const units::Display& display);

}  // namespace fayline::app
