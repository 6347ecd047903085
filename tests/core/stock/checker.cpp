#include "tests/core/stock/checker.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>
#include <sstream>
#include <tuple>

namespace fayline::stock {

namespace {

// Lengths are whole micrometres in the answer.
constexpr double close = 2.5e-6;

class Checking {
public:
    Checking(const Job& job, const CutPlan& plan) : job_(job), plan_(plan) {}

    std::vector<std::string> run() {
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i) single(plan_.cuts[i]);
        for (std::size_t i = 0; i < plan_.cuts.size(); ++i)
            for (std::size_t k = i + 1; k < plan_.cuts.size(); ++k) pair(plan_.cuts[i], plan_.cuts[k]);
        for (std::size_t s = 0; s < job_.strips.size(); ++s) whole(static_cast<int>(s));
        neighbours();
        pins();
        boards();
        return wrong_;
    }

private:
    template <class... Words>
    void say(const Words&... words) {
        std::ostringstream text;
        ((text << words << ' '), ...);
        wrong_.push_back(text.str());
    }

    void single(const Cut& cut) {
        if (cut.board < 0 || cut.board >= static_cast<int>(job_.boards.size())) return say("no board", cut.board);
        const Board& board = job_.boards[cut.board];
        const Strip& strip = job_.strips.at(cut.strip);
        if (cut.copy < 0 || cut.copy >= board.count) say("board", cut.board, "has no copy", cut.copy);
        if (board.species != strip.species) say("strip", cut.strip, "is of another wood than its board");
        const double thick = strip.thickness_m + 2 * job_.rules.planing_m;
        const double wide = strip.width_m + 2 * job_.rules.widthAllowance_m;
        const bool ripped = cut.sawing == Sawing::ripped;
        if (std::abs(cut.across.to_m - cut.across.from_m - (ripped ? thick : wide)) > close ||
            std::abs(cut.through.to_m - cut.through.from_m - (ripped ? wide : thick)) > close)
            say("the lane of strip", cut.strip, "is not of its section");
        if (job_.rules.sawing && *job_.rules.sawing != cut.sawing) say("strip", cut.strip, "is sawn the other way");
        within(cut.across, board.width_m, "width", cut);
        within(cut.through, board.thickness_m, "thickness", cut);
        within(cut.along, board.length_m, "length", cut);
        const double long_m = cut.along.to_m - cut.along.from_m;
        if (std::abs(long_m - (cut.ofStrip.to_m - cut.ofStrip.from_m)) > close)
            say("strip", cut.strip, "part", cut.part, "is not as long as it is of the strip");
        if (cut.parts > 1 && long_m < job_.rules.leastPart_m - close) say("strip", cut.strip, "has too short a part");
        faults(cut, board, strip);
    }

    void within(const Stretch& stretch, double most, const char* of, const Cut& cut) {
        if (stretch.from_m < -close || stretch.to_m > most + close)
            say("strip", cut.strip, "lies beyond the", of, "of its board:", stretch.from_m, "to", stretch.to_m);
    }

    // Where a scarf is cut there is no fault either, nor in a strip but where it is taken off or sacrificial.
    void faults(const Cut& cut, const Board& board, const Strip& strip) {
        std::vector<Bad> bads = board.bad;
        if (job_.rules.planing_m > 0 && job_.rules.snipe_m > 0) {
            bads.push_back({{0, job_.rules.snipe_m}, {}});
            bads.push_back({{board.length_m - job_.rules.snipe_m, board.length_m}, {}});
        }
        const double scarf = job_.rules.scarfSlope * strip.thickness_m;
        bool faulty = false;
        for (const Bad& bad : bads) {
            if (bad.across && (bad.across->to_m <= cut.across.from_m + close ||
                               bad.across->from_m >= cut.across.to_m - close || bad.across->to_m <= bad.across->from_m))
                continue;
            const double from = std::max(bad.along.from_m, cut.along.from_m);
            const double to = std::min(bad.along.to_m, cut.along.to_m);
            if (to - from <= close) continue;
            faulty = true;
            // Where it lies along the strip.
            const double one = cut.turned ? cut.along.to_m - to : from - cut.along.from_m;
            Stretch on{cut.ofStrip.from_m + one, cut.ofStrip.from_m + one + (to - from)};
            const bool inScarf = (cut.part > 0 && on.from_m < cut.ofStrip.from_m + scarf - close) ||
                                 (cut.part + 1 < cut.parts && on.to_m > cut.ofStrip.to_m - scarf + close);
            if (inScarf || !takenOff(strip, on)) say("strip", cut.strip, "has a fault from", on.from_m, "to", on.to_m);
        }
        if (faulty != cut.faulty)
            say("strip", cut.strip, faulty ? "has a fault" : "has no fault", "unlike what is said");
    }

    static bool takenOff(const Strip& strip, Stretch on) {
        if (strip.sacrificial) return true;
        std::vector<Stretch> off = strip.takenOff;
        std::sort(off.begin(), off.end(), [](const Stretch& a, const Stretch& b) { return a.from_m < b.from_m; });
        double reached = on.from_m;
        for (const Stretch& one : off)
            if (one.from_m <= reached + close) reached = std::max(reached, one.to_m);
        return reached >= on.to_m - close;
    }

    // Two cuts of one board: a saw cut between them one way at least; a plank is ripped one way.
    void pair(const Cut& one, const Cut& other) {
        if (one.board != other.board || one.copy != other.copy) return;
        if (one.sawing != other.sawing) say("board", one.board, "is ripped and resawn");
        const double kerf = job_.rules.kerf_m - close;
        const auto apart = [&](const Stretch& a, const Stretch& b) {
            return b.from_m - a.to_m >= kerf || a.from_m - b.to_m >= kerf;
        };
        const auto equal = [](const Stretch& a, const Stretch& b) {
            return std::abs(a.from_m - b.from_m) < close && std::abs(a.to_m - b.to_m) < close;
        };
        const bool sameLane = equal(one.across, other.across) && equal(one.through, other.through);
        if (sameLane) {
            if (!apart(one.along, other.along)) say("strips", one.strip, "and", other.strip, "overlap along a lane");
            return;
        }
        // Lanes run through the whole board: they are apart across or, within one band, through it.
        if (apart(one.across, other.across)) return;
        if (equal(one.across, other.across) && apart(one.through, other.through)) return;
        say("strips", one.strip, "and", other.strip, "lie in lanes that overlap");
    }

    void whole(int index) {
        const Strip& strip = job_.strips[index];
        std::vector<Cut> parts;
        for (const Cut& cut : plan_.cuts)
            if (cut.strip == index) parts.push_back(cut);
        std::vector<ScarfCut> scarfs;
        for (const ScarfCut& scarf : plan_.scarfs)
            if (scarf.strip == index) scarfs.push_back(scarf);
        const bool missing = std::count(plan_.missing.begin(), plan_.missing.end(), index) > 0;
        if (missing) {
            if (!parts.empty() || !scarfs.empty()) say("strip", index, "is missing and cut");
            return;
        }
        if (parts.empty()) return say("strip", index, "is neither cut nor missing");
        std::sort(parts.begin(), parts.end(), [](const Cut& a, const Cut& b) { return a.part < b.part; });
        std::sort(scarfs.begin(), scarfs.end(), [](const ScarfCut& a, const ScarfCut& b) { return a.at_m < b.at_m; });
        if (scarfs.size() + 1 != parts.size()) return say("strip", index, "has not as many scarfs as it needs");
        const double scarf = job_.rules.scarfSlope * strip.thickness_m;
        for (std::size_t p = 0; p < parts.size(); ++p) {
            if (parts[p].part != static_cast<int>(p) || parts[p].parts != static_cast<int>(parts.size()))
                say("parts of strip", index, "are not counted right");
            const double from = p == 0 ? 0 : scarfs[p - 1].at_m - scarf / 2;
            const double to = p + 1 == parts.size() ? strip.length_m : scarfs[p].at_m + scarf / 2;
            if (std::abs(parts[p].ofStrip.from_m - from) > close || std::abs(parts[p].ofStrip.to_m - to) > close)
                say("part", p, "of strip", index, "does not reach from scarf to scarf");
        }
        for (std::size_t i = 0; i < scarfs.size(); ++i) {
            if (std::abs(scarfs[i].length_m - scarf) > close) say("a scarf of strip", index, "is not of its slope");
            if (i > 0 && scarfs[i].at_m - scarfs[i - 1].at_m < scarf - close) say("scarfs of strip", index, "overlap");
            const bool inBend = strip.tightest && scarfs[i].at_m - scarf / 2 < strip.tightest->to_m - close &&
                                scarfs[i].at_m + scarf / 2 > strip.tightest->from_m + close;
            if (inBend != (scarfs[i].forced != Forced::no))
                say("strip", index, "has a scarf at", scarfs[i].at_m, "that is", inBend ? "" : "not",
                    "in the tightest third, unlike what is said");
        }
    }

    void neighbours() {
        for (const ScarfCut& one : plan_.scarfs)
            for (const ScarfCut& other : plan_.scarfs) {
                const Strip& a = job_.strips[one.strip];
                const Strip& b = job_.strips[other.strip];
                if (a.piece != b.piece || a.place + 1 != b.place || a.spare || b.spare) continue;
                const double least = job_.rules.staggerThicknesses * std::max(a.thickness_m, b.thickness_m);
                if (std::abs(one.at_m - other.at_m) < least - close)
                    say("scarfs of strips", one.strip, "and", other.strip, "are not staggered");
            }
    }

    void pins() {
        for (const Pin& pin : job_.rules.pins)
            for (const Cut& cut : plan_.cuts)
                if (cut.strip == pin.strip && (cut.board != pin.board || (pin.copy && cut.copy != *pin.copy)))
                    say("strip", pin.strip, "does not come from the board it is pinned to");
    }

    void boards() {
        std::set<std::pair<int, int>> cut;
        for (const Cut& one : plan_.cuts) cut.insert({one.board, one.copy});
        std::set<std::pair<int, int>> said;
        double m3 = 0;
        double price = 0;
        for (const BoardUse& use : plan_.boards) {
            if (!said.insert({use.board, use.copy}).second) say("board", use.board, "is listed twice");
            const Board& board = job_.boards[use.board];
            m3 += board.length_m * board.width_m * board.thickness_m;
            price += board.price;
        }
        if (cut != said) say("the boards listed are not those that are cut");
        if (std::abs(m3 - plan_.boards_m3) > 1e-9 * (1 + m3)) say("the wood of the boards is", m3);
        if (std::abs(price - plan_.price) > 1e-9 * (1 + price)) say("the price of the boards is", price);
        const double value = plan_.aim == Aim::leastPrice ? price : m3;
        if (std::abs(value - plan_.value) > 1e-9 * (1 + value)) say("the boards come to", value);
        if (plan_.bound > plan_.value * (1 + 1e-9)) say("the bound lies above the value");
        if (plan_.fewestMissing > static_cast<int>(plan_.missing.size())) say("fewer are missing than can be");
    }

    const Job& job_;
    const CutPlan& plan_;
    std::vector<std::string> wrong_;
};

}  // namespace

std::vector<std::string> wrongIn(const Job& job, const CutPlan& plan) {
    return Checking(job, plan).run();
}

}  // namespace fayline::stock
