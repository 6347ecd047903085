// The read-only tables of the holding panel: their columns, and their rows of a plan.
#pragma once

#include "app/look/shown.hpp"
#include "app/panels/figures_model.hpp"

namespace fayline::app {

std::vector<FigureColumn> proposalColumns();  // number, held by, along, pull, gap
std::vector<FigureRow> proposalRows(const plan::HoldingStudy& study, const units::Display& display);

std::vector<FigureColumn> closingColumns();  // order, station, pull, free tail, tip
std::vector<FigureRow> closingRows(const plan::HoldingStudy& study, const model::Piece& piece,
                                   const units::Display& display);

std::vector<FigureColumn> propColumns();  // station, thrust, slant, slips, foot
std::vector<FigureRow> propRows(const plan::HoldingPlan& holding, const model::Piece& piece,
                                const units::Display& display);

std::vector<FigureColumn> screwColumns();  // station, pull, washer, holes, length
std::vector<FigureRow> screwRows(const plan::HoldingPlan& holding, const units::Display& display);

std::vector<FigureColumn> strapColumns();  // station, thrust, turned, idle
std::vector<FigureRow> strapRows(const plan::HoldingPlan& holding, const units::Display& display);

std::vector<FigureColumn> countColumns();  // kind, asked, there, without
std::vector<FigureRow> countRows(const holding::AtHand& atHand);

std::vector<FigureColumn> servedColumns();  // station, tool, turns past snug
std::vector<FigureRow> servedRows(const plan::HoldingPlan& holding, const model::Piece& piece);

}  // namespace fayline::app
