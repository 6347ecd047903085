#include "core/wood/species.hpp"

namespace fayline::wood {

Species ownSpecies(const model::OwnSpecies& own) {
    const units::Source source = own.source.empty() ? units::Source{"the user's own value", units::Mark::commonPractice}
                                                    : units::Source{own.source, units::Mark::fromMemory};
    const auto cited = [&source](const std::optional<double>& value) -> std::optional<units::Cited> {
        if (!value) return std::nullopt;
        return units::Cited{*value, source};
    };
    return Species{.id = own.id,
                   .name = own.name.empty() ? own.id : own.name,
                   .hardwood = own.hardwood,
                   .sg = {own.sg, source},
                   .mor_Pa = {own.mor_Pa, source},
                   .moe_Pa = {own.moe_Pa, source},
                   .compressionAlong_Pa = cited(own.compressionAlong_Pa),
                   .compressionAcross_Pa = cited(own.compressionAcross_Pa),
                   .shear_Pa = cited(own.shear_Pa),
                   .shrinkRadial = cited(own.shrinkRadial),
                   .shrinkTangential = cited(own.shrinkTangential),
                   .own = true};
}

const Species* findSpecies(const std::vector<Species>& species, std::string_view id) {
    for (const Species& one : species) {
        if (one.id == id) return &one;
    }
    return nullptr;
}

}  // namespace fayline::wood
