#include "core/stock/search.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "core/stock/cutting_program.hpp"
#include "core/stock/first_fit.hpp"

namespace fayline::stock {

namespace {

constexpr double same = 1e-6;               // costs of the program that differ by less are one; a board costs up to 1
constexpr std::size_t mostOfAll = 1200;     // columns when every way to cut is written down
constexpr std::size_t mostNearBest = 6000;  // when those near the best are
constexpr std::size_t mostPatterns = 3000;  // of the lanes of one choice of boards
constexpr double sparing[] = {0.15, 0.08, 0.04};
constexpr int sparingRounds = 3;
constexpr int diveTries = 12;
constexpr int mostByBands = 16;  // boards that are looked at one by one

class Searching {
public:
    Searching(const Problem& problem, const Cutting& first, const Effort& effort, const std::atomic<bool>& stop,
              const std::function<void(const Found&)>& better)
        : problem_(problem),
          effort_(effort),
          stop_(stop),
          better_(better),
          program_(problem),
          nodes_(effort.nodes),
          rows_(effort.rows) {
        found_.cutting = first;
        for (const Kind& kind : problem.kinds) all_.push_back(static_cast<int>(kind.copies.size()));
        for (const Wanted& wanted : problem.wanted)
            if (wanted.ways.empty()) found_.leftOut += wanted.weight;
    }

    Found run() {
        if (problem_.items.empty() || problem_.kinds.empty()) {  // there is nothing to choose
            settle();
            return found_;
        }
        program_.aimAt(Least::cost, all_);
        root_ = program_.relaxed(rows_, stop_);
        if (!root_.solved) {
            boundByPrices();
            return found_;
        }
        take(program_.rounded(all_, false));
        if (everyWay() || stopped()) return found_;
        if (leftOut() > found_.leftOut) fewestLeftOut();
        if (leftOut() == found_.leftOut && !stopped()) {
            if (leftOut() > 0) {
                found_.proven = true;
            } else {
                raise(root_.value);
                withSomeToSpare();
                byBoards();
            }
        }
        return found_;
    }

private:
    bool stopped() const { return stop_.load(std::memory_order_relaxed); }
    int leftOut() const { return leftOutOf(problem_, found_.cutting); }
    double cost() const { return costOf(problem_, found_.cutting) / program_.costScale(); }

    bool take(const Cutting& cutting) {
        if (!betterThan(problem_, cutting, found_.cutting)) return false;
        found_.cutting = cutting;
        if (better_) better_(found_);
        return true;
    }

    // Of a value of the program, which has forced scarfs in it.
    void raise(double value) {
        const double cost = value - forcedOf(problem_, found_.cutting) * program_.forcedCost() - same;
        found_.bound = std::max(found_.bound, std::max(cost, 0.0) * program_.costScale());
    }

    void settle() {
        found_.proven = true;
        found_.bound = costOf(problem_, found_.cutting);
        found_.leftOut = leftOut();
    }

    // Writes down all there is, where that is little, and leaves the rest to the integer program.
    bool everyWay() {
        std::vector<int> kinds;
        for (int k = 0; k < static_cast<int>(all_.size()); ++k)
            if (all_[k] > 0) kinds.push_back(k);
        if (!program_.addAll(kinds, root_.worth, unbounded, mostOfAll)) return false;
        program_.aimAt(Least::cost, all_);
        int nodes = std::min(nodes_, effort_.nodes / 4);
        nodes_ -= nodes;
        const CuttingProgram::Integral best = program_.integral(nodes, root_.value + same, stop_);
        if (best.cutting) take(*best.cutting);
        if (best.finished && best.cutting) settle();
        return found_.proven;
    }

    void fewestLeftOut() {
        program_.aimAt(Least::leftOut, all_);
        const CuttingProgram::Relaxed relaxed = program_.relaxed(rows_, stop_);
        if (!relaxed.solved) return;
        const int least = static_cast<int>(std::ceil(relaxed.value - same));
        found_.leftOut = std::max(found_.leftOut, least);
        take(program_.rounded(all_, false));
        if (leftOut() <= found_.leftOut) return;
        const CuttingProgram::Integral best = program_.integral(nodes_, least + 0.5, stop_);
        if (best.cutting) take(filled(*best.cutting, all_));
    }

    // With first fit for what was left out.
    Cutting filled(const Cutting& cutting, const std::vector<int>& boards) const {
        FirstFit given{.begun = cutting, .mayOpen = boards};
        for (const Sawn& board : cutting.boards) --given.mayOpen[board.kind];
        for (int way : cutting.ways) given.placed.push_back(way >= 0);
        return firstFit(problem_, given);
    }

    // What the first prices prove, where they are not the last.
    void boundByPrices() {
        if (root_.prices.empty() || stopped() || leftOut() > 0) return;
        take(program_.rounded(all_, false));
        IntegerProgram choice;
        offer(choice);
        demand(choice, root_, 1);
        const IntegerProgram::Integral chosen = choice.integral(std::max(nodes_ / 4, 1), -unbounded, stop_);
        if (!stopped() && chosen.bound > 0)
            raise(chosen.bound + forcedOf(problem_, found_.cutting) * program_.forcedCost());
    }

    void offer(IntegerProgram& choice) const {
        for (int k = 0; k < static_cast<int>(all_.size()); ++k)
            choice.addColumn(problem_.kinds[k].cost / program_.costScale(), 0, all_[k], true, {});
    }

    std::vector<int> boardsOf(const IntegerProgram::Integral& chosen) const {
        std::vector<int> boards;
        for (int k = 0; k < static_cast<int>(all_.size()); ++k)
            boards.push_back(static_cast<int>(std::llround(chosen.columns[k])));
        return boards;
    }

    // Choices with some wood to spare, in which the strips find room with less trouble: a good answer soon.
    void withSomeToSpare() {
        for (const double spare : sparing) {
            IntegerProgram choice;
            offer(choice);
            demand(choice, root_, 1 + spare);
            for (int round = 0; round < sparingRounds && nodes_ > 0 && !stopped(); ++round) {
                const IntegerProgram::Integral chosen = choice.integral(std::max(nodes_ / 20, 1), -unbounded, stop_);
                nodes_ -= chosen.nodes;
                if (chosen.columns.empty() || chosen.value >= cost() - same) return;
                const std::vector<int> boards = boardsOf(chosen);
                const Given given = gives(boards, chosen.value, effort_.nodes / 50);
                if (given.all) break;
                if (given.relaxed) {
                    demand(choice, *given.relaxed, 1 + spare);
                } else {
                    passOver(choice, boards);
                }
            }
        }
    }

    // Chooses boards by what is known of their worth, cheapest first, until a choice gives all strips.
    void byBoards() {
        IntegerProgram choice;
        offer(choice);
        demand(choice, root_, 1);
        bool sure = true;  // every choice that was passed over is known to give too little
        for (int round = 0; round < effort_.rounds && nodes_ > 0 && !stopped(); ++round) {
            const IntegerProgram::Integral chosen = choice.integral(std::max(nodes_ / 4, 1), -unbounded, stop_);
            nodes_ -= chosen.nodes;
            if (stopped()) return;
            if (chosen.columns.empty()) {
                if (chosen.finished && sure) settle();
                return;
            }
            if (sure) raise(chosen.bound + forcedOf(problem_, found_.cutting) * program_.forcedCost() + same);
            if (chosen.value >= cost() - same) {
                if (chosen.finished && sure) settle();
                return;
            }
            const std::vector<int> boards = boardsOf(chosen);
            const Given given = gives(boards, chosen.value, effort_.nodes / 10);
            if (given.all && sure && chosen.finished) {
                settle();
                return;
            }
            if (given.relaxed) {
                demand(choice, *given.relaxed, 1);
            } else {
                sure &= given.sureNot;
                passOver(choice, boards);
            }
        }
    }

    struct Given {
        bool all = false;                                // every strip
        bool sureNot = false;                            // it is known that it does not
        std::optional<CuttingProgram::Relaxed> relaxed;  // even in fractions it does not
    };

    Given gives(const std::vector<int>& boards, double value, int nodes) {
        program_.aimAt(Least::leftOut, boards);
        CuttingProgram::Relaxed relaxed = program_.relaxed(rows_, stop_);
        if (!relaxed.solved) return {};
        if (relaxed.value > same) return {false, true, std::move(relaxed)};
        FirstFit given{.mayOpen = boards};
        if (takeWhole(firstFit(problem_, given)) || takeWhole(program_.rounded(boards, true))) return {true};
        std::vector<int> kinds;
        for (int k = 0; k < static_cast<int>(boards.size()); ++k)
            if (boards[k] > 0) kinds.push_back(k);
        if (program_.addAll(kinds, root_.worth, std::max(value - root_.value, 0.0) + same, mostNearBest)) {
            return wholeNumbers(program_, boards, std::min(nodes_ / 4, 4 * nodes));
        }
        if (dived(boards)) return {true};
        return byBands(boards, nodes);
    }

    // Board by board sawn as the relaxed answer does most; where strips are left out then, the next most is tried.
    bool dived(const std::vector<int>& boards) {
        std::vector<int> settled;
        bool found = false;
        for (int tries = diveTries; tries > 0 && !stopped() && !found; --tries) {
            const int layout = program_.mostInPart();
            if (layout < 0) break;
            program_.settle(layout, true);
            const CuttingProgram::Relaxed relaxed = program_.relaxed(rows_, stop_);
            settled.push_back(layout);
            if (!relaxed.solved) break;
            found = takeWhole(program_.rounded(boards, true));
        }
        for (int layout : settled) program_.settle(layout, false);
        return found;
    }

    // The columns that there are in whole numbers.
    Given wholeNumbers(CuttingProgram& program, const std::vector<int>& boards, int most) {
        int nodes = std::max(std::min(nodes_, most), 1);
        nodes_ -= nodes;
        const CuttingProgram::Integral best = program.integral(nodes, 0.5, stop_);
        nodes_ += nodes;
        if (!best.cutting) return {false, best.finished};
        if (takeWhole(filled(*best.cutting, boards))) return {true};
        takeWhole(filled(*best.cutting, all_));  // with one board more
        return {false, best.finished};
    }

    // Boards one by one, bands laid across each.
    Given byBands(const std::vector<int>& boards, int nodes) {
        if (std::accumulate(boards.begin(), boards.end(), 0) > mostByBands) return {};
        CuttingProgram program(problem_);
        const bool all = program.useBands(boards);
        program.aimAt(Least::leftOut, boards);
        const CuttingProgram::Relaxed relaxed = program.relaxed(rows_, stop_);
        if (!relaxed.solved) return {};
        if (relaxed.value > same) return {false, all};
        const bool every = program.addAllPatterns(mostPatterns);
        const Given given = wholeNumbers(program, boards, nodes);
        return {given.all, given.sureNot && all && every};
    }

    bool takeWhole(const Cutting& cutting) { return leftOutOf(problem_, cutting) == 0 && (take(cutting), true); }

    // The worth of the boards chosen has to come up to what the strips ask.
    static void demand(IntegerProgram& choice, const CuttingProgram::Relaxed& relaxed, double share) {
        if (!(relaxed.asked > same)) return;
        Entries entries;  // a board that is worth more than all is worth all
        for (int k = 0; k < static_cast<int>(relaxed.prices.size()); ++k)
            if (relaxed.prices[k] > 0) entries.emplace_back(k, std::min(relaxed.prices[k] / relaxed.asked, share));
        choice.addRow(share - same, unbounded, entries);
    }

    // Of one kind at least there must be more than in this choice.
    void passOver(IntegerProgram& choice, const std::vector<int>& boards) const {
        Entries one;
        for (int k = 0; k < static_cast<int>(boards.size()); ++k) {
            if (boards[k] >= all_[k]) continue;
            const int more = choice.addColumn(0, 0, 1, true, {});
            choice.addRow(0, unbounded, {{k, 1.0}, {more, -1.0 - boards[k]}});
            one.emplace_back(more, 1.0);
        }
        choice.addRow(1, unbounded, one);
    }

    const Problem& problem_;
    const Effort& effort_;
    const std::atomic<bool>& stop_;
    const std::function<void(const Found&)>& better_;
    CuttingProgram program_;
    CuttingProgram::Relaxed root_;
    std::vector<int> all_;
    int nodes_ = 0;
    long rows_ = 0;
    Found found_;
};

}  // namespace

Found search(const Problem& problem, const Cutting& first, const Effort& effort, const std::atomic<bool>& stop,
             const std::function<void(const Found&)>& better) {
    return Searching(problem, first, effort, stop, better).run();
}

}  // namespace fayline::stock
