// The keys of the printed plan about the form and what the piece does on and off it.
#pragma once

#include <array>
#include <vector>

#include "core/export/print_rules.hpp"
#include "core/laminate/springback/learned.hpp"
#include "core/laminate/springback/sprung_home.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"

namespace fayline::plan::printing {

using units::Mark, units::Source, laminate::EndStress, laminate::FormLine, laminate::FormPlan, laminate::Gluing,
    laminate::Learned, laminate::MoistureMove, laminate::Opening, laminate::PartForm, laminate::SpringbackReading,
    laminate::SprungHome, laminate::StressLeft;

// Where a value comes from: `get` gives a units::Source.
void sourceKeys(auto& visit, auto get) {
    visit("source", via(get, &Source::text), Text{});
    visit("mark", via(get, &Source::mark),
          wordsBy(units::markText,
                  {Mark::published, Mark::transcribed, Mark::fromMemory, Mark::commonPractice, Mark::derived}));
}

void printedKeys(auto& visit, const line::Place*) {
    visit("at_mm", &line::Place::at_m, mm);
    visit("x_mm", &line::Place::x_m, mm);
    visit("y_mm", &line::Place::y_m, mm);
    visit("heading_deg", &line::Place::heading_rad, Figure{unit::deg});
    visit("curvature_per_m", &line::Place::curvature_per_m, Figure{{"per_m"}, 9});
}

void printedKeys(auto& visit, const Opening*) {
    visit("chord_mm", &Opening::chord_m, mm);
    visit("rise_mm", &Opening::rise_m, mm);
    visit("start_mm", &Opening::start_m, mm);
    visit("end_mm", &Opening::end_m, mm);
    visit("chord_before_mm", &Opening::chordFrom_m, mm);
    visit("chord_after_mm", &Opening::chordTo_m, mm);
    visit("rise_before_mm", &Opening::riseFrom_m, mm);
    visit("rise_after_mm", &Opening::riseTo_m, mm);
}

void printedKeys(auto& visit, const PartForm*) {
    visit("first_place", &PartForm::firstPlace, Whole{});
    visit("last_place", &PartForm::lastPlace, Whole{});
    visit("springback_ratio", &PartForm::ratioAtTightest, ratio);
    visit("least_ratio", &PartForm::leastRatio, ratio);
    visit("most_ratio", &PartForm::mostRatio, ratio);
    visit("most_ratio_at_mm", &PartForm::mostRatioAt_m, mm);
    visit("opens", &PartForm::opens, Group{});
    visit("uncorrected", &PartForm::uncorrected, Group{});
    visit("off_wanted", &PartForm::offWanted, Group{});
    visit("planed", &PartForm::planed, OrNull<Group>{});
}

void printedKeys(auto& visit, const MoistureMove*) {
    constexpr auto known = where(&MoistureMove::known);
    constexpr auto unknown = where([](const MoistureMove& moisture) { return !moisture.known; });
    visit("curvature_change_pct", ifAny(known, &MoistureMove::change), OrNull{pct});
    visit("unknown", ifAny(unknown, &MoistureMove::unknownSpecies), OrAbsent{Text{}});
    visit.same(known, [](auto& move) {
        move("curvature_change_tangential_pct", &MoistureMove::changeTangential, pct);
        move("across_pct", &MoistureMove::acrossShrink, pct);
        move("along_pct", &MoistureMove::alongShrink, pct);
        move("opens", &MoistureMove::opening, Group{});
        sourceKeys(move, &MoistureMove::source);
    });
}

void printedKeys(auto& visit, const EndStress*) {
    visit("at", &EndStress::atStart, words<bool>({{true, "start"}, {false, "end"}}));
    visit("at_mm", &EndStress::at_m, mm);
    visit("end_moment_N_m", &EndStress::moment_N_m, N_m);
    visit("peel_MPa", &EndStress::peel_Pa, MPa);
    visit("peel_from_end_mm", &EndStress::peelFrom_m, mm);
    visit("scarfed", &EndStress::scarfed, Truth{});
    visit("across_mean_MPa", &EndStress::acrossMean_Pa, MPa);
    visit("across_for_good_MPa", &EndStress::acrossStrength_Pa, MPa);
    sourceKeys(visit, &EndStress::acrossSource);
    visit("wants_fastening", &EndStress::wantsFastening, Truth{});
    visit("fastening_N", &EndStress::fastening_N, N);
    visit("fastening_from_end_mm", &EndStress::fasteningFrom_m, mm);
}

inline std::array<const EndStress*, 2> bothEnds(const StressLeft& left) {
    return {&left.start, &left.end};
}

// Of the end where more pulls; what stands at both ends below it.
void printedKeys(auto& visit, const StressLeft*) {
    visit.same([](const StressLeft& left) -> const EndStress& {
        return left.end.peel_Pa > left.start.peel_Pa ? left.end : left.start;
    });
    visit("ends", bothEnds, Pair<Group>{});
    visit("surface_MPa", &StressLeft::surfaceStress_Pa, MPa);
    visit("surface_at_mm", &StressLeft::surfaceStressAt_m, mm);
    visit("surface_place", &StressLeft::surfacePlace, Whole{});
    visit("surface_of_breaking_pct", &StressLeft::surfaceShare, pct);
}

void printedKeys(auto& visit, const SpringbackReading*) {
    visit("piece", &SpringbackReading::piece, Text{});
    visit("when", &SpringbackReading::when, Text{});
    visit("after_h", &SpringbackReading::after_s, Figure{unit::h});
    visit("springback_ratio", &SpringbackReading::measured, ratio);
    visit("springback_ratio_by_rule", &SpringbackReading::theory, ratio);
    visit("factor", &SpringbackReading::factor, plain);
    visit("factor_error", &SpringbackReading::error, plain);
    visit("counts", &SpringbackReading::last, Truth{});
}

// What the record says; it is not used unless the file's own springback_factor says so.
void printedKeys(auto& visit, const Learned*) {
    constexpr auto told = where([](const Learned& learned) { return learned.factor.has_value(); });
    visit("pieces", &Learned::pieces, Whole{});
    visit("factor", &Learned::factor, OrAbsent{plain});
    visit("low", ifAny(told, &Learned::low), OrAbsent{plain});
    visit("high", ifAny(told, &Learned::high), OrAbsent{plain});
    visit(
        "how_far",
        [](const Learned& learned, const Of& of) { return writeTexts(learnedTexts(learned), of.shop.display); },
        Text{});
    visit("readings", &Learned::readings, ListOf<Group>{});
    visit("left_out", &Learned::leftOut, ListOf<Text>{});
}

void printedKeys(auto& visit, const SprungHome*) {
    visit("measured", &SprungHome::measured, Truth{});
    visit("after_h", &SprungHome::after_s, Figure{unit::h});
    visit("factor", &SprungHome::factor, plain);
    visit("off_wanted", &SprungHome::off, Group{});
    visit("moment_N_m", &SprungHome::moment_N_m, N_m);
    visit("moment_at_mm", &SprungHome::momentAt_m, mm);
    visit("stress_MPa", &SprungHome::stress_Pa, MPa);
    visit("stress_at_mm", &SprungHome::stressAt_m, mm);
    visit("stress_place", &SprungHome::stressPlace, Whole{});
    visit("stress_of_breaking_pct", &SprungHome::breakingShare, pct);
    visit("bears", &SprungHome::bears, Truth{});
    visit("middle_pull_N", &SprungHome::middlePull_N, N);
    visit("middle_at_mm", &SprungHome::middleAt_m, mm);
    visit("ends_pull_N", &SprungHome::endsPull_N, N);
}

void printedKeys(auto& visit, const Gluing*) {
    visit("last_place", &Gluing::lastPlace, Whole{});
    visit("springback_ratio", &Gluing::ratio, ratio);
}

// The form's own line at its nodes, each place once.
inline std::vector<line::Place> formPoints(const FormLine& form) {
    std::vector<line::Place> points;
    const FormLine::Node* before = nullptr;
    for (const FormLine::Node& node : form.nodes()) {
        if (!before || node.at_m != before->at_m) points.push_back(form.faying(node.at_m));
        before = &node;
    }
    return points;
}

void printedKeys(auto& visit, const FormPlan*) {
    constexpr auto first = [](auto member) {
        return via([](const FormPlan& form) -> const PartForm& { return form.parts.front(); }, member);
    };
    visit("springback_ratio", first(&PartForm::ratioAtTightest), ratio);
    visit("lets_go", &FormPlan::letsGo, Truth{});
    visit("corrected", &FormPlan::corrected, Truth{});
    visit("possible", &FormPlan::possible, Truth{});
    visit("settled", &FormPlan::settled, Truth{});
    visit("springback_factor", &FormPlan::factor, plain);
    visit("fixed_at_mm", &FormPlan::fixedAt_m, mm);
    visit("tightest_radius_mm", &FormPlan::tightestRadius_m, OrNull{radius_mm});
    visit("tightest_at_mm", &FormPlan::tightestAt_m, mm);
    visit("points", via(&FormPlan::line, formPoints), ListOf<Group>{});
    visit("opens", first(&PartForm::opens), Group{});
    visit("uncorrected", first(&PartForm::uncorrected), Group{});
    visit("parts", &FormPlan::parts, ListOf<Group>{});
    visit("planed", first(&PartForm::planed), OrNull<Group>{});
    visit("moisture", &FormPlan::moisture, Group{});
    visit("gluings", &FormPlan::gluings, OrAbsent<ListOf<Group>>{});
    visit.inner("scatter", [](auto& scatter) {
        scatter("low", &FormPlan::scatterLow, plain);
        scatter("high", &FormPlan::scatterHigh, plain);
        sourceKeys(scatter, &FormPlan::scatterSource);
    });
    visit("learned", via(plan, &Plan::learned), OrAbsent<Group>{});
    visit("spring_home", via(plan, &Plan::sprungHome), OrAbsent<Group>{});
    visit("stress_left", &FormPlan::stressLeft, OrNull<Group>{});
}

}  // namespace fayline::plan::printing
