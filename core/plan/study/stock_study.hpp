// Which board gives which strip: the strips of a plan and the boards at hand, made into the input of core/stock, and
// what comes back told by places, boards and rips.
//
// Places from 1 are those of the stack; the spares follow, place count + 1 and on. What has been cut already is not
// asked for again, and the wood of it is used. A piece that lists no boards of its own shares those of the boat with
// all others that list none: they are worked out together.
#pragma once

#include <atomic>
#include <optional>
#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/findings/text.hpp"

namespace fayline::plan {

struct Shop;
struct Plan;

// One length sawn from a board: a strip, or a part of one between its scarfs.
struct SawnPart {
    int place = 1;
    int part = 1;       // of the strip, from its start; 1 where it is whole
    int parts = 1;      // how many make the strip
    int rip = 1;        // counted across the board, and through its thickness where it is resawn
    double from_m = 0;  // along the board
    double length_m = 0;
    double acrossFrom_m = 0;  // across its width, rough
    double acrossTo_m = 0;
    double deepFrom_m = 0;  // through its thickness, rough
    double deepTo_m = 0;
    bool scarfAtStart = false;
    bool scarfAtEnd = false;
    bool spare = false;
    bool faulty = false;  // a bad stretch of the board lies in it, where it is planed or trimmed off
    bool pinned = false;
    bool cut = false;   // sawn already
    bool lost = false;  // and broken or spoilt
    std::string piece;  // of the boat that it is for; empty: this one

    bool operator==(const SawnPart&) const = default;
};

struct BoardCuts {
    std::string name;
    int number = 1;  // among the boards of its row
    model::Board board;
    bool toBuy = false;
    bool ofFace = false;  // resawn from its face
    std::vector<SawnPart> parts;
    double waste = 0;  // share of its volume that becomes no strip
    double price = 0;
};

struct ScarfPlace {
    int place = 1;
    double at_m = 0;  // its middle along the line
    double length_m = 0;
    bool inTightest = false;     // in the third of the line that is bent most: nothing else was possible
    bool lanesTooShort = false;  // there because no board spans that third; else because those that do are too few
    bool ofSpare = false;
};

// What would mend boards that do not suffice.
struct StockCure {
    Message name;                       // as a button has it
    int stillShort = 0;                 // strips
    bool changesPiece = false;          // thinner strips or a narrower piece: another piece, in a way
    std::optional<double> cost;         // of the boards more, by their prices; none: no price is known
    double extra_m3 = 0;                // wood of the boards more
    std::optional<model::Piece> piece;  // with it taken; none: nothing to click
    std::optional<std::vector<model::Board>> boatBoards;  // the boat's with it taken, where they are changed
};

struct StockStudy {
    bool anyBoards = false;  // with none there is nothing to say
    int stripsNeeded = 0;    // spares included
    int spares = 0;
    int alreadyCut = 0;
    std::vector<int> missing;       // places for which no board is left
    std::vector<BoardCuts> boards;  // in the order of the list, bought ones after; few unused ones of a row
    std::vector<ScarfPlace> scarfs;
    bool proven = false;  // nothing better is possible
    double offBest = 0;   // share by which it may be from the best
    double waste = 0;     // share of the boards used
    int boardsUsed = 0;
    double price = 0;      // of the boards used
    double toSpend = 0;    // of those that must be bought
    double weight_kg = 0;  // of the boards used, where their wood is known
    double volume_m3 = 0;
    double boardFeet = 0;
    std::optional<double> edgeWaste;  // sawn off the edge only; none: it does not do
    std::optional<double> faceWaste;  // resawn only
    std::vector<Message> told;        // what is wrong with the boards, in sentences
    std::vector<int> pinsNotKept;     // places
    bool thinnerThanPlaner = false;   // strips are
    std::vector<StockCure> cures;     // those first that leave fewest short, then those that leave
                                      // the piece as it is, then the cheapest
};

std::optional<StockStudy> stockFor(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop);

// The boards that the piece is cut from: its own, or those of the boat.
std::vector<model::Board> boardsOf(const model::Piece& piece, const std::vector<model::Board>& ofBoat);
std::string boardName(const std::vector<model::Board>& boards, int row);  // its name, or "3" for the third row
double priceOf(const model::Board& board);                                // of one
double volumeOf(const model::Board& board);

}  // namespace fayline::plan
