#include <QObject>
#include <algorithm>
#include <cmath>

#include "app/panels/glue_rows.hpp"
#include "app/panels/reading.hpp"
#include "core/plan/findings/day_words.hpp"
#include "core/units/day_text.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

constexpr double hour_s = 3600;

// The first of these that fits a span into at most so many parts.
double stepOf(double span, double parts, std::initializer_list<double> steps) {
    for (const double step : steps) {
        if (span / step <= parts) return step;
    }
    return span / parts;
}

std::vector<AlongPlot::Tick> durationTicks(double most_s) {
    constexpr double min = 60;
    const double step_s = stepOf(
        most_s, 4,
        {min, 2 * min, 5 * min, 10 * min, 15 * min, 30 * min, hour_s, 2 * hour_s, 4 * hour_s, 8 * hour_s, 24 * hour_s});
    std::vector<AlongPlot::Tick> ticks;
    for (double at_s = 0; at_s <= most_s; at_s += step_s) {
        ticks.push_back({at_s, at_s == 0 ? QStringLiteral("0") : text(units::writeDuration(at_s))});
    }
    return ticks;
}

std::vector<AlongPlot::Tick> massTicks(double most_kg, const units::Display& display) {
    const double unit_kg = display.weights == units::WeightUnit::ounce ? units::ounce_kg : 1e-3;
    const double step_kg = unit_kg * niceStep(most_kg / unit_kg, 6, {});
    std::vector<AlongPlot::Tick> ticks;
    for (double mass_kg = 0; mass_kg <= most_kg * (1 + 1e-9); mass_kg += step_kg) {
        ticks.push_back({mass_kg, mass_kg == 0 ? QStringLiteral("0") : text(units::writeMass(mass_kg, display))});
    }
    return ticks;
}

// Of one of the curves over the mass.
double timeAt(const glue::PotLifeByMass& lives, const std::vector<double>& time_s, double mass_kg) {
    const auto next = std::lower_bound(lives.mass_kg.begin(), lives.mass_kg.end(), mass_kg);
    if (next == lives.mass_kg.end()) return time_s.back();
    const auto i = static_cast<std::size_t>(next - lives.mass_kg.begin());
    if (i == 0) return time_s.front();
    const double share = (mass_kg - lives.mass_kg[i - 1]) / (lives.mass_kg[i] - lives.mass_kg[i - 1]);
    return time_s[i - 1] + share * (time_s[i] - time_s[i - 1]);
}

}  // namespace

std::optional<AlongPlot::Picture> potLifePicture(const plan::Plan& plan, const model::Glue& glue,
                                                 const std::vector<glue::PotLifeByMass>& lives,
                                                 const units::Display& display) {
    if (lives.empty() || plan.day.glue.batches.empty()) return std::nullopt;
    double largest_kg = 0;
    double shortest_s = INFINITY;
    double longest_s = 0;
    for (const glue::Batch& batch : plan.day.glue.batches) {
        if (std::isfinite(batch.potLife_s.to)) longest_s = std::max(longest_s, batch.potLife_s.to);
        largest_kg = std::max(largest_kg, batch.mixed_kg());
        shortest_s = std::min(shortest_s, batch.potLife_s.from);
    }
    AlongPlot::Picture picture;
    picture.display = display;
    picture.caption = glue.vessel == model::Vessel::tray
                          ? QObject::tr("How long a mix lasts in a tray, by its mass; fainter, the least and the most")
                          : QObject::tr("How long a mix lasts in a pot, by its mass; fainter, the least and the most");
    picture.from_m = 0;
    picture.to_m = lives.front().mass_kg.back();
    picture.least = 0;
    double most_s = 0;
    for (const glue::PotLifeByMass& one : lives) {
        if (one.vessel != glue.vessel) continue;
        for (const std::vector<double>* time_s : {&one.from_s, &one.to_s, &one.lasts_s}) {
            AlongPlot::Curve curve;
            curve.main = time_s == &one.lasts_s;
            for (std::size_t i = 0; i < one.mass_kg.size(); ++i) {
                if (!std::isfinite((*time_s)[i])) continue;
                curve.points.append({one.mass_kg[i], (*time_s)[i]});
                if (curve.main) most_s = std::max(most_s, (*time_s)[i]);
            }
            picture.curves.push_back(std::move(curve));
        }
    }
    if (!(most_s > 0)) return std::nullopt;
    // Small portions last for so long that what matters would lie on the floor.
    picture.most = std::max(std::min(1.05 * most_s, 3 * shortest_s), 1.1 * longest_s);
    for (const glue::PotLifePoint& point : plan.day.glue.adhesive.potLives) {
        picture.dots.push_back({{point.mass_kg, point.lasts_s},
                                QObject::tr("data sheet, %1").arg(text(units::writeTemperature(point.at_C, display)))});
        picture.most = std::max(picture.most, std::min(1.2 * point.lasts_s, 6 * shortest_s));
    }
    picture.ticks = durationTicks(picture.most);
    picture.alongTicks = massTicks(picture.to_m, display);
    picture.marks = {{largest_kg, QObject::tr("pot"), true}, {largest_kg / 2, QObject::tr("half"), true}};
    picture.reading = [lives, display](double mass_kg) {
        QString words = text(units::writeMass(mass_kg, display));
        for (const glue::PotLifeByMass& one : lives) {
            words += QStringLiteral(", ") +
                     (one.vessel == model::Vessel::cup ? QObject::tr("pot") : QObject::tr("tray")) + QLatin1Char(' ') +
                     text(plan::lifeWords({timeAt(one, one.lasts_s, mass_kg), timeAt(one, one.from_s, mass_kg),
                                           timeAt(one, one.to_s, mass_kg)}));
        }
        return words;
    };
    return picture;
}

std::optional<AlongPlot::Picture> curePicture(const Shown& shown) {
    const glue::CurePlan& cure = shown.plan->day.glue.cure;
    if (cure.at_s.size() < 2) return std::nullopt;
    const units::Display& display = shown.display;
    const auto at = [&](double air_C) {
        return display.temperatures == units::TemperatureUnit::fahrenheit ? units::toFahrenheit(air_C) : air_C;
    };
    AlongPlot::Picture picture;
    picture.display = display;
    picture.caption = QObject::tr("Air at the glue from clamping on");
    picture.from_m = 0;
    picture.to_m = cure.at_s.back();
    const double least_C = shown.plan->day.glue.adhesive.least_C;
    double least = at(least_C);
    double most = least;
    AlongPlot::Curve curve;
    for (std::size_t i = 0; i < cure.at_s.size(); ++i) {
        curve.points.append({cure.at_s[i], at(cure.air_C[i])});
        least = std::min(least, at(cure.air_C[i]));
        most = std::max(most, at(cure.air_C[i]));
    }
    picture.curves.push_back(std::move(curve));
    const double room = 0.15 * std::max(most - least, 4.0);
    picture.least = least - room;
    picture.most = most + 2 * room;
    const double step = stepOf(picture.most - picture.least, 4, {1, 2, 5, 10, 20, 50});
    for (double value = step * std::ceil(picture.least / step); value <= picture.most; value += step) {
        picture.ticks.push_back({value, text(units::writeNumber(value))});
    }
    picture.limit = AlongPlot::Tick{at(least_C), QObject::tr("least for this glue")};
    // Every twelve hours of the wall's clock.
    constexpr double every_s = 12 * hour_s;
    for (double clock_s = every_s * std::ceil(cure.closedAt_s / every_s); clock_s <= cure.closedAt_s + picture.to_m;
         clock_s += every_s) {
        const int hour = static_cast<int>(std::fmod(clock_s / hour_s, 24));
        picture.alongTicks.push_back(
            {clock_s - cure.closedAt_s, hour == 0 ? QObject::tr("midnight") : QObject::tr("noon")});
    }
    const auto mark = [&](double at_s, const QString& name) {
        if (std::isfinite(at_s) && at_s <= picture.to_m) picture.marks.push_back({at_s, name, true});
    };
    mark(cure.clampsOff_s, QObject::tr("clamps off"));
    mark(cure.work_s, QObject::tr("planing"));
    picture.reading = [cure, display](double at_s) {
        const auto next = std::lower_bound(cure.at_s.begin(), cure.at_s.end(), at_s);
        const auto i = std::min(static_cast<std::size_t>(next - cure.at_s.begin()), cure.at_s.size() - 1);
        return QStringLiteral("%1: %2").arg(text(units::writeClock(cure.closedAt_s + at_s)),
                                            text(units::writeTemperature(cure.air_C[i], display)));
    };
    return picture;
}

}  // namespace fayline::app
