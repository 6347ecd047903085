// A stack of strips bent loose round an arc, glued and let go, worked out by finite elements: CalculiX (Debian's
// calculix-ccx), a general program for solids. Nothing of the project's own formulas takes part.
#pragma once

#include <string>
#include <vector>

namespace fayline::general {

struct ArcStrip {
    double thickness_m = 0;
    double modulus_Pa = 0;  // along the grain
};

struct GluedArc {
    std::vector<ArcStrip> strips;  // from the form outwards, without glue lines
    double formRadius_m = 1;       // of the face on the form; the stack lies outside
    double turn_rad = 1;
    double width_m = 0.04;
    int along = 40;  // elements
};

// Fall of the curvature when the glued stack is let go, 1/m, between a quarter and three quarters of the turn, from the
// turn of the sections there. Signed as the curvature on the form: > 0 opens.
//
// Solid elements of 20 nodes, one through each strip, each strip with nodes of its own that equations tie to its
// neighbour's. Wood is elastic and differs along and across the grain, which follows the arc: E across E / 12, shear
// modulus E / 16. Bending while loose comes in as the strain that each strip would have to have to be free of stress: a
// temperature that runs evenly through its thickness from t / 2R inside to -t / 2R outside, R its own middle's radius,
// with an expansion along the grain of 1.
// Writes into `folder` and runs `ccx` there, at most `seconds` long. Throws std::runtime_error when ccx is missing,
// fails or tells nothing.
double curvatureLetGo(const GluedArc& arc, const std::string& folder, int seconds = 120);

}  // namespace fayline::general
