// Forces, masses and stresses as they are typed, and written so that the same value is read again.
#pragma once

#include <string>
#include <string_view>

#include "core/units/display.hpp"

namespace fayline::units {

// The force written as `text`, newtons: "2500", "2500 N", "2.5 kN", "560 lbf", "560 lb", "250 kgf". A bare number is in
// the display's unit. A decimal comma is read like a point. Throws InputError with an empty path for anything else.
double readForce(std::string_view text, const Display& display);

// With its unit in the display's, to a tenth: "2500 N", "562 lbf", "255 kgf". Not finite: a dash.
//   (1) readForce(typedForce(x)) is within a twentieth of that unit of x
std::string typedForce(double force_N, const Display& display);

// The mass written as `text`, kilograms: "1200", "1200 kg", "1.2 t", "2600 lb", "800 g". A bare number is in kilograms,
// in pounds where small weights are read in ounces. Throws InputError with an empty path for anything else.
double readMass(std::string_view text, const Display& display);

// "1200 kg", "2646 lb": to a tenth, as readMass takes it back. Not finite: a dash.
std::string typedMass(double mass_kg, const Display& display);

// The stress or modulus written as `text`, pascals: "10000", "10 GPa", "10000 MPa", "1450000 psi". A bare number is in
// MPa, in psi where forces are read in pounds. Throws InputError with an empty path for anything else.
double readStress(std::string_view text, const Display& display);

// "10000 MPa", "1450377 psi": as readStress takes it back, to six figures. Not finite: a dash.
std::string typedStress(double stress_Pa, const Display& display);

// "12.5 degrees" as figures with the sign of degrees, to a tenth. Not finite: a dash.
std::string writeAngle(double angle_rad);

}  // namespace fayline::units
