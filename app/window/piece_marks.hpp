// What is worst about each piece of the boat, also of those that are not on the table.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

namespace fayline::app {

// Nothing worst: the plan has no finding, or there is none yet.
struct PieceMark {
    std::optional<plan::Severity> worst;
    QString why;  // the first finding's sentence, or why the piece cannot be planned
    bool operator==(const PieceMark&) const = default;
};

PieceMark markOf(const plan::Plan& plan);
PieceMark markOfRefusal(const QString& why);  // a stop

// The marks that are known of a boat's pieces as they stand.
class PieceMarks {
public:
    // The boat as it stands, at every change of it: marks of other states, woods, glues or units are forgotten.
    void follow(const model::Boat& boat);
    void know(const model::Piece& piece, const PieceMark& mark);
    const PieceMark* of(const model::Piece& piece) const;  // null: not planned yet

private:
    struct Known {
        model::Piece piece;
        PieceMark mark;
    };
    std::vector<Known> known_;
    std::vector<model::OwnSpecies> species_;
    std::vector<model::OwnAdhesive> adhesives_;
    units::Display display_;
};

}  // namespace fayline::app
