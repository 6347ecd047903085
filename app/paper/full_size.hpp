// A full-size drawing cut into sheets that overlap, after a first sheet with a small map of them all.
#pragma once

#include "app/paper/drawing.hpp"
#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

// Sheets of `drawing` on `page` or on the page turned, whichever needs fewer. Sheets that no curve crosses are left
// out. Neighbours share 15 mm with two crosses of one letter. Throws InputError when the page is too small or more than
// a thousand sheets would be needed.
std::vector<Sheet> fullSize(const Drawing& drawing, const Page& page);

}  // namespace fayline::app::paper
