// The story stick: a full-size strip with every mark at its true distance, along the outside of the stack on one edge
// and along the line on the other, cut into parts that overlap.
#pragma once

#include "app/paper/sheet.hpp"
#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app::paper {

// Sheets of the story stick on `page`, which lies on its long side. Neighbouring parts share 15 mm with two crosses of
// one letter. Throws InputError when the page is too small or the stick would need more than a thousand sheets.
std::vector<Sheet> storyStick(const model::Piece& piece, const plan::Plan& plan, const Page& page);

}  // namespace fayline::app::paper
