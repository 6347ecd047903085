#include "app/paper/papers.hpp"

#include <QBuffer>
#include <QDir>
#include <QLocale>
#include <QPainter>
#include <QPdfWriter>
#include <QPrinter>
#include <QSaveFile>
#include <QSettings>
#include <QUuid>
#include <algorithm>
#include <atomic>

#include "app/paper/batch_cards.hpp"
#include "app/paper/closing_sheet.hpp"
#include "app/paper/cut_list.hpp"
#include "app/paper/drawing.hpp"
#include "app/paper/file_names.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/full_size.hpp"
#include "app/paper/props_sheet.hpp"
#include "app/paper/run_sheet.hpp"
#include "app/paper/sheet.hpp"
#include "app/paper/station_table.hpp"
#include "app/paper/story_stick.hpp"
#include "core/math/count.hpp"
#include "core/plan/shop.hpp"
#include "core/plan/study/deepen.hpp"
#include "core/units/input_error.hpp"
#include "core/units/units.hpp"

namespace fayline::app {

namespace {

constexpr int dotsPerInch = 1200;
const QString paperSizeKey = QStringLiteral("paper/size");
const QString a4Word = QStringLiteral("A4");
const QString letterWord = QStringLiteral("letter");
constexpr double margin_mm = 12.7;  // half an inch: wider than the unprintable edge of common printers

double dotsPerMillimetre(int dots) {
    return dots * units::fromMillimetres(1) / units::inch_m;
}

bool isLying(const paper::Page& page) {
    return page.width_mm > page.height_mm;
}

// Without the names of boat, piece and paper.
std::vector<paper::Sheet> sheetsOf(Paper kind, const model::Piece& piece, const plan::Plan& plan,
                                   const std::vector<wood::Species>& species, const paper::Page& page) {
    const paper::Page upright = isLying(page) ? paper::turned(page) : page;
    const paper::Page lying = isLying(page) ? page : paper::turned(page);
    switch (kind) {
        case Paper::stationTable:
            return paper::stationTable(piece, plan, species, upright);
        case Paper::storyStick:
            return paper::storyStick(piece, plan, lying);
        case Paper::line:
            return paper::fullSize(paper::lineDrawing(piece, plan), page);
        case Paper::form:
            return paper::fullSize(paper::formDrawing(piece, plan), page);
        case Paper::closing:
            return paper::closingSheet(piece, plan, upright);
        case Paper::props:
            return paper::propsSheet(piece, plan, upright);
        case Paper::batches:
            return paper::batchCards(piece, plan, upright);
        case Paper::run:
            return paper::runSheet(piece, plan, upright);
        case Paper::cutList:
            return paper::cutList(piece, plan, lying);
        case Paper::buying:
            return paper::buyingList(piece, plan, species, upright);
    }
    return {};
}

std::vector<paper::Sheet> sheetsOf(Paper kind, const model::Boat& boat, const model::Piece& piece,
                                   const plan::Plan& plan, const paper::Page& page) {
    std::vector<paper::Sheet> sheets = sheetsOf(kind, piece, plan, plan::shopOf(boat).species, page);
    const bool toScale = kind == Paper::storyStick || kind == Paper::line || kind == Paper::form;
    paper::nameSheets(sheets, {QString::fromStdString(boat.name), QString::fromStdString(piece.name),
                               paperName(kind) + (toScale ? ", scale 1 : 1" : "")});
    return sheets;
}

// Paints `sheet` on a device whose origin is the paper's upper left corner, turned where the sheet was laid out for
// the paper lying the other way.
void paintSheet(const paper::Sheet& sheet, QPainter& painter, const paper::Page& page, double dotsX, double dotsY) {
    painter.save();
    painter.scale(dotsX, dotsY);
    if (isLying(sheet.page) != isLying(page)) {
        // The inverse of paper::turned: (x, y) of the turned sheet is (width - y, x) of the paper.
        painter.translate(page.width_mm, 0);
        painter.rotate(90);
    }
    paper::paint(sheet, painter);
    painter.restore();
}

// Blanks what stands between each `from` and the next `to` after it, both included.
void blank(QByteArray& pdf, const QByteArray& from, const QByteArray& to) {
    for (qsizetype at = pdf.indexOf(from); at >= 0; at = pdf.indexOf(from, at + 1)) {
        const qsizetype end = pdf.indexOf(to, at + from.size());
        if (end >= 0) std::fill(pdf.begin() + at, pdf.begin() + end + to.size(), ' ');
    }
}

// The file names the second at which it was written; without it the same plan gives the same bytes.
void removeClock(QByteArray& pdf) {
    for (const char* const date : {"/CreationDate", "/ModDate"}) blank(pdf, date, ")");
    for (const char* const date : {"xmp:CreateDate", "xmp:ModifyDate", "xmp:MetadataDate"})
        blank(pdf, QByteArray(date) + "=\"", "\"");
}

QByteArray pdfOf(const std::vector<paper::Sheet>& sheets, const QString& title, const QPageLayout& layout,
                 const std::atomic<bool>& stop) {
    QByteArray pdf;
    QBuffer buffer(&pdf);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(dotsPerInch);
        writer.setCreator("Fayline");
        writer.setTitle(title);
#if QT_VERSION >= QT_VERSION_CHECK(6, 8, 0)
        writer.setDocumentId(QUuid::createUuidV5(QUuid(), title));  // else a new one each time
#endif
        // Each file lies as its sheets do, so that they can be read on a screen.
        const bool lying = isLying(sheets.front().page);
        QPageLayout full(layout.pageSize(), layout.orientation(), QMarginsF());
        full.setMode(QPageLayout::FullPageMode);
        if (lying != isLying(paper::pageOf(full))) {
            full.setOrientation(layout.orientation() == QPageLayout::Portrait ? QPageLayout::Landscape
                                                                              : QPageLayout::Portrait);
        }
        writer.setPageLayout(full);
        QPainter painter(&writer);
        const double dots = dotsPerMillimetre(dotsPerInch);
        for (std::size_t i = 0; i < sheets.size() && !stop; ++i) {
            if (i > 0) writer.newPage();
            paintSheet(sheets[i], painter, sheets.front().page, dots, dots);
        }
    }
    removeClock(pdf);
    return pdf;
}

void write(const QString& fileName, const QByteArray& pdf) {
    QSaveFile file(fileName);
    const bool written = file.open(QIODevice::WriteOnly) && file.write(pdf) == pdf.size() && file.commit();
    if (written) return;
    throw units::InputError(fileName.toStdString(), "it cannot be written (" + file.errorString().toStdString() + ")",
                            "choose a folder that can be written to");
}

QString fileEnding(Paper kind) {
    return "-" + paperName(kind).toLower().replace(' ', '-') + ".pdf";
}

}  // namespace

QString paperName(Paper paper) {
    switch (paper) {
        case Paper::stationTable:
            return "Station table";
        case Paper::storyStick:
            return "Story stick";
        case Paper::line:
            return "Full-size line";
        case Paper::form:
            return "Full-size form";
        case Paper::closing:
            return "Closing sheet";
        case Paper::props:
            return "Props and screws";
        case Paper::batches:
            return "Batch cards";
        case Paper::run:
            return "Run sheet";
        case Paper::cutList:
            return "Cut list";
        case Paper::buying:
            return "Buying list";
    }
    return {};
}

std::vector<Paper> allPapers() {
    return {Paper::stationTable, Paper::storyStick, Paper::line, Paper::form,    Paper::closing,
            Paper::props,        Paper::batches,    Paper::run,  Paper::cutList, Paper::buying};
}

std::vector<Paper> papersOf(const model::Piece& piece, bool boatHasBoards) {
    std::vector<Paper> papers = allPapers();
    if (piece.holding.stations.empty()) std::erase(papers, Paper::closing);
    if (!paper::hasProps(piece)) std::erase(papers, Paper::props);
    if (piece.stock.boards.empty() && piece.stock.buy.empty() && !boatHasBoards) std::erase(papers, Paper::cutList);
    if (piece.stock.buy.empty()) std::erase(papers, Paper::buying);
    if (!paper::isGlued(piece)) {
        std::erase(papers, Paper::batches);
        std::erase(papers, Paper::run);
    }
    return papers;
}

QPageSize::PageSizeId paperSize() {
    const QString chosen = QSettings().value(paperSizeKey).toString();
    if (chosen == letterWord) return QPageSize::Letter;
    if (chosen == a4Word) return QPageSize::A4;
    return QLocale().measurementSystem() == QLocale::ImperialUSSystem ? QPageSize::Letter : QPageSize::A4;
}

bool setPaperSize(QPageSize::PageSizeId size) {
    if (size != QPageSize::A4 && size != QPageSize::Letter) return false;
    QSettings().setValue(paperSizeKey, size == QPageSize::Letter ? letterWord : a4Word);
    return true;
}

QPageLayout defaultPageLayout() {
    return {QPageSize(paperSize()), QPageLayout::Portrait, QMarginsF(margin_mm, margin_mm, margin_mm, margin_mm),
            QPageLayout::Millimeter};
}

QStringList writePapers(const model::Boat& boat, const QString& folder, const QPageLayout& layout) {
    const std::atomic<bool> goOn = false;
    return *writePapers(boat, folder, layout, {goOn, nullptr});
}

std::optional<QStringList> writePapers(const model::Boat& boat, const QString& folder, const QPageLayout& layout,
                                       const PaperWatch& watch) {
    const paper::Page page = paper::pageOf(layout);
    const plan::Shop shop = plan::shopOf(boat);
    QStringList pieceNames;
    int count = 0;
    for (const model::Piece& piece : boat.pieces) {
        pieceNames << QString::fromStdString(piece.name);
        count += math::countOf(papersOf(piece, !boat.boards.empty()));
    }
    const QStringList stems = paper::fileStems(pieceNames);

    // Everything is made before anything is written: a piece that cannot be planned leaves no half a set behind.
    std::vector<std::pair<QString, QByteArray>> files;
    for (std::size_t i = 0; i < boat.pieces.size(); ++i) {
        const model::Piece& piece = boat.pieces[i];
        try {
            const std::optional<plan::Plan> live = plan::makePlan(piece, shop, nullptr, watch.stop);
            if (!live) return std::nullopt;
            const std::optional<plan::Plan> plan = plan::deepen(piece, shop, *live, watch.stop);
            if (!plan) return std::nullopt;
            for (const Paper kind : papersOf(piece, !boat.boards.empty())) {
                const QString title = pieceNames[static_cast<int>(i)] + ", " + paperName(kind).toLower();
                const QByteArray pdf = pdfOf(sheetsOf(kind, boat, piece, *plan, page), title, layout, watch.stop);
                if (watch.stop) return std::nullopt;
                files.emplace_back(stems[static_cast<int>(i)] + fileEnding(kind), pdf);
                if (watch.onStep) watch.onStep(math::countOf(files), count);
            }
        } catch (const units::InputError& error) {
            throw error.within("pieces[" + std::to_string(i) + "].");
        }
    }
    const QDir into(folder);
    if (!into.mkpath(".")) {
        throw units::InputError(folder.toStdString(), "it is not a folder and cannot be made one",
                                "name a folder that can be written to");
    }
    QStringList names;
    for (const auto& [name, pdf] : files) {
        if (watch.stop) return std::nullopt;
        write(into.filePath(name), pdf);
        names << name;
    }
    return names;
}

int sheetCount(Paper kind, const model::Piece& piece, const plan::Plan& plan, const std::vector<wood::Species>& species,
               const QPageLayout& layout) {
    return math::countOf(sheetsOf(kind, piece, plan, species, paper::pageOf(layout)));
}

void printPaper(Paper kind, const model::Boat& boat, const model::Piece& piece, const plan::Plan& plan,
                QPrinter& printer, const PaperWatch* watch) {
    const paper::Page page = paper::pageOf(printer.pageLayout());
    const std::vector<paper::Sheet> sheets = sheetsOf(kind, boat, piece, plan, page);
    const bool ranged = printer.printRange() == QPrinter::PageRange && printer.fromPage() > 0;
    const std::size_t from = ranged ? static_cast<std::size_t>(printer.fromPage() - 1) : 0;
    const std::size_t to = ranged && printer.toPage() > 0
                               ? std::min(sheets.size(), static_cast<std::size_t>(printer.toPage()))
                               : sheets.size();
    QPainter painter(&printer);
    if (!painter.isActive()) {
        throw units::InputError(printer.printerName().toStdString(), "the printer does not answer",
                                "choose another printer, or write the papers as PDF files");
    }
    // Places count from the paper's corner, a printer's from its margins unless it was set up otherwise. The printer
    // stays as it was set up: a preview looks at that once more when all is painted.
    const QPoint origin =
        printer.fullPage() ? QPoint() : printer.pageLayout().paintRectPixels(printer.resolution()).topLeft();
    for (std::size_t i = from; i < to; ++i) {
        if (watch && watch->stop) {
            printer.abort();
            return;
        }
        if (watch && watch->onStep) watch->onStep(static_cast<int>(i - from), static_cast<int>(to - from));
        if (i > from) printer.newPage();
        painter.resetTransform();
        painter.translate(-origin);
        paintSheet(sheets[i], painter, page, dotsPerMillimetre(printer.logicalDpiX()),
                   dotsPerMillimetre(printer.logicalDpiY()));
    }
}

}  // namespace fayline::app
