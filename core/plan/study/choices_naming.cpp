#include "core/plan/study/choices_naming.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

#include "core/plan/findings/choice_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/wood/bending.hpp"

namespace fayline::plan {

static_assert(surestShare == 1 - 2 * wood::ruptureScatter);

namespace {

double rounded(double value, double step) {
    return std::round(value / step);
}

double strongest_N(const model::Piece& piece) {
    double most_N = 0;
    for (const model::Tool& tool : piece.holding.tools) most_N = std::max(most_N, tool.most_N);
    for (const model::Station& station : piece.holding.stations) {
        if (!station.side) most_N = std::max(most_N, station.most_N);
    }
    return most_N;
}

// One condition of the rule and how it is said: of the named, and of all where none meets it.
struct Condition {
    std::function<bool(const Choice&)> met;
    std::function<Message(const Choice&)> text;
    Message nobody;
};

std::vector<Condition> conditionsOf(const model::Piece& piece, const Plan& plan) {
    std::vector<Condition> conditions;
    conditions.push_back({[](const Choice& c) { return c.shareOnForm <= surestShare; },
                          [](const Choice& c) {
                              return Message(texts::withBend, {put::share(c.shareOnForm), put::share(surestShare)});
                          },
                          {texts::noneBendsSoLittle, {put::share(surestShare)}}});
    conditions.push_back(
        {[](const Choice& c) { return c.spares >= 0 && c.spares <= mostSpares; },
         [](const Choice& c) {
             return Message(texts::withSpares, {put::countWord(c.spares), put::countWord(mostSpares)}, c.spares);
         },
         texts::noneWithOneSpare});
    if (plan.form.letsGo) {
        conditions.push_back(
            {[](const Choice& c) { return c.springbackRatio <= mostSpringback; },
             [](const Choice& c) {
                 return Message(texts::withSpringback, {put::share(c.springbackRatio), put::share(mostSpringback)});
             },
             texts::noneSpringsSoLittle});
    }
    const double most_N = strongest_N(piece);
    if (most_N > 0) {
        conditions.push_back({[most_N](const Choice& c) { return c.endPull_N <= most_N; },
                              [most_N](const Choice& c) {
                                  return Message(texts::withEndPull, {put::force(c.endPull_N), put::force(most_N)});
                              },
                              texts::noneEasyToPull});
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

Message reasonOf(const Choice& choice, const std::vector<Condition>& conditions, std::size_t kept,
                 const model::Piece& piece, const Shop& shop) {
    const Message strips = stripsName(adopt(piece.stack, choice), shop.species);
    std::vector<Message> sentences;
    if (kept == 0) {
        sentences.push_back({texts::leastBent, {strips, put::share(choice.shareOnForm)}});
    } else {
        std::vector<Message> met;
        for (std::size_t i = 0; i < kept; ++i) met.push_back(conditions[i].text(choice));
        sentences.push_back({choice.mixed ? texts::fewestMixedWith : texts::fewestWith, {strips, put::list(met)}});
    }
    if (choice.asItIs) sentences.emplace_back(texts::haveItNow);
    if (kept < conditions.size()) sentences.push_back(conditions[kept].nobody);
    return {Phrase{"%1"}, {put::sentences(std::move(sentences))}};
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

int nameOne(std::vector<Choice>& choices, const model::Piece& piece, const Shop& shop, const Plan& plan) {
    const std::vector<Condition> conditions = conditionsOf(piece, plan);
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
