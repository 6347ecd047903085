// What the boards give, as the answer and as findings.
#include <algorithm>
#include <cmath>

#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/stock_texts.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/stock/measure.hpp"
#include "core/units/units.hpp"

namespace fayline::plan {

namespace {

using units::toMillimetres;

const units::Source& fromBoards() {
    static const units::Source source{"your own list of boards, with its kerf and planing", units::Mark::derived};
    return source;
}

// Laminations of one member: at most so far apart.
constexpr double moistureApart = 0.05;
const units::Source& moistureSource() {
    static const units::Source source{
        "EN 14080 and ANSI A190.1: moisture of the laminations of one member within 5 percentage points",
        units::Mark::fromMemory};
    return source;
}

void addShort(std::vector<Finding>& findings, const StockStudy& study) {
    if (!study.anyBoards) {
        findings.push_back(said(foundWithoutLimit(Code::boardsMissing, fromBoards(), study.stripsNeeded),
                                {texts::noBoardsListed, {put::count(study.stripsNeeded)}}));
        return;
    }
    if (study.missing.empty()) return;
    const int missing = math::countOf(study.missing);
    std::vector<Message> details = study.told;
    if (study.missing.front() > study.stripsNeeded - study.spares) details.push_back({texts::onlySparesShort});
    Message line{texts::boardsShort, {put::count(study.stripsNeeded)}, missing};
    if (!study.cures.empty() && study.cures.front().stillShort == 0)
        line = {texts::boardsShortCure, {put::count(study.stripsNeeded), study.cures.front().name}, missing};
    findings.push_back(
        said(foundAgainst(Code::boardsShort, fromBoards(), study.stripsNeeded - missing, study.stripsNeeded),
             std::move(line), std::move(details)));
}

void addScarfs(std::vector<Finding>& findings, const model::Piece& piece, const Plan& plan, const StockStudy& study) {
    const double line_m = plan.line.fair.line.length();
    for (const ScarfPlace& scarf : study.scarfs) {
        if (!scarf.inTightest || scarf.ofSpare) continue;
        Finding finding = foundWithoutLimit(
            Code::scarfInTightest,
            {"boat practice: no joint in the tightest third of the bend", units::Mark::commonPractice},
            toMillimetres(scarf.at_m));
        finding.strip = scarf.place;
        findings.push_back(said(
            std::move(finding), scarf.at_m,
            {texts::scarfInTightest, {put::count(scarf.place), put::place(scarf.at_m, line_m)}},
            {{scarf.lanesTooShort ? texts::scarfForcedLength : texts::scarfForcedCount}, {texts::scarfBestBoards}}));
        break;  // the others have the same cause
    }
    constexpr double flattest = 12;  // no flatter slope gives more
    if (!study.scarfs.empty() && piece.stock.scarfSlope < flattest) {
        const std::optional<double> strength = stock::scarfStrength(piece.stock.scarfSlope);
        findings.push_back(
            said(foundAgainst(Code::scarfTooSteep, stock::scarfStrengthSource(), piece.stock.scarfSlope, flattest),
                 {strength ? texts::scarfTooSteep : texts::scarfSteepBeyond,
                  {put::number(piece.stock.scarfSlope), put::share(strength.value_or(0)), put::number(flattest)}}));
    }
}

// Whether a station that presses has its pad on the scarf, or stands within half its length beside it.
bool isPressed(const model::Piece& piece, const ScarfPlace& scarf) {
    return std::ranges::any_of(piece.holding.stations, [&](const model::Station& station) {
        return !station.side && std::abs(station.at_m - scarf.at_m) <= (scarf.length_m + station.pad_m) / 2;
    });
}

void addUnpressed(std::vector<Finding>& findings, const model::Piece& piece, const Plan& plan,
                  const StockStudy& study) {
    if (piece.holding.stations.empty()) return;  // not set out yet
    const ScarfPlace* first = nullptr;
    int count = 0;
    for (const ScarfPlace& scarf : study.scarfs) {
        const bool trimmedOff = scarf.at_m < 0 || scarf.at_m > plan.line.fair.line.length();
        if (scarf.ofSpare || trimmedOff || isPressed(piece, scarf)) continue;
        if (!first) first = &scarf;
        ++count;
    }
    if (!first) return;
    Finding finding = foundWithoutLimit(Code::scarfWithoutClamp,
                                        {"boat practice: a clamp at each scarf", units::Mark::commonPractice},
                                        toMillimetres(first->at_m));
    finding.strip = first->place;
    findings.push_back(said(std::move(finding), first->at_m,
                            {texts::scarfWithoutClamp,
                             {put::count(first->place), put::place(first->at_m, plan.line.fair.line.length())},
                             count},
                            {{texts::scarfGluedFirst}}));
}

// Of the boards that are cut, the one that is farthest off.
const BoardCuts* farthestOff(const StockStudy& study, double moisture) {
    const BoardCuts* worst = nullptr;
    for (const BoardCuts& board : study.boards) {
        if (board.parts.empty() || !board.board.moisture) continue;
        const auto off = [&](const BoardCuts& one) { return std::abs(*one.board.moisture - moisture); };
        if (!worst || off(board) > off(*worst)) worst = &board;
    }
    return worst && std::abs(*worst->board.moisture - moisture) > moistureApart + 1e-9 ? worst : nullptr;
}

void addMoisture(std::vector<Finding>& findings, const model::Piece& piece, const StockStudy& study) {
    const auto add = [&](Code code, const Phrase& phrase, double wanted) {
        const BoardCuts* board = farthestOff(study, wanted);
        if (!board) return;
        findings.push_back(said(
            foundAgainst(code, moistureSource(), 100 * *board->board.moisture, 100 * wanted),
            {phrase,
             {board->name, put::share(*board->board.moisture), put::share(wanted), put::count(100 * moistureApart)}}));
    };
    add(Code::boardsMoistureApart, texts::moistureApart, piece.stack.moisture);
    add(Code::boardsMoistureService, texts::moistureService, piece.stack.serviceMoisture);
}

}  // namespace

std::vector<Finding> stockFindings(const model::Piece& piece, const Plan& plan) {
    std::vector<Finding> findings;
    if (!plan.stock) return findings;
    const StockStudy& study = *plan.stock;
    addShort(findings, study);
    addScarfs(findings, piece, plan, study);
    addUnpressed(findings, piece, plan, study);
    addMoisture(findings, piece, study);
    if (study.thinnerThanPlaner)
        findings.push_back(
            said(foundWithoutLimit(Code::planerTooThick, fromBoards(), toMillimetres(piece.stock.planerLeast_m)),
                 {texts::planerTooThick, {put::thickness(piece.stock.planerLeast_m)}}));
    if (!study.pinsNotKept.empty()) {
        Finding finding = foundWithoutLimit(Code::pinNotKept, fromBoards(), study.pinsNotKept.front());
        finding.strip = study.pinsNotKept.front();
        findings.push_back(said(std::move(finding), {texts::pinNotKept, {put::count(study.pinsNotKept.front())}}));
    }
    return findings;
}

Answer stockAnswer(const Plan& plan) {
    Answer answer;
    answer.question = Question::stock;
    if (!plan.stock) {
        answer.sentence = {texts::stockCalculating};
        return answer;
    }
    const StockStudy& study = *plan.stock;
    const int missing = math::countOf(study.missing);
    if (!study.anyBoards) {
        answer.figures = {texts::noBoardsFigures};
        answer.sentence = {texts::listBoards};
        return answer;
    }
    const Message strips{texts::stripCount, {}, study.stripsNeeded - missing};
    const Message boards{texts::boardCount, {}, study.boardsUsed};
    if (missing > 0) {
        answer.figures = {texts::stripsShort, {}, missing};
        answer.sentence = {texts::boardsShortOf, {put::count(study.stripsNeeded)}, missing};
        if (!study.cures.empty()) answer.more.push_back({texts::cheapestCure, {study.cures.front().name}});
        return answer;
    }
    answer.figures = {texts::stripsFromBoards, {strips, boards}};
    if (study.alreadyCut == study.stripsNeeded) {
        answer.figures = {texts::allCutFigures};
        answer.sentence = {texts::allCut};
        return answer;
    }
    answer.sentence = study.proven
                          ? Message(texts::cutProven, {strips, boards, put::share(study.waste)})
                          : Message(texts::cutWithin, {strips, boards, put::share(study.waste),
                                                       put::share(study.offBest, study.offBest < 0.1 ? 1 : 2)});
    if (study.spares > 0) answer.more.push_back({texts::sparesAmong, {}, study.spares});
    if (const int scarfs = math::countOf(study.scarfs); scarfs > 0)
        answer.more.push_back({texts::scarfsNeeded, {}, scarfs});
    const int bought = static_cast<int>(std::ranges::count_if(
        study.boards, [](const BoardCuts& board) { return board.toBuy && !board.parts.empty(); }));
    if (bought > 0) answer.more.push_back({texts::toBuy, {}, bought});
    return answer;
}

}  // namespace fayline::plan
