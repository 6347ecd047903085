#include "core/plan/form_off.hpp"

#include <cmath>

#include "core/laminate/layers.hpp"
#include "core/laminate/parallels.hpp"

namespace fayline::plan {

std::vector<FormOff> formOff(const model::Piece& piece, const Plan& plan) {
    std::vector<FormOff> all;
    const laminate::FormLine& form = plan.form.line;
    if (!plan.form.corrected || form.empty()) return all;
    constexpr double step_m = 0.01;
    const line::Line& line = plan.line.fair.line;
    const double side = laminate::sideSign(piece.line.stripsOn);
    const laminate::Distance faying = laminate::layers(piece.stack, piece.line.describes, line.length()).front().inner;
    const double from = form.from_m();
    const int steps = std::max(1, static_cast<int>(std::ceil((form.to_m() - from) / step_m)));
    all.reserve(static_cast<std::size_t>(steps) + 1);
    for (int i = 0; i <= steps; ++i) {
        const double at_m = from + (form.to_m() - from) * i / steps;
        const line::Place on = line.at(at_m);
        const line::Xy wanted = laminate::pointBeside(on, side, faying.at(at_m));
        const line::Place edge = form.faying(at_m);
        const line::Xy away{-side * std::sin(on.heading_rad), side * std::cos(on.heading_rad)};
        all.push_back({at_m, (edge.x_m - wanted.x_m) * away.x_m + (edge.y_m - wanted.y_m) * away.y_m});
    }
    return all;
}

}  // namespace fayline::plan
