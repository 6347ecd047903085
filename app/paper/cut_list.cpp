#include "app/paper/cut_list.hpp"

#include <algorithm>
#include <map>

#include "app/look/text.hpp"
#include "app/paper/bench_figures.hpp"
#include "app/paper/frame.hpp"
#include "app/paper/listing.hpp"
#include "app/paper/marks.hpp"
#include "core/math/count.hpp"
#include "core/plan/findings/wording.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/units/units.hpp"

namespace fayline::app::paper {

namespace {

constexpr double figures_mm = 4.94;  // 14 point
constexpr double letters_mm = 3.2;   // on the drawn boards
constexpr double laneWanted_mm = 5;  // of the thinnest lane drawn
constexpr double boardMost_mm = 130;

QString boardName(const plan::BoardCuts& board) {
    QString name = QString::fromStdString(board.name);
    if (board.board.count > 1 || board.toBuy) name += QString(" no. %1").arg(board.number);
    return name;
}

QString stripName(const plan::SawnPart& part) {
    QString name = QString::number(part.place);
    if (part.parts > 1) name += QChar('a' + std::min(part.part - 1, 25));
    return part.piece.empty() ? name : QString::fromStdString(part.piece) + " " + name;
}

double laneOf(const plan::BoardCuts& board, const plan::SawnPart& part) {
    return board.ofFace ? part.deepTo_m - part.deepFrom_m : part.acrossTo_m - part.acrossFrom_m;
}

double wideOf(const plan::BoardCuts& board, const plan::SawnPart& part) {
    return board.ofFace ? part.acrossTo_m - part.acrossFrom_m : part.deepTo_m - part.deepFrom_m;
}

QString endsText(const plan::SawnPart& part) {
    if (part.scarfAtStart && part.scarfAtEnd) return "scarf both";
    if (part.scarfAtStart) return "scarf start";
    return part.scarfAtEnd ? "scarf end" : "square";
}

QString remarkOf(const plan::SawnPart& part) {
    QStringList all;
    if (part.spare) all << "spare";
    if (part.faulty) all << "faulty";
    if (part.lost)
        all << "LOST";
    else if (part.cut)
        all << "cut";
    return all.join(", ");
}

Table cutTable(const model::Piece& piece, const plan::Plan& plan, const plan::StockStudy& study) {
    const units::Display& display = plan.display;
    Table table;
    table.title = "Strip by strip, lengths in " + lengthHead(display);
    table.size_mm = figures_mm;
    table.columns = {{"Cut", {}, Lean::left},   {"Strip", {}, Lean::left}, {"Board", "rip", Lean::left},
                     {"Rip at", "saw"},         {"Planed", "to"},          {"Rip width"},
                     {"From", "board's start"}, {"Length", "with scarfs"}, {"Ends", "on the board", Lean::left},
                     {"Note", {}, Lean::left}};
    for (const plan::BoardCuts& board : study.boards) {
        for (const plan::SawnPart& part : board.parts) {
            if (part.lost) continue;
            const double lane_m = laneOf(board, part);
            table.rows.push_back({Cell{{}, {}, false, !part.cut}, textCell(stripName(part), true),
                                  textCell(boardName(board), false, QString("rip %1").arg(part.rip)),
                                  textCell(inOnePiece(thicknessText(lane_m, display)), true),
                                  textCell(inOnePiece(thicknessText(lane_m - 2 * piece.stock.planing_m, display))),
                                  textCell(inOnePiece(thicknessText(wideOf(board, part), display))),
                                  lengthCell(part.from_m, display), lengthCell(part.length_m, display, true),
                                  textCell(endsText(part)), textCell(remarkOf(part))});
        }
    }
    return table;
}

// One board from above, or from its edge where it is resawn from its face: lengths to one scale, widths to another.
class DrawnBoard {
public:
    DrawnBoard(const plan::BoardCuts& board, double along, double across, const units::Display& display)
        : board_(board), along_(along), across_(across), display_(display) {
        for (const plan::SawnPart& part : board.parts) {
            const bool known = std::ranges::any_of(
                columns_, [&](double from_m) { return std::abs(from_m - part.acrossFrom_m) < 2e-5; });
            if (board.ofFace && !known) columns_.push_back(part.acrossFrom_m);
        }
        std::ranges::sort(columns_);
    }

    double height() const { return head_mm + columnHeight() * columnCount() + gap_mm * (columnCount() - 1) + gap_mm; }

    void draw(Sheet& sheet, const QRectF& box) const {
        addWords(sheet, title(), {box.left(), box.top() + 4}, 3.8, Lean::left, true);
        const double length = board_.board.length_m * along_;
        for (int i = 0; i < columnCount(); ++i) {
            const QRectF whole(box.left(), box.top() + head_mm + i * (columnHeight() + gap_mm), length, columnHeight());
            addBox(sheet, whole, 0.35);
            drawBad(sheet, whole);
        }
        for (const plan::SawnPart& part : board_.parts) drawPart(sheet, box, part);
    }

private:
    static constexpr double head_mm = 6.5;

    int columnCount() const { return std::max(1, math::countOf(columns_)); }
    double columnHeight() const { return (board_.ofFace ? board_.board.thickness_m : board_.board.width_m) * across_; }

    QString title() const {
        QString words =
            QString("Board %1: %2 x %3 x %4")
                .arg(boardName(board_), lengthText(board_.board.length_m, display_),
                     thicknessText(board_.board.width_m, display_), thicknessText(board_.board.thickness_m, display_));
        words += board_.ofFace ? ", seen from its edge: resawn" : ", seen from above: ripped";
        if (board_.toBuy) words += ", to buy";
        return words + QString(", %1 % waste").arg(std::lround(100 * board_.waste));
    }

    // Hatched.
    void drawBad(Sheet& sheet, const QRectF& whole) const {
        for (const model::BadStretch& bad : board_.board.bad) {
            QRectF place(whole.left() + bad.from_m * along_, whole.top(), (bad.to_m - bad.from_m) * along_,
                         whole.height());
            if (!board_.ofFace) {
                place.setTop(whole.top() + bad.acrossFrom_m.value_or(0) * across_);
                place.setBottom(whole.top() + bad.acrossTo_m.value_or(board_.board.width_m) * across_);
            }
            place = place.intersected(whole);
            addBox(sheet, place, 0.2);
            constexpr double step = 2;
            for (double at = place.left() - place.height() + step; at < place.right(); at += step) {
                const double from = std::max(at, place.left());
                const double to = std::min(at + place.height(), place.right());
                if (to > from)
                    addLine(sheet, {from, place.bottom() - (from - at)}, {to, place.bottom() - (to - at)}, 0.1);
            }
        }
    }

    void drawPart(Sheet& sheet, const QRectF& box, const plan::SawnPart& part) const {
        double top = box.top() + head_mm;
        if (board_.ofFace) {
            const auto column = std::ranges::find_if(
                columns_, [&](double from_m) { return std::abs(from_m - part.acrossFrom_m) < 2e-5; });
            top +=
                static_cast<double>(column - columns_.begin()) * (columnHeight() + gap_mm) + part.deepFrom_m * across_;
        } else {
            top += part.acrossFrom_m * across_;
        }
        const QRectF place(box.left() + part.from_m * along_, top, part.length_m * along_,
                           laneOf(board_, part) * across_);
        addBox(sheet, place, 0.2);
        const double slant = std::min(4.0, place.width() / 4);
        if (part.scarfAtStart) addLine(sheet, place.bottomLeft(), place.topLeft() + QPointF(slant, 0), 0.2);
        if (part.scarfAtEnd) addLine(sheet, place.bottomRight() - QPointF(slant, 0), place.topRight(), 0.2);
        if (part.lost) {
            addLine(sheet, place.topLeft(), place.bottomRight(), 0.2);
            addLine(sheet, place.bottomLeft(), place.topRight(), 0.2);
        }
        const double size_mm = std::min(letters_mm, place.height() * 0.9);
        QString words = stripName(part);
        if (const QString remark = remarkOf(part); !remark.isEmpty()) words += " " + remark;
        addWords(sheet, fitted(words, size_mm, place.width() - 2 * slant - 2),
                 {place.left() + slant + 1.5, place.center().y() + size_mm * 0.35}, size_mm);
    }

    plan::BoardCuts board_;
    double along_;  // millimetres on paper a metre
    double across_;
    units::Display display_;
    std::vector<double> columns_;
};

void addBoards(Listing& listing, const plan::StockStudy& study, const units::Display& display, double width_mm) {
    double longest_m = 0;
    double thinnest_m = 1;
    double widest_m = 0;
    for (const plan::BoardCuts& board : study.boards) {
        if (board.parts.empty()) continue;
        longest_m = std::max(longest_m, board.board.length_m);
        widest_m = std::max(widest_m, board.ofFace ? board.board.thickness_m : board.board.width_m);
        for (const plan::SawnPart& part : board.parts) thinnest_m = std::min(thinnest_m, laneOf(board, part));
    }
    if (longest_m <= 0 || widest_m <= 0) return;
    const double along = width_mm / longest_m;
    const double across =
        std::clamp(laneWanted_mm / std::max(thinnest_m, 1e-4), along, std::max(along, boardMost_mm / widest_m));
    listing.blocks.push_back(Paragraph{"Boards with their rips", 3.8, true});
    listing.blocks.push_back(Paragraph{QString("Drawn with widths %1 times as large as lengths. Hatched: bad. Between "
                                               "rips lies the saw cut.")
                                           .arg(across / along, 0, 'f', 1),
                                       2.9});
    for (const plan::BoardCuts& board : study.boards) {
        if (board.parts.empty()) continue;
        const DrawnBoard drawn(board, along, across, display);
        listing.blocks.push_back(
            Picture{drawn.height(), [drawn](Sheet& sheet, const QRectF& box) { drawn.draw(sheet, box); }});
    }
}

std::vector<Paragraph> cutNotes(const plan::StockStudy& study) {
    std::vector<Paragraph> notes;
    if (!study.missing.empty()) {
        QStringList places;
        for (const int place : study.missing) places << QString::number(place);
        notes.push_back({"NOT on any board: strip " + places.join(", ") + ".", 3.4, true});
    }
    for (const plan::ScarfPlace& scarf : study.scarfs) {
        if (scarf.inTightest)
            notes.push_back(
                {QString("Strip %1 is scarfed in the tightest third of the bend.").arg(scarf.place), 2.9, true});
    }
    notes.push_back(
        {"Keep strips of one board together, in order and the same way round, so that the grain runs on.", 2.9});
    notes.push_back(
        {"A spare is a strip more. Faulty: a bad stretch lies where the strip is trimmed or planed away.", 2.4});
    notes.push_back(
        {"Thin strips catch and fly: use a push stick, a splitter and a zero-clearance throat. Local "
         "safety rules come first.",
         2.7, true});
    return notes;
}

}  // namespace

std::vector<Sheet> cutList(const model::Piece& piece, const plan::Plan& plan, const Page& page) {
    Listing listing;
    listing.name = "to the saw";
    if (!plan.stock) {
        listing.blocks.push_back(
            Paragraph{"The boards are still being laid out: wait a moment, then print again.", 3.8, true});
        return layOut(listing, page);
    }
    const plan::StockStudy& study = *plan.stock;
    listing.notes = cutNotes(study);
    listing.laterNotes = {listing.notes.back()};
    if (study.boardsUsed == 0) {
        listing.blocks.push_back(Paragraph{"No strip is laid out on a board.", 3.8, true});
        return layOut(listing, page);
    }
    listing.blocks.push_back(cutTable(piece, plan, study));
    addBoards(listing, study, plan.display, page.area.width() - 2);
    return layOut(listing, page);
}

std::vector<Sheet> buyingList(const model::Piece& piece, const plan::Plan& plan, const std::vector<wood::Species>& species,
                              const Page& page) {
    Listing listing;
    listing.name = "to the timber yard";
    if (!plan.stock) {
        listing.blocks.push_back(
            Paragraph{"The boards are still being laid out: wait a moment, then print again.", 3.8, true});
        return layOut(listing, page);
    }
    const plan::StockStudy& study = *plan.stock;
    const units::Display& display = plan.display;
    std::map<std::string, std::vector<const plan::BoardCuts*>> rows;
    for (const plan::BoardCuts& board : study.boards)
        if (board.toBuy && !board.parts.empty()) rows[board.name].push_back(&board);
    Table table;
    table.title = "Boards to buy, lengths in " + lengthHead(display);
    table.size_mm = figures_mm;
    table.columns = {{"Have", {}, Lean::left},
                     {"Count"},
                     {"Board", "wood", Lean::left},
                     {"Length"},
                     {"Width"},
                     {"Thick"},
                     {"Board feet", "m³"},
                     {"Price", "all of them"}};
    double total = 0;
    for (const auto& [name, boards] : rows) {
        const model::Board& one = boards.front()->board;
        const int count = math::countOf(boards);
        const double volume_m3 = count * plan::volumeOf(one);
        const double price = count * plan::priceOf(one);
        total += price;
        table.rows.push_back(
            {Cell{{}, {}, false, true}, textCell(QString::number(count), true),
             textCell(QString::fromStdString(name), true,
                      QString::fromStdString(plan::woodName(species, one.species))),
             lengthCell(one.length_m, display, true), textCell(inOnePiece(thicknessText(one.width_m, display)), true),
             textCell(inOnePiece(thicknessText(one.thickness_m, display)), true),
             textCell(numberText(study.boardFeet > 0 ? volume_m3 * study.boardFeet / study.volume_m3 : 0, 1), false,
                      numberText(volume_m3, 3)),
             textCell(price > 0 ? numberText(price, 2) : QString(units::noFigure))});
    }
    if (table.rows.empty()) {
        listing.blocks.push_back(Paragraph{study.missing.empty()
                                               ? "Nothing to buy: the boards on hand give every strip."
                                               : "Nothing that can be bought gives the strips that are missing.",
                                           3.8, true});
    } else {
        listing.blocks.push_back(std::move(table));
        if (total > 0) listing.blocks.push_back(Paragraph{"Together: " + numberText(total, 2), figures_mm, true});
    }
    if (!study.missing.empty())
        listing.blocks.push_back(
            Paragraph{QString("Still short: %1 of %2 strips.").arg(study.missing.size()).arg(study.stripsNeeded),
                      figures_mm, true});
    listing.notes = {
        {QString("Look for straight grain, no more than %1 moisture apart from the rest.").arg("5 %"), 2.9},
        {"Sizes are those of the list that you gave: measure each board, planed ones are smaller.", 2.4}};
    for (const model::Board& board : piece.stock.buy) {
        if (board.price > 0) {
            listing.notes.push_back({"Prices are those that you gave.", 2.4});
            break;
        }
    }
    listing.laterNotes = {listing.notes.front()};
    return layOut(listing, page);
}

}  // namespace fayline::app::paper
