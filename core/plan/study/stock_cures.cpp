#include "core/plan/study/stock_cures.hpp"

#include <algorithm>
#include <tuple>

#include "core/math/count.hpp"
#include "core/plan/findings/stock_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/stock/stock.hpp"

namespace fayline::plan {

namespace {

// The groups of strips with the thickness that the job has for their places now.
bool thinned(model::Stack& stack, const stock::Cure& cure, const std::string& piece) {
    if (cure.kind == stock::CureKind::moreThinner) {
        if (stack.strips.size() != 1) return false;  // which of several kinds are more is not told
        model::Strips& group = stack.strips.front();
        if (group.tapersTo_m || !stack.gluings.empty()) return false;
        group.thickness_m = cure.value_m;
        group.count = cure.count;
        return true;
    }
    int place = 0;
    for (model::Strips& group : stack.strips) {
        const int first = place + 1;
        place += group.count;
        const auto strip = std::ranges::find_if(cure.job.strips, [&](const stock::Strip& one) {
            return one.piece == piece && !one.spare && one.place >= first && one.place <= place;
        });
        if (strip == cure.job.strips.end()) continue;  // all cut already
        const double most_m = std::max(group.thickness_m, group.tapersTo_m.value_or(0));
        const double scale = strip->thickness_m / most_m;
        group.thickness_m *= scale;
        if (group.tapersTo_m) *group.tapersTo_m *= scale;
    }
    return true;
}

void narrowed(model::Stack& stack, double asRipped_m) {
    const double most_m = asRipped_m - 2 * stack.ripAllowance_m;
    for (model::Width& width : stack.widths) width.width_m = std::min(width.width_m, most_m);
}

// Puts a board into the list that it belongs to: the piece's own, or the boat's.
void addBoard(StockCure& made, const model::Piece& piece, const StockJob& job, const stock::Cure& cure) {
    const BoardOrigin& origin = job.boards[cure.board];
    std::vector<model::Board> rows = job.rows;
    model::Board board = origin.toBuy ? piece.stock.buy[origin.row] : rows[origin.row];
    if (cure.kind == stock::CureKind::anotherBoard && !origin.toBuy) {
        rows[origin.row].count += cure.count;
    } else {
        board.kept = {};
        board.bad.clear();
        board.count = cure.count;
        if (cure.kind == stock::CureKind::longerBoard) board.length_m = cure.value_m;
        board.name += board.name.empty() ? "" : " +";
        rows.push_back(board);
    }
    // As whole as they are bought, also where only the rest of one was at hand.
    if (made.cost)
        made.cost = cure.count * priceOf(board);
    else
        made.extra_m3 = cure.count * volumeOf(board);
    made.piece = piece;
    if (origin.toBuy && cure.kind == stock::CureKind::anotherBoard) {
        made.piece->stock.buy[origin.row].count += cure.count;
        return;
    }
    if (piece.stock.boards.empty() && !job.rows.empty()) {
        made.boatBoards = std::move(rows);
    } else {
        made.piece->stock.boards = std::move(rows);
    }
}

std::optional<StockCure> cureFrom(const model::Piece& piece, const StockJob& job, const stock::Cure& cure) {
    StockCure made;
    for (const int strip : cure.plan.missing) {
        const stock::Strip& one = cure.job.strips[strip];
        if (one.piece == piece.id) ++made.stillShort;
    }
    const bool ofThis = cure.piece.empty() || cure.piece == piece.id;
    if (!ofThis) return std::nullopt;  // another piece's strips are changed with that piece
    const bool ofStrips = cure.kind == stock::CureKind::thinnerStrips || cure.kind == stock::CureKind::moreThinner ||
                          cure.kind == stock::CureKind::narrowerPiece;
    made.changesPiece = ofStrips;
    if (ofStrips && job.cut > 0) return std::nullopt;  // those that are cut already would not fit the others
    if (cure.job.rules.aim == stock::Aim::leastPrice)
        made.cost = cure.extra;
    else
        made.extra_m3 = cure.extra;
    made.piece = piece;
    switch (cure.kind) {
        case stock::CureKind::otherSawing:
            made.name = {texts::sawEitherWay};
            made.piece->stock.saw = model::Saw::either;
            break;
        case stock::CureKind::anotherScarf:
            made.name = {texts::oneScarfMore};
            made.piece->stock.extraScarfs = cure.job.rules.extraScarfs;
            break;
        case stock::CureKind::thinnerStrips:
        case stock::CureKind::moreThinner:
            made.name = cure.kind == stock::CureKind::thinnerStrips
                            ? Message(texts::stripsThinner, {put::thickness(cure.value_m)})
                            : Message(texts::moreStripsThinner, {put::count(cure.count), put::thickness(cure.value_m)});
            if (!thinned(made.piece->stack, cure, piece.id)) made.piece.reset();
            break;
        case stock::CureKind::narrowerPiece:
            made.name = {texts::pieceNarrower, {put::thickness(cure.value_m - 2 * piece.stack.ripAllowance_m)}};
            narrowed(made.piece->stack, cure.value_m);
            break;
        case stock::CureKind::anotherBoard: {
            const stock::Board& like = job.job.boards[cure.board];
            made.name = {texts::boardsMore, {like.name, put::count(cure.count)}, cure.count};
            addBoard(made, piece, job, cure);
            break;
        }
        case stock::CureKind::longerBoard:
            made.name = {texts::boardLonger, {put::length(cure.value_m)}, cure.count};
            addBoard(made, piece, job, cure);
            break;
    }
    return made;
}

}  // namespace

std::vector<StockCure> stockCures(const model::Piece& piece, const StockJob& job, const stock::CutPlan& found,
                                  const std::atomic<bool>& stop) {
    std::vector<StockCure> cures;
    for (const stock::Cure& cure : stock::cures(job.job, found, {}, stop)) {
        std::optional<StockCure> made = cureFrom(piece, job, cure);
        // A board and what is left of it are the same to buy.
        if (made && std::ranges::none_of(cures, [&](const StockCure& one) { return one.name == made->name; }))
            cures.push_back(std::move(*made));
    }
    std::ranges::stable_sort(cures, [](const StockCure& a, const StockCure& b) {
        return std::tie(a.stillShort, a.changesPiece) < std::tie(b.stillShort, b.changesPiece);
    });
    return cures;
}

}  // namespace fayline::plan
