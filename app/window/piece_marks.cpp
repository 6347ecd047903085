#include "app/window/piece_marks.hpp"

#include <algorithm>

#include "core/math/count.hpp"
#include "core/plan/shop.hpp"

namespace fayline::app {

PieceMark markOf(const plan::Plan& plan) {
    if (plan.findings.empty()) return {};
    // The first one explains the rest and need not be the worst; of severities the least is worst.
    const plan::Severity worst = std::ranges::min(plan.findings, {}, &plan::Finding::severity).severity;
    return {worst, QString::fromStdString(plan::textOf(plan.findings.front(), plan.display))};
}

PieceMark markOfRefusal(const QString& why) {
    return {plan::Severity::stop, PieceMarks::tr("This piece cannot be planned. Fix first: %1.").arg(why)};
}

PieceMarks::PieceMarks(QObject* parent, int rest_ms) : QObject(parent), planner_(nullptr, 0) {
    rest_.setSingleShot(true);
    rest_.setInterval(rest_ms);
    connect(&rest_, &QTimer::timeout, this, &PieceMarks::planNext);
    connect(&planner_, &Planner::deepened, this,
            [this](quint64 request, const std::shared_ptr<const plan::Plan>& plan) { take(request, markOf(*plan)); });
    connect(&planner_, &Planner::failed, this, [this](quint64 request, const QString& why) {
        take(request, {plan::Severity::caution, tr("Part of this plan could not be calculated: %1").arg(why)});
    });
    connect(&planner_, &Planner::refused, this,
            [this](quint64 request, const QString&, const QString& why) { take(request, markOfRefusal(why)); });
}

void PieceMarks::follow(const model::Boat& boat, int current) {
    asked_ = 0;  // an answer that is still to come may be of another boat
    if (boat.species != boat_.species || boat.display != boat_.display) known_.clear();
    boat_ = boat;
    current_ = current;
    std::erase_if(known_, [this](const Known& known) {
        return std::ranges::find(boat_.pieces, known.piece) == boat_.pieces.end();
    });
    rest_.start();
}

void PieceMarks::know(const model::Piece& piece, const PieceMark& mark) {
    if (!find(piece)) known_.push_back({piece, mark});
}

PieceMark PieceMarks::of(const model::Piece& piece) const {
    const Known* known = find(piece);
    return known ? known->mark : PieceMark{};
}

const PieceMarks::Known* PieceMarks::find(const model::Piece& piece) const {
    const auto found = std::ranges::find(known_, piece, &Known::piece);
    return found == known_.end() ? nullptr : &*found;
}

void PieceMarks::planNext() {
    for (int i = 0; i < math::countOf(boat_.pieces); ++i) {
        const model::Piece& piece = boat_.pieces[i];
        if (i == current_ || find(piece)) continue;
        askedPiece_ = piece;
        asked_ = planner_.ask(piece, plan::shopOf(boat_));
        return;
    }
}

void PieceMarks::take(quint64 request, const PieceMark& mark) {
    if (request != asked_) return;
    asked_ = 0;
    know(askedPiece_, mark);
    emit marksChanged();
    planNext();
}

}  // namespace fayline::app

#include "moc_piece_marks.cpp"
