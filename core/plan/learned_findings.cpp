// What earlier pieces say about springback, and what it takes to spring this one home.
#include <algorithm>
#include <cmath>
#include <string>

#include "core/measure/figures.hpp"
#include "core/measure/input_error.hpp"
#include "core/measure/units.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/form_wording.hpp"
#include "core/plan/parts.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;

Finding aboutLearned(Severity severity, Code code, const std::string& unit, const measure::Source& source) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    return finding;
}

std::string figure(double value) {
    return measure::upToDecimals(value, 2);
}

void addFactor(std::vector<Finding>& findings, const Plan& plan) {
    const stack::Learned& learned = *plan.learned;
    if (!learned.factor || !plan.form.letsGo) return;
    const double taken = plan.form.factor;
    const bool within = taken >= learned.low && taken <= learned.high;
    constexpr double same = 0.005;
    Finding finding = aboutLearned(
        within ? Severity::note : Severity::caution, Code::springbackLearned, "ratio",
        {"your own record; range by Student, with the scatter of bends that builders measured", Mark::derived});
    finding.value = *learned.factor;
    finding.limit = taken;
    finding.text = learned.howFar + " Here springback is taken as " + figure(taken) + " times the rule";
    if (std::abs(taken - *learned.factor) <= same) {
        finding.text += ", as the record says.";
    } else if (within) {
        finding.text += "; the record is not used unless you set the form's springback factor.";
    } else {
        finding.text +=
            ", which lies outside that range: set the form's springback factor, or look again at what was "
            "read.";
    }
    if (std::any_of(learned.readings.begin(), learned.readings.end(), [](const auto& r) { return r.asItStands; })) {
        finding.text += " Records that keep no copy of their stack and form are held against the piece as it is now.";
    }
    findings.push_back(finding);
}

void addLeftOut(std::vector<Finding>& findings, const stack::Learned& learned) {
    for (const std::string& why : learned.leftOut) {
        Finding finding = aboutLearned(Severity::note, Code::springbackLeftOut, "",
                                       {"the record of the boat's pieces", Mark::derived});
        finding.limited = false;
        finding.text = "Of the springback that was read, " + why;
        findings.push_back(finding);
    }
}

// By its id; a piece that has none by its name and all that is recorded of it.
bool samePiece(const boat::Piece& one, const boat::Piece& other) {
    if (!one.id.empty() || !other.id.empty()) return one.id == other.id;
    return one.name == other.name && one.record == other.record;
}

std::string afterText(double after_s) {
    constexpr double hour_s = 3600;
    constexpr double day_s = 86400;
    if (after_s < 2 * day_s) return measure::writeNumber(after_s / hour_s, 2) + " hours";
    return measure::writeNumber(after_s / day_s, 2) + " days";
}

void addSpringHome(std::vector<Finding>& findings, const Plan& plan, const measure::Display& display) {
    if (!plan.sprungHome) return;
    const stack::SprungHome& home = *plan.sprungHome;
    const double length = plan.line.fair.line.length();
    const bool atStart = reportedAtStart(plan.form, length);
    Finding finding = aboutLearned(
        home.bears ? Severity::note : Severity::caution, Code::springHome, "pct",
        {"beam theory (derived); what wood bears for good: common practice, no source", Mark::commonPractice});
    finding.at_m = home.stressAt_m;
    finding.strip = home.stressPlace;
    finding.value = 100 * home.breakingShare;
    finding.limit = 100 * stack::shareForGood;
    const std::string when = home.measured ? "As it was read " + afterText(home.after_s) + " after it was let go, "
                                           : "Let go from this form, ";
    finding.text =
        when + openingText(home.off, atStart, "stands", display) + ". To lie on its line all along it wants " +
        measure::writeMoment(std::abs(home.moment_N_m), display) + " " + placeText(home.momentAt_m, length, display) +
        "; a single pull of " + measure::writeForce(std::abs(home.middlePull_N), display) + " square to its chord " +
        placeText(home.middleAt_m, length, display) + " brings its rise, " +
        measure::writeForce(std::abs(home.endsPull_N), display) + (home.endsPull_N < 0 ? " apart" : " together") +
        " at the ends its chord. Sprung home " + measure::writeStress(home.stress_Pa) + " stay in it for good, " +
        measure::writeShare(home.breakingShare) + " of what breaks it; wood bears " +
        measure::writeShare(stack::shareForGood) + ". " +
        (home.bears ? "It pushes back as hard: fasten it before the pull is taken off."
                    : "That is too much: make the piece anew, or plane it to its line.");
    findings.push_back(finding);
}

}  // namespace

bool springbackRead(const boat::Piece& piece) {
    return std::any_of(piece.record.begin(), piece.record.end(),
                       [](const boat::Record& record) { return !record.letGo.empty(); });
}

std::optional<stack::Learned> learnedOf(const Shop& shop, const std::atomic<bool>& stop) {
    std::vector<stack::RecordedPiece> recorded;
    std::vector<std::string> leftOut;
    for (std::size_t index = 0; index < shop.recorded.size(); ++index) {
        const boat::Piece& piece = shop.recorded[index];
        for (std::size_t i = 0; i < piece.record.size(); ++i) {
            if (stop) return std::nullopt;
            if (piece.record[i].letGo.empty()) continue;
            boat::Piece was = stack::asMeasured(piece, piece.record[i]);
            was.record = {piece.record[i]};
            try {
                const line::Line line = line::fair(fairInputOf(was.line)).line;
                recorded.push_back({std::move(was), line, index, i});
            } catch (const measure::InputError& error) {
                leftOut.push_back(piece.name + " is left out: no line can be made of it, " + error.what() + ".");
            }
        }
    }
    if (recorded.empty() && leftOut.empty()) return std::nullopt;
    stack::Learned learned = stack::learnSpringback(recorded, shop.species);
    learned.leftOut.insert(learned.leftOut.end(), leftOut.begin(), leftOut.end());
    const auto twice = std::unique(learned.leftOut.begin(), learned.leftOut.end());
    learned.leftOut.erase(twice, learned.leftOut.end());
    return learned;
}

std::optional<stack::SprungHome> sprungHomeOf(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    const stack::SpringbackReading* last = nullptr;
    if (plan.learned) {
        for (const stack::SpringbackReading& reading : plan.learned->readings) {
            if (reading.last && samePiece(shop.recorded[reading.index], piece)) last = &reading;
        }
    }
    if (!last) return stack::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, std::nullopt);
    const stack::OpenedBy measured{last->after_s, last->factor};
    const boat::Record& record = shop.recorded[last->index].record[last->record];
    if (!record.on || *record.on == stack::measuredOn(piece)) {
        return stack::sprungHome(piece, plan.line.fair.line, plan.stack, plan.form, measured);
    }
    const boat::Piece was = stack::asMeasured(piece, record);
    const line::Line line = line::fair(fairInputOf(was.line)).line;
    const stack::StackPlan planned =
        stack::planStack(was.stack, was.line.describes, was.line.stripsOn, line, shop.species);
    return stack::sprungHome(was, line, planned, stack::planForm(was, line, shop.species, planned), measured);
}

std::vector<Finding> learnedFindings(const Shop& shop, const Plan& plan) {
    std::vector<Finding> findings;
    if (plan.learned) {
        addFactor(findings, plan);
        addLeftOut(findings, *plan.learned);
    }
    addSpringHome(findings, plan, shop.display);
    return findings;
}

}  // namespace fayline::plan
