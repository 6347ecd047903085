// What the glue panel's tables and plots say of a plan.
#pragma once

#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/figures_model.hpp"

namespace fayline::app {

// The worst severity of the plan's findings with one of these codes.
std::optional<int> severityOf(const plan::Plan& plan, std::initializer_list<plan::Code> codes);

// A face, the parts of the whole mix and what is added; as the user measures, and the other way fainter.
std::vector<FigureColumn> amountColumns(model::MeasuredBy by);
std::vector<FigureRow> amountRows(const Shown& shown);

std::vector<FigureColumn> batchColumns(const glue::Adhesive& adhesive, model::MeasuredBy by);
std::vector<FigureRow> batchRows(const Shown& shown);

std::vector<FigureColumn> goingOffColumns();
std::vector<FigureRow> goingOffRows(const Shown& shown);

std::vector<FigureColumn> vesselColumns();
std::vector<FigureRow> vesselRows(const Shown& shown);

std::vector<FigureColumn> conditionColumns();
std::vector<FigureRow> conditionRows(const Shown& shown);

std::vector<FigureColumn> cureColumns();
std::vector<FigureRow> cureRows(const Shown& shown);

// How long the mix lasts by its mass in the piece's vessel, with the least and the most; the batches and the data
// sheet's points marked. Nothing where it does not go off.
std::optional<AlongPlot::Picture> potLifePicture(const plan::Plan& plan, const model::Glue& glue,
                                                 const std::vector<glue::PotLifeByMass>& lives,
                                                 const units::Display& display);

// The air about the glue from closing until it is fully cured, with what may be done when.
std::optional<AlongPlot::Picture> curePicture(const Shown& shown);

}  // namespace fayline::app
