#include "core/plan/findings/cures.hpp"

#include <cmath>
#include <utility>

#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/study/breaking.hpp"
#include "core/plan/study/choices.hpp"
#include "core/plan/study/holding_study.hpp"
#include "core/plan/study/remedies.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

constexpr Phrase correctOne{FAYLINE_TEXT("plan", "Correct %1")};
constexpr Phrase correctPoints{FAYLINE_TEXT("plan", "Correct one point"), FAYLINE_TEXT_N("plan", "Correct %n points")};
constexpr Phrase useStations{FAYLINE_TEXT("plan", "Use one suggested station"),
                             FAYLINE_TEXT_N("plan", "Use %n suggested stations")};
constexpr Phrase lengthen{FAYLINE_TEXT("plan", "Lengthen as needed")};
constexpr Phrase moveFoot{FAYLINE_TEXT("plan", "Move the foot")};
constexpr Phrase useStrips{FAYLINE_TEXT("plan", "Use %1 of %2")};
constexpr Phrase overbendForm{FAYLINE_TEXT("plan", "Overbend the form")};
constexpr Phrase takeRemedy{FAYLINE_TEXT("plan", "Take %1")};

double roundedUp(double length_m, const units::Display& display) {
    const bool metric = display.lengths == units::LengthNotation::millimetres;
    const double step_m = metric ? units::fromMillimetres(1) : units::sixteenth_m;
    constexpr double rounding = 1e-6;  // of a step: what is already whole is not carried on
    return std::ceil(length_m / step_m - rounding) * step_m;
}

void lengthenEnd(double& runsPast_m, std::optional<double>& carriesOn_m, const holding::EndNeed& need,
                 const units::Display& display) {
    if (!need.overRun_m || !std::isfinite(*need.overRun_m)) return;
    const double wanted_m = roundedUp(*need.overRun_m, display);
    if (*need.overRun_m > runsPast_m) runsPast_m = wanted_m;
    if (carriesOn_m && *need.overRun_m > *carriesOn_m) carriesOn_m = wanted_m;
}

// None where it changes nothing.
std::optional<Cure> changed(Cure cure, const model::Piece& from) {
    if (cure.piece == from) return std::nullopt;
    return cure;
}

std::optional<Cure> footThatHolds(const model::Piece& piece, const Plan& plan, const Finding& finding) {
    for (const holding::PropPlan& prop : plan.holding.props) {
        const model::Station& station = piece.holding.stations[prop.index];
        if (station.at_m != finding.at_m || !prop.footThatHolds) continue;
        Cure cure{{moveFoot}, piece};
        model::Strut& strut = cure.piece.holding.stations[prop.index].strut;
        strut.footX_m = prop.footThatHolds->x_m;
        if (strut.footY_m) strut.footY_m = prop.footThatHolds->y_m;  // else it stands on the floor there
        return changed(std::move(cure), piece);
    }
    return std::nullopt;
}

std::optional<Cure> strongerStrips(const model::Piece& piece, const Plan& plan) {
    if (!plan.breaking || !plan.choices) return std::nullopt;
    for (const BreakingRemedy& remedy : plan.breaking->remedies) {
        if (remedy.choice < 0 || !remedy.enough || remedy.choice >= math::countOf(plan.choices->all)) continue;
        const Choice& choice = plan.choices->all[remedy.choice];
        Cure cure{{useStrips, {put::count(choice.count), put::thickness(choice.thickness_m)}}, piece};
        cure.piece.stack = adopt(piece.stack, choice);
        return changed(std::move(cure), piece);
    }
    return std::nullopt;
}

std::optional<Cure> moreTime(const model::Piece& piece, const Plan& plan) {
    if (!plan.dayStudy || plan.dayStudy->remedies.empty()) return std::nullopt;
    const Remedy& best = plan.dayStudy->remedies.front();
    return changed({{takeRemedy, {best.brief}}, withRemedy(piece, best)}, piece);
}

// The first of what mends short boards, where the piece alone is changed by it.
std::optional<Cure> boardsThatSuffice(const model::Piece& piece, const Plan& plan) {
    if (!plan.stock) return std::nullopt;
    for (const StockCure& cure : plan.stock->cures) {
        if (cure.piece && !cure.boatBoards && cure.stillShort == 0) return changed({cure.name, *cure.piece}, piece);
    }
    return std::nullopt;
}

// The suggested stations, where they do what the finding misses: close every gap, or press the glue out everywhere too.
std::optional<Cure> stationsThat(bool press, const model::Piece& piece, const Plan& plan) {
    if (!has(plan, Study::proposal)) return std::nullopt;
    const holding::Proposal& proposal = plan.holdingStudy->proposal;
    const bool closes = proposal.met || proposal.unmet == holding::Governs::pressing;
    const bool presses = proposal.met && !proposal.pressingIsWish;
    return (press ? presses : closes) ? suggestedStations(piece, plan) : std::nullopt;
}

std::optional<Cure> offsetAt(const model::Piece& piece, const Plan& plan, int point) {
    for (const line::Suspect& suspect : plan.line.misread.suspects) {
        if (suspect.point == point) return offsetCorrected(piece, suspect);
    }
    return std::nullopt;
}

std::optional<Cure> slipFrom(const model::Piece& piece, const Plan& plan, int point) {
    for (const line::RepeatedSlip& slip : plan.line.misread.repeated) {
        if (!slip.points.empty() && slip.points.front() == point) return slipCorrected(piece, slip, plan.display);
    }
    return std::nullopt;
}

}  // namespace

std::optional<Cure> offsetCorrected(const model::Piece& piece, const line::Suspect& suspect) {
    const auto index = static_cast<std::size_t>(suspect.point);
    if (suspect.slip.empty() || index >= piece.line.points.size()) return std::nullopt;
    Cure cure{{correctOne, {pointName(piece.line.points[index], suspect.point)}}, piece};
    model::Point& point = cure.piece.line.points[index];
    point.x_m = suspect.try_m[0];
    point.y_m = suspect.try_m[1];
    point.written = suspect.tryWritten;
    return cure;
}

std::optional<Cure> slipCorrected(const model::Piece& piece, const line::RepeatedSlip& slip,
                                  const units::Display& display) {
    Cure cure{{correctPoints, {}, math::countOf(slip.points)}, piece};
    for (const int row : slip.points) {
        model::Point& point = cure.piece.line.points.at(static_cast<std::size_t>(row));
        const std::size_t axis = slip.axis == 'x' ? 0 : 1;
        double& coordinate = axis == 0 ? point.x_m : point.y_m;
        coordinate += slip.by_m;
        point.written[axis] = units::writeLength(coordinate, display.lengths);
    }
    return cure;
}

std::optional<Cure> suggestedStations(const model::Piece& piece, const Plan& plan) {
    if (!has(plan, Study::proposal)) return std::nullopt;
    const holding::Proposal& proposal = plan.holdingStudy->proposal;
    if (!proposal.finished || proposal.stations.empty()) return std::nullopt;
    Cure cure{{useStations, {}, math::countOf(proposal.stations)}, piece};
    cure.piece.holding.stations = holding::stationsOf(proposal);
    return changed(std::move(cure), piece);
}

std::optional<Cure> longEnough(const model::Piece& piece, const Plan& plan) {
    if (!has(plan, Study::overRun)) return std::nullopt;
    const holding::OverRun& need = plan.holdingStudy->overRun;
    Cure cure{{lengthen}, piece};
    lengthenEnd(cure.piece.stack.runsPastStart_m, cure.piece.form.carriesOnStart_m, need.start, plan.display);
    lengthenEnd(cure.piece.stack.runsPastEnd_m, cure.piece.form.carriesOnEnd_m, need.end, plan.display);
    return changed(std::move(cure), piece);
}

std::optional<model::Piece> withOffsetsCorrected(const model::Piece& piece, const Plan& plan) {
    model::Piece corrected = piece;
    for (const line::RepeatedSlip& slip : plan.line.misread.repeated) {
        if (std::optional<Cure> cure = slipCorrected(corrected, slip, plan.display)) corrected = std::move(cure->piece);
    }
    for (const line::Suspect& suspect : plan.line.misread.suspects) {
        if (std::optional<Cure> cure = offsetCorrected(corrected, suspect)) {
            corrected = std::move(cure->piece);
            continue;
        }
        model::Point& point = corrected.line.points.at(static_cast<std::size_t>(suspect.point));
        const std::size_t axis = suspect.axis == 'x' ? 0 : 1;
        (axis == 0 ? point.x_m : point.y_m) = suspect.expected_m;
        point.written[axis].clear();
    }
    if (corrected == piece) return std::nullopt;
    return corrected;
}

std::optional<Cure> cureOf(const model::Piece& piece, const Plan& plan, const Finding& finding) {
    switch (finding.code) {
        case Code::offsetMisread:
            return offsetAt(piece, plan, finding.point);
        case Code::offsetsShareASlip:
            return slipFrom(piece, plan, finding.point);
        case Code::gapOverLimit:
            return stationsThat(false, piece, plan);
        case Code::notPressed:
            return stationsThat(true, piece, plan);
        case Code::gapAtTrim:
        case Code::overRunNeeded:
            return longEnough(piece, plan);
        case Code::propSlipsAtHead:
        case Code::propSlipsAtFoot:
            return footThatHolds(piece, plan, finding);
        case Code::stripBreaks:
        case Code::stripBreaksOnForm:
        case Code::chanceOfBreaking:
            return strongerStrips(piece, plan);
        case Code::springbackNotAllowedFor: {
            Cure cure{{overbendForm}, piece};
            cure.piece.form.allowsForSpringback = true;
            return changed(std::move(cure), piece);
        }
        case Code::boardsShort:
            return boardsThatSuffice(piece, plan);
        case Code::closedTooLate:
        case Code::marginShort:
        case Code::chanceInTime:
            return moreTime(piece, plan);
        default:
            return std::nullopt;
    }
}

}  // namespace fayline::plan
