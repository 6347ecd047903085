#include "tests/general/contact_program.hpp"

#include <IpIpoptApplication.hpp>
#include <IpSolveStatistics.hpp>
#include <IpTNLP.hpp>
#include <algorithm>

#include "tests/general/contact_shapes.hpp"

namespace fayline::general {

namespace {

using Ipopt::Index;
using Ipopt::Number;

// A sum of unknowns times factors.
struct Term {
    Index unknown = 0;
    double factor = 0;
};
using Sum = std::vector<Term>;

struct GaussPoint {
    Index element = 0;
    double weight_m = 0;
    Shapes shapes;
    RodAt rod;
    double foundation_N_m2 = 0;
    double load_N_m = 0;
};

struct HoldTerms {
    Sum gap;
    Sum slope;
    Index slip = -1;    // unknown
    Index leaves = -1;  // unknown t, of holds without a given pull
    Index leavesRow = -1;
};

// d_slip - d_nearer + sign * int (J - 1) over the elements = 0
struct ChainRow {
    Index slip = -1;
    Index nearer = -1;  // -1: the anchor
    double sign = 1;
    Index firstElement = 0;
    Index lastElement = 0;  // one past
};

Index nodeAt(const std::vector<double>& nodes, double s) {
    const auto after = std::lower_bound(nodes.begin(), nodes.end(), s);
    if (after == nodes.begin()) return 0;
    if (after == nodes.end()) return static_cast<Index>(nodes.size()) - 1;
    const auto before = after - 1;
    return static_cast<Index>((s - *before < *after - s ? before : after) - nodes.begin());
}

class Programme : public Ipopt::TNLP {
public:
    Programme(const contact::Problem& problem, const Bending& bending, Solved& solved)
        : problem_(problem), bending_(bending), solved_(solved) {
        layOut();
        makePatterns();
    }

    bool get_nlp_info(Index& n, Index& m, Index& jacobian, Index& hessian, IndexStyleEnum& style) override {
        n = unknowns_;
        m = rows_;
        jacobian = static_cast<Index>(jacobian_.size());
        hessian = static_cast<Index>(hessian_.size());
        style = TNLP::C_STYLE;
        return true;
    }

    bool get_bounds_info(Index n, Number* low, Number* high, Index m, Number* rowLow, Number* rowHigh) override {
        std::fill(low, low + n, -1e20);
        std::fill(high, high + n, 1e20);
        std::fill(low + firstCrush_, low + firstSlip_, 0.0);
        std::fill(low + firstLeft_, low + n, 0.0);
        std::fill(rowLow, rowLow + m, 0.0);
        std::fill(rowHigh, rowHigh + firstChain_, 1e20);
        std::fill(rowHigh + firstChain_, rowHigh + m, 0.0);
        return true;
    }

    bool get_starting_point(Index n, bool, Number* x, bool, Number*, Number*, Index, bool, Number*) override {
        std::fill(x, x + n, 0.0);
        std::fill(x + firstCrush_, x + firstSlip_, 1.0);
        std::fill(x + firstLeft_, x + n, 0.1);
        return true;
    }

    bool eval_f(Index, const Number* y, bool, Number& value) override {
        read(y);
        value = 0;
        for (std::size_t g = 0; g < points_.size(); ++g) {
            const GaussPoint& point = points_[g];
            const double crush = x_[size_t(firstCrush_) + g];
            const std::array<double, 3> at = gapAt(point);
            value += point.weight_m * (bending_(at[0], at[1], at[2], point.rod).value +
                                       point.foundation_N_m2 / 2 * crush * crush + point.load_N_m * at[0]);
        }
        for (std::size_t i = 0; i < holds_.size(); ++i) {
            const contact::Hold& hold = problem_.holds[i];
            if (hold.pull_N) value += *hold.pull_N * gapOf(holds_[i]);
            if (holds_[i].leaves >= 0) value += hold.most_N * x_[size_t(holds_[i].leaves)];
        }
        return true;
    }

    bool eval_grad_f(Index n, const Number* y, bool, Number* gradient) override {
        read(y);
        std::fill(gradient, gradient + n, 0.0);
        for (std::size_t g = 0; g < points_.size(); ++g) {
            const GaussPoint& point = points_[g];
            const std::array<double, 3> at = gapAt(point);
            const Second cost = bending_(at[0], at[1], at[2], point.rod);
            for (int a = 0; a < 4; ++a) {
                gradient[2 * point.element + a] +=
                    point.weight_m *
                    (cost.first[0] * point.shapes.value[size_t(a)] + cost.first[1] * point.shapes.first[size_t(a)] +
                     cost.first[2] * point.shapes.second[size_t(a)] + point.load_N_m * point.shapes.value[size_t(a)]);
            }
            const size_t crush = size_t(firstCrush_) + g;
            gradient[crush] += point.weight_m * point.foundation_N_m2 * x_[crush];
        }
        for (std::size_t i = 0; i < holds_.size(); ++i) {
            const contact::Hold& hold = problem_.holds[i];
            if (holds_[i].leaves >= 0) gradient[holds_[i].leaves] += hold.most_N;
            if (!hold.pull_N) continue;
            for (const Term& term : derivativeOf(holds_[i])) gradient[term.unknown] += *hold.pull_N * term.factor;
        }
        for (Index i = 0; i < n; ++i) gradient[i] *= scale_[size_t(i)];
        return true;
    }

    bool eval_g(Index, const Number* y, bool, Index, Number* rows) override {
        read(y);
        for (std::size_t g = 0; g < points_.size(); ++g) {
            rows[g] = (x_[size_t(firstCrush_) + g] + gapAt(points_[g])[0]) / crushScale;
        }
        for (const HoldTerms& hold : holds_) {
            if (hold.leaves >= 0) rows[hold.leavesRow] = (x_[size_t(hold.leaves)] - gapOf(hold)) / gapScale;
        }
        for (std::size_t c = 0; c < chain_.size(); ++c) {
            const ChainRow& row = chain_[c];
            double value = x_[size_t(row.slip)] - (row.nearer < 0 ? 0 : x_[size_t(row.nearer)]);
            for (Index e = row.firstElement; e < row.lastElement; ++e) {
                for (size_t g = size_t(3 * e); g < size_t(3 * e + 3); ++g) {
                    const std::array<double, 3> at = gapAt(points_[g]);
                    const double k = points_[g].rod.curvature_per_m;
                    value += row.sign * points_[g].weight_m * (stretchOf(at[0], at[1], k)[0] - 1);
                }
            }
            rows[size_t(firstChain_) + c] = value / gapScale;
        }
        return true;
    }

    bool eval_jac_g(Index, const Number* y, bool, Index, Index count, Index* row, Index* column,
                    Number* values) override {
        if (!values) {
            for (Index i = 0; i < count; ++i) {
                row[i] = jacobian_[size_t(i)].first;
                column[i] = jacobian_[size_t(i)].second;
            }
            return true;
        }
        read(y);
        std::size_t next = 0;
        const auto put = [&](Index unknown, double value) { values[next++] = value * scale_[size_t(unknown)]; };
        for (std::size_t g = 0; g < points_.size(); ++g) {
            for (int a = 0; a < 4; ++a)
                put(2 * points_[g].element + a, points_[g].shapes.value[size_t(a)] / crushScale);
            put(firstCrush_ + static_cast<Index>(g), 1 / crushScale);
        }
        for (const HoldTerms& hold : holds_) {
            if (hold.leaves < 0) continue;
            for (const Term& term : derivativeOf(hold)) put(term.unknown, -term.factor / gapScale);
            put(hold.leaves, 1 / gapScale);
        }
        for (const ChainRow& chain : chain_) {
            put(chain.slip, 1 / gapScale);
            if (chain.nearer >= 0) put(chain.nearer, -1 / gapScale);
            for (Index e = chain.firstElement; e < chain.lastElement; ++e) {
                std::array<double, 4> sums{};
                for (size_t g = size_t(3 * e); g < size_t(3 * e + 3); ++g) {
                    const std::array<double, 3> at = gapAt(points_[g]);
                    const auto j = stretchOf(at[0], at[1], points_[g].rod.curvature_per_m);
                    for (size_t a = 0; a < 4; ++a) {
                        sums[a] += points_[g].weight_m *
                                   (j[1] * points_[g].shapes.value[a] + j[2] * points_[g].shapes.first[a]);
                    }
                }
                for (Index a = 0; a < 4; ++a) put(2 * e + a, chain.sign * sums[size_t(a)] / gapScale);
            }
        }
        return true;
    }

    bool eval_h(Index, const Number* y, bool, Number objective, Index, const Number* lambda, bool, Index count,
                Index* row, Index* column, Number* values) override {
        if (!values) {
            for (Index i = 0; i < count; ++i) {
                row[i] = hessian_[size_t(i)].first;
                column[i] = hessian_[size_t(i)].second;
            }
            return true;
        }
        read(y);
        std::size_t next = 0;
        const auto put = [&](double value) {
            values[next] = value * scale_[size_t(hessian_[next].first)] * scale_[size_t(hessian_[next].second)];
            ++next;
        };
        for (Index e = 0; e < elements_; ++e) putElement(e, objective, lambda, put);
        for (std::size_t g = 0; g < points_.size(); ++g)
            put(objective * points_[g].weight_m * points_[g].foundation_N_m2);
        for (std::size_t i = 0; i < holds_.size(); ++i) {
            const HoldTerms& hold = holds_[i];
            if (hold.slip < 0) continue;
            const contact::Hold& given = problem_.holds[i];
            const double weight = given.pull_N ? objective * *given.pull_N : -lambda[hold.leavesRow] / gapScale;
            for (const Term& term : hold.slope) put(weight * term.factor);
        }
        return true;
    }

    void finalize_solution(Ipopt::SolverReturn status, Index, const Number* y, const Number*, const Number*, Index,
                           const Number*, const Number* lambda, Number, const Ipopt::IpoptData*,
                           Ipopt::IpoptCalculatedQuantities*) override {
        read(y);
        solved_.solved = status == Ipopt::SUCCESS;
        solved_.gap_m.clear();
        solved_.slope.clear();
        for (Index i = 0; i <= elements_; ++i) {
            solved_.gap_m.push_back(x_[size_t(2 * i)]);
            solved_.slope.push_back(x_[size_t(2 * i + 1)]);
        }
        solved_.pulls_N.clear();
        for (std::size_t i = 0; i < holds_.size(); ++i) {
            const contact::Hold& hold = problem_.holds[i];
            solved_.pulls_N.push_back(hold.pull_N ? *hold.pull_N : -lambda[holds_[i].leavesRow] / gapScale);
        }
    }

private:
    static constexpr double gapScale = 1e-3;  // metres to the unknown's unit
    static constexpr double slopeScale = 1e-2;
    static constexpr double crushScale = 1e-6;

    void layOut() {
        const std::vector<double>& nodes = problem_.rod.mesh.nodes_m;
        elements_ = static_cast<Index>(nodes.size()) - 1;
        const contact::Rod& rod = problem_.rod;
        for (Index e = 0; e < elements_; ++e) {
            const double h = nodes[size_t(e) + 1] - nodes[size_t(e)];
            for (size_t g = 0; g < 3; ++g) {
                const size_t i = size_t(3 * e) + g;
                points_.push_back(
                    {e,
                     gaussWeight[g] * h,
                     shapesAt(gaussAt[g], h),
                     {rod.curvature_per_m[i], rod.curvatureRate_per_m2[i], rod.stiffness_N_m2[i], rod.natural_per_m[i]},
                     rod.foundation_N_m2[i],
                     rod.load_N_m[i]});
            }
        }
        firstCrush_ = 2 * (elements_ + 1);
        firstSlip_ = firstCrush_ + 3 * elements_;
        const bool slips = problem_.padsHold;
        firstLeft_ = firstSlip_ + (slips ? static_cast<Index>(problem_.holds.size()) : 0);
        unknowns_ = firstLeft_;
        rows_ = 3 * elements_;
        for (std::size_t i = 0; i < problem_.holds.size(); ++i) {
            HoldTerms terms = termsOf(problem_.holds[i]);
            if (slips) terms.slip = firstSlip_ + static_cast<Index>(i);
            if (!problem_.holds[i].pull_N) {
                terms.leaves = unknowns_++;
                terms.leavesRow = rows_++;
            }
            holds_.push_back(terms);
        }
        firstChain_ = rows_;
        if (slips) layChain();
        rows_ += static_cast<Index>(chain_.size());
        scale_.assign(size_t(unknowns_), gapScale);
        for (Index i = 1; i < firstCrush_; i += 2) scale_[size_t(i)] = slopeScale;
        std::fill(scale_.begin() + firstCrush_, scale_.begin() + firstSlip_, crushScale);
    }

    // Means under the pad: the exact integral of the cubics over its elements.
    HoldTerms termsOf(const contact::Hold& hold) const {
        const std::vector<double>& nodes = problem_.rod.mesh.nodes_m;
        const double from = std::max(hold.at_m - hold.pad_m / 2, nodes.front());
        const double to = std::min(hold.at_m + hold.pad_m / 2, nodes.back());
        const Index a = nodeAt(nodes, from);
        const Index b = nodeAt(nodes, to);
        HoldTerms terms;
        if (a == b) {
            terms.gap = {{2 * a, 1}};
            terms.slope = {{2 * a + 1, 1}};
            return terms;
        }
        const double pad = nodes[size_t(b)] - nodes[size_t(a)];
        for (Index e = a; e < b; ++e) {
            const double h = nodes[size_t(e) + 1] - nodes[size_t(e)];
            terms.gap.push_back({2 * e, h / 2 / pad});
            terms.gap.push_back({2 * e + 1, h * h / 12 / pad});
            terms.gap.push_back({2 * e + 2, h / 2 / pad});
            terms.gap.push_back({2 * e + 3, -h * h / 12 / pad});
        }
        terms.slope = {{2 * a, -1 / pad}, {2 * b, 1 / pad}};
        return terms;
    }

    void layChain() {
        const std::vector<double>& nodes = problem_.rod.mesh.nodes_m;
        const Index anchor = nodeAt(nodes, problem_.anchor_m);
        std::vector<std::size_t> order(problem_.holds.size());
        for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
        std::ranges::stable_sort(
            order, [this](std::size_t a, std::size_t b) { return problem_.holds[a].at_m < problem_.holds[b].at_m; });
        const auto link = [&](std::size_t i, Index nearer, Index nearerNode, double sign) {
            const Index node = nodeAt(nodes, problem_.holds[i].at_m);
            chain_.push_back({holds_[i].slip, nearer, sign, std::min(node, nearerNode), std::max(node, nearerNode)});
            return node;
        };
        Index nearer = -1;
        Index node = anchor;
        for (const std::size_t i : order) {
            if (problem_.holds[i].at_m < problem_.anchor_m) continue;
            node = link(i, nearer, node, 1);
            nearer = holds_[i].slip;
        }
        nearer = -1;
        node = anchor;
        for (auto i = order.rbegin(); i != order.rend(); ++i) {
            if (problem_.holds[*i].at_m >= problem_.anchor_m) continue;
            node = link(*i, nearer, node, -1);
            nearer = holds_[*i].slip;
        }
    }

    void makePatterns() {
        for (std::size_t g = 0; g < points_.size(); ++g) {
            const Index row = static_cast<Index>(g);
            for (Index a = 0; a < 4; ++a) jacobian_.push_back({row, 2 * points_[g].element + a});
            jacobian_.push_back({row, firstCrush_ + row});
        }
        for (const HoldTerms& hold : holds_) {
            if (hold.leaves < 0) continue;
            for (const Term& term : derivativeOf(hold)) jacobian_.push_back({hold.leavesRow, term.unknown});
            jacobian_.push_back({hold.leavesRow, hold.leaves});
        }
        for (std::size_t c = 0; c < chain_.size(); ++c) {
            const Index row = firstChain_ + static_cast<Index>(c);
            jacobian_.push_back({row, chain_[c].slip});
            if (chain_[c].nearer >= 0) jacobian_.push_back({row, chain_[c].nearer});
            for (Index e = chain_[c].firstElement; e < chain_[c].lastElement; ++e) {
                for (Index a = 0; a < 4; ++a) jacobian_.push_back({row, 2 * e + a});
            }
        }
        for (Index e = 0; e < elements_; ++e) {
            for (Index a = 0; a < 4; ++a) {
                for (Index b = 0; b <= a; ++b) hessian_.push_back({2 * e + a, 2 * e + b});
            }
        }
        for (Index w = firstCrush_; w < firstSlip_; ++w) hessian_.push_back({w, w});
        for (const HoldTerms& hold : holds_) {
            if (hold.slip < 0) continue;
            for (const Term& term : hold.slope) hessian_.push_back({hold.slip, term.unknown});
        }
    }

    template <typename Put>
    void putElement(Index e, double objective, const Number* lambda, const Put& put) {
        std::array<std::array<double, 4>, 4> sums{};
        double chainWeight = 0;
        for (std::size_t c = 0; c < chain_.size(); ++c) {
            if (e >= chain_[c].firstElement && e < chain_[c].lastElement) {
                chainWeight += chain_[c].sign * lambda[size_t(firstChain_) + c] / gapScale;
            }
        }
        for (size_t g = size_t(3 * e); g < size_t(3 * e + 3); ++g) {
            const GaussPoint& point = points_[g];
            const std::array<double, 3> at = gapAt(point);
            const Second cost = bending_(at[0], at[1], at[2], point.rod);
            const auto j = stretchOf(at[0], at[1], point.rod.curvature_per_m);
            const double vv = objective * cost.second[0] + chainWeight * j[3];
            const double vp = objective * cost.second[1] + chainWeight * j[4];
            const double vq = objective * cost.second[2];
            const double pp = objective * cost.second[3] + chainWeight * j[5];
            const double pq = objective * cost.second[4];
            const double qq = objective * cost.second[5];
            const Shapes& n = point.shapes;
            for (size_t a = 0; a < 4; ++a) {
                for (size_t b = 0; b <= a; ++b) {
                    sums[a][b] += point.weight_m * (vv * n.value[a] * n.value[b] + pp * n.first[a] * n.first[b] +
                                                    qq * n.second[a] * n.second[b] +
                                                    vp * (n.value[a] * n.first[b] + n.first[a] * n.value[b]) +
                                                    vq * (n.value[a] * n.second[b] + n.second[a] * n.value[b]) +
                                                    pq * (n.first[a] * n.second[b] + n.second[a] * n.first[b]));
                }
            }
        }
        for (size_t a = 0; a < 4; ++a) {
            for (size_t b = 0; b <= a; ++b) put(sums[a][b]);
        }
    }

    void read(const Number* y) {
        x_.resize(size_t(unknowns_));
        for (size_t i = 0; i < x_.size(); ++i) x_[i] = y[i] * scale_[i];
    }

    std::array<double, 3> gapAt(const GaussPoint& point) const {
        std::array<double, 3> at{};
        for (size_t a = 0; a < 4; ++a) {
            const double unknown = x_[size_t(2 * point.element) + a];
            at[0] += point.shapes.value[a] * unknown;
            at[1] += point.shapes.first[a] * unknown;
            at[2] += point.shapes.second[a] * unknown;
        }
        return at;
    }

    double valueOf(const Sum& sum) const {
        double value = 0;
        for (const Term& term : sum) value += term.factor * x_[size_t(term.unknown)];
        return value;
    }

    // v_i + v_i' d_i
    double gapOf(const HoldTerms& hold) const {
        return valueOf(hold.gap) + (hold.slip < 0 ? 0 : valueOf(hold.slope) * x_[size_t(hold.slip)]);
    }

    Sum derivativeOf(const HoldTerms& hold) const {
        Sum sum = hold.gap;
        if (hold.slip < 0) return sum;
        const double slip = x_.empty() ? 0 : x_[size_t(hold.slip)];
        for (const Term& term : hold.slope) sum.push_back({term.unknown, term.factor * slip});
        sum.push_back({hold.slip, x_.empty() ? 0 : valueOf(hold.slope)});
        return sum;
    }

    const contact::Problem& problem_;
    const Bending& bending_;
    Solved& solved_;
    Index elements_ = 0;
    Index unknowns_ = 0;
    Index rows_ = 0;
    Index firstCrush_ = 0;
    Index firstSlip_ = 0;
    Index firstLeft_ = 0;
    Index firstChain_ = 0;
    std::vector<GaussPoint> points_;
    std::vector<HoldTerms> holds_;
    std::vector<ChainRow> chain_;
    std::vector<double> scale_;
    std::vector<std::pair<Index, Index>> jacobian_;
    std::vector<std::pair<Index, Index>> hessian_;
    std::vector<double> x_;
};

}  // namespace

Solved solveWithIpopt(const contact::Problem& problem, const Bending& bending) {
    Solved solved;
    Ipopt::SmartPtr<Ipopt::TNLP> programme = new Programme(problem, bending, solved);
    Ipopt::SmartPtr<Ipopt::IpoptApplication> application = IpoptApplicationFactory();
    application->Options()->SetIntegerValue("print_level", 0);
    application->Options()->SetStringValue("sb", "yes");
    application->Options()->SetNumericValue("tol", 1e-10);
    application->Options()->SetNumericValue("compl_inf_tol", 1e-9);
    application->Options()->SetNumericValue("bound_relax_factor", 0);
    application->Options()->SetIntegerValue("max_iter", 2000);
    if (application->Initialize() != Ipopt::Solve_Succeeded) return solved;
    application->OptimizeTNLP(programme);
    solved.iterations = Ipopt::IsValid(application->Statistics()) ? application->Statistics()->IterationCount() : 0;
    return solved;
}

}  // namespace fayline::general
