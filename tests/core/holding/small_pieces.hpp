// Small pieces with coarse grids, and the conditions of a proposal checked apart from the code that proposes.
#pragma once

#include <algorithm>
#include <atomic>
#include <cmath>
#include <functional>
#include <limits>
#include <numbers>
#include <string>
#include <vector>

#include "core/holding/held.hpp"
#include "core/holding/propose/propose.hpp"
#include "core/math/count.hpp"
#include "core/wood/bending.hpp"
#include "core/wood/species.hpp"
#include "tests/core/laminate/made_lines.hpp"

namespace fayline::holding {

inline const std::atomic<bool> goOn{false};
inline constexpr double gapCounts_m = 1e-6;  // as the header has it

// A small piece with a coarse grid, so that all choices can be tried.
struct Small {
    std::string name;
    std::function<double(double)> curvature;  // of the line, along it; the strips lie on its left
    double length_m = 0.6;
    double grid_m = 0.075;
    model::Piece piece;
    bool fillsGaps = false;  // the glue: pressing everywhere is a wish

    StackOnForm work(const line::Line& line) const {
        StackOnForm work{piece, line, wood::builtInSpecies()};
        work.wanted.contactIsEnough = fillsGaps;
        return work;
    }
};

inline model::Tool clamps(double most_N, double pad_m = 0.03) {
    return {.most_N = most_N, .pad_m = pad_m, .count = 100};
}

inline Small smallPiece(const std::string& name, std::function<double(double)> curvature, double most_N) {
    Small small{name, std::move(curvature)};
    small.piece.stack.strips = {model::Strips{.count = 6, .thickness_m = 0.006}};
    small.piece.stack.runsPastStart_m = 0.15;
    small.piece.stack.runsPastEnd_m = 0.15;
    small.piece.glue.pasteYield_Pa = 0;
    small.piece.holding.tools = {clamps(most_N)};
    return small;
}

inline model::Station stationAt(double at_m, const model::Tool& tool) {
    return {.at_m = at_m, .most_N = tool.most_N, .pad_m = tool.pad_m};
}

inline std::function<double(double)> even(double curvature_per_m) {
    return [=](double) { return curvature_per_m; };
}
inline std::function<double(double)> wave(double greatest_per_m, double waves, double length_m) {
    return [=](double s) { return greatest_per_m * std::sin(2 * std::numbers::pi * waves * s / length_m); };
}
inline std::function<double(double)> bump(double greatest_per_m, double at_m, double wide_m) {
    return [=](double s) { return greatest_per_m * (0.2 + 0.8 * std::exp(-std::pow((s - at_m) / wide_m, 2))); };
}

// On the left of a line that turns right the strips lie round the outside.
inline std::vector<Small> smallPieces() {
    std::vector<Small> all;
    all.push_back(smallPiece("arc", even(-1.2), 2500));
    all.push_back(smallPiece("flat arc", even(-0.4), 1500));
    all.push_back(smallPiece("hollow", even(1.0), 2000));
    all.push_back(smallPiece("S", wave(1.5, 1, 0.6), 2500));
    all.push_back(smallPiece("S, pads that slide", wave(1.5, 1, 0.6), 2500));
    all.back().piece.holding.pads = model::Pads::slide;
    all.push_back(smallPiece("bend in the middle", bump(-2.5, 0.3, 0.1), 2500));
    all.push_back(smallPiece("bend near the end", bump(-2.5, 0.48, 0.1), 2500));
    all.push_back(smallPiece("three half waves", wave(1.2, 1.5, 0.6), 2500));
    all.push_back(smallPiece("weak clamps", even(-0.8), 500));
    all.push_back(smallPiece("weak clamps in a wave", wave(1.0, 1, 0.6), 600));
    all.push_back(smallPiece("loose limit", bump(-2.0, 0.3, 0.15), 1500));
    all.back().piece.holding.gapLimit_m = 0.0015;
    all.push_back(smallPiece("tight limit", wave(-1.2, 1, 0.6), 3000));
    all.back().piece.holding.gapLimit_m = 0.0002;

    // Spaced by stiffness, every other place of the grid or a little more.
    all.push_back(smallPiece("arc, pressed", even(-1.2), 2500));
    all.back().piece.glue.pasteYield_Pa = 150;
    all.push_back(smallPiece("S, pressed", wave(1.5, 1, 0.6), 2500));
    all.back().piece.glue.pasteYield_Pa = 100;
    // By strength.
    all.push_back(smallPiece("weak clamps, pressed", even(-0.6), 900));
    all.back().piece.glue.pasteYield_Pa = 1000;
    all.back().piece.holding.cauls.thickness_m = 0.02;
    all.push_back(smallPiece("arc, pressed through a caul", even(-1.2), 2500));
    all.back().piece.glue.pasteYield_Pa = 300;
    all.back().piece.holding.cauls.thickness_m = 0.006;
    // A wish: the same paste in a glue that fills gaps.
    for (const double yield_Pa : {150.0, 30.0}) {
        all.push_back(smallPiece("arc, pressed as a wish " + std::to_string(all.size()), even(-1.2), 2500));
        all.back().piece.glue.pasteYield_Pa = yield_Pa;
        all.back().fillsGaps = true;
    }

    all.push_back(smallPiece("arc with a fixed station", even(-1.2), 2500));
    all.push_back(smallPiece("S with a fixed station", wave(1.5, 1, 0.6), 2500));
    all.push_back(smallPiece("pressed with a fixed station", bump(-2.0, 0.3, 0.15), 2500));
    all.back().piece.glue.pasteYield_Pa = 150;
    const double places[] = {0.29, 0.41, 0.17};
    for (std::size_t i = 0; i < 3; ++i) {
        model::Piece& piece = all[all.size() - 3 + i].piece;
        piece.holding.stations = {stationAt(places[i], piece.holding.tools.front())};
        piece.holding.stations.front().fixed = true;
    }

    const std::vector<std::function<double(double)>> onPosts{even(-1.0), wave(1.2, 1, 0.6), even(0.8)};
    for (const auto& curvature : onPosts) {
        all.push_back(smallPiece("posts " + std::to_string(all.size()), curvature, 2500));
        all.back().piece.form.kind = model::FormKind::posts;
        for (int i = 0; i < 10; ++i) all.back().piece.form.posts.push_back({-0.12 + 0.093 * i, 0.03, 3000});
    }
    return all;
}

// The places that the header promises, found apart from the code.
inline std::vector<double> placesOf(const Small& small, double length_m) {
    const model::Piece& piece = small.piece;
    const double from = -piece.stack.runsPastStart_m;
    const double to = length_m + piece.stack.runsPastEnd_m;
    const double half = piece.holding.tools.front().pad_m / 2;
    std::vector<double> grid;
    for (int i = 0; from + i * small.grid_m < to - 1e-9; ++i) grid.push_back(from + i * small.grid_m);
    grid.push_back(to);
    if (piece.form.kind == model::FormKind::posts) {
        std::vector<double> on;
        for (const model::Post& post : piece.form.posts) on.push_back(post.at_m);
        for (const double at : grid) {
            for (const model::Post& post : piece.form.posts) {
                if (at != post.at_m && std::abs(at - post.at_m) + half <= post.width_m / 2 + 1e-9) on.push_back(at);
            }
        }
        std::ranges::sort(on);
        grid = on;
    }
    std::vector<double> places;
    for (const double at : grid) {
        const bool clear = std::ranges::all_of(
            piece.holding.stations, [&](const auto& kept) { return std::abs(kept.at_m - at) >= 2 * half - 1e-9; });
        if (clear && at - half >= from - 1e-9 && at + half <= to + 1e-9) places.push_back(at);
    }
    return places;
}

// How far apart pads of one stack may stand, from the formula in pressing.hpp and the piece alone: paste between
// plates, strips of one wood above the outermost glue line built in over the pads, 45 degrees at least, the clamp's
// strength at most.
inline double mayStandApart(const model::Piece& piece, const model::Station& station) {
    const model::Strips& strips = piece.stack.strips.back();
    const wood::Species& species = *wood::findSpecies(wood::builtInSpecies(), strips.species);
    const double width = piece.stack.widths.front().width_m + 2 * piece.stack.ripAllowance_m;
    const double film = piece.stack.glueLine_m;
    const double push = piece.glue.pasteYield_Pa * width * width / (2 * film);
    if (!(push > 0)) return std::numeric_limits<double>::infinity();
    const double modulus = wood::bending(species, piece.stack.moisture, piece.stack.grainSlope, {}).modulus_Pa;
    const double caul = piece.holding.cauls.thickness_m;
    const double stiffness = modulus * width * (std::pow(strips.thickness_m, 3) + std::pow(caul, 3)) / 12;
    const double span = std::pow(384 * stiffness * film / push, 0.25);
    const double below = station.pad_m + 2 * (strips.thickness_m + caul);
    return std::min(std::max(span, below), station.most_N / push);
}

inline bool pressedEverywhere(const StackOnForm& work, const std::vector<model::Station>& stations) {
    const int steps = 2000;
    for (int i = 0; i <= steps; ++i) {
        const double at = work.line.length() * i / steps;
        const bool pressed = std::ranges::any_of(stations, [&](const model::Station& station) {
            return std::abs(station.at_m - at) <= mayStandApart(work.piece, station) / 2 + 1e-9;
        });
        if (!pressed) return false;
    }
    return true;
}

// Gap and strength; and pressing where that is a condition, or where `everywhere` asks for it.
inline bool meets(const StackOnForm& work, const std::vector<model::Station>& stations, bool everywhere = false) {
    const bool pressing = everywhere || !work.wanted.contactIsEnough;
    if (stations.empty() || (pressing && !pressedEverywhere(work, stations))) return false;
    const Held held = holdWith(work, stations);
    return held.outcome == Outcome::settled && held.largest.gap_m <= work.piece.holding.gapLimit_m + gapCounts_m;
}

// Every choice of `count` of the places, pads not upon each other: whether one meets all. `tried` counts them.
inline bool someMeets(const StackOnForm& work, const std::vector<double>& places, int count, int& tried,
                      bool everywhere = false) {
    const model::Tool& tool = work.piece.holding.tools.front();
    std::vector<char> chosen(places.size(), 0);
    if (count > math::countOf(places)) return false;
    std::fill(chosen.begin(), chosen.begin() + count, 1);
    do {
        std::vector<model::Station> stations = work.piece.holding.stations;
        double last = -std::numeric_limits<double>::infinity();
        bool apart = true;
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (!chosen[i]) continue;
            apart = apart && places[i] - last >= tool.pad_m - 1e-9;
            last = places[i];
            stations.push_back(stationAt(places[i], tool));
        }
        if (!apart) continue;
        ++tried;
        if (meets(work, stations, everywhere)) return true;
    } while (std::prev_permutation(chosen.begin(), chosen.end()));
    return false;
}

inline int countFree(const Proposal& proposal) {
    return static_cast<int>(
        std::ranges::count_if(proposal.stations, [](const Proposed& each) { return !each.station.fixed; }));
}

}  // namespace fayline::holding
