#include "core/plan/study/stock_job.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "core/math/count.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/stock/measure.hpp"
#include "core/units/input_error.hpp"
#include "core/wood/species.hpp"

namespace fayline::plan {

namespace {

constexpr double hair_m = 1e-6;       // what is sawn to a size still counts as of that size
constexpr double leastRest_m = 0.05;  // shorter ends and thinner slabs than a strip are shavings

double woodDensity(const Shop& shop, const std::string& species, double moisture) {
    constexpr double water_kg_m3 = 1000;
    const wood::Species* wood = wood::findSpecies(shop.species, species);
    return wood ? water_kg_m3 * wood->sg.value * (1 + moisture) : 0;
}

double widestFinished(const model::Stack& stack) {
    double width_m = 0;
    for (const model::Width& width : stack.widths) width_m = std::max(width_m, width.width_m);
    return width_m + 2 * stack.ripAllowance_m;
}

stock::Board boardAsStock(const model::Board& board, const std::string& name, const Shop& shop, double moisture) {
    stock::Board made{.name = name,
                      .species = board.species,
                      .length_m = board.length_m,
                      .width_m = board.width_m,
                      .thickness_m = board.thickness_m,
                      .count = board.count,
                      .price = priceOf(board),
                      .density_kg_m3 = woodDensity(shop, board.species, board.moisture.value_or(moisture))};
    for (const model::BadStretch& bad : board.bad) {
        stock::Bad one{.along = {bad.from_m, bad.to_m}};
        if (bad.acrossFrom_m || bad.acrossTo_m)
            one.across = stock::Stretch{bad.acrossFrom_m.value_or(0), bad.acrossTo_m.value_or(board.width_m)};
        made.bad.push_back(one);
    }
    return made;
}

// The parts of a stretch of so much that is not covered, each by `kerf_m` shorter where it meets what is.
std::vector<stock::Stretch> uncovered(double length_m, std::vector<stock::Stretch> covered, double kerf_m) {
    std::ranges::sort(covered, {}, &stock::Stretch::from_m);
    std::vector<stock::Stretch> free;
    double from_m = 0;
    for (const stock::Stretch& one : covered) {
        if (one.from_m - kerf_m > from_m) free.push_back({from_m, one.from_m - kerf_m});
        from_m = std::max(from_m, one.to_m + kerf_m);
    }
    if (from_m < length_m) free.push_back({from_m, length_m});
    return free;
}

// What lies within a part of a board, seen from that part.
std::vector<stock::Bad> badWithin(const stock::Board& board, const stock::Stretch& along,
                                  const stock::Stretch& across) {
    std::vector<stock::Bad> within;
    for (const stock::Bad& bad : board.bad) {
        stock::Bad one = bad;
        one.along = {std::max(bad.along.from_m, along.from_m) - along.from_m,
                     std::min(bad.along.to_m, along.to_m) - along.from_m};
        if (one.along.to_m <= one.along.from_m) continue;
        if (bad.across) {
            one.across = stock::Stretch{std::max(bad.across->from_m, across.from_m) - across.from_m,
                                        std::min(bad.across->to_m, across.to_m) - across.from_m};
            if (one.across->to_m <= one.across->from_m) continue;
        }
        within.push_back(one);
    }
    return within;
}

Rest partOf(const stock::Board& board, const stock::Stretch& along, const stock::Stretch& across,
            const stock::Stretch& deep) {
    Rest rest{.board = board};
    rest.board.count = 1;
    rest.board.length_m = along.to_m - along.from_m;
    rest.board.width_m = across.to_m - across.from_m + hair_m;
    rest.board.thickness_m = deep.to_m - deep.from_m + hair_m;
    rest.board.bad = badWithin(board, along, across);
    rest.board.price = 0;  // of what is cut already
    rest.origin = {.isRest = true, .along_m = along.from_m, .across_m = across.from_m, .deep_m = deep.from_m};
    return rest;
}

// The strip of a plan as it is wanted from a board.
stock::Strip wantedStrip(const model::Piece& piece, const Plan& plan, const laminate::Strip& strip) {
    const double line_m = plan.line.fair.line.length();
    const double runs_m = strip.endsAt_m - strip.startsAt_m;
    const auto alongStrip = [&](double at_m) {
        return runs_m > 0 ? std::clamp((at_m - strip.startsAt_m) / runs_m, 0.0, 1.0) * strip.cutLength_m : 0.0;
    };
    stock::Strip wanted{.piece = piece.id,
                        .place = strip.place,
                        .species = strip.species,
                        .length_m = strip.cutLength_m,
                        .width_m = widestFinished(piece.stack),
                        .thickness_m = std::max(strip.thickness_m, strip.thicknessAtEnd_m),
                        .sacrificial = strip.sacrificial};
    if (strip.startsAt_m < 0) wanted.takenOff.push_back({0, alongStrip(0)});
    if (strip.endsAt_m > line_m) wanted.takenOff.push_back({alongStrip(line_m), strip.cutLength_m});
    if (const std::optional<stock::Stretch> tightest = tightestThird(plan)) {
        const stock::Stretch there{alongStrip(tightest->from_m), alongStrip(tightest->to_m)};
        if (there.to_m > there.from_m) wanted.tightest = there;
    }
    return wanted;
}

// What has been cut of each place and is still good, metres.
std::map<int, double> goodByPlace(const model::Stock& stock) {
    std::map<int, double> good;
    for (const model::StripCut& cut : stock.cut) {
        if (!cut.lost) good[cut.place] += cut.length_m;
    }
    return good;
}

void addStrips(StockJob& made, const model::Piece& piece, const Plan& plan, bool ofThis) {
    const std::vector<laminate::Strip>& strips = plan.stack.strips;
    if (strips.empty()) return;
    const std::map<int, double> good = goodByPlace(piece.stock);
    const auto isCut = [&](int place, double length_m) {
        const auto found = good.find(place);
        return found != good.end() && found->second >= length_m - 1e-4;
    };
    const auto lastKept =
        std::find_if(strips.rbegin(), strips.rend(), [](const auto& one) { return !one.sacrificial; });
    const int spares = sparesWanted(piece, plan);
    const auto add = [&](stock::Strip wanted, const laminate::Strip& like) {
        if (ofThis) ++made.needed;
        if (isCut(wanted.place, wanted.length_m)) {
            if (ofThis) ++made.cut;
            return;
        }
        made.strips.push_back({piece.id, piece.name, wanted.place, ofThis, like.startsAt_m, like.endsAt_m});
        made.job.strips.push_back(std::move(wanted));
    };
    for (const laminate::Strip& strip : strips) {
        stock::Strip wanted = wantedStrip(piece, plan, strip);
        wanted.outer = lastKept != strips.rend() && strip.place == lastKept->place;
        add(std::move(wanted), strip);
    }
    // A spare can stand in for the strip that is likeliest to break, and is as long as the longest like it.
    const laminate::Strip& worst = laminate::worstStrip(plan.stack);
    const laminate::Strip* longest = &worst;
    for (const laminate::Strip& strip : strips) {
        if (strip.group == worst.group && strip.cutLength_m > longest->cutLength_m) longest = &strip;
    }
    for (int i = 0; i < spares; ++i) {
        stock::Strip spare = wantedStrip(piece, plan, *longest);
        spare.place = math::countOf(strips) + 1 + i;
        spare.spare = true;
        add(std::move(spare), *longest);
    }
    if (ofThis) made.spares = spares;
}

bool sawnAlike(const model::Stock& one, const model::Stock& other) {
    return one.kerf_m == other.kerf_m && one.planing_m == other.planing_m && one.saw == other.saw &&
           one.scarfSlope == other.scarfSlope && one.planerLeast_m == other.planerLeast_m &&
           one.snipe_m == other.snipe_m && one.stagger_m == other.stagger_m;
}

void addBoards(StockJob& made, const std::vector<model::Board>& rows, bool toBuy,
               const std::vector<model::StripCut>& cut, const Shop& shop, double moisture, double kerf_m,
               int pinnedUpTo) {
    // More boards alike than strips and their parts are never cut; but one may be asked for by its number.
    const int mostAlike = std::max(pinnedUpTo, 4 * (math::countOf(made.job.strips) + 1));
    for (int row = 0; row < math::countOf(rows); ++row) {
        const std::string name = boardName(rows, row);
        const stock::Board whole = boardAsStock(rows[row], name, shop, moisture);
        std::map<int, std::vector<model::StripCut>> ofNumber;
        if (!toBuy) {
            for (const model::StripCut& one : cut)
                if (one.board == name && one.number <= whole.count) ofNumber[one.number].push_back(one);
        }
        // Untouched ones in runs of numbers, so that a copy's number follows from its run's first.
        for (int number = 1; number <= whole.count;) {
            if (const auto found = ofNumber.find(number); found != ofNumber.end()) {
                for (Rest& rest : restOf(whole, found->second, kerf_m)) {
                    rest.origin.row = row;
                    rest.origin.number = number;
                    made.job.boards.push_back(std::move(rest.board));
                    made.boards.push_back(rest.origin);
                }
                ++number;
                continue;
            }
            const auto next = ofNumber.upper_bound(number);
            const int until = next == ofNumber.end() ? whole.count + 1 : next->first;
            stock::Board run = whole;
            run.count = std::min(until - number, mostAlike);
            made.job.boards.push_back(std::move(run));
            made.boards.push_back({.row = row, .number = number, .toBuy = toBuy});
            number = until;
        }
    }
}

stock::Rules rulesOf(const model::Stock& stock, const std::vector<stock::Strip>& strips) {
    stock::Rules rules{.kerf_m = stock.kerf_m,
                       .planing_m = stock.planing_m,
                       .planerLeast_m = stock.planerLeast_m,
                       .snipe_m = stock.snipe_m,
                       .scarfSlope = stock.scarfSlope,
                       .extraScarfs = stock.extraScarfs};
    if (stock.saw != model::Saw::either)
        rules.sawing = stock.saw == model::Saw::edge ? stock::Sawing::ripped : stock::Sawing::resawn;
    if (stock.aim == model::StockAim::price) rules.aim = stock::Aim::leastPrice;
    if (stock.stagger_m && !strips.empty()) {
        // Nowhere less than the distance that was given: by the thinnest strip.
        const double thinnest_m = std::ranges::min(strips, {}, &stock::Strip::thickness_m).thickness_m;
        rules.staggerThicknesses = *stock.stagger_m / thinnest_m;
    }
    return rules;
}

void addPins(StockJob& made, const model::Piece& piece) {
    for (const model::StripPin& pin : piece.stock.pins) {
        const auto strip = std::ranges::find_if(
            made.strips, [&](const StripOrigin& one) { return one.ofThis && one.place == pin.place; });
        if (strip == made.strips.end()) continue;  // cut already, or no such strip
        bool known = false;
        for (int i = 0; i < math::countOf(made.boards) && !known; ++i) {
            const BoardOrigin& board = made.boards[i];
            if (board.toBuy || boardName(made.rows, board.row) != pin.board) continue;
            const int copy = pin.number - board.number;
            if (copy < 0 || copy >= made.job.boards[i].count) continue;
            known = true;
            made.job.rules.pins.push_back({static_cast<int>(strip - made.strips.begin()), i, copy});
        }
        if (!known) made.unknownPins.push_back(pin.place);
    }
}

}  // namespace

std::vector<model::Board> boardsOf(const model::Piece& piece, const std::vector<model::Board>& ofBoat) {
    return piece.stock.boards.empty() ? ofBoat : piece.stock.boards;
}

std::string boardName(const std::vector<model::Board>& boards, int row) {
    const std::string& name = boards[static_cast<std::size_t>(row)].name;
    return name.empty() ? std::to_string(row + 1) : name;
}

double volumeOf(const model::Board& board) {
    return board.length_m * board.width_m * board.thickness_m;
}

double priceOf(const model::Board& board) {
    switch (board.pricePer) {
        case model::PricePer::board:
            return board.price;
        case model::PricePer::boardFoot:
            return board.price * volumeOf(board) / stock::boardFoot_m3;
        case model::PricePer::cubicMetre:
            return board.price * volumeOf(board);
    }
    return board.price;
}

int sparesWanted(const model::Piece& piece, const Plan& plan) {
    return piece.stock.spares.value_or(std::max(plan.stack.spares, 0));
}

std::optional<stock::Stretch> tightestThird(const Plan& plan) {
    const std::vector<line::Place>& samples = plan.line.samples;
    const double length_m = plan.line.fair.line.length();
    if (samples.size() < 2 || std::abs(plan.line.tightest.curvature_per_m) * length_m < 1e-3) return std::nullopt;
    // Turned by the line up to each sample; the window of a third that turns most.
    std::vector<double> turned{0};
    for (std::size_t i = 1; i < samples.size(); ++i) {
        const double step_m = samples[i].at_m - samples[i - 1].at_m;
        const double mean = (std::abs(samples[i].curvature_per_m) + std::abs(samples[i - 1].curvature_per_m)) / 2;
        turned.push_back(turned.back() + mean * step_m);
    }
    double most = -1;
    stock::Stretch best;
    for (std::size_t from = 0, to = 0; from < samples.size(); ++from) {
        while (to + 1 < samples.size() && samples[to].at_m - samples[from].at_m < length_m / 3 - 1e-9) ++to;
        if (samples[to].at_m - samples[from].at_m < length_m / 3 - 1e-9) break;
        if (turned[to] - turned[from] <= most) continue;
        most = turned[to] - turned[from];
        best = {samples[from].at_m, samples[to].at_m};
    }
    return best;
}

std::vector<Rest> restOf(const stock::Board& board, const std::vector<model::StripCut>& cut, double kerf_m) {
    // The saw goes through the whole length: lanes first.
    std::map<std::array<double, 4>, std::vector<stock::Stretch>> lanes;
    std::vector<stock::Stretch> across;
    stock::Stretch deep{0, 0};
    stock::Stretch hull{board.width_m, 0};
    for (const model::StripCut& one : cut) {
        lanes[{one.acrossFrom_m, one.acrossTo_m, one.deepFrom_m, one.deepTo_m}].push_back(
            {one.from_m, one.from_m + one.length_m});
        across.push_back({one.acrossFrom_m, one.acrossTo_m});
        deep.to_m = std::max(deep.to_m, one.deepTo_m);
        hull = {std::min(hull.from_m, one.acrossFrom_m), std::max(hull.to_m, one.acrossTo_m)};
    }
    std::vector<Rest> rests;
    for (const auto& [lane, used] : lanes) {
        for (const stock::Stretch& along : uncovered(board.length_m, used, kerf_m)) {
            if (along.to_m - along.from_m >= leastRest_m)
                rests.push_back(partOf(board, along, {lane[0], lane[1]}, {lane[2], lane[3]}));
        }
    }
    const stock::Stretch whole{0, board.length_m};
    for (const stock::Stretch& beside : uncovered(board.width_m, across, kerf_m)) {
        if (beside.to_m - beside.from_m > kerf_m) rests.push_back(partOf(board, whole, beside, {0, board.thickness_m}));
    }
    // Under lanes that were resawn from the face lies the rest of the plank.
    if (hull.to_m > hull.from_m && board.thickness_m - deep.to_m - kerf_m > kerf_m)
        rests.push_back(partOf(board, whole, hull, {deep.to_m + kerf_m, board.thickness_m}));
    return rests;
}

std::optional<StockJob> stockJobFor(const model::Piece& piece, const Shop& shop, const Plan& plan, bool withBuying,
                                    const std::atomic<bool>& stop) {
    StockJob made{.rows = boardsOf(piece, shop.boards)};
    const bool shared = piece.stock.boards.empty() && !shop.boards.empty();
    std::vector<model::StripCut> cut = piece.stock.cut;
    model::Stock rules = piece.stock;
    bool first = true;
    if (shared) {
        for (const model::Piece& other : shop.sharing) {
            if (stop) return std::nullopt;
            const model::Stock& stock = other.id == piece.id ? piece.stock : other.stock;
            if (first)
                rules = stock;
            else if (!sawnAlike(rules, stock))
                made.unlikeSharers.push_back(other.name);
            first = false;
            if (other.id == piece.id) {
                addStrips(made, piece, plan, true);
                continue;
            }
            cut.insert(cut.end(), other.stock.cut.begin(), other.stock.cut.end());
            try {
                const std::optional<Plan> of = makePlan(other, shop, nullptr, stop);
                if (!of) return std::nullopt;
                addStrips(made, other, *of, false);
            } catch (const units::InputError&) {
                // A piece that cannot be planned yet asks for no wood.
            }
        }
    }
    if (made.needed == 0) addStrips(made, piece, plan, true);
    int pinnedUpTo = 0;
    for (const model::StripPin& pin : piece.stock.pins) pinnedUpTo = std::max(pinnedUpTo, pin.number);
    addBoards(made, made.rows, false, cut, shop, piece.stack.moisture, rules.kerf_m, pinnedUpTo);
    if (withBuying) addBoards(made, piece.stock.buy, true, {}, shop, piece.stack.moisture, rules.kerf_m, 0);
    made.job.rules = rulesOf(rules, made.job.strips);
    addPins(made, piece);
    return made;
}

}  // namespace fayline::plan
