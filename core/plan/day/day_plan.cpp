#include "core/plan/day/day_plan.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/closing.hpp"
#include "core/holding/places.hpp"
#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"
#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"
#include "core/plan/day/past_day.hpp"
#include "core/plan/plan.hpp"
#include "core/plan/shop.hpp"
#include "core/units/display.hpp"
#include "core/units/input_error.hpp"

namespace fayline::plan {

namespace {

// Laying the fixed end of the stack down and lining it up. Common practice, no source.
constexpr double place_s = 60;

constexpr double areaStep_m = 0.02;

// The line in the middle of steps of areaStep_m over a stretch of it, for the areas of the faces that lie along it.
class Steps {
public:
    Steps(const model::Stack& stack, double side, const line::Line& line, double from_m, double to_m)
        : stack_(stack), side_(side), line_(line), from_m_(from_m) {
        const auto count = static_cast<std::size_t>(std::max(0.0, std::ceil((to_m - from_m) / areaStep_m)));
        for (std::size_t i = 0; i < count; ++i) {
            const double at_m = startOf(i) + areaStep_m / 2;
            steps_.push_back({line.at(at_m), laminate::ripWidthAt(stack, at_m)});
        }
    }

    // Area of the face at `distance` from the line between two places of the stretch, as wide as the strips are bent.
    double faceArea(const laminate::Distance& distance, double from_m, double to_m) const {
        double area_m2 = 0;
        for (std::size_t i = 0; i < steps_.size(); ++i) {
            const double start_m = std::max(startOf(i), from_m);
            const double end_m = std::min(startOf(i + 1), to_m);
            if (!(end_m > start_m)) continue;
            if (end_m - start_m > (1 - 1e-9) * areaStep_m) {
                area_m2 += across(steps_[i], distance) * (end_m - start_m);
            } else {  // a step of which the face has a part
                const double at_m = (start_m + end_m) / 2;
                area_m2 += across({line_.at(at_m), laminate::ripWidthAt(stack_, at_m)}, distance) * (end_m - start_m);
            }
        }
        return area_m2;
    }

private:
    struct Step {
        line::Place place;
        double width_m = 0;
    };

    double startOf(std::size_t step) const { return from_m_ + static_cast<double>(step) * areaStep_m; }

    // Area of a face per length of the line.
    double across(const Step& step, const laminate::Distance& distance) const {
        return std::max(0.0, laminate::stretch(step.place, side_, distance.at(step.place.at_m))) * step.width_m;
    }

    const model::Stack& stack_;
    double side_;
    const line::Line& line_;
    double from_m_;
    std::vector<Step> steps_;
};

int gluingOf(const model::Stack& stack, int place) {
    int gluing = 0;
    for (const int after : stack.gluings) {
        if (place > after) ++gluing;
    }
    return gluing;
}

bool dryOutside(const model::Stack& stack, const laminate::StackPlan& plan, std::size_t i) {
    const auto& strips = plan.strips;
    return stack.strips[strips[i].group].dryFace && (i + 1 == strips.size() || strips[i + 1].group != strips[i].group);
}

std::vector<schedule::StationJob> stationsOf(const model::Piece& piece, const line::Line& line) {
    const model::Holding& holding = piece.holding;
    const auto places = holding::stationPlaces(holding, piece.stack, piece.line.describes, piece.line.stripsOn, line);
    std::vector<schedule::StationJob> jobs;
    for (const int index : holding::closingOrder(holding.stations, holding.from, line.length())) {
        const model::Station& station = holding.stations[index];
        const auto place = std::ranges::find(places, index, &holding::StationPlace::index);
        const model::HoldTraits& traits = model::traitsOf(station.kind);
        jobs.push_back({place == places.end() ? index + 1 : place->number, std::string(traits.word),
                        piece.crew.rates.station.*traits.putOn_s});
    }
    return jobs;
}

schedule::CupFor cupFor(glue::BatchFor use) {
    switch (use) {
        case glue::BatchFor::endGrain:
            return schedule::CupFor::endGrain;
        case glue::BatchFor::wetOut:
            return schedule::CupFor::wetOut;
        case glue::BatchFor::spread:
            return schedule::CupFor::spread;
    }
    return schedule::CupFor::spread;
}

schedule::Job jobOf(const model::Piece& piece, const glue::GluePlan& glue, int gluing, const line::Line& line,
                    const laminate::StackPlan& stack) {
    const model::Rates& rates = piece.crew.rates;
    schedule::Job job{.gluing = gluing, .hands = piece.crew.hands};
    const int strips = math::countOf(stack.strips);
    const double coats = piece.glue.bothFaces ? 2 : 1;
    double faces_m2 = 0;
    std::vector<double> onStrip(static_cast<std::size_t>(strips) + 1, 0.0);  // area of its faces that get glue
    std::vector<double> spread(onStrip.size(), 0.0);
    for (const glue::GlueLine& one : glue.lines) {
        if (one.gluing != gluing) continue;
        faces_m2 += 2 * one.area_m2;
        if (one.scarf) {
            job.endGrain_m2 += 2 * one.area_m2;
            continue;
        }
        const auto inner = static_cast<std::size_t>(one.inner);
        onStrip[inner] += one.area_m2;
        onStrip[inner + 1] += one.area_m2;
        spread[inner] += (coats - 1) * one.area_m2;
        spread[inner + 1] += one.area_m2;
        job.faces.push_back(one.inner);
    }
    for (int place = 0; place <= strips; ++place) {
        const auto at = static_cast<std::size_t>(place);
        const bool isLaid = place > 0 && gluingOf(piece.stack, place) == gluing;
        if (onStrip[at] > 0 || isLaid) job.strips.push_back({place, onStrip[at], spread[at], place > 0 && !isLaid});
    }
    for (const glue::Batch& batch : glue.batches) {
        if (batch.gluing != gluing) continue;
        job.cups.push_back({batch.number, cupFor(batch.use), batch.useWithin_s, batch.area_m2});
    }
    job.stations = stationsOf(piece, line);
    job.openTime_s = glue.openTime_s;
    job.mix_s = rates.mix_s;
    job.wetOut_m2_s = rates.wetOut_m2_s * glue.slowdown;
    job.spread_m2_s = rates.spread_m2_s * glue.slowdown;
    job.stackStrip_s = rates.stackStrip_s;
    job.carry_s = rates.carry_s;
    job.place_s = place_s;
    job.soak_s = rates.soak_s;
    // Along both edges.
    job.scrape_s = 2 * line.length() / rates.scrape_m_s;
    // What has cured meanwhile is washed and sanded on the face that the rest comes on.
    if (gluing > 0 && !job.strips.empty()) {
        const double cured_m2 = onStrip[job.strips.front().strip];
        job.wipe_s = cured_m2 / rates.wipe_m2_s;
        job.sand_s = cured_m2 / rates.sand_m2_s;
    }
    if (piece.glue.surfaceWork != model::SurfaceWork::nothing) job.wipe_s += faces_m2 / rates.wipe_m2_s;
    if (piece.glue.surfaceWork == model::SurfaceWork::sandedAndWiped) job.sand_s += faces_m2 / rates.sand_m2_s;
    return job;
}

constexpr double givenCounts = 2;  // days
constexpr double leastCovered = 0.5;
constexpr double mostTimes = 4;

// Real over planned working minutes of a recorded gluing; nothing where it says too little.
std::optional<double> ratioOf(const model::Piece& piece, const Shop& shop, const DayPlan& day,
                              const model::Record& record) {
    const std::optional<RecordedDay> recorded = recordedDay(piece, shop, day, record);
    if (!recorded) return std::nullopt;
    const DayInHand& inHand = recorded->inHand;
    const schedule::Now& now = recorded->now;
    double planned_s = 0;
    double real_s = 0;
    for (const schedule::Taken& taken : schedule::takenOf(inHand.job, now)) {
        planned_s += taken.planned_s;
        real_s += taken.real_s;
    }
    double all_s = 0;
    for (const schedule::Task& task : schedule::runOf(inHand.job).tasks) {
        if (task.hands > 0) all_s += task.takes_s;
    }
    if (!(planned_s > 0) || planned_s < leastCovered * all_s) return std::nullopt;
    const double ratio = real_s / planned_s;
    if (!(ratio >= 1 / mostTimes && ratio <= mostTimes)) return std::nullopt;
    return ratio;
}

}  // namespace

std::vector<glue::GlueLine> glueLinesOf(const model::Piece& piece, const line::Line& line,
                                        const laminate::StackPlan& stack) {
    const double side = laminate::sideSign(piece.line.stripsOn);
    const std::vector<laminate::Layer> layers = laminate::layers(piece.stack, piece.line.describes, line.length());
    std::vector<glue::GlueLine> lines;
    const auto& strips = stack.strips;
    if (strips.empty()) return lines;
    double from_m = strips.front().startsAt_m;
    double to_m = strips.front().endsAt_m;
    for (const auto& strip : strips) {
        from_m = std::min(from_m, strip.startsAt_m);
        to_m = std::max(to_m, strip.endsAt_m);
    }
    const Steps steps(piece.stack, side, line, from_m, to_m);
    if (piece.form.kind == model::FormKind::inPlace) {
        const double area_m2 = steps.faceArea(layers.front().inner, std::max(strips.front().startsAt_m, 0.0),
                                              std::min(strips.front().endsAt_m, line.length()));
        lines.push_back({0, 0, area_m2, false});
    }
    for (std::size_t i = 0; i + 1 < strips.size(); ++i) {
        if (dryOutside(piece.stack, stack, i)) continue;
        const double area_m2 = steps.faceArea(layers[i].outer, std::max(strips[i].startsAt_m, strips[i + 1].startsAt_m),
                                              std::min(strips[i].endsAt_m, strips[i + 1].endsAt_m));
        lines.push_back({static_cast<int>(i) + 1, gluingOf(piece.stack, static_cast<int>(i) + 2), area_m2, false});
    }
    const auto addScarf = [&](const std::optional<model::Scarf>& scarf, double at_m) {
        if (!scarf) return;
        const double depth_m = layers.back().outer.at(at_m) - layers.front().inner.at(at_m);
        const double area_m2 = depth_m * std::hypot(1, scarf->slope) * laminate::widthAt(piece.stack, at_m);
        lines.push_back({0, 0, area_m2, true});
    };
    // The scarf is glued with the piece only where the piece is glued to what it meets.
    if (piece.form.kind == model::FormKind::inPlace) {
        addScarf(piece.stack.scarfedStart, 0);
        addScarf(piece.stack.scarfedEnd, line.length());
    }
    for (glue::GlueLine& one : lines) one.thickness_m = piece.stack.glueLine_m;
    return lines;
}

DayPlan planDay(const model::Piece& piece, const Shop& shop, const line::Line& line, const laminate::StackPlan& stack,
                const glue::GluePlan* before) {
    checkCrew(piece.crew);
    const std::vector<glue::GlueLine> lines = glueLinesOf(piece, line, stack);
    DayPlan day;
    // When the last clamp is on is known only after the run, which needs the glue: the cure is made again with it.
    day.glue = glue::planGlue(piece.glue, piece.crew, shop.adhesives, lines, piece.crew.startAt_s, before);
    int gluings = 1;
    for (const glue::GlueLine& one : lines) gluings = std::max(gluings, one.gluing + 1);
    for (int gluing = 0; gluing < gluings; ++gluing) {
        GluingDay one;
        one.job = jobOf(piece, day.glue, gluing, line, stack);
        one.run = schedule::runOf(one.job);
        const double margin_s = one.run.margin_s();
        if (gluing == 0 || margin_s < day.margin_s) {
            day.margin_s = margin_s;
            day.worstGluing = gluing;
        }
        day.cupMargin_s = gluing == 0 ? one.run.cupMargin_s() : std::min(day.cupMargin_s, one.run.cupMargin_s());
        day.gluings.push_back(std::move(one));
    }
    day.closed_s = day.gluings.front().run.closed_s;
    day.glue.cure = glue::planCure(day.glue.adhesive, day.glue.kinetics, piece.glue,
                                   piece.crew.startAt_s + day.gluings.back().run.closed_s);
    return day;
}

Pace paceOf(const model::Piece& piece, const Shop& shop, const DayPlan& day) {
    std::vector<double> seen;
    for (const model::Record& record : piece.record) {
        if (record.dryFit || day.gluings.empty()) continue;
        if (const std::optional<double> ratio = ratioOf(piece, shop, day, record)) seen.push_back(std::log(*ratio));
    }
    Pace pace{1, piece.crew.pace, math::countOf(seen)};
    if (seen.empty()) return pace;
    const double count = givenCounts + static_cast<double>(seen.size());
    double sum = 0;
    for (const double x : seen) sum += x;
    const double mean = sum / count;
    double squares = givenCounts * (piece.crew.pace * piece.crew.pace + mean * mean);
    for (const double x : seen) squares += (x - mean) * (x - mean);
    pace.middle = std::exp(mean);
    pace.scatter = std::sqrt(squares / count);
    return pace;
}

schedule::Uncertain uncertainOf(const model::Crew& crew, const Pace& pace) {
    const auto chance = [](const model::Mishap& mishap) { return schedule::Chance{mishap.chance, mishap.lasts_s}; };
    return {crew.uncertain,
            pace.scatter,
            pace.middle,
            crew.glueUncertain,
            chance(crew.mishaps.stripBreaks),
            chance(crew.mishaps.clampSlips),
            chance(crew.mishaps.cupSpills)};
}

void checkCrew(const model::Crew& crew) {
    const auto share = [](double value, const char* path) {
        if (value >= 0 && value <= 1) return;
        throw units::InputError(path, units::writeNumber(100 * value, 4) + " is not a share",
                                "give a number from 0 to 100");
    };
    share(crew.uncertain, "crew.uncertain_pct");
    share(crew.pace, "crew.pace_pct");
    share(crew.glueUncertain, "crew.glue_uncertain_pct");
    schedule::checkUncertain(uncertainOf(crew, {1, crew.pace, 0}));
}

}  // namespace fayline::plan
