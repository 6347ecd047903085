#include "core/wood/species.hpp"

namespace fayline::wood {

Species ownSpecies(const model::OwnSpecies& own) {
    const units::Source source = own.source.empty() ? units::Source{"the user's own value", units::Mark::commonPractice}
                                                    : units::Source{own.source, units::Mark::fromMemory};
    const auto cited = [&source](const std::optional<double>& value) -> std::optional<units::Cited> {
        if (!value) return std::nullopt;
        return units::Cited{*value, source};
    };
    Species species;
    species.id = own.id;
    species.name = own.name.empty() ? own.id : own.name;
    species.hardwood = own.hardwood;
    species.sg = {own.sg, source};
    species.mor_Pa = {own.mor_Pa, source};
    species.moe_Pa = {own.moe_Pa, source};
    species.compressionAlong_Pa = cited(own.compressionAlong_Pa);
    species.compressionAcross_Pa = cited(own.compressionAcross_Pa);
    species.shear_Pa = cited(own.shear_Pa);
    species.shrinkRadial = cited(own.shrinkRadial);
    species.shrinkTangential = cited(own.shrinkTangential);
    species.own = true;
    return species;
}

const Species* findSpecies(const std::vector<Species>& species, std::string_view id) {
    for (const Species& one : species) {
        if (one.id == id) return &one;
    }
    return nullptr;
}

}  // namespace fayline::wood
