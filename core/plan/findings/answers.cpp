#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "core/holding/kinds.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/findings/answer_texts.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/holding_scene.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/holding_study.hpp"

namespace fayline::plan {

namespace {

std::optional<Severity> worstOf(const std::vector<Finding>& findings, Question question) {
    std::optional<Severity> worst;
    for (const Finding& finding : findings) {
        if (!isCause(finding)) continue;
        if (questionOf(aboutOf(finding.code)) == question && (!worst || finding.severity < *worst))
            worst = finding.severity;
    }
    return worst;
}

// Flatter than this over the whole length, no eye sees it bend.
bool isStraight(const LinePlan& line) {
    return std::abs(line.tightest.curvature_per_m) * line.fair.line.length() < 1e-6;
}

Answer lineAnswer(const model::Piece& piece, const Plan& plan) {
    const LinePlan& line = plan.line;
    Answer answer;
    answer.question = Question::line;
    double miss = 0;
    for (const line::Foot& foot : line.fair.points) miss = std::max(miss, std::abs(foot.misfit_m));
    if (isStraight(line)) {
        answer.figures = {texts::straight};
        answer.sentence = {texts::fairStraight, {put::small(miss)}};
    } else {
        answer.figures = {texts::radius, {tightestRadius(line)}};
        answer.sentence = {
            texts::fairWithin,
            {put::small(miss), tightestRadius(line), put::place(line.tightest.at_m, line.fair.line.length())}};
        if (tightestOff(line) > wideBand) {
            answer.more.push_back({texts::radiusBetween, {radiusBand(line)}});
        }
    }
    std::vector<Message> names;
    for (const line::Suspect& suspect : line.misread.suspects) {
        names.emplace_back(pointName(piece.line.points[suspect.point], suspect.point));
    }
    if (!names.empty()) {
        answer.more.insert(answer.more.begin(), std::move(answer.sentence));
        answer.sentence = {texts::misreadFirst, {put::list(names)}, math::countOf(names)};
    }
    if (!line.misread.searchedAll) answer.more.push_back({texts::moreStandOut});
    return answer;
}

Answer stripsAnswer(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    const laminate::StackPlan& stack = plan.stack;
    const laminate::Strip& weakest = laminate::worstStrip(stack);
    const double share = laminate::worstShare(weakest);
    const bool softened =
        std::ranges::any_of(piece.stack.strips, [](const model::Strips& s) { return s.bentBefore.has_value(); });
    const int count = math::countOf(stack.strips);
    const bool goes = share < 1 && stack.spares >= 0;
    double strain = 0;
    for (const laminate::Strip& strip : stack.strips) strain = std::max(strain, strip.strain);
    Answer answer{.question = Question::strips,
                  .figures = {texts::stripsFigures, {stripsFigures(piece.stack, plan.display), put::share(strain)}}};
    const Message strips = stripsName(piece.stack, shop.species);
    if (goes) {
        answer.sentence = {softened ? texts::bendSoftened : texts::bendCold, {strips, put::share(share)}, count};
        answer.more.push_back(stack.spares == 0 ? Message(texts::noSpare) : Message(texts::spares, {}, stack.spares));
    } else {
        answer.sentence = {texts::breaksAt, {strips, put::share(share), stripName(weakest.place, count)}, count};
    }
    // Where the points leave the tightest bend open, the strain with it.
    const double off = tightestOff(plan.line);
    if (off > wideBand && share > 0) {
        answer.more.push_back(
            {texts::shareOpen, {put::share(share * std::max(0.0, 1 - off)), put::share(share * (1 + off))}});
    }
    return answer;
}

// Whether the ends want a fastening for good.
Message fasteningText(const laminate::FormPlan& form) {
    const auto wants = [](const laminate::EndStress& end) { return end.wantsFastening && !end.scarfed; };
    const bool start = form.stressLeft && wants(form.stressLeft->start);
    const bool end = form.stressLeft && wants(form.stressLeft->end);
    if (start && end) return {texts::fastenAtBoth};
    if (start || end) return {start ? texts::fastenAtStart : texts::fastenAtEnd};
    return {texts::glueHoldsEnds};
}

Answer formAnswer(const model::Piece& piece, const Plan& plan) {
    const laminate::FormPlan& form = plan.form;
    Answer answer;
    answer.question = Question::form;
    if (!form.letsGo) {
        const bool inPlace = piece.form.kind == model::FormKind::inPlace;
        answer.figures = {inPlace ? texts::inPlace : texts::keptOnForm};
        answer.sentence = {inPlace ? texts::staysOnBoat : texts::staysOnForm};
        if (form.stressLeft) answer.more.push_back(fasteningText(form));
        return answer;
    }
    if (!form.possible) {
        answer.figures = {texts::noFormFigures};
        answer.sentence = {texts::noForm};
        return answer;
    }
    if (isStraight(plan.line)) {
        answer.figures = {texts::straight};
        answer.sentence = {texts::nothingSprings};
        return answer;
    }
    const laminate::PartForm& part = form.parts.front();
    const bool atStart = reportedAtStart(form, plan.line.fair.line.length());
    const double off = atStart ? part.uncorrected.start_m : part.uncorrected.end_m;
    answer.figures = {texts::stripsFigures, {put::share(part.ratioAtTightest), put::tape(std::abs(off))}};
    const Phrase& opens =
        off < 0 ? (atStart ? texts::closesStart : texts::closesEnd) : (atStart ? texts::opensStart : texts::opensEnd);
    answer.sentence = {opens, {put::tape(std::abs(off)), put::tape(form.scatterHigh * std::abs(off))}};
    answer.more.push_back(form.corrected ? Message(texts::overbent, {put::length(form.tightestRadius_m)})
                                         : Message(texts::notOverbent));
    return answer;
}

// What the tools allow, once it is known, where it is another set than the one that is there.
void addSuggested(Answer& answer, const model::Piece& piece, const Plan& plan) {
    const int there = math::countOf(piece.holding.stations);
    if (!has(plan, Study::proposal)) {
        if (there == 0) answer.more.push_back({texts::beingSuggested});
        return;
    }
    const holding::Proposal& proposal = plan.holdingStudy->proposal;
    const std::vector<model::Station> stations = holding::stationsOf(proposal);
    const int count = math::countOf(stations);
    const bool onlySqueeze = !proposal.met && proposal.unmet == holding::Governs::pressing;
    if (count == 0 || (!proposal.met && !onlySqueeze)) return;
    if (onlySqueeze && proposal.largestSpacing_m > 0) {
        const bool all = toolsAmong(stations) == proposal.tools;
        answer.more.push_back({all ? texts::suggestedAll : texts::suggestedOf,
                               {kindsOf(stations), put::reach(proposal.largestSpacing_m)}});
    } else {
        answer.more.push_back({texts::suggested, {kindsOf(stations)}});
    }
    if (proposal.forEverything > std::max(count, proposal.pressingIsWish ? there : 0)) {
        answer.more.push_back({texts::squeezeTakes, {put::count(proposal.forEverything)}});
    } else if (onlySqueeze) {
        answer.more.push_back(
            {piece.form.kind == model::FormKind::posts ? texts::postsNeverSqueeze : texts::squeezeNever});
    }
}

Answer holdingAnswer(const model::Piece& piece, const Plan& plan) {
    const holding::Held& held = plan.holding.held;
    const int count = math::countOf(plan.holding.stations);
    Answer answer;
    answer.question = Question::holding;
    const bool clamps = std::ranges::all_of(
        piece.holding.stations, [](const model::Station& station) { return station.kind == model::HoldKind::clamp; });
    const Message number{clamps ? texts::clampCount : texts::holdCount, {}, count};
    answer.figures = number;
    if (count == 0) {
        answer.figures = {texts::noStationsFigures};
        answer.sentence = {texts::notSetOut};
        addSuggested(answer, piece, plan);
        return answer;
    }
    const Message kinds = kindsOf(piece.holding.stations);
    if (held.samples.empty() || !holding::inBalance(held.outcome)) {
        answer.sentence = {texts::notWorkedOut, {kinds}};
        return answer;
    }
    const double limit = piece.holding.gapLimit_m;
    const double gap = std::max(held.largest.gap_m, 0.0);
    answer.figures = {texts::holdingFigures, {number, put::small(gap)}};
    if (gap <= limit) {
        const auto strongest =
            std::ranges::max_element(held.stations, [](const auto& a, const auto& b) { return a.pull_N < b.pull_N; });
        const model::Station& station = piece.holding.stations[strongest->index];
        answer.sentence = {
            texts::closesIt,
            {kinds, put::small(gap), put::small(limit),
             put::pull(strongest->pull_N, holding::pullsLightly(strongest->state, strongest->pull_N)),
             Message(texts::hold, {std::string(model::holdWord(station.kind)), put::count(strongest->number)})},
            count};
    } else {
        answer.sentence = {
            texts::gapLeft,
            {kinds, put::small(gap), put::place(held.largest.at_m, plan.line.fair.line.length()), put::small(limit)},
            count};
    }
    addSuggested(answer, piece, plan);
    return answer;
}

Answer glueAnswer(const Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    Answer answer;
    answer.question = Question::glue;
    if (glue.batches.empty()) {
        answer.figures = {texts::none};
        answer.sentence = {texts::nothingGlued};
        return answer;
    }
    const auto count = math::countOf(glue.batches);
    const auto largest = std::ranges::max_element(
        glue.batches, [](const auto& a, const auto& b) { return a.mixed_kg() < b.mixed_kg(); });
    const Arg parts = glue.adhesive.onePart()
                          ? put::mass(glue.parts_kg[0])
                          : Arg(Message(texts::parts, {put::mass(glue.parts_kg[0]), put::mass(glue.parts_kg[1])}));
    const Arg within = put::duration(largest->useWithin_s);
    answer.figures = {texts::batchCount, {put::mass(glue.mixed_kg)}, count};
    answer.sentence = count == 1
                          ? Message(texts::oneBatch, {put::mass(glue.mixed_kg), parts, within})
                          : Message(texts::batches, {put::mass(glue.mixed_kg), put::countWord(count), parts, within});
    answer.more.push_back({texts::lastsFor, {lifeText(largest->potLife_s)}});
    answer.more.emplace_back(glue.adhesive.name + ".");
    if (std::isfinite(glue.cure.clampsOff_s)) {
        answer.more.push_back({texts::clampsOff, {put::clock(glue.cure.closedAt_s + glue.cure.clampsOff_s)}});
    }
    return answer;
}

Answer timeAnswer(const model::Piece& piece, const Plan& plan) {
    Answer answer;
    answer.question = Question::time;
    if (plan.day.glue.batches.empty()) {
        answer.figures = {texts::noClock};
        answer.sentence = {texts::noClockRuns};
        return answer;
    }
    const GluingDay& worst = plan.day.gluings[plan.day.worstGluing];
    const double margin_s = plan.day.margin_s;
    const Arg size = put::duration(std::abs(margin_s));
    answer.figures = {margin_s < 0 ? texts::lateBy : texts::spareBy, {size}};
    answer.sentence = {margin_s < 0 ? texts::lastOnTooLate : texts::lastOnToSpare,
                       {put::clock(piece.crew.startAt_s + worst.run.closed_s), size}};
    if (plan.day.gluings.size() > 1) answer.more.push_back({texts::inGlueUp, {put::count(plan.day.worstGluing + 1)}});
    if (!plan.dayStudy) {
        answer.more.push_back({texts::oddsComing});
        return answer;
    }
    const schedule::Days& days = plan.dayStudy->days;
    answer.more.push_back({texts::oddsOfIt, {inHundredText(days.chanceInTime)}});
    if (days.marginFor95_s > margin_s) answer.more.push_back({texts::marginFor95, {put::duration(days.marginFor95_s)}});
    return answer;
}

Answer paperAnswer(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Message> papers{{texts::stationTable}, {texts::storyStick}};
    if (!piece.holding.stations.empty()) papers.emplace_back(texts::closingSheet);
    const bool propped = std::ranges::any_of(piece.holding.stations, [](const auto& s) {
        return model::is<model::Strut>(s.kind) || model::is<model::Screw>(s.kind);
    });
    if (propped || piece.holding.hull.weight_kg > 0) papers.emplace_back(texts::propsSheet);
    if (!plan.day.glue.batches.empty()) {
        papers.emplace_back(texts::batchCards);
        papers.emplace_back(texts::runSheet);
    }
    const bool canBuy = !piece.stock.buy.empty();
    if (canBuy || !piece.stock.boards.empty() || !shop.boards.empty()) papers.emplace_back(texts::cutList);
    if (canBuy) papers.emplace_back(texts::buyingList);
    const int count = math::countOf(papers) + 2;
    papers.emplace_back(texts::fullSize);
    return Answer{.question = Question::paper,
                  .figures = {texts::paperCount, {}, count},
                  .sentence = {texts::canBePrinted, {put::list(papers)}}};
}

Answer recordAnswer(const model::Piece& piece) {
    Answer answer;
    answer.question = Question::record;
    if (piece.record.empty()) {
        answer.figures = {texts::nothingYet};
        answer.sentence = {texts::nothingRecorded};
        return answer;
    }
    int dryFits = 0;
    int readings = 0;
    for (const model::Record& day : piece.record) {
        if (day.dryFit) ++dryFits;
        readings += math::countOf(day.letGo);
    }
    const int glued = math::countOf(piece.record) - dryFits;
    std::vector<Message> days;
    if (glued > 0) days.push_back({texts::glueUps, {}, glued});
    if (dryFits > 0) days.push_back({texts::dryFits, {}, dryFits});
    answer.figures = {texts::listOnly, {put::list(days)}};
    answer.sentence = {texts::recorded, {put::list(days), piece.record.back().when.substr(0, 10)}};
    if (readings > 0) answer.more.push_back({texts::readings, {}, readings});
    return answer;
}

constexpr const char* questionWords[] = {"Line", "Strips", "Form",  "Holding", "Glue",
                                         "Time", "Stock",  "Paper", "Record"};

}  // namespace

Question questionOf(About about) {
    switch (about) {
        case About::line:
            return Question::line;
        case About::stack:
            return Question::strips;
        case About::form:
            return Question::form;
        case About::holding:
            return Question::holding;
        case About::glue:
            return Question::glue;
        case About::schedule:
            return Question::time;
        case About::stock:
            return Question::stock;
    }
    return Question::line;
}

const char* questionName(Question question) {
    return questionWords[static_cast<std::size_t>(question)];
}

std::string answerText(const Answer& answer, const units::Display& display, const Translate& translate) {
    std::vector<Message> all{answer.sentence};
    all.insert(all.end(), answer.more.begin(), answer.more.end());
    return writeTexts(all, display, translate);
}

Verdict verdictOf(const Plan& plan) {
    Verdict verdict;
    for (const Finding& finding : plan.findings) {
        if (isCause(finding)) ++verdict.count[static_cast<std::size_t>(finding.severity)];
    }
    std::vector<Message> open;
    if (plan.holding.stations.empty()) open.emplace_back(texts::openHolding);
    if (!plan.holding.props.empty() && !plan.holding.hull) open.emplace_back(texts::openBoat);
    if (std::ranges::count(plan.findings, Code::woodValuesMissing, &Finding::code) > 0) {
        open.emplace_back(texts::openWood);
    }
    const int first = verdict.stops() + verdict.cautions();
    if (!isStudied(plan)) {
        verdict.text = {texts::beingChecked};
    } else if (first == 0) {
        verdict.text = open.empty() ? Message(texts::ready) : Message(texts::onlyOpen, {put::list(open)});
    } else {
        verdict.text = {texts::thingsFirst, {}, first};
        if (!open.empty()) verdict.text = {texts::withOpen, {verdict.text, put::list(open)}};
    }
    return verdict;
}

std::vector<Answer> answersOf(const model::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Answer> answers{
        lineAnswer(piece, plan), stripsAnswer(piece, shop, plan),
        formAnswer(piece, plan), holdingAnswer(piece, plan),
        glueAnswer(plan),        timeAnswer(piece, plan),
        stockAnswer(plan),       paperAnswer(piece, shop, plan),
        recordAnswer(piece),
    };
    for (Answer& answer : answers) answer.worst = worstOf(plan.findings, answer.question);
    return answers;
}

}  // namespace fayline::plan
