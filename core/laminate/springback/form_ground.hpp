// Where a form's line is worked out: the places along the wanted line, and there the sections of each part.
#pragma once

#include <vector>

#include "core/laminate/springback/form_line.hpp"
#include "core/laminate/springback/release.hpp"
#include "core/laminate/stack.hpp"
#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::laminate {

// A part at each place of the ground. Beyond its strips (where only the form carries on) its last section stands.
struct PartAlong {
    Places places;
    std::vector<Release> sections;  // on the wanted line
    std::vector<double> axisFromLine_m;
};

struct FormGround {
    Ground ground;
    std::vector<double> aside_m;  // of each place: a hair before or after it where a strip ends, else 0
    std::vector<BentStrip> strips;
    std::vector<PartAlong> parts;
    std::size_t tightest = 0;  // place of the wanted line's greatest curvature
};

// Where a stack without a pin is held first, along a line of this length.
double heldFirstAt(model::From from, double length_m);

// Throws InputError: form.fixed_at_mm for a place that does not lie on the form; as checkPlaned.
FormGround formGround(const model::Piece& piece, const line::Line& line, const StackPlan& stack);

// rho of each section of a part that turns by `share` of the wanted line's turn.
std::vector<double> ratiosOn(const FormGround& ground, const PartAlong& part, const std::vector<double>& share);

// rho as a form allows for it: where one strip is left of several, that of the nearest section with more.
std::vector<double> allowedRatios(const PartAlong& part, const std::vector<double>& ratios);

}  // namespace fayline::laminate
