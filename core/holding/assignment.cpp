#include "core/holding/assignment.hpp"

#include <algorithm>
#include <numeric>

#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::holding {

namespace {

constexpr double rounding = 1 + 1e-9;

// Gives tools to stations so that as many as possible have one: station after station, moving those served already to
// other tools where that makes room (augmenting paths). A tool that a search in vain has looked at is never looked at
// again, so that many stations without hope cost little.
class Assignment {
public:
    Assignment(const model::Holding& holding, const std::vector<Served>& needs)
        : holding_(holding),
          needs_(needs),
          toolOf_(needs.size(), -1),
          users_(holding.tools.size()),
          seen_(holding.tools.size(), false),
          hopeless_(holding.tools.size(), false),
          weakestFirst_(holding.tools.size()) {
        std::iota(weakestFirst_.begin(), weakestFirst_.end(), 0);
        std::stable_sort(weakestFirst_.begin(), weakestFirst_.end(),
                         [&](int a, int b) { return tool(a).most_N < tool(b).most_N; });
        std::vector<int> order(needs.size());
        std::iota(order.begin(), order.end(), 0);
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) { return need(a).needed_N > need(b).needed_N; });
        for (const int station : order) {
            seen_ = hopeless_;
            if (!serve(station)) hopeless_ = seen_;
        }
    }

    const std::vector<int>& toolOf() const { return toolOf_; }

private:
    const model::Tool& tool(int index) const { return holding_.tools[index]; }
    const Served& need(int index) const { return needs_[index]; }

    bool suits(int toolIndex, int station) const {
        const model::Tool& one = tool(toolIndex);
        return one.kind == holding_.stations[station].kind && isStrong(one, need(station)) &&
               opensEnough(one, need(station)) && reaches(one, need(station));
    }

    bool serve(int station) {
        for (const int index : weakestFirst_) {
            const auto i = static_cast<std::size_t>(index);
            if (seen_[i] || !suits(index, station)) continue;
            if (math::countOf(users_[i]) < tool(index).count) {
                users_[i].push_back(station);
                toolOf_[station] = index;
                return true;
            }
        }
        for (const int index : weakestFirst_) {
            const auto i = static_cast<std::size_t>(index);
            if (seen_[i] || !suits(index, station)) continue;
            seen_[i] = true;
            for (int& user : users_[i]) {
                if (!serve(user)) continue;
                user = station;
                toolOf_[station] = index;
                return true;
            }
        }
        return false;
    }

    const model::Holding& holding_;
    const std::vector<Served>& needs_;
    std::vector<int> toolOf_;
    std::vector<std::vector<int>> users_;
    std::vector<bool> seen_;
    std::vector<bool> hopeless_;
    std::vector<int> weakestFirst_;
};

}  // namespace

bool isStrong(const model::Tool& tool, const Served& need) {
    return tool.most_N * rounding >= need.needed_N;
}

bool opensEnough(const model::Tool& tool, const Served& need) {
    return !model::traitsOf(tool.kind).hasJaws || !tool.opening_m || *tool.opening_m * rounding >= need.opening_m;
}

bool reaches(const model::Tool& tool, const Served& need) {
    return !model::traitsOf(tool.kind).hasJaws || !tool.throat_m || *tool.throat_m * rounding >= need.throat_m;
}

std::vector<int> assignTools(const model::Holding& holding, const std::vector<Served>& needs) {
    return Assignment(holding, needs).toolOf();
}

}  // namespace fayline::holding
