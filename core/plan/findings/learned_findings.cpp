// What earlier pieces say about springback, and what it takes to spring this one home.
#include <algorithm>
#include <cmath>
#include <string>

#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/springing_texts.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/springing.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

using units::Mark;

void addFactor(std::vector<Finding>& findings, const Plan& plan) {
    const laminate::Learned& learned = *plan.learned;
    if (!learned.factor || !plan.form.letsGo) return;
    const double taken = plan.form.factor;
    const bool within = taken >= learned.low && taken <= learned.high;
    constexpr double same = 0.005;
    Finding finding =
        found(Code::springbackLearned,
              {"your own record; range by Student, with the scatter of bends that builders measured", Mark::derived});
    if (!within) finding.severity = Severity::caution;
    finding.value = *learned.factor;
    finding.limit = taken;
    const bool adopted = std::abs(taken - *learned.factor) <= same;
    finding.text = {
        adopted  ? texts::learnedAdopted
        : within ? texts::learnedUnused
                 : texts::learnedOutside,
        {put::number(*learned.factor), put::number(learned.low, 2), put::number(learned.high, 2), put::number(taken)}};
    finding.details = learnedTexts(learned);
    if (std::ranges::any_of(learned.readings, [](const auto& r) { return r.asItStands; })) {
        finding.details.emplace_back(texts::againstAsItIs);
    }
    findings.push_back(finding);
}

void addLeftOut(std::vector<Finding>& findings, const laminate::Learned& learned) {
    for (const std::string& why : learned.leftOut) {
        findings.push_back(
            said(foundWithoutLimit(Code::springbackLeftOut, {"the record of the boat's pieces", Mark::derived}),
                 texts::readingLeftOut, {why}));
    }
}

// By its id; a piece that has none by its name and all that is recorded of it.
bool samePiece(const model::Piece& one, const model::Piece& other) {
    if (!one.id.empty() || !other.id.empty()) return one.id == other.id;
    return one.name == other.name && one.record == other.record;
}

// How the piece stands: as it was read, or as foretold.
Message standing(const laminate::SprungHome& home, bool atStart) {
    const Arg stands = endStands(home.off, atStart);
    if (!home.measured) return {texts::foretold, {stands}};
    constexpr double hour_s = 3600;
    constexpr double day_s = 86400;
    if (home.after_s < 2 * day_s) return {texts::readHoursAfter, {put::number(home.after_s / hour_s, 2), stands}};
    return {texts::readDaysAfter, {put::number(home.after_s / day_s, 2), stands}};
}

void addSpringHome(std::vector<Finding>& findings, const Plan& plan) {
    if (!plan.sprungHome) return;
    const laminate::SprungHome& home = *plan.sprungHome;
    const double length_m = plan.line.fair.line.length();
    const bool atStart = reportedAtStart(plan.form, length_m);
    Finding finding =
        found(Code::springHome,
              {"beam theory (derived); what wood bears for good: common practice, no source", Mark::commonPractice});
    if (!home.bears) finding.severity = Severity::caution;
    finding.at_m = home.stressAt_m;
    finding.strip = home.stressPlace;
    finding.value = 100 * home.breakingShare;
    finding.limit = 100 * laminate::shareForGood;
    finding.text = {
        home.bears ? texts::springHome : texts::springHomeTooMuch,
        {put::tape(atStart ? home.off.start_m : home.off.end_m), put::place(atStart ? 0 : length_m, length_m),
         put::share(home.breakingShare), put::share(laminate::shareForGood)}};
    finding.details.push_back(standing(home, atStart));
    const std::vector<Message> more = springHomeTexts(home, plan);
    finding.details.insert(finding.details.end(), more.begin(), more.end());
    findings.push_back(finding);
}

}  // namespace

bool springbackRead(const model::Piece& piece) {
    return std::ranges::any_of(piece.record, [](const model::Record& record) { return !record.letGo.empty(); });
}

std::optional<laminate::Learned> learnedOf(const Shop& shop, const std::atomic<bool>& stop) {
    std::vector<laminate::RecordedPiece> recorded;
    std::vector<std::string> leftOut;
    for (std::size_t index = 0; index < shop.recorded.size(); ++index) {
        const model::Piece& piece = shop.recorded[index];
        for (std::size_t i = 0; i < piece.record.size(); ++i) {
            if (stop) return std::nullopt;
            if (piece.record[i].letGo.empty()) continue;
            model::Piece was = laminate::asMeasured(piece, piece.record[i]);
            was.record = {piece.record[i]};
            try {
                const line::Line line = line::fair(fairInputOf(was.line)).line;
                recorded.push_back({std::move(was), line, index, i});
            } catch (const units::InputError& error) {
                leftOut.push_back(piece.name + " is left out: no line can be made of it, " + error.what() + ".");
            }
        }
    }
    if (recorded.empty() && leftOut.empty()) return std::nullopt;
    laminate::Learned learned = laminate::learnSpringback(recorded, shop.species);
    learned.leftOut.insert(learned.leftOut.end(), leftOut.begin(), leftOut.end());
    const auto twice = std::unique(learned.leftOut.begin(), learned.leftOut.end());
    learned.leftOut.erase(twice, learned.leftOut.end());
    return learned;
}

std::optional<laminate::SprungHome> sprungHomeOf(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    const laminate::SpringbackReading* last = nullptr;
    if (plan.learned) {
        for (const laminate::SpringbackReading& reading : plan.learned->readings) {
            if (reading.last && samePiece(shop.recorded[reading.index], piece)) last = &reading;
        }
    }
    if (!last) return laminate::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, std::nullopt);
    const laminate::OpenedBy measured{last->after_s, last->factor};
    const model::Record& record = shop.recorded[last->index].record[last->record];
    if (!record.on || *record.on == laminate::measuredOn(piece)) {
        return laminate::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, measured);
    }
    const model::Piece was = laminate::asMeasured(piece, record);
    const line::Line line = line::fair(fairInputOf(was.line)).line;
    const laminate::StackPlan planned =
        laminate::planStack(was.stack, was.line.describes, was.line.stripsOn, line, shop.species);
    return laminate::sprungHome(was, line, planned, laminate::planForm(was, line, shop.species, planned), measured);
}

std::vector<Finding> learnedFindings(const Plan& plan) {
    std::vector<Finding> findings;
    if (plan.learned) {
        addFactor(findings, plan);
        addLeftOut(findings, *plan.learned);
    }
    addSpringHome(findings, plan);
    return findings;
}

}  // namespace fayline::plan
