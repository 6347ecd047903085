#include <algorithm>
#include <cmath>
#include <string>

#include "core/glue/conditions.hpp"
#include "core/measure/day_reading.hpp"
#include "core/measure/day_text.hpp"
#include "core/plan/day_words.hpp"
#include "core/plan/findings.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

namespace {

using measure::Mark;
using measure::Source;
using measure::writeDuration;
using measure::writeMass;
using measure::writeShare;
using measure::writeTemperature;

constexpr double wettestForEpoxy = 0.12;
constexpr double hotDay_C = 30;
constexpr double ratioBears = 0.03;
constexpr double veryHot_C = 200;
constexpr double lineFilledAtLeast = 0.9;  // common practice, no source

const char* skinCaution() {
    return " Resin and hardener make skin and lungs allergic: gloves, long sleeves, fresh air; what the maker's safety "
           "sheet and local rules say comes first.";
}

Finding aboutGlue(Severity severity, Code code, const std::string& unit, const Source& source) {
    Finding finding;
    finding.severity = severity;
    finding.code = code;
    finding.unit = unit;
    finding.source = source;
    return finding;
}

class Looking {
public:
    Looking(const boat::Piece& piece, const Shop& shop, const Plan& plan)
        : piece_(piece), display_(shop.display), glue_(plan.day.glue) {}

    std::vector<Finding> all() {
        if (glue_.lines.empty()) return {};
        addCups();
        addStarved();
        addRatio();
        addMoisture();
        addDew();
        addCold();
        addHot();
        addThinner();
        addCure();
        return std::move(found_);
    }

private:
    const glue::Adhesive& adhesive() const { return glue_.adhesive; }
    std::string temperature(double air_C) const { return writeTemperature(air_C, display_); }
    // What nobody has said of the coming night is no risk yet: the panel says that it is assumed.
    bool nightIsGiven() const { return piece_.glue.airOverNight_C != boat::Glue{}.airOverNight_C; }

    void add(Finding finding, const std::string& text) {
        finding.text = text;
        found_.push_back(std::move(finding));
    }

    static Source modelSource() {
        return {"cup that heats itself, from the data sheet's pot life (an estimate)", Mark::derived};
    }

    void addCups() {
        addLateCup();
        addSmoke();
    }

    // What was tried for a batch that is late, and what it gives.
    std::string triedText(const glue::CupRemedy& tried) const {
        std::string text;
        switch (tried.kind) {
            case glue::CupRemedyKind::smallerCups:
                text = "cups of " + writeMass(tried.mixed_kg, display_);
                break;
            case glue::CupRemedyKind::tray:
                text = "a tray";
                break;
            case glue::CupRemedyKind::slowerGlue:
                text = tried.adhesive;
                break;
        }
        return text + " (lasts " + lifeWords(tried.potLife_s) + ", takes " + writeDuration(tried.takes_s) + ")";
    }

    std::string remediesText() const {
        std::vector<std::string> mends;
        std::vector<std::string> doesNot;
        for (const glue::CupRemedy& tried : glue_.cupRemedies) {
            (tried.mends ? mends : doesNot).push_back(triedText(tried));
        }
        std::string text;
        if (!mends.empty()) text += " What mends it: " + listed(mends) + ".";
        if (!doesNot.empty()) text += " Not enough: " + listed(doesNot) + ".";
        if (mends.empty()) text += " Mix faster, or take a cooler hour.";
        return text;
    }

    // The first batch of which more than the planned share of its life is used; those alike are not told.
    void addLateCup() {
        const auto late = std::ranges::find_if(glue_.batches, [](const glue::Batch& batch) { return !batch.inTime; });
        if (late == glue_.batches.end()) return;
        const bool goesOff = late->takes_s > late->potLife_s.likely;
        Finding finding =
            aboutGlue(goesOff ? Severity::stop : Severity::caution, Code::cupGoesOff, "min", modelSource());
        finding.value = late->takes_s / 60;
        finding.limit = late->useWithin_s / 60;
        add(finding, "Cup " + std::to_string(late->number) + " takes " + writeDuration(late->takes_s) +
                         " to mix and use up, more than " + writeShare(glue::shareOfPotLife) + " of the " +
                         lifeWords(late->potLife_s) + " it lasts." + remediesText() + skinCaution());
    }

    // One for all cups of the piece: a caution where even the waste may smoke. That a full cup of it can holds for any
    // epoxy and is a note.
    void addSmoke() {
        const glue::Between* full = nullptr;
        const glue::Between* left = nullptr;
        for (const glue::Batch& batch : glue_.batches) {
            if (!full || batch.fullPeak_C.to > full->to) full = &batch.fullPeak_C;
            if (batch.leftPeak_C && (!left || batch.leftPeak_C->to > left->to)) left = &*batch.leftPeak_C;
        }
        if (!full || full->to <= glue::smokes_C) return;
        const bool leftToo = left && left->to > glue::smokes_C;
        Finding finding =
            aboutGlue(leftToo ? Severity::caution : Severity::note, Code::fullCupSmokes, "C", modelSource());
        finding.value = 10 * std::round(full->to / 10);
        finding.limit = glue::smokes_C;
        const std::string reaches = full->to > veryHot_C
                                        ? "can pass " + peakWords({veryHot_C, veryHot_C, veryHot_C}, display_).substr(6)
                                        : "can get hot";
        add(finding, "A full cup left standing " + reaches + " and smoke (" + peakWords(*full, display_) +
                         (leftToo ? "; what is left in it, " + peakWords(*left, display_) : "") +
                         "). Use it up at once and spread leftovers thin; carry a hot cup outdoors. Local fire rules "
                         "come first.");
    }

    void addStarved() {
        const glue::Amounts& amounts = glue_.amounts;
        const double filled = amounts.line_kg / amounts.wanted_kg;
        if (filled >= lineFilledAtLeast) return;
        Finding finding = aboutGlue(
            Severity::caution, Code::starvedJoint, "g/m2",
            {"balance of what is spread (derived); what soaks in: common practice, no source", Mark::commonPractice});
        const double spared_kg_m2 = amounts.applied_kg / amounts.joint_m2;
        const double needed_kg_m2 = (amounts.applied_kg - amounts.line_kg + amounts.wanted_kg) / amounts.joint_m2;
        finding.value = 1000 * spared_kg_m2;
        finding.limit = 1000 * needed_kg_m2;
        const auto coat = [](double kg_m2) { return measure::typedCoat(std::round(1000 * kg_m2) / 1000); };
        add(finding, "The joints get " + coat(spared_kg_m2) + "; lines of " +
                         smallText(piece_.stack.glueLine_m, display_) + " take " + coat(needed_kg_m2) +
                         ", what soaks in counted. Spread more, or set a thinner line.");
    }

    void addRatio() {
        const auto worst = std::max_element(glue_.batches.begin(), glue_.batches.end(),
                                            [](const auto& a, const auto& b) { return a.ratioError < b.ratioError; });
        if (worst == glue_.batches.end() || worst->ratioError <= ratioBears) return;
        Finding finding = aboutGlue(Severity::caution, Code::ratioRounded, "pct",
                                    {"common practice, no source", Mark::commonPractice});
        finding.value = 100 * worst->ratioError;
        finding.limit = 100 * ratioBears;
        add(finding, "As scale or cup reads, cup " + std::to_string(worst->number) + " is off its ratio by " +
                         writeShare(worst->ratioError) + ", where " + writeShare(ratioBears) +
                         " is borne. Use a finer scale or mix more at a time.");
    }

    void addMoisture() {
        const double moisture = piece_.stack.moisture;
        if (adhesive().kind != boat::AdhesiveKind::epoxy || moisture <= wettestForEpoxy) return;
        Finding finding =
            aboutGlue(Severity::caution, Code::woodWetForGlue, "pct",
                      {"usual limit for bonding with epoxy; some say 18 % with less certainty", Mark::fromMemory});
        finding.value = 100 * moisture;
        finding.limit = 100 * wettestForEpoxy;
        add(finding, "The strips are glued at " + writeShare(moisture) + " moisture; epoxy wants " +
                         writeShare(wettestForEpoxy) + " or less. In this air wood comes to " +
                         writeShare(glue_.airMoisture) + ", give or take one.");
    }

    void addDew() {
        const double margin_K = piece_.glue.air_C - glue_.dewPoint_C;
        const Source source{"guidance for coatings tied to ISO 8502-4", Mark::transcribed};
        if (margin_K < glue::aboveDewPoint_K) {
            Finding finding = aboutGlue(Severity::caution, Code::nearDewPoint, "C", source);
            finding.value = margin_K;
            finding.limit = glue::aboveDewPoint_K;
            add(finding, "The air is within " + measure::writeNumber(margin_K, 2) + " K of its dew point, " +
                             temperature(glue_.dewPoint_C) +
                             "; faces stay dry for certain from 3 K on. Warm the shed.");
        } else if (nightIsGiven() && piece_.glue.airOverNight_C < glue_.dewPoint_C + glue::aboveDewPoint_K) {
            Finding finding = aboutGlue(Severity::note, Code::coldWoodSweats, "C", source);
            finding.value = piece_.glue.airOverNight_C - glue_.dewPoint_C;
            finding.limit = glue::aboveDewPoint_K;
            add(finding, "Wood that is still as cold as the night, " + temperature(piece_.glue.airOverNight_C) +
                             ", sweats or nearly so in this air, whose dew point is " + temperature(glue_.dewPoint_C) +
                             ". Bring the strips into the warm the day before, and wipe them.");
        }
    }

    void addCold() {
        if (piece_.glue.air_C < adhesive().least_C) {
            Finding finding = aboutGlue(Severity::stop, Code::tooColdForGlue, "C", adhesive().leastSource);
            finding.value = piece_.glue.air_C;
            finding.limit = adhesive().least_C;
            add(finding, adhesive().name + " is not to be used below " + temperature(adhesive().least_C) +
                             "; the air is at " + temperature(piece_.glue.air_C) +
                             ". Take a faster one, or warm wood, glue and shed.");
        } else if (nightIsGiven() && glue_.cure.leastAir_C < adhesive().least_C) {
            Finding finding = aboutGlue(Severity::caution, Code::nightTooCold, "C", adhesive().leastSource);
            finding.value = glue_.cure.leastAir_C;
            finding.limit = adhesive().least_C;
            add(finding, "Over night the air falls to " + temperature(glue_.cure.leastAir_C) + ", below the " +
                             temperature(adhesive().least_C) + " that " + adhesive().name +
                             " needs: the cure is counted as standing still meanwhile. A heated tent over the piece "
                             "keeps it going; mind fire and fumes, and what local rules say of heaters.");
        }
    }

    void addHot() {
        if (piece_.glue.air_C <= hotDay_C) return;
        Finding finding =
            aboutGlue(Severity::caution, Code::hotDay, "C", {"common practice, no source", Mark::commonPractice});
        finding.value = piece_.glue.air_C;
        finding.limit = hotDay_C;
        add(finding, "At " + temperature(piece_.glue.air_C) + " cups and faces go off fast: open time is " +
                         writeDuration(glue_.openTime_s) +
                         ". Start in the cool of the morning, keep resin and cups in "
                         "the shade.");
    }

    void addThinner() {
        if (!(piece_.glue.thinner > 0)) return;
        Finding finding =
            aboutGlue(Severity::caution, Code::thinned, "pct", {"common guidance of resin makers", Mark::fromMemory});
        finding.value = 100 * piece_.glue.thinner;
        finding.limited = false;
        add(finding,
            "The wet-out is thinned with " + writeShare(piece_.glue.thinner) +
                " solvent: it cures softer and shrinks, and solvent that is closed in stays in. Warm resin wets "
                "as well without. Solvents burn: no flame, no spark, rags into a closed metal bin; local rules "
                "come first.");
    }

    void addCure() {
        if (std::isfinite(glue_.cure.clampsOff_s)) return;
        Finding finding = aboutGlue(Severity::stop, Code::neverCures, "h", adhesive().cureSource);
        finding.value = adhesive().handling_s / 3600;
        finding.limited = false;
        add(finding, "In this air, by day and night, " + adhesive().name +
                         " does not come so far in three weeks that clamps may come off. Heat a tent over it or take a "
                         "faster glue.");
    }

    const boat::Piece& piece_;
    const measure::Display& display_;
    const glue::GluePlan& glue_;
    std::vector<Finding> found_;
};

}  // namespace

std::vector<Finding> glueFindings(const boat::Piece& piece, const Shop& shop, const Plan& plan) {
    return Looking(piece, shop, plan).all();
}

}  // namespace fayline::plan
