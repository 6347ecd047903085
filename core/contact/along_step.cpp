#include "core/contact/along_step.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::contact {

void AlongStep::findTurns(const Discrete& discrete, std::span<const double> x, std::span<const double> step,
                          double foundationShare) {
    turns_.clear();
    const std::size_t elements = discrete.length_m.size();
    for (std::size_t p = 0; p < discrete.pairs.size(); ++p) {
        const ElementPair& pair = discrete.pairs[p];
        const math::HermiteEnds<Pair> ends = endsOf(discrete, x, p);
        const math::HermiteEnds<Pair> moves = endsOf(discrete, step, p);
        for (std::size_t i = 0; i < 3; ++i) {
            const Pair gap = math::hermiteValues(math::hermiteBasisAtGauss[i], ends, pair.lengths_per_m).value;
            const Pair move = math::hermiteValues(math::hermiteBasisAtGauss[i], moves, pair.lengths_per_m).value;
            const Pair last = gap + mostOfStep * move;
            for (std::size_t lane = 0; lane < 2 && 2 * p + lane < elements; ++lane) {
                const bool lies = gap[lane] <= 0;
                if (lies == (last[lane] <= 0)) continue;
                const double foundation = math::gauss3Weight[i] * pair.length_m[lane] * foundationShare *
                                          pair.places[i].foundation_N_m2[lane];
                if (foundation > 0)
                    turns_.push_back(
                        {-gap[lane] / move[lane], (lies ? -foundation : foundation) * move[lane] * move[lane]});
            }
        }
    }
    std::ranges::sort(turns_, {}, &Turn::part);
}

double AlongStep::least(const Discrete& discrete, std::span<const double> x, std::span<const double> step,
                        double foundationShare, double slope_J) {
    if (!std::isfinite(slope_J)) return 1;
    findTurns(discrete, x, step, foundationShare);
    double part = 0;
    double slope = slope_J;
    double stiffness = -slope_J;
    for (const Turn& turn : turns_) {
        const double gained = stiffness * (turn.part - part);
        if (slope + gained >= 0) break;
        slope += gained;
        part = turn.part;
        stiffness += turn.stiffness_J;
    }
    if (!(stiffness > 0)) return mostOfStep;
    return std::min(part - slope / stiffness, mostOfStep);
}

}  // namespace fayline::contact
