#include <algorithm>
#include <cmath>
#include <optional>
#include <string>

#include "core/boat/hold_traits.hpp"
#include "core/math/count.hpp"
#include "core/measure/day_text.hpp"
#include "core/plan/day_words.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/form_wording.hpp"
#include "core/plan/holding_scene.hpp"
#include "core/plan/line_wording.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::writeShare;

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

std::optional<Severity> worstOf(const std::vector<Finding>& findings, Question question) {
    std::optional<Severity> worst;
    for (const Finding& finding : findings) {
        if (levelOf(finding) == Level::fact) continue;
        if (questionOf(aboutOf(finding.code)) == question && (!worst || finding.severity < *worst))
            worst = finding.severity;
    }
    return worst;
}

Answer notBuilt(Question question, const std::string& whatItWillSay) {
    return {question, Message(), "Not built yet: " + whatItWillSay + ".", {}, std::nullopt};
}

Answer lineAnswer(const boat::Piece& piece, const Plan& plan) {
    const measure::Display& display = plan.display;
    const line::Place& tightest = plan.line.tightest;
    const double curvature = std::abs(tightest.curvature_per_m);
    // Flatter than this over the whole length, no eye sees it bend.
    const bool straight = curvature * plan.line.fair.line.length() < 1e-6;
    const std::string radius = straight ? "" : measure::writeLength(shownRadius(plan.line, display), display);
    double miss = 0;
    for (const line::Foot& foot : plan.line.fair.points) miss = std::max(miss, std::abs(foot.misfit_m));

    std::string text = "The";
    const std::size_t suspects = plan.line.misread.suspects.size();
    if (suspects == 1) {
        const int point = plan.line.misread.suspects.front().point;
        text = "One offset looks misread, " + pointText(piece.line.points[point], point) + "; the";
    } else if (suspects > 1) {
        text = capitalised(numberWord(static_cast<int>(suspects))) + " offsets look misread; the";
    }
    text += " fair line misses no point by more than " + smallText(miss, display);
    const bool cutShort = !plan.line.misread.searchedAll;
    text += straight
                ? " and is straight."
                : " and is tightest " + placeText(tightest.at_m, plan.line.fair.line.length(), display) +
                      ", with a radius of " + radius +
                      (tightestOff(plan.line) > wideBand ? " (" + radiusRange(plan.line, display) + ", 19 times of 20)."
                                                         : ".");
    if (cutShort) text += " More offsets stand out than were looked at: the worst came first.";
    return {Question::line, straight ? "straight" : "radius " + radius, text, {}, std::nullopt};
}

Answer stripsAnswer(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    const stack::StackPlan& stack = plan.stack;
    const stack::Strip& weakest = stack::worstStrip(stack);
    const double share = stack::worstShare(weakest);
    const bool softened = std::any_of(piece.stack.strips.begin(), piece.stack.strips.end(),
                                      [](const boat::Strips& s) { return s.bentBefore.has_value(); });
    const int count = math::countOf(stack.strips);
    const bool goes = share < 1 && stack.spares >= 0;
    std::string text = capitalised(stripsText(piece.stack, shop.species, plan.display));
    if (goes) {
        text += std::string(count == 1 ? " goes round" : " go round") + (softened ? "" : " cold") + "; ";
    } else {
        text += count == 1 ? " does not go round; " : " do not go round; ";
    }
    text += stripText(weakest.place, count) + " is strained to " + writeShare(share) + " of what breaks it";
    // Where the points leave the tightest bend open, the strain with it.
    const double off = tightestOff(plan.line);
    if (off > wideBand && share > 0) {
        text += " (" + writeShare(share * std::max(0.0, 1 - off)) + " to " + writeShare(share * (1 + off)) +
                ", 19 times of 20, by what the points leave open)";
    }
    if (goes && stack.spares == 0) text += "; no spare is needed on that account";
    if (goes && stack.spares > 0) {
        text += "; cut " + numberWord(stack.spares) + (stack.spares == 1 ? " spare" : " spares");
    }
    double strain = 0;
    for (const stack::Strip& strip : stack.strips) strain = std::max(strain, strip.strain);
    return {Question::strips,
            stripsFigures(piece.stack, plan.display) + ", " + writeShare(strain),
            text + ".",
            {},
            std::nullopt};
}

// Whether the ends want a fastening for good.
std::string fasteningText(const stack::FormPlan& form) {
    if (!form.stressLeft) return {};
    const auto wants = [](const stack::EndStress& end) { return end.wantsFastening && !end.scarfed; };
    std::vector<std::string> ends;
    if (wants(form.stressLeft->start)) ends.emplace_back("the start");
    if (wants(form.stressLeft->end)) ends.emplace_back("the end");
    if (ends.empty()) return " The glue bears what that pulls at its ends.";
    return " Fasten " + listed(ends) + " for good: there it would peel.";
}

Answer formAnswer(const boat::Piece& piece, const Plan& plan) {
    const stack::FormPlan& form = plan.form;
    const double length = plan.line.fair.line.length();
    const auto answer = [](const std::string& figures, const std::string& sentence) {
        return Answer{Question::form, figures, sentence, {}, std::nullopt};
    };
    if (!form.letsGo) {
        const bool inPlace = piece.form.kind == boat::FormKind::inPlace;
        return answer(inPlace ? "in place" : "kept on its form",
                      std::string(inPlace ? "Glued in place on the boat" : "Kept on its form") +
                          ", nothing lets go: the piece keeps the line and the stress." + fasteningText(form));
    }
    const stack::PartForm& part = form.parts.front();
    const std::string share = writeShare(part.ratioAtTightest);
    if (!form.possible) {
        return answer("none lets go to it",
                      "No form lets these strips go to this line: they give back too much of it.");
    }
    if (std::abs(plan.line.tightest.curvature_per_m) * length < 1e-6) {
        return answer("straight", "The piece is straight, so nothing springs back.");
    }
    const bool atStart = reportedAtStart(form, length);
    const double off = atStart ? part.uncorrected.start_m : part.uncorrected.end_m;
    std::string text = "Let go, the piece gives back " + share + " of its curve; ";
    if (form.corrected) {
        text += "the form is bent for that, to a radius of " +
                measure::writeLength(form.tightestRadius_m, plan.display) + " at its tightest. Uncorrected, " +
                openingText(part.uncorrected, atStart, "would stand", plan.display);
    } else {
        text += "the form does not allow for it: " + openingText(part.uncorrected, atStart, "will stand", plan.display);
    }
    text += "; bends that builders measured gave back from nothing to about twice that.";
    return answer(share + ", " + tapeText(off, plan.display), text);
}

std::string stationsText(const boat::Piece& piece) {
    return capitalised(kindsText(piece.holding.stations));
}

// What the tools allow where the glue cannot be pressed out everywhere.
std::string unpressedText(const boat::Piece& piece, const Plan& plan, const holding::Proposal& proposal) {
    const std::vector<boat::Station> stations = holding::stationsOf(proposal);
    if (proposal.forEverything > math::countOf(stations)) {
        const int used = toolsAmong(stations);
        const std::string best =
            used == proposal.tools ? "your " + kindsText(stations) : kindsText(stations) + " of what you have";
        return " The best that " + best + " can do is proposed: all held down" +
               (proposal.largestSpacing_m > 0
                    ? ", " + reachText(proposal.largestSpacing_m, plan.display) + " apart at most"
                    : "") +
               "; to press the glue out everywhere takes " + numberWord(proposal.forEverything) + ".";
    }
    const std::string meet = stations.size() == 1 ? " meets" : " meet";
    const std::string why = piece.form.kind == boat::FormKind::posts ? "between posts nothing presses the glue out"
                                                                     : "no number presses the glue out everywhere";
    return " " + capitalised(kindsText(stations)) + meet + " gap limit and strength, as proposed; " + why + ".";
}

// What more is asked for, once it is known.
std::string proposalText(const boat::Piece& piece, const Plan& plan) {
    if (!has(plan, Study::proposal)) {
        return piece.holding.stations.empty() ? " What would hold it is being worked out."
                                              : " The fewest that would do are being worked out.";
    }
    if (plan.holdingStudy->proposal.stations.empty()) return {};
    const holding::Proposal& proposal = plan.holdingStudy->proposal;
    const int count = math::countOf(proposal.stations);
    if (!proposal.met) return proposal.unmet == "pressing" ? unpressedText(piece, plan, proposal) : std::string();
    const bool none = piece.holding.stations.empty();
    if (!proposal.pressingIsWish) {
        return none ? " " + capitalised(numberWord(count)) + " would meet every condition; they are proposed."
                    : " The fewest that meet every condition are " + numberWord(count) + ".";
    }
    const std::string fewest = none ? " " + capitalised(numberWord(count)) + " would hold it down; they are proposed."
                                    : " The fewest that hold it down are " + numberWord(count) + ".";
    const int there = math::countOf(piece.holding.stations);
    return proposal.forEverything > std::max(count, there)
               ? fewest + " To press the glue out everywhere would take " + numberWord(proposal.forEverything) + "."
               : fewest;
}

Answer holdingAnswer(const boat::Piece& piece, const Plan& plan) {
    const holding::Held& held = plan.holding.held;
    const auto& stations = plan.holding.stations;
    const int count = math::countOf(stations);
    if (count == 0) {
        return {
            Question::holding, "no stations", "No stations are set out." + proposalText(piece, plan), {}, std::nullopt};
    }
    if (held.samples.empty() || !holding::inBalance(held.outcome)) {
        return {Question::holding,
                std::to_string(count) + (count == 1 ? " station" : " stations"),
                stationsText(piece) + (count == 1 ? " is" : " are") +
                    " set out; how the stack lies under them could not be worked out.",
                {},
                std::nullopt};
    }
    const double limit = piece.holding.gapLimit_m;
    const std::string gap = smallText(std::max(held.largest.gap_m, 0.0), plan.display);
    const auto strongest = std::max_element(held.stations.begin(), held.stations.end(),
                                            [](const auto& a, const auto& b) { return a.pull_N < b.pull_N; });
    std::string text = stationsText(piece);
    if (held.largest.gap_m <= limit) {
        text += std::string(count == 1 ? " holds" : " hold") + " it down: no gap is wider than " + gap;
    } else {
        text += std::string(count == 1 ? " leaves" : " leave") + " a gap of " + gap + " " +
                placeText(held.largest.at_m, plan.line.fair.line.length(), plan.display) + ", where " +
                smallText(limit, plan.display) + " is allowed";
    }
    text += "; the hardest pull is " + pullText(strongest->pull_N, strongest->state, plan.display) + ", at station " +
            std::to_string(strongest->number) + ".";
    return {Question::holding,
            std::to_string(count) + (count == 1 ? " station, " : " stations, ") + gap,
            text + proposalText(piece, plan),
            {},
            std::nullopt};
}

std::string clockText(const boat::Piece& piece, double after_s) {
    return measure::writeClock(piece.crew.startAt_s + after_s);
}

Answer glueAnswer(const Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    if (glue.batches.empty()) {
        return {Question::glue,
                "none",
                "Nothing is glued: there are no two faces with glue between them.",
                {},
                std::nullopt};
    }
    const measure::Display& display = plan.display;
    const auto count = math::countOf(glue.batches);
    const auto largest = std::max_element(glue.batches.begin(), glue.batches.end(),
                                          [](const auto& a, const auto& b) { return a.mixed_kg() < b.mixed_kg(); });
    const std::string mixed = measure::writeMass(glue.mixed_kg, display);
    std::string text = capitalised(numberWord(count)) + (count == 1 ? " cup of " : " cups of ") + glue.adhesive.name +
                       ", " + mixed + " in all (" + measure::writeMass(glue.parts_kg[0], display);
    if (!glue.adhesive.onePart()) text += " and " + measure::writeMass(glue.parts_kg[1], display);
    text += "). Use the largest within " + measure::writeDuration(largest->useWithin_s) + ": it lasts " +
            lifeWords(largest->potLife_s) + ".";
    if (std::isfinite(glue.cure.clampsOff_s)) {
        text += " Clamps come off at " + measure::writeClock(glue.cure.closedAt_s + glue.cure.clampsOff_s) + ".";
    }
    return {
        Question::glue, mixed + ", " + std::to_string(count) + (count == 1 ? " cup" : " cups"), text, {}, std::nullopt};
}

Answer timeAnswer(const boat::Piece& piece, const Plan& plan) {
    if (plan.day.glue.batches.empty()) {
        return {Question::time, "no clock", "Nothing is glued, so no clock runs.", {}, std::nullopt};
    }
    const GluingDay& worst = plan.day.gluings[plan.day.worstGluing];
    const double margin_s = plan.day.margin_s;
    const std::string size = measure::writeDuration(std::abs(margin_s));
    std::string text = capitalised(plan.dayStudy ? oddsWords(margin_s, plan.dayStudy->days) : marginWords(margin_s));
    text += ". Begun at " + clockText(piece, 0) + ", the last station is on at " + clockText(piece, worst.run.closed_s);
    if (plan.day.gluings.size() > 1) text += ", in gluing " + std::to_string(plan.day.worstGluing + 1);
    if (!plan.dayStudy) text += "; the chance of that is being worked out";
    return {Question::time, size + (margin_s < 0 ? " late" : " in hand"), text + ".", {}, std::nullopt};
}

Answer paperAnswer(const boat::Piece& piece, const Plan& plan) {
    std::vector<std::string> papers{"a table of the stations", "a story stick"};
    if (!piece.holding.stations.empty()) papers.emplace_back("the order of closing");
    const bool propped = std::any_of(piece.holding.stations.begin(), piece.holding.stations.end(), [](const auto& s) {
        return boat::is<boat::Strut>(s.kind) || boat::is<boat::Screw>(s.kind);
    });
    if (propped || piece.holding.hull.weight_kg > 0) papers.emplace_back("a sheet of props and screws");
    if (!plan.day.glue.batches.empty()) {
        papers.emplace_back("a card for each cup of glue");
        papers.emplace_back("the run sheet of the day");
    }
    const std::size_t count = papers.size() + 2;
    papers.emplace_back("the line and the form at full size");
    return {Question::paper,
            std::to_string(count) + " papers",
            capitalised(listed(papers)) + " can be printed.",
            {},
            std::nullopt};
}

std::string times(int count, const std::string& one, const std::string& many) {
    return numberWord(count) + " " + (count == 1 ? one : many);
}

Answer recordAnswer(const boat::Piece& piece) {
    int dryFits = 0;
    int readings = 0;
    for (const boat::Record& day : piece.record) {
        if (day.dryFit) ++dryFits;
        readings += math::countOf(day.letGo);
    }
    const int glued = math::countOf(piece.record) - dryFits;
    if (piece.record.empty()) {
        return {
            Question::record,
            "nothing yet",
            "Nothing is recorded of this piece yet; the day's clock writes down what happens, in a dry fit as well.",
            {},
            std::nullopt};
    }
    std::vector<std::string> days;
    if (glued > 0) days.push_back(times(glued, "glue-up", "glue-ups"));
    if (dryFits > 0) days.push_back(times(dryFits, "dry fit", "dry fits"));
    std::string text = capitalised(listed(days)) + (piece.record.size() == 1 ? " is" : " are") +
                       " recorded, the last of " + piece.record.back().when.substr(0, 10);
    if (readings > 0) text += ", with " + times(readings, "reading", "readings") + " of how far it sprang back";
    return {Question::record, listed(days), text + ".", {}, std::nullopt};
}

constexpr const char* questionWords[] = {"Line", "Strips", "Form",  "Holding", "Glue",
                                         "Time", "Stock",  "Paper", "Record"};

}  // namespace

const char* questionName(Question question) {
    return questionWords[static_cast<std::size_t>(question)];
}

std::string answerText(const Answer& answer, const measure::Display& display, const Translate& translate) {
    std::vector<Message> all{answer.sentence};
    all.insert(all.end(), answer.more.begin(), answer.more.end());
    return writeTexts(all, display, translate);
}

std::vector<Answer> answersOf(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    std::vector<Answer> answers{
        lineAnswer(piece, plan),
        stripsAnswer(piece, shop, plan),
        formAnswer(piece, plan),
        holdingAnswer(piece, plan),
        glueAnswer(plan),
        timeAnswer(piece, plan),
        notBuilt(Question::stock, "which boards give these strips"),
        paperAnswer(piece, plan),
        recordAnswer(piece),
    };
    for (Answer& answer : answers) answer.worst = worstOf(plan.findings, answer.question);
    return answers;
}

}  // namespace fayline::plan
