// A linear program, its integer form, and nothing of boards: least cost, columns between bounds, rows between bounds.
#pragma once

#include <atomic>
#include <limits>
#include <memory>
#include <utility>
#include <vector>

namespace fayline::stock {

inline constexpr double unbounded = std::numeric_limits<double>::infinity();

// What a column has in which row.
using Entries = std::vector<std::pair<int, double>>;

class IntegerProgram {
public:
    IntegerProgram();
    ~IntegerProgram();
    IntegerProgram(const IntegerProgram&) = delete;
    IntegerProgram& operator=(const IntegerProgram&) = delete;

    // Each gives the index, from 0. A row of `entries` may be added to columns that there are.
    int addRow(double least, double most, const Entries& entries = {});
    int addColumn(double cost, double least, double most, bool integer, const Entries& entries);
    void setCost(int column, double cost);
    void setRow(int row, double least, double most);
    void setColumn(int column, double least, double most);

    int rows() const;
    int columns() const;

    // Without integrality. Begins from the last answer. solved: false when there is no answer or `stop` ended it.
    struct Relaxed {
        bool solved = false;
        double value = 0;
        std::vector<double> columns;
        std::vector<double> duals;  // by row
    };
    Relaxed relaxed(const std::atomic<bool>& stop);

    // `nodes` of branch and bound at most; ends early at a value of `enough` or less. bound: no answer costs less.
    struct Integral {
        std::vector<double> columns;  // empty: none was found
        double value = unbounded;
        double bound = -unbounded;
        bool finished = false;  // the answer is the best, or there is none
        int nodes = 0;
    };
    Integral integral(int nodes, double enough, const std::atomic<bool>& stop);

private:
    struct Solver;
    std::unique_ptr<Solver> solver_;
};

}  // namespace fayline::stock
