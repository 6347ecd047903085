// Reading resources/adhesives.json.
#include <cmath>

#include "core/glue/adhesive.hpp"
#include "core/glue/ratio.hpp"
#include "core/io/resource_file.hpp"
#include "core/units/input_error.hpp"

namespace fayline::glue {

extern const char* const builtInAdhesivesText;

namespace {

using io::ResourceFile;
using units::InputError;
using Json = ResourceFile::Json;

constexpr double minute_s = 60;
constexpr double hour_s = 3600;
constexpr double gram_kg = 1e-3;

class FileReader {
public:
    explicit FileReader(std::string_view text) : file_(text, "an adhesive file") {}

    std::vector<Adhesive> readAll() const {
        const Json& list = file_.listAt("adhesives", "glues");
        std::vector<Adhesive> all;
        for (std::size_t i = 0; i < list.size(); ++i) {
            const std::string path = "adhesives[" + std::to_string(i) + "]";
            for (Adhesive& one : readRange(list[i], path)) {
                if (findAdhesive(all, one.id)) {
                    throw InputError(path + ".id", "\"" + one.id + "\" stands twice",
                                     "give each glue an id of its own");
                }
                all.push_back(std::move(one));
            }
        }
        return all;
    }

private:
    // One glue; or where there are mixes and speeds, one of each mix with each speed.
    std::vector<Adhesive> readRange(const Json& object, const std::string& path) const {
        if (!object.is_object()) throw InputError(path, object.dump() + " is not a glue", "give an object");
        if (!object.contains("mixes") && !object.contains("speeds")) return {read(object, path)};
        Json common = object;
        for (const char* key : {"mixes", "speeds"}) {
            if (!object.contains(key) || !object[key].is_array()) {
                throw InputError(path + "." + key, "is not a list", "give mixes and speeds, each a list of objects");
            }
            common.erase(key);
        }
        const std::string family = ResourceFile::textAt(object, "name", path);
        std::vector<Adhesive> all;
        for (const Json& mix : object["mixes"]) {
            for (const Json& speed : object["speeds"]) {
                Json whole = common;
                whole.update(mix);
                whole.update(speed);
                const std::string mixName = ResourceFile::textAt(mix, "name", path + ".mixes");
                const std::string speedName = ResourceFile::textAt(speed, "name", path + ".speeds");
                whole["id"] = ResourceFile::textAt(object, "id", path) + "_" +
                              ResourceFile::textAt(mix, "id", path + ".mixes") + "_" +
                              ResourceFile::textAt(speed, "id", path + ".speeds");
                whole["name"] = family + " " + mixName + " (" + speedName + ")";
                Adhesive& one = all.emplace_back(read(whole, path));
                one.family = family;
                one.mix = mixName;
                one.speed = speedName;
            }
        }
        return all;
    }

    Adhesive read(const Json& object, const std::string& path) const {
        ResourceFile::refuseUnknownKeys(
            object,
            {"id", "name", "kind", "parts_by_volume", "parts_by_weight", "density_kg_m3", "pot_life_min",
             "pot_life_at_C", "pot_life_mass_g", "open_time_min", "open_time_at_C", "least_C", "handling_h",
             "full_cure_h", "cure_at_C", "spread_g_m2", "warning"},
            path);
        Adhesive one;
        one.id = ResourceFile::textAt(object, "id", path);
        one.name = one.family = ResourceFile::textAt(object, "name", path);
        one.kind = kindOf(object, path);
        one.warning = ResourceFile::textAt(object, "warning", path);
        one.partsByVolume = pairOf(object, "parts_by_volume", path, one.ratioSource);
        one.partsByWeight = pairOf(object, "parts_by_weight", path, one.ratioSource);
        one.density_kg_m3 = pairOf(object, "density_kg_m3", path, one.densitySource);
        one.potLives.push_back({minute_s * cited(object, "pot_life_min", path, one.potLifeSource),
                                plain(object, "pot_life_at_C", path),
                                gram_kg * above0(object, "pot_life_mass_g", path)});
        one.openTime_s = minute_s * cited(object, "open_time_min", path, one.openTimeSource);
        one.openTimeAt_C = plain(object, "open_time_at_C", path);
        one.least_C = cited(object, "least_C", path, one.leastSource);
        one.handling_s = hour_s * cited(object, "handling_h", path, one.cureSource);
        units::Source fullSource;
        one.fullCure_s = hour_s * cited(object, "full_cure_h", path, fullSource);
        one.cureAt_C = plain(object, "cure_at_C", path);
        one.spread_kg_m2 = gram_kg * cited(object, "spread_g_m2", path, one.spreadSource);
        checkRatios(one, path);
        return one;
    }

    static model::AdhesiveKind kindOf(const Json& object, const std::string& path) {
        const std::string& word = ResourceFile::textAt(object, "kind", path);
        if (word == "epoxy") return model::AdhesiveKind::epoxy;
        if (word == "resorcinol") return model::AdhesiveKind::resorcinol;
        if (word == "urea") return model::AdhesiveKind::urea;
        if (word == "polyurethane") return model::AdhesiveKind::polyurethane;
        throw InputError(path + ".kind", "\"" + word + "\" is not a kind of glue",
                         "give epoxy, resorcinol, urea or polyurethane");
    }

    static double plain(const Json& object, const char* key, const std::string& path) {
        const auto found = object.find(key);
        if (found == object.end() || !found->is_number() || !std::isfinite(found->get<double>())) {
            throw InputError(path + "." + key, found == object.end() ? "is missing" : found->dump() + " will not do",
                             "give a number");
        }
        return found->get<double>();
    }

    static double above0(const Json& object, const char* key, const std::string& path) {
        const double value = plain(object, key, path);
        if (!(value > 0)) throw InputError(path + "." + key, "is not above 0", "give a number above 0");
        return value;
    }

    const Json& valueOf(const Json& object, const char* key, const std::string& path, units::Source& source) const {
        const auto found = object.find(key);
        if (found == object.end()) {
            throw InputError(path + "." + key, "is missing", "give a value with mark and source");
        }
        source = file_.sourceOf(*found, path + "." + key, {"range"});
        if (const auto range = found->find("range"); range != found->end() && range->is_array() && range->size() == 2) {
            source.text += "; between " + (*range)[0].dump() + " and " + (*range)[1].dump() + " by maker";
        }
        return *found;
    }

    double cited(const Json& object, const char* key, const std::string& path, units::Source& source) const {
        return above0(valueOf(object, key, path, source), "value", path + "." + key);
    }

    std::array<double, 2> pairOf(const Json& object, const char* key, const std::string& path,
                                 units::Source& source) const {
        const Json& value = valueOf(object, key, path, source);
        const auto pair = value.find("value");
        const bool good = pair != value.end() && pair->is_array() && pair->size() == 2 && (*pair)[0].is_number() &&
                          (*pair)[1].is_number();
        if (!good) throw InputError(path + "." + key + ".value", "is not a pair", "give two numbers, as [2, 1]");
        return {(*pair)[0].get<double>(), (*pair)[1].get<double>()};
    }

    ResourceFile file_;
};

}  // namespace

std::vector<Adhesive> readAdhesives(std::string_view text) {
    return FileReader(text).readAll();
}

const std::vector<Adhesive>& builtInAdhesives() {
    static const std::vector<Adhesive> adhesives = readAdhesives(builtInAdhesivesText);
    return adhesives;
}

}  // namespace fayline::glue
