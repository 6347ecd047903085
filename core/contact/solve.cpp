#include <algorithm>
#include <cmath>
#include <limits>

#include "core/contact/along_step.hpp"
#include "core/contact/contact.hpp"
#include "core/contact/newton.hpp"

namespace fayline::contact {

namespace {

// Convergence: the greatest residual force is below this share of the scale, or below the residual that rounding of the
// gaps causes if that is more; and every hold that closes its gap does so within `closed_m`.
constexpr double balanced = 1e-10;
constexpr double closed_m = 1e-12;
// A larger residual never counts as converged, even where no step reduces it.
constexpr double balancedAtWorst = 1e-8;

// Continuation in the foundation's stiffness: from rest the solver begins with a soft foundation, on which the rod
// sinks in over this length, so that a whole free span lifts off in a few steps instead of element by element. It
// multiplies the stiffness by the factor whenever the residual is below `nearly`.
constexpr double softLayer_m = 0.1;
constexpr double foundationGrowth = 10;
constexpr double nearly = 3e-2;

// The penalty parameter of the augmented Lagrangian: it affects the line search only, not the answer. 1e5 N/m took the
// fewest steps of 1e5 to 1e9 on the rows of tests/published/rod_rows.csv with holds of half to fifty times their pulls.
constexpr double penalty_N_m = 1e5;
constexpr double patientPenalty_N_m = 1e6;  // at first; grows tenfold at a time
constexpr double greatestPatientPenalty_N_m = 1e9;

// What a closing hold gives way in a step: for pads one on the other, which cannot tell who pulls.
constexpr double closedYield_m_N = 1e-14;

// What holds each metre of rod where it is, by a step, for its bending stiffness, 1/m^4. A rod with nothing to pull it
// down may lie anywhere clear of the form, so it is kept more.
constexpr double kept = 1e-6;
constexpr double keptUnpulled = 1e-2;

// Steps from a given start, from rest, and from rest patiently.
constexpr int stepsFromStart = 30;
constexpr int stepsFromRest = 50;
constexpr int stepsPatiently = 150;
constexpr int mostTries = 30;  // along one step
// A rod that springs away goes on doing so: after so many steps it is let go. One that comes to rest far off the form
// (a free end of a strongly bent piece) is in balance within `nearly` before. Ours.
constexpr int stepsSpringing = 12;

struct Search {
    const Discrete& discrete;
    NewtonSystem system;
    Effort& effort;
    Multipliers multipliers;
    std::vector<double> x;
    Equilibrium balance;
    std::vector<double> step;
    std::vector<double> foreseen_N;  // pulls after it
    std::vector<double> nothing_m;   // as many noughts as holds
    std::vector<double> tried;
    Equilibrium triedBalance;
    AlongStep along;
    double keep_N_m2 = 0;  // a little of what holds a rod where it is, so that one off the form has a step at all
    int steps = 0;
    double offBalance_N = 0;
    double scale_N = 1;
    bool curvesUp = false;  // at the last step
    bool jumped = false;    // near balance it did not
    bool sprangAway = false;
    // Begins with the part of a step that the foundation foretells: near the answer this saves steps and tries; from
    // rest, where much besides the foundation changes along a step, the whole step is the better guess.
    bool foresees = false;
    bool patient = false;  // holds are told what to expect only once the forces balance, so the energy always falls
};

double dot(const std::vector<double>& a, const std::vector<double>& b) {
    double sum = 0;
    for (std::size_t i = 0; i < a.size(); ++i) sum += a[i] * b[i];
    return sum;
}

// The greatest force out of balance; of nodes closer than half the longest element the sum, for between those a gap's
// last digit makes forces of its own. Moments count by the force that they are over the longest element.
double outOfBalance(const Discrete& discrete, const Equilibrium& balance) {
    double worst = 0;
    const auto& nodes = discrete.nodes_m;
    std::size_t first = 0;
    for (std::size_t n = 0; n < nodes.size(); ++n) {
        if (n + 1 < nodes.size() && discrete.length_m[n] < discrete.longest_m / 2) continue;
        const double middle = (nodes[first] + nodes[n]) / 2;
        double force = 0;
        double moment = 0;
        for (std::size_t i = first; i <= n; ++i) {
            force += balance.force[2 * i];
            moment += balance.force[2 * i + 1] + balance.force[2 * i] * (nodes[i] - middle);
        }
        worst = std::max({worst, std::abs(force), std::abs(moment) / discrete.longest_m});
        first = n + 1;
    }
    return worst;
}

// The problem's own forces: the greatest pull, the load in all, and what it takes at the end of an arm of a metre (or
// of the rod, if that is shorter) to bend the rod to the form.
double ownForces(const Discrete& discrete, const Equilibrium& balance) {
    double pull = 0;
    for (const double each : balance.pull_N) pull = std::max(pull, each);
    return std::max({pull, discrete.load_N, discrete.moment_N_m / std::min(discrete.reach_m, 1.0),
                     std::numeric_limits<double>::min()});
}

// What rounding of the gaps alone leaves out of balance: a gap's last digit bends two neighbouring elements.
double roundingOf(const Discrete& discrete, const std::vector<double>& x) {
    double worst = 0;
    for (std::size_t e = 0; e < discrete.length_m.size(); ++e) {
        const double h = std::max(discrete.length_m[e], discrete.longest_m / 2);
        const double gap = std::max(std::abs(x[2 * e]), std::abs(x[2 * e + 2]));
        worst = std::max(worst, 12 * discrete.stiffness_N_m2[e] / (h * h * h) * gap);
    }
    return 4 * std::numeric_limits<double>::epsilon() * worst;
}

bool tryAt(Search& search, double part) {
    for (std::size_t i = 0; i < search.x.size(); ++i) search.tried[i] = search.x[i] + part * search.step[i];
    search.effort.spent += static_cast<double>(search.discrete.length_m.size());
    balanceOf(search.discrete, search.tried, search.multipliers, search.triedBalance);
    return search.triedBalance.withinReach;
}

// Goes along the step to a place of less energy where the slope has mostly gone. False: no such place was found,
// `tried` is not to be used.
bool goAlong(Search& search) {
    const double slope0 = dot(search.balance.force, search.step);
    const double energy0 = search.balance.energy;
    const double noise = 1e-13 * std::abs(energy0);
    double low = 0;
    double lowSlope = slope0;
    double high = 0;
    double highSlope = std::numeric_limits<double>::infinity();
    double part = 1;
    if (search.foresees && slope0 < 0) {
        part = search.along.least(search.discrete, search.x, search.step, search.multipliers.foundationShare, slope0);
        if (std::abs(part - 1) < 0.02) part = 1;
    }
    for (int tries = 0; tries < mostTries; ++tries) {
        bool lower = false;
        double slope = std::numeric_limits<double>::infinity();
        if (tryAt(search, part)) {
            slope = dot(search.triedBalance.force, search.step);
            // Near balance the energy's digits run out; there the slope alone tells.
            lower = search.triedBalance.energy <= energy0 + 1e-4 * part * slope0 ||
                    (search.triedBalance.energy <= energy0 + noise && std::abs(slope) <= 0.8 * std::abs(slope0));
            const bool flat = std::abs(slope) <= 0.6 * std::abs(slope0);
            // Where the foundation lets go along the step the energy goes on falling: further then.
            if (lower && high == 0 && part < mostOfStep && slope < -0.2 * std::abs(slope0)) {
                low = part;
                lowSlope = slope;
                part *= 2;
                continue;
            }
            if (lower && (flat || slope < 0 || tries > 12)) {
                if (flat || high == 0 || tries > 12) return true;
            }
        }
        if (slope > 0 || !lower) {
            high = part;
            highSlope = slope;
        } else {
            low = part;
            lowSlope = slope;
        }
        const double width = high - low;
        const double next = std::isfinite(highSlope) && highSlope > lowSlope
                                ? low - lowSlope * width / (highSlope - lowSlope)
                                : low + width / 3;
        part = std::clamp(next, low + 0.1 * width, high - 0.1 * width);
    }
    return false;
}

bool closes(const Search& search, double within_m = closed_m) {
    for (std::size_t i = 0; i < search.discrete.holds.size(); ++i)
        if (search.balance.between[i] && std::abs(search.balance.closing_m[i]) > within_m) return false;
    return true;
}

// Factorises exactly, or where the energy does not curve upward without what curves downward.
void factorise(Search& search) {
    const auto with = [&](Curving curving) {
        ++search.steps;
        ++search.effort.steps;
        search.effort.spent += static_cast<double>(search.discrete.length_m.size());
        return search.system.factorise(search.discrete, search.x, search.balance, search.multipliers.foundationShare,
                                       curving, search.keep_N_m2,
                                       search.patient ? 1 / search.multipliers.penalty_N_m : closedYield_m_N) &&
               search.system.curvesUp();
    };
    search.curvesUp = with(Curving::exact);
    if (search.curvesUp) return;
    if (search.multipliers.foundationShare == 1 && search.offBalance_N < nearly * search.scale_N) search.jumped = true;
    with(Curving::positive);
}

// One step of Newton's method. False: it leads nowhere.
bool newtonStep(Search& search) {
    factorise(search);
    if (search.patient) {
        search.system.step(search.balance, search.nothing_m, search.step, search.foreseen_N);
    } else {
        search.system.step(search.balance, search.balance.closing_m, search.step, search.multipliers.pull_N);
    }
    balanceAgain(search.discrete, search.x, search.multipliers, search.balance);
    const bool gone = goAlong(search);
    if (gone) {
        std::swap(search.x, search.tried);
        std::swap(search.balance, search.triedBalance);
    }
    for (std::size_t i = 0; i < search.balance.pull_N.size() && !search.patient; ++i)
        if (!search.balance.between[i]) search.multipliers.pull_N[i] = search.balance.pull_N[i];
    return gone;
}

// Patiently: the holds are told to expect what they pull; once they nearly close, the quick way does the rest.
void tell(Search& search) {
    search.multipliers.pull_N = search.balance.pull_N;
    search.patient = !closes(search, 1e-6);
    search.multipliers.penalty_N_m =
        search.patient ? std::min(greatestPatientPenalty_N_m, 10 * search.multipliers.penalty_N_m) : penalty_N_m;
    balanceAgain(search.discrete, search.x, search.multipliers, search.balance);
}

// Nothing held the rod back: it leans more than 60 degrees from the form, stands off by half its length, or has come to
// where the squares of a hollow form meet.
bool springsAway(const Search& search) {
    for (std::size_t e = 0; e < search.discrete.length_m.size(); ++e) {
        const double gap = search.x[2 * e + 2];
        const double left = 1 + search.discrete.pairs[e / 2].places[2].rod.curvature_per_m[e % 2] * gap;
        if (std::abs(gap) > search.discrete.reach_m / 2 || left < 0.1 || std::abs(search.x[2 * e + 3]) > 1.7 * left)
            return true;
    }
    return false;
}

// Steps until balance; true if it is found.
bool settle(Search& search, int steps) {
    balanceOf(search.discrete, search.x, search.multipliers, search.balance);
    if (!search.balance.withinReach) return false;
    const int last = search.steps + steps;
    int idle = 0;
    int springing = 0;
    search.sprangAway = false;
    while (true) {
        search.scale_N = ownForces(search.discrete, search.balance);
        search.offBalance_N = outOfBalance(search.discrete, search.balance);
        if (search.multipliers.foundationShare < 1 && search.offBalance_N < nearly * search.scale_N) {
            search.multipliers.foundationShare = std::min(1.0, search.multipliers.foundationShare * foundationGrowth);
            balanceOf(search.discrete, search.x, search.multipliers, search.balance);
            continue;
        }
        const double rounding = roundingOf(search.discrete, search.x);
        const double enough = std::max(balanced * search.scale_N, rounding / 8);
        if (search.offBalance_N < enough && closes(search)) return true;
        if (search.offBalance_N < 4 * rounding && closes(search) && ++idle > 3) return true;
        if (search.patient && search.multipliers.foundationShare == 1 && search.offBalance_N < 1e-3 * search.scale_N)
            tell(search);
        if (search.steps >= last || search.effort.ended()) return false;
        if (search.offBalance_N > nearly * search.scale_N && springsAway(search) && ++springing > stepsSpringing) {
            search.sprangAway = true;
            return false;
        }
        if (!newtonStep(search)) {
            if (search.multipliers.foundationShare == 1)
                return search.offBalance_N < balancedAtWorst * search.scale_N && closes(search);
            search.multipliers.foundationShare = 1;
            balanceOf(search.discrete, search.x, search.multipliers, search.balance);
        }
    }
}

// The state of another mesh, by place; beyond its ends it runs on straight in the gap. As many holds as there were
// expect what they pulled; of others all are thought to close, as from rest.
void carryOver(const Contact& start, Search& search) {
    const auto& from = start.nodes_m;
    std::size_t e = 0;
    for (std::size_t n = 0; n < search.discrete.nodes_m.size(); ++n) {
        const double at = search.discrete.nodes_m[n];
        while (e + 2 < from.size() && at >= from[e + 1]) ++e;
        const double h = from[e + 1] - from[e];
        const double part = std::clamp((at - from[e]) / h, 0.0, 1.0);
        const math::HermiteEnds<double> ends{start.gap_m[e], start.slope[e] * h, start.gap_m[e + 1],
                                             start.slope[e + 1] * h};
        const Gap gap = math::hermiteValues(math::hermiteBasisAt(part), ends, 1 / h);
        search.x[2 * n] = gap.value + gap.slope * (at - (from[e] + part * h));
        search.x[2 * n + 1] = gap.slope;
    }
    if (start.holds.size() != search.multipliers.pull_N.size()) return;
    for (std::size_t i = 0; i < start.holds.size(); ++i)
        search.multipliers.pull_N[i] = std::clamp(start.holds[i].pull_N, 0.0, search.discrete.holds[i].most_N);
}

// What each hold is thought to pull before anything is known: half of what it has, but no more than all that is given
// and what bends the rod to the form over the arm of a soft layer.
std::vector<double> firstPulls(const Discrete& discrete) {
    double own = discrete.moment_N_m / softLayer_m + discrete.load_N;
    for (const Hold& hold : discrete.holds) own += hold.pull_N.value_or(0);
    std::vector<double> pull_N;
    for (const Hold& hold : discrete.holds) pull_N.push_back(std::min(hold.most_N / 2, own));
    return pull_N;
}

bool pulled(const Discrete& discrete) {
    return std::ranges::any_of(discrete.holds,
                               [](const Hold& hold) { return hold.pull_N.value_or(hold.most_N) > 0; }) ||
           discrete.pressing_N > 0;
}

double firstFoundationShare(const Discrete& discrete) {
    const double foundation = discrete.stiffestFoundation_N_m2;
    const double soft = 4 * discrete.stiffest_N_m2 / std::pow(softLayer_m, 4);
    return soft < foundation ? soft / foundation : 1;
}

bool settleFromRest(Search& search, double foundationShare, bool patient, int steps) {
    std::ranges::fill(search.x, 0.0);
    search.multipliers.pull_N = firstPulls(search.discrete);
    search.multipliers.foundationShare = foundationShare;
    search.multipliers.penalty_N_m = patient ? patientPenalty_N_m : penalty_N_m;
    search.patient = patient;
    search.jumped = false;
    return settle(search, steps);
}

// A soft foundation settles most rods soonest; but it may give way so far under one that is held at one end alone that
// the rest swings away, where the whole foundation holds it.
bool settleFromRest(Search& search) {
    const double soft = firstFoundationShare(search.discrete);
    if (settleFromRest(search, soft, false, stepsFromRest)) return true;
    if (search.effort.ended()) return false;
    if (settleFromRest(search, 1, true, stepsPatiently)) return true;
    if (search.effort.ended() || search.sprangAway) return false;
    return settleFromRest(search, soft, true, stepsPatiently);
}

bool usable(const Contact* start) {
    return start && start->nodes_m.size() >= 2 && start->gap_m.size() == start->nodes_m.size() &&
           start->slope.size() == start->nodes_m.size();
}

HoldState stateOf(const Hold& hold, bool between, double pull_N) {
    if (hold.pull_N) return HoldState::given;
    if (between) return HoldState::closes;
    return pull_N > 0 ? HoldState::full : HoldState::slack;
}

Contact contactOf(Search& search, bool settled) {
    const Discrete& discrete = search.discrete;
    Contact contact{.outcome = !settled                            ? Outcome::notConverged
                               : search.jumped || !search.curvesUp ? Outcome::snaps
                                                                   : Outcome::settled,
                    .nodes_m = discrete.nodes_m,
                    .steps = search.steps,
                    .residual = search.offBalance_N / search.scale_N,
                    .springsAway = !settled && springsAway(search)};
    for (std::size_t n = 0; n < discrete.nodes_m.size(); ++n) {
        contact.gap_m.push_back(search.x[2 * n]);
        contact.slope.push_back(search.x[2 * n + 1]);
    }
    for (std::size_t i = 0; i < discrete.holds.size(); ++i) {
        const double pull = search.balance.pull_N[i];
        contact.holds.push_back({pull, search.balance.meanGap_m[i], search.balance.slip_m[discrete.chainOfHold[i]],
                                 stateOf(discrete.holds[i], search.balance.between[i] != 0, pull)});
    }
    return contact;
}

}  // namespace

Contact solve(const Problem& problem, const Contact* start) {
    const Discrete discrete = discreteOf(problem);
    Effort own;
    Search search{discrete, NewtonSystem(discrete), problem.effort ? *problem.effort : own};
    search.multipliers = {firstPulls(discrete), penalty_N_m, 1};
    search.x.assign(2 * discrete.nodes_m.size(), 0);
    search.tried = search.x;
    search.nothing_m.assign(discrete.holds.size(), 0);
    search.keep_N_m2 = (pulled(discrete) ? kept : keptUnpulled) * discrete.stiffest_N_m2;

    bool settled = false;
    if (usable(start)) {
        carryOver(*start, search);
        search.foresees = true;
        settled = settle(search, stepsFromStart);
        search.foresees = false;
    }
    if (!settled && !search.effort.ended()) settled = settleFromRest(search);
    if (!settled && (search.balance.force.empty() || !search.balance.withinReach)) {
        // There was no start, or none that is within reach, and no effort is left for another.
        std::ranges::fill(search.x, 0.0);
        balanceOf(discrete, search.x, search.multipliers, search.balance);
    }
    if (settled && search.steps == 0) factorise(search);
    return contactOf(search, settled);
}

}  // namespace fayline::contact
