#include "app/look/names.hpp"

#include "core/math/count.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::app {

QString pointName(const model::Piece& piece, int index) {
    const auto& points = piece.line.points;
    if (index < 0 || index >= math::countOf(points) || points[index].label.empty()) {
        return QStringLiteral("point %1").arg(index + 1);
    }
    return QString::fromStdString(points[index].label);
}

QString holdName(model::HoldKind kind) {
    const std::string_view word = model::holdWord(kind);
    return QString::fromUtf8(word.data(), qsizetype(word.size()));
}

}  // namespace fayline::app
