#include "app/panels/stock_rows.hpp"

#include <algorithm>

#include "app/look/text.hpp"
#include "core/plan/findings/text.hpp"
#include "core/units/length.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

FigureRow figure(const QString& name, const QString& value, const QString& source = {}) {
    FigureCell cell{value};
    cell.source = source;
    return {{{name}, cell}};
}

QString percent(double share) {
    return tr("%1 %").arg(std::lround(100 * share));
}

model::StripCut cutOf(const plan::BoardCuts& board, const plan::SawnPart& part) {
    return {.place = part.place,
            .board = board.name,
            .number = board.number,
            .from_m = part.from_m,
            .length_m = part.length_m,
            .acrossFrom_m = part.acrossFrom_m,
            .acrossTo_m = part.acrossTo_m,
            .deepFrom_m = part.deepFrom_m,
            .deepTo_m = part.deepTo_m};
}

}  // namespace

QString volumeWords(double volume_m3) {
    return tr("%1 m³").arg(volume_m3, 0, 'f', 3);
}

QString priceWords(double price) {
    return QString::number(price, 'f', 2);
}

QString boardWords(const plan::BoardCuts& board) {
    const QString name = text(board.name);
    return board.board.count > 1 || board.toBuy ? tr("%1, no. %2").arg(name).arg(board.number) : name;
}

std::vector<FigureColumn> stockFigureColumns() {
    return {wordColumn(tr("Figure"), tr("Ripped off the edge only")), figureColumn(tr("Value"), "0.0213 m³ = 9.0 bf")};
}

std::vector<FigureRow> stockFigureRows(const plan::StockStudy& study, const units::Display& display) {
    const QString derived = tr("Calculated from your list of boards. A board foot is 144 cubic inches.");
    std::vector<FigureRow> rows;
    rows.push_back(figure(tr("Strips, spares counted"), QString::number(study.stripsNeeded)));
    if (study.alreadyCut > 0) rows.push_back(figure(tr("Cut already"), QString::number(study.alreadyCut)));
    rows.push_back(figure(tr("Boards used"), QString::number(study.boardsUsed)));
    rows.push_back(figure(tr("Wood of them"),
                          tr("%1 = %2 bf").arg(volumeWords(study.volume_m3)).arg(study.boardFeet, 0, 'f', 1), derived));
    if (study.weight_kg > 0) {
        const bool metric = display.lengths == units::LengthNotation::millimetres;
        rows.push_back(figure(tr("Weight"),
                              metric ? tr("%1 kg").arg(study.weight_kg, 0, 'f', 1)
                                     : tr("%1 lb").arg(study.weight_kg / units::pound_kg, 0, 'f', 0),
                              tr("By the wood's mean specific gravity and its moisture; boards differ.")));
    }
    if (study.price > 0) rows.push_back(figure(tr("Price of them"), priceWords(study.price)));
    if (study.toSpend > 0) rows.push_back(figure(tr("To be bought for"), priceWords(study.toSpend)));
    rows.push_back(figure(tr("Waste"), percent(study.waste), derived));
    rows.push_back(figure(tr("Ripped off the edge only"),
                          study.edgeWaste ? tr("%1 waste").arg(percent(*study.edgeWaste)) : tr("does not do")));
    rows.push_back(figure(tr("Resawn from the face only"),
                          study.faceWaste ? tr("%1 waste").arg(percent(*study.faceWaste)) : tr("does not do")));
    rows.push_back(figure(tr("Scarfs"), QString::number(study.scarfs.size())));
    rows.push_back(
        figure(tr("From the best"), study.proven ? tr("none: proven") : tr("at most %1").arg(percent(study.offBest))));
    return rows;
}

std::vector<FigureColumn> stockCureColumns() {
    return {wordColumn(tr("What helps"), tr("2 more boards as Oak 12")), figureColumn(tr("Short"), "000"),
            figureColumn(tr("To buy"), "0.0213 m³")};
}

std::vector<FigureRow> stockCureRows(const plan::StockStudy& study, const units::Display& display) {
    std::vector<FigureRow> rows;
    for (const plan::StockCure& cure : study.cures) {
        FigureRow row;
        row.cells = {{text(plan::writeText(cure.name, display))},
                     {cure.stillShort == 0 ? tr("none") : QString::number(cure.stillShort)},
                     {cure.cost ? priceWords(*cure.cost) : volumeWords(cure.extra_m3)}};
        row.cells[1].sort = cure.stillShort;
        row.cells[2].sort = cure.cost.value_or(cure.extra_m3);
        if (cure.changesPiece) row.hint = tr("The piece gets less deep or narrower: ask what it has to carry.");
        if (!cure.piece) row.hint = tr("Change the strips by hand: there are several kinds of them.");
        rows.push_back(std::move(row));
    }
    return rows;
}

model::Piece withAllCut(const model::Piece& piece, const plan::StockStudy& study) {
    // The parts of a strip stand in its order.
    std::vector<std::pair<std::pair<int, int>, model::StripCut>> all;
    for (const plan::BoardCuts& board : study.boards) {
        for (const plan::SawnPart& part : board.parts) {
            if (part.piece.empty() && !part.cut) all.push_back({{part.place, part.part}, cutOf(board, part)});
        }
    }
    std::ranges::sort(all, {}, [](const auto& one) { return one.first; });
    model::Piece after = piece;
    for (auto& [order, cut] : all) after.stock.cut.push_back(std::move(cut));
    return after;
}

model::Piece withStripLost(const model::Piece& piece, const plan::StockStudy& study, int place) {
    model::Piece after = piece;
    for (model::StripCut& cut : after.stock.cut)
        if (cut.place == place) cut.lost = true;
    for (const plan::BoardCuts& board : study.boards) {
        for (const plan::SawnPart& part : board.parts) {
            if (!part.piece.empty() || part.cut || part.place != place) continue;
            after.stock.cut.push_back(cutOf(board, part));
            after.stock.cut.back().lost = true;
        }
    }
    std::erase_if(after.stock.pins, [place](const model::StripPin& pin) { return pin.place == place; });
    return after;
}

std::optional<model::Piece> withSpareUsed(const model::Piece& piece, const plan::StockStudy& study, int place) {
    const int first = study.stripsNeeded - study.spares + 1;
    if (place >= first) return std::nullopt;
    const auto isGoodSpare = [first](const model::StripCut& cut) { return cut.place >= first && !cut.lost; };
    const auto spare = std::ranges::find_if(piece.stock.cut, isGoodSpare);
    if (spare == piece.stock.cut.end()) return std::nullopt;
    model::Piece after = piece;
    const int from = spare->place;
    for (model::StripCut& cut : after.stock.cut)
        if (cut.place == from && !cut.lost) cut.place = place;
    return after;
}

model::Piece withStripUncut(const model::Piece& piece, int place) {
    model::Piece after = piece;
    std::erase_if(after.stock.cut, [place](const model::StripCut& cut) { return cut.place == place; });
    return after;
}

model::Piece withStripPinned(const model::Piece& piece, int place, const plan::BoardCuts* board) {
    model::Piece after = piece;
    std::erase_if(after.stock.pins, [place](const model::StripPin& pin) { return pin.place == place; });
    if (board) after.stock.pins.push_back({.place = place, .board = board->name, .number = board->number});
    return after;
}

}  // namespace fayline::app
