#include "core/plan/study/choices.hpp"

#include <algorithm>

#include "core/laminate/parallels.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/choice_texts.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices_candidates.hpp"
#include "core/plan/study/choices_counts.hpp"
#include "core/plan/study/choices_naming.hpp"
#include "core/plan/study/stock_job.hpp"
#include "core/stock/stock.hpp"

namespace fayline::plan {

namespace {

double widest_m(const model::Stack& stack) {
    double width_m = 0;
    for (const model::Width& width : stack.widths) width_m = std::max(width_m, width.width_m);
    return width_m + 2 * stack.ripAllowance_m;
}

// Sawn off a board's edge, as wide as the board is thick; or off its face, as wide as the board.
bool gives(const model::Board& board, double width_m, double thick_m) {
    constexpr double hair_m = 1e-7;
    const double most = std::max(board.width_m, board.thickness_m) + hair_m;
    const double least = std::min(board.width_m, board.thickness_m) + hair_m;
    return (most >= width_m && least >= thick_m) || (least >= width_m && most >= thick_m);
}

// Whether boards of this wood are listed at all, and one of them gives such a strip.
bool listed(const model::Stock& stock, const std::string& species) {
    return std::ranges::any_of(stock.boards,
                               [&](const model::Board& b) { return b.count > 0 && b.species == species; });
}

bool sawnFrom(const model::Stock& stock, const std::string& species, double width_m, double thickness_m) {
    if (!listed(stock, species)) return true;
    const double thick_m = thickness_m + 2 * stock.planing_m;
    return std::ranges::any_of(stock.boards, [&](const model::Board& b) {
        return b.count > 0 && b.species == species && gives(b, width_m, thick_m);
    });
}

// Thickness at which the stack's worst strip would come to its mean breaking strain.
double breakingThickness(const laminate::StackPlan& stack) {
    double perMetre = 0;
    for (const laminate::Strip& strip : stack.strips) {
        if (strip.sacrificial) continue;
        perMetre = std::max(perMetre, laminate::worstShare(strip) / strip.thickness_m);
    }
    return perMetre > 0 ? 1 / perMetre : 0;
}

// The first wood of which boards are listed that give no strip at all.
void tellNoStrip(Choices& choices, const model::Piece& piece, double least_m) {
    const double width_m = widest_m(piece.stack);
    for (const Band& band : bandsOf(piece.stack)) {
        const double most_m = least_m * std::max(1.0, band.taper);
        if (!band.filled || sawnFrom(piece.stock, band.like.species, width_m, most_m)) continue;
        choices.noStripFrom = band.like.species;
        choices.boardWidth_m = width_m;
        choices.boardThick_m = most_m + 2 * piece.stock.planing_m;
        return;
    }
}

// What the piece has is kept in the list even where no board gives it.
void checkStock(Choice& choice, const model::Piece& piece) {
    if (!choice.possible) return;
    const double width_m = widest_m(piece.stack);
    for (const model::Strips& strips : choice.strips) {
        if (strips.sacrificial) continue;
        const double most_m = std::max(strips.thickness_m, strips.tapersTo_m.value_or(0));
        if (sawnFrom(piece.stock, strips.species, width_m, most_m)) continue;
        choice.possible = false;
        choice.whyNot = texts::noBoardLargeEnough;
        return;
    }
}

// What the piece's own boards give of a choice.
void countBoards(Choice& choice, const model::Piece& piece, const Shop& shop, const Plan& plan,
                 const std::atomic<bool>& stop) {
    constexpr std::size_t mostRows = 50;  // of longer lists every choice would take too long
    if (piece.stock.boards.empty() || piece.stock.boards.size() > mostRows || !choice.possible) return;
    model::Piece adopted = piece;
    adopted.stack = adopt(piece.stack, choice);
    Plan with = plan;
    with.stack = laminate::planStack(adopted.stack, piece.line.describes, piece.line.stripsOn, plan.line.fair.line,
                                     shop.species);
    const std::optional<StockJob> job = stockJobFor(adopted, shop, with, false, stop);
    if (!job || job->job.strips.empty()) return;
    const stock::CutPlan cut = stock::firstCutPlan(job->job);
    choice.stripsShort = math::countOf(cut.missing);
    choice.boards_m3 = cut.boards_m3;
}

// What counting all may cost: places along the line, 10 mm apart, for each strip of each candidate, about a microsecond
// each; strips that taper cost four times as much. Ours.
constexpr double mostPlacesCounted = 6e5;

double placesCounted(const Candidate& candidate, std::size_t places) {
    double strips = 0;
    for (const model::Strips& group : candidate.strips) strips += group.tapersTo_m ? 4 * group.count : group.count;
    return strips * static_cast<double>(places);
}

// Of a long piece mixed ones are left out, evenly, until the rest may be counted.
void leaveOutMixed(std::vector<Candidate>& candidates, std::size_t places) {
    double alike = 0;
    double mixed = 0;
    for (const Candidate& candidate : candidates) {
        (candidate.mixed && !candidate.asItIs ? mixed : alike) += placesCounted(candidate, places);
    }
    if (alike + mixed <= mostPlacesCounted) return;
    const double share = std::max(0.0, mostPlacesCounted - alike) / mixed;
    double due = 0;
    std::erase_if(candidates, [&](const Candidate& candidate) {
        if (!candidate.mixed || candidate.asItIs) return false;
        due += share;
        if (due < 1) return true;
        --due;
        return false;
    });
}

// Whether it is worth looking: on a line on which nothing lies down, however thin, there is no choice.
bool anyWouldDo(const Plan& plan, double breaksAt_m, double thinnest_m) {
    const holding::Held& held = plan.holding.held;
    if (held.outcome != holding::Outcome::notPressed || held.notPressed == holding::NotPressed::unsupported)
        return true;
    return held.notPressed == holding::NotPressed::breaks && breaksAt_m > thinnest_m;
}

}  // namespace

model::Stack adopt(const model::Stack& stack, const Choice& choice) {
    model::Stack adopted = stack;
    adopted.strips = choice.strips;
    adopted.gluings = choice.gluings;
    return adopted;
}

std::optional<Choices> choicesFor(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                  const std::atomic<bool>& stop) {
    const double side = laminate::sideSign(piece.line.stripsOn);
    const double width_m = widest_m(piece.stack);
    const CandidatesWanted wanted{piece.stack, shop.display.lengths,
                                  laminate::stackCurvature(plan.line.tightest, side) >= 0,
                                  [&](const model::Strips& like, double thickness_m) {
                                      return sawnFrom(piece.stock, like.species, width_m, thickness_m);
                                  },
                                  breakingThickness(plan.stack)};
    if (stop) return std::nullopt;
    if (!anyWouldDo(plan, wanted.breaksAt_m, thinnest_m(shop.display.lengths))) return Choices{};
    const EndsHeld ends = endsHeld(piece, shop, plan);
    Choices choices;
    std::vector<Candidate> candidates = candidatesFor(wanted);
    leaveOutMixed(candidates, plan.line.samples.size());
    for (const Candidate& candidate : candidates) {
        if (stop) return std::nullopt;
        choices.all.push_back(countsOf(candidate, piece, shop, plan, ends));
        checkStock(choices.all.back(), piece);
        countBoards(choices.all.back(), piece, shop, plan, stop);
    }
    if (stop) return std::nullopt;
    markParetoOptimal(choices.all, plan.form.letsGo);
    choices.namedIndex = nameOne(choices.all, piece, shop, plan);
    tellNoStrip(choices, piece, thinnest_m(shop.display.lengths));
    return choices;
}

}  // namespace fayline::plan
