// The two pictures of the holding panel, on one scale along the line: the gap, and what pulls and presses.
#pragma once

#include <memory>

#include "app/look/shown.hpp"
#include "app/panels/along_plot.hpp"

namespace fayline::app {

// Both want a piece with a plan; what is not worked out yet is left out of them.
struct HoldingPictures {
    AlongPlot::Picture gap;  // with the limit and the trim lines
    AlongPlot::Picture
        pull;  // a stem for each station, its strength as a tick; the pressure thin, on a scale of its own
};
HoldingPictures holdingPictures(const std::shared_ptr<const Shown>& shown);

}  // namespace fayline::app
