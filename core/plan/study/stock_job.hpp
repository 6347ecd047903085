// The input of core/stock: the strips of one plan, or of all pieces that share the boat's boards, and what is left of
// the boards.
//
// A board of which something is cut already is no board any more: what is left of it are the ends of its lanes and
// what was not ripped, each a board of its own here that knows of which it is.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/stock/job.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;

// Which board of which row a board of the job is, and where on it the job's board begins.
struct BoardOrigin {
    int row = 0;     // in the list of boards, or of what can be bought
    int number = 1;  // of its count; copies of the job's board are numbered on
    bool toBuy = false;
    bool isRest = false;  // of a board that is cut already
    double along_m = 0;
    double across_m = 0;
    double deep_m = 0;
};

struct StripOrigin {
    std::string piece;  // its id
    std::string pieceName;
    int place = 1;
    bool ofThis = true;     // of the piece that is asked about
    double startsAt_m = 0;  // along its line
    double endsAt_m = 0;
};

struct StockJob {
    stock::Job job;
    std::vector<StripOrigin> strips;         // as job.strips
    std::vector<BoardOrigin> boards;         // as job.boards
    std::vector<model::Board> rows;          // boards on hand, as the user lists them
    std::vector<std::string> unlikeSharers;  // pieces that share the boards and saw them by other rules
    std::vector<int> unknownPins;            // places pinned to a board that is not listed
    int needed = 0;                          // strips of the piece, spares included
    int spares = 0;
    int cut = 0;  // of these, cut already
};

// With what can be bought, or the boards on hand alone. None: stopped.
std::optional<StockJob> stockJobFor(const model::Piece& piece, const Shop& shop, const Plan& plan, bool withBuying,
                                    const std::atomic<bool>& stop);

// How many spares the piece wants: as many as are asked, else as its strips are likely to break.
int sparesWanted(const model::Piece& piece, const Plan& plan);

// The third of the line that is bent most: from where to where along it. None where the line is straight.
std::optional<stock::Stretch> tightestThird(const Plan& plan);

// What is left of one board of `row`, of which `cut` was cut with this saw cut, and where on it that lies.
struct Rest {
    stock::Board board;
    BoardOrigin origin;
};
std::vector<Rest> restOf(const stock::Board& board, const std::vector<model::StripCut>& cut, double kerf_m);

}  // namespace fayline::plan
