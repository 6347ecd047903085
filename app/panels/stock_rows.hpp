// What the stock panel's tables say of a plan, and the changes that it makes of a piece.
#pragma once

#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/figures_model.hpp"
#include "core/plan/study/stock_study.hpp"

namespace fayline::app {

std::vector<FigureColumn> stockFigureColumns();
std::vector<FigureRow> stockFigureRows(const plan::StockStudy& study, const units::Display& display);

// What would mend boards that do not suffice: a row for each cure.
std::vector<FigureColumn> stockCureColumns();
std::vector<FigureRow> stockCureRows(const plan::StockStudy& study, const units::Display& display);

QString volumeWords(double volume_m3);  // "0.021 m³"
QString priceWords(double price);
QString boardWords(const plan::BoardCuts& board);  // "A", "A, no. 2"

// The piece with every strip of its own that the study lays out marked as cut.
model::Piece withAllCut(const model::Piece& piece, const plan::StockStudy& study);
// ... with this strip, cut or not, lost: another is needed in its place.
model::Piece withStripLost(const model::Piece& piece, const plan::StockStudy& study, int place);
// ... with a spare of that is cut put in the place of a strip that was lost; none where there is no such spare.
std::optional<model::Piece> withSpareUsed(const model::Piece& piece, const plan::StockStudy& study, int place);
// ... with this strip as if it had never been cut.
model::Piece withStripUncut(const model::Piece& piece, int place);
// ... with this strip wanted from that board; none: from any.
model::Piece withStripPinned(const model::Piece& piece, int place, const plan::BoardCuts* board);

}  // namespace fayline::app
