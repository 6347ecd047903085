#include "core/units/force.hpp"

#include <cmath>

#include "core/units/figures.hpp"
#include "core/units/input_error.hpp"
#include "core/units/quantity.hpp"
#include "core/units/scale.hpp"
#include "core/units/units.hpp"

namespace fayline::units {

double readForce(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {{"n", 1},
                                          {"kn", 1000},
                                          {"lbf", poundForce_N},
                                          {"lb", poundForce_N},
                                          {"lbs", poundForce_N},
                                          {"kg", standardGravity_m_s2},
                                          {"kgf", standardGravity_m_s2}};
    const std::optional<double> force = readQuantity(text, units, forceUnit_N(display));
    if (force) return *force;
    throw InputError("", quoted(text) + " is not a force", "give it as 2500 N, 2.5 kN, 250 kgf or 560 lbf");
}

std::string typedForce(double force_N, const Display& display) {
    if (!std::isfinite(force_N)) return noFigure;
    const char* unit = display.forces == ForceUnit::newton       ? " N"
                       : display.forces == ForceUnit::poundForce ? " lbf"
                                                                 : " kgf";
    return upToDecimals(force_N / forceUnit_N(display), 1) + unit;
}

double readMass(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {{"kg", 1}, {"t", 1000}, {"g", 0.001}, {"lb", pound_kg}, {"lbs", pound_kg}};
    const bool pounds = display.weights == WeightUnit::ounce;
    const std::optional<double> mass = readQuantity(text, units, pounds ? pound_kg : 1);
    if (mass) return *mass;
    throw InputError("", quoted(text) + " is not a weight", "give it as 1200 kg, 1.2 t or 2600 lb");
}

std::string typedMass(double mass_kg, const Display& display) {
    if (!std::isfinite(mass_kg)) return noFigure;
    if (display.weights == WeightUnit::gram) return upToDecimals(mass_kg, 1) + " kg";
    return upToDecimals(mass_kg / pound_kg, 1) + " lb";
}

double readStress(std::string_view text, const Display& display) {
    static constexpr NamedUnit units[] = {
        {"mpa", megapascal_Pa}, {"n/mm2", megapascal_Pa}, {"gpa", 1000 * megapascal_Pa}, {"psi", psi_Pa}, {"pa", 1}};
    const bool pounds = display.forces == ForceUnit::poundForce;
    const std::optional<double> stress = readQuantity(text, units, pounds ? psi_Pa : megapascal_Pa);
    if (stress) return *stress;
    throw InputError("", quoted(text) + " is not a stress", "give it as 10000 MPa, 10 GPa or 1450000 psi");
}

std::string typedStress(double stress_Pa, const Display& display) {
    if (!std::isfinite(stress_Pa)) return noFigure;
    if (display.forces == ForceUnit::poundForce) return writeNumber(stress_Pa / psi_Pa, 6) + " psi";
    return writeNumber(stress_Pa / megapascal_Pa, 6) + " MPa";
}

std::string writeAngle(double angle_rad) {
    if (!std::isfinite(angle_rad)) return noFigure;
    return upToDecimals(toDegrees(angle_rad), 1) + "\u00B0";
}

}  // namespace fayline::units
