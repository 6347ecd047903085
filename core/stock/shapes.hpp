// The lanes that boards can give, each kind of lane once, and the best ways to fill lanes and boards at given prices.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <vector>

#include "core/stock/cutting.hpp"

namespace fayline::stock {

// A lane of one section and wood with its bad stretches, wherever on a board.
struct Shape {
    int section = 0;
    int wood = 0;
    int pinned = -1;  // kind of board, where strips are pinned to it
    Um length = 0;
    std::vector<Span> bad;

    auto operator<=>(const Shape&) const = default;
};

// How a lane is filled, from its start on.
struct Pattern {
    int shape = 0;
    std::vector<int> items;
    double worth = 0;
};

// A lane within a board.
struct LaneAt {
    int shape = 0;
    Span across;
    Span through;
};

// How a board is ripped.
struct Layout {
    int kind = 0;
    Sawing sawing = Sawing::ripped;
    std::vector<LaneAt> lanes;
    double worth = 0;
};

class Shapes {
public:
    // `shorter`: the item that each may be cut down to, -1: none. `atMost`: how many of each are of use at all.
    Shapes(const Problem& problem, const std::vector<int>& shorter, const std::vector<int>& atMost);

    int count() const { return static_cast<int>(shapes_.size()); }
    const Shape& operator[](int shape) const { return shapes_[shape]; }

    // Of a lane; a new one is given an index. nullopt: nothing fits there.
    std::optional<int> find(int kind, int section, Span across);

    // The items worth most together, by the worth of each.
    Pattern best(int shape, const std::vector<double>& worth) const;

    // All patterns to which nothing can be added and in which nothing can be longer, worth at least `least`; none if
    // there are more than `most`. An item is worth no less than what it may be cut down to.
    std::optional<std::vector<Pattern>> all(int shape, const std::vector<double>& worth, double least,
                                            std::size_t most) const;

    // The board worth most, sawn so, by the worth of each shape (asked of `worthOf`, which may see new ones).
    Layout bestLayout(int kind, Sawing sawing, const std::function<double(int shape)>& worthOf);

    // The ways to divide a band across the board through its thickness, none of which takes one lane more.
    std::vector<std::vector<LaneAt>> bands(int kind, Sawing sawing, Span across);
    std::vector<Um> widths(Sawing sawing) const;  // across of all sections, each once

    // All layouts to which no lane can be added; none if there are more than `most`.
    std::optional<std::vector<Layout>> allLayouts(int kind, std::size_t most);

private:
    struct Fit {
        int item = 0;
        Um length = 0;
        int atMost = 0;
        Starts starts;  // where the lane has bad stretches
    };

    bool isOfUse(int item, const std::vector<double>& worth) const;
    Pattern bestWithoutBad(int shape, const std::vector<double>& worth) const;
    Pattern bestWithBad(int shape, const std::vector<double>& worth) const;

    const Problem& problem_;
    std::vector<int> shorter_;
    std::vector<int> atMost_;
    std::vector<std::vector<int>> longer_;  // by item: those that may be cut down to it at once
    std::vector<Shape> shapes_;
    std::vector<std::vector<Fit>> fits_;
    std::map<Shape, int> known_;
};

}  // namespace fayline::stock
