#include "app/look/names.hpp"

#include "core/boat/hold_traits.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

QString pointName(const boat::Piece& piece, int index) {
    const auto& points = piece.line.points;
    if (index < 0 || index >= math::countOf(points) || points[index].label.empty()) {
        return QStringLiteral("point %1").arg(index + 1);
    }
    return QString::fromStdString(points[index].label);
}

QString holdName(boat::HoldKind kind) {
    const std::string_view word = boat::holdWord(kind);
    return QString::fromUtf8(word.data(), qsizetype(word.size()));
}

}  // namespace fayline::app
