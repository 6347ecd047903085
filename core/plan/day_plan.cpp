#include "core/plan/day_plan.hpp"

#include <algorithm>
#include <cmath>

#include "core/holding/closing.hpp"
#include "core/holding/places.hpp"
#include "core/plan/plan.hpp"
#include "core/stack/layers.hpp"
#include "core/stack/parallels.hpp"

namespace fayline::plan {

namespace {

// Laying the fixed end of the stack down and lining it up. Common practice, no source.
constexpr double place_s = 60;

constexpr double areaStep_m = 0.02;

// Area of the face at `distance` from the line between two places, as wide as the strips are bent.
double faceArea(const boat::Stack& stack, double side, const line::Line& line, const stack::Distance& distance,
                double from_m, double to_m) {
    if (!(to_m > from_m)) return 0;
    const int parts = std::max(1, static_cast<int>(std::ceil((to_m - from_m) / areaStep_m)));
    const double step_m = (to_m - from_m) / parts;
    double area_m2 = 0;
    for (int i = 0; i < parts; ++i) {
        const double at_m = from_m + (i + 0.5) * step_m;
        const double along = std::max(0.0, stack::stretch(line.at(at_m), side, distance.at(at_m)));
        area_m2 += along * step_m * stack::ripWidthAt(stack, at_m);
    }
    return area_m2;
}

int gluingOf(const boat::Stack& stack, int place) {
    int gluing = 0;
    for (const int after : stack.gluings) {
        if (place > after) ++gluing;
    }
    return gluing;
}

bool dryOutside(const boat::Stack& stack, const stack::StackPlan& plan, std::size_t i) {
    const auto& strips = plan.strips;
    return stack.strips[static_cast<std::size_t>(strips[i].group)].dryFace &&
           (i + 1 == strips.size() || strips[i + 1].group != strips[i].group);
}

double stationTime(const boat::Rates& rates, boat::HoldKind kind) {
    switch (kind) {
        case boat::HoldKind::prop:
            return rates.station.prop_s;
        case boat::HoldKind::jack:
            return rates.station.jack_s;
        case boat::HoldKind::screw:
            return rates.station.screw_s;
        case boat::HoldKind::clamp:
        case boat::HoldKind::strap:
        case boat::HoldKind::wedge:
            return rates.station.clamp_s;
    }
    return rates.station.clamp_s;
}

std::vector<schedule::StationJob> stationsOf(const boat::Piece& piece, const line::Line& line) {
    const boat::Holding& holding = piece.holding;
    const auto places = holding::stationPlaces(holding, piece.stack, piece.line.describes, piece.line.stripsOn, line);
    std::vector<schedule::StationJob> jobs;
    for (const int index : holding::closingOrder(holding.stations, holding.from, line.length())) {
        const boat::Station& station = holding.stations[static_cast<std::size_t>(index)];
        const auto place = std::find_if(places.begin(), places.end(),
                                        [index](const holding::StationPlace& p) { return p.index == index; });
        jobs.push_back({place == places.end() ? index + 1 : place->number, std::string(boat::holdWord(station.kind)),
                        stationTime(piece.crew.rates, station.kind)});
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

schedule::Job jobOf(const boat::Piece& piece, const glue::GluePlan& glue, int gluing, const line::Line& line,
                    const stack::StackPlan& stack) {
    const boat::Rates& rates = piece.crew.rates;
    schedule::Job job;
    job.gluing = gluing;
    job.hands = piece.crew.hands;
    const int strips = static_cast<int>(stack.strips.size());
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
        const double cured_m2 = onStrip[static_cast<std::size_t>(job.strips.front().strip)];
        job.wipe_s = cured_m2 / rates.wipe_m2_s;
        job.sand_s = cured_m2 / rates.sand_m2_s;
    }
    if (piece.glue.surfaceWork != boat::SurfaceWork::nothing) job.wipe_s += faces_m2 / rates.wipe_m2_s;
    if (piece.glue.surfaceWork == boat::SurfaceWork::sandedAndWiped) job.sand_s += faces_m2 / rates.sand_m2_s;
    return job;
}

}  // namespace

std::vector<glue::GlueLine> glueLinesOf(const boat::Piece& piece, const line::Line& line,
                                        const stack::StackPlan& stack) {
    const double side = stack::sideSign(piece.line.stripsOn);
    const std::vector<stack::Layer> layers = stack::layers(piece.stack, piece.line.describes, line.length());
    std::vector<glue::GlueLine> lines;
    const auto& strips = stack.strips;
    if (strips.empty()) return lines;
    if (piece.form.kind == boat::FormKind::inPlace) {
        const double area_m2 =
            faceArea(piece.stack, side, line, layers.front().inner, std::max(strips.front().startsAt_m, 0.0),
                     std::min(strips.front().endsAt_m, line.length()));
        lines.push_back({0, 0, area_m2, false});
    }
    for (std::size_t i = 0; i + 1 < strips.size(); ++i) {
        if (dryOutside(piece.stack, stack, i)) continue;
        const double area_m2 =
            faceArea(piece.stack, side, line, layers[i].outer, std::max(strips[i].startsAt_m, strips[i + 1].startsAt_m),
                     std::min(strips[i].endsAt_m, strips[i + 1].endsAt_m));
        lines.push_back({static_cast<int>(i) + 1, gluingOf(piece.stack, static_cast<int>(i) + 2), area_m2, false});
    }
    const auto addScarf = [&](const std::optional<boat::Scarf>& scarf, double at_m) {
        if (!scarf) return;
        const double depth_m = layers.back().outer.at(at_m) - layers.front().inner.at(at_m);
        const double area_m2 = depth_m * std::hypot(1, scarf->slope) * stack::widthAt(piece.stack, at_m);
        lines.push_back({0, 0, area_m2, true});
    };
    // The scarf is glued with the piece only where the piece is glued to what it meets.
    if (piece.form.kind == boat::FormKind::inPlace) {
        addScarf(piece.stack.scarfedStart, 0);
        addScarf(piece.stack.scarfedEnd, line.length());
    }
    return lines;
}

DayPlan planDay(const boat::Piece& piece, const Shop& shop, const line::Line& line, const stack::StackPlan& stack) {
    const std::vector<glue::GlueLine> lines = glueLinesOf(piece, line, stack);
    DayPlan day;
    // When the last clamp is on is known only after the run, which needs the glue: the cure is made again with it.
    day.glue = glue::planGlue(piece.glue, piece.crew, shop.adhesives, lines, piece.crew.startAt_s);
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

}  // namespace fayline::plan
