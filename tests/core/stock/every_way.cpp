#include "tests/core/stock/every_way.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <string>
#include <tuple>

namespace fayline::stock {

namespace {

struct Size {
    int thick = 0;
    int wide = 0;
    auto operator<=>(const Size&) const = default;
};

// A strip or a part: `off[i]` says of its i-th unit whether a fault may lie there.
struct Piece {
    std::string wood;
    Size size;
    int length = 0;
    std::vector<bool> off;
    auto operator<=>(const Piece&) const = default;
};

struct Making {
    std::vector<int> joints;
    std::vector<int> pieces;  // by number
    int forced = 0;
};

class Trying {
public:
    Trying(const Job& job, double unit_m) : job_(job), unit_(unit_m) {
        kerf_ = units(job.rules.kerf_m);
        for (const Strip& strip : job.strips) spares_ += strip.spare ? 1 : 0;
    }

    BestOfAll run() {
        BestOfAll best = tried(false);
        const bool bend =
            std::any_of(job_.strips.begin(), job_.strips.end(), [](const Strip& s) { return !!s.tightest; });
        if (best.leftOut == 0 || !bend) return best;
        const BestOfAll other = tried(true);
        return other.leftOut < best.leftOut ? other : best;
    }

private:
    int units(double metres) const { return static_cast<int>(std::lround(metres / unit_)); }

    BestOfAll tried(bool mayForce) {
        makings_.clear();
        for (const Strip& strip : job_.strips) makings_.push_back(makingsOf(strip, mayForce));
        best_ = {1'000'000, 1'000'000, 0};
        chosen_.assign(job_.strips.size(), nullptr);
        choose(0, 0, 0);
        return best_;
    }

    // One strip after the other: left out, or made each way that keeps its distance from neighbours.
    void choose(std::size_t strip, int leftOut, int forced) {
        if (std::tie(leftOut, forced) > std::tie(best_.leftOut, best_.forced)) return;
        if (strip == job_.strips.size()) return boards(leftOut, forced);
        for (const Making& making : makings_[strip]) {
            chosen_[strip] = &making;
            if (apart(strip)) choose(strip + 1, leftOut, forced + making.forced);
        }
        chosen_[strip] = nullptr;
        choose(strip + 1, leftOut + (job_.strips[strip].spare ? 1 : spares_ + 1), forced);
    }

    bool apart(std::size_t strip) const {
        for (std::size_t other = 0; other < strip; ++other) {
            const Strip& a = job_.strips[strip];
            const Strip& b = job_.strips[other];
            if (!chosen_[other] || a.spare || b.spare || a.piece != b.piece || std::abs(a.place - b.place) != 1)
                continue;
            const int least = units(job_.rules.staggerThicknesses * std::max(a.thickness_m, b.thickness_m));
            for (int one : chosen_[strip]->joints)
                for (int two : chosen_[other]->joints)
                    if (std::abs(one - two) < least) return false;
        }
        return true;
    }

    // The cheapest boards that give what is chosen.
    void boards(int leftOut, int forced) {
        std::vector<int> pieces;
        for (const Making* making : chosen_)
            if (making) pieces.insert(pieces.end(), making->pieces.begin(), making->pieces.end());
        std::vector<int> used(job_.boards.size());
        const bool equal = std::tie(leftOut, forced) == std::tie(best_.leftOut, best_.forced);
        const double limit = equal ? best_.cost : 1e9;
        const double cost = share(pieces, 0, 0, limit);
        if (cost >= limit) return;
        best_ = {leftOut, forced, cost};
    }

    // From this board on (each copy of each) shares the pieces out; the least cost, or `limit` where there is none
    // less.
    double share(const std::vector<int>& pieces, std::size_t board, int copy, double limit) {
        if (pieces.empty()) return 0;
        if (board == job_.boards.size()) return limit;
        if (copy == job_.boards[board].count) return share(pieces, board + 1, 0, limit);
        double best = share(pieces, board + 1, 0, limit);  // no more of this kind
        const Board& is = job_.boards[board];
        const double cost = is.length_m * is.width_m * is.thickness_m;
        for (unsigned subset = 1; subset < (1u << pieces.size()); ++subset) {
            if (cost >= best) break;
            std::vector<int> here;
            std::vector<int> rest;
            for (std::size_t i = 0; i < pieces.size(); ++i) (subset >> i & 1 ? here : rest).push_back(pieces[i]);
            if (!gives(board, here)) continue;
            best = std::min(best, cost + share(rest, board, copy + 1, best - cost));
        }
        return best;
    }

    // Whether one board gives all these.
    bool gives(std::size_t board, std::vector<int> pieces) {
        std::sort(pieces.begin(), pieces.end());
        const auto [known, isNew] = given_.try_emplace({board, pieces}, false);
        if (!isNew) return known->second;
        bool can = std::all_of(pieces.begin(), pieces.end(),
                               [&](int piece) { return all_[piece].wood == job_.boards[board].species; });
        double asked = 0;  // a quick no: more wood than there is
        for (int piece : pieces) asked += 1.0 * all_[piece].length * all_[piece].size.thick * all_[piece].size.wide;
        const Board& is = job_.boards[board];
        if (asked > 1.0 * units(is.length_m) * units(is.width_m) * units(is.thickness_m)) can = false;
        if (can) {
            can = false;
            for (Sawing sawing : {Sawing::ripped, Sawing::resawn})
                if (!job_.rules.sawing || *job_.rules.sawing == sawing) can = can || bands(board, sawing, 0, pieces);
        }
        return given_[{board, pieces}] = can;
    }

    int numberOf(const Piece& piece) {
        const auto [number, isNew] = numbers_.try_emplace(piece, static_cast<int>(all_.size()));
        if (isNew) all_.push_back(piece);
        return number->second;
    }

    int across(const Piece& piece, Sawing sawing) const {
        return sawing == Sawing::ripped ? piece.size.thick : piece.size.wide;
    }
    int through(const Piece& piece, Sawing sawing) const {
        return sawing == Sawing::ripped ? piece.size.wide : piece.size.thick;
    }

    bool bands(std::size_t board, Sawing sawing, int free, const std::vector<int>& left) {
        if (left.empty()) return true;
        std::set<int> widths;
        for (int piece : left) widths.insert(across(all_[piece], sawing));
        for (int width : widths) {
            std::set<std::vector<int>> seen;  // further across with the same faults is no better
            for (int at = free; at + width <= units(job_.boards[board].width_m); ++at)
                if (seen.insert(badAlong(board, at, at + width)).second && lanes(board, sawing, at, width, 0, left))
                    return true;
        }
        return false;
    }

    bool lanes(std::size_t board, Sawing sawing, int at, int width, int deep, const std::vector<int>& left) {
        if (deep > 0 && bands(board, sawing, at + width + kerf_, left)) return true;
        std::set<Size> sizes;
        for (int piece : left)
            if (across(all_[piece], sawing) == width) sizes.insert(all_[piece].size);
        for (const Size& size : sizes) {
            const int d = sawing == Sawing::ripped ? size.wide : size.thick;
            if (deep + d > units(job_.boards[board].thickness_m)) continue;
            if (along(board, sawing, at, width, deep + d + kerf_, size, 0, badAlong(board, at, at + width), left))
                return true;
        }
        return false;
    }

    // The units along a lane that are bad, in order.
    std::vector<int> badAlong(std::size_t board, int from, int to) const {
        const Board& is = job_.boards[board];
        std::set<int> bad;
        const auto mark = [&](double start_m, double end_m) {
            for (int x = std::max(units(start_m), 0); x < std::min(units(end_m), units(is.length_m)); ++x)
                bad.insert(x);
        };
        for (const Bad& one : is.bad)
            if (!one.across || (units(one.across->from_m) < to && units(one.across->to_m) > from))
                mark(one.along.from_m, one.along.to_m);
        if (job_.rules.planing_m > 0) {
            mark(0, job_.rules.snipe_m);
            mark(is.length_m - job_.rules.snipe_m, is.length_m);
        }
        return {bad.begin(), bad.end()};
    }

    bool along(std::size_t board, Sawing sawing, int at, int width, int nextDeep, const Size& size, int free,
               const std::vector<int>& bad, const std::vector<int>& left) {
        if (free > 0 && lanes(board, sawing, at, width, nextDeep, left)) return true;
        for (std::size_t i = 0; i < left.size(); ++i) {
            const Piece& piece = all_[left[i]];
            if (piece.size != size || (i > 0 && left[i] == left[i - 1])) continue;
            const int start = firstPlace(piece, free, bad, units(job_.boards[board].length_m));
            if (start < 0) continue;
            std::vector<int> rest = left;
            rest.erase(rest.begin() + static_cast<std::ptrdiff_t>(i));
            if (along(board, sawing, at, width, nextDeep, size, start + piece.length + kerf_, bad, rest)) return true;
        }
        return false;
    }

    static int firstPlace(const Piece& piece, int free, const std::vector<int>& bad, int length) {
        for (int at = free; at + piece.length <= length; ++at) {
            bool plain = true;
            bool turned = true;
            for (int x : bad) {
                if (x < at || x >= at + piece.length) continue;
                plain &= piece.off[x - at];
                turned &= piece.off[piece.length - 1 - (x - at)];
            }
            if (plain || turned) return at;
        }
        return -1;
    }

    // All ways to make a strip: the fewest joints, none in the tightest third unless there is no other way.
    std::vector<Making> makingsOf(const Strip& strip, bool mayForce) {
        std::vector<Making> all;
        const int length = units(strip.length_m);
        const int step = units(job_.rules.scarfStep_m);
        std::vector<int> places;
        for (int at = step; at < length; at += step) places.push_back(at);
        for (unsigned subset = 0; subset < (1u << places.size()); ++subset) {
            Making making;
            for (std::size_t i = 0; i < places.size(); ++i)
                if (subset >> i & 1) making.joints.push_back(places[i]);
            if (cut(strip, making)) all.push_back(std::move(making));
        }
        int fewestAtAll = 1000;
        std::pair<int, int> least{1000, 1000};
        for (const Making& making : all) {
            const int joints = static_cast<int>(making.joints.size());
            least = std::min(least, {making.forced, joints});
            fewestAtAll = std::min(fewestAtAll, joints);
        }
        std::vector<Making> kept;
        for (Making& making : all) {
            const int joints = static_cast<int>(making.joints.size());
            const bool clean = making.forced == least.first && joints == least.second;
            if (clean || (mayForce && joints >= fewestAtAll && joints <= least.second))
                kept.push_back(std::move(making));
        }
        return kept;
    }

    // Fills in parts; false: one of them no board gives, or it is too short.
    bool cut(const Strip& strip, Making& making) {
        const int length = units(strip.length_m);
        const int scarf = units(job_.rules.scarfSlope * strip.thickness_m);
        std::vector<bool> off(length, strip.sacrificial);
        for (const Stretch& one : strip.takenOff)
            for (int x = std::max(units(one.from_m), 0); x < std::min(units(one.to_m), length); ++x) off[x] = true;
        for (int joint : making.joints) {
            if (joint - scarf / 2 < 0 || joint + scarf / 2 > length) return false;
            if (strip.tightest && joint - scarf / 2 < units(strip.tightest->to_m) &&
                joint + scarf / 2 > units(strip.tightest->from_m))
                making.forced += strip.outer ? 2 : 1;
        }
        for (std::size_t part = 0; part <= making.joints.size(); ++part) {
            const bool first = part == 0;
            const bool last = part == making.joints.size();
            const int from = first ? 0 : making.joints[part - 1] - scarf / 2;
            const int to = last ? length : making.joints[part] + scarf / 2;
            if (!(first && last) &&
                (to - from < units(job_.rules.leastPart_m) || to - from < scarf * ((first ? 0 : 1) + (last ? 0 : 1))))
                return false;
            Piece piece{strip.species,
                        {units(strip.thickness_m + 2 * job_.rules.planing_m),
                         units(strip.width_m + 2 * job_.rules.widthAllowance_m)},
                        to - from,
                        {}};
            for (int x = from; x < to; ++x)
                piece.off.push_back(off[x] && (first || x >= from + scarf) && (last || x < to - scarf));
            const int number = numberOf(piece);
            bool any = false;
            for (std::size_t board = 0; board < job_.boards.size() && !any; ++board)
                any = job_.boards[board].count > 0 && gives(board, {number});
            if (!any) return false;
            making.pieces.push_back(number);
        }
        return true;
    }

    const Job& job_;
    double unit_ = 1;
    int kerf_ = 0;
    int spares_ = 0;
    std::vector<std::vector<Making>> makings_;
    std::vector<const Making*> chosen_;
    std::vector<Piece> all_;
    std::map<Piece, int> numbers_;
    std::map<std::pair<std::size_t, std::vector<int>>, bool> given_;
    BestOfAll best_;
};

}  // namespace

BestOfAll bestOfAll(const Job& job, double unit_m) {
    return Trying(job, unit_m).run();
}

}  // namespace fayline::stock
