#include "core/plan/findings/day_words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "core/glue/ratio.hpp"
#include "core/plan/findings/day_texts.hpp"
#include "core/plan/study/remedies.hpp"
#include "core/units/day_text.hpp"

namespace fayline::plan {

std::vector<Message> glueCaution(const glue::GluePlan& glue) {
    // In the order of AdhesiveKind.
    constexpr std::array cautions{texts::epoxyCaution, texts::resorcinolCaution, texts::ureaCaution,
                                  texts::polyurethaneCaution};
    return {cautions[static_cast<std::size_t>(glue.adhesive.kind)], texts::makersSheetsFirst};
}

namespace {

std::vector<Message> fitTexts(const glue::Kinetics& kinetics, std::size_t points) {
    return {{texts::fittedFrom, {put::share(kinetics.worstMisfit)}, static_cast<int>(points)},
            kinetics.energyFitted && kinetics.lossFitted ? texts::warmthSizeFitted
            : kinetics.energyFitted                      ? texts::warmthFitted
            : kinetics.lossFitted                        ? texts::sizeFitted
                                                         : texts::noneFitted};
}

Arg peakOf(const glue::Between& peak_C) {
    return put::peak(peak_C.from, peak_C.to);
}

}  // namespace

Message lifeText(const glue::Between& lasts_s) {
    if (units::writeDuration(lasts_s.from) == units::writeDuration(lasts_s.to)) {
        return {texts::alone, {put::duration(lasts_s.from)}};
    }
    if (!std::isfinite(lasts_s.to)) return {texts::overTime, {put::duration(lasts_s.from)}};
    constexpr double hour_s = 3600;
    if (lasts_s.to >= 3 * hour_s) {
        const auto hours = [](double time_s) { return put::number(time_s / hour_s, time_s < hour_s ? 1 : 2); };
        return {texts::hoursRange, {hours(lasts_s.from), hours(lasts_s.to)}};
    }
    const auto minutes = [](double time_s) {
        const double step_min = time_s > hour_s ? 5 : 1;
        return put::count(step_min * std::round(time_s / 60 / step_min));
    };
    return {texts::minutesRange, {minutes(lasts_s.from), minutes(lasts_s.to)}};
}

std::string lifeWords(const glue::Between& lasts_s) {
    return writeWithin(lifeText(lasts_s), {});
}

std::string peakWords(const glue::Between& peak_C, const units::Display& display) {
    return writeWithin({texts::alone, {peakOf(peak_C)}}, display);
}

std::vector<Message> potLifeTexts(const glue::GluePlan& glue) {
    std::vector<Message> all = fitTexts(glue.kinetics, glue.adhesive.potLives.size());
    if (!glue.fitted.massKnown()) all.emplace_back(texts::potLifeRange);
    return all;
}

std::vector<Message> ownGlueTexts(const model::OwnAdhesive& own) {
    constexpr double mix_kg = 0.1;
    constexpr double air_C = 18;
    const glue::Adhesive adhesive = glue::ownAdhesive(own);
    glue::checkRatios(adhesive, "");
    const glue::Fitted fitted = glue::fitWithEnds(adhesive, "");
    const double density = adhesive.mixDensity_kg_m3();
    const glue::Fill fill = glue::fillOf(model::Vessel::cup, 2 * mix_kg / density, mix_kg, density);
    const glue::PotLifeRange life = glue::potLifeRange(fitted, fill, air_C);
    std::vector<Message> all = fitTexts(fitted.likely, adhesive.potLives.size());
    all.push_back({texts::ownGlueLasts,
                   {put::temperature(air_C), put::mass(mix_kg), lifeText(life.lasts_s), peakOf(life.peak_C),
                    put::duration(glue::openTime(adhesive, fitted.likely, air_C))}});
    if (!fitted.massKnown()) all.emplace_back(texts::secondPotLife);
    return all;
}

namespace {

constexpr double nearlySure = 0.99;
constexpr double nearlyNever = 0.01;

// What the simulated days differ in.
void addUncertain(std::vector<Message>& all, const DayStudy& study) {
    const Arg scatter = put::share(study.paceScatter);
    if (study.paceFrom > 0) {
        all.push_back({texts::paceRecorded, {scatter}, study.paceFrom});
        if (std::abs(study.paceMiddle - 1) >= 0.005)
            all.push_back({texts::paceMiddle, {put::number(study.paceMiddle)}});
    } else {
        all.push_back({texts::paceGiven, {scatter}});
    }
    all.emplace_back(texts::othersVary);
}

Message oddsMessage(const Phrase& phrase, double margin_s, const schedule::Days& days) {
    return {phrase,
            {marginText(margin_s), inHundredText(days.chanceInTime), put::duration(std::max(0.0, days.marginFor95_s))}};
}

}  // namespace

Message inHundredText(double chance) {
    if (chance > nearlySure) return texts::moreThan99;
    if (chance < nearlyNever) return texts::fewerThan1;
    return {texts::inHundred, {put::count(std::round(100 * chance))}};
}

std::string inHundred(double chance) {
    return writeWithin(inHundredText(chance), {});
}

std::string inHundredBrief(double chance) {
    if (chance > nearlySure) return "> 99";
    if (chance < nearlyNever) return "< 1";
    return std::to_string(std::lround(100 * chance));
}

double oddsPct(double chance) {
    return std::clamp(100 * chance, 0.5, 99.5);
}

Message marginText(double margin_s) {
    return {margin_s < 0 ? texts::tooLate : texts::spare, {put::duration(std::abs(margin_s))}};
}

std::string oddsWords(double margin_s, const schedule::Days& days) {
    return writeWithin(oddsMessage(texts::odds, margin_s, days), {});
}

std::vector<Message> chanceTexts(const DayPlan& day, const DayStudy& study) {
    const schedule::Days& days = study.days;
    std::vector<Message> all{
        oddsMessage(texts::oddsSentence, day.margin_s, days),
        {texts::batchesInTime, {inHundredText(days.chanceCups)}},
        {texts::daysSpread, {marginText(days.margin05_s), marginText(days.margin50_s), marginText(days.margin95_s)}}};
    addUncertain(all, study);
    return all;
}

Message remediesText(const DayPlan& day, const DayStudy& study) {
    if (!study.remedies.empty()) return texts::remediesTried;
    const GluingDay& worst = day.gluings[day.worstGluing];
    const bool isShort = day.margin_s < shortMargin * worst.job.openTime_s || day.cupMargin_s < 0 ||
                         study.days.chanceInTime < shortChance || study.days.chanceCups < shortChance;
    return isShort ? texts::remediesNone : texts::remediesNotNeeded;
}

Message jointName(int inner) {
    if (inner == 0) return texts::jointOnBoat;
    return {texts::joint, {put::count(inner), put::count(inner + 1)}};
}

std::vector<Message> momentTexts(const GluingDay& gluing, const schedule::Moment& moment, double startAt_s) {
    const schedule::Run& run = gluing.run;
    std::vector<Message> doing;
    for (const int task : moment.doing) doing.emplace_back(run.tasks[task].name);
    const Phrase& phrase = !doing.empty()             ? texts::moment
                           : moment.at_s >= run.end_s ? texts::momentDone
                                                      : texts::momentIdle;
    std::vector<Message> all{
        {phrase, {put::clock(startAt_s + moment.at_s), put::duration(moment.at_s), put::list(std::move(doing))}}};
    const auto ended = std::ranges::count(moment.faces, schedule::FaceState::goneOff);
    if (ended > 0) all.push_back({texts::openTimesEnded, {}, static_cast<int>(ended)});
    if (const int face = schedule::mostPressing(run, moment); face >= 0) {
        const schedule::FaceTimes& times = run.faces[face];
        all.push_back(
            {texts::jointStaysOpen, {jointName(times.inner), put::duration(times.openUntil_s - moment.at_s)}});
    }
    const auto stations = static_cast<int>(gluing.job.stations.size());
    if (moment.inPlace && stations > 0) {
        all.push_back({texts::stationsOn, {put::count(static_cast<double>(moment.closed.size()))}, stations});
    }
    return all;
}

std::vector<Message> warningTexts(const schedule::Warning& warning) {
    const Arg cup = put::count(warning.cup);
    const Arg joint = jointName(warning.inner);
    const Arg by = put::duration(warning.by_s);
    switch (warning.kind) {
        case schedule::WarningKind::cupOver:
            return {{texts::batchOver, {cup, by}}};
        case schedule::WarningKind::cupShort:
            return {{texts::batchShort, {cup, by}}};
        case schedule::WarningKind::cupForeseen:
            return {{texts::batchForeseen, {cup, by}}};
        case schedule::WarningKind::faceOff:
            return {{texts::jointOver, {joint, by}}};
        case schedule::WarningKind::faceLate: {
            const Message late{texts::jointLate, {joint, by}};
            if (!warning.breakOff) return {late, texts::fetchHands};
            return {late,
                    {texts::stopAfter,
                     {put::count(warning.breakOff->afterStrip), put::duration(warning.breakOff->margin_s)}}};
        }
        case schedule::WarningKind::pace:
            return {{texts::paceLate, {by, put::duration(warning.marginAsPlanned_s)}}};
        case schedule::WarningKind::faceShort:
            return {{texts::jointShort, {joint, by}}};
    }
    return {};
}

}  // namespace fayline::plan
