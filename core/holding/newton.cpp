#include "core/holding/newton.hpp"

#include <algorithm>

namespace fayline::holding {

namespace {

// What the chain gives way, m/N: so little that it does not tell in a step, and enough that its pivots are not nothing
// where the form is flat and the rod lies on it.
constexpr double chainYield_m_N = 1e-13;

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
    std::sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) {
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
    matrix_ = ProfileMatrix(std::move(first));
}

void NewtonSystem::addElements(const Discrete& discrete, std::span<const double> x, const Balance& balance,
                               double bedShare, Curving curving, double hold_N_m2) {
    const auto& chain = discrete.chain;
    std::size_t span = 0;
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e) {
        double along = 0;
        if (discrete.padsHold) {
            while (span + 1 < chain.size() && e >= chain[span + 1]) ++span;
            if (span + 1 < chain.size() && e >= chain[span]) along = balance.spanForce_N[span];
            if (curving == Curving::positive) along = std::max(along, 0.0);
        }
        const double h = discrete.length_m[e];
        const Ends ends = endsOf(discrete, x, e);
        std::array<std::array<double, 4>, 4> block{};
        for (std::size_t i = 0; i < 3; ++i) {
            const ElementPlace& place = discrete.places[3 * e + i];
            const Shape& shape = gaussShape[i];
            const Gap gap = gapOf(shape, ends, h);
            const Turning turning = turningOf(place.rod, gap);
            auto second = curving == Curving::exact ? bendingSecond(place.rod, turning)
                                                    : bendingSecondPositive(place.rod, turning);
            second[0] += along * turning.pathSecond[0] + hold_N_m2 + (gap.gap <= 0 ? bedShare * place.bed_N_m2 : 0);
            second[1] += along * turning.pathSecond[1];
            second[3] += along * turning.pathSecond[2];
            const double w0 = gaussWeight[i] * h;
            const double w1 = gaussWeight[i];
            const double w2 = gaussWeight[i] / h;
            const double w3 = gaussWeight[i] / (h * h);
            const double w4 = gaussWeight[i] / (h * h * h);
            for (std::size_t n = 0; n < 4; ++n) {
                const double a =
                    w0 * second[0] * shape.gap[n] + w1 * second[1] * shape.slope[n] + w2 * second[2] * shape.bend[n];
                const double b =
                    w1 * second[1] * shape.gap[n] + w2 * second[3] * shape.slope[n] + w3 * second[4] * shape.bend[n];
                const double c =
                    w2 * second[2] * shape.gap[n] + w3 * second[4] * shape.slope[n] + w4 * second[5] * shape.bend[n];
                for (std::size_t m = 0; m <= n; ++m)
                    block[n][m] += a * shape.gap[m] + b * shape.slope[m] + c * shape.bend[m];
            }
        }
        const std::size_t left = rowOfNode_[e];
        const std::size_t right = rowOfNode_[e + 1];
        matrix_(left, left) += block[0][0];
        matrix_(left + 1, left) += block[1][0] * h;
        matrix_(left + 1, left + 1) += block[1][1] * h * h;
        matrix_(right, left) += block[2][0];
        matrix_(right, left + 1) += block[2][1] * h;
        matrix_(right, right) += block[2][2];
        matrix_(right + 1, left) += block[3][0] * h;
        matrix_(right + 1, left + 1) += block[3][1] * h * h;
        matrix_(right + 1, right) += block[3][2] * h;
        matrix_(right + 1, right + 1) += block[3][3] * h * h;
    }
}

void NewtonSystem::addHolds(const Discrete& discrete, const Balance& balance, Curving curving, double yield_m_N) {
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
void NewtonSystem::addChain(const Discrete& discrete, std::span<const double> x) {
    const auto& chain = discrete.chain;
    for (std::size_t j = 0; j + 1 < chain.size(); ++j) {
        const std::size_t spanRow = rowOfSpan_[j];
        matrix_(spanRow, spanRow) = -chainYield_m_N;
        if (rowOfSlip_[j] != none) matrix_(spanRow, rowOfSlip_[j]) -= 1;
        if (rowOfSlip_[j + 1] != none) matrix_(spanRow, rowOfSlip_[j + 1]) += 1;
        for (std::size_t e = chain[j]; e < chain[j + 1]; ++e) {
            const double h = discrete.length_m[e];
            const Ends ends = endsOf(discrete, x, e);
            for (std::size_t i = 0; i < 3; ++i) {
                const RodPlace& rod = discrete.places[3 * e + i].rod;
                const Shape& shape = gaussShape[i];
                const Gap gap = gapOf(shape, ends, h);
                const double a = squareLeft(rod, gap);
                const double path = std::sqrt(a * a + gap.slope * gap.slope);
                const double byGap = gaussWeight[i] * h * rod.curvature_per_m * a / path;
                const double bySlope = gaussWeight[i] * gap.slope / path;
                for (std::size_t n = 0; n < 4; ++n)
                    matrix_(spanRow, rowOfNode_[e + n / 2] + n % 2) +=
                        (byGap * shape.gap[n] + bySlope * shape.slope[n]) * (n % 2 == 1 ? h : 1);
            }
        }
    }
}

bool NewtonSystem::factorise(const Discrete& discrete, std::span<const double> x, const Balance& balance,
                             double bedShare, Curving curving, double hold_N_m2, double yield_m_N) {
    matrix_.clear();
    addElements(discrete, x, balance, bedShare, curving, hold_N_m2);
    addHolds(discrete, balance, curving, yield_m_N);
    if (discrete.padsHold) addChain(discrete, x);
    return matrix_.factorise();
}

void NewtonSystem::step(const Balance& balance, const std::vector<double>& closing_m, std::vector<double>& step,
                        std::vector<double>& pull_N) {
    std::fill(right_.begin(), right_.end(), 0.0);
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

}  // namespace fayline::holding
