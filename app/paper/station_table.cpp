#include "app/paper/station_table.hpp"

#include <algorithm>
#include <array>

#include "app/paper/bench_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/marks.hpp"
#include "app/paper/pull_table.hpp"
#include "app/paper/verdict_lines.hpp"
#include "core/plan/findings/line_wording.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/units/display.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double tableLetters_mm = 2.7;
constexpr double stationRow_mm = 4.6;
constexpr double head_mm = 12;
constexpr int lengthColumns = 4;  // along the line, along the outside, x, y

struct Row {
    QString number;
    QString name;
    std::array<double, lengthColumns> lengths_m;
};

std::vector<Row> rowsOf(const model::Piece& piece, const plan::Plan& plan) {
    std::vector<Row> rows;
    std::size_t station = 0;
    for (const Mark& mark : marksOf(piece, plan)) {
        const line::Place place = plan.line.fair.line.at(mark.at_m);
        line::Xy on{place.x_m, place.y_m};
        if (mark.kind == MarkKind::station) on = plan.holding.stations[station++].onLine;
        const QString name = mark.kind == MarkKind::station ? mark.name.section(' ', 1) : mark.name;
        rows.push_back({mark.number > 0 ? QString::number(mark.number) : QString(),
                        name,
                        {mark.at_m, mark.alongOutside_m, on.x_m, on.y_m}});
    }
    return rows;
}

// Where the columns end, counted from the table's left edge.
struct Columns {
    double number = 8;
    double name = 40;
    double each = 0;   // of one length
    bool both = true;  // display units beside millimetres

    Columns(double width, const units::Display& display) : both(display.lengths != units::LengthNotation::millimetres) {
        each = (width - name) / lengthColumns;
    }
};

void drawHead(Sheet& sheet, const QRectF& table, const Columns& columns, const model::Piece& piece,
              const units::Display& display) {
    const double left = table.left();
    addWords(sheet, "No.", {left + columns.number - 1, table.top() + 4}, tableLetters_mm, Lean::right, true);
    addWords(sheet, "Mark", {left + columns.number + 2, table.top() + 4}, tableLetters_mm, Lean::left, true);
    const QStringList names{"along the line", "along the outside", "x", "y"};
    for (int i = 0; i < lengthColumns; ++i) {
        const double right = left + columns.name + (i + 1) * columns.each - 1;
        addWords(sheet, names[i], {right, table.top() + 4}, tableLetters_mm, Lean::right, true);
        addWords(sheet, columns.both ? lengthUnit(display) + ",  mm" : "mm", {right, table.top() + 8.6}, 2.4,
                 Lean::right);
    }
    addWords(sheet, "line: " + describesName(piece.line.describes), {left + columns.number + 2, table.top() + 8.6},
             2.4);
    addLine(sheet, {left, table.top() + head_mm - 1.5}, {table.right(), table.top() + head_mm - 1.5}, 0.3);
}

void drawRow(Sheet& sheet, double left, double right, double base, const Columns& columns, const Row& row,
             const units::Display& display) {
    const bool station = !row.number.isEmpty();
    addWords(sheet, row.number, {left + columns.number - 1, base}, tableLetters_mm, Lean::right, true);
    addWords(sheet, row.name, {left + columns.number + 2, base}, tableLetters_mm, Lean::left, station);
    for (int i = 0; i < lengthColumns; ++i) {
        const double value_m = row.lengths_m[i];
        const double end = left + columns.name + (i + 1) * columns.each - 1;
        addWords(sheet, numberText(units::toMillimetres(value_m), 1), {end, base}, tableLetters_mm, Lean::right,
                 station && !columns.both);
        if (columns.both) {
            addWords(sheet, QString::fromStdString(units::writeLength(value_m, display.lengths)), {end - 15, base},
                     tableLetters_mm, Lean::right, station);
        }
    }
    addLine(sheet, {left, base + 1.4}, {right, base + 1.4}, 0.08);
}

QStringList summary(const model::Piece& piece, const plan::Plan& plan, const std::vector<wood::Species>& species) {
    const units::Display& display = plan.display;
    const auto both = [&](double length_m) {
        const QString text = lengthText(length_m, display);
        return display.lengths == units::LengthNotation::millimetres ? text
                                                                     : text + " (" + millimetresText(length_m) + ")";
    };
    QStringList lines;
    const double length_m = plan.line.fair.line.length();
    lines << "Line between the trim lines: " + both(length_m) + ".";
    if (radius_m(plan.line.tightest.curvature_per_m)) {
        lines << "Tightest radius of the line: " + both(plan::shownRadius(plan.line, display)) + " at " +
                     both(plan.line.tightest.at_m) + ".";
    } else {
        lines << QString("The line is straight.");
    }
    lines << QString("%1 strips, stack %2 deep at the tightest place:")
                 .arg(plan.stack.strips.size())
                 .arg(QString::fromStdString(units::writeThickness(plan.stack.depth_m, display)));
    for (std::size_t i = 0; i < piece.stack.strips.size(); ++i) {
        const model::Strips& strips = piece.stack.strips[i];
        const wood::Species* wood = wood::findSpecies(species, strips.species);
        double longest_m = 0;
        for (const laminate::Strip& strip : plan.stack.strips) {
            if (strip.group == static_cast<int>(i)) longest_m = std::max(longest_m, strip.cutLength_m);
        }
        QString line =
            QString("%1 of %2 %3, the longest cut %4%5.")
                .arg(strips.count)
                .arg(QString::fromStdString(units::writeThickness(strips.thickness_m, display)))
                .arg(wood ? QString::fromStdString(plan::woodName(*wood)) : QString::fromStdString(strips.species))
                .arg(both(longest_m))
                .arg(strips.sacrificial ? ", sacrificial" : "");
        lines << line;
    }
    lines << QString("Past the trim lines: %1 at the start, %2 at the end.")
                 .arg(both(piece.stack.runsPastStart_m))
                 .arg(both(piece.stack.runsPastEnd_m));
    return lines;
}

void drawBeside(Sheet& sheet, const QRectF& box, const QStringList& lines) {
    double y = box.top();
    const auto paragraph = [&](const QString& text, double size, bool bold = false) {
        if (y >= box.bottom()) return;
        y = addParagraph(sheet, {box.left(), y, box.width(), box.bottom() - y}, text, size, bold) + 1.1;
    };
    for (const QString& line : lines) paragraph(line, 2.7);
    paragraph(bentStackCaution(), 2.3);
    paragraph(localRulesCaution(), 2.3);
}

// Writes the verdict at the top of `box`; what is left of it, room for one row at least.
QRectF belowVerdict(Sheet& sheet, const QRectF& box, const plan::Plan& plan) {
    double top = box.top();
    const double bottom = box.bottom() - head_mm - stationRow_mm - 2 * gap_mm;
    for (const Paragraph& line : verdictLines(plan)) {
        top = addParagraph(sheet, {box.left(), top, box.width(), bottom - top}, line.text, line.size_mm, line.bold) +
              gap_mm / 4;
    }
    return {box.left(), top + gap_mm, box.width(), box.bottom() - top - gap_mm};
}

}  // namespace

std::vector<Sheet> stationTable(const model::Piece& piece, const plan::Plan& plan,
                                const std::vector<wood::Species>& species, const Page& page) {
    requireRoom(page);
    const QRectF& area = page.area;
    const double below = area.bottom() - titleHeight_mm - gap_mm - checkSquareInches_mm;
    const QRectF whole(area.left(), area.top(), area.width(), below - 2 * gap_mm - area.top());
    const Columns columns(whole.width(), plan.display);
    const std::vector<Row> rows = rowsOf(piece, plan);

    std::vector<Sheet> sheets;
    for (std::size_t first = 0; first < rows.size();) {
        Sheet sheet;
        sheet.page = page;
        sheet.title = QRectF(area.left(), area.bottom() - titleHeight_mm, area.width(), titleHeight_mm);
        const QRectF table = first == 0 ? belowVerdict(sheet, whole, plan) : whole;
        drawHead(sheet, table, columns, piece, plan.display);
        const int room = std::max(1, static_cast<int>((table.height() - head_mm) / stationRow_mm));
        const std::size_t last = std::min(rows.size(), first + static_cast<std::size_t>(room));
        sheet.name = QString("rows %1 to %2 of %3").arg(first + 1).arg(last).arg(rows.size());
        for (std::size_t i = first; i < last; ++i) {
            const double base = table.top() + head_mm + (static_cast<double>(i - first) + 0.6) * stationRow_mm;
            drawRow(sheet, table.left(), table.right(), base, columns, rows[i], plan.display);
        }
        addCheckSquares(sheet, {area.left(), below + checkSquareInches_mm});
        const double beside = area.left() + checkSquareInches_mm + 3 * gap_mm;
        drawBeside(sheet, QRectF(beside, below, area.right() - beside, checkSquareInches_mm),
                   first == 0 ? summary(piece, plan, species) : QStringList());
        sheets.push_back(std::move(sheet));
        first = last;
    }
    for (Sheet& sheet : pullTable(piece, plan, page)) sheets.push_back(std::move(sheet));
    return sheets;
}

}  // namespace fayline::app::paper
