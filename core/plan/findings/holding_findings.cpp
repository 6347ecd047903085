#include <algorithm>
#include <cmath>
#include <limits>

#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/holding_texts.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/plan/shop.hpp"

namespace fayline::plan {

namespace {

using holding::HoldState;
using units::Mark;
using units::toMillimetres;

constexpr double rounding_m = 1e-9;

units::Source lengths() {
    return {"lengths along the line (derived)", Mark::derived};
}

// From where to where a station bears on the stack, along the line.
struct Bearing {
    double from_m = 0;
    double to_m = 0;
};

Bearing bearingOf(const model::Station& station) {
    if (const auto* strap = model::as<model::Strap>(station)) {
        const double other = strap->to_m.value_or(station.at_m);
        return {std::min(station.at_m, other), std::max(station.at_m, other)};
    }
    return {station.at_m - station.pad_m / 2, station.at_m + station.pad_m / 2};
}

void addOffTheStrips(std::vector<Finding>& findings, const HoldingScene& scene) {
    const double starts = -scene.piece.stack.runsPastStart_m;
    const double ends = scene.length_m() + scene.piece.stack.runsPastEnd_m;
    for (const holding::StationPlace& place : scene.plan.holding.stations) {
        const Bearing bearing = bearingOf(scene.station(place.index));
        const bool before = bearing.from_m < starts - rounding_m;
        if (!before && bearing.to_m <= ends + rounding_m) continue;
        const double reaches = before ? bearing.from_m : bearing.to_m;
        const double limit = before ? starts : ends;
        findings.push_back(
            said(foundAgainst(Code::stationOffTheStrips, lengths(), toMillimetres(reaches), toMillimetres(limit)),
                 place.at_m,
                 {texts::stationOffTheStrips, {scene.nameAt(place.index), put::tape(std::abs(reaches - limit))}}));
    }
}

// A clamp is a bar between two pads: where nothing supports the strips it has nothing to pull against.
void addOffTheForm(std::vector<Finding>& findings, const HoldingScene& scene) {
    const model::Form& form = scene.piece.form;
    const double strips = std::max(scene.piece.stack.runsPastStart_m, 0.0);
    const bool inPlace = form.kind == model::FormKind::inPlace;
    const double starts = -form.carriesOnStart_m.value_or(inPlace ? 0 : strips);
    const double ends =
        scene.length_m() + form.carriesOnEnd_m.value_or(inPlace ? 0 : std::max(scene.piece.stack.runsPastEnd_m, 0.0));
    for (const holding::StationPlace& place : scene.plan.holding.stations) {
        const model::Station& station = scene.station(place.index);
        if (!model::traitsOf(station.kind).closesGap) continue;
        double away = std::max(starts - station.at_m, station.at_m - ends);
        if (form.kind == model::FormKind::posts) {
            away = std::numeric_limits<double>::infinity();
            for (const model::Post& post : form.posts) {
                away = std::min(away, std::abs(station.at_m - post.at_m) - post.width_m / 2);
            }
        }
        if (!(away > rounding_m)) continue;
        Finding finding = found(Code::stationOffTheForm, lengths());
        finding.at_m = place.at_m;
        finding.limited = std::isfinite(away);
        finding.value = finding.limited ? toMillimetres(away) : 0;
        finding.text = finding.limited ? Message(texts::stationOffTheForm, {scene.nameAt(place.index), put::tape(away)})
                                       : Message(texts::stationWithoutPost, {scene.nameAt(place.index)});
        findings.push_back(finding);
    }
}

void addPadsOverlap(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::StationPlace* last = nullptr;
    for (const holding::StationPlace& place : scene.plan.holding.stations) {
        const model::Station& station = scene.station(place.index);
        if (!model::traitsOf(station.kind).closesGap) continue;
        const holding::StationPlace* previous = last;
        last = &place;
        if (!previous) continue;
        const model::Station& other = scene.station(previous->index);
        const double apart = place.at_m - previous->at_m;
        const double needed = (station.pad_m + other.pad_m) / 2;
        if (apart >= needed - rounding_m) continue;
        findings.push_back(said(
            foundAgainst(Code::padsOverlap, lengths(), toMillimetres(apart), toMillimetres(needed)), place.at_m,
            {texts::padsOverlap, {scene.names({previous->index, place.index}), put::span(apart), put::span(needed)}}));
    }
}

void addGap(std::vector<Finding>& findings, const HoldingScene& scene, Code code, double at_m, double gap_m,
            const Message& text) {
    const double limit = scene.piece.holding.gapLimit_m;
    if (!(gap_m > limit)) return;
    Finding finding = foundAgainst(code, contactSource(), toMillimetres(gap_m), toMillimetres(limit));
    finding.at_m = at_m;
    finding.text = text;
    if (code == Code::gapAtTrim) finding.details.emplace_back(texts::gapAtTrimRemedy);
    findings.push_back(finding);
}

void addGaps(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::Held& held = scene.plan.holding.held;
    if (held.stations.empty() || held.samples.empty()) return;
    const double length = scene.length_m();
    const double first = std::max(held.stations.front().at_m, 0.0);
    const double last = std::min(held.stations.back().at_m, length);
    const holding::HeldSample* largest = nullptr;
    for (const holding::HeldSample& sample : held.samples) {
        if (sample.at_m < first || sample.at_m > last) continue;
        if (!largest || sample.gap_m > largest->gap_m) largest = &sample;
    }
    const Arg allowed = put::small(scene.piece.holding.gapLimit_m);
    if (largest) {
        addGap(findings, scene, Code::gapOverLimit, largest->at_m, largest->gap_m,
               {texts::gapOverLimit, {gapArg(largest->gap_m), scene.place(largest->at_m), allowed}});
    }
    addGap(findings, scene, Code::gapAtTrim, 0, held.gapAtStart_m,
           {texts::gapAtStart, {gapArg(held.gapAtStart_m), allowed}});
    addGap(findings, scene, Code::gapAtTrim, length, held.gapAtEnd_m,
           {texts::gapAtEnd, {gapArg(held.gapAtEnd_m), allowed}});
    const holding::LargestGap& inside = held.fallsInside;
    addGap(findings, scene, Code::fallsInside, inside.at_m, inside.gap_m,
           {texts::fallsInside, {scene.place(inside.at_m), gapArg(inside.gap_m), allowed}});
}

// One that pulls with all it has.
Finding atItsStrength(const HoldingScene& scene, const holding::HeldStation& held) {
    constexpr double reported_m = 1.27e-5;  // less is written as 0.000 in
    const bool over = held.gap_m > scene.piece.holding.gapLimit_m;
    Finding finding = foundAgainst(Code::atItsStrength, contactSource(), held.pull_N, held.most_N);
    if (over) finding.severity = Severity::caution;
    finding.at_m = held.at_m;
    finding.text = {held.gap_m < reported_m ? texts::justCloses
                    : over                  ? texts::leavesGap
                                            : texts::leavesSmallGap,
                    {scene.nameAt(held.index), put::force(held.pull_N), gapArg(held.gap_m)}};
    return finding;
}

void addStates(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (!holding::inBalance(scene.plan.holding.held.outcome)) return;
    std::vector<int> slack;
    for (const holding::HeldStation& held : scene.plan.holding.held.stations) {
        const model::Station& station = scene.station(held.index);
        if (!holding::closesGap(station)) continue;
        if (held.state == HoldState::slack && !(held.most_N <= 0)) slack.push_back(held.index);
        if (held.most_N <= 0 && !station.pull_N) {
            findings.push_back(said(foundWithoutLimit(Code::noStrength, lengths()), held.at_m,
                                    {texts::noStrength, {scene.nameAt(held.index)}}));
        } else if (held.state == HoldState::full) {
            findings.push_back(atItsStrength(scene, held));
        }
    }
    if (slack.empty()) return;
    Finding finding = foundWithoutLimit(Code::nothingToPull, contactSource());
    if (slack.size() == 1) finding.at_m = scene.at_m(slack.front());
    finding.text = {texts::snugIsEnough, {scene.names(slack)}};
    finding.details.push_back({texts::snugIsEnoughWhy, {}, math::countOf(slack)});
    findings.push_back(finding);
}

// Where no balance was found.
void addNotInBalance(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::Held& held = scene.plan.holding.held;
    const bool away = held.ifPadsHold.springsAway || held.ifPadsSlide.springsAway;
    Finding finding = foundWithoutLimit(away ? Code::springsAway : Code::holdingNotSettled, contactSource());
    if (away) {
        finding.text = texts::springsAway;
        leadWithOffset(finding, scene, texts::springsAwayByOffset, texts::springsAwayByTwo);
    } else {
        finding.text = texts::holdingNotSettled;
        finding.details.emplace_back(texts::holdingNotSettledWhy);
        leadWithOffset(finding, scene, texts::notSettledByOffset, texts::notSettledByTwo);
    }
    findings.push_back(finding);
}

void addOutcome(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::Held& held = scene.plan.holding.held;
    addNotWorkedOut(findings, scene);
    if (held.stations.empty()) {
        findings.push_back(said(foundWithoutLimit(Code::noStations, contactSource()), texts::noStations));
        return;
    }
    if (held.outcome == holding::Outcome::snaps) {
        findings.push_back(said(foundWithoutLimit(Code::stackSnaps, contactSource()), held.largest.at_m,
                                {texts::stackSnaps, {scene.place(held.largest.at_m)}}, {texts::stackSnapsWhy}));
    }
    if (held.outcome == holding::Outcome::notConverged) addNotInBalance(findings, scene);
    const double apart = std::abs(held.largestIfPadsHold_m - held.largestIfPadsSlide_m);
    const double limit = scene.piece.holding.gapLimit_m;
    const bool bothKnown = holding::inBalance(held.ifPadsHold.outcome) && holding::inBalance(held.ifPadsSlide.outcome);
    if (!bothKnown || !(apart > limit)) return;
    findings.push_back(said(
        foundAgainst(Code::hangsOnPads, contactSource(), toMillimetres(apart), toMillimetres(limit)), held.largest.at_m,
        {texts::hangsOnPads, {gapArg(held.largestIfPadsHold_m), gapArg(held.largestIfPadsSlide_m)}},
        {texts::hangsOnPadsWhy}));
}

// A glue that wants a pressure of its own, and clamps that are too weak for as far apart as they stand.
void addBelowWanted(std::vector<Finding>& findings, const HoldingScene& scene, const Apart& apart) {
    const double width = laminate::ripWidthAt(scene.piece.stack, apart.at_m);
    const double gives_Pa = apart.most_N / (apart.apart_m * width);
    Finding finding =
        foundAgainst(Code::pressureBelowWanted, apart.need.source, gives_Pa / 1e3, apart.need.pressure_Pa / 1e3);
    finding.at_m = apart.at_m;
    finding.text = {texts::pressureBelowWanted,
                    {scene.names({apart.before, apart.after}), put::pressure(gives_Pa),
                     put::pressure(apart.need.pressure_Pa), put::reach(apart.need.spacing_m)}};
    finding.details.push_back({texts::pressureBelowWantedWhy, {put::span(apart.apart_m)}});
    findings.push_back(finding);
}

// Between posts nothing is behind the strips: said once of all.
void addNothingBehind(std::vector<Finding>& findings, const HoldingScene& scene) {
    const auto& needs = scene.plan.holding.pressing;
    const auto need =
        std::ranges::find_if(needs, [](const holding::PressingNeed& each) { return each.pad.push_N_m > 0; });
    if (need == needs.end()) return;
    Finding finding = foundWithoutLimit(Code::notPressed, need->source);
    finding.unit = "kPa";
    finding.value = need->pressure_Pa / 1e3;
    if (need->isWish) {
        finding.severity = Severity::note;
        finding.text = texts::pressedAtPostsOnly;
    } else {
        finding.text = {texts::nothingBehind, {put::pressure(need->pressure_Pa)}};
    }
    findings.push_back(finding);
}

// Where a glue that must be pressed asks for pads nearer to each other. Of one that fills gaps the study tells.
void addNotPressed(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (scene.piece.form.kind == model::FormKind::posts) return addNothingBehind(findings, scene);
    const std::optional<Apart> worst = worstApart(scene);
    if (!worst) return;
    const holding::PressingNeed& need = worst->need;
    if (need.isWish) return;
    const bool byStrength = need.by == holding::SpacedBy::strength;
    if (need.byGlue && byStrength) return addBelowWanted(findings, scene, *worst);
    Finding finding =
        foundAgainst(Code::notPressed, need.source, toMillimetres(worst->apart_m), toMillimetres(need.spacing_m));
    finding.at_m = worst->at_m;
    finding.text = {
        need.byGlue  ? texts::pressingReaches
        : byStrength ? texts::squeezeOutStrength
                     : texts::squeezeOutReaches,
        {scene.names({worst->before, worst->after}), put::span(worst->apart_m), put::reach(need.spacing_m)}};
    finding.details.push_back(
        {need.byGlue  ? texts::pressingReachesWhy
         : byStrength ? texts::squeezeOutStrengthWhy
                      : texts::squeezeOutWhy,
         {need.byGlue ? put::pressure(need.pressure_Pa) : put::small(scene.piece.stack.glueLine_m),
          put::reach(need.spacing_m)}});
    constexpr double worthTelling = 1.05;
    if (need.thinnerSpacing_m > worthTelling * need.spacing_m)
        finding.details.push_back({texts::thinnerMix, {put::reach(need.thinnerSpacing_m)}});
    findings.push_back(finding);
}

}  // namespace

std::optional<Apart> worstApart(const HoldingScene& scene) {
    const HoldingPlan& plan = scene.plan.holding;
    std::optional<Apart> worst;
    std::optional<std::size_t> previous;  // side clamps press nothing
    for (std::size_t i = 0; i < plan.held.stations.size() && i < plan.pressing.size(); ++i) {
        const holding::HeldStation& after = plan.held.stations[i];
        if (!holding::pressesOnForm(scene.station(after.index))) continue;
        const std::optional<std::size_t> last = previous;
        previous = i;
        if (!last) continue;
        const holding::HeldStation& before = plan.held.stations[*last];
        const bool lessAfter = plan.pressing[i].spacing_m <= plan.pressing[*last].spacing_m;
        const Apart apart{before.index,
                          after.index,
                          (after.at_m + before.at_m) / 2,
                          after.at_m - before.at_m,
                          std::min(before.most_N, after.most_N),
                          plan.pressing[lessAfter ? i : *last]};
        const auto over = [](const Apart& a) { return a.apart_m - a.need.spacing_m; };
        if (!(over(apart) > rounding_m)) continue;
        if (!worst || over(apart) > over(*worst)) worst = apart;
    }
    return worst;
}

// Pads on the outer strip against what the wood bears across the grain.
void addPadCrush(std::vector<Finding>& findings, const HoldingScene& scene, int index, double pull_N,
                 const LoadCase& moment) {
    const model::Station& station = scene.station(index);
    if (!model::traitsOf(station.kind).padCanCrush || station.pad_m <= 0) return;
    const wood::Species* wood = wood::findSpecies(scene.shop.species, scene.piece.stack.strips.back().species);
    if (!wood || !wood->compressionAcross_Pa) return;
    const double may = wood->compressionAcross_Pa->value / 2;
    const double bears = station.pad_m + 2 * scene.piece.holding.cauls.thickness_m;
    const double pressure = pull_N / (bears * laminate::widthAt(scene.piece.stack, station.at_m));
    if (!(pressure > may)) return;
    Finding finding =
        foundAgainst(moment.code(Code::padCrushes), wood->compressionAcross_Pa->source, pressure / 1e6, may / 1e6);
    finding.source.text += ", compression across the grain, half of it for pads (common practice)";
    finding.source.mark = Mark::commonPractice;
    finding.at_m = station.at_m;
    finding.text = {texts::padCrushes, {moment.subject(scene, index), put::pressure(pressure), put::pressure(may)}};
    moment.tellInstead(finding);
    findings.push_back(finding);
}

void addPostLoad(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PostLoad& post,
                 const LoadCase& moment) {
    if (!(post.thrust_N > post.holds_N)) return;
    Finding finding = foundAgainst(moment.code(Code::postGivesWay), contactSource(), post.thrust_N, post.holds_N);
    finding.at_m = post.at_m;
    finding.text = withForces(texts::postGivesWay, scene.place(post.at_m), post.thrust_N, post.holds_N);
    if (moment.turnOf) {
        finding.text.phrase = texts::postGivesWayWhileClosing;
        finding.text.args.emplace_back(scene.name(*moment.turnOf));
    }
    moment.tellInstead(finding);
    findings.push_back(finding);
}

std::vector<Finding> holdingFindings(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    const HoldingScene scene{piece, shop, plan};
    std::vector<Finding> findings;
    addOffTheStrips(findings, scene);
    addOffTheForm(findings, scene);
    addPadsOverlap(findings, scene);
    addOutcome(findings, scene);
    addGaps(findings, scene);
    addStates(findings, scene);
    for (const holding::HeldStation& held : plan.holding.held.stations) {
        addPadCrush(findings, scene, held.index, held.pull_N, {});
    }
    addNotPressed(findings, scene);
    for (const holding::PostLoad& post : plan.holding.posts) addPostLoad(findings, scene, post, {});
    addAtHand(findings, scene);
    addProps(findings, scene);
    addScrews(findings, scene);
    addStraps(findings, scene);
    addHull(findings, scene);
    return findings;
}

}  // namespace fayline::plan
