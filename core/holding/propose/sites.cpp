#include "core/holding/propose/sites.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/holding/loose_stack.hpp"
#include "core/holding/strap.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

constexpr double mostPlaces = 2000;

double strengthOf(const model::Station& station) {
    return std::max(0.0, station.pull_N.value_or(station.most_N));
}

Site siteOf(const StackOnForm& work, const LooseStack& loose, const model::Station& station) {
    Site site{station, {station.at_m, station.at_m}};
    if (!closesGap(station)) return site;
    site.pad = pressingNeed(work, loose, station.at_m, station.pad_m, strengthOf(station)).pad;
    if (work.piece.form.kind == model::FormKind::posts && site.pad.push_N_m > 0) {
        site.behind = {station.at_m, station.at_m};
        for (const model::Post& post : work.piece.form.posts) {
            const laminate::Run on{post.at_m - post.width_m / 2, post.at_m + post.width_m / 2};
            if (on.holds(station.at_m)) site.behind = on;
        }
    }
    site.pressed = pressedBy(site);
    return site;
}

// Where a strap presses as much as the glue asks.
void addStrap(const StackOnForm& work, const LooseStack& loose, const model::Station& station, int index,
              std::vector<laminate::Run>& pressed) {
    const Strap strap = layStrap(station, index, work);
    for (std::size_t i = 0; i + 1 < strap.places_m.size(); ++i) {
        const double from = strap.places_m[i];
        const double to = strap.places_m[i + 1];
        const double middle = (from + to) / 2;
        const double asked = pressingNeed(work, loose, middle, 0, 0).pad.push_N_m;
        if (strapThrust_N_m(strap, work, middle) < asked) continue;
        if (!pressed.empty() && pressed.back().to_m >= from - hair_m) {
            pressed.back().to_m = std::max(pressed.back().to_m, to);
        } else {
            pressed.push_back({from, to});
        }
    }
}

std::vector<double> gridPlaces(const laminate::Run& strips, double grid_m) {
    const double length = strips.to_m - strips.from_m;
    const double step = std::max(grid_m, length / mostPlaces);
    std::vector<double> places;
    for (int i = 0; i * step < length - hair_m; ++i) places.push_back(strips.from_m + i * step);
    places.push_back(strips.to_m);
    return places;
}

// On a form of posts: in the middle of one, or all of the pad on one.
bool mayStand(const model::Form& form, double at_m, double pad_m) {
    if (form.kind != model::FormKind::posts) return true;
    return std::ranges::any_of(form.posts, [&](const model::Post& post) {
        const double off = std::abs(post.at_m - at_m);
        return off <= hair_m || off + pad_m / 2 <= post.width_m / 2 + hair_m;
    });
}

bool standsFree(const model::Station& like, double at_m, const std::vector<Site>& kept) {
    return std::ranges::none_of(kept, [&](const Site& site) {
        const double apart = (site.station.pad_m + like.pad_m) / 2;
        return closesGap(site.station) && std::abs(site.station.at_m - at_m) < apart - hair_m;
    });
}

}  // namespace

Sites sitesOf(const StackOnForm& work, const laminate::Run& strips, const std::vector<laminate::Run>& support,
              const std::vector<model::Station>& kept, const model::Station& like, double grid_m,
              const std::atomic<bool>& stop) {
    Sites sites{.lineLength_m = work.line.length(), .strips = strips};
    const LooseStack loose = looseStack(work.piece.stack, work.piece.line.describes, work.line.length(), work.species);
    for (std::size_t i = 0; i < kept.size(); ++i) {
        sites.kept.push_back(siteOf(work, loose, kept[i]));
        const bool everywhereBehind = work.piece.form.kind != model::FormKind::posts;
        if (model::is<model::Strap>(kept[i].kind) && pressesOnForm(kept[i]) && everywhereBehind) {
            addStrap(work, loose, kept[i], static_cast<int>(i), sites.straps);
        }
    }
    std::ranges::stable_sort(sites.kept, [](const Site& a, const Site& b) { return a.station.at_m < b.station.at_m; });

    std::vector<double> places = gridPlaces(strips, grid_m);
    if (work.piece.form.kind == model::FormKind::posts) {
        for (const model::Post& post : work.piece.form.posts) places.push_back(post.at_m);
        std::ranges::sort(places);
    }
    const auto borne = [&](double at) {
        return std::ranges::any_of(
            support, [at](const laminate::Run& run) { return at >= run.from_m - hair_m && at <= run.to_m + hair_m; });
    };
    double last = -infinite;
    for (const double at : places) {
        if (stop) return sites;
        const bool lies = at - like.pad_m / 2 >= strips.from_m - hair_m && at + like.pad_m / 2 <= strips.to_m + hair_m;
        if (!lies || !mayStand(work.piece.form, at, like.pad_m) || at < last + hair_m || !borne(at) ||
            !standsFree(like, at, sites.kept))
            continue;
        model::Station station = like;
        station.at_m = at;
        sites.free.push_back(siteOf(work, loose, station));
        last = at;
    }
    return sites;
}

laminate::Run pressedBy(const Site& site, double factor) {
    const double half = factor * site.pad.spacing_m() / 2;
    const double at = site.station.at_m;
    return {std::max(at - half, site.behind.from_m), std::min(at + half, site.behind.to_m)};
}

double pressedFor_m(const Sites& sites, std::vector<laminate::Run> pressed, Way way) {
    pressed.insert(pressed.end(), sites.straps.begin(), sites.straps.end());
    if (way == Way::back) {
        for (laminate::Run& run : pressed) run = {sites.lineLength_m - run.to_m, sites.lineLength_m - run.from_m};
    }
    std::ranges::sort(pressed, {}, &laminate::Run::from_m);
    double reached = 0;
    for (const laminate::Run& run : pressed) {
        if (run.from_m > reached + hair_m) break;
        reached = std::max(reached, run.to_m);
    }
    return reached + hair_m;
}

std::vector<int> allThatFit(const Sites& sites) {
    std::vector<int> all;
    for (int i = 0; i < math::countOf(sites.free); ++i) {
        const model::Station& station = sites.free[i].station;
        const double last = all.empty() ? -infinite : sites.free[all.back()].station.at_m;
        if (station.at_m - last >= station.pad_m - hair_m) all.push_back(i);
    }
    return all;
}

double unpressable_m(const Sites& sites) {
    std::vector<laminate::Run> pressed = sites.straps;
    for (const Site& site : sites.kept) pressed.push_back(site.pressed);
    for (const Site& site : sites.free) pressed.push_back(site.pressed);
    std::ranges::sort(pressed, {}, &laminate::Run::from_m);
    double reached = 0;
    double open = 0;
    for (const laminate::Run& run : pressed) {
        const double from = std::min(run.from_m, sites.lineLength_m);
        if (from > reached) open += from - reached;
        reached = std::max(reached, std::min(run.to_m, sites.lineLength_m));
    }
    return open + sites.lineLength_m - reached;
}

}  // namespace fayline::holding
