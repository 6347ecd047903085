// Tables, paragraphs and pictures one below the other over as many sheets as they need, with notes at their foot
// and a rule for checking the printer's scale on each.
//
// Nothing is cut: words wrap, rows that do not fit go to the next sheet under a head of their own, a table whose words
// are too wide for the paper comes out smaller as a whole.
#pragma once

#include <functional>
#include <variant>

#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

struct Cell {
    QString text;
    QString below;  // on lines of its own, smaller
    bool bold = false;
    bool tick = false;  // an empty box to be ticked
};

struct Column {
    QString head;
    QString below;  // unit and the like
    Lean lean = Lean::right;
};

struct Table {
    QString title;
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;  // as many cells as columns in each
    double size_mm = 3.4;
};

struct Paragraph {
    QString text;
    double size_mm = 2.7;
    bool bold = false;
};

struct Picture {
    double height_mm = 0;
    std::function<void(Sheet& sheet, const QRectF& box)> draw;
};

using Block = std::variant<Table, Paragraph, Picture>;

struct Listing {
    QString name;  // of its sheets
    std::vector<Block> blocks;
    std::vector<Paragraph> notes;       // at the foot of the first sheet in two columns; what finds no room comes last
    std::vector<Paragraph> laterNotes;  // at the foot of the others; none: that a bent stack whips, and local rules
};

// The sheets, at least one, upright or as `page` lies.
// Throws InputError when the page is too small or more than mostSheets would be needed.
std::vector<Sheet> layOut(const Listing& listing, const Page& page);

}  // namespace fayline::app::paper
