#include <cmath>
#include <string>

#include "core/measure/day_text.hpp"
#include "core/plan/day_words.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/remedies.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::Source;
using measure::writeDuration;

Finding aboutDay(Severity severity, Code code, const std::string& unit, const Source& source) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    return finding;
}

std::string faceText(int inner) {
    if (inner == 0) return "the face on the boat";
    return "the face between strips " + std::to_string(inner) + " and " + std::to_string(inner + 1);
}

std::string ofGluing(const Plan& plan, int gluing) {
    return plan.day.gluings.size() > 1 ? " in gluing " + std::to_string(gluing + 1) : "";
}

void addFaces(std::vector<Finding>& findings, const Plan& plan) {
    for (const GluingDay& day : plan.day.gluings) {
        if (day.run.worstFace < 0) continue;
        const schedule::FaceTimes& face = day.run.faces[day.run.worstFace];
        const double open_s = day.job.openTime_s;
        if (face.margin_s() >= shortMargin * open_s) continue;
        const bool late = face.margin_s() < 0;
        Finding finding =
            aboutDay(late ? Severity::stop : Severity::caution, late ? Code::closedTooLate : Code::marginShort, "min",
                     plan.day.glue.adhesive.openTimeSource);
        finding.value = (face.closed_s - face.wetted_s) / 60;
        finding.limit = open_s / 60;
        finding.text = capitalised(faceText(face.inner)) + ofGluing(plan, day.job.gluing) + " is closed " +
                       writeDuration(face.closed_s - face.wetted_s) + " after it was wetted; the glue stays open for " +
                       writeDuration(open_s) + " in this air" +
                       (late ? ": it has gone off by then." : ", which leaves little in hand.");
        findings.push_back(finding);
    }
}

void addCups(std::vector<Finding>& findings, const Plan& plan) {
    for (const GluingDay& day : plan.day.gluings) {
        if (day.run.worstCup < 0 || day.run.cupMargin_s() >= 0) continue;
        const schedule::CupTimes& cup = day.run.cups[day.run.worstCup];
        Finding finding =
            aboutDay(Severity::caution, Code::cupWaits, "min",
                     {"cup that heats itself, from the data sheet's pot life (an estimate)", Mark::derived});
        finding.value = (cup.emptied_s - cup.mixedFrom_s) / 60;
        finding.limit = (cup.useBy_s - cup.mixedFrom_s) / 60;
        finding.text =
            "Cup " + std::to_string(cup.number) + " is empty " + writeDuration(cup.emptied_s - cup.mixedFrom_s) +
            " after mixing began, where it is to be used within " + writeDuration(cup.useBy_s - cup.mixedFrom_s) +
            ". Mix it later or smaller, or keep it in a tray; a hot cup goes outdoors.";
        findings.push_back(finding);
    }
}

}  // namespace

std::vector<Finding> dayFindings(const boat::Piece&, const Shop&, const Plan& plan) {
    std::vector<Finding> findings;
    if (plan.day.glue.lines.empty()) return findings;
    addFaces(findings, plan);
    addCups(findings, plan);
    return findings;
}

std::vector<Finding> dayStudyFindings(const Plan& plan, const DayStudy& study) {
    std::vector<Finding> findings;
    if (plan.day.glue.lines.empty()) return findings;
    if (study.days.chanceInTime < shortChance) {
        Finding finding = aboutDay(
            Severity::caution, Code::chanceInTime, "pct",
            {"simulated days, pace, glue, tasks and mishaps as given (common practice)", Mark::commonPractice});
        finding.value = oddsPct(study.days.chanceInTime);
        finding.limit = 100 * shortChance;
        finding.text = capitalised(oddsWords(plan.day.margin_s, study.days)) + ".";
        if (!study.remedies.empty()) {
            const Remedy& best = study.remedies.front();
            finding.text +=
                " Most time comes from " + best.what + ": a margin of " + writeDuration(best.margin_s) + ".";
        }
        findings.push_back(finding);
    }
    return findings;
}

}  // namespace fayline::plan
