#include "core/laminate/springback/on_form.hpp"

namespace fayline::laminate {

std::vector<double> OnForm::shareLetGo(double factor) const {
    std::vector<double> left = share;
    for (std::size_t i = 0; i < left.size(); ++i) left[i] *= 1 - factor * ratios[i];
    return left;
}

FormLine OnForm::letGo(double factor) const {
    return shapeOf(ground.ground, {ground.parts.front().axisFromLine_m, shareLetGo(factor), {}, 1});
}

OnForm lieOn(const model::Piece& piece, const line::Line& line, const StackPlan& stack, const FormLine& form) {
    OnForm lies;
    lies.ground = formGround(piece, line, stack);
    const std::vector<double>& axis = lies.ground.parts.front().axisFromLine_m;
    for (std::size_t i = 0; i < lies.ground.ground.places.size(); ++i) {
        const line::Place& place = lies.ground.ground.places[i].line;
        const double turn = form.section(place.at_m + lies.ground.aside_m[i]).turn_per_m;
        // Where the wanted line is straight nothing turns.
        lies.share.push_back(place.curvature_per_m != 0 ? turn / place.curvature_per_m : 1);
    }
    lies.ratios = ratiosOn(lies.ground, lies.ground.parts.front(), lies.share);
    lies.onForm = shapeOf(lies.ground.ground, {axis, lies.share, {}, 1});
    lies.wanted = shapeOf(lies.ground.ground, {axis, std::vector<double>(axis.size(), 1.0), {}, 1});
    return lies;
}

}  // namespace fayline::laminate
