#include "app/panels/stock_panel.hpp"

#include <QApplication>
#include <QClipboard>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QSignalBlocker>
#include <QVBoxLayout>
#include <algorithm>

#include "app/look/theme.hpp"
#include "app/panels/boards_model.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/shed_line.hpp"
#include "app/panels/stock_picture.hpp"
#include "app/panels/stock_rows.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/model/shed.hpp"
#include "core/units/input_error.hpp"

namespace fayline::app {

StockPanel::StockPanel(QWidget* parent)
    : SectionedPanel(parent),
      answer_(new AnswerNote(plan::Question::stock, QStringLiteral("stock"), this)),
      boards_(new BoardsModel(BoardsModel::Which::onHand, this)),
      buy_(new BoardsModel(BoardsModel::Which::toBuy, this)),
      picture_(new StockPicture(this)) {
    setObjectName(QStringLiteral("stockPanel"));
    setAccessibleName(tr("Stock"));
    picture_->setObjectName(QStringLiteral("stockPicture"));

    makeBoards();
    QWidget* strip = makeStrip();
    makeCures();
    makeFigures();
    priceSection_ = addSection("priceHead", tr("Moisture and price"), false, {priceFields_}, [](const auto&) {});
    makeSawing();
    makeBuying();
    makeCut();

    layOut({answer_, boardsTable_, boardsUnread_, boardTools_, boardFields_, told_, picture_, strip});

    connect(picture_, &StockPicture::stripChosen, this, [this](int place) {
        choose(place);
        emit stripSelected(place <= (shown_ && shown_->plan ? math::countOf(shown_->plan->stack.strips) : 0) ? place
                                                                                                             : 0);
    });
    connect(picture_, &StockPicture::boardAsked, this,
            [this](int place, int board) { pin(place, drawn_[static_cast<std::size_t>(board)]); });
}

// Boards

NotebookTable* StockPanel::boardsTable(const char* object, const QString& name, BoardsModel* model, Words* unread) {
    using Of = BoardsModel;
    NotebookTable* table = typedTable(
        object, name, model, unread,
        {Of::nameColumn, Of::countColumn, Of::lengthColumn, Of::widthColumn, Of::thicknessColumn}, Of::nameColumn);
    table->setGrows(NotebookTable::Grows::byTabAndEnter);
    table->setMostRows(7);
    connect(table, &NotebookTable::pasteAsked, this, [model, unread] {
        try {
            model->paste(QApplication::clipboard()->text());
            unread->say({});
        } catch (const units::InputError& error) {
            unread->say(why(error));
        }
    });
    return table;
}

// Of the board at the cursor.
TypedFields<model::Board> StockPanel::boardFields(Fields* fields, NotebookTable* table, bool toBuy) {
    const auto board = [table, toBuy](model::Piece& piece) -> model::Board& {
        static model::Board none;
        std::vector<model::Board>& all = toBuy ? piece.stock.buy : piece.stock.boards;
        const auto row = static_cast<std::size_t>(std::max(table->currentIndex().row(), 0));
        return row < all.size() ? all[row] : none = {};
    };
    connect(table->selectionModel(), &QItemSelectionModel::currentRowChanged, this,
            [fields](const auto&) { fields->startAnew(); });
    return TypedFields<model::Board>(fields, "", board);
}

void StockPanel::addWood(const TypedFields<model::Board>& typed, const QString& object) {
    typed.add({object, tr("Wood"), {}, tr("Strips are cut from boards of their own wood only.")},
              &model::Board::species, way::wood("give one of the woods by its name"), {tr("Set the wood of a board")});
}

void StockPanel::addPrice(const TypedFields<model::Board>& typed, const QString& object) {
    typed.add({object, tr("Price"), {}, tr("In your own money.")}, &model::Board::price, way::number(1, 8),
              {tr("Set the price of a board")});
    typed.addChoice({object + QStringLiteral("Per"), tr("Price is for"), {}, tr("What that price buys.")},
                    &model::Board::pricePer, {tr("one board"), tr("a board foot"), tr("a cubic metre")},
                    {tr("Price by the board"), tr("Price by the board foot"), tr("Price by the cubic metre")});
}

void StockPanel::makeBoards() {
    boardsUnread_ = new Words(QStringLiteral("boardsUnread"), true, this);
    boardsTable_ = boardsTable("boards", tr("Boards on hand"), boards_, boardsUnread_);
    boardTools_ = rowTools(boardsTable_,
                           {"addBoard", tr("Add a board like this one (Insert)"),
                            [this] { boards_->addBoard(boardsTable_->currentIndex().row()); }},
                           {"removeBoard", tr("Remove the chosen boards (Delete)"),
                            [this] { boards_->removeBoards(boardsTable_->chosenRows()); }},
                           {{"pasteBoards", tr("Paste boards, one a line (Ctrl+V)"),
                             [this] { emit boardsTable_->pasteAsked(); }, "paste"}});
    boardFields_ = newFields();
    const auto typed = boardFields(boardFields_, boardsTable_, false);
    addWood(typed, QStringLiteral("boardWood"));
    const Way<std::vector<model::BadStretch>> bad{
        [](const std::vector<model::BadStretch>& all, const Shown& shown) { return writeBad(all, shown.display); },
        [](const QString& written, const Shown& shown) { return readBad(written, shown.display); }};
    const QString example = tr("Knots, checks, sapwood: 700 to 820; 900 to 950 across 0 to 40");
    typed.add({"boardBad", tr("Bad stretches"), {}, example, tr("none")}, &model::Board::bad, bad,
              {tr("Mark a bad stretch"), tr("Mark no bad stretch")});
    priceFields_ = newFields();
    const auto more = boardFields(priceFields_, boardsTable_, false);
    const QString hint = tr("As measured. Empty: as the strips.");
    more.add({"boardMoisture", tr("Moisture"), {}, hint, tr("as the strips")}, &model::Board::moisture,
             way::orNone(way::share()), {tr("Set the moisture of a board")});
    addPrice(more, QStringLiteral("boardPrice"));
    told_ = new SteadyWords(QStringLiteral("boardsTold"), this);
    // Boards that the boat shares are the boat's, not the piece's.
    for (QObject* source :
         {static_cast<QObject*>(boards_), static_cast<QObject*>(boardFields_), static_cast<QObject*>(priceFields_)})
        source->disconnect(this);
    const auto pass = [this](Change change) {
        if (isShared()) {
            change.boatBoards = std::move(change.after.stock.boards);
            change.after.stock.boards.clear();
        }
        emit changeAsked(change);
    };
    connect(boards_, &PieceTable::changeAsked, this, pass);
    connect(boardFields_, &Fields::changeAsked, this, pass);
    connect(priceFields_, &Fields::changeAsked, this, pass);
    connect(boards_, &PieceTable::unreadChanged, this, [this] { boardsUnread_->say(boards_->unread()); });
}

bool StockPanel::isShared() const {
    return shown_ && shown_->piece.stock.boards.empty() && !shown_->boatBoards.empty();
}

void StockPanel::showBoards() {
    auto with = std::make_shared<Shown>(*shown_);
    if (isShared()) with->piece.stock.boards = shown_->boatBoards;
    boardsShown_ = with;
    boards_->show(boardsShown_);
    if (!boardsTable_->currentIndex().isValid() && boards_->rowCount() > 0)
        boardsTable_->setCurrentIndex(boards_->index(0, BoardsModel::nameColumn));
    boardFields_->show(boardsShown_);
    priceFields_->show(boardsShown_);
    const bool any = boards_->rowCount() > 0;
    showIf(boardsTable_, any);
    showIf(boardFields_, any);
    showIf(priceSection_, any);
}

void StockPanel::share(bool with) {
    Change change{with ? tr("Share the boards") : tr("Take the boards alone"), {}, shown_->piece};
    if (with) {
        std::vector<model::Board> all = shown_->boatBoards;
        all.insert(all.end(), change.after.stock.boards.begin(), change.after.stock.boards.end());
        change.after.stock.boards.clear();
        change.boatBoards = std::move(all);
    } else {
        change.after.stock.boards = shown_->boatBoards;
    }
    emit changeAsked(change);
}

// The chosen strip

QWidget* StockPanel::makeStrip() {
    auto* part = new QWidget(this);
    auto* column = new QVBoxLayout(part);
    column->setContentsMargins(0, 0, 0, 0);
    stripWords_ = new SteadyWords(QStringLiteral("stripWords"), part);
    column->addWidget(stripWords_);
    auto* row = new QHBoxLayout;
    stripBoard_ = new QComboBox(part);
    stripBoard_->setObjectName(QStringLiteral("stripBoard"));
    stripBoard_->setAccessibleName(tr("Board that the strip is cut from"));
    stripBoard_->setToolTip(tr("Cut this strip from a board that you choose."));
    stripBoard_->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    lost_ = wordButton(QStringLiteral("stripLost"), tr("It broke: cut another"), part);
    row->addWidget(stripBoard_, 1);
    row->addWidget(lost_);
    column->addLayout(row);
    auto* second = new QHBoxLayout;
    useSpare_ = wordButton(QStringLiteral("useSpare"), tr("Use a spare for it"), part);
    uncut_ = wordButton(QStringLiteral("stripUncut"), tr("It is not cut yet"), part);
    second->addWidget(useSpare_);
    second->addWidget(uncut_);
    second->addStretch();
    column->addLayout(second);
    connect(stripBoard_, &QComboBox::activated, this, [this](int index) { pin(chosen_, index - 1); });
    connect(lost_, &QPushButton::clicked, this, [this] {
        leaveButton();
        if (study()) change(tr("Strip %1 broke").arg(chosen_), withStripLost(shown_->piece, *study(), chosen_));
    });
    connect(useSpare_, &QPushButton::clicked, this, [this] {
        leaveButton();
        const auto after = study() ? withSpareUsed(shown_->piece, *study(), chosen_) : std::nullopt;
        if (after) change(tr("Use a spare for strip %1").arg(chosen_), *after);
    });
    connect(uncut_, &QPushButton::clicked, this, [this] {
        leaveButton();
        change(tr("Strip %1 is not cut").arg(chosen_), withStripUncut(shown_->piece, chosen_));
    });
    return part;
}

const plan::StockStudy* StockPanel::study() const {
    const plan::Plan* known = shown_ ? studied(plan::Study::stock) : nullptr;
    return known && known->stock ? &*known->stock : nullptr;
}

void StockPanel::change(const QString& name, const model::Piece& after) {
    if (shown_->pieceIndex >= 0 && after != shown_->piece) emit changeAsked({name, {}, after});
}

// For a button that goes with what it does: else the keyboard, and the view with it, would go to some other panel.
void StockPanel::leaveButton() {
    picture_->setFocus(Qt::OtherFocusReason);
}

void StockPanel::pin(int place, int board) {
    const plan::StockStudy* known = study();
    if (!known || place < 1 || board >= math::countOf(known->boards) || studyIsOld(plan::Study::stock)) return;
    if (board < 0)
        return change(tr("Cut strip %1 anywhere").arg(place), withStripPinned(shown_->piece, place, nullptr));
    const plan::BoardCuts& from = known->boards[board];
    if (from.toBuy) return;
    change(tr("Cut strip %1 from %2").arg(place).arg(boardWords(from)), withStripPinned(shown_->piece, place, &from));
}

void StockPanel::choose(int place) {
    chosen_ = place;
    picture_->choose(place);
    showStrip();
}

void StockPanel::selectStrip(int place) {
    if (place != chosen_) choose(place);
}

void StockPanel::showStrip() {
    const plan::StockStudy* known = study();
    const bool old = !known || studyIsOld(plan::Study::stock);
    QStringList where;
    bool cut = false;
    bool lost = false;
    bool laidOut = false;
    for (const plan::BoardCuts& board : known ? known->boards : std::vector<plan::BoardCuts>()) {
        for (const plan::SawnPart& part : board.parts) {
            if (!part.piece.empty() || part.place != chosen_ || chosen_ < 1) continue;
            cut = cut || (part.cut && !part.lost);
            lost = lost || part.lost;
            laidOut = laidOut || !part.cut;
            if (!part.lost) where << tr("%1, rip %2").arg(boardWords(board)).arg(part.rip);
        }
    }
    const bool any = known && chosen_ >= 1 && chosen_ <= known->stripsNeeded;
    QString words =
        any ? tr("Strip %1: %2").arg(chosen_).arg(where.isEmpty() ? tr("no board") : where.join(tr(" and ")))
            : QString();
    if (any && known->boards.empty()) words.clear();
    if (any && cut) words += tr(", cut");
    stripWords_->say(words);
    showIf(stripBoard_, any && laidOut);
    showIf(lost_, any && (cut || laidOut));
    showIf(uncut_, any && (cut || lost));
    const bool spare = any && !cut && !old && withSpareUsed(shown_->piece, *known, chosen_).has_value();
    showIf(useSpare_, spare);
    lost_->setEnabled(!old);
    stripBoard_->setEnabled(!old);
    if (!any) return;
    const QSignalBlocker quiet(stripBoard_);
    stripBoard_->clear();
    stripBoard_->addItem(tr("from the best board"));
    const auto pinned = std::ranges::find(shown_->piece.stock.pins, chosen_, &model::StripPin::place);
    for (const plan::BoardCuts& board : known->boards) {
        if (board.toBuy) continue;
        stripBoard_->addItem(tr("from %1").arg(boardWords(board)));
        if (pinned != shown_->piece.stock.pins.end() && pinned->board == board.name && pinned->number == board.number)
            stripBoard_->setCurrentIndex(stripBoard_->count() - 1);
    }
}

void StockPanel::showPicture() {
    const plan::StockStudy* known = study();
    StockPicture::Picture picture{{}, shown_->display, studyIsOld(plan::Study::stock)};
    // Those that are cut, then a few of the others: a strip may be wanted from there.
    constexpr int mostUnused = 12;
    drawn_.clear();
    int unused = 0;
    for (const bool cut : {true, false}) {
        for (int board = 0; known && board < math::countOf(known->boards); ++board) {
            if (known->boards[board].parts.empty() == cut || (!cut && ++unused > mostUnused)) continue;
            picture.boards.push_back(known->boards[board]);
            drawn_.push_back(board);
        }
    }
    showIf(picture_, !picture.boards.empty());
    picture_->setPicture(std::move(picture));
    picture_->choose(chosen_);
}

// What follows

void StockPanel::makeFigures() {
    const auto [table, model] = figuresTable("stockFigures", tr("Wood, weight, price"), stockFigureColumns());
    Section* section = addSection("stockFiguresHead", tr("Wood, weight, price"), false, {table}, nullptr);
    section->setShow([this, section, model = model](const std::shared_ptr<const Shown>& shown) {
        noteStudy(section, plan::Study::stock);
        const plan::StockStudy* known = study();
        const bool any = known && known->anyBoards;
        model->show(any ? stockFigureRows(*known, shown->display) : std::vector<FigureRow>(),
                    studyIsOld(plan::Study::stock));
    });
}

void StockPanel::makeCures() {
    const Figures figures = figuresTable("stockCures", tr("What helps"), stockCureColumns());
    NotebookTable* table = figures.table;
    table->setSelectionMode(QAbstractItemView::SingleSelection);
    auto* words = new SteadyWords(QStringLiteral("stockCureWords"), this);
    QPushButton* take = wordButton(QStringLiteral("takeStockCure"), tr("Try this"), this);
    connect(take, &QPushButton::clicked, this, [this, table] {
        const plan::StockStudy* known = study();
        const int row = table->currentIndex().row();
        if (!known || studyIsOld(plan::Study::stock) || row < 0 || row >= math::countOf(known->cures)) return;
        const plan::StockCure& cure = known->cures[row];
        if (!cure.piece) return;
        Change change{text(plan::writeText(cure.name, shown_->display)), {}, *cure.piece};
        change.boatBoards = cure.boatBoards;
        leaveButton();
        emit changeAsked(change);
    });
    const auto enable = [this, table, take] {
        const plan::StockStudy* known = study();
        const int row = table->currentIndex().row();
        take->setEnabled(known && !studyIsOld(plan::Study::stock) && row >= 0 && row < math::countOf(known->cures) &&
                         known->cures[row].piece);
    };
    connect(table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, enable);
    curesSection_ = addSection("stockCuresHead", tr("What helps"), true, {words, table, take}, nullptr);
    curesSection_->setShow([=, this, model = figures.model](const std::shared_ptr<const Shown>& shown) {
        noteStudy(curesSection_, plan::Study::stock);
        const plan::StockStudy* known = study();
        const bool any = known && !known->cures.empty();
        model->show(any ? stockCureRows(*known, shown->display) : std::vector<FigureRow>(),
                    studyIsOld(plan::Study::stock));
        words->say(any ? tr("Each was calculated anew. First stands what leaves the piece as it is.")
                       : tr("Nothing of what was tried gives more strips: list other boards."));
        if (any && !table->currentIndex().isValid()) table->setCurrentIndex(model->index(0, 0));
        showIf(table, any);
        showIf(take, any);
        enable();
    });
}

void StockPanel::makeSawing() {
    using model::Stock;
    Fields* fields = newFields();
    const TypedFields stock(fields, "stock.", over(&model::Piece::stock), tr("Set \"%1\" to %2"));
    stock.add({"kerf", tr("Saw cut"), "kerf_mm", tr("What the saw takes: 1 to 3 mm.")}, &Stock::kerf_m,
              way::thickness());
    stock.add({"planing", tr("Planed off each face"), "planing_mm", tr("0: glued off the saw.")}, &Stock::planing_m,
              way::thickness());
    stock.add({"planerLeast", tr("Planer takes from"), "planer_least_mm",
               tr("Thinner strips need a carrier board. 0: not checked.")},
              &Stock::planerLeast_m, way::thickness());
    stock.add({"snipe", tr("Planer spoils, each end"), "snipe_mm", tr("Snipe, cut off or left in the extra length.")},
              &Stock::snipe_m, way::thickness());
    stock.addChoice({"saw", tr("Strips are"), "saw", tr("Off the edge: as wide as the board is thick.")}, &Stock::saw,
                    {tr("sawn whichever gives more"), tr("ripped off the edge"), tr("resawn from the face")});
    stock.addChoice({"least", tr("Least of"), "least", tr("What the cut list saves.")}, &Stock::aim,
                    {tr("wood"), tr("money")});
    const Way<double> slope{[](double value, const Shown&) { return tr("1 in %1").arg(value); },
                            [](const QString& written, const Shown&) {
                                const std::optional<double> read = readScarf(written);
                                if (!read)
                                    throw units::InputError("", "nothing is typed here", "give a slope as 1 in 12");
                                return *read;
                            }};
    stock.add({"stockScarfSlope", tr("Scarf slope"), "scarf_slope", tr("1 in 12 or flatter is strongest.")},
              &Stock::scarfSlope, slope);
    stock.add({"extraScarfs", tr("More scarfs allowed"), "extra_scarfs", tr("In a strip, above the fewest.")},
              &Stock::extraScarfs, way::whole());
    stock.add({"stagger", tr("Scarfs apart at least"), "stagger_mm",
               tr("In strips side by side. Empty: 24 times the thickness."), tr("24 times the thickness")},
              &Stock::stagger_m, way::orNone(way::thickness()), {tr("Set \"%1\"")});
    stock.add({"stockSpares", tr("Spare strips"), "spares", tr("Empty: as many as are likely to break."),
               tr("as they may break")},
              &Stock::spares, way::orNone(way::whole()), {tr("Set \"%1\"")});
    ShedLine* shed = newShedLine(model::ShedPart::stock);
    sharedWords_ = new SteadyWords(QStringLiteral("sharedWords"), this);
    share_ = wordButton(QStringLiteral("shareBoards"), tr("Share with the boat"), this);
    connect(share_, &QPushButton::clicked, this, [this] { share(!isShared()); });
    addSection("sawingHead", tr("Saw, scarfs, spares"), false, {fields},
               [fields](const auto& shown) { fields->show(shown); });
    addSection("boardsOfHead", tr("Whose boards"), false, {sharedWords_, share_, shed},
               [this, shed](const std::shared_ptr<const Shown>& shown) {
                   shed->show(shown);
                   const bool shared = isShared();
                   sharedWords_->say(shared ? tr("These are the boat's boards. Every piece without a list of its own "
                                                 "is cut from them, all together.")
                                            : tr("These boards are for this piece alone."));
                   share_->setText(shared ? tr("List of its own") : tr("Share with the boat"));
                   share_->setEnabled(shared || !shown->piece.stock.boards.empty());
               });
}

void StockPanel::makeBuying() {
    auto* unread = new Words(QStringLiteral("buyUnread"), true, this);
    NotebookTable* table = boardsTable("buy", tr("Boards that can be bought"), buy_, unread);
    QWidget* tools = rowTools(table,
                              {"addToBuy", tr("Add a size like this one (Insert)"),
                               [this, table] { buy_->addBoard(table->currentIndex().row()); }},
                              {"removeToBuy", tr("Remove the chosen sizes (Delete)"),
                               [this, table] { buy_->removeBoards(table->chosenRows()); }});
    Fields* fields = newFields();
    const auto typed = boardFields(fields, table, true);
    addWood(typed, QStringLiteral("boardWoodToBuy"));
    addPrice(typed, QStringLiteral("boardPriceToBuy"));
    addSection("buyHead", tr("What can be bought"), false, {table, unread, tools, fields},
               [this, table, fields](const std::shared_ptr<const Shown>& shown) {
                   buy_->show(shown);
                   const bool any = buy_->rowCount() > 0;
                   if (any && !table->currentIndex().isValid()) table->setCurrentIndex(buy_->index(0, 0));
                   fields->show(shown);
                   showIf(table, any);
                   showIf(fields, any);
               });
}

void StockPanel::makeCut() {
    auto* words = new SteadyWords(QStringLiteral("cutWords"), this);
    allCut_ = wordButton(QStringLiteral("allCut"), tr("All of them are cut"), this);
    connect(allCut_, &QPushButton::clicked, this, [this] {
        leaveButton();
        if (study()) change(tr("All strips are cut"), withAllCut(shown_->piece, *study()));
    });
    addSection("cutHead", tr("At the bench"), false, {words, allCut_},
               [this, words](const std::shared_ptr<const Shown>& shown) {
                   const plan::StockStudy* known = study();
                   const bool any = shown->pieceIndex >= 0 && known && known->boardsUsed > 0;
                   words->say(any ? tr("%1 of %2 strips are cut. Choose a strip above when it breaks: another is "
                                       "laid out on what is left.")
                                        .arg(known->alreadyCut)
                                        .arg(known->stripsNeeded)
                                  : tr("Nothing is laid out yet."));
                   allCut_->setEnabled(any && !studyIsOld(plan::Study::stock) &&
                                       known->alreadyCut + math::countOf(known->missing) < known->stripsNeeded);
               });
}

void StockPanel::show(const Shown& shown) {
    const bool another = !shown_ || !shown_->samePieceAs(shown);
    takeShown(shown);
    if (another) chosen_ = 0;
    answer_->show(*shown_);
    showBoards();
    showPicture();
    showStrip();
    const plan::StockStudy* known = study();
    told_->say(known ? text(plan::writeTexts(known->told, shown_->display)) : QString());
    showIf(curesSection_, known && !known->missing.empty());
    for (Section* section : sections_) section->show(shown_);
}

}  // namespace fayline::app
