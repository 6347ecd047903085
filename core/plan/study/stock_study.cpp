#include "core/plan/study/stock_study.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "core/math/count.hpp"
#include "core/plan/findings/stock_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/stock_cures.hpp"
#include "core/plan/study/stock_job.hpp"
#include "core/stock/measure.hpp"
#include "core/stock/stock.hpp"

namespace fayline::plan {

namespace {

struct BoardKey {
    bool toBuy = false;
    int row = 0;
    int number = 1;

    auto operator<=>(const BoardKey&) const = default;
};

BoardKey keyOf(const StockJob& job, int board, int copy) {
    const BoardOrigin& origin = job.boards[board];
    return {origin.toBuy, origin.row, origin.number + (origin.isRest ? 0 : copy)};
}

SawnPart sawn(const StockJob& job, const stock::Cut& cut) {
    const BoardOrigin& on = job.boards[cut.board];
    const StripOrigin& strip = job.strips[cut.strip];
    SawnPart part{.place = strip.place,
                  .part = cut.part + 1,
                  .parts = cut.parts,
                  .from_m = on.along_m + cut.along.from_m,
                  .length_m = cut.along.to_m - cut.along.from_m,
                  .acrossFrom_m = on.across_m + cut.across.from_m,
                  .acrossTo_m = on.across_m + cut.across.to_m,
                  .deepFrom_m = on.deep_m + cut.through.from_m,
                  .deepTo_m = on.deep_m + cut.through.to_m,
                  .scarfAtStart = cut.turned ? cut.part + 1 < cut.parts : cut.part > 0,
                  .scarfAtEnd = cut.turned ? cut.part > 0 : cut.part + 1 < cut.parts,
                  .spare = job.job.strips[cut.strip].spare,
                  .faulty = cut.faulty};
    if (!strip.ofThis) part.piece = strip.pieceName;
    part.pinned =
        std::ranges::any_of(job.job.rules.pins, [&](const stock::Pin& pin) { return pin.strip == cut.strip; });
    return part;
}

SawnPart sawnAlready(const model::StripCut& cut, const std::string& piece, int count) {
    return {.place = cut.place,
            .from_m = cut.from_m,
            .length_m = cut.length_m,
            .acrossFrom_m = cut.acrossFrom_m,
            .acrossTo_m = cut.acrossTo_m,
            .deepFrom_m = cut.deepFrom_m,
            .deepTo_m = cut.deepTo_m,
            .spare = cut.place > count,
            .cut = true,
            .lost = cut.lost,
            .piece = piece};
}

// Rips are counted as the saw meets them: across, then through.
void numberRips(std::vector<SawnPart>& parts) {
    std::ranges::sort(parts, [](const SawnPart& a, const SawnPart& b) {
        return std::tie(a.acrossFrom_m, a.deepFrom_m, a.from_m) < std::tie(b.acrossFrom_m, b.deepFrom_m, b.from_m);
    });
    int rip = 0;
    for (std::size_t i = 0; i < parts.size(); ++i) {
        constexpr double same_m = 1e-5;
        const bool next = i == 0 || std::abs(parts[i].acrossFrom_m - parts[i - 1].acrossFrom_m) > same_m ||
                          std::abs(parts[i].deepFrom_m - parts[i - 1].deepFrom_m) > same_m;
        if (next) ++rip;
        parts[i].rip = rip;
    }
}

// Of the strip that it becomes: planed on the two faces that were sawn to its thickness.
double stripVolume(const SawnPart& part, double planing_m) {
    const double across_m = part.acrossTo_m - part.acrossFrom_m;
    const double through_m = part.deepTo_m - part.deepFrom_m;
    const double thick_m = std::max(0.0, std::min(across_m, through_m) - 2 * planing_m);
    return thick_m * std::max(across_m, through_m) * part.length_m;
}

// Every board of the list, used or not, with what is cut from it.
std::vector<BoardCuts> boardCuts(const model::Piece& piece, const Shop& shop, const Plan& plan, const StockJob& job,
                                 const stock::CutPlan& found) {
    std::map<BoardKey, BoardCuts> all;
    // Of those that nothing is cut from a few of each row stand for all.
    constexpr int mostUnused = 4;
    for (int row = 0; row < math::countOf(job.rows); ++row) {
        for (int number = 1; number <= std::min(job.rows[row].count, mostUnused); ++number)
            all[{false, row, number}] = {boardName(job.rows, row), number, job.rows[row]};
    }
    for (const stock::Cut& cut : found.cuts) {
        const BoardKey key = keyOf(job, cut.board, cut.copy);
        BoardCuts& board = all[key];
        if (board.name.empty()) {
            const std::vector<model::Board>& rows = key.toBuy ? piece.stock.buy : job.rows;
            board = {boardName(rows, key.row), key.number, rows[key.row], key.toBuy};
        }
        board.ofFace = cut.sawing == stock::Sawing::resawn;
        board.parts.push_back(sawn(job, cut));
    }
    const auto addCut = [&](const model::Piece& of, const std::string& name) {
        std::map<int, int> parts;
        for (const model::StripCut& cut : of.stock.cut) parts[cut.place] += cut.lost ? 0 : 1;
        std::map<int, int> part;  // they stand in the order of the strip
        for (const model::StripCut& cut : of.stock.cut) {
            const int number = cut.lost ? 1 : ++part[cut.place];
            for (int row = 0; row < math::countOf(job.rows); ++row) {
                if (boardName(job.rows, row) != cut.board || cut.number > job.rows[row].count) continue;
                BoardCuts& board = all[{false, row, cut.number}];
                if (board.name.empty()) board = {cut.board, cut.number, job.rows[row]};
                board.parts.push_back(sawnAlready(cut, name, math::countOf(plan.stack.strips)));
                board.parts.back().part = number;
                board.parts.back().parts = cut.lost ? 1 : parts[cut.place];
            }
        }
    };
    addCut(piece, {});
    if (piece.stock.boards.empty()) {
        for (const model::Piece& other : shop.sharing)
            if (other.id != piece.id) addCut(other, other.name);
    }
    std::vector<BoardCuts> boards;
    for (auto& [key, board] : all) {
        numberRips(board.parts);
        board.price = priceOf(board.board);
        double used_m3 = 0;
        for (const SawnPart& part : board.parts)
            if (!part.lost) used_m3 += stripVolume(part, piece.stock.planing_m);
        const double whole_m3 = volumeOf(board.board);
        if (!board.parts.empty() && whole_m3 > 0) board.waste = std::clamp(1 - used_m3 / whole_m3, 0.0, 1.0);
        boards.push_back(std::move(board));
    }
    return boards;
}

void addTotals(StockStudy& study, const StockJob& job, const Shop& shop, const model::Piece& piece) {
    double used_m3 = 0;
    for (const BoardCuts& board : study.boards) {
        if (board.parts.empty()) continue;
        const double whole_m3 = volumeOf(board.board);
        study.volume_m3 += whole_m3;
        study.price += board.price;
        if (board.toBuy) study.toSpend += board.price;
        used_m3 += whole_m3 * (1 - board.waste);
        const wood::Species* wood = wood::findSpecies(shop.species, board.board.species);
        constexpr double water_kg_m3 = 1000;
        const double moisture = board.board.moisture.value_or(piece.stack.moisture);
        if (wood) study.weight_kg += whole_m3 * water_kg_m3 * wood->sg.value * (1 + moisture);
        ++study.boardsUsed;
    }
    study.boardFeet = study.volume_m3 / stock::boardFoot_m3;
    study.waste = study.volume_m3 > 0 ? 1 - used_m3 / study.volume_m3 : 0;
    study.stripsNeeded = job.needed;
    study.spares = job.spares;
    study.alreadyCut = job.cut;
}

void addScarfs(StockStudy& study, const StockJob& job, const stock::CutPlan& found) {
    for (const stock::ScarfCut& scarf : found.scarfs) {
        const StripOrigin& strip = job.strips[scarf.strip];
        if (!strip.ofThis) continue;
        const double length_m = job.job.strips[scarf.strip].length_m;
        const double share = length_m > 0 ? scarf.at_m / length_m : 0;
        study.scarfs.push_back({.place = strip.place,
                                .at_m = strip.startsAt_m + share * (strip.endsAt_m - strip.startsAt_m),
                                .length_m = scarf.length_m,
                                .inTightest = scarf.forced != stock::Forced::no,
                                .lanesTooShort = scarf.forced == stock::Forced::lanesTooShort,
                                .ofSpare = job.job.strips[scarf.strip].spare});
    }
}

// Of strips that are cut already, where their parts meet.
void addScarfsCut(StockStudy& study, const model::Piece& piece, const Plan& plan) {
    const std::optional<stock::Stretch> tightest = tightestThird(plan);
    for (const laminate::Strip& strip : plan.stack.strips) {
        const double thick_m = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
        const double scarf_m = stock::scarfLength_m(piece.stock.scarfSlope, thick_m);
        double along_m = 0;  // of the strip, up to the end of the part before
        for (const model::StripCut& cut : piece.stock.cut) {
            if (cut.lost || cut.place != strip.place) continue;
            if (along_m > 0 && strip.cutLength_m > 0) {
                const double share = (along_m - scarf_m / 2) / strip.cutLength_m;
                const double at_m = strip.startsAt_m + share * (strip.endsAt_m - strip.startsAt_m);
                const bool inTightest = tightest && at_m > tightest->from_m && at_m < tightest->to_m;
                study.scarfs.push_back(
                    {.place = strip.place, .at_m = at_m, .length_m = scarf_m, .inTightest = inTightest});
                along_m -= scarf_m;
            }
            along_m += cut.length_m;
        }
    }
}

// Where every strip is cut already there is nothing to lay out.
stock::CutPlan bestOf(const stock::Job& job, const std::atomic<bool>& stop) {
    if (job.strips.empty()) return {.proven = true};
    return stock::bestCutPlan(job, {}, stop);
}

// What one way of sawing alone leaves as waste; none where it gives fewer strips. With less effort than the cut list
// itself: it is there to compare by.
std::optional<double> wasteBy(stock::Sawing sawing, stock::Job job, const stock::CutPlan& both,
                              const std::atomic<bool>& stop) {
    if (job.strips.empty() || both.cuts.empty()) return std::nullopt;
    if (std::ranges::all_of(both.cuts, [&](const stock::Cut& cut) { return cut.sawing == sawing; })) return both.waste;
    constexpr stock::Effort effort{.rounds = 10, .nodes = 2'000};
    job.rules.sawing = sawing;
    const stock::CutPlan alone = stock::bestCutPlan(job, effort, stop);
    if (alone.missing.size() > both.missing.size() || alone.cuts.empty()) return std::nullopt;
    return alone.waste;
}

Message toldOf(const stock::Trouble& trouble, const StockJob& job, const Shop& shop) {
    const auto board = [&]() -> Message {
        if (trouble.board < 0) return {};
        const BoardOrigin& origin = job.boards[trouble.board];
        return {
            std::string(job.job.boards[trouble.board].name) +
            (job.rows.size() > static_cast<std::size_t>(origin.row) && !origin.toBuy && job.rows[origin.row].count > 1
                 ? " " + std::to_string(origin.number)
                 : "")};
    };
    const Arg place = put::count(trouble.strip < 0 ? 0 : job.strips[trouble.strip].place);
    const std::string wood = trouble.strip < 0 ? std::string() : job.job.strips[trouble.strip].species;
    switch (trouble.kind) {
        case stock::TroubleKind::noBoards:
            return {texts::noBoards};
        case stock::TroubleKind::wrongWood:
            return {texts::noBoardOfWood, {woodName(shop.species, wood)}};
        case stock::TroubleKind::boardsTooSmall:
            return {texts::noBoardGives, {place}};
        case stock::TroubleKind::kerfTooWide:
            return {texts::kerfTooWide, {board()}};
        case stock::TroubleKind::boardAllBad:
            return {texts::boardAllBad, {board()}};
        case stock::TroubleKind::boardTooSmall:
            return {texts::boardTooSmall, {board()}};
        case stock::TroubleKind::boardOtherWood:
            return {texts::boardOtherWood, {board()}};
        case stock::TroubleKind::lanesTooShort:
            return {texts::lanesTooShort, {place}};
        case stock::TroubleKind::thinnerThanPlaner:
            return {texts::thinnerThanPlaner, {place}};
        case stock::TroubleKind::pinNotMet:
            return {texts::pinNotMet, {place}};
    }
    return {};
}

void addTroubles(StockStudy& study, const StockJob& job, const stock::CutPlan& found, const Shop& shop) {
    std::set<int> pins(job.unknownPins.begin(), job.unknownPins.end());
    std::set<std::pair<int, int>> rowsTold;
    std::set<stock::TroubleKind> ofStrips;
    for (const stock::Trouble& trouble : found.troubles) {
        const bool ofThis = trouble.strip < 0 || job.strips[trouble.strip].ofThis;
        if (!ofThis) continue;
        if (trouble.kind == stock::TroubleKind::pinNotMet) {
            pins.insert(job.strips[trouble.strip].place);
            continue;
        }
        if (trouble.kind == stock::TroubleKind::thinnerThanPlaner) {
            study.thinnerThanPlaner = true;
            continue;
        }
        // The rest of a board that is cut already may well be too small; nobody needs to be told.
        if (trouble.board >= 0 && job.boards[trouble.board].isRest) continue;
        if (trouble.board >= 0 &&
            !rowsTold.insert({static_cast<int>(trouble.kind), job.boards[trouble.board].row}).second)
            continue;
        if (trouble.board < 0 && !ofStrips.insert(trouble.kind).second) continue;  // the first of several says it
        study.told.push_back(toldOf(trouble, job, shop));
    }
    for (std::size_t i = 0; i < job.boards.size(); ++i) {
        // Neither a whole strip nor a part of one between scarfs.
        double least_m = job.job.rules.leastPart_m;
        for (const stock::Strip& strip : job.job.strips) least_m = std::min(least_m, strip.length_m);
        if (job.boards[i].isRest || job.job.boards[i].length_m >= least_m || job.job.boards[i].count < 1) continue;
        study.told.push_back({texts::boardTooShort, {job.job.boards[i].name, put::span(least_m)}});
    }
    constexpr std::size_t mostTold = 6;
    if (study.told.size() > mostTold + 1) {
        const int more = math::countOf(study.told) - static_cast<int>(mostTold);
        study.told.resize(mostTold);
        study.told.push_back({texts::andMoreTrouble, {}, more});
    }
    study.pinsNotKept.assign(pins.begin(), pins.end());
    if (!job.unlikeSharers.empty()) study.told.push_back({texts::sharersUnlike, {job.unlikeSharers.front()}});
}

}  // namespace

std::optional<StockStudy> stockFor(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop) {
    StockStudy study;
    std::optional<StockJob> job = stockJobFor(piece, shop, plan, false, stop);
    if (!job) return std::nullopt;
    study.stripsNeeded = job->needed;
    study.spares = job->spares;
    study.alreadyCut = job->cut;
    study.anyBoards = !job->rows.empty() || !piece.stock.buy.empty();
    if (!study.anyBoards) return study;
    stock::CutPlan found = bestOf(job->job, stop);
    if (stop) return std::nullopt;
    if (!found.missing.empty() && !piece.stock.buy.empty()) {
        // What is on hand first: it costs nothing any more.
        std::optional<StockJob> buying = stockJobFor(piece, shop, plan, true, stop);
        if (!buying) return std::nullopt;
        const bool priced =
            std::ranges::any_of(piece.stock.buy, [](const model::Board& board) { return board.price > 0; });
        if (priced) {
            buying->job.rules.aim = stock::Aim::leastPrice;
            for (std::size_t i = 0; i < buying->boards.size(); ++i)
                if (!buying->boards[i].toBuy) buying->job.boards[i].price = 0;
        }
        stock::CutPlan bought = bestOf(buying->job, stop);
        if (stop) return std::nullopt;
        if (bought.missing.size() < found.missing.size()) {
            found = std::move(bought);
            job = std::move(buying);
        }
    }
    for (const int strip : found.missing) {
        if (job->strips[strip].ofThis) study.missing.push_back(job->strips[strip].place);
    }
    std::ranges::sort(study.missing);
    study.boards = boardCuts(piece, shop, plan, *job, found);
    addTotals(study, *job, shop, piece);
    addScarfs(study, *job, found);
    addScarfsCut(study, piece, plan);
    addTroubles(study, *job, found, shop);
    study.proven = found.proven;
    study.offBest = std::max(0.0, found.gap);
    study.edgeWaste = wasteBy(stock::Sawing::ripped, job->job, found, stop);
    study.faceWaste = wasteBy(stock::Sawing::resawn, job->job, found, stop);
    if (stop) return std::nullopt;
    if (!study.missing.empty()) {
        study.cures = stockCures(piece, *job, found, stop);
        if (stop) return std::nullopt;
    }
    return study;
}

}  // namespace fayline::plan
