#include "app/paper/join.hpp"

#include <cmath>
#include <numbers>

#include "core/math/count.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app::paper {

QString seamLetter(int index) {
    static const QString letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";  // I and O read as figures
    const int count = math::countOf(letters);
    QString name;
    for (int rest = index; rest >= 0; rest = rest / count - 1) name.prepend(letters[rest % count]);
    return name;
}

void addJoinCross(Sheet& sheet, const QPointF& at, const QString& name) {
    addLine(sheet, at - QPointF(crossArm_mm, 0), at + QPointF(crossArm_mm, 0), 0.2);
    addLine(sheet, at - QPointF(0, crossArm_mm), at + QPointF(0, crossArm_mm), 0.2);
    QPolygonF ring;
    for (int i = 0; i <= 48; ++i) {
        const double angle = i * std::numbers::pi / 24;
        ring << at + 2.0 * QPointF(std::cos(angle), std::sin(angle));
    }
    sheet.strokes.push_back({ring, 0.15});
    addWords(sheet, name, at + QPointF(2.2, -1.9), 2.6, Lean::left, true);
}

QRectF joinCrossBox(const QPointF& at) {
    return QRectF(at - QPointF(crossArm_mm, crossArm_mm), at + QPointF(crossArm_mm + 3.6, crossArm_mm));
}

void requireFewSheets(double sheets, const QString& paper) {
    if (sheets <= mostSheets) return;
    throw units::InputError(
        "paper",
        QString("the %1 would need %2 sheets of this paper").arg(paper.toLower()).arg(std::ceil(sheets)).toStdString(),
        QString("choose larger paper or a roll, so that no more than %1 are needed").arg(mostSheets).toStdString());
}

}  // namespace fayline::app::paper
