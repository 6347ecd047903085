#include "app/window/piece_marks.hpp"

#include <QObject>
#include <algorithm>

namespace fayline::app {

PieceMark markOf(const plan::Plan& plan) {
    if (plan.findings.empty()) return {};
    // The first one explains the rest and need not be the worst; of severities the least is worst.
    const plan::Severity worst = std::ranges::min(plan.findings, {}, &plan::Finding::severity).severity;
    return {worst, QString::fromStdString(plan::textOf(plan.findings.front(), plan.display))};
}

PieceMark markOfRefusal(const QString& why) {
    return {plan::Severity::stop, QObject::tr("This piece cannot be planned. Fix first: %1.").arg(why)};
}

void PieceMarks::follow(const model::Boat& boat) {
    if (boat.species != species_ || boat.adhesives != adhesives_ || boat.display != display_) known_.clear();
    species_ = boat.species;
    adhesives_ = boat.adhesives;
    display_ = boat.display;
    std::erase_if(known_,
                  [&](const Known& known) { return std::ranges::find(boat.pieces, known.piece) == boat.pieces.end(); });
}

void PieceMarks::know(const model::Piece& piece, const PieceMark& mark) {
    if (!of(piece)) known_.push_back({piece, mark});
}

const PieceMark* PieceMarks::of(const model::Piece& piece) const {
    const auto found = std::ranges::find(known_, piece, &Known::piece);
    return found == known_.end() ? nullptr : &found->mark;
}

}  // namespace fayline::app
