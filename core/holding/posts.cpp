#include <algorithm>

#include "core/holding/at_hand.hpp"
#include "core/stack/layers.hpp"

namespace fayline::holding {

namespace {

// Push on the form per length of line between samples, linear.
double pushAt(const StackOnForm& work, const std::vector<HeldSample>& samples, double at_m) {
    if (samples.empty() || at_m < samples.front().at_m || at_m > samples.back().at_m) return 0;
    const auto after = std::lower_bound(samples.begin(), samples.end(), at_m,
                                        [](const HeldSample& sample, double at) { return sample.at_m < at; });
    if (after == samples.begin()) return after->pressure_Pa * stack::ripWidthAt(work.piece.stack, at_m);
    const HeldSample& before = *(after - 1);
    const double share = after->at_m > before.at_m ? (at_m - before.at_m) / (after->at_m - before.at_m) : 0;
    return (before.pressure_Pa + share * (after->pressure_Pa - before.pressure_Pa)) *
           stack::ripWidthAt(work.piece.stack, at_m);
}

double thrustOn(const StackOnForm& work, const boat::Post& post, const std::vector<HeldSample>& samples) {
    constexpr int steps = 40;
    double thrust = 0;
    for (int i = 0; i < steps; ++i) {
        const double at_m = post.at_m + post.width_m * ((i + 0.5) / steps - 0.5);
        thrust += pushAt(work, samples, at_m) * post.width_m / steps;
    }
    return thrust;
}

}  // namespace

std::vector<PostLoad> postLoads(const StackOnForm& work, const Held& held) {
    std::vector<PostLoad> loads;
    if (work.piece.form.kind != boat::FormKind::posts) return loads;
    for (std::size_t i = 0; i < work.piece.form.posts.size(); ++i) {
        const boat::Post& post = work.piece.form.posts[i];
        loads.push_back({static_cast<int>(i), post.at_m, thrustOn(work, post, held.samples), post.holds_N});
    }
    return loads;
}

}  // namespace fayline::holding
