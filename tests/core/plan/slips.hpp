// Plain slips of writing, by rule: what happens to a table of offsets that is copied by hand.
#pragma once

#include <filesystem>
#include <string>
#include <utility>
#include <vector>

#include "core/io/file.hpp"

namespace fayline::made {

// A piece with one slip in its offsets.
struct Slipped {
    std::string name;  // "Stem: x of Sta 3 times ten"
    model::Piece piece;
    int point = 0;         // the one that slipped; of two the later
    bool doubled = false;  // a row stands twice, which no plan can be made of
};

// Of each coordinate its tenfold, its tenth and its negative; each two neighbouring rows exchanged; each row doubled.
// Coordinates of 0 slip too, and stay what they are.
inline std::vector<Slipped> slipsOf(const model::Piece& piece) {
    std::vector<Slipped> slips;
    const auto& points = piece.line.points;
    const auto say = [&](std::size_t i) { return points[i].label.empty() ? std::to_string(i) : points[i].label; };
    const auto add = [&](std::size_t i, const std::string& what) -> model::Piece& {
        slips.push_back({piece.name + ": " + say(i) + " " + what, piece, static_cast<int>(i), false});
        return slips.back().piece;
    };
    for (std::size_t i = 0; i < points.size(); ++i) {
        for (const auto& [by, what] :
             {std::pair{10.0, "times ten"}, std::pair{0.1, "over ten"}, std::pair{-1.0, "with its sign changed"}}) {
            model::Point& x = add(i, std::string("x ") + what).line.points[i];
            x.x_m *= by;
            x.written = {};
            model::Point& y = add(i, std::string("y ") + what).line.points[i];
            y.y_m *= by;
            y.written = {};
        }
    }
    for (std::size_t i = 1; i < points.size(); ++i) {
        model::Piece& exchanged = add(i, "exchanged with the row before");
        std::swap(exchanged.line.points[i - 1], exchanged.line.points[i]);
    }
    for (std::size_t i = 0; i < points.size(); ++i) {
        model::Piece& doubled = add(i, "twice");
        doubled.line.points.insert(doubled.line.points.begin() + static_cast<std::ptrdiff_t>(i), points[i]);
        slips.back().point = static_cast<int>(i) + 1;
        slips.back().doubled = true;
    }
    return slips;
}

// The slips of every piece of a sample boat: of marram.fayline 332.
inline std::vector<Slipped> slipsOfSample(const std::string& file) {
    std::vector<Slipped> slips;
    for (const model::Piece& piece : io::loadBoat(std::filesystem::path(FAYLINE_SAMPLES) / file).pieces) {
        for (Slipped& slip : slipsOf(piece)) slips.push_back(std::move(slip));
    }
    return slips;
}

}  // namespace fayline::made
