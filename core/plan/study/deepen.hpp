// A plan with all that takes longer than a frame.
#pragma once

#include <atomic>
#include <functional>
#include <optional>

#include "core/plan/plan.hpp"

namespace fayline::plan {

// `plan`, which is of this piece and shop, with every study: the same bits whatever the number of `threads` on which
// they are worked out (0: as many as the machine has cores). Pure as well. `stop` is looked at every few milliseconds;
// once it is set, nothing is returned. What one study throws is thrown when the others have ended.
std::optional<Plan> deepen(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop,
                           unsigned threads = 0);

// The same, and `onPart` is given the plan with what is there so far, findings and answers made anew, each time that
// something has come and more is to come. It is called in the caller's thread; what comes meanwhile comes together.
using OnPart = std::function<void(Plan)>;
std::optional<Plan> deepenStepwise(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop, const OnPart& onPart, unsigned threads = 0);

}  // namespace fayline::plan
