#include <algorithm>
#include <cmath>

#include "core/glue/conditions.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/plan/findings/findings.hpp"
#include "core/plan/findings/glue_texts.hpp"

namespace fayline::plan {

namespace {

using units::Mark;
using units::Source;

constexpr double wettestForEpoxy = 0.12;
constexpr double hotDay_C = 30;
constexpr double ratioBears = 0.03;
constexpr double lineFilledAtLeast = 0.9;  // common practice, no source

Message useOf(const glue::CupRemedy& remedy) {
    switch (remedy.kind) {
        case glue::CupRemedyKind::smallerCups:
            return {texts::useSmallerBatches, {put::mass(remedy.mixed_kg)}};
        case glue::CupRemedyKind::tray:
            return texts::useTray;
        case glue::CupRemedyKind::slowerGlue:
            return {texts::useGlue, {remedy.adhesive}};
    }
    return {};
}

// What was tried for a batch that is late, and what it gives.
Message triedOf(const glue::CupRemedy& remedy) {
    const Arg lasts = lifeText(remedy.potLife_s);
    const Arg takes = put::duration(remedy.takes_s);
    switch (remedy.kind) {
        case glue::CupRemedyKind::smallerCups:
            return {texts::triedSmaller, {put::mass(remedy.mixed_kg), lasts, takes}};
        case glue::CupRemedyKind::tray:
            return {texts::triedTray, {lasts, takes}};
        case glue::CupRemedyKind::slowerGlue:
            return {texts::triedGlue, {remedy.adhesive, lasts, takes}};
    }
    return {};
}

class Looking {
public:
    Looking(const model::Piece& piece, const Plan& plan) : piece_(piece), glue_(plan.day.glue) {}

    std::vector<Finding> all() {
        if (glue_.lines.empty()) return {};
        addLateCup();
        addSmoke();
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
    // What nobody has said of the coming night is no risk yet: the panel says that it is assumed.
    bool nightIsGiven() const { return piece_.glue.airOverNight_C != model::Glue{}.airOverNight_C; }

    // Reports `value` against `limit`, both in the code's unit.
    Finding& add(Code code, const Source& source, double value, double limit) {
        Finding& finding = found_.emplace_back(found(code, source));
        finding.value = value;
        finding.limit = limit;
        return finding;
    }

    static Source modelSource() {
        return {"pot that heats itself, from the data sheet's pot life (an estimate)", Mark::derived};
    }

    // The first batch of which more than the planned share of its life is used; those alike are not reported.
    void addLateCup() {
        const auto late = std::ranges::find_if(glue_.batches, [](const glue::Batch& batch) { return !batch.inTime; });
        if (late == glue_.batches.end()) return;
        Finding& finding = add(Code::cupGoesOff, modelSource(), late->takes_s / 60, late->useWithin_s / 60);
        const bool goesOff = late->takes_s > late->potLife_s.likely;
        const Arg lasts = lifeText(late->potLife_s);
        if (goesOff) {
            finding.details.push_back({texts::batchGoesOff, {lasts}});
        } else {
            finding.severity = Severity::caution;
            finding.details.push_back({texts::batchLasts, {lasts, put::share(glue::shareOfPotLife)}});
        }
        Message use = texts::mixFaster;
        std::vector<Message> mends;
        std::vector<Message> doesNot;
        for (const glue::CupRemedy& remedy : glue_.cupRemedies) {
            if (remedy.mends && mends.empty()) use = useOf(remedy);
            (remedy.mends ? mends : doesNot).push_back(triedOf(remedy));
        }
        finding.text = {
            texts::batchLate,
            {put::count(late->number), put::duration(late->takes_s), put::duration(late->useWithin_s), std::move(use)}};
        if (!mends.empty()) finding.details.push_back({texts::batchMended, {put::list(std::move(mends))}});
        if (!doesNot.empty()) finding.details.push_back({texts::batchNotMended, {put::list(std::move(doesNot))}});
        finding.details.insert(finding.details.end(), {texts::skinCaution, texts::makersSheet});
    }

    // One for all batches of the piece. That one left standing full smokes holds for any epoxy.
    void addSmoke() {
        const glue::Between* full = nullptr;
        const glue::Between* left = nullptr;
        for (const glue::Batch& batch : glue_.batches) {
            if (!full || batch.fullPeak_C.to > full->to) full = &batch.fullPeak_C;
            if (batch.leftPeak_C && (!left || batch.leftPeak_C->to > left->to)) left = &*batch.leftPeak_C;
        }
        if (!full || full->to <= glue::smokes_C) return;
        Finding& finding = add(Code::fullCupSmokes, modelSource(), 10 * std::round(full->to / 10), glue::smokes_C);
        const Arg fullPeak = put::peak(full->from, full->to);
        const Arg limit = put::temperature(glue::smokes_C);
        if (left && left->to > glue::smokes_C) {
            finding.text = {texts::leftoverSmokes, {put::peak(left->from, left->to), limit, fullPeak}};
            finding.details.emplace_back(texts::useBatchAtOnce);
        } else {
            finding.text = {texts::batchSmokes, {fullPeak, limit}};
        }
        finding.details.emplace_back(texts::fireRules);
    }

    void addStarved() {
        const glue::Amounts& amounts = glue_.amounts;
        if (amounts.line_kg / amounts.wanted_kg >= lineFilledAtLeast) return;
        const double spared_kg_m2 = amounts.applied_kg / amounts.joint_m2;
        const double needed_kg_m2 = (amounts.applied_kg - amounts.line_kg + amounts.wanted_kg) / amounts.joint_m2;
        Finding& finding = add(
            Code::starvedJoint,
            {"balance of what is spread (derived); what soaks in: common practice, no source", Mark::commonPractice},
            1000 * spared_kg_m2, 1000 * needed_kg_m2);
        finding.text = {texts::starvedJoint,
                        {put::coat(spared_kg_m2), put::small(piece_.stack.glueLine_m), put::coat(needed_kg_m2)}};
        finding.details.emplace_back(texts::soaksInCounted);
    }

    void addRatio() {
        const auto worst = std::ranges::max_element(
            glue_.batches, [](const auto& a, const auto& b) { return a.ratioError < b.ratioError; });
        if (worst == glue_.batches.end() || worst->ratioError <= ratioBears) return;
        add(Code::ratioRounded, {"common practice, no source", Mark::commonPractice}, 100 * worst->ratioError,
            100 * ratioBears)
            .text = {texts::ratioRounded,
                     {put::count(worst->number), put::share(worst->ratioError), put::share(ratioBears)}};
    }

    void addMoisture() {
        const double moisture = piece_.stack.moisture;
        if (adhesive().kind != model::AdhesiveKind::epoxy || moisture <= wettestForEpoxy) return;
        Finding& finding =
            add(Code::woodWetForGlue,
                {"usual limit for bonding with epoxy; some say 18 % with less certainty", Mark::fromMemory},
                100 * moisture, 100 * wettestForEpoxy);
        finding.text = {texts::woodWet, {put::share(moisture, 3), put::share(wettestForEpoxy)}};
        finding.details.push_back({texts::airMoisture, {put::share(glue_.airMoisture)}});
    }

    void addDew() {
        const double air_C = piece_.glue.air_C;
        const double night_C = piece_.glue.airOverNight_C;
        const double dryFrom_C = glue_.dewPoint_C + glue::aboveDewPoint_K;
        const Source source{"guidance for coatings tied to ISO 8502-4", Mark::transcribed};
        const Arg dewPoint = put::temperature(std::round(glue_.dewPoint_C));
        if (air_C < dryFrom_C) {
            Finding& finding = add(Code::nearDewPoint, source, air_C - glue_.dewPoint_C, glue::aboveDewPoint_K);
            finding.text = {texts::nearDewPoint, {put::temperature(air_C), dewPoint, put::temperature(dryFrom_C)}};
            finding.details.emplace_back(texts::dewOnFaces);
        } else if (nightIsGiven() && night_C < dryFrom_C) {
            add(Code::coldWoodSweats, source, night_C - glue_.dewPoint_C, glue::aboveDewPoint_K).text = {
                texts::coldWoodSweats, {put::temperature(night_C), dewPoint}};
        }
    }

    void addCold() {
        const double air_C = piece_.glue.air_C;
        const double night_C = glue_.cure.leastAir_C;
        const double least_C = adhesive().least_C;
        const auto needs = [&](double at_C) {
            return std::vector<Arg>{put::temperature(at_C), adhesive().name, put::temperature(least_C)};
        };
        if (air_C < least_C) {
            add(Code::tooColdForGlue, adhesive().leastSource, air_C, least_C).text = {texts::tooCold, needs(air_C)};
        } else if (nightIsGiven() && night_C < least_C) {
            Finding& finding = add(Code::nightTooCold, adhesive().leastSource, night_C, least_C);
            finding.text = {texts::nightTooCold, needs(night_C)};
            finding.details = {texts::cureStands, texts::tentCaution};
        }
    }

    void addHot() {
        if (piece_.glue.air_C <= hotDay_C) return;
        Finding& finding =
            add(Code::hotDay, {"common practice, no source", Mark::commonPractice}, piece_.glue.air_C, hotDay_C);
        finding.text = {
            texts::hotDay,
            {put::temperature(piece_.glue.air_C), put::temperature(hotDay_C), put::duration(glue_.openTime_s)}};
        finding.details.emplace_back(texts::keepInShade);
    }

    void addThinner() {
        if (!(piece_.glue.thinner > 0)) return;
        Finding& finding =
            add(Code::thinned, {"common guidance of resin makers", Mark::fromMemory}, 100 * piece_.glue.thinner, 0);
        finding.limited = false;
        finding.text = {texts::thinned, {put::share(piece_.glue.thinner)}};
        finding.details = {texts::thinnedShrinks, texts::solventRags};
    }

    void addCure() {
        if (std::isfinite(glue_.cure.clampsOff_s)) return;
        Finding& finding = add(Code::neverCures, adhesive().cureSource, adhesive().handling_s / 3600, 0);
        finding.limited = false;
        finding.text = {texts::neverCures, {adhesive().name}};
    }

    const model::Piece& piece_;
    const glue::GluePlan& glue_;
    std::vector<Finding> found_;
};

}  // namespace

std::vector<Finding> glueFindings(const model::Piece& piece, const Plan& plan) {
    return Looking(piece, plan).all();
}

}  // namespace fayline::plan
