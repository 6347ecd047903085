// The job in whole micrometres, like strips and like boards gathered: what all ways of answering it start from.
#pragma once

#include <compare>
#include <cstdint>
#include <vector>

#include "core/stock/cut_plan.hpp"
#include "core/stock/job.hpp"

namespace fayline::stock {

using Um = std::int64_t;
Um toUm(double metres);
double toMetres(Um um);

struct Span {
    Um from = 0;
    Um to = 0;

    Um length() const { return to - from; }
    auto operator<=>(const Span&) const = default;
};

// Sorted, those that touch made one, empty ones left out.
std::vector<Span> merged(std::vector<Span> spans);

// Strips of one section come from lanes of one section, as sawn.
struct Section {
    Um thick = 0;  // with planing
    Um wide = 0;   // with the allowance on each edge

    auto operator<=>(const Section&) const = default;
};

// Strips or parts that are alike: each may take the other's place.
struct Item {
    int section = 0;
    int wood = 0;
    int pinned = -1;  // kind of board that it has to come from
    Um length = 0;
    std::vector<Span> mayBeBad;  // along itself

    auto operator<=>(const Item&) const = default;
};

// One way to make a strip: whole, or of parts.
struct Way {
    std::vector<Um> joints;  // centres, along the strip
    std::vector<int> items;  // by part
    int forced = 0;          // joints in the tightest third; of an outer strip they count double
};

struct Wanted {
    int section = 0;
    int wood = 0;
    Um length = 0;
    Um scarf = 0;  // length of one
    int pinned = -1;
    std::vector<Way> ways;   // none: it cannot be cut
    bool mustForce = false;  // it has none without a joint in the tightest third
    int weight = 1;          // of being left out
};

// Neighbours in a stack: indices into Problem::wanted, and the least distance of their joints.
struct Neighbours {
    int one = 0;
    int other = 0;
    Um stagger = 0;
};

struct BadUm {
    Span along;
    Span across;
};

// Boards that are alike. Copies that strips are pinned to are kinds of their own.
struct Kind {
    int board = 0;  // index into Job::boards
    std::vector<int> copies;
    int wood = 0;
    bool pinnedTo = false;
    Um length = 0;
    Um width = 0;
    Um thickness = 0;
    std::vector<BadUm> bad;  // snipe among them
    double cost = 0;
};

struct Problem {
    Um kerf = 0;
    std::vector<Sawing> sawings;
    std::vector<Section> sections;
    std::vector<Item> items;
    std::vector<Wanted> wanted;  // as Job::strips
    std::vector<Neighbours> neighbours;
    std::vector<Kind> kinds;
    std::vector<Trouble> troubles;
    Aim aim = Aim::leastWood;
};

// `mayForce`: ways with a scarf in the tightest third count beside the others; without it they are there only of a
// strip that has no other.
Problem problemOf(const Job& job, bool mayForce);

// Across and through of a lane of this section.
Um acrossOf(const Section& section, Sawing sawing);
Um throughOf(const Section& section, Sawing sawing);

// The bad stretches of a lane that lies across a board of this kind.
std::vector<Span> badOf(const Kind& kind, Span across);

// Where lanes of a width can begin across a board, as far left as they can, once all to the left of `free` is taken:
// there and past each bad stretch.
std::vector<Um> beginnings(const Kind& kind, Um free, Um wide);

// Where an item may begin along a lane: spans of places, sorted. `turned`: with its end toward the lane's start.
struct Starts {
    std::vector<Span> plain;
    std::vector<Span> turned;
};
Starts startsOf(const Item& item, Um laneLength, const std::vector<Span>& bad);

// The first place from `free` on. at -1: none.
struct Start {
    Um at = -1;
    bool turned = false;
};
Start firstStart(const Starts& starts, Um free);

bool mayComeFrom(const Item& item, const Problem& problem, int kind);

// Whether joints of neighbours keep their distance.
bool staggered(const Way& one, const Way& other, Um stagger);

}  // namespace fayline::stock
