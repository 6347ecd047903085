// A piece that came off its form a little off, sprung home: what it takes and what stays in it
// (core/laminate/springback/sprung_home).
#pragma once

#include <optional>
#include <vector>

#include "core/laminate/springback/sprung_home.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::plan {

// How far the piece is off, as a user reads it: the end that is told (reportedAtStart) stands off the wanted line by
// `off_m`, the other end laid on it, > 0 open. From that the factor times rho with which it opened from its form.
// Without `off_m` as the plan foretells it. None where nothing lets go or nothing is off by laminate::leastOff_m.
//
// Throws InputError with an empty path where no springback of these strips leaves them so far off; says how far it can.
// Error: the end stands where it was read, within 1e-7 m.
std::optional<laminate::SprungHome> springHome(const model::Piece& piece, const Plan& plan,
                                               const std::optional<double>& off_m);

// What it takes to spring it home, what stays in it and whether wood bears that; with the caution.
std::vector<Message> springHomeTexts(const laminate::SprungHome& home, const Plan& plan);

// The same with how far it stands off; where nothing is off or nothing comes off, that. `home` as springHome has it.
std::vector<Message> springingTexts(const std::optional<laminate::SprungHome>& home, const Plan& plan);

}  // namespace fayline::plan
