// What presses the glue out: the mean pressure at which a paste stops flowing between two faces, and how far a pad's
// pull reaches through the wood above.
//
// How far apart pads may stand. A wanted glue line asks for a pull per length q. Between two pads the paste pushes back
// with q on the loose strips above the outermost glue line that stays: these are a beam on the pads, and the paste lets
// it rise between them. By symmetry each of many even spans is level over its pads, so it is a beam built in at both
// ends, and in the middle it stands
//     dh = q s^4 / (384 EI)     (derived from beam theory, D)
// higher than at the pads: so much thicker is the glue line there. EI is the sum of E b t^3 / 12 of those strips, each
// for itself, since they still slide, and of the caul. With dh as much as the line may vary,
//     s = (384 EI dh / q)^(1/4)
// and each pad must pull q s besides, so the spacing is also no more than most / q. A pad presses at least what lies
// under 45 degrees below it (common practice, no source): where that is more than s it stands for s. The outermost glue
// line is the worst: every other has more strips above it.
// What this leaves out: the pull that bends the stack to its form (it takes some of the clamp's strength), the length
// of the pads (the span is reckoned from middle to middle; of pads a sixth of the spacing long the line varies by a
// tenth less, of pads longer than a fifth by up to a fifth), that the paste pushes back less where its film is thicker
// (the line varies less for it), shear in the strips and crush under the pads, the bow across the width, the last spans
// at the two ends, and time: a paste flows until it stops. A caul counts as one long caul of the outermost strip's
// wood, as wide as the strips and sawn to the curve; short blocks under each pad only spread it.
//   (1) against the contact itself, ten stacks: the line varies as this says (tests/core/holding/pressed_out_test.cpp)
//
// Every function answers with finite numbers or infinity for any finite input; what cannot be (a film without
// thickness under a paste that yields) is infinite, a length or pressure below 0 counts as 0.
#pragma once

#include "core/line/line.hpp"
#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::holding {

struct StackOnForm;  // held.hpp
struct LooseStack;   // loose_stack.hpp

// Mean pressure at which a paste of this yield stress stops flowing out between faces of `width_m` at a film of
// `film_m`, Pa: yield width / (2 film). It is highest midway, twice the mean, and falls evenly to nothing at the edges.
// 0 for a liquid without yield; infinity for a paste at no film. Source: paste between plates (D).
double pressureForFilm(double yield_Pa, double width_m, double film_m);

// Length of glue line that lies under 45 degrees below a pad, through the wood and caul above it (C), metres.
double spreadLength(double pad_m, double above_m);

// Spacing of pads at which a beam of `stiffness_N_m2` under `push_N_m` stands `rise_m` higher midway than at the pads,
// level over each: (384 EI dh / q)^(1/4), metres (D, above). 0 without stiffness or rise; infinity without push.
double spanForRise(double stiffness_N_m2, double push_N_m, double rise_m);

// Pressure that a kind of glue wants by itself, however thin it is spread: from `least_Pa` to `most_Pa`.
struct WantedPressure {
    double least_Pa = 0;
    double most_Pa = 0;
    bool contactIsEnough = false;  // of epoxy: it fills gaps; the pressures given only say what is usual
    units::Source source;

    double asked_Pa() const { return contactIsEnough ? 0 : least_Pa; }
};
// Resorcinol 125..150 psi for softwood, 150..200 for hardwood; urea the same; polyurethane 100..200; epoxy 5..25.
WantedPressure wantedPressure(model::AdhesiveKind kind, bool hardwood);

// How far one pad presses the outermost glue line that stays.
struct PadReach {
    double pad_m = 0;
    double most_N = 0;           // that it pulls
    double push_N_m = 0;         // q; 0: nothing is asked
    double varies_m = 0;         // dh
    double strips_m = 0;         // wood above that glue line
    double strips_N_m2 = 0;      // its stiffness, strip by strip
    double caulModulus_N_m = 0;  // of a caul: modulus times width
    double caul_m = 0;           // its thickness

    double stiffness_N_m2() const { return strips_N_m2 + caulModulus_N_m * caul_m * caul_m * caul_m / 12; }
    double above_m() const { return strips_m + caul_m; }
    double spread_m() const { return spreadLength(pad_m, above_m()); }                   // by 45 degrees
    double span_m() const { return spanForRise(stiffness_N_m2(), push_N_m, varies_m); }  // by stiffness
    double byStrength_m() const;                                                         // most_N / q
    // Largest between pads so that every place is pressed; infinity where nothing is asked.
    double spacing_m() const;
};

enum class SpacedBy { stiffness, spread, strength };

// What the wanted glue line (stack.glue_line_mm) asks of the stations at one place.
struct PressingNeed {
    double pressure_Pa = 0;  // mean, over the width as bent
    PadReach pad;
    double spacing_m = 0;  // of pads, from middle to middle: pad.spacing_m()
    SpacedBy by = SpacedBy::stiffness;
    double thinnerSpacing_m = 0;  // the same with a mix of half the yield stress, for the same glue line
    bool isWish = false;          // the glue fills gaps: contact is enough
    bool byGlue = false;          // the glue's own least pressure governs, else the paste's yield
    units::Source source;
};

// At `at_m`, under pads `pad_m` long that pull at most `most_N`. The outermost glue line lies under the outermost strip
// that is there and not planed away; of a single strip it is that to the boat. The line may vary by
// holding.glue_line_varies_mm, else by its own thickness.
//
// A pressure that the glue wants in any case (work.wanted, unless contact is enough) counts where it is more than the
// paste's. A glue line of 0 says that none is wanted, so that only the former counts.
// `loose` is that of the piece (looseStack). Throws InputError as looseStack does.
PressingNeed pressingNeed(const StackOnForm& work, const LooseStack& loose, double at_m, double pad_m, double most_N);
PressingNeed pressingNeed(const StackOnForm& work, double at_m, double pad_m, double most_N);

}  // namespace fayline::holding
