#include "app/paper/story_stick.hpp"

#include <algorithm>
#include <cmath>

#include "app/paper/frame.hpp"
#include "app/paper/join.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/room.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double stickTick_mm = 7;
constexpr double samePlace_mm = 0.05;  // nearer marks are one tick with both names
constexpr double labelSize_mm = 3.3;
constexpr double row_mm = 4.3;
constexpr double middleHalf_mm = 9;   // half of the band between the edges' marks
constexpr double beyondEnds_mm = 12;  // blank stick past its last marks
constexpr double greatestHeight_mm = 80;

// One edge of the stick on one sheet: where it lies and which way its marks point.
struct Edge {
    double y_mm = 0;
    double inwards = 1;                          // +1: marks run down from it, -1: up
    std::vector<std::pair<double, Mark>> marks;  // distance along this edge in millimetres
};

double tickWidth(MarkKind kind) {
    return kind == MarkKind::trimLine ? 0.5 : 0.2;
}

// Stretches of the stick on one sheet.
struct Part {
    double from_mm = 0;  // along the stick
    double left_mm = 0;  // where that lies on the sheet
    double width_mm = 0;

    double xOf(double along_mm) const { return left_mm + along_mm - from_mm; }
    bool holds(double along_mm) const { return along_mm >= from_mm && along_mm <= from_mm + width_mm; }
};

// A mark's words beside a leader that runs on from its tick: in the first row, to the right or left, where both words
// and leader meet nothing.
bool placeFlag(Sheet& sheet, Room& room, const Edge& edge, double x_mm, const QString& text, bool bold, int rows) {
    const double width = widthOf(text, labelSize_mm, bold);
    for (int row = 0; row < rows; ++row) {
        const double near = edge.y_mm + edge.inwards * (stickTick_mm + 0.4 + row * row_mm);
        const double far = near + edge.inwards * row_mm;
        const QRectF leader =
            QRectF(QPointF(x_mm - 0.4, edge.y_mm + edge.inwards * stickTick_mm), QPointF(x_mm + 0.4, far)).normalized();
        if (room.meetsBox(leader)) continue;
        for (const double side : {1.0, -1.0}) {
            const double from = x_mm + side * 0.9;
            const QRectF box = QRectF(QPointF(from, near), QPointF(from + side * (width + 0.6), far)).normalized();
            if (room.meetsBox(box) || !room.within().contains(box)) continue;
            addLine(sheet, leader.center() - QPointF(0, leader.height() / 2),
                    leader.center() + QPointF(0, leader.height() / 2), 0.12);
            addWords(sheet, text, {side > 0 ? from : from - width, std::max(near, far) - 0.9}, labelSize_mm, Lean::left,
                     bold);
            room.addBox(box);
            room.addBox(leader);
            return true;
        }
    }
    return false;
}

// Marks in order along the edge, those at one place made one: a scarf's feather end lies on its trim line.
void putInOrder(Edge& edge) {
    std::stable_sort(edge.marks.begin(), edge.marks.end(),
                     [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<std::pair<double, Mark>> apart;
    for (const auto& mark : edge.marks) {
        if (apart.empty() || mark.first - apart.back().first > samePlace_mm) {
            apart.push_back(mark);
            continue;
        }
        Mark& kept = apart.back().second;
        kept.name += ", " + mark.second.name;
        if (kept.number == 0) kept.number = mark.second.number;
        if (mark.second.kind == MarkKind::trimLine) kept.kind = MarkKind::trimLine;
    }
    edge.marks = std::move(apart);
}

// Draws the edge, its ticks and their names; false when some marks stand too close to be named.
bool drawEdge(Sheet& sheet, Room& room, const Edge& edge, const Part& part, double stickFrom_mm, double stickTo_mm,
              int rows, const units::Display& display) {
    const double from = std::max(stickFrom_mm, part.from_mm);
    const double to = std::min(stickTo_mm, part.from_mm + part.width_mm);
    addLine(sheet, {part.xOf(from), edge.y_mm}, {part.xOf(to), edge.y_mm}, 0.3);
    bool all = true;
    // From the right, so that a crowd of flags steps down like a stair.
    for (auto mark = edge.marks.rbegin(); mark != edge.marks.rend(); ++mark) {
        if (!part.holds(mark->first)) continue;
        const double x = part.xOf(mark->first);
        addLine(sheet, {x, edge.y_mm}, {x, edge.y_mm + edge.inwards * stickTick_mm}, tickWidth(mark->second.kind));
        const bool bold = mark->second.number > 0;
        const QString distance = lengthText(units::fromMillimetres(mark->first), display);
        if (placeFlag(sheet, room, edge, x, mark->second.name + "  " + distance, bold, rows)) continue;
        if (placeFlag(sheet, room, edge, x, mark->second.name, bold, rows)) continue;
        const bool numbered = mark->second.number > 0;
        all = (numbered && placeFlag(sheet, room, edge, x, QString::number(mark->second.number), bold, rows)) && all;
    }
    return all;
}

// A scale along the middle, by which the joined parts can be checked with a tape.
void drawScale(Sheet& sheet, const Room& room, const Part& part, double y_mm, double stickFrom_mm, double stickTo_mm,
               const units::Display& display) {
    const double from = std::max(stickFrom_mm, part.from_mm);
    const double to = std::min(stickTo_mm, part.from_mm + part.width_mm);
    addLine(sheet, {part.xOf(from), y_mm}, {part.xOf(to), y_mm}, 0.12);
    const double step = units::toMillimetres(gridStep_m(display));
    for (double i = std::ceil(from / step); i * step <= to; ++i) {
        const double x = part.xOf(i * step);
        addLine(sheet, {x, y_mm - 1.2}, {x, y_mm + 1.2}, 0.12);
        const Words words{lengthText(i * gridStep_m(display), display), {x, y_mm + 4}, 2.4, Lean::centre};
        if (room.within().contains(extent(words)) && !room.meetsBox(extent(words))) sheet.words.push_back(words);
    }
}

void drawInstructions(Sheet& sheet, const QRectF& box, const model::Piece& piece, bool allNamed) {
    double y = box.top();
    const auto paragraph = [&](const QString& text, double size, bool bold = false) {
        if (y < box.bottom())
            y = addParagraph(sheet, {box.left(), y, box.width(), box.bottom() - y}, text, size, bold) + 1.4;
    };
    paragraph("Measure the check squares first.", 3, true);
    paragraph(
        "Lay the parts over each other, cross upon cross, letter upon letter, and fasten them along a straight "
        "edge. Cut along both long edges. Both edges count from the start trim line.",
        2.9);
    paragraph("Upper edge: along the outside of the stack, on the outermost strip. Lower edge: along the " +
                  describesName(piece.line.describes) +
                  " of the stack, the line as it was measured. "
                  "The two differ wherever the piece bends.",
              2.9);
    if (!allNamed)
        paragraph("Some marks stand too close together to be named here; the station table names them all.", 2.9, true);
    paragraph(bentStackCaution(), 2.4);
    paragraph(localRulesCaution(), 2.4);
}

}  // namespace

std::vector<Sheet> storyStick(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    requireRoom(page);
    const QRectF& area = page.area;
    const double height = std::min(area.height() - checkSquareInches_mm - 2 * gap_mm, greatestHeight_mm);
    const QRectF stick(area.left(), area.top(), area.width(), height);
    const double middle = stick.center().y();
    const int rows = static_cast<int>((height / 2 - middleHalf_mm - stickTick_mm - 0.4) / row_mm);

    Edge outside{stick.top(), 1, {}};
    Edge along{stick.bottom(), -1, {}};
    for (const Mark& mark : marksOf(piece, plan)) {
        const bool onForm = mark.kind == MarkKind::post || mark.kind == MarkKind::scarfFeather;
        if (!onForm) outside.marks.push_back({units::toMillimetres(mark.alongOutside_m), mark});
        if (mark.kind != MarkKind::scarfHeel) along.marks.push_back({units::toMillimetres(mark.at_m), mark});
    }
    putInOrder(outside);
    putInOrder(along);
    const double from = std::min(outside.marks.front().first, along.marks.front().first) - beyondEnds_mm;
    const double to = std::max(outside.marks.back().first, along.marks.back().first) + beyondEnds_mm;

    const double pitch = area.width() - overlap_mm;
    const double needed = std::max(1.0, std::ceil((to - from - overlap_mm) / pitch));
    requireFewSheets(needed, "Story stick");
    const int count = static_cast<int>(needed);

    std::vector<Sheet> sheets;
    for (int i = 0; i < count; ++i) {
        Sheet sheet;
        sheet.page = page;
        const Part part{from + i * pitch, area.left(), area.width()};
        sheet.name = QString("part %1 of %2 from the start").arg(i + 1).arg(count);
        Room room(stick.adjusted(0.5, 0, -0.5, 0));
        addBox(sheet, stick, 0.1);

        for (const int seam : {i - 1, i}) {
            if (seam < 0 || seam >= count - 1) continue;
            const double x = part.xOf(from + (seam + 1) * pitch + overlap_mm / 2);
            const double half = middleHalf_mm / 2;
            addJoinCross(sheet, {x, middle - half}, seamLetter(seam) + "1");
            addJoinCross(sheet, {x, middle + half}, seamLetter(seam) + "2");
            room.addBox(joinCrossBox({x, middle - half}));
            room.addBox(joinCrossBox({x, middle + half}));
        }
        const double textLeft = area.left() + overlap_mm + 2;
        addWords(sheet, "▲ along the outside of the stack", {textLeft, middle - middleHalf_mm + 3.5}, 2.6);
        addWords(sheet, "▼ along the line (" + describesName(piece.line.describes) + ")",
                 {textLeft, middle + middleHalf_mm - 1.2}, 2.6);
        drawScale(sheet, room, part, middle, from, to, plan.display);
        const bool outsideNamed = drawEdge(sheet, room, outside, part, from, to, rows, plan.display);
        const bool alongNamed = drawEdge(sheet, room, along, part, from, to, rows, plan.display);

        const double below = area.bottom() - checkSquareInches_mm;
        addCheckSquares(sheet, area.bottomLeft());
        const double beside = area.left() + checkSquareInches_mm + 3 * gap_mm;
        sheet.title = QRectF(QPointF(beside, area.bottom() - titleHeight_mm), area.bottomRight());
        drawInstructions(sheet, QRectF(QPointF(beside, below), QPointF(area.right(), sheet.title.top() - gap_mm)),
                         piece, outsideNamed && alongNamed);
        sheets.push_back(std::move(sheet));
    }
    return sheets;
}

}  // namespace fayline::app::paper
