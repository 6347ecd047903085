#include "core/glue/cure.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fayline::glue {

namespace {

constexpr double cureHour_s = 3600;
constexpr double day_s = 24 * cureHour_s;
constexpr double step_s = 600;
constexpr double longest_s = 21 * day_s;
constexpr double rubberUntil = 0.75;

double ofDayAndNight(double day_C, double night_C, double clock_s) {
    const double hour = std::fmod(clock_s, day_s) / cureHour_s;
    if (hour < 6 || hour >= 22) return night_C;
    if (hour < 8) return night_C + (day_C - night_C) * (hour - 6) / 2;
    if (hour < 18) return day_C;
    return day_C + (night_C - day_C) * (hour - 18) / 4;
}

double speedAt(const Adhesive& adhesive, const Kinetics& kinetics, double air_C, double reference_C) {
    return air_C < adhesive.least_C ? 0 : speedAgainst(kinetics, air_C, reference_C);
}

// When the sum of speed over time reaches `needed_s`; trapezoids of ten minutes.
template <class Speed>
double whenSummedUp(double needed_s, const Speed& speed) {
    if (!(needed_s > 0)) return 0;
    double sum_s = 0;
    double before = speed(0);
    for (double at_s = 0; at_s < longest_s; at_s += step_s) {
        const double now = speed(at_s + step_s);
        const double part_s = step_s * (before + now) / 2;
        if (sum_s + part_s >= needed_s) return at_s + step_s * (needed_s - sum_s) / part_s;
        sum_s += part_s;
        before = now;
    }
    return std::numeric_limits<double>::infinity();
}

}  // namespace

double airAt(const model::Glue& glue, double closedAt_s, double after_s) {
    const model::Tent& tent = glue.tent;
    if (tent.lasts_s > 0 && after_s >= tent.from_s && after_s < tent.from_s + tent.lasts_s) return tent.air_C;
    return ofDayAndNight(glue.air_C, glue.airOverNight_C, closedAt_s + after_s);
}

double whenCured(const Adhesive& adhesive, const Kinetics& kinetics, const model::Glue& glue, double closedAt_s,
                 double needed_s) {
    return whenSummedUp(needed_s, [&](double after_s) {
        return speedAt(adhesive, kinetics, airAt(glue, closedAt_s, after_s), adhesive.cureAt_C);
    });
}

CurePlan planCure(const Adhesive& adhesive, const Kinetics& kinetics, const model::Glue& glue, double closedAt_s) {
    CurePlan plan{.closedAt_s = closedAt_s,
                  .clampsOff_s = whenCured(adhesive, kinetics, glue, closedAt_s, adhesive.handling_s)};
    plan.work_s =
        whenCured(adhesive, kinetics, glue, closedAt_s, std::min(2 * adhesive.handling_s, adhesive.fullCure_s));
    plan.full_s = whenCured(adhesive, kinetics, glue, closedAt_s, adhesive.fullCure_s);
    plan.softUntil_s =
        whenCured(adhesive, kinetics, glue, closedAt_s, filmReaches(kinetics, adhesive.cureAt_C, kinetics.gel));
    plan.scrapeUntil_s =
        whenCured(adhesive, kinetics, glue, closedAt_s, filmReaches(kinetics, adhesive.cureAt_C, rubberUntil));
    plan.leastAir_C = std::numeric_limits<double>::infinity();
    double sum_s = 0;
    for (double at_s = 0; at_s <= 3 * day_s; at_s += cureHour_s / 2) {
        const double air_C = airAt(glue, closedAt_s, at_s);
        if (at_s <= day_s) plan.leastAir_C = std::min(plan.leastAir_C, air_C);
        plan.at_s.push_back(at_s);
        plan.air_C.push_back(air_C);
        plan.share.push_back(std::min(1.0, sum_s / adhesive.handling_s));
        sum_s += cureHour_s / 2 * speedAt(adhesive, kinetics, air_C, adhesive.cureAt_C);
    }
    return plan;
}

}  // namespace fayline::glue
