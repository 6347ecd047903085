// First-fit decreasing: the longest first, each into the first lane that takes it, else a new lane, else a new board.
#pragma once

#include <vector>

#include "core/stock/cutting.hpp"

namespace fayline::stock {

// Boards that may be opened: how many of each kind. Boards that are given already are filled up first.
struct FirstFit {
    Cutting begun;               // ways of strips that are to be placed are -1
    std::vector<int> mayOpen;    // by kind, beside those begun
    std::vector<int> preferred;  // by strip: the way to try, -1: chosen here
    std::vector<bool> placed;    // by strip: it is in `begun` already; empty: none is
    bool sparesLast = false;     // so that they are what is left out
};

// A cutting of as many strips as go.
Cutting firstFit(const Problem& problem, const FirstFit& given);

// Nothing begun, all boards may be opened; spares last where strips would be left out otherwise.
Cutting firstCutting(const Problem& problem);

}  // namespace fayline::stock
