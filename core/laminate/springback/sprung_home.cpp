#include "core/laminate/springback/sprung_home.hpp"

#include <algorithm>
#include <cmath>

#include "core/laminate/springback/on_form.hpp"

namespace fayline::laminate {

namespace {

// Difference of curvature at the neutral axis, wanted less what it is; > 0 where it has to close. By places of the
// ground.
std::vector<double> toClose(const OnForm& lies, double factor) {
    const std::vector<double> left = lies.shareLetGo(factor);
    std::vector<double> close;
    for (std::size_t i = 0; i < left.size(); ++i) {
        const double k = stackCurvature(lies.ground.ground.places[i].line, lies.ground.ground.side);
        const double axis = lies.ground.parts.front().axisFromLine_m[i];
        close.push_back((1 - left[i]) * std::abs(k) / (1 + axis * k));
    }
    return close;
}

void tellMoment(SprungHome& home, const OnForm& lies, const std::vector<double>& close) {
    for (std::size_t i = lies.ground.ground.start; i <= lies.ground.ground.end; ++i) {
        const Release& section = lies.ground.parts.front().sections[i];
        const double moment = section.solid_N_m2 * close[i];
        if (std::abs(moment) <= std::abs(home.moment_N_m)) continue;
        home.moment_N_m = moment;
        home.momentAt_m = section.at_m;
    }
}

void tellStress(SprungHome& home, const OnForm& lies, const StackPlan& stack, const std::vector<double>& close) {
    const PartAlong& part = lies.ground.parts.front();
    for (std::size_t i = lies.ground.ground.start; i <= lies.ground.ground.end; ++i) {
        const double at = lies.ground.ground.places[i].line.at_m;
        for (int place = part.places.first; place <= part.places.last; ++place) {
            const BentStrip& strip = lies.ground.strips[place - 1];
            if (!strip.runs.bent.holds(at + lies.ground.aside_m[i])) continue;
            const double axis = part.axisFromLine_m[i];
            const double away =
                std::max(std::abs(strip.layer.inner.at(at) - axis), std::abs(strip.layer.outer.at(at) - axis));
            const double strain = away * std::abs(close[i]);
            home.breakingShare = std::max(home.breakingShare, strain / stack.strips[place - 1].breakingStrain);
            if (strip.modulus_Pa * strain <= home.stress_Pa) continue;
            home.stress_Pa = strip.modulus_Pa * strain;
            home.stressAt_m = at;
            home.stressPlace = place;
        }
    }
    home.bears = home.breakingShare <= shareForGood;
}

// Where each section's neutral axis lies along the chord of the wanted faying surface and off it: the arms of what
// pulls at the faces.
struct OnChord {
    double along_m = 0;
    double off_m = 0;
};

std::vector<OnChord> onChord(const OnForm& lies, double& chord_m) {
    const std::vector<FormLine::Node>& nodes = lies.wanted.nodes();
    const std::size_t start = lies.ground.ground.start;
    const std::size_t end = lies.ground.ground.end;
    const double dx = nodes[end].faying.x_m - nodes[start].faying.x_m;
    const double dy = nodes[end].faying.y_m - nodes[start].faying.y_m;
    chord_m = std::hypot(dx, dy);
    std::vector<OnChord> places;
    for (std::size_t i = start; i <= end; ++i) {
        const FormLine::Node& node = nodes[i];
        const double out = lies.ground.ground.side * node.axis_m;
        const double x = node.faying.x_m - out * std::sin(node.heading_rad) - nodes[start].faying.x_m;
        const double y = node.faying.y_m + out * std::cos(node.heading_rad) - nodes[start].faying.y_m;
        places.push_back({(x * dx + y * dy) / chord_m, (x * dy - y * dx) / chord_m});
    }
    return places;
}

void tellPulls(SprungHome& home, const OnForm& lies) {
    double chord = 0;
    const std::vector<OnChord> places = onChord(lies, chord);
    const std::size_t start = lies.ground.ground.start;
    std::size_t far = 0;
    for (std::size_t i = 0; i < places.size(); ++i) {
        if (std::abs(places[i].off_m) > std::abs(places[far].off_m)) far = i;
    }
    const double share = places[far].along_m / chord;
    double byMiddle = 0;
    double byEnds = 0;
    for (std::size_t i = 0; i + 1 < places.size(); ++i) {
        const auto flex = [&](std::size_t j, double moment) {
            return moment * moment / lies.ground.parts.front().sections[start + j].solid_N_m2;
        };
        const auto middle = [&](std::size_t j) {
            return j < far ? places[j].along_m * (1 - share) : (chord - places[j].along_m) * share;
        };
        const double length = lies.wanted.nodes()[start + i + 1].s_m - lies.wanted.nodes()[start + i].s_m;
        byMiddle += length * (flex(i, middle(i)) + flex(i + 1, middle(i + 1))) / 2;
        byEnds += length * (flex(i, places[i].off_m) + flex(i + 1, places[i + 1].off_m)) / 2;
    }
    home.middleAt_m = lies.ground.ground.places[start + far].line.at_m;
    if (byMiddle > 0) home.middlePull_N = home.off.rise_m / byMiddle;
    if (byEnds > 0) home.endsPull_N = home.off.chord_m / byEnds;
}

}  // namespace

std::optional<SprungHome> sprungHome(const model::Piece& piece, const line::Line& line, const StackPlan& stack,
                                     const FormPlan& form, const std::optional<OpenedBy>& measured) {
    if (!form.letsGo) return std::nullopt;
    const OnForm lies = lieOn(piece, line, stack, form.line);
    SprungHome home{.measured = measured.has_value(),
                    .after_s = measured ? measured->after_s : 0,
                    .factor = measured ? measured->factor : form.factor};
    home.off = openingOf(lies.ground.ground, lies.wanted, lies.letGo(home.factor));
    const double most = std::max(
        {std::abs(home.off.chord_m), std::abs(home.off.rise_m), std::abs(home.off.start_m), std::abs(home.off.end_m)});
    if (!(most >= leastOff_m) || !(home.off.chordFrom_m > 0)) return std::nullopt;
    const std::vector<double> close = toClose(lies, home.factor);
    tellMoment(home, lies, close);
    tellStress(home, lies, stack, close);
    tellPulls(home, lies);
    return home;
}

}  // namespace fayline::laminate
