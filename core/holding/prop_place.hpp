// Where props and jacks stand, and how squarely each pushes, before any force is known.
#pragma once

#include <numbers>
#include <vector>

#include "core/line/line.hpp"
#include "core/model/boat.hpp"

namespace fayline::holding {

// Whether a station is a prop or a jack that presses the stack toward the form.
bool isProp(const model::Station& station);

struct PropPlace {
    int index = 0;             // in `stations`
    int number = 1;            // of the station along the line
    line::Xy head;             // where it bears: on the outside of the stack, or of the caul on it
    line::Xy outward;          // of length 1, square to the stack there, away from the form
    line::Xy foot;             // on the floor, or overhead
    bool footAssumed = false;  // some of it was not given
    double length_m = 0;       // between the two
    double slant_rad = 0;      // between the prop, from foot to head, and square into the stack; 0..pi
    double footSlant_rad = 0;  // between the prop and the upright; more than a right angle where it hangs from its foot
    double squareShare = 0;    // of its thrust that comes to the form: cos(slant), 0 beyond `steepest_rad`
    double level_m = 0;        // y of the floor (or of what is overhead): the foot's, or where it would stand if not
                               // given or on the wrong side of its head
    bool footAboveHead = false;  // it would pull: to the floor with its foot not below its head (overhead: not above)
};

// Beyond this slant a prop is taken not to press the stack at all: its thrust would be 57 times the pull. Ours.
inline constexpr double steepest_rad = 89 * std::numbers::pi / 180;

// The props and jacks of `stations`, ordered along the line; lengths in metres.
//
// A foot without foot_x stands straight below its head (overhead: straight above). Without foot_y it stands on the
// lowest foot that is given, if that lies below its head; else 600 mm below the lowest head of all props to the floor.
// Overhead likewise: the highest foot given, else 600 mm above the highest head. Throws InputError as stationPlaces
// does.
std::vector<PropPlace> propPlaces(const model::Piece& piece, const line::Line& line,
                                  const std::vector<model::Station>& stations);

// Share of its strength that each of `stations` can bring square to the form: squareShare of props and jacks, 1 of all
// others.
std::vector<double> sharesSquare(const model::Piece& piece, const line::Line& line,
                                 const std::vector<model::Station>& stations);

}  // namespace fayline::holding
