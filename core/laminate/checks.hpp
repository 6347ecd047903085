// What a stack must be before anything can be said about it.
#pragma once

#include <string>
#include <vector>

#include "core/model/boat.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// Most single strips that a stack may have, and the furthest that strips may run past a trim line, metres. Beyond
// these a figure was mistyped; they also bound how long a plan takes.
inline constexpr int mostStrips = 500;
inline constexpr double mostOverRun_m = 20;

// Thickest single strip and glue line, and deepest stack, metres. Beyond these a unit was mistaken; they also bound
// what a plan takes.
inline constexpr double mostThickness_m = 1;
inline constexpr double mostGlueLine_m = 0.05;
inline constexpr double mostDepth_m = 5;

// Throws InputError with a path from `stack.` for numbers that no stack can have.
void checkStack(const model::Stack& stack);

// The wood with this id. Throws InputError with this path, naming the nearest ids.
const wood::Species& woodNamed(const std::string& id, const std::string& path,
                               const std::vector<wood::Species>& species);

// The wood of each group of strips, in order. Throws InputError (stack.strips[i].species) naming the nearest ids.
std::vector<const wood::Species*> woodsOf(const model::Stack& stack, const std::vector<wood::Species>& species);

}  // namespace fayline::laminate
