// Which strip from which board: the answer.
//
// A board's width runs across from 0, its thickness through from 0, its length along from 0. A lane is what the saw
// makes of a board: as long as the board, as thick as a strip with its planing, as wide as a strip with its allowance.
#pragma once

#include <vector>

#include "core/stock/job.hpp"

namespace fayline::stock {

// A strip, or the part of one between two scarfs, cut from a lane.
struct Cut {
    int board = 0;  // index into Job::boards
    int copy = 0;   // which of its count, from 0
    Sawing sawing = Sawing::ripped;
    Stretch across;  // of the lane, as sawn
    Stretch through;
    Stretch along;  // on the board, scarf ends included
    int strip = 0;  // index into Job::strips
    int part = 0;   // from the strip's start, from 0
    int parts = 1;
    Stretch ofStrip;      // what it is of the strip, scarf ends included
    bool turned = false;  // the strip's end lies toward the board's start
    bool faulty = false;  // has a bad stretch, where the strip may have one

    bool operator==(const Cut&) const = default;
};

// Why a scarf lies in the tightest third.
enum class Forced {
    no,
    lanesTooShort,  // no lane spans the tightest third with a scarf at its end
    boardsRunOut,   // lanes that do are too few
};

struct ScarfCut {
    int strip = 0;
    double at_m = 0;  // its centre, along the strip
    double length_m = 0;
    Forced forced = Forced::no;

    bool operator==(const ScarfCut&) const = default;
};

// One board that is cut.
struct BoardUse {
    int board = 0;
    int copy = 0;
    Sawing sawing = Sawing::ripped;
    int lanes = 0;       // that something is cut from
    double waste = 0;    // share of its wood that does not become strips
    Stretch acrossLeft;  // not sawn: a board as long and thick as this one

    bool operator==(const BoardUse&) const = default;
};

// How many lanes a board gives for strips as this one, either way.
struct Yield {
    int board = 0;
    int strip = 0;  // the first of its section and wood
    int ripped = 0;
    int resawn = 0;

    bool operator==(const Yield&) const = default;
};

enum class TroubleKind {
    noBoards,        // none are given, or their counts are all 0
    wrongWood,       // no board is of the strip's wood
    boardsTooSmall,  // none gives a lane of its section; `board` -1
    kerfTooWide,     // the saw cut is wider than the board
    boardAllBad,     // bad from end to end
    boardTooSmall,   // gives no lane for any strip of its wood
    boardOtherWood,  // of a wood that no strip asks for
    lanesTooShort,   // no number of scarfs makes the strip of what lanes there are
    thinnerThanPlaner,
    pinNotMet,  // the board does not give the strip that is pinned to it
};

// What keeps a strip from being cut or a board from being used. -1: not about one.
struct Trouble {
    TroubleKind kind = TroubleKind::noBoards;
    int strip = -1;
    int board = -1;

    bool operator==(const Trouble&) const = default;
};

struct CutPlan {
    std::vector<Cut> cuts;  // by board, copy, across, through, along
    std::vector<ScarfCut> scarfs;
    std::vector<BoardUse> boards;
    std::vector<int> missing;  // strips that the boards do not give; spares are left out first
    std::vector<Yield> yields;
    std::vector<Trouble> troubles;

    Aim aim = Aim::leastWood;  // by wood as well where price is asked and no board has one
    double value = 0;          // of the boards that are cut: m3, or money
    // No cut list of these strips, scarfs where the rules let them, costs less than this. Where strips are missing it
    // is not about wood: fewestMissing then is what no cut list falls below.
    double bound = 0;
    double gap = 0;  // (value - bound) / value
    int fewestMissing = 0;
    bool proven = false;  // nothing better exists: bound reached, or fewest missing

    double boards_m3 = 0;
    double strips_m3 = 0;  // as glued
    double waste = 0;      // 1 - strips over boards
    double boardFeet = 0;
    double weight_kg = 0;  // of the boards; 0 where a density is not known
    double price = 0;

    bool operator==(const CutPlan&) const = default;
};

}  // namespace fayline::stock
