// The woods: published mean values of small clear specimens at 12 % moisture, each with its source and mark.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "core/model/boat.hpp"
#include "core/units/source.hpp"

namespace fayline::wood {

struct Species {
    std::string id;
    std::string name;
    std::string botanical;  // empty for the user's own
    bool hardwood = true;
    bool southernPine = false;  // bends like a hardwood in the published limits
    // Specific gravity as its source states it: on the volume at 12 %, on green volume for imported woods (their
    // `warning` says so). From a density at 12 % it is density / 1120 kg/m3 by Wood Handbook eq. 4-12 (D).
    units::Cited sg;
    units::Cited mor_Pa;  // modulus of rupture
    units::Cited moe_Pa;  // as tabulated: centre-loaded beam, span 14 depths; not yet raised for shear
    std::optional<units::Cited> compressionAlong_Pa;
    std::optional<units::Cited> compressionAcross_Pa;
    std::optional<units::Cited> tensionAcross_Pa;
    std::optional<units::Cited> shear_Pa;
    std::optional<units::Cited> shrinkRadial;  // share, green to ovendry
    std::optional<units::Cited> shrinkTangential;
    std::optional<units::Cited> greenMor_Pa;  // where the source gives it, for the moisture correction
    // M_p as a fraction of the dry mass: above it moisture no longer matters. Where the file says nothing: 0.25, that
    // of all woods which Wood Handbook Table 5-13 (M) does not name.
    units::Cited moistureOfIntersection{0.25,
                                        {"Wood Handbook Table 5-13, woods not named there", units::Mark::fromMemory}};
    std::string warning;  // what a user should know of this row; empty: nothing
    bool own = false;     // the user's own
};

// The woods of resources/species.json, built into the program, in the order of the file.
const std::vector<Species>& builtInSpecies();

// The woods in the text of a species file (the format of resources/species.json), in its order. Each value is an
// object of value, mark and source (a key of the file's own "sources"), with a note where there is more to say; its
// key ends in the unit its source prints. Throws InputError with a path ("species[3].mor_psi.mark") for text that is
// not JSON, an unknown, doubled or missing key, a value that is not a number above 0, two woods with one id.
std::vector<Species> readSpecies(std::string_view text);

// A wood of the user's own file; the source of every value is what the user wrote there, marked as from memory since
// nobody here has read it; without one "the user's own value", marked as common practice: no source.
Species ownSpecies(const model::OwnSpecies& own);

// The wood with this id: one of `own` before one of `builtIn`; nullptr if there is none.
const Species* findSpecies(const std::vector<Species>& species, std::string_view id);

}  // namespace fayline::wood
