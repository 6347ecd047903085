#include "core/plan/study/breaking.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/softened.hpp"
#include "core/plan/findings/breaking_texts.hpp"
#include "core/plan/findings/breaking_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices.hpp"
#include "core/wood/bending.hpp"

namespace fayline::plan {

namespace {

// Chances of the strips of a stack, one by one, and what follows from them.
void weigh(BreakingRemedy& remedy, const std::vector<double>& chances) {
    double whole = 1;
    for (const double chance : chances) whole *= 1 - chance;
    remedy.chance = 1 - whole;
    remedy.spares = wood::sparesNeeded(chances);
    remedy.enough = remedy.spares == 0;
}

bool wanted(const laminate::StackPlan& stack) {
    return stack.spares != 0 || laminate::worstShare(laminate::worstStrip(stack)) >= 1;
}

// Were its wood to break at `breakingStrain` in the mean, dry.
double chanceOf(const laminate::Strip& strip, const model::Strips& group, double breakingStrain) {
    const double dry = wood::chanceOfBreaking(strip.strain, breakingStrain);
    if (strip.firstBreakingStrain <= 0) return dry;
    const bool cold = group.bentBefore && group.bentBefore->how == model::Softened::soaked;
    return std::max(dry, wood::chanceOfBreaking(strip.firstStrain, cold ? breakingStrain : strip.firstBreakingStrain));
}

// ---- Thinner strips and mixed stacks, of the choices.

const Choice* bestOf(const Choices& choices, bool mixed, double below_m) {
    const Choice* best = nullptr;
    const auto better = [mixed](const Choice& one, const Choice& other) {
        if ((one.spares == 0) != (other.spares == 0)) return one.spares == 0;
        if (one.spares != 0) return one.chanceOfBreaking < other.chanceOfBreaking;
        return mixed ? one.count < other.count : one.thickness_m > other.thickness_m;
    };
    for (const Choice& choice : choices.all) {
        if (!choice.possible || choice.asItIs || choice.mixed != mixed || choice.spares < 0) continue;
        if (!mixed && choice.thickness_m >= below_m) continue;
        if (!best || better(choice, *best)) best = &choice;
    }
    return best;
}

double wetStiffness(const model::Piece& piece, const Shop& shop, const Plan& plan, const model::Stack& stack) {
    return laminate::planStack(stack, piece.line.describes, piece.line.stripsOn, plan.line.fair.line, shop.species)
        .stiffnessWet_N_m2;
}

double over(double one, double other) {
    return other > 0 ? one / other : 1;
}

void addChoice(BreakingStudy& study, const model::Piece& piece, const Shop& shop, const Plan& plan,
               const Choices& choices, bool mixed) {
    double below_m = 0;
    for (const laminate::Strip& strip : plan.stack.strips) {
        if (!strip.sacrificial) below_m = std::max(below_m, strip.thickness_m);
    }
    const Choice* best = bestOf(choices, mixed, below_m * (1 - 1e-9));
    if (!best || best->chanceOfBreaking >= plan.stack.chanceAnyBreaks) return;
    BreakingRemedy remedy{.kind = mixed ? BreakingKind::mixed : BreakingKind::thinner,
                          .chance = best->chanceOfBreaking,
                          .spares = best->spares,
                          .enough = best->spares == 0,
                          .choice = static_cast<int>(best - choices.all.data())};
    const model::Stack adopted = adopt(piece.stack, *best);
    remedy.pullRatio = over(wetStiffness(piece, shop, plan, adopted), plan.stack.stiffnessWet_N_m2);
    remedy.what = stripsName(adopted, shop.species);
    study.remedies.push_back(remedy);
}

// ---- Strips that are bent hot.

std::vector<double> chancesSoftened(const model::Piece& piece, const Plan& plan, double hotLimit, double set) {
    std::vector<double> chances;
    for (const laminate::Strip& strip : plan.stack.strips) {
        const model::Strips& group = piece.stack.strips[strip.group];
        if (group.bentBefore) {
            chances.push_back(strip.chanceOfBreaking);
            continue;
        }
        const double dry =
            wood::chanceOfBreaking((1 - set) * strip.strain, laminate::sizedBreakingStrain(strip, group));
        chances.push_back(std::max(dry, wood::chanceOfBreaking(strip.strain, hotLimit)));
    }
    return chances;
}

void addSoftened(BreakingStudy& study, const model::Piece& piece, const Plan& plan) {
    const auto hot = laminate::hotBreakingStrain(model::Softened::steamed, piece.stack.grainSlope);
    const auto& groups = piece.stack.strips;
    if (!hot || std::ranges::all_of(groups, [](const model::Strips& s) { return s.bentBefore.has_value(); })) return;
    constexpr int steps = 20;
    BreakingRemedy remedy;
    remedy.kind = BreakingKind::softened;
    for (int step = 1; step < steps; ++step) {
        BreakingRemedy tried = remedy;
        tried.set = static_cast<double>(step) / steps;
        weigh(tried, chancesSoftened(piece, plan, hot->value, tried.set));
        if (step > 1 && !(tried.chance < remedy.chance * (1 - 1e-6))) break;  // what tears is the hot bend
        remedy = tried;
        if (remedy.enough) break;
    }
    if (remedy.chance >= plan.stack.chanceAnyBreaks) return;
    remedy.what = {texts::softenedStrips, {put::share(remedy.set)}};
    remedy.pullRatio = 1 - remedy.set;
    study.remedies.push_back(remedy);
}

// ---- The same strains in other wood.

// Of strips that have no measured values and are no sacrificial ones.
struct InWood {
    std::vector<double> chances;
    double stiffness_N_m2 = 0;  // per width, of all strips at the line's start
    double stiffnessAsIs_N_m2 = 0;
};
InWood inWood(const model::Piece& piece, const Shop& shop, const Plan& plan, const wood::Species* other,
              double grainSlope) {
    InWood all;
    for (const laminate::Strip& strip : plan.stack.strips) {
        const model::Strips& group = piece.stack.strips[strip.group];
        const wood::Species* species =
            other && !strip.sacrificial ? other : wood::findSpecies(shop.species, strip.species);
        const bool keeps = species != other || strip.sacrificial;
        const wood::Bending bends =
            wood::bending(*species, piece.stack.moisture, grainSlope, keeps ? group.moe_Pa : std::nullopt,
                          keeps ? group.breaksAt : std::nullopt);
        const bool measured = keeps && group.breaksAt;
        all.chances.push_back(chanceOf(strip, group, bends.breakingStrain * (measured ? 1 : strip.sizeFactor)));
        const double cubed = std::pow(strip.thickness_m, 3);
        all.stiffness_N_m2 += bends.modulus_Pa * cubed;
        all.stiffnessAsIs_N_m2 += strip.modulus_Pa * cubed;
    }
    return all;
}

void addStraightGrain(BreakingStudy& study, const model::Piece& piece, const Shop& shop, const Plan& plan) {
    if (piece.stack.grainSlope <= straightGrain) return;
    const InWood straight = inWood(piece, shop, plan, nullptr, straightGrain);
    BreakingRemedy remedy;
    remedy.kind = BreakingKind::straighterGrain;
    weigh(remedy, straight.chances);
    if (remedy.chance >= plan.stack.chanceAnyBreaks) return;
    remedy.grainSlope = straightGrain;
    remedy.pullRatio = over(straight.stiffness_N_m2, straight.stiffnessAsIs_N_m2);
    remedy.what = {texts::straightGrain, {put::number(1 / straightGrain, 2)}};
    study.remedies.push_back(remedy);
}

bool hasBoards(const model::Piece& piece, const std::string& species) {
    return std::ranges::any_of(piece.stock.boards,
                               [&](const model::Board& board) { return board.species == species && board.count > 0; });
}

void addOtherWoods(BreakingStudy& study, const model::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<BreakingRemedy> all;
    for (const wood::Species& species : shop.species) {
        const bool used = std::ranges::any_of(
            plan.stack.strips, [&](const laminate::Strip& strip) { return strip.species == species.id; });
        const bool twice = std::ranges::any_of(all, [&](const BreakingRemedy& r) { return r.species == species.id; });
        if (used || twice) continue;
        const InWood in = inWood(piece, shop, plan, &species, piece.stack.grainSlope);
        BreakingRemedy remedy;
        remedy.kind = BreakingKind::otherWood;
        weigh(remedy, in.chances);
        if (remedy.chance >= plan.stack.chanceAnyBreaks) continue;
        remedy.species = species.id;
        remedy.pullRatio = over(in.stiffness_N_m2, in.stiffnessAsIs_N_m2);
        remedy.what = woodName(species);
        all.push_back(remedy);
    }
    std::ranges::stable_sort(all, [&](const BreakingRemedy& a, const BreakingRemedy& b) {
        if (a.enough != b.enough) return a.enough;
        const bool aHas = hasBoards(piece, a.species);
        const bool bHas = hasBoards(piece, b.species);
        return aHas != bHas ? aHas : a.chance < b.chance;
    });
    if (all.size() > woodsReported) all.resize(woodsReported);
    study.remedies.insert(study.remedies.end(), all.begin(), all.end());
}

// ---- One strip fewer.

double hardestPull(const holding::Held& held) {
    double pull_N = 0;
    for (const holding::HeldStation& station : held.stations) pull_N = std::max(pull_N, station.pull_N);
    return pull_N;
}

std::optional<LostStrip> lostStrip(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                   const std::atomic<bool>& stop) {
    LostStrip lost;
    lost.fewer = withOneFewer(piece, shop, plan);
    lost.chance = plan.stack.strips[lost.fewer.place - 1].chanceOfBreaking;
    lost.hardestPullBefore_N = hardestPull(plan.holding.held);
    lost.largestGapBefore_m = plan.holding.held.largest.gap_m;
    if (!lost.fewer.cannot.empty()) return lost;
    if (stop) return std::nullopt;
    model::Piece left = piece;
    left.stack = lost.fewer.stack;
    const holding::Held held = holding::hold(workOf(left, shop, plan.line.fair.line, plan.form), &plan.holding.held);
    lost.settled = held.outcome == holding::Outcome::settled && !held.samples.empty();
    if (!lost.settled) return lost;
    lost.hardestPull_N = hardestPull(held);
    lost.largestGap_m = held.largest.gap_m;
    return lost;
}

}  // namespace

const char* breakingKindText(BreakingKind kind) {
    switch (kind) {
        case BreakingKind::thinner:
            return "thinner";
        case BreakingKind::mixed:
            return "mixed";
        case BreakingKind::softened:
            return "softened";
        case BreakingKind::straighterGrain:
            return "straighter_grain";
        case BreakingKind::otherWood:
            return "other_wood";
    }
    return "thinner";
}

std::optional<BreakingStudy> studyBreaking(const model::Piece& piece, const Shop& shop, const Plan& plan,
                                           const Choices& choices, const std::atomic<bool>& stop) {
    BreakingStudy study;
    if (wanted(plan.stack)) {
        addChoice(study, piece, shop, plan, choices, false);
        addChoice(study, piece, shop, plan, choices, true);
        if (stop) return std::nullopt;
        addSoftened(study, piece, plan);
        addStraightGrain(study, piece, shop, plan);
        if (stop) return std::nullopt;
        addOtherWoods(study, piece, shop, plan);
        std::ranges::stable_sort(study.remedies, std::greater{}, &BreakingRemedy::enough);
    }
    if (stop) return std::nullopt;
    if (plan.stack.strips.size() < 2) return study;
    study.lostStrip = lostStrip(piece, shop, plan, stop);
    if (!study.lostStrip) return std::nullopt;
    wordLostStrip(*study.lostStrip, piece, plan);
    return study;
}

}  // namespace fayline::plan
