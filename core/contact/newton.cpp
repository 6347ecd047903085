#include "core/contact/newton.hpp"

#include <algorithm>

namespace fayline::contact {

namespace {

// What the chain gives way, m/N: so little that it does not tell in a step, and enough that its pivots are not nothing
// where the form is flat and the rod lies on it.
constexpr double chainYield_m_N = 1e-13;

// Second derivatives of a pair of elements by gap and slope at their left and right ends, row by row up to the
// diagonal.
using Block = std::array<Pair, 10>;

// What all gaps of an element together, their rise and the two ends' slopes make of the six second derivatives by gap,
// slope and bend at Gauss's places.
struct Sums {
    Pair level{};
    std::array<Pair, 3> byLevel{};  // and rise, slope at the left end, slope at the right
    std::array<Pair, 6> others{};   // of these three, row by row up to the diagonal
};

void add(const math::HermiteBasis& shape, const std::array<Pair, 6>& second, Sums& sums) {
    sums.level += second[0];
    constexpr std::array<std::size_t, 3> ends = {2, 1, 3};
    for (std::size_t n = 0, entry = 0; n < 3; ++n) {
        const std::size_t end = ends[n];
        const Pair gap = second[0] * shape.value[end] + second[1] * shape.slope[end] + second[2] * shape.bend[end];
        const Pair slope = second[1] * shape.value[end] + second[3] * shape.slope[end] + second[4] * shape.bend[end];
        const Pair bend = second[2] * shape.value[end] + second[4] * shape.slope[end] + second[5] * shape.bend[end];
        sums.byLevel[n] += gap;
        for (std::size_t m = 0; m <= n; ++m, ++entry)
            sums.others[entry] +=
                gap * shape.value[ends[m]] + slope * shape.slope[ends[m]] + bend * shape.bend[ends[m]];
    }
}

Block blockOf(const ElementPair& pair, const math::HermiteEnds<Pair>& ends, Pair along, double foundationShare,
              Curving curving, double hold_N_m2) {
    const Pair h = pair.length_m;
    const Pair u = pair.lengths_per_m;
    Sums sums;
    for (std::size_t i = 0; i < 3; ++i) {
        const PairPlace& place = pair.places[i];
        const BasicGap<Pair> gap = math::hermiteValues(math::hermiteBasisAtGauss[i], ends, u);
        const BasicTurning<Pair> turning = turningOf(place.rod, gap);
        const BasicTurningSecond<Pair> turned = turningSecond(place.rod, gap, turning);
        auto second = curving == Curving::exact ? bendingSecond(place.rod, turning, turned)
                                                : bendingSecondPositive(place.rod, turning);
        second[0] +=
            along * turned.path[0] + hold_N_m2 + (gap.value <= 0.0 ? foundationShare * place.foundation_N_m2 : Pair{});
        second[1] += along * turned.path[1];
        second[3] += along * turned.path[2];
        const double w = math::gauss3Weight[i];
        second[0] *= w * h;
        second[1] *= w;
        second[2] *= w * u;
        second[3] *= w * u;
        second[4] *= w * u * u;
        second[5] *= w * u * u * u;
        add(math::hermiteBasisAtGauss[i], second, sums);
    }
    const auto& [rise, leftRise, left, rightRise, rightLeft, right] = sums.others;
    const auto& by = sums.byLevel;
    return {sums.level - 2.0 * by[0] + rise, (by[1] - leftRise) * h, left * h * h,  by[0] - rise, leftRise * h, rise,
            (by[2] - rightRise) * h,         rightLeft * h * h,      rightRise * h, right * h * h};
}

struct Row {
    std::size_t node;  // it stands after
    int kind;          // 0 span, 1 slip, 2 pull
    std::size_t index;
};

}  // namespace

NewtonSystem::NewtonSystem(const Discrete& discrete) {
    order(discrete);
    shape(discrete);
}

void NewtonSystem::order(const Discrete& discrete) {
    std::vector<Row> rows;
    const auto& chain = discrete.chain;
    if (discrete.padsHold) {
        std::vector<std::size_t> last = chain;
        for (std::size_t i = 0; i < discrete.pads.size(); ++i) {
            auto& place = last[discrete.chainOfHold[i]];
            place = std::max(place, discrete.pads[i].last);
        }
        for (std::size_t j = 0; j + 1 < chain.size(); ++j) {
            const std::size_t away = j < discrete.anchor ? j : j + 1;  // the end that is further from the anchor
            const std::size_t node = std::max(chain[j + 1], j < discrete.anchor ? chain[j + 1] : last[away]);
            rows.push_back({node, 0, j});
            rows.push_back({std::max(node, last[away]), 1, away});
        }
    }
    for (std::size_t i = 0; i < discrete.holds.size(); ++i)
        if (!discrete.holds[i].pull_N) rows.push_back({discrete.pads[i].last, 2, i});
    std::ranges::sort(rows, [](const Row& a, const Row& b) {
        if (a.node != b.node) return a.node < b.node;
        if (a.kind != b.kind) return a.kind < b.kind;
        return a.index < b.index;
    });

    rowOfNode_.resize(discrete.nodes_m.size());
    rowOfPull_.assign(discrete.holds.size(), none);
    rowOfSlip_.assign(chain.size(), none);
    rowOfSpan_.assign(chain.size() - 1, none);
    std::size_t row = 0;
    auto next = rows.begin();
    for (std::size_t node = 0; node < rowOfNode_.size(); ++node) {
        rowOfNode_[node] = row;
        row += 2;
        for (; next != rows.end() && next->node == node; ++next)
            (next->kind == 0 ? rowOfSpan_ : next->kind == 1 ? rowOfSlip_ : rowOfPull_)[next->index] = row++;
    }
    right_.resize(row);
    for (const Row& each : rows) negatives_ += each.kind != 1;
}

void NewtonSystem::shape(const Discrete& discrete) {
    std::vector<std::size_t> first(right_.size());
    for (std::size_t row = 0; row < first.size(); ++row) first[row] = row;
    const auto meet = [&](std::size_t a, std::size_t b) {
        if (a == none || b == none) return;
        first[std::max(a, b)] = std::min(first[std::max(a, b)], std::min(a, b));
    };
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e) {
        meet(rowOfNode_[e], rowOfNode_[e] + 1);
        for (std::size_t n = 0; n < 2; ++n) meet(rowOfNode_[e], rowOfNode_[e + 1] + n);
    }
    meet(rowOfNode_.back(), rowOfNode_.back() + 1);
    const auto& chain = discrete.chain;
    for (std::size_t i = 0; i < discrete.pads.size(); ++i) {
        const Pad& pad = discrete.pads[i];
        const std::size_t slip = rowOfSlip_[discrete.chainOfHold[i]];
        for (std::size_t node = pad.first; node <= pad.last; ++node)
            for (std::size_t n = 0; n < 2; ++n) {
                meet(rowOfNode_[node] + n, rowOfPull_[i]);
                meet(rowOfNode_[node] + n, slip);
            }
        meet(slip, rowOfPull_[i]);
    }
    for (std::size_t j = 0; discrete.padsHold && j + 1 < chain.size(); ++j) {
        for (std::size_t node = chain[j]; node <= chain[j + 1]; ++node)
            for (std::size_t n = 0; n < 2; ++n) meet(rowOfNode_[node] + n, rowOfSpan_[j]);
        meet(rowOfSlip_[j], rowOfSpan_[j]);
        meet(rowOfSlip_[j + 1], rowOfSpan_[j]);
    }
    matrix_ = math::SkylineLdlt(std::move(first));
}

void NewtonSystem::addElements(const Discrete& discrete, std::span<const double> x, const Equilibrium& balance,
                               double foundationShare, Curving curving, double hold_N_m2) {
    SpanOfElement spanOf(discrete);
    const std::size_t elements = discrete.length_m.size();
    for (std::size_t p = 0; p < discrete.pairs.size(); ++p) {
        Pair along{};
        for (std::size_t lane = 0; discrete.padsHold && lane < 2 && 2 * p + lane < elements; ++lane) {
            const std::size_t span = spanOf(2 * p + lane);
            if (span != SpanOfElement::none) along[lane] = balance.spanForce_N[span];
        }
        if (curving == Curving::positive) along = along > 0.0 ? along : Pair{};
        const Block block =
            blockOf(discrete.pairs[p], endsOf(discrete, x, p), along, foundationShare, curving, hold_N_m2);
        for (std::size_t lane = 0; lane < 2 && 2 * p + lane < elements; ++lane) addBlock(block, 2 * p + lane, lane);
    }
}

void NewtonSystem::addBlock(const Block& block, std::size_t element, std::size_t lane) {
    const std::size_t left = rowOfNode_[element];
    const std::size_t right = rowOfNode_[element + 1];
    const std::array<math::SkylineLdlt::Row, 4> rows = {matrix_.row(left), matrix_.row(left + 1), matrix_.row(right),
                                                        matrix_.row(right + 1)};
    rows[0][left] += block[0][lane];
    rows[1][left] += block[1][lane];
    rows[1][left + 1] += block[2][lane];
    rows[2][left] += block[3][lane];
    rows[2][left + 1] += block[4][lane];
    rows[2][right] += block[5][lane];
    rows[3][left] += block[6][lane];
    rows[3][left + 1] += block[7][lane];
    rows[3][right] += block[8][lane];
    rows[3][right + 1] += block[9][lane];
}

void NewtonSystem::addHolds(const Discrete& discrete, const Equilibrium& balance, Curving curving, double yield_m_N) {
    for (std::size_t i = 0; i < discrete.pads.size(); ++i) {
        const Pad& pad = discrete.pads[i];
        const std::size_t place = discrete.chainOfHold[i];
        const std::size_t slipRow = discrete.padsHold ? rowOfSlip_[place] : none;
        const double slip = discrete.padsHold ? balance.slip_m[place] : 0;
        const std::size_t pullRow = rowOfPull_[i];
        const bool between = balance.between[i] != 0;
        if (pullRow != none) {
            // A hold at one of its limits is left out: its row stands alone.
            matrix_(pullRow, pullRow) = between ? -yield_m_N : -1;
            if (between && slipRow != none) matrix_(pullRow, slipRow) += balance.meanSlope[i];
        }
        const double pull = curving == Curving::exact ? balance.pull_N[i] : 0;
        for (std::size_t n = 0; n < pad.gapByGap.size(); ++n) {
            const std::size_t row = rowOfNode_[pad.first + n];
            if (pullRow != none && between) {
                matrix_(pullRow, row) += pad.gapByGap[n] + slip * pad.slopeByGap[n];
                matrix_(pullRow, row + 1) += pad.gapBySlope[n] + slip * pad.slopeBySlope[n];
            }
            if (slipRow != none) {
                matrix_(slipRow, row) += pull * pad.slopeByGap[n];
                matrix_(slipRow, row + 1) += pull * pad.slopeBySlope[n];
            }
        }
    }
}

// Each span: slip at its far end - slip at its near end + what the path is longer = 0.
void NewtonSystem::addChain(const Discrete& discrete, const Equilibrium& balance) {
    const auto& chain = discrete.chain;
    for (std::size_t j = 0; j + 1 < chain.size(); ++j) {
        const std::size_t spanRow = rowOfSpan_[j];
        matrix_(spanRow, spanRow) = -chainYield_m_N;
        if (rowOfSlip_[j] != none) matrix_(spanRow, rowOfSlip_[j]) -= 1;
        if (rowOfSlip_[j + 1] != none) matrix_(spanRow, rowOfSlip_[j + 1]) += 1;
        const math::SkylineLdlt::Row row = matrix_.row(spanRow);
        for (std::size_t e = chain[j]; e < chain[j + 1]; ++e) {
            for (std::size_t n = 0; n < 4; ++n)
                row[rowOfNode_[e + n / 2] + n % 2] += balance.pairs[e / 2].longerByEnds[n][e % 2];
        }
    }
}

bool NewtonSystem::factorise(const Discrete& discrete, std::span<const double> x, const Equilibrium& balance,
                             double foundationShare, Curving curving, double hold_N_m2, double yield_m_N) {
    matrix_.clear();
    addElements(discrete, x, balance, foundationShare, curving, hold_N_m2);
    addHolds(discrete, balance, curving, yield_m_N);
    if (discrete.padsHold) addChain(discrete, balance);
    return matrix_.factorise();
}

void NewtonSystem::step(const Equilibrium& balance, const std::vector<double>& closing_m, std::vector<double>& step,
                        std::vector<double>& pull_N) {
    std::ranges::fill(right_, 0.0);
    for (std::size_t node = 0; node < rowOfNode_.size(); ++node)
        for (std::size_t n = 0; n < 2; ++n) right_[rowOfNode_[node] + n] = -balance.force[2 * node + n];
    for (std::size_t i = 0; i < rowOfPull_.size(); ++i)
        if (balance.between[i]) right_[rowOfPull_[i]] = -closing_m[i];
    matrix_.solve(right_);
    step.resize(2 * rowOfNode_.size());
    for (std::size_t node = 0; node < rowOfNode_.size(); ++node)
        for (std::size_t n = 0; n < 2; ++n) step[2 * node + n] = right_[rowOfNode_[node] + n];
    pull_N = balance.pull_N;
    for (std::size_t i = 0; i < rowOfPull_.size(); ++i)
        if (balance.between[i]) pull_N[i] += right_[rowOfPull_[i]];
}

}  // namespace fayline::contact
