#include <algorithm>
#include <cmath>
#include <string>

#include "core/math/count.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/line_texts.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::toMillimetres;

// The line of text with what to try instead, where a slip explains the point; what was read rightly is left out.
Message misreadText(const line::Suspect& suspect, const model::Point& point) {
    const auto changed = [&](std::size_t axis) {
        const std::string& rightly = suspect.tryWritten[axis];
        return rightly == point.written[axis] ? std::string() : rightly;
    };
    const std::string x = changed(0);
    const std::string y = changed(1);
    const Message name = pointName(point, suspect.point);
    const Arg away = put::tape(suspect.away_m);
    if (suspect.slip.empty() || (x.empty() && y.empty())) return {texts::offsetMisread, {name, away}};
    if (y.empty()) return {texts::offsetMisreadX, {name, away, suspect.slip, x}};
    if (x.empty()) return {texts::offsetMisreadY, {name, away, suspect.slip, y}};
    return {texts::offsetMisreadBoth, {name, away, suspect.slip, x, y}};
}

Finding misreadOffset(const line::Suspect& suspect, const model::Piece& piece, const LinePlan& line) {
    const auto index = static_cast<std::size_t>(suspect.point);
    Finding finding = found(Code::offsetMisread,
                            {"leave the point out and see how much fairer the rest becomes (derived)", Mark::derived});
    finding.point = suspect.point;
    finding.at_m = line.fair.points[index].at_m;
    finding.value = toMillimetres(std::abs(suspect.away_m));
    finding.limit = toMillimetres(suspect.scatter_m);
    finding.text = misreadText(suspect, piece.line.points[index]);
    finding.details.push_back({texts::offsetMisreadWhere,
                               {put::place(*finding.at_m, line.fair.line.length()), put::small(suspect.away_m),
                                put::small(suspect.scatter_m)}});
    return finding;
}

Finding repeatedSlip(const line::RepeatedSlip& slip, const model::Piece& piece, const LinePlan& line) {
    constexpr std::size_t mostNamed = 4;
    std::vector<Message> names;
    for (const int point : slip.points) names.push_back(pointName(piece.line.points[point], point));
    Finding finding = foundWithoutLimit(Code::offsetsShareASlip,
                                        {"the same correction makes all of them fair (derived)", Mark::derived});
    if (!slip.points.empty()) {
        finding.point = slip.points.front();
        finding.at_m = line.fair.points[slip.points.front()].at_m;
    }
    finding.value = toMillimetres(slip.by_m);
    Arg who = put::list(names);
    if (names.size() > mostNamed) {
        who = Message(texts::someOffsets, {names[0], names[1]}, math::countOf(names) - 2);
        finding.details.push_back({texts::allOffsets, {put::list(names)}});
    }
    finding.text = {slip.by_m > 0 ? texts::offsetsTooSmall : texts::offsetsTooGreat,
                    {who, put::small(slip.by_m), std::string(1, slip.axis)}};
    if (!slip.slip.empty()) finding.details.push_back({texts::likelySlip, {slip.slip}});
    return finding;
}

// What follows goes by no line that anybody wants, so it leads where an offset is at fault.
Finding notSettled(const model::Piece& piece, const LinePlan& line) {
    const auto name = [&](int i) { return pointName(piece.line.points[static_cast<std::size_t>(i)], i); };
    const Arg misses = put::small(line.fair.rootMeanSquareMiss_m);
    Finding finding = foundWithoutLimit(Code::lineNotSettled, {"the fit's own outcome (derived)", Mark::derived});
    finding.value = toMillimetres(line.fair.rootMeanSquareMiss_m);
    const std::optional<AtFault> fault = worstOffset(line);
    if (!fault) {
        finding.text = {texts::lineNotSettled, {misses}};
    } else {
        finding.severity = Severity::stop;
        finding.point = fault->point;
        finding.text = fault->exchanged
                           ? Message(texts::notSettledExchanged, {name(fault->point - 1), name(fault->point), misses})
                           : Message(texts::notSettledWrong, {name(fault->point), misses});
    }
    finding.details = {{texts::howFitEnded, {line.fair.outcome}}, texts::byLastLine};
    return finding;
}

// Points that are missed by all that is allowed hold the line off where it would be fairest.
constexpr double atCeiling = 0.98;

void addMissesAtCeiling(std::vector<Finding>& findings, const model::Piece& piece, const LinePlan& line) {
    const double most = piece.line.fairWithin_m;
    if (most <= 0) return;
    for (std::size_t i = 0; i < line.fair.points.size(); ++i) {
        const line::Foot& foot = line.fair.points[i];
        if (std::abs(foot.misfit_m) < atCeiling * most) continue;
        Finding finding =
            found(Code::missAtCeiling, {"what you allow the fair line to miss a point by", Mark::commonPractice});
        finding.point = static_cast<int>(i);
        finding.at_m = foot.at_m;
        finding.value = toMillimetres(std::abs(foot.misfit_m));
        finding.limit = toMillimetres(most);
        finding.text = {texts::missAtCeiling, {pointName(piece.line.points[i], static_cast<int>(i)), put::small(most)}};
        finding.details.push_back(
            {texts::missAtCeilingWhy, {put::place(foot.at_m, line.fair.line.length()), put::small(foot.misfit_m)}});
        findings.push_back(finding);
    }
}

// A stretch of the line that turns one way only.
struct Turn {
    double from_m = 0;
    double to_m = 0;
    double turn_rad = 0;

    // How far a stretch of this turn stands off its chord.
    double rise() const { return std::abs(turn_rad) * (to_m - from_m) / 8; }
};

std::vector<Turn> turnsOf(const std::vector<line::Place>& samples) {
    std::vector<Turn> turns;
    for (std::size_t i = 1; i < samples.size(); ++i) {
        const line::Place& a = samples[i - 1];
        const line::Place& b = samples[i];
        const double turn = b.heading_rad - a.heading_rad;
        if (turns.empty() || turn * turns.back().turn_rad < 0) turns.push_back({a.at_m, a.at_m, 0});
        turns.back().to_m = b.at_m;
        turns.back().turn_rad += turn;
    }
    return turns;
}

// The line bends one way, then the other. Wavering that is smaller than what offsets are read to is none.
void addReverses(std::vector<Finding>& findings, const model::Piece& piece, const LinePlan& line) {
    const double least = std::max(piece.line.readTo_m, 0.5e-3);
    std::vector<Turn> turns;
    for (const Turn& turn : turnsOf(line.samples)) {
        if (turn.rise() < least) continue;
        if (!turns.empty() && turn.turn_rad * turns.back().turn_rad > 0) {
            turns.back().to_m = turn.to_m;
            turns.back().turn_rad += turn.turn_rad;
        } else {
            turns.push_back(turn);
        }
    }
    for (std::size_t i = 1; i < turns.size(); ++i) {
        Finding finding = found(Code::lineReverses, {"turn of the line (derived)", Mark::derived});
        finding.at_m = (turns[i - 1].to_m + turns[i].from_m) / 2;
        const bool round = laminate::sideSign(piece.line.stripsOn) * turns[i - 1].turn_rad < 0;
        const double rise = std::min(turns[i - 1].rise(), turns[i].rise());
        finding.value = toMillimetres(rise);
        finding.limit = toMillimetres(least);
        finding.text = {round ? texts::reversesToHollow : texts::reversesToRound,
                        {put::place(*finding.at_m, line.fair.line.length())}};
        finding.details.push_back({texts::reversesBy, {put::small(rise), put::small(least)}});
        findings.push_back(finding);
    }
}

// A point that the line passes before the one that stands above it in the list: two rows exchanged, most likely.
void addPointsOutOfOrder(std::vector<Finding>& findings, const model::Piece& piece, const LinePlan& line) {
    const auto name = [&](std::size_t i) { return pointName(piece.line.points[i], static_cast<int>(i)); };
    for (std::size_t i = 1; i < line.fair.points.size(); ++i) {
        const double back = line.fair.points[i - 1].at_m - line.fair.points[i].at_m;
        if (back <= 0) continue;
        Finding finding =
            found(Code::pointsOutOfOrder, {"places of the points along the line (derived)", Mark::derived});
        finding.point = static_cast<int>(i);
        finding.at_m = line.fair.points[i].at_m;
        finding.value = toMillimetres(back);
        finding.text = {texts::pointsOutOfOrder, {name(i), put::small(back), name(i - 1)}};
        finding.details.emplace_back(texts::pointsInOrder);
        findings.push_back(finding);
    }
}

// The tightest bend lies where the points tell of it from one side only, and its radius is uncertain.
void addUncertainEnd(std::vector<Finding>& findings, const LinePlan& line) {
    constexpr double worthACaution = 0.25;
    const double length = line.fair.line.length();
    const double off = tightestOff(line);
    const bool straight = std::abs(line.tightest.curvature_per_m) * length < 1e-6;
    if (straight || !line.fair.settled || off <= wideBand || !tightestAtEnd(line)) return;
    Finding finding =
        found(Code::tightestBendUncertain, {"standard deviation of the fit's curvature (derived)", Mark::derived});
    if (off > worthACaution) finding.severity = Severity::caution;
    finding.at_m = line.tightest.at_m;
    finding.value = 100 * off;
    finding.limit = 100 * wideBand;
    finding.text = {texts::tightestBendUncertain,
                    {put::place(*finding.at_m, length), put::share(off), put::share(wideBand)}};
    finding.details = {{texts::tightestRadiusBand, {radiusBand(line)}}, {texts::tightestBendSways, {put::share(off)}}};
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> lineFindings(const model::Piece& piece, const LinePlan& line) {
    std::vector<Finding> findings;
    for (const line::Suspect& suspect : line.misread.suspects) {
        findings.push_back(misreadOffset(suspect, piece, line));
    }
    for (const line::RepeatedSlip& slip : line.misread.repeated) {
        findings.push_back(repeatedSlip(slip, piece, line));
    }
    if (!line.fair.settled) findings.push_back(notSettled(piece, line));
    addPointsOutOfOrder(findings, piece, line);
    addMissesAtCeiling(findings, piece, line);
    addReverses(findings, piece, line);
    addUncertainEnd(findings, line);
    return findings;
}

}  // namespace fayline::plan
