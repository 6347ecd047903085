#include "core/laminate/checks.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/nearest_ids.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::laminate {

namespace {

using units::InputError;

std::string element(const std::string& list, std::size_t index) {
    return list + "[" + std::to_string(index) + "].";
}

std::string shown(double value) {
    return std::isfinite(value) ? units::writeNumber(value, 6) : std::string("that which is no number");
}

void needAboveZero(const std::string& path, double length_m, const std::string& what) {
    if (std::isfinite(length_m) && length_m > 0) return;
    throw InputError(path, shown(units::toMillimetres(length_m)) + " is not a " + what, "give a number above 0");
}

// A thickness of a strip.
void needThickness(const std::string& path, double thickness_m) {
    needAboveZero(path, thickness_m, "thickness");
    if (thickness_m <= mostThickness_m) return;
    throw InputError(path, shown(units::toMillimetres(thickness_m)) + " is not the thickness of a strip",
                     "give a number above 0, " + shown(units::toMillimetres(mostThickness_m)) + " at most");
}

void needNotBelowZero(const std::string& path, double value, double shownValue, const std::string& what) {
    if (std::isfinite(value) && value >= 0) return;
    throw InputError(path, shown(shownValue) + " is not " + what, "give 0 or more");
}

void checkStrips(const model::Strips& strips, const std::string& at) {
    if (strips.count < 1) {
        throw InputError(at + "count", std::to_string(strips.count) + " is not a number of strips", "give 1 or more");
    }
    needThickness(at + "thickness_mm", strips.thickness_m);
    if (strips.tapersTo_m) needThickness(at + "tapers_to_mm", *strips.tapersTo_m);
    if (strips.moe_Pa && !(std::isfinite(*strips.moe_Pa) && *strips.moe_Pa > 0)) {
        throw InputError(at + "moe_MPa", shown(*strips.moe_Pa / 1e6) + " is not a modulus", "give a number above 0");
    }
    if (strips.breaksAt && !(std::isfinite(*strips.breaksAt) && *strips.breaksAt > 0)) {
        throw InputError(at + "breaks_at_pct", shown(100 * *strips.breaksAt) + " is not a strain at breaking",
                         "give a number above 0");
    }
    if (!strips.bentBefore) return;
    const double set = strips.bentBefore->set;
    if (!(set >= 0 && set <= 1)) {
        throw InputError(at + "bent_before.set_pct", shown(100 * set) + " is not a share of the curve",
                         "give 0 to 100");
    }
}

void checkOverRun(const std::string& path, double runsPast_m) {
    if (std::isfinite(runsPast_m) && runsPast_m >= 0 && runsPast_m <= mostOverRun_m) return;
    throw InputError(path, shown(units::toMillimetres(runsPast_m)) + " is not an extra length",
                     "give 0 to " + units::writeNumber(units::toMillimetres(mostOverRun_m), 6));
}

void checkScarf(const std::string& path, const std::optional<model::Scarf>& scarf) {
    if (!scarf || (std::isfinite(scarf->slope) && scarf->slope > 0)) return;
    throw InputError(path + ".slope", shown(scarf->slope) + " is not a slope", "give a number above 0, such as 10");
}

}  // namespace

void checkStack(const model::Stack& stack) {
    if (stack.strips.empty()) throw InputError("stack.strips", "there are no strips", "give at least one strip");
    int count = 0;
    double depth_m = 0;
    for (std::size_t i = 0; i < stack.strips.size(); ++i) {
        const std::string at = element("stack.strips", i);
        checkStrips(stack.strips[i], at);
        if (stack.strips[i].count > mostStrips || (count += stack.strips[i].count) > mostStrips) {
            throw InputError(at + "count", "that makes more than " + std::to_string(mostStrips) + " strips",
                             "give " + std::to_string(mostStrips) + " strips in all at most");
        }
        const model::Strips& strips = stack.strips[i];
        depth_m += strips.count * std::max(strips.thickness_m, strips.tapersTo_m.value_or(0));
        if (depth_m > mostDepth_m) {
            throw InputError(
                at + "thickness_mm",
                shown(units::toMillimetres(strips.thickness_m)) + " makes the stack deeper than " +
                    shown(units::toMillimetres(mostDepth_m)),
                "give strips that are " + shown(units::toMillimetres(mostDepth_m)) + " deep in all at most");
        }
    }
    if (stack.widths.empty()) throw InputError("stack.widths", "there is no width", "give at least one width");
    for (std::size_t i = 0; i < stack.widths.size(); ++i) {
        const std::string at = element("stack.widths", i);
        if (!std::isfinite(stack.widths[i].at_m)) throw InputError(at + "at_mm", "that is no number", "give a number");
        needAboveZero(at + "width_mm", stack.widths[i].width_m, "width");
    }
    for (std::size_t i = 0; i < stack.pins.size(); ++i) {
        if (std::isfinite(stack.pins[i].at_m)) continue;
        throw InputError(element("stack.pins", i) + "at_mm", "that is no number", "give a number");
    }
    const auto mm = [](double m) { return units::toMillimetres(m); };
    needNotBelowZero("stack.glue_line_mm", stack.glueLine_m, mm(stack.glueLine_m), "a thickness of glue");
    if (stack.glueLine_m > mostGlueLine_m) {
        throw InputError("stack.glue_line_mm", shown(mm(stack.glueLine_m)) + " is not a thickness of glue",
                         "give 0 to " + shown(mm(mostGlueLine_m)));
    }
    needNotBelowZero("stack.rip_allowance_mm", stack.ripAllowance_m, mm(stack.ripAllowance_m), "an allowance");
    needNotBelowZero("stack.moisture_pct", stack.moisture, 100 * stack.moisture, "a moisture");
    needNotBelowZero("stack.grain_slope", stack.grainSlope, stack.grainSlope, "a slope of grain");
    checkOverRun("stack.runs_past_start_mm", stack.runsPastStart_m);
    checkOverRun("stack.runs_past_end_mm", stack.runsPastEnd_m);
    checkScarf("stack.scarfed_start", stack.scarfedStart);
    checkScarf("stack.scarfed_end", stack.scarfedEnd);
}

const wood::Species& woodNamed(const std::string& id, const std::string& path,
                               const std::vector<wood::Species>& species) {
    if (const wood::Species* found = wood::findSpecies(species, id)) return *found;
    std::string near;
    for (const std::string& nearId : nearestIds(id, species, 3)) near += nearId + ", ";
    throw InputError(path, "there is no wood called '" + id + "'",
                     "give " + near + "or one of the boat file's own species");
}

std::vector<const wood::Species*> woodsOf(const model::Stack& stack, const std::vector<wood::Species>& species) {
    std::vector<const wood::Species*> woods;
    for (std::size_t i = 0; i < stack.strips.size(); ++i) {
        woods.push_back(&woodNamed(stack.strips[i].species, element("stack.strips", i) + "species", species));
    }
    return woods;
}

}  // namespace fayline::laminate
