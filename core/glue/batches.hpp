// Batches of one use: the fewest equal ones that fit the vessel, hold no more than a cup should and are used up before
// they go off.
#pragma once

#include <vector>

#include "core/glue/glue.hpp"
#include "core/model/boat.hpp"

namespace fayline::glue {

struct BatchNeed {
    BatchFor use = BatchFor::spread;
    int gluing = 0;
    double needed_kg = 0;  // resin and hardener, waste counted
    double area_m2 = 0;    // of faces to be covered once
    double rate_m2_s = 0;  // by the whole crew
    double mix_s = 0;
};

// In order, numbered from `firstNumber`. Where no number is used up within shareOfPotLife they are said to be late.
// Throws InputError (`glue.cup_ml`) for more than mostBatches.
std::vector<Batch> batchesFor(const BatchNeed& need, const model::Glue& glue, const Adhesive& adhesive,
                              const PotLives& lives, int firstNumber);

// What was tried where those batches are not used up in time: smaller cups, a tray, and each slower glue of the kind
// that may be used in this air, until one of them mends it.
std::vector<CupRemedy> cupRemediesFor(const BatchNeed& need, const model::Glue& glue, const Adhesive& adhesive,
                                      const PotLives& lives, const std::vector<Adhesive>& adhesives);

}  // namespace fayline::glue
