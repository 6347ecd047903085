#include "core/plan/compare.hpp"

#include <algorithm>
#include <cmath>
#include <functional>
#include <optional>

#include "core/math/count.hpp"
#include "core/plan/compare_texts.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/form_wording.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/plan/study/choices_counts.hpp"

namespace fayline::plan {

namespace {

enum class Good { less, more };

// How a figure is judged; `apart` in its own unit, `apartShare` of the greater of both sides.
struct Scale {
    Phrase name;
    Good good = Good::less;
    double apart = 0;
    double apartShare = 0;
};

constexpr Scale radiusScale{texts::comparedRadius, Good::more, 0, 0.02};
constexpr Scale misfitScale{texts::comparedMisfit, Good::less, 1e-4};
constexpr Scale bendScale{texts::comparedBend, Good::less, 0.01};
constexpr Scale chanceScale{texts::comparedChance, Good::less, 0.01};
constexpr Scale sparesScale{texts::comparedSpares};
constexpr Scale springsScale{texts::comparedSprings, Good::less, 1e-3};
constexpr Scale gapScale{texts::comparedGap, Good::less, 1e-4};
constexpr Scale pullScale{texts::comparedPull, Good::less, 0, 0.05};
constexpr Scale stationsScale{texts::comparedStations};
constexpr Scale glueScale{texts::comparedGlue, Good::less, 0, 0.02};
constexpr Scale batchesScale{texts::comparedBatches};
constexpr Scale spareScale{texts::comparedSpare, Good::more, 60};
constexpr Scale timeScale{texts::comparedTime, Good::less, 60};
constexpr Scale sawnScale{texts::comparedSawn, Good::less, 0, 0.02};
constexpr Scale stopsScale{texts::comparedStops};
constexpr Scale cautionsScale{texts::comparedCautions};

using Value = std::optional<double>;
using Write = std::function<Message(double)>;

Judged judge(const Scale& scale, const Value& first, const Value& second) {
    if (!first || !second) return first.has_value() == second.has_value() ? Judged::alike : Judged::differs;
    if (*first == *second) return Judged::alike;
    const double most = std::max(std::abs(*first), std::abs(*second));
    // Against what has no bound, as the radius of a straight line, every figure is another.
    if (std::isfinite(most) && std::abs(*second - *first) <= scale.apart + scale.apartShare * most) {
        return Judged::alike;
    }
    return (*second < *first) == (scale.good == Good::less) ? Judged::better : Judged::worse;
}

Write written(Arg (*put)(double)) {
    return [put](double value) { return Message(texts::figureAlone, {put(value)}); };
}

// Where more than a third would break no number of spares is sensible: worse than any.
Message sparesText(double spares) {
    return std::isfinite(spares) ? Message(texts::figureAlone, {put::count(spares)}) : Message(texts::tooManyBreak);
}

// What is compared of one plan in one question.
struct Figure {
    const Scale* scale = nullptr;
    Value value;
    Write write;
};
using Figures = std::vector<Figure>;

Figures lineFigures(const Plan& plan) {
    const double curvature_per_m = std::abs(plan.line.tightest.curvature_per_m);
    const bool straight = curvature_per_m * plan.line.fair.line.length() < 1e-6;
    double misfit_m = 0;
    for (const line::Foot& foot : plan.line.fair.points) misfit_m = std::max(misfit_m, std::abs(foot.misfit_m));
    const Message radius =
        straight ? Message(texts::straightLine) : Message(texts::figureAlone, {tightestRadius(plan.line)});
    return {{&radiusScale, straight ? double(INFINITY) : 1 / curvature_per_m, [radius](double) { return radius; }},
            {&misfitScale, misfit_m, written(put::small)}};
}

Figures bendFigures(const Plan& plan) {
    const laminate::StackPlan& stack = plan.stack;
    Value share;
    if (!stack.strips.empty()) share = laminate::worstShare(laminate::worstStrip(stack));
    return {{&bendScale, share, [](double value) { return Message(texts::figureAlone, {put::share(value)}); }},
            {&chanceScale, stack.chanceAnyBreaks, written(put::chance)},
            {&sparesScale, stack.spares < 0 ? double(INFINITY) : double(stack.spares), sparesText}};
}

Figures formFigures(const Plan& plan) {
    Value springs_m;
    if (plan.form.letsGo && plan.form.possible && !plan.form.parts.empty()) {
        const laminate::Opening& opening = plan.form.parts.front().uncorrected;
        const bool atStart = reportedAtStart(plan.form, plan.line.fair.line.length());
        springs_m = std::abs(atStart ? opening.start_m : opening.end_m);
    }
    return {{&springsScale, springs_m, written(put::tape)}};
}

Figures holdingFigures(const Plan& plan) {
    if (plan.holding.stations.empty()) return {{&gapScale, {}, {}}, {&pullScale, {}, {}}, {&stationsScale, {}, {}}};
    const holding::Held& held = plan.holding.held;
    Value gap_m;
    Value pull_N;
    if (!held.samples.empty() && holding::inBalance(held.outcome)) {
        gap_m = std::max(held.largest.gap_m, 0.0);
        for (const holding::HeldStation& station : held.stations) {
            pull_N = std::max(pull_N.value_or(0), station.pull_N);
        }
    }
    return {{&gapScale, gap_m, written(put::small)},
            {&pullScale, pull_N, written(put::force)},
            {&stationsScale, math::countOf(plan.holding.stations), written(put::count)}};
}

bool isGlued(const Plan& plan) {
    return !plan.day.glue.batches.empty();
}

Figures glueFigures(const Plan& plan) {
    const glue::GluePlan& glue = plan.day.glue;
    return {{&glueScale, isGlued(plan) ? Value(glue.mixed_kg) : Value(), written(put::mass)},
            {&batchesScale, isGlued(plan) ? Value(math::countOf(glue.batches)) : Value(), written(put::count)}};
}

Figures timeFigures(const Plan& plan) {
    Value spare_s;
    Value work_s;
    if (isGlued(plan)) {
        if (std::isfinite(plan.day.margin_s)) spare_s = plan.day.margin_s;
        work_s = glueUpTime(plan.day);
    }
    return {{&spareScale, spare_s, written(put::duration)}, {&timeScale, work_s, written(put::duration)}};
}

Figures stockFigures(const Plan& plan) {
    return {{&sawnScale, lengthToSaw(plan.stack), written(put::length)}};
}

// What an answer says in figures, where no way is better than another.
FigureCompared saidOf(const Phrase& name, const Plan& first, const Plan& second, Question question) {
    const auto said = [question](const Plan& plan) {
        const auto answer = std::ranges::find(plan.answers, question, &Answer::question);
        return answer == plan.answers.end() ? Message() : answer->figures;
    };
    FigureCompared compared{name, said(first), said(second)};
    if (!(compared.first == compared.second)) compared.judged = Judged::differs;
    return compared;
}

double causesOf(const Plan& plan, Question question, Severity severity) {
    return static_cast<double>(std::ranges::count_if(plan.findings, [&](const Finding& finding) {
        return isCause(finding) && finding.severity == severity && questionOf(aboutOf(finding.code)) == question;
    }));
}

bool isAnswered(const Figures& figures) {
    return std::ranges::any_of(figures, [](const Figure& figure) { return figure.value.has_value(); });
}

// Whether both were looked at equally far.
bool sameStudies(const Plan& first, const Plan& second) {
    return std::ranges::all_of(allStudies, [&](Study study) { return has(first, study) == has(second, study); });
}

void add(QuestionCompared& to, const Figure& first, const Figure& second) {
    if (!first.value && !second.value) return;
    const auto said = [](const Figure& figure) { return figure.value ? figure.write(*figure.value) : Message(); };
    to.figures.push_back(
        {first.scale->name, said(first), said(second), judge(*first.scale, first.value, second.value)});
}

// Stops and cautions where there are any: what they say goes before all figures.
void addCauses(QuestionCompared& to, const Plan& first, const Plan& second) {
    for (const auto& [scale, severity] :
         {std::pair(&stopsScale, Severity::stop), std::pair(&cautionsScale, Severity::caution)}) {
        const double before = causesOf(first, to.question, severity);
        const double after = causesOf(second, to.question, severity);
        if (before == 0 && after == 0) continue;
        add(to, {scale, before, written(put::count)}, {scale, after, written(put::count)});
        if (to.judged == Judged::alike) to.judged = to.figures.back().judged;
    }
}

Judged together(const std::vector<FigureCompared>& figures) {
    const auto any = [&](Judged judged) { return std::ranges::count(figures, judged, &FigureCompared::judged) > 0; };
    if (any(Judged::better) && any(Judged::worse)) return Judged::both;
    for (const Judged judged : {Judged::better, Judged::worse, Judged::differs}) {
        if (any(judged)) return judged;
    }
    return Judged::alike;
}

// Causes of `from` of whose code `other` has fewer findings.
std::vector<Finding> without(const Plan& from, const Plan& other) {
    std::vector<Finding> lone;
    std::vector<Code> there;
    for (const Finding& finding : other.findings) {
        if (levelOf(finding) == Level::finding) there.push_back(finding.code);
    }
    for (const Finding& finding : from.findings) {
        if (levelOf(finding) != Level::finding) continue;
        const auto met = std::ranges::find(there, finding.code);
        if (met != there.end()) {
            there.erase(met);
        } else if (isCause(finding)) {
            lone.push_back(finding);
        }
    }
    return lone;
}

}  // namespace

const char* judgedWord(Judged judged) {
    switch (judged) {
        case Judged::better:
            return FAYLINE_TEXT("plan", "better");
        case Judged::worse:
            return FAYLINE_TEXT("plan", "worse");
        case Judged::both:
            return FAYLINE_TEXT("plan", "both");
        case Judged::differs:
            return FAYLINE_TEXT("plan", "different");
        case Judged::alike:
            break;
    }
    return FAYLINE_TEXT("plan", "alike");
}

Comparison compare(const Plan& first, const Plan& second) {
    using FiguresOf = Figures (*)(const Plan&);
    constexpr std::pair<Question, FiguresOf> rows[] = {
        {Question::line, lineFigures},       {Question::strips, bendFigures}, {Question::form, formFigures},
        {Question::holding, holdingFigures}, {Question::glue, glueFigures},   {Question::time, timeFigures},
        {Question::stock, stockFigures},     {Question::paper, nullptr},      {Question::record, nullptr}};
    Comparison made;
    made.findingsCompared = sameStudies(first, second);
    for (const auto& [question, figuresOf] : rows) {
        QuestionCompared& row = made.questions.emplace_back();
        row.question = question;
        if (figuresOf) {
            const Figures before = figuresOf(first);
            const Figures after = figuresOf(second);
            if (isAnswered(before) != isAnswered(after)) {
                row.judged = Judged::differs;  // what is not answered yet is neither better nor worse
            } else if (made.findingsCompared) {
                addCauses(row, first, second);
            }
            for (std::size_t i = 0; i < before.size(); ++i) add(row, before[i], after[i]);
        } else {
            const bool paper = question == Question::paper;
            row.figures.push_back(
                saidOf(paper ? texts::comparedPaper : texts::comparedRecord, first, second, question));
        }
        if (row.judged == Judged::alike) row.judged = together(row.figures);
    }
    if (!made.findingsCompared) return made;
    made.gone = without(first, second);
    made.come = without(second, first);
    return made;
}

}  // namespace fayline::plan
