#include "core/plan/print.hpp"

#include <cmath>
#include <optional>

#include "core/measure/input_error.hpp"
#include "core/measure/units.hpp"
#include "core/plan/print_json.hpp"

namespace fayline::plan {

Json number(double value, int decimals) {
    if (!std::isfinite(value)) return nullptr;
    const double scale = std::pow(10.0, decimals);
    const double rounded = std::abs(value) < 1e15 / scale ? std::round(value * scale) / scale : value;
    return rounded == 0 ? 0.0 : rounded;  // no -0
}

Json mm(double length_m) {
    return number(measure::toMillimetres(length_m));
}

Json pct(double share) {
    return number(100 * share);
}

Json optionalMm(const std::optional<double>& length_m) {
    return length_m ? mm(*length_m) : Json(nullptr);
}

Json radiusMm(double radius_m) {
    return radius_m < 1e6 ? mm(radius_m) : Json(nullptr);
}

namespace {

Json printSuspect(const LinePlan& line, int point) {
    for (const line::Suspect& suspect : line.misread.suspects) {
        if (suspect.point != point) continue;
        const std::string& written = suspect.tryWritten[suspect.axis == 'y' ? 1 : 0];
        Json printed;
        printed["axis"] = std::string(1, suspect.axis);
        printed["expected_mm"] = mm(suspect.expected_m);
        printed["slip"] = suspect.slip.empty() ? Json(nullptr) : Json(suspect.slip);
        printed["try"] = written.empty() ? Json(nullptr) : Json(written);
        return printed;
    }
    return nullptr;
}

Json printLine(const boat::Piece& piece, const LinePlan& line) {
    Json printed;
    printed["length_mm"] = mm(line.fair.line.length());
    printed["tightest"] = {{"at_mm", mm(line.tightest.at_m)},
                           {"radius_mm", radiusMm(1 / std::abs(line.tightest.curvature_per_m))},
                           {"radius_from_mm", radiusMm(line.radiusFrom_m)},
                           {"radius_to_mm", radiusMm(line.radiusTo_m)}};
    printed["settled"] = line.fair.settled;
    Json points = Json::array();
    for (std::size_t i = 0; i < line.fair.points.size(); ++i) {
        points.push_back({{"label", piece.line.points[i].label},
                          {"at_mm", mm(line.fair.points[i].at_m)},
                          {"misfit_mm", mm(line.fair.points[i].misfit_m)},
                          {"suspect", printSuspect(line, static_cast<int>(i))}});
    }
    printed["points"] = points;
    Json samples = Json::array();
    for (std::size_t i = 0; i < line.samples.size(); ++i) {
        const line::Place& place = line.samples[i];
        samples.push_back({{"at_mm", mm(place.at_m)},
                           {"x_mm", mm(place.x_m)},
                           {"y_mm", mm(place.y_m)},
                           {"heading_deg", number(measure::toDegrees(place.heading_rad))},
                           {"curvature_per_m", number(place.curvature_per_m, 9)},
                           {"curvature_sd_per_m", number(line.curvatureSd_per_m[i], 6)}});
    }
    printed["samples"] = samples;
    return printed;
}

Json printStrip(const stack::Strip& strip) {
    Json printed{{"place", strip.place},
                 {"thickness_mm", mm(strip.thickness_m)},
                 {"species", strip.species},
                 {"least_radius_mm", radiusMm(strip.leastRadius_m)},
                 {"strain_pct", pct(strip.strain)},
                 {"strain_at_mm", mm(strip.strainAt_m)},
                 {"breaks_at_pct", pct(strip.breakingStrain)},
                 {"modulus_MPa", number(strip.modulus_Pa / 1e6)},
                 {"finished_length_mm", mm(strip.finishedLength_m)},
                 {"length_mm", mm(strip.cutLength_m)}};
    printChance(printed, "chance_of_breaking", strip.chanceOfBreaking);
    if (strip.firstBreakingStrain > 0) {
        printed["first_bend_strain_pct"] = pct(strip.firstStrain);
        printed["first_bend_breaks_at_pct"] = pct(strip.firstBreakingStrain);
    }
    return printed;
}

Json printStack(const stack::StackPlan& stack) {
    Json printed;
    printed["count"] = stack.strips.size();
    printed["depth_mm"] = mm(stack.depth_m);
    printed["stiffness_wet_N_m2"] = number(stack.stiffnessWet_N_m2);
    printed["stiffness_cured_N_m2"] = number(stack.stiffnessCured_N_m2);
    printed["stored_energy_J"] = number(stack.storedEnergy_J);
    Json strips = Json::array();
    for (const stack::Strip& strip : stack.strips) strips.push_back(printStrip(strip));
    printed["strips"] = strips;
    printChance(printed, "chance_any_breaks", stack.chanceAnyBreaks);
    printed["spares"] = stack.spares < 0 ? Json(nullptr) : Json(stack.spares);
    printed["stagger"] = {{"start_mm", mm(stack.stagger.start_m)},
                          {"end_mm", mm(stack.stagger.end_m)},
                          {"pinned_at_mm", mm(stack.stagger.pinnedAt_m)}};
    return printed;
}

Json printFinding(const Finding& finding) {
    return {{"severity", severityText(finding.severity)},
            {"level", levelText(levelOf(finding))},
            {"about", aboutText(finding.about)},
            {"code", finding.code},
            {"text", finding.text},
            {"at_mm", optionalMm(finding.at_m)},
            {"value", number(finding.value)},
            {"limit", finding.limited ? number(finding.limit) : Json(nullptr)},
            {"unit", finding.unit},
            {"source", finding.source.text},
            {"mark", measure::markText(finding.source.mark)}};
}

Plan planOf(const boat::Boat& boat, const Shop& shop, std::size_t index) {
    try {
        const boat::Piece& piece = boat.pieces[index];
        const Plan plan = makePlan(piece, shop);
        const std::atomic<bool> stop = false;
        return deepen(piece, shop, plan, stop).value_or(plan);
    } catch (const measure::InputError& error) {
        throw error.within("pieces[" + std::to_string(index) + "].");
    }
}

}  // namespace

std::string printPlans(const boat::Boat& boat) {
    const Shop shop = shopOf(boat);
    Json pieces = Json::array();
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const boat::Piece& piece = boat.pieces[i];
        const Plan plan = planOf(boat, shop, i);
        Json printed;
        printed["name"] = plan.piece;
        printed["line"] = printLine(piece, plan.line);
        printed["stack"] = printStack(plan.stack);
        if (plan.breaking) printed["stack"]["breaking"] = printBreaking(plan);
        if (const Json woods = printWoodsMeasured(piece, shop.measured); !woods.empty()) {
            printed["stack"]["woods_measured"] = woods;
        }
        printed["form"] = printForm(plan);
        printed["holding"] = printHolding(piece, plan);
        printed["glue"] = printGlue(plan);
        printed["schedule"] = printSchedule(plan);
        if (plan.choices) printed["choices"] = printChoices(*plan.choices);
        Json findings = Json::array();
        for (const Finding& finding : plan.findings) findings.push_back(printFinding(finding));
        printed["findings"] = findings;
        pieces.push_back(printed);
    }
    const Json document{{"fayline_plan", 1}, {"boat", boat.name}, {"pieces", pieces}};
    // Names may hold bytes that are no text; they are replaced rather than the plan be lost.
    return document.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string summarizePlans(const boat::Boat& boat) {
    const Shop shop = shopOf(boat);
    std::string text;
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const Plan plan = planOf(boat, shop, i);
        if (i > 0) text += "\n";
        text += plan.piece + "\n";
        for (const Answer& answer : plan.answers) text += "  " + answer.word + ": " + answer.sentence + "\n";
        for (const Finding& finding : plan.findings) {
            if (levelOf(finding) == Level::fact) continue;
            text += std::string("  ") + severityText(finding.severity) + ": " + finding.text + " [" +
                    finding.source.text + ", " + measure::markText(finding.source.mark) + "]\n";
        }
    }
    return text;
}

}  // namespace fayline::plan
