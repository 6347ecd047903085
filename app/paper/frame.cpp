#include "app/paper/frame.hpp"

#include <algorithm>
#include <cmath>

#include "core/units/input_error.hpp"

namespace fayline::app::paper {

namespace {

// The check squares, a title and either a story stick or a few words beside them.
constexpr double leastShortSide_mm = 155;
constexpr double leastLongSide_mm = 200;

constexpr double checkWordsHeight_mm = 15;

}  // namespace

void requireRoom(const Page& page) {
    const double shortSide = std::min(page.area.width(), page.area.height());
    const double longSide = std::max(page.area.width(), page.area.height());
    if (shortSide >= leastShortSide_mm && longSide >= leastLongSide_mm) return;
    const QString found = QString("the paper leaves %1 x %2 mm to draw on, too little for full-size sheets")
                              .arg(std::floor(std::max(shortSide, 0.0)))
                              .arg(std::floor(std::max(longSide, 0.0)));
    const QString needed = QString("choose paper and margins that leave at least %1 x %2 mm, such as A4 or letter")
                               .arg(leastShortSide_mm)
                               .arg(leastLongSide_mm);
    throw units::InputError("paper", found.toStdString(), needed.toStdString());
}

void addCheckSquares(Sheet& sheet, const QPointF& lowerLeft) {
    const auto square = [&](double side) { return QRectF(lowerLeft - QPointF(0, side), QSizeF(side, side)); };
    addBox(sheet, square(checkSquare_mm), 0.2);
    const QRectF inches = square(checkSquareInches_mm);
    sheet.strokes.push_back({QPolygonF({inches.topLeft(), inches.topRight(), inches.bottomRight()}), 0.2});
    addLine(sheet, inches.topLeft(), inches.topLeft() + QPointF(0, checkSquareInches_mm - checkSquare_mm), 0.2);
    addLine(sheet, inches.bottomRight(), inches.bottomRight() - QPointF(checkSquareInches_mm - checkSquare_mm, 0), 0.2);

    const QRectF box = checkWordsBox(lowerLeft);
    addWords(sheet, "Measure me: inner square 100 mm, outer square 4 in.", {box.left(), box.top() + 3}, 2.9, Lean::left,
             true);
    addWords(sheet, "If not, turn off fit-to-page and print at 100 %,", {box.left(), box.top() + 7.6}, 2.9);
    addWords(sheet, "then measure both ways again.", {box.left(), box.top() + 11.8}, 2.9);
}

QRectF checkWordsBox(const QPointF& lowerLeft) {
    return {lowerLeft.x() + 4, lowerLeft.y() - 4 - checkWordsHeight_mm, checkSquare_mm - 8, checkWordsHeight_mm};
}

void addCheckRule(Sheet& sheet, const QRectF& box) {
    const double y = box.top() + 4;
    const double left = box.left() + 0.2;
    addLine(sheet, {left, y}, {left + checkSquareInches_mm, y}, 0.2);
    addLine(sheet, {left, y - 3}, {left, y + 3}, 0.2);
    addLine(sheet, {left + checkSquare_mm, y - 3}, {left + checkSquare_mm, y}, 0.2);
    addLine(sheet, {left + checkSquareInches_mm, y}, {left + checkSquareInches_mm, y + 3}, 0.2);
    addWords(sheet, "100 mm", {left + checkSquare_mm - 1, y - 1}, 2.4, Lean::right);
    addWords(sheet, "4 in", {left + checkSquareInches_mm - 1.5, y + 3}, 2.4, Lean::right);
    const double words = left + checkSquareInches_mm + 3;
    const double room = box.right() - words;
    addWords(sheet, fitted("Measure me; nothing here is at full size.", 2.4, room), {words, y - 0.6}, 2.4);
    addWords(sheet, fitted("Not to scale? Print at 100 %.", 2.4, room), {words, y + 2.8}, 2.4);
}

QRectF titleBelow(const Page& page) {
    return {page.area.left(), page.area.bottom() - titleHeight_mm, page.area.width(), titleHeight_mm};
}

QRectF aboveTitle(const Page& page) {
    return page.area.adjusted(0, 0, 0, -titleHeight_mm - gap_mm);
}

void nameSheets(std::vector<Sheet>& sheets, const Heading& heading) {
    const QString owner = heading.boat.isEmpty() ? heading.piece : heading.boat + " · " + heading.piece;
    for (std::size_t i = 0; i < sheets.size(); ++i) {
        Sheet& sheet = sheets[i];
        const QRectF& box = sheet.title;
        const QString number = QString("Sheet %1 of %2").arg(i + 1).arg(sheets.size());
        const double right = box.right() - 2;
        const double numberWidth = std::max(widthOf(number, 4.2, true), widthOf(sheet.name, 2.9));
        const double room = box.width() - numberWidth - 10;
        const QString remark = sheet.remark.isEmpty() ? heading.paper : heading.paper + "; " + sheet.remark;
        addBox(sheet, box, 0.3);
        addLine(sheet, {right - numberWidth - 3, box.top()}, {right - numberWidth - 3, box.bottom()}, 0.2);
        addWords(sheet, fitted(owner, 4.2, room, true), {box.left() + 2, box.top() + 5.6}, 4.2, Lean::left, true);
        addWords(sheet, fitted(remark, 2.9, room), {box.left() + 2, box.top() + 11.2}, 2.9);
        addWords(sheet, number, {right, box.top() + 5.6}, 4.2, Lean::right, true);
        addWords(sheet, sheet.name, {right, box.top() + 11.2}, 2.9, Lean::right);
    }
}

QString bentStackCaution() {
    return "A bent stack stores energy: it whips when a clamp or pin lets go. Keep heads and hands out of its way and "
           "let it go bit by bit. Props and jacks are no place for a hand; block the boat before anyone is under it.";
}

QString localRulesCaution() {
    return "Local rules and the advice of licensed practice come first, above all for a piece that carries rig, engine "
           "or people.";
}

}  // namespace fayline::app::paper
