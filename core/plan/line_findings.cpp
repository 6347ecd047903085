#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/line_wording.hpp"
#include "core/plan/not_pressed.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::toMillimetres;

Finding about(Severity severity, Code code) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    return finding;
}

// What to try instead, as it would be written; empty where no slip explains the point.
std::string repairText(const line::Suspect& suspect) {
    if (suspect.slip.empty()) return "";
    const std::string axis(1, suspect.axis);
    const std::string& x = suspect.tryWritten[0];
    const std::string& y = suspect.tryWritten[1];
    std::string text = " Likely slip: " + suspect.slip;
    if (!x.empty() && !y.empty()) {
        text += "; try x " + x + ", y " + y;
    } else if (const std::string& one = suspect.axis == 'y' ? y : x; !one.empty()) {
        text += "; try " + axis + " " + one;
    }
    return text + ".";
}

Finding misreadOffset(const line::Suspect& suspect, const boat::Piece& piece, const LinePlan& line,
                      const measure::Display& display) {
    const auto index = static_cast<std::size_t>(suspect.point);
    Finding finding = about(Severity::caution, Code::offsetMisread);
    finding.point = suspect.point;
    finding.at_m = line.fair.points[index].at_m;
    finding.value = toMillimetres(std::abs(suspect.away_m));
    finding.limit = toMillimetres(suspect.scatter_m);
    finding.unit = "mm";
    finding.source = {"leave the point out and see how much fairer the rest becomes (derived)", Mark::derived};
    const double length = line.fair.line.length();
    finding.text = capitalised(pointText(piece.line.points[index], suspect.point)) + ", " +
                   placeText(*finding.at_m, length, display) + ", looks misread: it lies " +
                   smallText(suspect.away_m, display) +
                   " off the line that is fair without it, where reading explains " +
                   smallText(suspect.scatter_m, display) + "." + repairText(suspect);
    return finding;
}

Finding repeatedSlip(const line::RepeatedSlip& slip, const boat::Piece& piece, const LinePlan& line,
                     const measure::Display& display) {
    std::vector<std::string> names;
    for (const int point : slip.points) {
        names.push_back(pointText(piece.line.points[point], point));
    }
    Finding finding = about(Severity::caution, Code::offsetsShareASlip);
    if (!slip.points.empty()) {
        finding.point = slip.points.front();
        finding.at_m = line.fair.points[slip.points.front()].at_m;
    }
    finding.value = toMillimetres(slip.by_m);
    finding.limited = false;
    finding.unit = "mm";
    finding.source = {"the same correction makes all of them fair (derived)", Mark::derived};
    finding.text = capitalised(listed(names)) + " look misread alike: " + measure::writeSmall(slip.by_m, display) +
                   " on " + std::string(1, slip.axis) + " would put them right" +
                   (slip.slip.empty() ? "." : " (" + slip.slip + ").");
    return finding;
}

// What follows goes by no line that anybody wants, so it leads where an offset is at fault.
Finding notSettled(const boat::Piece& piece, const LinePlan& line, const measure::Display& display) {
    const std::optional<AtFault> fault = worstOffset(line);
    Finding finding = about(fault ? Severity::stop : Severity::caution, Code::lineNotSettled);
    if (fault) {
        const auto name = [&](int i) { return pointText(piece.line.points[static_cast<std::size_t>(i)], i); };
        finding.point = fault->point;
        finding.text = fault->exchanged
                           ? capitalised(name(fault->point - 1)) + " and " + name(fault->point) + " look exchanged. "
                           : capitalised(name(fault->point)) + " looks wrong. ";
    }
    finding.value = toMillimetres(line.fair.rootMeanSquareMiss_m);
    finding.limited = false;
    finding.unit = "mm";
    finding.source = {"the fit's own outcome (derived)", Mark::derived};
    finding.text += "The fair line has not settled (" + line.fair.outcome + "); it misses the points by " +
                    smallText(line.fair.rootMeanSquareMiss_m, display) +
                    " in the mean. What follows goes by the last line tried: look at the points first.";
    return finding;
}

// Points that are missed by all that is allowed hold the line off where it would be fairest.
constexpr double atCeiling = 0.98;

void addMissesAtCeiling(std::vector<Finding>& findings, const boat::Piece& piece, const LinePlan& line,
                        const measure::Display& display) {
    const double most = piece.line.fairWithin_m;
    if (most <= 0) return;
    for (std::size_t i = 0; i < line.fair.points.size(); ++i) {
        const line::Foot& foot = line.fair.points[i];
        if (std::abs(foot.misfit_m) < atCeiling * most) continue;
        Finding finding = about(Severity::caution, Code::missAtCeiling);
        finding.point = static_cast<int>(i);
        finding.at_m = foot.at_m;
        finding.value = toMillimetres(std::abs(foot.misfit_m));
        finding.limit = toMillimetres(most);
        finding.unit = "mm";
        finding.source = {"what you allow the fair line to miss a point by", Mark::commonPractice};
        finding.text = capitalised(pointText(piece.line.points[i], static_cast<int>(i))) + ", " +
                       placeText(foot.at_m, line.fair.line.length(), display) + ", is missed by " +
                       smallText(foot.misfit_m, display) + ", all of the " + smallText(most, display) +
                       " that you allow. The line would be fairer if it might pass further off: check this point.";
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
void addReverses(std::vector<Finding>& findings, const boat::Piece& piece, const LinePlan& line,
                 const measure::Display& display) {
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
        Finding finding = about(Severity::note, Code::lineReverses);
        finding.at_m = (turns[i - 1].to_m + turns[i].from_m) / 2;
        const bool round = stack::sideSign(piece.line.stripsOn) * turns[i - 1].turn_rad < 0;
        const double rise = std::min(turns[i - 1].rise(), turns[i].rise());
        finding.value = toMillimetres(rise);
        finding.limit = toMillimetres(least);
        finding.unit = "mm";
        finding.source = {"turn of the line (derived)", Mark::derived};
        finding.text = "The line reverses " + placeText(*finding.at_m, line.fair.line.length(), display) +
                       ": there the stack goes from " + (round ? "round to hollow" : "hollow to round") +
                       ". The lesser bend stands " + smallText(rise, display) + " off its chord, more than the " +
                       smallText(least, display) + " that wavering would explain.";
        findings.push_back(finding);
    }
}

// A point that the line passes before the one that stands above it in the list: two rows exchanged, most likely.
void addPointsOutOfOrder(std::vector<Finding>& findings, const boat::Piece& piece, const LinePlan& line,
                         const measure::Display& display) {
    for (std::size_t i = 1; i < line.fair.points.size(); ++i) {
        const double back = line.fair.points[i - 1].at_m - line.fair.points[i].at_m;
        if (back <= 0) continue;
        Finding finding = about(Severity::caution, Code::pointsOutOfOrder);
        finding.point = static_cast<int>(i);
        finding.at_m = line.fair.points[i].at_m;
        finding.value = toMillimetres(back);
        finding.limit = 0;
        finding.unit = "mm";
        finding.source = {"places of the points along the line (derived)", Mark::derived};
        finding.text = capitalised(pointText(piece.line.points[i], static_cast<int>(i))) + " lies " +
                       smallText(back, display) + " before " +
                       pointText(piece.line.points[i - 1], static_cast<int>(i) - 1) +
                       ", which stands above it; points are listed in order along the line. Exchange the two rows, or "
                       "check what was read.";
        findings.push_back(finding);
    }
}

// The tightest bend lies where the points tell of it from one side only, and its radius is uncertain.
void addUncertainEnd(std::vector<Finding>& findings, const LinePlan& line, const measure::Display& display) {
    constexpr double worthACaution = 0.25;
    const double length = line.fair.line.length();
    const double off = tightestOff(line);
    const bool straight = std::abs(line.tightest.curvature_per_m) * length < 1e-6;
    if (straight || !line.fair.settled || off <= wideBand || !tightestAtEnd(line)) return;
    Finding finding = about(off > worthACaution ? Severity::caution : Severity::note, Code::tightestBendUncertain);
    finding.at_m = line.tightest.at_m;
    finding.value = 100 * off;
    finding.limit = 100 * wideBand;
    finding.unit = "pct";
    finding.source = {"standard deviation of the fit's curvature (derived)", Mark::derived};
    finding.text = "The line is tightest " + placeText(*finding.at_m, length, display) +
                   ", where no points beyond say how the bend goes on: its radius is " + radiusRange(line, display) +
                   ", 19 times of 20, and strain, chance of breaking and springback there may be " +
                   measure::writeShare(off) + " more or less than told. Give a point beyond the trim line.";
    findings.push_back(finding);
}

}  // namespace

std::vector<Finding> lineFindings(const boat::Piece& piece, const LinePlan& line, const measure::Display& display) {
    std::vector<Finding> findings;
    for (const line::Suspect& suspect : line.misread.suspects) {
        findings.push_back(misreadOffset(suspect, piece, line, display));
    }
    for (const line::RepeatedSlip& slip : line.misread.repeated) {
        findings.push_back(repeatedSlip(slip, piece, line, display));
    }
    if (!line.fair.settled) findings.push_back(notSettled(piece, line, display));
    addPointsOutOfOrder(findings, piece, line, display);
    addMissesAtCeiling(findings, piece, line, display);
    addReverses(findings, piece, line, display);
    addUncertainEnd(findings, line, display);
    return findings;
}

}  // namespace fayline::plan
