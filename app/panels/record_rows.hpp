// What the record panel's tables and words say of recorded days.
#pragma once

#include <optional>
#include <vector>

#include "app/look/shown.hpp"
#include "app/panels/figures_model.hpp"
#include "core/plan/day/past_day.hpp"

namespace fayline::app {

// `past` is what the record says of its day; nothing where it was not timed.
using Past = std::optional<plan::PastDay>;

std::vector<FigureColumn> dayColumns();
FigureRow dayRow(const model::Record& record, const Past& past);

// "Dry fit on 2026-05-02 at 08:30." and what is to be known of its figures.
QString dayWords(const model::Piece& piece, const model::Record& record, const Past& past,
                 const units::Display& display);

std::vector<FigureColumn> comparedColumns();
std::vector<FigureRow> comparedRows(const plan::PastDay& past);

QString lessons(const plan::PastDay& past);  // what the crew's rates learn from it

std::vector<FigureColumn> pastTaskColumns();
std::vector<FigureRow> pastTaskRows(const plan::PastDay& past);

std::vector<FigureColumn> learnedColumns();
std::vector<FigureRow> learnedRows(const laminate::Learned& learned);

}  // namespace fayline::app
