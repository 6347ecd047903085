// What the form panel's tables and words say of a plan.
#pragma once

#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/figures_model.hpp"

namespace fayline::app {

// How far the form's edge lies from the wanted one, in small lengths; nothing where they are the same.
std::optional<AlongPlot::Picture> formPicture(const std::shared_ptr<const Shown>& shown);

std::vector<FigureColumn> openingColumns();
std::vector<FigureRow> openingRows(const plan::Plan& plan, const units::Display& display);

std::vector<FigureColumn> stressColumns();
std::vector<FigureRow> stressRows(const laminate::StressLeft& stress, double length_m, const units::Display& display);

}  // namespace fayline::app
