// Everything that leaves on paper: table of stations and their pulls, closing sheet, props and screws, batch cards, run
// sheet, cut and buying list, story stick, full-size line and form, each sheet named, each with a square for checking
// the printer's scale.
#pragma once

#include <QPageLayout>
#include <QString>
#include <QStringList>
#include <atomic>
#include <functional>
#include <optional>
#include <vector>

#include "core/model/boat.hpp"
#include "core/plan/plan.hpp"

class QPrinter;

namespace fayline::app {

enum class Paper { stationTable, storyStick, line, form, closing, props, batches, run, cutList, buying };

QString paperName(Paper paper);  // "Story stick"
std::vector<Paper> allPapers();

// Those that a piece has something to put on: no closing sheet without stations, no props and screws without any,
// no batch cards and no run sheet where nothing is glued, no cut list without boards (of its own, to be bought, or the
// boat's), no buying list where nothing can be bought.
std::vector<Paper> papersOf(const model::Piece& piece, bool boatHasBoards = false);

// What follows the making of papers, in the thread that makes them: any thread will do, since Qt paints texts on PDF
// and printers in every thread of a program that has its QGuiApplication, and nothing here is a widget or a pixmap.
struct PaperWatch {
    const std::atomic<bool>& stop;                 // set: no more is wanted
    std::function<void(int done, int of)> onStep;  // papers or pages; may be empty
};

// Writes the papers that each piece of `boat` has as PDF files into `folder` (made if missing) and returns their names
// in order. `layout` gives page size and margins. Throws units::InputError when a piece cannot be planned or a file
// cannot be written. Stopped, it returns nothing; all is made before the first file is written, so that mostly none is.
std::optional<QStringList> writePapers(const model::Boat& boat, const QString& folder, const QPageLayout& layout,
                                       const PaperWatch& watch);
QStringList writePapers(const model::Boat& boat, const QString& folder, const QPageLayout& layout);  // never stopped

// The size of paper that all is laid out for: the one chosen last, kept in the settings; A4 or letter by the locale
// before that.
QPageSize::PageSizeId paperSize();
bool setPaperSize(QPageSize::PageSizeId size);  // false for any but A4 and letter: it then stays as it is

// That size upright, with margins that every printer keeps.
QPageLayout defaultPageLayout();

// How many sheets a paper of one piece takes on paper of that size. `plan` has every study, `species` are the boat's.
int sheetCount(Paper paper, const model::Piece& piece, const plan::Plan& plan,
               const std::vector<wood::Species>& species, const QPageLayout& layout);

// Prints one paper of one piece on `printer`, at its true size whatever the printer's resolution and whether its places
// count from the paper's corner or from its margins; leaves the printer as it is set up. `plan` has every study.
// Stopped by `watch`, the printing is aborted.
void printPaper(Paper paper, const model::Boat& boat, const model::Piece& piece, const plan::Plan& plan,
                QPrinter& printer, const PaperWatch* watch = nullptr);

}  // namespace fayline::app
