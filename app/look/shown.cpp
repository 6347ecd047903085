#include "app/look/shown.hpp"

namespace fayline::app {

Shown::Shown() = default;
Shown::Shown(const Shown& other) = default;
Shown::Shown(Shown&& other) noexcept = default;
Shown& Shown::operator=(const Shown& other) = default;
Shown& Shown::operator=(Shown&& other) noexcept = default;
Shown::~Shown() = default;

bool Shown::samePieceAs(const Shown& other) const {
    if (pieceIndex < 0 || other.pieceIndex < 0) return pieceIndex < 0 && other.pieceIndex < 0;
    // Pieces without an id are no document's; their place has to do.
    return boatNumber == other.boatNumber && piece.id == other.piece.id &&
           (!piece.id.empty() || pieceIndex == other.pieceIndex);
}

}  // namespace fayline::app
