// What would help where boards do not suffice: each change is made and the job solved again.
#include <algorithm>
#include <cmath>
#include <optional>
#include <set>
#include <tuple>

#include "core/stock/stock.hpp"

namespace fayline::stock {

namespace {

class Curing {
public:
    Curing(const Job& job, const CutPlan& plan, const Effort& effort, const std::atomic<bool>& stop)
        : job_(job),
          plan_(plan),
          effort_{std::max(effort.rounds / 4, 1), std::max(effort.nodes / 4, 1), std::max(effort.rows / 4, 1L)},
          stop_(stop) {}

    std::vector<Cure> run() {
        if (plan_.missing.empty()) return {};
        if (job_.rules.sawing) {
            Cure cure{.kind = CureKind::otherSawing, .job = job_};
            cure.job.rules.sawing.reset();
            offer(std::move(cure));
        }
        Cure cure{.kind = CureKind::anotherScarf, .job = job_};
        ++cure.job.rules.extraScarfs;
        offer(std::move(cure));
        std::set<std::string> pieces;
        for (int strip : plan_.missing) pieces.insert(job_.strips[strip].piece);
        for (const std::string& piece : pieces) {
            leastChange(CureKind::thinnerStrips, piece, thinnerStep_m);
            moreThinner(piece);
            leastChange(CureKind::narrowerPiece, piece, narrowerStep_m);
        }
        for (int board = 0; board < static_cast<int>(job_.boards.size()); ++board)
            if (ofWantedWood(board)) boards(CureKind::anotherBoard, board, job_.boards[board]);
        longerBoard();
        std::stable_sort(found_.begin(), found_.end(), [](const Cure& a, const Cure& b) {
            return std::tuple(a.plan.missing.size(), a.extra, a.kind) <
                   std::tuple(b.plan.missing.size(), b.extra, b.kind);
        });
        return std::move(found_);
    }

private:
    bool stopped() const { return stop_.load(std::memory_order_relaxed); }

    // At once where first fit gives all.
    CutPlan solved(const Job& job) const {
        CutPlan first = firstCutPlan(job);
        return first.missing.empty() || stopped() ? first : bestCutPlan(job, effort_, stop_);
    }

    void offer(Cure cure) {
        if (stopped()) return;
        cure.plan = bestCutPlan(cure.job, effort_, stop_);
        if (cure.plan.missing.size() < plan_.missing.size()) found_.push_back(std::move(cure));
    }

    bool ofWantedWood(int board) const {
        return std::any_of(plan_.missing.begin(), plan_.missing.end(),
                           [&](int strip) { return job_.strips[strip].species == job_.boards[board].species; });
    }

    // The piece with its strips thinner or narrower by so much; none where they would be too thin or too narrow.
    std::optional<Cure> changed(CureKind kind, const std::string& piece, double less_m) const {
        Cure cure{.kind = kind, .piece = piece, .job = job_};
        for (Strip& strip : cure.job.strips) {
            if (strip.piece != piece) continue;
            double& size = kind == CureKind::thinnerStrips ? strip.thickness_m : strip.width_m;
            const double least = kind == CureKind::thinnerStrips ? std::max(thinnestCure_m, job_.rules.planerLeast_m)
                                                                 : narrowestCure * size;
            size -= less_m;
            if (size < least - 1e-9) return std::nullopt;
            cure.value_m = std::max(cure.value_m, size);
        }
        return cure;
    }

    // The fewest steps after which nothing is missing, by halving.
    void leastChange(CureKind kind, const std::string& piece, double step_m) {
        int most = 0;
        while (changed(kind, piece, (most + 1) * step_m)) ++most;
        if (most == 0 || stopped() || !solved(changed(kind, piece, most * step_m)->job).missing.empty()) return;
        int tooFew = 0;
        while (most - tooFew > 1 && !stopped()) {
            const int middle = (tooFew + most) / 2;
            (solved(changed(kind, piece, middle * step_m)->job).missing.empty() ? most : tooFew) = middle;
        }
        offer(*changed(kind, piece, most * step_m));
    }

    // One strip more, or some, each so much thinner that the wood of the piece is as deep.
    void moreThinner(const std::string& piece) {
        int count = 0;
        int last = -1;  // the outermost
        for (int i = 0; i < static_cast<int>(job_.strips.size()); ++i) {
            const Strip& strip = job_.strips[i];
            if (strip.piece != piece || strip.spare) continue;
            ++count;
            if (last < 0 || strip.place > job_.strips[last].place) last = i;
        }
        if (last < 0) return;
        for (int more = 1; more <= mostAdded && !stopped(); ++more) {
            Cure cure{.kind = CureKind::moreThinner, .piece = piece, .count = count + more, .job = job_};
            for (int i = 0; i < more; ++i) {
                Strip added = job_.strips[last];
                added.place += i + 1;
                added.outer = job_.strips[last].outer && i + 1 == more;
                cure.job.strips.push_back(added);
            }
            cure.job.strips[last].outer = false;
            bool tooThin = false;
            for (Strip& strip : cure.job.strips) {
                if (strip.piece != piece) continue;
                strip.thickness_m *= static_cast<double>(count) / (count + more);
                tooThin |= strip.thickness_m < std::max(thinnestCure_m, job_.rules.planerLeast_m);
                cure.value_m = std::max(cure.value_m, strip.thickness_m);
            }
            if (tooThin) return;
            if (solved(cure.job).missing.empty()) return offer(std::move(cure));
        }
    }

    // As few more as will do; of those that never do none.
    void boards(CureKind kind, int alike, const Board& board) {
        for (int count = 1; count <= mostAdded && !stopped(); ++count) {
            Cure cure{.kind = kind, .board = alike, .count = count, .job = job_};
            if (kind == CureKind::anotherBoard) {
                cure.job.boards[alike].count += count;
            } else {
                cure.job.boards.push_back(board);
                cure.job.boards.back().count = count;
                cure.value_m = board.length_m;
            }
            const double m3 = board.length_m * board.width_m * board.thickness_m;
            cure.extra = count * (plan_.aim == Aim::leastPrice ? board.price : m3);
            if (count < mostAdded && !solved(cure.job).missing.empty()) continue;
            return offer(std::move(cure));
        }
    }

    // The largest board of the wood, but so long that the longest missing strip comes whole, in whole 100 mm; its price
    // by its length.
    void longerBoard() {
        int longest = plan_.missing.front();
        for (int strip : plan_.missing)
            if (job_.strips[strip].length_m > job_.strips[longest].length_m) longest = strip;
        int alike = -1;
        const auto sectionOf = [&](int board) { return job_.boards[board].width_m * job_.boards[board].thickness_m; };
        for (int board = 0; board < static_cast<int>(job_.boards.size()); ++board)
            if (job_.boards[board].species == job_.strips[longest].species &&
                (alike < 0 || sectionOf(board) > sectionOf(alike)))
                alike = board;
        if (alike < 0) return;
        Board board = job_.boards[alike];
        const double snipe_m = job_.rules.planing_m > 0 ? 2 * job_.rules.snipe_m : 0;
        const double length_m = std::ceil((job_.strips[longest].length_m + snipe_m) * 10 - 1e-6) / 10;
        if (length_m <= board.length_m) return;
        board.price *= length_m / board.length_m;
        board.length_m = length_m;
        board.bad.clear();
        boards(CureKind::longerBoard, alike, board);
    }

    const Job& job_;
    const CutPlan& plan_;
    Effort effort_;
    const std::atomic<bool>& stop_;
    std::vector<Cure> found_;
};

}  // namespace

std::vector<Cure> cures(const Job& job, const CutPlan& plan, const Effort& effort, const std::atomic<bool>& stop) {
    return Curing(job, plan, effort, stop).run();
}

}  // namespace fayline::stock
