#include "app/formview/form_edge.hpp"

#include <algorithm>
#include <cmath>

namespace fayline::app {

namespace {

constexpr double nearEdge_m = 1e-9;
constexpr double seenGap_px = 0.75;   // a thinner gap does not show
constexpr double longestGap_px = 24;  // of the largest gap between the trim lines
constexpr double cutAt_px = 26;       // of a magnified one beyond them, where the ends stand off
constexpr double farthest_px = 5000;  // of anything: what lies beyond is out of every view
constexpr double barsApart_px = 4.5;  // across a gap above the limit

bool withinTrims(const plan::Plan& plan, double at_m) {
    return at_m >= -nearEdge_m && at_m <= plan.line.fair.line.length() + nearEdge_m;
}

// From where to where something bears the stack, along the line.
struct Borne {
    double from_m = 0;
    double to_m = 0;
};

Borne borneOf(const model::Piece& piece, double length_m) {
    const bool inPlace = piece.form.kind == model::FormKind::inPlace;
    const double before_m = piece.form.carriesOnStart_m.value_or(inPlace ? 0 : piece.stack.runsPastStart_m);
    const double after_m = piece.form.carriesOnEnd_m.value_or(inPlace ? 0 : piece.stack.runsPastEnd_m);
    return {-before_m, length_m + after_m};
}

// The places of the strips' drawing where nothing is known of gaps, else those of the samples.
std::vector<EdgePlace> placesAlong(const Shown& shown, const Drawing& drawing, const Transform& transform) {
    std::vector<EdgePlace> places;
    const Borne borne = borneOf(shown.piece, drawing.length_m);
    const auto add = [&](const DrawnPlace& place) {
        EdgePlace& made = places.emplace_back();
        made.at_m = place.at_m;
        made.face = transform.toScreen(place.onForm);
        made.in = QPointF(-place.outwards.x_m, place.outwards.y_m);
        made.borne = place.at_m >= borne.from_m - nearEdge_m && place.at_m <= borne.to_m + nearEdge_m;
    };
    const auto& samples = shown.plan->holding.held.samples;
    if (samples.size() < 2) {
        places.reserve(drawing.places.size());
        for (const DrawnPlace& place : drawing.places) add(place);
        return places;
    }
    places.reserve(samples.size());
    for (const holding::HeldSample& sample : samples) {
        if (!std::isfinite(sample.at_m) || !std::isfinite(sample.gap_m)) continue;
        if (!places.empty() && sample.at_m <= places.back().at_m) continue;
        add(placeAt(drawing, sample.at_m));
        places.back().at_m = sample.at_m;
        places.back().gap_px = std::max(0.0, sample.gap_m);  // metres until the factor is known
        places.back().pressure_px = std::isfinite(sample.pressure_Pa) ? std::max(0.0, sample.pressure_Pa) : 0;
    }
    return places;
}

// What lies between the stack and the edge from one place to another, closed.
QPolygonF between(const std::vector<EdgePlace>& places, size_t from, size_t to) {
    QPolygonF figure;
    for (size_t j = from; j <= to; ++j) figure << places[j].face;
    for (size_t j = to + 1; j-- > from;) figure << places[j].onEdge();
    figure << figure.front();
    return figure;
}

void addBars(QPainterPath& path, const std::vector<EdgePlace>& places, size_t from, size_t to) {
    double left_px = barsApart_px / 2;
    for (size_t j = from; j < to; ++j) {
        const EdgePlace& a = places[j];
        const EdgePlace& b = places[j + 1];
        const double length = QLineF(a.face, b.face).length();
        if (length <= 0 || length > 1e5) continue;
        for (; left_px < length; left_px += barsApart_px) {
            const double share = left_px / length;
            path.moveTo(a.face + (b.face - a.face) * share);
            path.lineTo(a.onEdge() + (b.onEdge() - a.onEdge()) * share);
        }
        left_px -= length;
    }
}

void addEdge(Lines& lines, const std::vector<EdgePlace>& places, size_t from, size_t to) {
    QPolygonF& line = lines.emplace_back();
    for (size_t j = from; j <= to; ++j) line << places[j].onEdge();
}

// Calls `each(from, to, value)` for the stretches of places between neighbours of which `value(from)` is the same.
template <class Value, class Each>
void stretches(const std::vector<EdgePlace>& places, const Value& value, const Each& each) {
    for (size_t from = 0; from + 1 < places.size();) {
        const auto own = value(from);
        size_t to = from + 1;
        while (to + 1 < places.size() && value(to) == own) ++to;
        each(from, to, own);
        from = to;
    }
}

void addGaps(FormEdge& edge, const Shown& shown, const Transform& transform) {
    const auto& places = edge.places;
    const double limit_px = shown.piece.holding.gapLimit_m * edge.gapTimes * transform.pixelsPerMetre;
    enum class Stretch { closed, within, over, beyond, cut };
    const auto kind = [&](size_t j) {
        const EdgePlace& a = places[j];
        const EdgePlace& b = places[j + 1];
        const double gap_px = std::max(a.gap_px, b.gap_px);
        if (gap_px < seenGap_px) return Stretch::closed;
        if (a.cut || b.cut) return Stretch::cut;
        const bool counts = withinTrims(*shown.plan, a.at_m) && withinTrims(*shown.plan, b.at_m);
        if (!counts) return Stretch::beyond;
        return gap_px > limit_px ? Stretch::over : Stretch::within;
    };
    stretches(places, kind, [&](size_t from, size_t to, Stretch own) {
        if (own == Stretch::closed) return;
        edge.gaps = true;
        if (own == Stretch::beyond || own == Stretch::cut) return;  // what is sawn off may stand off
        const QPolygonF figure = between(places, from, to);
        (own == Stretch::over ? edge.gapsOver : edge.gapsWithin).addPolygon(figure);
        if (own != Stretch::over) return;
        edge.overOutline.push_back(figure);
        edge.overOutline.back() << figure[1];  // joined where it closes
        addBars(edge.barsOver, places, from, to);
    });
    const auto standsOff = [&](size_t j) {
        if (kind(j) == Stretch::closed || kind(j) == Stretch::cut) return 0;
        return places[j].borne && places[j + 1].borne ? 1 : 2;
    };
    stretches(places, standsOff, [&](size_t from, size_t to, int own) {
        if (own > 0) addEdge(own == 1 ? edge.edge : edge.freeEdge, places, from, to);
    });
}

void addPressure(FormEdge& edge) {
    const auto& places = edge.places;
    const auto presses = [&](size_t j) { return places[j].pressure_px > 0 || places[j + 1].pressure_px > 0; };
    stretches(places, presses, [&](size_t from, size_t to, bool own) {
        if (!own) return;
        QPolygonF band;
        for (size_t j = from; j <= to; ++j) band << places[j].onEdge();
        for (size_t j = to + 1; j-- > from;) band << places[j].onEdge() + places[j].in * places[j].pressure_px;
        edge.pressure.addPolygon(band);
        edge.pressure.closeSubpath();
    });
}

}  // namespace

double gapTimes(const plan::Plan& plan, const model::Piece& piece, const Transform& transform) {
    constexpr double factors[] = {1, 2, 5, 10, 20, 50, 100, 200, 500, 1000};
    double largest_m = 0;
    for (const holding::HeldSample& sample : plan.holding.held.samples) {
        if (!std::isfinite(sample.gap_m) || !withinTrims(plan, sample.at_m)) continue;
        largest_m = std::max(largest_m, sample.gap_m);
    }
    if (largest_m <= 0) return 1;
    largest_m = std::max(largest_m, piece.holding.gapLimit_m / 4);
    double times = 1;
    for (const double factor : factors) {
        if (largest_m * factor * transform.pixelsPerMetre <= longestGap_px) times = factor;
    }
    return times;
}

FormEdge formEdgeOf(const Shown& shown, const Drawing& drawing, const Transform& transform, bool magnified,
                    bool pressure) {
    FormEdge edge;
    edge.gapTimes = magnified ? gapTimes(*shown.plan, shown.piece, transform) : 1;
    edge.places = placesAlong(shown, drawing, transform);
    double greatest_Pa = 0;
    for (const EdgePlace& place : edge.places) greatest_Pa = std::max(greatest_Pa, place.pressure_px);
    edge.greatestPressure_Pa = pressure ? greatest_Pa : 0;
    for (EdgePlace& place : edge.places) {
        place.gap_px = std::min(place.gap_px * edge.gapTimes * transform.pixelsPerMetre, farthest_px);
        if (edge.gapTimes > 1 && !withinTrims(*shown.plan, place.at_m)) {
            place.cut = place.gap_px > cutAt_px;
            place.gap_px = std::min(place.gap_px, cutAt_px);
        }
        place.pressure_px *= pressure && greatest_Pa > 0 ? greatestPressure_px / greatest_Pa : 0;
    }
    addGaps(edge, shown, transform);
    if (edge.greatestPressure_Pa > 0) addPressure(edge);
    return edge;
}

EdgePlace edgeAt(const FormEdge& edge, double at_m) {
    const auto& places = edge.places;
    if (places.empty()) return {};
    if (at_m <= places.front().at_m) return places.front();
    if (at_m >= places.back().at_m) return places.back();
    const auto after = std::upper_bound(places.begin(), places.end(), at_m,
                                        [](double at, const auto& each) { return at < each.at_m; });
    const EdgePlace& b = *after;
    const EdgePlace& a = *(after - 1);
    const double share = (at_m - a.at_m) / (b.at_m - a.at_m);
    EdgePlace place = a;
    place.at_m = at_m;
    place.face = a.face + (b.face - a.face) * share;
    place.in = a.in + (b.in - a.in) * share;
    const double length = std::hypot(place.in.x(), place.in.y());
    if (length > 0) place.in /= length;
    place.gap_px = a.gap_px + (b.gap_px - a.gap_px) * share;
    place.pressure_px = a.pressure_px + (b.pressure_px - a.pressure_px) * share;
    place.borne = a.borne && b.borne;
    return place;
}

std::optional<holding::HeldSample> sampleAt(const holding::Held& held, double at_m) {
    const auto& samples = held.samples;
    if (samples.size() < 2 || at_m < samples.front().at_m || at_m > samples.back().at_m) return std::nullopt;
    const auto after = std::upper_bound(samples.begin() + 1, samples.end() - 1, at_m,
                                        [](double at, const auto& each) { return at < each.at_m; });
    const holding::HeldSample& b = *after;
    const holding::HeldSample& a = *(after - 1);
    if (!(b.at_m > a.at_m)) return a;
    const double share = (at_m - a.at_m) / (b.at_m - a.at_m);
    const auto mix = [share](double from, double to) { return from + (to - from) * share; };
    return holding::HeldSample{at_m, mix(a.gap_m, b.gap_m), mix(a.pressure_Pa, b.pressure_Pa),
                               mix(a.moment_N_m, b.moment_N_m)};
}

}  // namespace fayline::app
