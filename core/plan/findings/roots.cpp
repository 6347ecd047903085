#include "core/plan/findings/roots.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "core/holding/over_run.hpp"

namespace fayline::plan {

namespace {

// `code` follows from the first of `causes` that there is: of the nearest place along the line where several have it.
struct Follows {
    Code code;
    std::array<Code, 5> causes;
    std::size_t count;

    template <class... Causes>
    constexpr Follows(Code of, Causes... from) : code(of), causes{from...}, count(sizeof...(from)) {}
};

constexpr Follows followRows[] = {
    {Code::missAtCeiling, Code::offsetMisread, Code::offsetsShareASlip},
    {Code::pointsOutOfOrder, Code::lineNotSettled},
    {Code::stripBreaks, Code::contactNotWorkedOut},
    {Code::noRoom, Code::contactNotWorkedOut},
    {Code::stackCrossesItself, Code::contactNotWorkedOut},
    {Code::contactNotWorkedOut, Code::lineNotSettled, Code::stripBreaks, Code::noRoom, Code::stackCrossesItself},
    {Code::stripBreaksOnForm, Code::stripBreaks},
    {Code::chanceOfBreaking, Code::stripBreaks, Code::stripBreaksHot, Code::stripBreaksOnForm},
    {Code::breakingRemedies, Code::stripBreaks, Code::stripBreaksHot, Code::stripBreaksOnForm, Code::chanceOfBreaking},
    {Code::formNoRoom, Code::noRoom},
    {Code::gapAtTrim, Code::gapAtTrim},
    {Code::atItsStrength, Code::gapOverLimit, Code::gapAtTrim},
    {Code::overRunNeeded, Code::gapAtTrim},
    {Code::pressureBelowWanted, Code::notPressed},
    {Code::moreClampsNeeded, Code::notPressed, Code::gapOverLimit, Code::gapAtTrim},
    {Code::noStationsWouldDo, Code::notPressed, Code::gapOverLimit, Code::gapAtTrim},
    {Code::atItsStrengthWhileClosing, Code::gapOverLimit},
    {Code::maySnapWhileClosing, Code::snapsWhileClosing},
    {Code::boatLifts, Code::boatDoesNotStand},
    {Code::boatTips, Code::boatDoesNotStand},
    {Code::boatSlides, Code::boatDoesNotStand},
    {Code::boatMargin, Code::boatDoesNotStand, Code::boatLifts, Code::boatTips, Code::boatSlides},
    {Code::blockComesFree, Code::boatDoesNotStand, Code::boatLifts, Code::boatTips, Code::boatSlides, Code::boatMargin},
    {Code::boatMarginWhileClosing, Code::propSlipsAtHead, Code::propSlipsAtFoot, Code::boatMargin,
     Code::boatTipsWhileClosing, Code::boatLiftsWhileClosing},
    {Code::blockComesFreeWhileClosing, Code::propSlipsAtHead, Code::propSlipsAtFoot, Code::blockComesFree,
     Code::boatMarginWhileClosing, Code::boatTipsWhileClosing},
    {Code::screwNearEnd, Code::screwNearEdge},
    {Code::propFootAssumed, Code::woodByDefault},
    {Code::propSectionAssumed, Code::woodByDefault, Code::propFootAssumed},
    {Code::screwAssumed, Code::woodByDefault, Code::propFootAssumed, Code::propSectionAssumed},
    {Code::speciesWarning, Code::woodValuesMissing},
    {Code::stripsNotFromStock, Code::stockTooSmall},
    {Code::boardsShort, Code::stockTooSmall, Code::stripsNotFromStock},
    {Code::boardsMoistureService, Code::boardsMoistureApart},
    {Code::scarfWithoutClamp, Code::scarfInTightest},
    {Code::serviceMoistureOutOfRange, Code::moistureOutOfRange},
    {Code::planingMovesIt, Code::movesLater},
    {Code::moistureMovesIt, Code::movesLater},
    {Code::thickPiece, Code::movesLater},
    {Code::peelAtEnd, Code::fasteningWanted},
    {Code::fullCupSmokes, Code::cupGoesOff},
    {Code::coldWoodSweats, Code::nightTooCold, Code::nearDewPoint},
    {Code::marginShort, Code::closedTooLate},
    {Code::chanceInTime, Code::closedTooLate, Code::marginShort},
    {Code::hotDay, Code::closedTooLate, Code::marginShort},
    {Code::cupWaits, Code::cupGoesOff},
};

// All that is worked out goes by the line, so these come first.
bool leads(const Finding& finding) {
    return finding.code == Code::offsetMisread || finding.code == Code::offsetsShareASlip;
}

// A cause that makes whatever is worked out from it worth nothing: all that is about the rest follows from it.
bool voids(Code cause, const Finding& other) {
    const About about = aboutOf(other.code);
    if (cause == Code::lineNotSettled) return about != About::line && other.severity != Severity::note;
    if (cause == Code::holdingNotSettled || cause == Code::springsAway) {
        return about == About::holding && !isWhileClosing(other.code) && other.severity == Severity::caution;
    }
    return false;
}

double apart(const Finding& a, const Finding& b) {
    return a.at_m && b.at_m ? std::abs(*a.at_m - *b.at_m) : 0;
}

class Tree {
public:
    Tree(std::vector<Finding>& findings, const std::optional<std::vector<Finding>>& ifCorrected)
        : findings_(findings), ifCorrected_(ifCorrected), causeOf_(findings.size()) {}

    void hang() {
        for (std::size_t i = 0; i < findings_.size(); ++i) causeOf_[i] = causeByTable(i);
        for (std::size_t i = 0; i < findings_.size(); ++i) {
            if (!causeOf_[i]) causeOf_[i] = causeThatVoids(i);
        }
        hangUnderMisread();
        for (std::size_t i = 0; i < findings_.size(); ++i) {
            const std::size_t top = topOf(i);
            findings_[top].severity = std::min(findings_[top].severity, findings_[i].severity);
        }
        sort();
    }

private:
    std::optional<std::size_t> nearest(Code code, std::size_t to) const {
        std::optional<std::size_t> best;
        for (std::size_t i = 0; i < findings_.size(); ++i) {
            if (i == to || findings_[i].code != code) continue;
            // Of several of one code the others follow from the first.
            if (findings_[to].code == code && i > to) continue;
            if (!best || apart(findings_[i], findings_[to]) < apart(findings_[*best], findings_[to])) best = i;
        }
        return best;
    }

    // That the contact was not worked out is the cause of what is broken where it names an offset at fault; where not,
    // it follows from that.
    bool mayCause(std::size_t cause, std::size_t i) const {
        const bool byOffset = findings_[cause].code == Code::contactNotWorkedOut;
        const bool ofOffset =
            findings_[i].code == Code::contactNotWorkedOut && aboutOf(findings_[cause].code) != About::line;
        return byOffset ? findings_[cause].point >= 0 : !ofOffset || findings_[i].point < 0;
    }

    std::optional<std::size_t> causeByTable(std::size_t i) const {
        for (const Follows& row : followRows) {
            if (row.code != findings_[i].code) continue;
            for (std::size_t k = 0; k < row.count; ++k) {
                const auto cause = nearest(row.causes[k], i);
                if (cause && mayCause(*cause, i)) return cause;
            }
        }
        // What is so with all closed is no news at one moment before.
        for (std::size_t k = 0; isWhileClosing(findings_[i].code) && k < findings_.size(); ++k) {
            const bool same = k != i && whileClosing(findings_[k].code) == findings_[i].code;
            if (same && !isWhileClosing(findings_[k].code) && apart(findings_[k], findings_[i]) == 0) return k;
        }
        return std::nullopt;
    }

    std::optional<std::size_t> causeThatVoids(std::size_t i) const {
        for (std::size_t k = 0; k < findings_.size(); ++k) {
            if (k != i && voids(findings_[k].code, findings_[i])) return k;
        }
        return std::nullopt;
    }

    // What the plan with the offsets corrected does not find, or finds less bad, or in fewer places.
    void hangUnderMisread() {
        const auto misread = std::ranges::find_if(findings_, leads);
        if (misread == findings_.end() || !ifCorrected_) return;
        const auto root = static_cast<std::size_t>(misread - findings_.begin());
        std::vector<bool> stays(findings_.size(), false);
        for (const Finding& still : *ifCorrected_) {
            std::optional<std::size_t> same;
            for (std::size_t i = 0; i < findings_.size(); ++i) {
                if (stays[i] || findings_[i].code != still.code || still.severity > findings_[i].severity) continue;
                if (!same || apart(still, findings_[i]) < apart(still, findings_[*same])) same = i;
            }
            if (same) stays[*same] = true;
        }
        for (std::size_t i = 0; i < findings_.size(); ++i) {
            const Finding& finding = findings_[i];
            if (!leads(finding) && !stays[i] && levelOf(finding) == Level::finding) causeOf_[i] = root;
        }
    }

    std::size_t topOf(std::size_t i) const {
        for (std::size_t steps = 0; causeOf_[i] && steps < findings_.size(); ++steps) i = *causeOf_[i];
        return i;
    }

    // Whether `a` stands before `b`, of two that stand for themselves or under the same cause.
    bool before(std::size_t i, std::size_t k) const {
        const Finding& a = findings_[i];
        const Finding& b = findings_[k];
        if (leads(a) != leads(b)) return leads(a);
        if (levelOf(a) != levelOf(b)) return levelOf(a) == Level::finding || levelOf(b) == Level::fact;
        if (a.severity != b.severity) return a.severity < b.severity;
        if ((a.point >= 0) != (b.point >= 0)) return a.point >= 0;
        if (a.at_m.has_value() != b.at_m.has_value()) return a.at_m.has_value();
        return a.at_m && *a.at_m < *b.at_m;
    }

    void sort() {
        std::vector<std::size_t> order(findings_.size());
        std::iota(order.begin(), order.end(), std::size_t{0});
        std::ranges::stable_sort(order, [this](std::size_t a, std::size_t b) {
            const std::size_t topA = topOf(a);
            const std::size_t topB = topOf(b);
            if (topA != topB) {
                if (before(topA, topB)) return true;
                return before(topB, topA) ? false : topA < topB;
            }
            if (a == topA || b == topB) return a == topA && b != topB;
            return before(a, b);
        });
        std::vector<int> placeOf(order.size());
        for (std::size_t i = 0; i < order.size(); ++i) placeOf[order[i]] = static_cast<int>(i);
        std::vector<Finding> sorted;
        sorted.reserve(order.size());
        for (const std::size_t i : order) {
            sorted.push_back(std::move(findings_[i]));
            sorted.back().root = topOf(i) == i ? -1 : placeOf[topOf(i)];
        }
        findings_ = std::move(sorted);
    }

    std::vector<Finding>& findings_;
    const std::optional<std::vector<Finding>>& ifCorrected_;
    std::vector<std::optional<std::size_t>> causeOf_;
};

}  // namespace

void hangFindings(std::vector<Finding>& findings, const std::optional<std::vector<Finding>>& ifCorrected) {
    Tree(findings, ifCorrected).hang();
}

}  // namespace fayline::plan
