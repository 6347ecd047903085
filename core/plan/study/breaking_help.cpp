#include "core/plan/study/breaking_help.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "core/laminate/softened.hpp"
#include "core/plan/findings/stack_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/choices_candidates.hpp"
#include "core/plan/study/choices_naming.hpp"
#include "core/units/units.hpp"
#include "core/wood/bending.hpp"

namespace fayline::plan {

namespace {

constexpr std::size_t mostWoods = 3;

double thickestOf(const laminate::Strip& strip, units::LengthNotation notation) {
    const bool metric = notation == units::LengthNotation::millimetres;
    const double step_m = metric ? units::fromMillimetres(0.5) : units::sixteenth_m / 2;
    const double thick_m = std::max(strip.thickness_m, strip.thicknessAtEnd_m);
    const double goes_m = thick_m * surestShare / laminate::worstShare(strip);
    const double whole_m = step_m * std::floor(goes_m / step_m + 1e-9);
    return whole_m < thinnest_m(notation) - 1e-9 ? 0 : whole_m;
}

std::vector<std::string> woodsThatGo(const model::Stack& stack, const Shop& shop, const laminate::Strip& strip) {
    // Soaked cold, the first bend is held against dry wood's limit, and takes the whole curve.
    const auto& before = stack.strips[strip.group].bentBefore;
    const double strain = before && before->how == model::Softened::soaked ? strip.firstStrain : strip.strain;
    std::vector<std::pair<double, std::string>> woods;
    for (const wood::Species& species : shop.species) {
        if (species.id == strip.species) continue;
        const double breaking = wood::bending(species, stack.moisture, stack.grainSlope, std::nullopt).breakingStrain;
        if (strain <= surestShare * breaking) woods.emplace_back(-breaking, species.id);
    }
    std::ranges::sort(woods);
    std::vector<std::string> ids;
    for (const auto& [less, id] : woods) {
        if (ids.size() < mostWoods) ids.push_back(id);
    }
    return ids;
}

}  // namespace

BreakingHelp breakingHelp(const model::Piece& piece, const Shop& shop, const laminate::Strip& strip) {
    BreakingHelp help;
    if (!(strip.strain > 0)) return help;
    const model::Stack& stack = piece.stack;
    help.thickness_m = thickestOf(strip, shop.display.lengths);
    help.species = woodsThatGo(stack, shop, strip);
    // What was taken already strains it no more: the whole curve counts while it is hot.
    const std::optional<model::BentBefore>& before = stack.strips[strip.group].bentBefore;
    const double left = before ? 1 - before->set : 1;
    const std::optional<units::Cited> hot = laminate::hotBreakingStrain(model::Softened::steamed, stack.grainSlope);
    if (!(left > 0) || !hot) return help;
    const double whole = strip.strain / left;
    help.hot = whole <= surestShare * hot->value;
    help.leastSet = std::max(0.0, 1 - surestShare * strip.breakingStrain / whole);
    return help;
}

Message breakingAdvice(const BreakingHelp& help, const Shop& shop) {
    const Arg thick = put::thickness(help.thickness_m);
    if (help.thickness_m > 0) return {help.hot ? texts::useThinnerOrSteam : texts::useThinner, {thick}};
    if (help.hot) return texts::steamThem;
    if (help.species.empty()) return texts::easeBend;
    return {texts::useWood, {woodName(shop.species, help.species.front())}};
}

std::vector<Message> breakingHelpTexts(const BreakingHelp& help, const Shop& shop) {
    const Arg toSpare = put::share(1 - surestShare);
    std::vector<Message> ways;
    if (help.thickness_m > 0)
        ways.emplace_back(texts::thinnerGo, std::vector{put::thickness(help.thickness_m), toSpare});
    if (!help.species.empty()) {
        std::vector<Message> woods;
        for (const std::string& id : help.species) woods.emplace_back(woodName(shop.species, id));
        ways.emplace_back(texts::woodsGo, std::vector{put::alternatives(std::move(woods)), toSpare});
    }
    if (help.hot) ways.emplace_back(texts::steamedGo, std::vector{put::share(help.leastSet), toSpare});
    ways.emplace_back(ways.empty() ? texts::tooTightForStrips : texts::soakingNotKnown);
    return ways;
}

}  // namespace fayline::plan
