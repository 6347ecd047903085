#include <algorithm>
#include <array>

#include "core/contact/gaps.hpp"
#include "core/holding/at_hand.hpp"
#include "core/holding/pressed.hpp"

namespace fayline::holding {

namespace {

bool bears(const model::Post& post, double at_m) {
    return std::abs(at_m - post.at_m) <= post.width_m / 2;
}

// Adds a push at one place to the posts that stand there, in even shares.
void share(std::vector<PostLoad>& loads, const std::vector<model::Post>& posts, double at_m, double push_N) {
    const auto standing = std::ranges::count_if(posts, [&](const model::Post& post) { return bears(post, at_m); });
    for (std::size_t i = 0; i < posts.size(); ++i) {
        if (bears(posts[i], at_m)) loads[i].thrust_N += push_N / static_cast<double>(standing);
    }
}

}  // namespace

std::vector<PostLoad> postLoads(const StackOnForm& work, const Held& held) {
    const model::Piece& piece = work.piece;
    const Contact& contact = piece.holding.pads == model::Pads::hold ? held.ifPadsHold : held.ifPadsSlide;
    if (piece.form.kind != model::FormKind::posts || contact.nodes_m.size() < 2) return {};
    return postLoads(work, makeReady(work), contact);
}

std::vector<PostLoad> postLoads(const StackOnForm& work, const Ready& ready, const Contact& contact) {
    std::vector<PostLoad> loads;
    if (work.piece.form.kind != model::FormKind::posts || contact.nodes_m.size() < 2) return loads;

    const std::vector<model::Post>& posts = work.piece.form.posts;
    for (std::size_t i = 0; i < posts.size(); ++i) {
        loads.push_back({static_cast<int>(i), posts[i].at_m, 0, posts[i].holds_N});
    }
    // The places and weights with which the contact itself sums up the foundation.
    static constexpr std::array<double, 3> weights{5.0 / 18, 8.0 / 18, 5.0 / 18};
    const std::vector<double> places = gaussPlaces(Mesh{contact.nodes_m});
    for (std::size_t i = 0; i < places.size(); ++i) {
        const double crush = -gapAt(contact, places[i]).gap_m;
        if (!(crush > 0)) continue;
        const double at_m = alongLine(ready.middle, places[i]);
        const double length = contact.nodes_m[i / 3 + 1] - contact.nodes_m[i / 3];
        share(loads, posts, at_m, sectionAt(ready.loose, at_m).foundation_N_m2 * crush * weights[i % 3] * length);
    }
    return loads;
}

}  // namespace fayline::holding
