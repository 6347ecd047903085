// The studies of a plan: what takes longer than a frame, each a pure function of piece, shop and plan.
#pragma once

#include <array>
#include <atomic>
#include <functional>
#include <optional>

#include "core/plan/study/deepen.hpp"

namespace fayline::plan {

// Puts what a study found into a plan of the same piece; empty: the study was stopped.
using Part = std::function<void(Plan&)>;

struct StudyWork {
    Study study = Study::closing;
    std::optional<Study> needs;  // the study whose result it has to be given in `plan`
    Part (*work)(const model::Piece& piece, const Shop& shop, const Plan& plan, const std::atomic<bool>& stop);
};

inline constexpr std::size_t studyCount = allStudies.size();

// All of them, in the order in which they are begun and put into a plan.
using StudyTable = std::array<StudyWork, studyCount>;
const StudyTable& studies();

// deepenStepwise with the studies of `table`.
std::optional<Plan> deepenWith(const StudyTable& table, const model::Piece& piece, const Shop& shop, const Plan& plan,
                               const std::atomic<bool>& stop, const OnPart& onPart, unsigned threads);

// Makes findings and answers of `plan` anew from the studies that it has.
void wordStudies(const model::Piece& piece, const Shop& shop, Plan& plan);

}  // namespace fayline::plan
