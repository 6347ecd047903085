// Items placed on lanes of boards, and the plan that comes of it.
#pragma once

#include <vector>

#include "core/stock/problem.hpp"

namespace fayline::stock {

struct Placed {
    int item = 0;
    Um at = 0;  // along the lane
    bool turned = false;
};

struct Lane {
    int section = 0;
    Span across;
    Span through;
    std::vector<Placed> placed;  // from its start on
};

struct Sawn {
    int kind = 0;  // index into Problem::kinds
    Sawing sawing = Sawing::ripped;
    std::vector<Lane> lanes;
};

struct Cutting {
    std::vector<Sawn> boards;
    std::vector<int> ways;  // by strip: index into Wanted::ways, -1: it is left out
};

double costOf(const Problem& problem, const Cutting& cutting);
int leftOutOf(const Problem& problem, const Cutting& cutting);  // weights of what is left out
int forcedOf(const Problem& problem, const Cutting& cutting);
int jointsOf(const Problem& problem, const Cutting& cutting);

// Less left out, then less forced, then cheaper, then fewer joints.
bool betterThan(const Problem& problem, const Cutting& one, const Cutting& other);

// Lays items along a lane in this order as far toward its start as they go; false: there is no room.
bool layAlong(const Problem& problem, Lane& lane, const std::vector<int>& items, Um laneLength,
              const std::vector<Span>& bad);

// The plan: each item given to a strip, those that lie on each other from lanes beside each other as far as may be.
// Bound and proof are left to the caller.
CutPlan planOf(const Job& job, const Problem& problem, const Cutting& cutting);

}  // namespace fayline::stock
