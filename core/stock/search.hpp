// The search for the best cutting of a problem, with what is proven of it.
#pragma once

#include <atomic>
#include <functional>

#include "core/stock/cutting.hpp"
#include "core/stock/stock.hpp"

namespace fayline::stock {

struct Found {
    Cutting cutting;
    double bound = 0;  // of cost, where nothing is left out
    int leftOut = 0;   // no cutting leaves out less, by weight
    bool proven = false;
};

// From `first` on. `better` is told each that is better. Where not everything can be cut, as much as can is.
Found search(const Problem& problem, const Cutting& first, const Effort& effort, const std::atomic<bool>& stop,
             const std::function<void(const Found&)>& better);

}  // namespace fayline::stock
