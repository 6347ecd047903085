#include "core/plan/day_words.hpp"

#include <algorithm>
#include <cmath>

#include "core/glue/ratio.hpp"
#include "core/measure/day_text.hpp"
#include "core/measure/figures.hpp"
#include "core/measure/units.hpp"
#include "core/plan/remedies.hpp"
#include "core/plan/wording.hpp"

namespace fayline::plan {

using measure::writeDuration;
using measure::writeShare;

std::string glueCaution(const glue::GluePlan& glue) {
    const std::string first = " The maker's data and safety sheets and local rules come first.";
    switch (glue.adhesive.kind) {
        case boat::AdhesiveKind::epoxy:
            return "Resin and hardener make skin and lungs allergic, for good: gloves, long sleeves, fresh air. A full "
                   "cup "
                   "heats itself and can smoke: use it at once or pour it into a tray, and carry a hot one outdoors." +
                   first;
        case boat::AdhesiveKind::resorcinol:
            return "Resorcinol and formaldehyde harm skin, eyes and lungs: gloves, eye protection, fresh air." + first;
        case boat::AdhesiveKind::urea:
            return "Urea resins give off formaldehyde, and the powder is no dust to breathe: gloves, mask, fresh air." +
                   first;
        case boat::AdhesiveKind::polyurethane:
            return "Isocyanates make lungs and skin allergic, for good: gloves and fresh air, more so in the warm." +
                   first;
    }
    return first;
}

namespace {

std::string fitWords(const glue::Kinetics& kinetics, std::size_t points) {
    std::string text = "Worked out from " + numberWord(static_cast<int>(points)) +
                       (points == 1 ? " pot life" : " pot lives") + " of the data sheet";
    if (points > 1) text += ", met within " + writeShare(kinetics.worstMisfit);
    if (kinetics.energyFitted && kinetics.lossFitted) return text + "; how warmth and size hasten it is fitted";
    if (kinetics.energyFitted) return text + "; how warmth hastens it is fitted, how size does is what is usual";
    if (kinetics.lossFitted) return text + "; how size hastens it is fitted, how warmth does is what is usual";
    return text + "; how warmth and size hasten it is what is usual for such a glue";
}

}  // namespace

std::string lifeWords(const glue::Between& lasts_s) {
    if (writeDuration(lasts_s.from) == writeDuration(lasts_s.to)) return writeDuration(lasts_s.from);
    if (!std::isfinite(lasts_s.to)) return "over " + writeDuration(lasts_s.from);
    constexpr double hour_s = 3600;
    if (lasts_s.to >= 3 * hour_s) {
        const auto hours = [](double time_s) {
            return measure::fixedFigures(time_s / hour_s, time_s < 10 * hour_s ? 1 : 0);
        };
        return hours(lasts_s.from) + " to " + hours(lasts_s.to) + " h";
    }
    const auto minutes = [](double time_s) {
        const double step_min = time_s > hour_s ? 5 : 1;
        return measure::fixedFigures(step_min * std::round(time_s / 60 / step_min), 0);
    };
    return minutes(lasts_s.from) + " to " + minutes(lasts_s.to) + " min";
}

std::string peakWords(const glue::Between& peak_C, const measure::Display& display) {
    const bool fahrenheit = display.temperatures == measure::TemperatureUnit::fahrenheit;
    const auto tens = [fahrenheit](double value_C) {
        return 10 * std::round((fahrenheit ? measure::toFahrenheit(value_C) : value_C) / 10);
    };
    const std::string unit = fahrenheit ? " \u00b0F" : " \u00b0C";
    const std::string to = measure::writeNumber(tens(peak_C.to), 4) + unit;
    if (tens(peak_C.from) == tens(peak_C.to)) return "about " + to;
    return measure::writeNumber(tens(peak_C.from), 4) + " to " + to;
}

std::string potLifeWords(const glue::GluePlan& glue) {
    std::string text = fitWords(glue.kinetics, glue.adhesive.potLives.size()) + ".";
    if (glue.fitted.massKnown()) return text;
    return text +
           " A range, since no sheet says how much heat its own cup lost: from 0.6 to 6 times that of a cup in still "
           "air "
           "is assumed. Pot lives of two masses, as a glue of your own, take its place.";
}

std::string ownGlueWords(const boat::OwnAdhesive& own, const measure::Display& display) {
    constexpr double mix_kg = 0.1;
    constexpr double air_C = 18;
    const glue::Adhesive adhesive = glue::ownAdhesive(own);
    glue::checkRatios(adhesive, "");
    const glue::Fitted fitted = glue::fitWithEnds(adhesive, "");
    const double density = adhesive.mixDensity_kg_m3();
    const glue::Fill fill = glue::fillOf(boat::Vessel::cup, 2 * mix_kg / density, mix_kg, density);
    const glue::PotLifeRange life = glue::potLifeRange(fitted, fill, air_C);
    return fitWords(fitted.likely, adhesive.potLives.size()) + ". At " + measure::writeTemperature(air_C, display) +
           " " + measure::writeMass(mix_kg, display) + " in a cup twice as large would last " +
           lifeWords(life.lasts_s) + " and get to " + peakWords(life.peak_C, display) +
           " if left; a film stays open for " + writeDuration(glue::openTime(adhesive, fitted.likely, air_C)) + "." +
           (fitted.massKnown() ? ""
                               : " A second pot life, of another mass at the same temperature, takes the range away.");
}

namespace {

constexpr double nearlySure = 0.99;
constexpr double nearlyNever = 0.01;

std::string percent(double share) {
    return measure::writeShare(share, 2);
}

// What the simulated days differ in.
std::string uncertainWords(const DayStudy& study) {
    std::string text = "Each day has one pace for all work, which scatters by " + percent(study.paceScatter);
    if (study.paceFrom > 0) {
        text += ", narrowed or widened by " + numberWord(study.paceFrom) +
                (study.paceFrom == 1 ? " recorded gluing" : " recorded gluings");
        if (std::abs(study.paceMiddle - 1) >= 0.005) {
            text +=
                ", the middle day taking " + measure::writeNumber(study.paceMiddle, 3) + " times the planned minutes";
        }
    } else {
        text += " until a gluing is on record";
    }
    return text + "; glue, single tasks and mishaps scatter as given below (common practice, no source).";
}

}  // namespace

std::string inHundred(double chance) {
    if (chance > nearlySure) return "more than 99 in 100";
    if (chance < nearlyNever) return "fewer than 1 in 100";
    return "about " + std::to_string(std::lround(100 * chance)) + " in 100";
}

std::string inHundredBrief(double chance) {
    if (chance > nearlySure) return "> 99";
    if (chance < nearlyNever) return "< 1";
    return std::to_string(std::lround(100 * chance));
}

double oddsPct(double chance) {
    return std::clamp(100 * chance, 0.5, 99.5);
}

std::string marginWords(double margin_s) {
    return margin_s < 0 ? writeDuration(-margin_s) + " too late" : writeDuration(margin_s) + " in hand";
}

std::string oddsWords(double margin_s, const schedule::Days& days) {
    return marginWords(margin_s) + "; in time on " + inHundred(days.chanceInTime) + " days; for 95 in 100 it takes " +
           writeDuration(std::max(0.0, days.marginFor95_s)) + " in hand";
}

std::string chanceWords(const DayPlan& day, const DayStudy& study) {
    const schedule::Days& days = study.days;
    return capitalised(oddsWords(day.margin_s, days)) + ". Every cup is used up in time on " +
           inHundred(days.chanceCups) + ". One day in twenty ends with " + marginWords(days.margin05_s) +
           " or worse, the middle one with " + marginWords(days.margin50_s) + ", one in twenty with " +
           marginWords(days.margin95_s) + " or better. " + uncertainWords(study);
}

std::string remediesWords(const DayPlan& day, const DayStudy& study) {
    if (!study.remedies.empty()) return "Each tried by making the day anew, the most time first.";
    const GluingDay& worst = day.gluings[day.worstGluing];
    const bool isShort = day.margin_s < shortMargin * worst.job.openTime_s || day.cupMargin_s < 0 ||
                         study.days.chanceInTime < shortChance || study.days.chanceCups < shortChance;
    return isShort ? "None of what was tried gives more time: fewer stations, quicker hands or a smaller piece would."
                   : "None is needed: the margin is ample.";
}

std::string faceWords(int inner) {
    if (inner == 0) return "on the boat";
    return "between strips " + std::to_string(inner) + " and " + std::to_string(inner + 1);
}

std::string momentWords(const GluingDay& gluing, const schedule::Moment& moment, double startAt_s) {
    const schedule::Run& run = gluing.run;
    std::vector<std::string> doing;
    for (const int task : moment.doing) doing.push_back(run.tasks[task].name);
    std::string text = measure::writeClock(startAt_s + moment.at_s) + ", " + writeDuration(moment.at_s) + " in: ";
    text += doing.empty() ? (moment.at_s >= run.end_s ? "all is done" : "nothing is being done") : listed(doing);
    text += ".";
    const auto goneOff = std::count(moment.faces.begin(), moment.faces.end(), schedule::FaceState::goneOff);
    if (goneOff > 0) {
        text += " " + capitalised(numberWord(static_cast<int>(goneOff))) +
                (goneOff == 1 ? " face has" : " faces have") + " gone off before it was closed.";
    }
    if (const int face = schedule::mostPressing(run, moment); face >= 0) {
        const schedule::FaceTimes& times = run.faces[face];
        text += " The face " + faceWords(times.inner) + " stays open for " +
                writeDuration(times.openUntil_s - moment.at_s) + ".";
    }
    const auto stations = gluing.job.stations.size();
    if (moment.inPlace && stations > 0) {
        text += " " + std::to_string(moment.closed.size()) + " of " + std::to_string(stations) +
                (stations == 1 ? " station is on." : " stations are on.");
    }
    return text;
}

}  // namespace fayline::plan
