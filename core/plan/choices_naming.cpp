#include "core/plan/choices_naming.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <tuple>

#include "core/measure/display.hpp"
#include "core/plan/wording.hpp"
#include "core/wood/bending.hpp"

namespace fayline::plan {

static_assert(surestShare == 1 - 2 * wood::ruptureScatter);

namespace {

double rounded(double value, double step) {
    return std::round(value / step);
}

double strongest_N(const boat::Piece& piece) {
    double most_N = 0;
    for (const boat::Tool& tool : piece.holding.tools) most_N = std::max(most_N, tool.most_N);
    for (const boat::Station& station : piece.holding.stations) {
        if (!station.side) most_N = std::max(most_N, station.most_N);
    }
    return most_N;
}

// One condition of the rule and how it is said: of the named, and of all where none meets it.
struct Condition {
    std::function<bool(const Choice&)> met;
    std::function<std::string(const Choice&)> text;
    std::string nobody;
};

std::vector<Condition> conditionsOf(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Condition> conditions;
    conditions.push_back({[](const Choice& c) { return c.shareOnForm <= surestShare; },
                          [](const Choice& c) {
                              return "are strained to no more than " + measure::writeShare(surestShare) +
                                     " of what breaks them (" + measure::writeShare(c.shareOnForm) + ")";
                          },
                          "are strained so little"});
    conditions.push_back({[](const Choice& c) { return c.spares >= 0 && c.spares <= mostSpares; },
                          [](const Choice& c) {
                              return "ask for no more than one spare (" +
                                     (c.spares == 0 ? std::string("none") : numberWord(c.spares)) + ")";
                          },
                          "ask for no more than one spare"});
    if (plan.form.letsGo) {
        conditions.push_back({[](const Choice& c) { return c.springbackRatio <= mostSpringback; },
                              [](const Choice& c) {
                                  return "give back no more than " + measure::writeShare(mostSpringback) +
                                         " of their curve (" + measure::writeShare(c.springbackRatio) + ")";
                              },
                              "give back so little"});
    }
    const double most_N = strongest_N(piece);
    if (most_N > 0) {
        conditions.push_back({[most_N](const Choice& c) { return c.endPull_N <= most_N; },
                              [most_N, &shop](const Choice& c) {
                                  return "have ends that the strongest tool there is draws down (" +
                                         measure::writeForce(c.endPull_N, shop.display) + " of " +
                                         measure::writeForce(most_N, shop.display) + ")";
                              },
                              "have ends that the strongest tool there is draws down"});
    }
    return conditions;
}

bool meetsFirst(const Choice& choice, const std::vector<Condition>& conditions, std::size_t kept) {
    return std::all_of(conditions.begin(), conditions.begin() + static_cast<std::ptrdiff_t>(kept),
                       [&](const Condition& condition) { return condition.met(choice); });
}

// Best of those that meet the first `kept` conditions; -1: none does.
int bestOf(const std::vector<Choice>& choices, const std::vector<Condition>& conditions, std::size_t kept) {
    int best = -1;
    const auto rank = [kept](const Choice& c) {
        // With no condition left to keep, the least strained.
        return kept > 0 ? std::make_tuple(c.mixed, static_cast<double>(c.count), c.depth_m)
                        : std::make_tuple(false, c.shareOnForm, c.depth_m);
    };
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const Choice& choice = choices[i];
        if (!choice.paretoOptimal || !meetsFirst(choice, conditions, kept)) continue;
        if (best < 0 || rank(choice) < rank(choices[best])) best = static_cast<int>(i);
    }
    return best;
}

std::string reasonOf(const Choice& choice, const std::vector<Condition>& conditions, std::size_t kept,
                     const boat::Piece& piece, const Shop& shop) {
    std::string text = capitalised(stripsText(adopt(piece.stack, choice), shop.species, shop.display)) + ": ";
    if (kept == 0) {
        text += "the least strained there are (" + measure::writeShare(choice.shareOnForm) + " of what breaks them)";
    } else {
        text += choice.mixed ? "mixed, the fewest strips that " : "the fewest strips that ";
        std::vector<std::string> parts;
        for (std::size_t i = 0; i < kept; ++i) parts.push_back(conditions[i].text(choice));
        text += listed(parts);
    }
    text += choice.asItIs ? ", as you have it." : ".";
    if (kept < conditions.size()) text += " None of these also " + conditions[kept].nobody + ".";
    return text;
}

}  // namespace

std::vector<double> comparedCounts(const Choice& choice, bool letsGo) {
    constexpr double thousandth = 1e-3;
    constexpr double tenThousandth = 1e-4;
    constexpr double gram_kg = 1e-3;
    constexpr double halfMinute_s = 30;
    return {rounded(choice.shareOnForm, thousandth),
            rounded(choice.chanceOfBreaking, thousandth),
            static_cast<double>(choice.spares),
            letsGo ? rounded(choice.springbackRatio, tenThousandth) : 0,
            rounded(choice.endPull_N, 1),
            rounded(choice.glue_kg, gram_kg),
            rounded(-choice.margin_s.value_or(0), halfMinute_s),
            rounded(choice.woodLost, thousandth),
            static_cast<double>(choice.count)};
}

bool beats(const std::vector<double>& one, const std::vector<double>& other) {
    bool better = false;
    for (std::size_t i = 0; i < one.size(); ++i) {
        if (one[i] > other[i]) return false;
        better = better || one[i] < other[i];
    }
    return better;
}

void markParetoOptimal(std::vector<Choice>& choices, bool letsGo) {
    std::vector<std::vector<double>> counts;
    for (const Choice& choice : choices) counts.push_back(comparedCounts(choice, letsGo));
    for (std::size_t i = 0; i < choices.size(); ++i) {
        choices[i].paretoOptimal = choices[i].possible;
        for (std::size_t j = 0; j < choices.size() && choices[i].paretoOptimal; ++j) {
            if (choices[j].possible && beats(counts[j], counts[i])) choices[i].paretoOptimal = false;
        }
    }
}

int nameOne(std::vector<Choice>& choices, const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    const std::vector<Condition> conditions = conditionsOf(piece, shop, plan);
    for (std::size_t dropped = 0; dropped <= conditions.size(); ++dropped) {
        const std::size_t kept = conditions.size() - dropped;
        const int best = bestOf(choices, conditions, kept);
        if (best < 0) continue;
        Choice& named = choices[best];
        named.named = reasonOf(named, conditions, kept, piece, shop);
        return best;
    }
    return -1;
}

}  // namespace fayline::plan
