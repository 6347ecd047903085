// Small cutting problems solved by trying everything, with nothing of the program's own: lengths are whole numbers of
// one unit, places along and across are scanned unit by unit, parts are shared out among boards in every way.
#pragma once

#include <optional>
#include <vector>

#include "core/stock/job.hpp"

namespace fayline::stock {

struct BestOfAll {
    int leftOut = 0;  // strips by weight: a spare 1, others one more than there are spares
    int forced = 0;   // scarfs in the tightest third, those of an outer strip double
    double cost = 0;  // m3 of the boards
};

// Of a job whose lengths are multiples of `unit_m`, half a scarf's length too.
BestOfAll bestOfAll(const Job& job, double unit_m);

}  // namespace fayline::stock
