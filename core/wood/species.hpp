// The woods: published mean values of small clear specimens at 12 % moisture, each with its source and mark.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/boat/boat.hpp"
#include "core/measure/source.hpp"

namespace fayline::wood {

struct Species {
    std::string id;
    std::string name;
    bool hardwood = true;
    bool southernPine = false;    // bends like a hardwood in the published limits
    measure::Cited sg;            // specific gravity as its source states it
    measure::Cited mor_Pa;        // modulus of rupture
    measure::Cited moe_Pa;        // as tabulated: centre-loaded beam, span 14 depths; not yet raised for shear
    std::optional<measure::Cited> compressionAlong_Pa;
    std::optional<measure::Cited> compressionAcross_Pa;
    std::optional<measure::Cited> shear_Pa;
    std::optional<measure::Cited> shrinkRadial;      // share, green to ovendry
    std::optional<measure::Cited> shrinkTangential;
    std::optional<double> greenMor_Pa;  // where the source gives them, for the moisture correction
    double moistureOfIntersection = 0.25;  // M_p: above it moisture no longer matters
    std::string warning;  // what a user should know of this row; empty: nothing
    bool own = false;     // the user's own
};

// The woods of resources/species.json, built into the program, in the order of the file.
const std::vector<Species>& builtInSpecies();

// The woods in the text of a species file (the format of resources/species.json). Throws InputError with a path.
std::vector<Species> readSpecies(std::string_view text);

// A wood of the user's own file; its source is what the user wrote there, or "the user's own value".
Species ownSpecies(const boat::OwnSpecies& own);

// The wood with this id: one of `own` before one of `builtIn`; nullptr if there is none.
const Species* findSpecies(const std::vector<Species>& species, std::string_view id);

}  // namespace fayline::wood
