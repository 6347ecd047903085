// Reading resources/species.json.
#include <array>
#include <cmath>
#include <set>

#include "core/io/resource_file.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"
#include "core/wood/species.hpp"

namespace fayline::wood {

extern const char* const builtInSpeciesText;

namespace {

using Json = io::ResourceFile::Json;
using units::Cited;
using units::InputError;

constexpr double megapascal_Pa = 1e6;
// Mass of a cubic metre of wood at 12 % moisture over its specific gravity on the volume at 12 %:
// 1000 kg/m3 (1 + 0.12), Wood Handbook eq. 4-12 (P*).
constexpr double densityOverSg_kg_m3 = 1120;

// A way of writing a value: the key with its unit, and what one of that unit is in SI.
struct Key {
    const char* name;
    double toSi;
};

constexpr std::array<Key, 1> sgKeys{{{"sg", 1}}};
constexpr std::array<Key, 1> densityKeys{{{"density_kg_m3", 1}}};
constexpr std::array<Key, 2> morKeys{{{"mor_psi", units::psi_Pa}, {"mor_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> greenMorKeys{{{"green_mor_psi", units::psi_Pa}, {"green_mor_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> moeKeys{{{"moe_Mpsi", 1e6 * units::psi_Pa}, {"moe_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> alongKeys{
    {{"compression_along_psi", units::psi_Pa}, {"compression_along_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> acrossKeys{
    {{"compression_across_psi", units::psi_Pa}, {"compression_across_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> tensionAcrossKeys{
    {{"tension_across_psi", units::psi_Pa}, {"tension_across_MPa", megapascal_Pa}}};
constexpr std::array<Key, 2> shearKeys{{{"shear_psi", units::psi_Pa}, {"shear_MPa", megapascal_Pa}}};
constexpr std::array<Key, 1> radialKeys{{{"shrink_radial_pct", 0.01}}};
constexpr std::array<Key, 1> tangentialKeys{{{"shrink_tangential_pct", 0.01}}};
constexpr std::array<Key, 1> intersectionKeys{{{"moisture_of_intersection_pct", 0.01}}};

// The woods of one file with the sources its values refer to.
class FileReader {
public:
    explicit FileReader(std::string_view text) : file_(text, "a species file") {}

    std::vector<Species> readAll() {
        const Json& list = file_.listAt("species", "woods");
        std::vector<Species> all;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const std::string path = "species[" + std::to_string(i) + "]";
            Species one = read(list[i], path);
            if (findSpecies(all, one.id)) {
                throw InputError(path + ".id", "\"" + one.id + "\" stands twice", "give each wood an id of its own");
            }
            all.push_back(std::move(one));
        }
        return all;
    }

private:
    Species read(const Json& object, const std::string& path) const {
        if (!object.is_object()) throw InputError(path, object.dump() + " is not a wood", "give an object");
        refuseUnknownKeys(object, knownKeys(), path);
        Species one{.id = textAt(object, "id", path),
                    .name = textAt(object, "name", path),
                    .botanical = textAt(object, "botanical", path),
                    .hardwood = truthAt(object, "hardwood", true, path),
                    .southernPine = truthAt(object, "southern_pine", false, path),
                    .sg = sgOf(object, path),
                    .mor_Pa = required(object, morKeys, path),
                    .moe_Pa = required(object, moeKeys, path),
                    .compressionAlong_Pa = given(object, alongKeys, path),
                    .compressionAcross_Pa = given(object, acrossKeys, path),
                    .tensionAcross_Pa = given(object, tensionAcrossKeys, path),
                    .shear_Pa = given(object, shearKeys, path),
                    .shrinkRadial = given(object, radialKeys, path),
                    .shrinkTangential = given(object, tangentialKeys, path),
                    .greenMor_Pa = given(object, greenMorKeys, path)};
        if (const auto intersection = given(object, intersectionKeys, path)) {
            // The moisture formula divides by the way from 12 % to it.
            if (intersection->value <= 0.12) {
                throw InputError(path + "." + intersectionKeys[0].name, "is not above 12",
                                 "give a moisture above 12 %");
            }
            one.moistureOfIntersection = *intersection;
        }
        if (object.contains("warning")) one.warning = textAt(object, "warning", path);
        return one;
    }

    static const std::set<std::string>& knownKeys() {
        static const std::set<std::string> keys = [] {
            std::set<std::string> all{"id", "name", "botanical", "hardwood", "southern_pine", "warning"};
            const auto add = [&all](const auto& ways) {
                for (const Key& key : ways) all.insert(key.name);
            };
            add(sgKeys), add(densityKeys), add(morKeys), add(greenMorKeys), add(moeKeys), add(alongKeys);
            add(acrossKeys), add(tensionAcrossKeys), add(shearKeys), add(radialKeys), add(tangentialKeys),
                add(intersectionKeys);
            return all;
        }();
        return keys;
    }

    Cited sgOf(const Json& object, const std::string& path) const {
        const auto density = given(object, densityKeys, path);
        if (!density) return required(object, sgKeys, path);
        if (object.contains("sg")) throw InputError(path + ".density_kg_m3", "stands beside sg", "give one of the two");
        const std::string from = "density at 12 % over 1120 kg/m3 by Wood Handbook eq. 4-12; density: ";
        return {
            density->value / densityOverSg_kg_m3,
            {from + density->source.text + " (" + units::markText(density->source.mark) + ")", units::Mark::derived}};
    }

    template <std::size_t ways>
    Cited required(const Json& object, const std::array<Key, ways>& keys, const std::string& path) const {
        if (const auto value = given(object, keys, path)) return *value;
        throw InputError(path + "." + keys[0].name, "is missing", "give a value with mark and source");
    }

    template <std::size_t ways>
    std::optional<Cited> given(const Json& object, const std::array<Key, ways>& keys, const std::string& path) const {
        std::optional<Cited> value;
        for (const Key& key : keys) {
            const auto found = object.find(key.name);
            if (found == object.end()) continue;
            const std::string full = path + "." + key.name;
            if (value) throw InputError(full, "stands twice in different units", "give it in one");
            value = cited(*found, key.toSi, full);
        }
        return value;
    }

    Cited cited(const Json& object, double toSi, const std::string& path) const {
        const units::Source source = file_.sourceOf(object, path);
        const auto value = object.find("value");
        const bool isNumber = value != object.end() && value->is_number();
        if (!isNumber || !std::isfinite(value->get<double>()) || value->get<double>() <= 0) {
            throw InputError(path + ".value", value == object.end() ? "is missing" : value->dump() + " will not do",
                             "give a number above 0");
        }
        return {value->get<double>() * toSi, source};
    }

    static constexpr auto textAt = &io::ResourceFile::textAt;
    static constexpr auto truthAt = &io::ResourceFile::truthAt;
    static constexpr auto refuseUnknownKeys = &io::ResourceFile::refuseUnknownKeys;

    const io::ResourceFile file_;
};

}  // namespace

std::vector<Species> readSpecies(std::string_view text) {
    return FileReader(text).readAll();
}

const std::vector<Species>& builtInSpecies() {
    static const std::vector<Species> species = readSpecies(builtInSpeciesText);
    return species;
}

}  // namespace fayline::wood
