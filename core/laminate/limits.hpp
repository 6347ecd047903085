// Limits on bending strips, each with the source it comes from.
#pragma once

#include <optional>
#include <vector>

#include "core/laminate/stack.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"
#include "core/wood/species.hpp"

namespace fayline::laminate {

// Least radius over thickness for curved glued timber, of hardwoods and southern pine, and of other softwoods.
// Source: NDS 5.3.8 and the Wood Handbook's chapter on glued timber (M).
inline constexpr double leastRatioHardwood = 100;
inline constexpr double leastRatioSoftwood = 125;
double leastRatio(const wood::Species& species);
units::Source leastRatioSource();

// Bending strength of a curved glued member over that of a straight one, from radius over thickness of a strip:
// 1 - 2000 (t/R)^2; falls below 0 at a ratio under 44.7, where the rule says nothing any more.
// Source: NDS (P*). Measured strength falls less than that (Woodson and Wangaard 1969, P).
double curvatureFactor(double radiusOverThickness);
units::Source curvatureFactorSource();

// The same by Eurocode 5, from the radius of the innermost strip's inner face over thickness: 1 from 240 on, else 0.76
// + 0.001 of the ratio. Source: EN 1995-1-1, 6.4.3, eq. 6.49 (M).
double bendingFactorEurocode(double innerRadiusOverThickness);
units::Source bendingFactorEurocodeSource();

// What rules of classification for laminated frames and stems usually ask: no strip thicker than this share of the
// moulding, scarfs no steeper than 1 in this.
// Source: general reading of such rules (M); no clause is quoted.
inline constexpr double mostOfMoulding = 1.0 / 3;
inline constexpr double steepestScarf = 8;
units::Source classificationSource();

// The factor below which it is worth telling: a twentieth, a third of the scatter of bending strength. Our choice.
inline constexpr double curvatureFactorReported = 0.95;

// Thickest strip for the smallest radius of any strip, metres: (radius / 250) (1 + f / 80 MPa), with f the declared
// characteristic bending strength of finger joints. Strips here are seldom finger-jointed, so f is an assumption: a
// usual middle value.
// Source: EN 14080:2013 (M); 30 MPa is an assumption (C).
inline constexpr double fingerJointStrength_Pa = 30e6;
double thickestLamination(double radius_m, double fingerJoint_Pa = fingerJointStrength_Pa);
units::Source laminationSource();

// Share of the strips that may be expected to break before the thickness itself is wrong. Our choice.
inline constexpr double mostExpectedToBreak = 1.0 / 3;

// Sliding between innermost and outermost strip that pins let pass, metres: a hole drilled a quarter of a millimetre
// over its pin, twice. Common practice, no source.
inline constexpr double pinsLetPass_m = 0.0005;

// What is known of a stack's geometry when its limits are looked at.
struct RoomFound {
    std::optional<double> noRoomAt_m;  // tightest place where a face of the stack has no room
    double leastStretch = 1;           // 1 + d k there, or the least of all places
    std::optional<double> crossesAt_m;
    double crossesAgainAt_m = 0;
};

// Every limit that was looked at: of each group of strips the one worst off, then those of the whole stack. Where there
// is no room for the stack, limits that go by its radii are left out.
std::vector<LimitMet> limitsOf(const model::Stack& stack, const std::vector<const wood::Species*>& woods,
                               const StackPlan& plan, const RoomFound& fit);

}  // namespace fayline::laminate
