// The integer program of a cutting problem, its columns made as they are wanted (Gilmore and Gomory 1961, M).
//
//   u layout   boards of a kind ripped so             sum over a kind's layouts <= boards of it
//   x pattern  lanes of a shape filled so             patterns on a shape <= lanes of it that the boards give
//   y way      strip made whole or of parts           its parts <= what the patterns give; one way for each strip
//   t item     cut down to the next shorter one that takes its place
//   m strip    left out
// Rows that keep scarfs of neighbours apart are added where an answer breaks them. Prices of its relaxation bound every
// choice of boards: sum of prices[k] * boards of kind k >= asked, or strips are left out (Benders 1962, M).
#pragma once

#include <atomic>
#include <map>
#include <optional>
#include <set>
#include <tuple>
#include <utility>
#include <vector>

#include "core/stock/integer_program.hpp"
#include "core/stock/shapes.hpp"
#include "core/stock/stock.hpp"

namespace fayline::stock {

// What is to be least: cost of boards, after strips left out and forced scarfs; or strips left out alone.
enum class Least { cost, leftOut };

class CuttingProgram {
public:
    explicit CuttingProgram(const Problem& problem);

    // From now on, and so many boards of each kind at most.
    void aimAt(Least least, const std::vector<int>& boards);

    // Columns and rows are added until none helps, or so many rows have been solved in all. Prices and what they ask
    // hold either way, the value only where it is solved.
    struct Relaxed {
        bool solved = false;  // false: stopped, or too much
        double value = 0;
        std::vector<double> prices;  // by kind: what one board is worth at most; empty: nothing is known
        double asked = 0;
        std::vector<double> worth;  // of items
    };
    Relaxed relaxed(long& rows, const std::atomic<bool>& stop);

    // The columns that there are, in whole numbers. `enough`: a value to stop at.
    struct Integral {
        std::optional<Cutting> cutting;
        double value = unbounded;
        double bound = -unbounded;  // of these columns
        bool finished = false;
    };
    Integral integral(int& nodes, double enough, const std::atomic<bool>& stop);

    // The relaxed answer in whole numbers, the rest by first fit from so many boards. `up`: boards that are used in
    // part are used as they are used most.
    Cutting rounded(const std::vector<int>& boards, bool up) const;

    // Instead of layouts, for these boards and no others: how many bands of each width lie across them, in any order. A
    // board with faults in a part of its width is divided where they end, and no band lies across such a place: true
    // where none is, so that this is all there is. Comes first of all.
    bool useBands(const std::vector<int>& boards);

    // Adds every pattern of the lanes that there are. False: they are too many, and none was added.
    bool addAllPatterns(std::size_t most);

    // The layout that the relaxed answer has most of a further board of: its index among layouts. -1: all are whole.
    int mostInPart() const;
    // Boards sawn so are at least one more, or as many as before.
    void settle(int layout, bool oneMore);

    // Adds every layout of these kinds, and every pattern that with these worths of items is at most `short_` below its
    // lane's best. False: they are too many, and none was added.
    bool addAll(const std::vector<int>& kinds, const std::vector<double>& worth, double below, std::size_t most);

    double costScale() const { return costScale_; }  // cost of 1 in the program
    double forcedCost() const { return forcedCost_; }
    double leftOutCost() const { return leftOutCost_; }

private:
    struct YColumn {
        int strip = 0;
        int way = 0;
        int column = 0;
    };
    struct XColumn {
        Pattern pattern;
        int column = 0;
    };
    struct UColumn {
        Layout layout;
        int column = 0;
        int settled = 0;  // so many boards at least
    };

    int shapeRow(int shape);
    bool addPattern(const Pattern& pattern);
    bool addLayout(const Layout& layout);
    bool addFrom(const IntegerProgram::Relaxed& answer, Relaxed& relaxed);
    double askedAt(const std::vector<double>& duals, const std::vector<double>& worth) const;
    int keepApart(const std::vector<double>& values);
    Cutting cuttingOf(const std::vector<double>& values) const;
    void cutDown(Cutting& cutting, const std::vector<double>& values) const;
    std::vector<Sawn> sawnUp(const std::vector<int>& boards) const;
    Shape shapeOf(const Sawn& board, const Lane& lane) const;
    Sawn sawnAs(const Layout& layout) const;
    void fillLanes(Cutting& cutting, const std::vector<int>& preferred) const;
    void addZone(int sawn, int zone, Span across, Um room, int chosen);
    void layBands(Cutting& cutting, const std::vector<double>& values) const;
    void keepWhole(Cutting& cutting, const std::vector<int>& preferred) const;

    const Problem& problem_;
    std::vector<int> shorter_;  // by item: what it may be cut down to, -1: nothing
    Shapes shapes_;
    IntegerProgram program_;
    std::vector<int> kindRows_;
    std::vector<int> itemRows_;
    std::vector<int> stripRows_;
    std::vector<int> shapeRows_;
    struct Band {
        int board = 0;  // index into sawn_
        int zone = 0;
        std::vector<LaneAt> lanes;  // as if it were the first of its zone
        int column = 0;
    };
    std::vector<Band> bands_;
    std::vector<Sawn> sawn_;  // a board sawn one way, without lanes
    struct Apart {
        int row = 0;
        Entries entries;
    };
    std::vector<Apart> apart_;
    std::vector<YColumn> ys_;
    std::vector<int> firstY_;  // by strip: index into ys_
    std::vector<XColumn> xs_;
    std::vector<UColumn> us_;
    std::vector<int> ms_;
    std::vector<std::pair<int, int>> ts_;  // item and column, the longest first
    std::set<std::pair<int, std::vector<int>>> seenPatterns_;
    std::set<std::pair<std::pair<int, int>, std::vector<int>>> seenLayouts_;
    std::set<std::tuple<int, int, Um>> seenApart_;
    std::vector<double> last_;  // columns of the last relaxed answer
    std::vector<int> boards_;
    Least least_ = Least::cost;
    double costScale_ = 1;
    double forcedCost_ = 1;
    double leftOutCost_ = 1;
};

// Takes away what no strip asks for.
void dropUnasked(const Problem& problem, Cutting& cutting);

// The same, and lanes without a strip and boards without a lane.
void tidy(const Problem& problem, Cutting& cutting);

}  // namespace fayline::stock
