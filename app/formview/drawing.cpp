#include "app/formview/drawing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace fayline::app {

namespace {

bool bothFinite(const line::Xy& place) {
    return std::isfinite(place.x_m) && std::isfinite(place.y_m);
}

QPointF point(const line::Xy& place) {
    return {place.x_m, place.y_m};
}

double mix(double from, double to, double share) {
    return from + (to - from) * share;
}

line::Xy mix(const line::Xy& from, const line::Xy& to, double share) {
    return {mix(from.x_m, to.x_m, share), mix(from.y_m, to.y_m, share)};
}

double shareOf(const laminate::StackPlan& plan, size_t strip, size_t place) {
    const double strain = std::abs(plan.strains[strip][place]);
    return std::isfinite(strain) ? laminate::shareAt(plan.strips[strip], strain) : 0;
}

int classOf(double share) {
    return std::min(strainClasses, static_cast<int>(share * strainClasses));
}

// Adds the stretches of `face` that are numbers.
void addFace(Lines& lines, const std::vector<line::Xy>& face, size_t from, size_t to) {
    bool down = false;
    for (size_t j = from; j <= to && j < face.size(); ++j) {
        if (!bothFinite(face[j])) {
            down = false;
            continue;
        }
        if (!down) {
            lines.emplace_back();
            lines.back().reserve(static_cast<qsizetype>(to - j + 1));
        }
        lines.back() << point(face[j]);
        down = true;
    }
}

// The places between which a strip lies: fewer than all where the stack is cut to a scarf.
struct BandReach {
    size_t first = 0;
    size_t last = 0;
};

std::vector<BandReach> reachesOf(const laminate::StackPlan& plan) {
    constexpr double near_m = 1e-9;
    const auto& at_m = plan.at_m;
    std::vector<BandReach> reaches;
    for (const laminate::Strip& strip : plan.strips) {
        const auto first = std::lower_bound(at_m.begin(), at_m.end(), strip.startsAt_m - near_m);
        const auto after = std::upper_bound(at_m.begin(), at_m.end(), strip.endsAt_m + near_m);
        BandReach reach;
        reach.first = std::min<size_t>(first - at_m.begin(), at_m.size() - 1);
        reach.last = std::max<size_t>(reach.first, after == at_m.begin() ? 0 : after - at_m.begin() - 1);
        reaches.push_back(reach);
    }
    return reaches;
}

// One stretch of all strips, `from` to `to` of the places: the bands of one class. A band that lies beside a more
// strained one reaches under it by one place, so that no ground shows between the two.
void addStrips(std::vector<Band>& bands, const laminate::StackPlan& plan, const std::vector<BandReach>& reaches,
               size_t stretchFrom, size_t stretchTo) {
    for (size_t strip = 0; strip + 1 < plan.faces.size() && strip < plan.strains.size(); ++strip) {
        const size_t from = std::max(stretchFrom, reaches[strip].first);
        const size_t to = std::min(stretchTo, reaches[strip].last);
        const auto& inside = plan.faces[strip];
        const auto& outside = plan.faces[strip + 1];
        const auto drawn = [&](size_t j) {
            return bothFinite(inside[j]) && bothFinite(inside[j + 1]) && bothFinite(outside[j]) &&
                   bothFinite(outside[j + 1]);
        };
        const auto classAt = [&](size_t j) {
            return classOf((shareOf(plan, strip, j) + shareOf(plan, strip, j + 1)) / 2);
        };
        for (size_t j = from; j < to;) {
            if (!drawn(j)) {
                ++j;
                continue;
            }
            const int own = classAt(j);
            size_t end = j + 1;
            while (end < to && drawn(end) && classAt(end) == own) ++end;
            const size_t first = j > from && drawn(j - 1) && classAt(j - 1) > own ? j - 1 : j;
            const size_t last = end < to && drawn(end) && classAt(end) > own ? end + 1 : end;
            bands.push_back({own, strip, first, last});
            j = end;
        }
    }
}

void addPlaces(Drawing& drawing, const plan::Plan& plan, double sign) {
    const auto& stack = plan.stack;
    for (size_t j = 0; j < stack.at_m.size(); ++j) {
        const line::Place onLine = plan.line.fair.line.at(stack.at_m[j]);
        DrawnPlace place;
        place.at_m = stack.at_m[j];
        place.onLine = {onLine.x_m, onLine.y_m};
        place.onForm = stack.faces.front()[j];
        place.onOutside = stack.faces.back()[j];
        place.outwards = {-std::sin(onLine.heading_rad) * sign, std::cos(onLine.heading_rad) * sign};
        place.heading_rad = onLine.heading_rad;
        place.curvature_per_m = onLine.curvature_per_m;
        for (size_t strip = 0; strip < stack.strains.size(); ++strip) {
            const double share = shareOf(stack, strip, j);
            if (strip > 0 && share <= place.share) continue;
            place.share = share;
            place.strain = std::abs(stack.strains[strip][j]);
        }
        if (!bothFinite(place.onForm) || !bothFinite(place.onOutside) || !bothFinite(place.onLine)) continue;
        drawing.greatestShare = std::max(drawing.greatestShare, place.share);
        drawing.bounds.include(place.onForm);
        drawing.bounds.include(place.onOutside);
        drawing.places.push_back(place);
    }
}

void addForm(Drawing& drawing, const plan::Plan& plan) {
    if (!plan.form.corrected || plan.form.line.nodes().size() < 2) return;
    const auto& places = drawing.places;
    for (const laminate::FormLine::Node& node : plan.form.line.nodes()) {
        FormPlace& made = drawing.form.emplace_back();
        made.at_m = node.at_m;
        made.on = node.faying;
        const bool among = !places.empty() && node.at_m >= places.front().at_m && node.at_m <= places.back().at_m;
        if (among) made.wanted = placeAt(drawing, node.at_m).onForm;
    }
}

bool complete(const laminate::StackPlan& stack) {
    const size_t count = stack.at_m.size();
    if (count < 2 || stack.faces.size() < 2 || stack.strains.size() + 1 != stack.faces.size() ||
        stack.strips.size() != stack.strains.size()) {
        return false;
    }
    const auto whole = [count](const auto& row) { return row.size() == count; };
    return std::all_of(stack.faces.begin(), stack.faces.end(), whole) &&
           std::all_of(stack.strains.begin(), stack.strains.end(), whole);
}

// The last place at or before, and the first at or after, the two trim lines.
size_t firstWithin(const std::vector<double>& at_m, double from_m) {
    constexpr double near_m = 1e-9;
    const auto found = std::lower_bound(at_m.begin(), at_m.end(), from_m - near_m);
    return std::min<size_t>(found - at_m.begin(), at_m.size() - 1);
}

}  // namespace

double shareOfClass(int strainClass) {
    return std::min(1.0, (strainClass + 0.5) / strainClasses);
}

Drawing drawingOf(const plan::Plan& plan, model::Side side) {
    Drawing drawing;
    drawing.length_m = plan.line.fair.line.length();
    std::vector<line::Xy> onLine;
    for (const line::Place& place : plan.line.samples) {
        onLine.push_back({place.x_m, place.y_m});
        drawing.bounds.include(onLine.back());
    }
    if (!onLine.empty()) addFace(drawing.line, onLine, 0, onLine.size() - 1);
    if (!complete(plan.stack)) return drawing;
    addPlaces(drawing, plan, laminate::sideSign(side));
    addForm(drawing, plan);
    const auto& stack = plan.stack;
    const size_t last = stack.at_m.size() - 1;
    const size_t start = firstWithin(stack.at_m, 0);
    const size_t end = std::max(start, firstWithin(stack.at_m, drawing.length_m));
    for (const std::vector<line::Xy>& face : stack.faces) {
        QPolygonF& corners = drawing.faces.emplace_back();
        corners.reserve(static_cast<qsizetype>(face.size()));
        for (const line::Xy& corner : face) corners << point(corner);
    }
    const std::vector<BandReach> reaches = reachesOf(stack);
    addStrips(drawing.strips, stack, reaches, start, end);
    addStrips(drawing.overRun, stack, reaches, 0, start);
    addStrips(drawing.overRun, stack, reaches, end, last);
    for (std::vector<Band>* bands : {&drawing.strips, &drawing.overRun}) {
        std::stable_sort(bands->begin(), bands->end(),
                         [](const Band& a, const Band& b) { return a.strainClass < b.strainClass; });
    }

    // A face is that of the strip on its inner side, whose outside shows where the next strip ends before it.
    const auto addFaces = [&](Lines& within, Lines& beyond, size_t face) {
        const BandReach& reach = reaches[face == 0 ? 0 : face - 1];
        addFace(within, stack.faces[face], std::max(start, reach.first), std::min(end, reach.last));
        addFace(beyond, stack.faces[face], reach.first, std::min(start, reach.last));
        addFace(beyond, stack.faces[face], std::max(end, reach.first), reach.last);
    };
    for (const size_t face : {size_t{0}, stack.faces.size() - 1}) {
        addFaces(drawing.outline, drawing.overRunOutline, face);
    }
    for (size_t strip = 0; strip < reaches.size(); ++strip) {
        for (const size_t place : {reaches[strip].first, reaches[strip].last}) {
            if (place == 0 || place == last) continue;
            const line::Xy& inside = stack.faces[strip][place];
            const line::Xy& outside = stack.faces[strip + 1][place];
            if (!bothFinite(inside) || !bothFinite(outside)) continue;
            drawing.outline.push_back(QPolygonF({point(inside), point(outside)}));
        }
    }
    // Where the stack is cut to a scarf the outside goes on, dashed, as that of the matching piece or of a caul.
    addFace(drawing.overRunOutline, stack.faces.back(), 0, reaches.back().first);
    addFace(drawing.overRunOutline, stack.faces.back(), reaches.back().last, last);
    for (const size_t place : {size_t{0}, last}) {
        if (!bothFinite(stack.faces.front()[place]) || !bothFinite(stack.faces.back()[place])) continue;
        drawing.overRunOutline.push_back(
            QPolygonF({point(stack.faces.front()[place]), point(stack.faces.back()[place])}));
    }
    drawing.thinnestStrip_m = std::numeric_limits<double>::infinity();
    for (const laminate::Strip& strip : stack.strips) {
        drawing.thinnestStrip_m = std::min({drawing.thinnestStrip_m, strip.thickness_m, strip.thicknessAtEnd_m});
    }
    for (size_t face = 1; face + 1 < stack.faces.size(); ++face) {
        const bool sawnOff = stack.strips[face].sacrificial != stack.strips[face - 1].sacrificial;
        addFaces(sawnOff ? drawing.sawnOff : drawing.between, drawing.overRunBetween, face);
    }
    return drawing;
}

DrawnPlace placeAt(const Drawing& drawing, double at_m) {
    const auto& places = drawing.places;
    if (places.empty()) return {};
    if (at_m <= places.front().at_m) return places.front();
    if (at_m >= places.back().at_m) return places.back();
    const auto after = std::upper_bound(places.begin(), places.end(), at_m,
                                        [](double at, const auto& each) { return at < each.at_m; });
    const DrawnPlace& b = *after;
    const DrawnPlace& a = *(after - 1);
    const double share = (at_m - a.at_m) / (b.at_m - a.at_m);
    DrawnPlace place;
    place.at_m = at_m;
    place.onLine = mix(a.onLine, b.onLine, share);
    place.onForm = mix(a.onForm, b.onForm, share);
    place.onOutside = mix(a.onOutside, b.onOutside, share);
    place.outwards = mix(a.outwards, b.outwards, share);
    const double length = std::hypot(place.outwards.x_m, place.outwards.y_m);
    if (length > 0) place.outwards = {place.outwards.x_m / length, place.outwards.y_m / length};
    place.heading_rad = mix(a.heading_rad, b.heading_rad, share);
    place.curvature_per_m = mix(a.curvature_per_m, b.curvature_per_m, share);
    place.strain = mix(a.strain, b.strain, share);
    place.share = mix(a.share, b.share, share);
    return place;
}

double nearestPlace(const Drawing& drawing, const line::Line& line, const line::Xy& place) {
    const line::Nearest nearest = line.nearest(place.x_m, place.y_m);
    double best_m = std::abs(nearest.distance_m);
    double at_m = nearest.at_m;
    const auto& places = drawing.places;
    for (size_t j = 0; j + 1 < places.size(); ++j) {
        if (places[j + 1].at_m > 0 && places[j].at_m < drawing.length_m) continue;
        const line::Xy a = places[j].onLine;
        const line::Xy along{places[j + 1].onLine.x_m - a.x_m, places[j + 1].onLine.y_m - a.y_m};
        const double squared = along.x_m * along.x_m + along.y_m * along.y_m;
        if (squared <= 0) continue;
        const double share =
            std::clamp(((place.x_m - a.x_m) * along.x_m + (place.y_m - a.y_m) * along.y_m) / squared, 0.0, 1.0);
        const double away_m = std::hypot(place.x_m - a.x_m - share * along.x_m, place.y_m - a.y_m - share * along.y_m);
        if (away_m >= best_m) continue;
        best_m = away_m;
        at_m = mix(places[j].at_m, places[j + 1].at_m, share);
    }
    return at_m;
}

}  // namespace fayline::app
