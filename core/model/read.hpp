// Which coordinate of a point was read from a scale; the other is a line of the grid (station, waterline) and exact.
#pragma once

namespace fayline::model {

enum class Read { both, x, y };

}  // namespace fayline::model
