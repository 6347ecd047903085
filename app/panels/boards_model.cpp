#include "app/panels/boards_model.hpp"

#include <QRegularExpression>

#include "app/panels/reading.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

namespace {

std::vector<model::Board>& boardsOnHand(model::Piece& piece) {
    return piece.stock.boards;
}
std::vector<model::Board>& boardsToBuy(model::Piece& piece) {
    return piece.stock.buy;
}

// "A" becomes "B", "Oak 9" becomes "Oak 10": a name that no other board has.
std::string nextName(const std::vector<model::Board>& boards, const std::string& like) {
    const auto isTaken = [&](const std::string& name) {
        return std::ranges::any_of(boards, [&](const model::Board& board) { return board.name == name; });
    };
    if (like.size() == 1 && like[0] >= 'A' && like[0] < 'Z') {
        for (char letter = static_cast<char>(like[0] + 1); letter <= 'Z'; ++letter) {
            if (!isTaken(std::string(1, letter))) return std::string(1, letter);
        }
    }
    std::string stem = like;
    while (!stem.empty() && stem.back() >= '0' && stem.back() <= '9') stem.pop_back();
    if (!stem.empty() && stem.size() == like.size()) stem += ' ';
    int number = static_cast<int>(boards.size()) + 1;
    while (isTaken(stem + std::to_string(number))) ++number;
    return stem + std::to_string(number);
}

std::array<double, 2> readFromTo(const QString& written, const units::Display& display) {
    const QStringList ends = written.split(QRegularExpression(QStringLiteral("\\s+to\\s+")));
    if (ends.size() != 2) {
        throw units::InputError("", "\"" + text(written.trimmed()) + "\" is not a stretch",
                                "give it as \"700 to 820\", or \"700 to 820 across 0 to 40\"; \";\" between several");
    }
    const std::array<double, 2> read{readLengthText(ends[0], display), readLengthText(ends[1], display)};
    if (read[1] < read[0]) {
        throw units::InputError("", "\"" + text(written.trimmed()) + "\" ends before it begins",
                                "give the lesser place first");
    }
    return read;
}

model::Board readBoard(const QString& line, const model::Board& like, const Shown& shown) {
    const QStringList cells = line.split(QRegularExpression(QStringLiteral("\\s*[\\t;]\\s*")));
    if (cells.size() < 5) {
        throw units::InputError("", "\"" + text(line.trimmed()) + "\" has " + std::to_string(cells.size()) + " columns",
                                "give name, count, length, width and thickness, then wood and price if you like");
    }
    model::Board board = like;
    board.kept = {};
    board.bad.clear();
    board.name = text(cells[0].trimmed());
    board.count = readWhole(cells[1]);
    board.length_m = readLengthText(cells[2], shown.display);
    board.width_m = readLengthText(cells[3], shown.display);
    board.thickness_m = readLengthText(cells[4], shown.display);
    if (cells.size() > 5 && !cells[5].trimmed().isEmpty())
        board.species = way::wood("give one of the woods by its name").read(cells[5], shown);
    if (cells.size() > 6 && !cells[6].trimmed().isEmpty()) board.price = readNumber(cells[6]);
    return board;
}

}  // namespace

QString writeBad(const std::vector<model::BadStretch>& bad, const units::Display& display) {
    QStringList all;
    for (const model::BadStretch& one : bad) {
        QString words = tr("%1 to %2").arg(writeLengthText(one.from_m, display), writeLengthText(one.to_m, display));
        if (one.acrossFrom_m || one.acrossTo_m) {
            words += tr(" across %1 to %2")
                         .arg(writeLengthText(one.acrossFrom_m.value_or(0), display),
                              one.acrossTo_m ? writeLengthText(*one.acrossTo_m, display) : tr("edge"));
        }
        all << words;
    }
    return all.join(QStringLiteral("; "));
}

std::vector<model::BadStretch> readBad(const QString& written, const units::Display& display) {
    std::vector<model::BadStretch> all;
    for (const QString& one : written.split(u';', Qt::SkipEmptyParts)) {
        if (one.trimmed().isEmpty()) continue;
        QStringList parts = one.split(QStringLiteral(" across "));
        model::BadStretch bad;
        const auto [from_m, to_m] = readFromTo(parts[0], display);
        bad.from_m = from_m;
        bad.to_m = to_m;
        if (parts.size() > 1 && parts[1].trimmed().endsWith(QStringLiteral("edge"))) {
            bad.acrossFrom_m =
                readLengthText(parts[1].split(QRegularExpression(QStringLiteral("\\s+to\\s+")))[0], display);
        } else if (parts.size() > 1) {
            const auto [acrossFrom_m, acrossTo_m] = readFromTo(parts[1], display);
            bad.acrossFrom_m = acrossFrom_m;
            bad.acrossTo_m = acrossTo_m;
        }
        all.push_back(bad);
    }
    return all;
}

BoardsModel::BoardsModel(Which which, QObject* parent)
    : ItemsModel(tr("board"), which == Which::onHand ? QStringLiteral("stock.boards") : QStringLiteral("stock.buy"),
                 which == Which::onHand ? &boardsOnHand : &boardsToBuy, nullptr, parent),
      which_(which) {
    ListColumn name = typed(&model::Board::name, way::name(),
                            {.name = tr("Board"), .widest = tr("Oak 12"), .change = tr("Name a board %2")});
    // Strips that are pinned to it or cut from it go by its name.
    if (which == Which::onHand) {
        name.read = [read = name.read](model::Piece& piece, int row, const QString& written, const Shown& shown) {
            const std::string before = piece.stock.boards[row].name;
            const QString reads = read(piece, row, written, shown);
            const std::string& after = piece.stock.boards[row].name;
            for (model::StripPin& pin : piece.stock.pins)
                if (pin.board == before) pin.board = after;
            for (model::StripCut& cut : piece.stock.cut)
                if (cut.board == before) cut.board = after;
            return reads;
        };
    }
    setColumns({name,
                typed(&model::Board::count, way::whole(),
                      {.name = tr("Count"),
                       .hint = which == Which::onHand ? tr("Boards of this size") : tr("How many can be had")}),
                typed(&model::Board::length_m, way::length(), {.name = tr("Length"), .widest = "12-11-7"}),
                typed(&model::Board::width_m, way::thickness(), {.name = tr("Width"), .widest = "11 15/16 in"}),
                typed(&model::Board::thickness_m, way::thickness(), {.name = tr("Thick"), .widest = "1 15/16 in"})});
}

void BoardsModel::addBoard(int like) {
    if (!hasPiece()) return;
    const int from = like >= 0 && like < rowCount() ? like : rowCount() - 1;
    model::Board board = from >= 0 ? items()[from] : model::Board{};
    if (from < 0 && !piece().stack.strips.empty()) board.species = piece().stack.strips.front().species;
    board.kept = {};
    board.bad.clear();
    board.count = which_ == Which::onHand ? 1 : std::max(board.count, 10);
    board.name = from >= 0 ? nextName(items(), board.name) : "A";
    insertItem(tr("Add a board"), from + 1, board);
}

void BoardsModel::paste(const QString& copied) {
    if (!hasPiece()) return;
    std::vector<model::Board> boards;
    model::Board like = items().empty() ? model::Board{} : items().back();
    if (items().empty() && !piece().stack.strips.empty()) like.species = piece().stack.strips.front().species;
    for (const QString& line : copied.split(QRegularExpression(QStringLiteral("[\\r\\n]+")), Qt::SkipEmptyParts)) {
        if (!line.trimmed().isEmpty()) boards.push_back(readBoard(line, like, shown()));
    }
    if (boards.empty()) throw units::InputError("", "nothing was copied", "copy one board a line");
    model::Piece after = piece();
    std::vector<model::Board>& all = which_ == Which::onHand ? boardsOnHand(after) : boardsToBuy(after);
    all.insert(all.end(), boards.begin(), boards.end());
    refuseImpossible(piece(), after);
    emit changeAsked({tr("Paste %n boards", nullptr, math::countOf(boards)), {}, after});
}

}  // namespace fayline::app
