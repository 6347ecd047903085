#include <algorithm>
#include <cmath>

#include "core/plan/findings/day_texts.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/study/remedies.hpp"

namespace fayline::plan {

namespace {

using units::Mark;

Message jointOf(const Plan& plan, const schedule::FaceTimes& face, int gluing) {
    if (plan.day.gluings.size() < 2) return jointName(face.inner);
    const Arg glueUp = put::count(gluing + 1);
    if (face.inner == 0) return {texts::jointOnBoatOfGlueUp, {glueUp}};
    return {texts::jointOfGlueUp, {put::count(face.inner), put::count(face.inner + 1), glueUp}};
}

void addJoints(std::vector<Finding>& findings, const Plan& plan) {
    for (const GluingDay& day : plan.day.gluings) {
        if (day.run.worstFace < 0) continue;
        const schedule::FaceTimes& face = day.run.faces[day.run.worstFace];
        const double open_s = day.job.openTime_s;
        if (face.margin_s() >= shortMargin * open_s) continue;
        const bool late = face.margin_s() < 0;
        const double held_s = face.closed_s - face.wetted_s;
        Finding finding = found(late ? Code::closedTooLate : Code::marginShort, plan.day.glue.adhesive.openTimeSource);
        finding.value = held_s / 60;
        finding.limit = open_s / 60;
        finding.text = {
            late ? texts::closedTooLate : texts::spareShort,
            {jointOf(plan, face, day.job.gluing), put::duration(std::abs(face.margin_s())), put::duration(open_s)}};
        finding.details = {
            {late ? texts::openTimeEnded : texts::openTimeLeft, {put::duration(held_s), put::duration(open_s)}}};
        findings.push_back(finding);
    }
}

void addBatches(std::vector<Finding>& findings, const Plan& plan) {
    for (const GluingDay& day : plan.day.gluings) {
        if (day.run.worstCup < 0 || day.run.cupMargin_s() >= 0) continue;
        const schedule::CupTimes& cup = day.run.cups[day.run.worstCup];
        const double used_s = cup.emptied_s - cup.mixedFrom_s;
        const double lasts_s = cup.useBy_s - cup.mixedFrom_s;
        Finding finding = found(Code::cupWaits,
                                {"pot that heats itself, from the data sheet's pot life (an estimate)", Mark::derived});
        finding.value = used_s / 60;
        finding.limit = lasts_s / 60;
        // To the whole minutes around them, so that two that are close are not written alike.
        finding.text = {texts::batchWaits,
                        {put::count(cup.number), put::duration(60 * std::ceil(used_s / 60)),
                         put::duration(60 * std::floor(lasts_s / 60))}};
        finding.details.emplace_back(texts::hotBatchOutdoors);
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> dayFindings(const Plan& plan) {
    std::vector<Finding> findings;
    if (plan.day.glue.lines.empty()) return findings;
    addJoints(findings, plan);
    addBatches(findings, plan);
    return findings;
}

std::vector<Finding> dayStudyFindings(const Plan& plan, const DayStudy& study) {
    if (plan.day.glue.lines.empty() || study.days.chanceInTime >= shortChance) return {};
    Finding finding =
        found(Code::chanceInTime,
              {"simulated days, pace, glue, tasks and mishaps as given (common practice)", Mark::commonPractice});
    finding.value = oddsPct(study.days.chanceInTime);
    finding.limit = 100 * shortChance;
    finding.text = {texts::chanceShort, {marginText(plan.day.margin_s), inHundredText(study.days.chanceInTime)}};
    finding.details = {{texts::spareFor95, {put::duration(std::max(0.0, study.days.marginFor95_s))}}};
    if (!study.remedies.empty()) {
        const Remedy& best = study.remedies.front();
        finding.text.phrase = texts::chanceShortTry;
        finding.text.args.insert(finding.text.args.end(), {best.brief, marginText(best.margin_s)});
        finding.details.push_back({texts::mostTimeFrom, {best.what}});
    }
    return {finding};
}

}  // namespace fayline::plan
