// What is to be cut, and from what: plain data in SI, of one piece or of all pieces of a boat together.
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace fayline::stock {

// From where to where along a strip or a board, metres.
struct Stretch {
    double from_m = 0;
    double to_m = 0;

    bool operator==(const Stretch&) const = default;
};

// A strip that is wanted. Lengths are as cut, what runs past the trim lines included.
struct Strip {
    std::string piece;  // id of its piece
    int place = 1;      // in its piece, 1 on the form; strips of one piece whose places differ by 1 lie on each other
    std::string species;
    double length_m = 0;
    double width_m = 0;               // as ripped, with the allowance of the rules not yet added
    double thickness_m = 0;           // as glued: planing comes on top
    bool spare = false;               // its scarfs need not be staggered; left out first where boards do not suffice
    bool sacrificial = false;         // may have faults everywhere
    std::vector<Stretch> takenOff;    // trimmed or planed away: faults may lie there
    std::optional<Stretch> tightest;  // the tightest third of its bend: no scarf there
    bool outer = false;               // the outermost of its piece: a scarf in the bend is worst here

    bool operator==(const Strip&) const = default;
};

// Knots, checks, sapwood: all of the width, or from..to across it.
struct Bad {
    Stretch along;
    std::optional<Stretch> across;

    bool operator==(const Bad&) const = default;
};

// A board on hand, or one that can be bought.
struct Board {
    std::string name;
    std::string species;
    double length_m = 0;
    double width_m = 0;
    double thickness_m = 0;
    int count = 1;
    std::vector<Bad> bad;
    double price = 0;          // of one
    double density_kg_m3 = 0;  // 0: not known

    bool operator==(const Board&) const = default;
};

// How strips lie in the plank. Ripped off its edge: strip thickness from board width, strip width from board
// thickness. Resawn from its face: the other way about.
enum class Sawing { ripped, resawn };

// A strip that is to come from this board: `copy` of its count from 0, or any of them.
struct Pin {
    int strip = 0;  // index into Job::strips
    int board = 0;  // index into Job::boards
    std::optional<int> copy;

    bool operator==(const Pin&) const = default;
};

enum class Aim { leastWood, leastPrice };

// Defaults: facts of the trade without a source (C) but where one is named.
struct Rules {
    double kerf_m = 0.0024;          // thin-rip circular saw 2.2 to 2.5 mm (C)
    double planing_m = 0.0005;       // off each sawn face (C); 0: glued off the saw
    double widthAllowance_m = 0;     // on each edge of a strip
    double planerLeast_m = 0;        // thinner than this the planer takes none; 0: not asked
    double snipe_m = 0;              // at each end of a lane that is planed
    std::optional<Sawing> sawing;    // absent: whichever gives more, board by board
    double scarfSlope = 12;          // 1 in this: flatter gives no more strength (Wood Handbook ch. 10, P)
    double staggerThicknesses = 24;  // least distance of scarf centres of neighbours over thickness (M/C)
    double leastPart_m = 0.3;        // no shorter part of a scarfed strip (C)
    double scarfStep_m = 0.05;       // places of scarfs that are tried, along the strip
    int extraScarfs = 0;             // above the fewest that a strip needs
    Aim aim = Aim::leastWood;
    std::vector<Pin> pins;

    bool operator==(const Rules&) const = default;
};

struct Job {
    std::vector<Strip> strips;
    std::vector<Board> boards;
    Rules rules;

    bool operator==(const Job&) const = default;
};

// Throws InputError, path from `strips[`, `boards[` or `rules.`, for numbers that are none (negative, not finite) and
// pins to what is not there. What cannot be cut is no error: CutPlan::troubles says so.
void check(const Job& job);

}  // namespace fayline::stock
