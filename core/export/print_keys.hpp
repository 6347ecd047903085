// The keys of the printed plan, one table for each group of them: a piece, its line and stack, what it could be
// instead, what is wrong with it. Form, holding and the day have headers of their own. print_rules.hpp says how a table
// is walked.
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "core/export/print_keys_day.hpp"
#include "core/export/print_keys_form.hpp"
#include "core/export/print_keys_holding.hpp"
#include "core/export/print_keys_stock.hpp"
#include "core/export/print_rules.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/breaking.hpp"
#include "core/plan/study/choices.hpp"

namespace fayline::plan::printing {

using model::Strips, line::FairLine, line::Foot, line::Suspect, laminate::StackPlan, laminate::Stagger, laminate::Strip,
    wood::WoodMeasured;

inline constexpr Figure chance_pct{unit::pct, 1};

// A chance that any or a strip breaks as `key`_pct; below leastChanceReported that is null, and `key`_below_pct says
// what it is below.
void chanceKeys(auto& visit, const std::string& key, auto get) {
    const auto tells = [get](const auto& item, const Of& of) { return give(get, item, of) >= leastChanceReported; };
    const auto below = [tells](const auto& item, const Of& of) {
        return tells(item, of) ? nullptr : &leastChanceReported;
    };
    visit(key + "_pct", ifAny(where(tells), get), OrNull{chance_pct});
    visit(key + "_below_pct", below, OrAbsent{chance_pct});
}

// As the coordinate would be written rightly; empty: nothing fits.
inline const std::string& writtenRightly(const Suspect& suspect) {
    return suspect.tryWritten[suspect.axis == 'y' ? 1 : 0];
}

void printedKeys(auto& visit, const Suspect*) {
    visit("axis", &Suspect::axis, words<char>({{'x', "x"}, {'y', "y"}}));
    visit("expected_mm", &Suspect::expected_m, mm);
    visit("slip", &Suspect::slip, OrNull<Text>{});
    visit("try", writtenRightly, OrNull<Text>{});
}

struct PointOf {
    const std::string* label;
    const Foot* foot;
    const Suspect* suspect;
};

inline std::vector<PointOf> printedPoints(const LinePlan& line, const Of& of) {
    std::vector<PointOf> points;
    for (std::size_t i = 0; i < line.fair.points.size(); ++i) {
        points.push_back({&of.piece.line.points[i].label, &line.fair.points[i], nullptr});
        for (const Suspect& suspect : line.misread.suspects) {
            if (suspect.point == static_cast<int>(i) && !points[i].suspect) points[i].suspect = &suspect;
        }
    }
    return points;
}

void printedKeys(auto& visit, const PointOf*) {
    visit("label", &PointOf::label, Text{});
    visit("at_mm", via(&PointOf::foot, &Foot::at_m), mm);
    visit("misfit_mm", via(&PointOf::foot, &Foot::misfit_m), mm);
    visit("suspect", &PointOf::suspect, OrNull<Group>{});
}

struct SampleOf {
    line::Place place;
    double curvatureSd_per_m;
};

inline std::vector<SampleOf> printedSamples(const LinePlan& line) {
    std::vector<SampleOf> samples;
    for (std::size_t i = 0; i < line.samples.size(); ++i)
        samples.push_back({line.samples[i], line.curvatureSd_per_m[i]});
    return samples;
}

void printedKeys(auto& visit, const SampleOf*) {
    visit.same(&SampleOf::place);
    visit("curvature_sd_per_m", &SampleOf::curvatureSd_per_m, Figure{{"per_m"}});
}

inline double tightestRadius(const LinePlan& line) {
    return 1 / std::abs(line.tightest.curvature_per_m);
}

void printedKeys(auto& visit, const LinePlan*) {
    visit("length_mm", via(&LinePlan::fair, &FairLine::line, &line::Line::length), mm);
    visit.inner("tightest", [](auto& tightest) {
        tightest("at_mm", via(&LinePlan::tightest, &line::Place::at_m), mm);
        tightest("radius_mm", tightestRadius, OrNull{radius_mm});
        tightest("radius_from_mm", &LinePlan::radiusFrom_m, OrNull{radius_mm});
        tightest("radius_to_mm", &LinePlan::radiusTo_m, OrNull{radius_mm});
    });
    visit("settled", via(&LinePlan::fair, &FairLine::settled), Truth{});
    visit("points", printedPoints, ListOf<Group>{});
    visit("samples", printedSamples, ListOf<Group>{});
}

void printedKeys(auto& visit, const Strip*) {
    constexpr auto bentBefore = where([](const Strip& strip) { return strip.firstBreakingStrain > 0; });
    visit("place", &Strip::place, Whole{});
    visit("thickness_mm", &Strip::thickness_m, mm);
    visit("species", &Strip::species, Text{});
    visit("least_radius_mm", &Strip::leastRadius_m, OrNull{radius_mm});
    visit("strain_pct", &Strip::strain, pct);
    visit("strain_at_mm", &Strip::strainAt_m, mm);
    visit("breaks_at_pct", &Strip::breakingStrain, pct);
    visit("modulus_MPa", &Strip::modulus_Pa, MPa);
    visit("finished_length_mm", &Strip::finishedLength_m, mm);
    visit("length_mm", &Strip::cutLength_m, mm);
    chanceKeys(visit, "chance_of_breaking", &Strip::chanceOfBreaking);
    visit("first_bend_strain_pct", ifAny(bentBefore, &Strip::firstStrain), OrAbsent{pct});
    visit("first_bend_breaks_at_pct", ifAny(bentBefore, &Strip::firstBreakingStrain), OrAbsent{pct});
}

void printedKeys(auto& visit, const Stagger*) {
    visit("start_mm", &Stagger::start_m, mm);
    visit("end_mm", &Stagger::end_m, mm);
    visit("pinned_at_mm", &Stagger::pinnedAt_m, mm);
}

void printedKeys(auto& visit, const BreakingRemedy*) {
    using enum BreakingKind;
    visit("kind", &BreakingRemedy::kind,
          wordsBy(breakingKindText, {thinner, mixed, softened, straighterGrain, otherWood}));
    visit(
        "what", [](const BreakingRemedy& one, const Of& of) { return writeWithin(one.what, of.shop.display); }, Text{});
    visit("spares", &BreakingRemedy::spares, OrNull<Whole>{});
    visit("enough", &BreakingRemedy::enough, Truth{});
    visit("pull_ratio", &BreakingRemedy::pullRatio, plain);
    chanceKeys(visit, "chance_of_breaking", &BreakingRemedy::chance);
    visit("species", &BreakingRemedy::species, OrAbsent<Text>{});
    visit("set_pct", ifAbove0(&BreakingRemedy::set), OrAbsent{pct});
    visit("grain_slope", ifAbove0(&BreakingRemedy::grainSlope), OrAbsent{plain});
}

// What the plan becomes without the strip.
void printedKeys(auto& visit, const LostStrip*) {
    constexpr auto fewer = [](auto... steps) { return via(&LostStrip::fewer, steps...); };
    constexpr auto goesOn = fewer(where([](const OneFewer& one) { return one.cannot.empty(); }));
    constexpr auto letsGo =
        fewer(where([](const OneFewer& one, const Of& of) { return of.plan.form.letsGo && one.cannot.empty(); }));
    constexpr auto settled = where(&LostStrip::settled);
    constexpr auto count = [](const OneFewer&, const Of& of) { return of.plan.stack.strips.size() - 1; };
    constexpr auto depth = [](const OneFewer& one, const Of& of) { return of.plan.stack.depth_m - one.lost_m; };
    visit("place", fewer(&OneFewer::place), Whole{});
    chanceKeys(visit, "chance_of_breaking", &LostStrip::chance);
    visit("count", ifAny(goesOn, count), OrAbsent<Whole>{});
    visit("depth_mm", ifAny(goesOn, depth), OrAbsent{mm});
    visit("stiffness_ratio", ifAny(goesOn, &OneFewer::stiffShare), OrAbsent{plain});
    visit("springback_ratio", ifAny(letsGo, &OneFewer::ratio), OrAbsent{ratio});
    visit("off_wanted_start_mm", ifAny(letsGo, &OneFewer::off, &Opening::start_m), OrAbsent{mm});
    visit("off_wanted_end_mm", ifAny(letsGo, &OneFewer::off, &Opening::end_m), OrAbsent{mm});
    visit("hardest_pull_N", ifAny(settled, &LostStrip::hardestPull_N), OrAbsent{N});
    visit("largest_gap_mm", ifAny(settled, &LostStrip::largestGap_m), OrAbsent{mm});
    visit(
        "text", [](const LostStrip& one, const Of& of) { return writeTexts(one.becomes, of.shop.display); }, Text{});
    visit(
        "what_to_do", [](const LostStrip& one, const Of& of) { return writeTexts(one.whatToDo, of.shop.display); },
        Text{});
}

void printedKeys(auto& visit, const BreakingStudy*) {
    visit("remedies", &BreakingStudy::remedies, ListOf<Group>{});
    visit("one_fewer", &BreakingStudy::lostStrip, OrAbsent<Group>{});
}

// What the trials say of the woods that the piece has.
inline std::vector<const WoodMeasured*> woodsMeasured(const StackPlan&, const Of& of) {
    std::vector<const WoodMeasured*> woods;
    for (const WoodMeasured& wood : of.shop.measured) {
        bool used = false;
        for (const Strips& strips : of.piece.stack.strips) used = used || strips.species == wood.species;
        if (used) woods.push_back(&wood);
    }
    return woods;
}

void printedKeys(auto& visit, const WoodMeasured*) {
    constexpr auto bent = where([](const WoodMeasured& wood) { return wood.modulus_Pa.has_value(); });
    constexpr auto broken = where([](const WoodMeasured& wood) { return wood.breakingStrain.has_value(); });
    visit("species", &WoodMeasured::species, Text{});
    visit("trials", &WoodMeasured::trials, Whole{});
    visit("broke", &WoodMeasured::broken, Whole{});
    visit("moisture_pct", &WoodMeasured::moisture, pct);
    visit("left_out", &WoodMeasured::leftOut, ListOf<Text>{});
    visit("modulus_MPa", &WoodMeasured::modulus_Pa, OrAbsent{MPa});
    visit("modulus_within_MPa", ifAny(bent, &WoodMeasured::modulusError_Pa), OrAbsent{MPa});
    visit("breaks_at_pct", &WoodMeasured::breakingStrain, OrAbsent{pct});
    visit("breaks_within_pct", ifAny(broken, &WoodMeasured::breakingStrainError), OrAbsent{pct});
}

void printedKeys(auto& visit, const StackPlan*) {
    visit("count", via(&StackPlan::strips, &math::SharedList<Strip>::size), Whole{});
    visit("depth_mm", &StackPlan::depth_m, mm);
    visit("stiffness_wet_N_m2", &StackPlan::stiffnessWet_N_m2, Figure{{"N_m2"}});
    visit("stiffness_cured_N_m2", &StackPlan::stiffnessCured_N_m2, Figure{{"N_m2"}});
    visit("stored_energy_J", &StackPlan::storedEnergy_J, Figure{{"J"}});
    visit("strips", &StackPlan::strips, ListOf<Group>{});
    chanceKeys(visit, "chance_any_breaks", &StackPlan::chanceAnyBreaks);
    visit("spares", &StackPlan::spares, OrNull<Whole>{});
    visit("stagger", &StackPlan::stagger, Group{});
    visit("breaking", via(plan, &Plan::breaking), OrAbsent<Group>{});
    visit("woods_measured", woodsMeasured, OrAbsent<ListOf<Group>>{});
}

void printedKeys(auto& visit, const Strips*) {
    visit("count", &Strips::count, Whole{});
    visit("thickness_mm", &Strips::thickness_m, mm);
    visit("species", &Strips::species, Text{});
    visit("sacrificial", &Strips::sacrificial, Truth{});
    visit("tapers_to_mm", &Strips::tapersTo_m, OrAbsent{mm});
}

void printedKeys(auto& visit, const Choice*) {
    visit("thickness_mm", &Choice::thickness_m, mm);
    visit("count", &Choice::count, Whole{});
    visit("strips", &Choice::strips, ListOf<Group>{});
    visit("mixed", &Choice::mixed, Truth{});
    visit("as_it_is", &Choice::asItIs, Truth{});
    visit("depth_mm", &Choice::depth_m, mm);
    visit("strain_pct", &Choice::strain, pct);
    visit("strain_share_pct", &Choice::strainShare, pct);
    visit("strain_share_on_form_pct", &Choice::shareOnForm, pct);
    visit("spares", &Choice::spares, OrNull<Whole>{});
    visit("springback_ratio", &Choice::springbackRatio, plain);
    visit("opens_mm", &Choice::opens_m, OrNull{mm});
    visit("end_pull_N", &Choice::endPull_N, Figure{{"N"}, 3});
    visit("glue_g", &Choice::glue_kg, grams);
    visit("glue_lines", &Choice::glueLines, Whole{});
    visit("margin_min", &Choice::margin_s, OrNull{minutes});
    visit("closed_min", &Choice::closed_s, OrNull{minutes});
    visit("strip_length_mm", &Choice::stripLength_m, mm);
    visit("wood_lost_pct", &Choice::woodLost, pct);
    visit("short_by", &Choice::stripsShort, OrAbsent<Whole>{});
    visit("boards_m3", &Choice::boards_m3, OrAbsent{m3});
    visit("possible", &Choice::possible, Truth{});
    visit(
        "why_not", [](const Choice& one, const Of& of) { return writeWithin(one.whyNot, of.shop.display); },
        OrNull<Text>{});
    visit("unbeaten", &Choice::paretoOptimal, Truth{});
    visit(
        "named", [](const Choice& one, const Of& of) { return writeText(one.named, of.shop.display); }, OrNull<Text>{});
    chanceKeys(visit, "chance_of_breaking", &Choice::chanceOfBreaking);
}

void printedKeys(auto& visit, const Finding*) {
    visit("severity", &Finding::severity, wordsBy(severityText, {Severity::stop, Severity::caution, Severity::note}));
    visit("level", levelOf, wordsBy(levelText, {Level::finding, Level::fact, Level::safety}));
    visit(
        "about", [](const Finding& finding) { return aboutOf(finding.code); },
        wordsBy(aboutText,
                {About::line, About::stack, About::form, About::holding, About::glue, About::schedule, About::stock}));
    visit(
        "code", [](const Finding& finding) { return std::string(codeWord(finding.code)); }, Text{});
    visit(
        "text", [](const Finding& finding, const Of& of) { return textOf(finding, of.shop.display); }, Text{});
    visit(
        "details", [](const Finding& finding, const Of& of) { return detailsOf(finding, of.shop.display); },
        OrAbsent<Text>{});
    visit("at_mm", &Finding::at_m, OrNull{mm});
    visit("value", &Finding::value, plain);
    visit("limit", ifAny(where(&Finding::limited), &Finding::limit), OrNull{plain});
    visit("unit", &Finding::unit, Text{});
    visit(
        "follows_from", [](const Finding& finding) { return finding.root < 0 ? std::optional<int>() : finding.root; },
        OrAbsent<Whole>{});
    sourceKeys(visit, &Finding::source);
}

void printedKeys(auto& visit, const Plan*) {
    visit("name", &Plan::piece, Text{});
    visit("line", &Plan::line, Group{});
    visit("stack", &Plan::stack, Group{});
    visit("form", &Plan::form, Group{});
    visit("holding", &Plan::holding, Group{});
    visit("glue", via(&Plan::day, &DayPlan::glue), Group{});
    visit("schedule", &Plan::day, Group{});
    visit("stock", &Plan::stock, OrAbsent<Group>{});
    visit("choices", ifAny(&Plan::choices, &Choices::all), OrAbsent<ListOf<Group>>{});
    visit("findings", &Plan::findings, ListOf<Group>{});
}

// Walks the table of the struct that a visitor is for.
inline constexpr auto table = []<class T, template <class> class Visitor>(Visitor<T>& visitor) {
    printedKeys(visitor, static_cast<const T*>(nullptr));
};

}  // namespace fayline::plan::printing
