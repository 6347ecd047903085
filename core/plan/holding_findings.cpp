#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

#include "core/boat/hold_traits.hpp"
#include "core/holding/kinds.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/holding_scene.hpp"
#include "core/plan/not_pressed.hpp"

namespace fayline::plan {

namespace {

using holding::HoldState;
using measure::Mark;
using measure::toMillimetres;

constexpr double rounding_m = 1e-9;

measure::Source lengths() {
    return {"lengths along the line (derived)", Mark::derived};
}

// From where to where a station bears on the stack, along the line.
struct Bearing {
    double from_m = 0;
    double to_m = 0;
};

Bearing bearingOf(const boat::Station& station) {
    if (const auto* strap = boat::as<boat::Strap>(station)) {
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
        Finding finding = aboutHolding(Severity::caution, Code::stationOffTheStrips, "mm", lengths());
        finding.at_m = place.at_m;
        finding.value = toMillimetres(reaches);
        finding.limit = toMillimetres(limit);
        finding.text = scene.name(place.index) + ", " + scene.place(place.at_m) +
                       ", reaches off the strips: it bears as far as " + scene.place(reaches) +
                       ", and the strips end " + scene.place(limit) + ".";
        findings.push_back(finding);
    }
}

// A clamp is a bar between two pads: where nothing supports the strips it has nothing to pull against.
void addOffTheForm(std::vector<Finding>& findings, const HoldingScene& scene) {
    const boat::Form& form = scene.piece.form;
    const double strips = std::max(scene.piece.stack.runsPastStart_m, 0.0);
    const bool inPlace = form.kind == boat::FormKind::inPlace;
    const double starts = -form.carriesOnStart_m.value_or(inPlace ? 0 : strips);
    const double ends =
        scene.length_m() + form.carriesOnEnd_m.value_or(inPlace ? 0 : std::max(scene.piece.stack.runsPastEnd_m, 0.0));
    for (const holding::StationPlace& place : scene.plan.holding.stations) {
        const boat::Station& station = scene.station(place.index);
        if (!boat::traitsOf(station.kind).closesGap) continue;
        double away = std::max(starts - station.at_m, station.at_m - ends);
        if (form.kind == boat::FormKind::posts) {
            away = std::numeric_limits<double>::infinity();
            for (const boat::Post& post : form.posts) {
                away = std::min(away, std::abs(station.at_m - post.at_m) - post.width_m / 2);
            }
        }
        if (!(away > rounding_m)) continue;
        Finding finding = aboutHolding(Severity::caution, Code::stationOffTheForm, "mm", lengths());
        finding.at_m = place.at_m;
        finding.limited = std::isfinite(away);
        finding.value = std::isfinite(away) ? toMillimetres(away) : 0;
        finding.text = scene.name(place.index) + ", " + scene.place(place.at_m) + ", stands " +
                       (std::isfinite(away) ? scene.span(away) + " off what the strips are bent on"
                                            : std::string("where there is no post at all")) +
                       ": there it bends the strips inwards. Move it over the support, or let the support carry on.";
        findings.push_back(finding);
    }
}

void addPadsOverlap(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::StationPlace* last = nullptr;
    for (const holding::StationPlace& place : scene.plan.holding.stations) {
        const boat::Station& station = scene.station(place.index);
        if (!boat::traitsOf(station.kind).closesGap) continue;
        const holding::StationPlace* previous = last;
        last = &place;
        if (!previous) continue;
        const boat::Station& other = scene.station(previous->index);
        const double apart = place.at_m - previous->at_m;
        const double needed = (station.pad_m + other.pad_m) / 2;
        if (apart >= needed - rounding_m) continue;
        Finding finding = aboutHolding(Severity::caution, Code::padsOverlap, "mm", lengths());
        finding.at_m = place.at_m;
        finding.value = toMillimetres(apart);
        finding.limit = toMillimetres(needed);
        finding.text = scene.names({previous->index, place.index}) + ", " + scene.place(place.at_m) + ", stand " +
                       scene.span(apart) + " apart, and their pads need " + scene.span(needed) + ".";
        findings.push_back(finding);
    }
}

void addGap(std::vector<Finding>& findings, const HoldingScene& scene, Code code, double at_m, double gap_m,
            const std::string& what, const std::string& remedy) {
    const double limit = scene.piece.holding.gapLimit_m;
    if (!(gap_m > limit)) return;
    Finding finding = aboutHolding(Severity::stop, code, "mm", contactSource());
    finding.at_m = at_m;
    finding.value = toMillimetres(gap_m);
    finding.limit = toMillimetres(limit);
    finding.text = what + " " + scene.place(at_m) + ": " + scene.small(gap_m) + ", where " + scene.small(limit) +
                   " is the most that you allow. " + remedy;
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
    if (largest) {
        addGap(findings, scene, Code::gapOverLimit, largest->at_m, largest->gap_m, "The stack stands off the form",
               "Set a station nearer to it, or a stronger one.");
    }
    const std::string remedy =
        "Let strips and form run further past the trim line with a station out there, or take a "
        "stronger one.";
    addGap(findings, scene, Code::gapAtTrim, 0, held.gapAtStart_m, "The end stands off at the trim line,", remedy);
    addGap(findings, scene, Code::gapAtTrim, length, held.gapAtEnd_m, "The end stands off at the trim line,", remedy);
    const holding::LargestGap& inside = held.fallsInside;
    if (!(inside.gap_m > scene.piece.holding.gapLimit_m)) return;
    Finding finding = aboutHolding(Severity::caution, Code::fallsInside, "mm", contactSource());
    finding.at_m = inside.at_m;
    finding.value = toMillimetres(inside.gap_m);
    finding.limit = toMillimetres(scene.piece.holding.gapLimit_m);
    finding.text = "Between its supports the stack cuts the corner " + scene.place(inside.at_m) + " by " +
                   scene.small(inside.gap_m) + ": it is not on the line there. Set a post between.";
    findings.push_back(finding);
}

void addStates(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (!holding::inBalance(scene.plan.holding.held.outcome)) return;
    const double limit = scene.piece.holding.gapLimit_m;
    constexpr double reported_m = 1.27e-5;  // less is written as 0.000 in
    std::vector<int> slack;
    for (const holding::HeldStation& held : scene.plan.holding.held.stations) {
        const boat::Station& station = scene.station(held.index);
        if (!holding::closesGap(station)) continue;
        if (held.state == HoldState::slack && !(held.most_N <= 0)) slack.push_back(held.index);
        if (held.most_N <= 0 && !station.pull_N) {
            Finding finding = aboutHolding(Severity::caution, Code::noStrength, "N", lengths());
            finding.at_m = held.at_m;
            finding.limited = false;
            finding.text = scene.name(held.index) + ", " + scene.place(held.at_m) +
                           ", is given no strength and holds nothing; give the most that it can pull.";
            findings.push_back(finding);
        } else if (held.state == HoldState::full) {
            const bool over = held.gap_m > limit;
            Finding finding =
                aboutHolding(over ? Severity::caution : Severity::note, Code::atItsStrength, "N", contactSource());
            finding.at_m = held.at_m;
            finding.value = held.pull_N;
            finding.limit = held.most_N;
            finding.text =
                scene.name(held.index) + ", " + scene.place(held.at_m) + ", pulls with all it has, " +
                scene.force(held.pull_N) +
                (held.gap_m < reported_m ? std::string(", and just closes its gap.")
                                         : ", and leaves a gap of " + scene.small(held.gap_m) + " under its pad.");
            findings.push_back(finding);
        }
    }
    if (slack.empty()) return;
    Finding finding = aboutHolding(Severity::note, Code::nothingToPull, "N", contactSource());
    if (slack.size() == 1) finding.at_m = scene.at_m(slack.front());
    finding.limited = false;
    finding.text = scene.names(slack) + (slack.size() == 1 ? " has" : " have") +
                   " no gap to close: the stack lies down there without " + (slack.size() == 1 ? "it" : "them") +
                   ". Snug is enough.";
    findings.push_back(finding);
}

void addOutcome(std::vector<Finding>& findings, const HoldingScene& scene) {
    const holding::Held& held = scene.plan.holding.held;
    addNotWorkedOut(findings, scene);
    if (held.stations.empty()) {
        Finding finding = aboutHolding(Severity::note, Code::noStations, "", contactSource());
        finding.limited = false;
        finding.text = "No stations are set out yet: nothing holds the stack down.";
        findings.push_back(finding);
        return;
    }
    if (held.outcome == holding::Outcome::snaps) {
        Finding finding = aboutHolding(Severity::caution, Code::stackSnaps, "", contactSource());
        finding.at_m = held.largest.at_m;
        finding.limited = false;
        finding.text = "Held like this the stack can snap from one shape into another, near " +
                       scene.place(held.largest.at_m) +
                       ": the free span there is long for its bend. Stand clear, close it slowly, and set a station "
                       "between.";
        findings.push_back(finding);
    }
    if (held.outcome == holding::Outcome::notConverged &&
        (held.ifPadsHold.springsAway || held.ifPadsSlide.springsAway)) {
        Finding finding = aboutHolding(Severity::stop, Code::springsAway, "", contactSource());
        finding.limited = false;
        finding.text =
            "Held like this the stack springs away: what pulls on it does not keep it on the form. Set stations nearer "
            "to "
            "its ends, or stronger ones, and rope it whatever you do.";
        leadWithOffset(finding, scene);
        findings.push_back(finding);
    } else if (held.outcome == holding::Outcome::notConverged) {
        Finding finding = aboutHolding(Severity::caution, Code::holdingNotSettled, "", contactSource());
        finding.limited = false;
        finding.text =
            "No state of balance was found for the stack as it is held, so no gaps and pulls are shown: it would slip "
            "out from under a pad, or rests nowhere near the form. Set stations nearer to each other, or stronger "
            "ones.";
        leadWithOffset(finding, scene);
        findings.push_back(finding);
    }
    const double apart = std::abs(held.largestIfPadsHold_m - held.largestIfPadsSlide_m);
    const bool bothKnown = holding::inBalance(held.ifPadsHold.outcome) && holding::inBalance(held.ifPadsSlide.outcome);
    if (bothKnown && apart > scene.piece.holding.gapLimit_m) {
        Finding finding = aboutHolding(Severity::caution, Code::hangsOnPads, "mm", contactSource());
        finding.at_m = held.largest.at_m;
        finding.value = toMillimetres(apart);
        finding.limit = toMillimetres(scene.piece.holding.gapLimit_m);
        finding.text = "The result hangs on the pads: the largest gap is " + scene.small(held.largestIfPadsHold_m) +
                       " if they hold the outer strip and " + scene.small(held.largestIfPadsSlide_m) +
                       " if they slide on it. Close every gap, and it no longer matters.";
        findings.push_back(finding);
    }
}

// A glue that wants a pressure of its own, and clamps that are too weak for as far apart as they stand.
void addBelowWanted(std::vector<Finding>& findings, const HoldingScene& scene, const Apart& apart) {
    const double width = stack::ripWidthAt(scene.piece.stack, apart.at_m);
    const double gives_Pa = apart.most_N / (apart.apart_m * width);
    Finding finding = aboutHolding(Severity::caution, Code::pressureBelowWanted, "kPa", apart.need.source);
    finding.at_m = apart.at_m;
    finding.value = gives_Pa / 1e3;
    finding.limit = apart.need.pressure_Pa / 1e3;
    finding.text = scene.names({apart.before, apart.after}) + ", " + scene.span(apart.apart_m) +
                   " apart, press the glue between them with " + scene.pressure(gives_Pa) +
                   " at most, and this kind of glue wants " + scene.pressure(apart.need.pressure_Pa) +
                   " however thin it is spread: stronger ones, or no further apart than " +
                   scene.reach(apart.need.spacing_m) + ". What its maker says comes first.";
    findings.push_back(finding);
}

// Between posts nothing is behind the strips: said once of all.
void addNothingBehind(std::vector<Finding>& findings, const HoldingScene& scene) {
    const auto& needs = scene.plan.holding.pressing;
    const auto need = std::find_if(needs.begin(), needs.end(),
                                   [](const holding::PressingNeed& each) { return each.pad.push_N_m > 0; });
    if (need == needs.end()) return;
    const Severity severity = need->isWish ? Severity::note : Severity::caution;
    Finding finding = aboutHolding(severity, Code::notPressed, "kPa", need->source);
    finding.limited = false;
    finding.value = need->pressure_Pa / 1e3;
    finding.text = need->isWish ? "Glue is pressed at the posts only; between them nothing is behind the strips, and "
                                  "their own bend must close it."
                                : "This glue must be pressed with " + scene.pressure(need->pressure_Pa) +
                                      " everywhere, and between posts nothing is behind the strips. Use a solid form.";
    findings.push_back(finding);
}

// Where a glue that must be pressed asks for pads nearer to each other. Of one that fills gaps the study tells.
void addNotPressed(std::vector<Finding>& findings, const HoldingScene& scene) {
    if (scene.piece.form.kind == boat::FormKind::posts) return addNothingBehind(findings, scene);
    const std::optional<Apart> worst = worstApart(scene);
    if (!worst) return;
    const holding::PressingNeed& need = worst->need;
    if (need.isWish) return;
    const bool byStrength = need.by == holding::SpacedBy::strength;
    if (need.byGlue && byStrength) return addBelowWanted(findings, scene, *worst);
    Finding finding = aboutHolding(Severity::caution, Code::notPressed, "mm", need.source);
    finding.at_m = worst->at_m;
    finding.value = toMillimetres(worst->apart_m);
    finding.limit = toMillimetres(need.spacing_m);
    const std::string what =
        need.byGlue ? "to press this kind of glue with the " + scene.pressure(need.pressure_Pa) + " that it wants"
                    : "to press this glue out to a line of " + scene.small(scene.piece.stack.glueLine_m);
    finding.text = scene.names({worst->before, worst->after}) + " stand " + scene.span(worst->apart_m) + " apart; " +
                   what +
                   (byStrength ? ", clamps no further apart than " + scene.reach(need.spacing_m) + " are strong enough."
                               : ", pads no further apart than " + scene.reach(need.spacing_m) +
                                     " reach every place. One long caul under them reaches further.");
    constexpr double worthTelling = 1.05;
    if (need.thinnerSpacing_m > worthTelling * need.spacing_m)
        finding.text += " A mix half as stiff: " + scene.reach(need.thinnerSpacing_m) + ".";
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
    const boat::Station& station = scene.station(index);
    if (!boat::traitsOf(station.kind).padCanCrush || station.pad_m <= 0) return;
    const wood::Species* wood = wood::findSpecies(scene.shop.species, scene.piece.stack.strips.back().species);
    if (!wood || !wood->compressionAcross_Pa) return;
    const double may = wood->compressionAcross_Pa->value / 2;
    const double bears = station.pad_m + 2 * scene.piece.holding.cauls.thickness_m;
    const double pressure = pull_N / (bears * stack::widthAt(scene.piece.stack, station.at_m));
    if (!(pressure > may)) return;
    Finding finding =
        aboutHolding(Severity::caution, moment.code(Code::padCrushes), "MPa", wood->compressionAcross_Pa->source);
    finding.source.text += ", compression across the grain, half of it for pads (common practice)";
    finding.source.mark = Mark::commonPractice;
    finding.at_m = station.at_m;
    finding.value = pressure / 1e6;
    finding.limit = may / 1e6;
    finding.text = moment.subject(scene, index, "The pad of ") + "presses the outer strip with " +
                   scene.pressure(pressure) + ", and the wood bears " + scene.pressure(may) +
                   " there. Put a larger pad or a caul under it." + moment.instead;
    findings.push_back(finding);
}

void addPostLoad(std::vector<Finding>& findings, const HoldingScene& scene, const holding::PostLoad& post,
                 const LoadCase& moment) {
    if (!(post.thrust_N > post.holds_N)) return;
    Finding finding = aboutHolding(Severity::stop, moment.code(Code::postGivesWay), "N", contactSource());
    finding.at_m = post.at_m;
    finding.value = post.thrust_N;
    finding.limit = post.holds_N;
    const auto [thrust, holds] = scene.forces(post.thrust_N, post.holds_N);
    finding.text =
        (moment.turnOf ? "At the turn of " + lowered(scene.name(*moment.turnOf)) + " the post " : "The post ") +
        scene.place(post.at_m) + " is pressed with " + thrust + " and holds " + holds +
        ". Brace it before the stack goes on." + moment.instead;
    findings.push_back(finding);
}

std::vector<Finding> holdingFindings(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
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
