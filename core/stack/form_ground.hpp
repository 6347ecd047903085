// Where a form's line is worked out: the places along the wanted line, and there the sections of each part.
#pragma once

#include <vector>

#include "core/boat/boat.hpp"
#include "core/line/line.hpp"
#include "core/stack/form_line.hpp"
#include "core/stack/release.hpp"
#include "core/stack/stack.hpp"

namespace fayline::stack {

// A part at each place of the ground. Beyond its strips (where only the form carries on) its last section stands.
struct PartAlong {
    Places places;
    std::vector<Release> sections;
    std::vector<double> axisFromLine_m;
    // rho as the form allows for it: the sections', but beside a lone strip of several that of the nearest section
    // with more.
    std::vector<double> formRatio;
    double ratioAtTightest = 0;  // of the wanted line
};

struct FormGround {
    Ground ground;
    std::vector<LooseStrip> strips;
    std::vector<PartAlong> parts;
};

// Throws InputError (form.fixed_at_mm) for a fixed place that is none.
FormGround formGround(const boat::Piece& piece, const line::Line& line, const StackPlan& stack);

}  // namespace fayline::stack
