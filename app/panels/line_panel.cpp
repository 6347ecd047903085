#include "app/panels/line_panel.hpp"

#include <QApplication>
#include <QClipboard>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QVBoxLayout>
#include <algorithm>
#include <cmath>
#include <utility>

#include "app/look/theme.hpp"
#include "app/panels/along_plot.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/offsets_dialog.hpp"
#include "app/panels/offsets_text.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/typed_fields.hpp"
#include "core/line/grid.hpp"

namespace fayline::app {

LinePanel::LinePanel(QWidget* parent)
    : SectionedPanel(parent),
      offsets_(new OffsetsModel(this)),
      answer_(new AnswerNote(plan::Question::line, QStringLiteral("line"), this)),
      plot_(new AlongPlot(this)),
      table_(new NotebookTable(this)),
      unread_(new Words(QStringLiteral("offsetsUnread"), true, this)),
      problems_(new Words(QStringLiteral("offsetsProblems"), true, this)),
      search_(new Words(QStringLiteral("misreadSearch"), false, this)),
      grid_(wordButton(QStringLiteral("proposeGrid"), tr("Round values are grid"), this)),
      repairsLayout_(new QVBoxLayout),
      fields_(newFields()) {
    setObjectName(QStringLiteral("linePanel"));
    setAccessibleName(tr("Line"));
    plot_->setObjectName(QStringLiteral("plot"));
    plot_->setAccessibleName(tr("How the line bends, by length along it"));
    table_->setObjectName(QStringLiteral("offsets"));
    table_->setAccessibleName(tr("Offsets"));
    table_->setModel(offsets_);
    table_->setGrows(NotebookTable::Grows::byTabAndEnter);
    showColumns(false);
    repairsLayout_->setContentsMargins(0, 0, 0, 0);
    repairsLayout_->setSpacing(gridStep / 2);

    auto* repairs = new QWidget(this);
    repairs->setLayout(repairsLayout_);
    makeFields();
    offsetsSection_ =
        addSection("offsetsHead", tr("Offsets"), true, {table_, unread_, makeTools(), search_, grid_, problems_},
                   [](const auto&) {});  // rows are gone to while it is folded, too
    makeFairing();
    layOut({answer_, repairs, fields_, plot_});

    connect(offsets_, &OffsetsModel::changeAsked, this, [this](const Change& change) {
        changing_ = true;
        freshRow_ = -1;
        emit changeAsked(change);
    });
    connect(offsets_, &OffsetsModel::unreadChanged, this, [this] { unread_->say(offsets_->unread()); });
    grid_->setToolTip(tr("Values on an even or round grid are exact; the other value was read."));
    connect(grid_, &QPushButton::clicked, this, [this] {
        Change change{tr("Round values are grid"), {}, shown_->piece};
        const std::vector<model::Read> reads = proposedReads();
        for (std::size_t i = 0; i < reads.size(); ++i) change.after.line.points[i].read = reads[i];
        emit changeAsked(change);
    });
    tellPlaces(plot_);
    tellPlaces(table_);
    connect(table_->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this](const QModelIndex& row) {
        if (table_->hasFocus() && row.isValid()) emit pointSelected(row.row());  // else rows came or went
    });
}

QWidget* LinePanel::makeTools() {
    auto* tools = new QWidget(this);
    auto* side = new QHBoxLayout(tools);
    side->setContentsMargins(0, 0, 0, 0);
    side->setSpacing(gridStep / 4);
    const auto add = [&](const char* object, const char* icon, const QString& name, auto act) {
        QToolButton* button = iconButton(QLatin1String(object), QLatin1String(icon), name, tools);
        side->addWidget(button);
        connect(button, &QToolButton::clicked, this, act);
    };
    const auto addPoint = [this] {
        const int row = offsets_->rowCount();
        follow(row, false, [this, row] { offsets_->insertPoint(row); });
    };
    const auto insertPoint = [this] {
        const int row = std::max(chosenRow(), 0);
        follow(row, false, [this, row] { offsets_->insertPoint(row); });
    };
    const auto remove = [this] { offsets_->removePoints(table_->chosenRows()); };
    const auto move = [this](int by) {
        const int row = chosenRow();
        if (row < 0) return;
        follow(std::clamp(row + by, 0, offsets_->rowCount() - 1), false,
               [this, row, by] { offsets_->movePoint(row, by); });
    };
    const auto copy = [this] {
        if (!shown_ || shown_->pieceIndex < 0) return;
        std::vector<model::Point> points;
        const std::vector<int> rows = table_->chosenRows();
        for (const int row : rows) points.push_back(shown_->piece.line.points[static_cast<std::size_t>(row)]);
        if (points.size() < 2) points = shown_->piece.line.points;  // one row is where the cursor is
        QApplication::clipboard()->setText(writeOffsetsText(points, shown_->display));
    };
    const auto paste = [this] { pasteOffsets(QApplication::clipboard()->text()); };
    add("addPoint", "add", tr("Add a point at the end"), addPoint);
    add("insertPoint", "add_point", tr("Insert a point before this one (Insert)"), insertPoint);
    add("removePoint", "remove_point", tr("Remove the chosen points (Delete)"), remove);
    add("pointUp", "up", tr("Move the point up (Alt+Up)"), [move] { move(-1); });
    add("pointDown", "down", tr("Move the point down (Alt+Down)"), [move] { move(+1); });
    side->addStretch();
    add("pasteOffsets", "paste", tr("Paste offsets from a spreadsheet or text"), paste);
    add("copyOffsets", "copy", tr("Copy the offsets for a spreadsheet"), copy);
    add("openOffsets", "import", tr("Open offsets from a file"), [this] {
        const QString name = QFileDialog::getOpenFileName(this, tr("Open offsets"), {}, offsetsFilter());
        if (!name.isEmpty()) openOffsets(name);
    });
    connect(table_, &NotebookTable::insertAsked, this, insertPoint);
    connect(table_, &NotebookTable::removeAsked, this, remove);
    connect(table_, &NotebookTable::moveAsked, this, move);
    connect(table_, &NotebookTable::copyAsked, this, copy);
    connect(table_, &NotebookTable::pasteAsked, this, paste);
    connect(table_, &NotebookTable::rowAsked, this, [this] { changing_ ? void(rowWanted_ = true) : addRow(); });
    connect(table_, &NotebookTable::typingGivenUp, this, [this](const QModelIndex& cell) {
        if (cell.row() == freshRow_ && freshRow_ == offsets_->rowCount() - 1) offsets_->takeRowBack();
    });
    return tools;
}

void LinePanel::makeFields() {
    using model::LineInput;
    const TypedFields line(fields_, "line.", over(&model::Piece::line));
    line.add({"fairWithin", tr("Fair within"), "fair_within_mm",
              tr("The line misses no point by more. 0: through every point.")},
             &LineInput::fairWithin_m, way::thickness(), {tr("Set fair within to %3")});
}

void LinePanel::makeFairing() {
    Fields* fields = newFields();
    using model::LineInput;
    const TypedFields line(fields, "line.", over(&model::Piece::line));
    line.add({"readTo", tr("Offsets read to"), "read_to_mm",
              tr("The step of your reading. The line misses points by about that much.")},
             &LineInput::readTo_m, way::thickness(), {tr("Set the reading step to %3")});
    fields->addChoice(
        {"read", tr("Which value was read"), "line.points",
         tr("A grid value is exact: only the other is faired and checked for slips.")},
        {tr("both"), tr("x, y is the grid"), tr("y, x is the grid"), tr("as each point says")},
        [](const Shown& shown) {
            const std::vector<model::Point>& points = shown.piece.line.points;
            if (points.empty()) return 0;
            const bool alike = std::all_of(points.begin(), points.end(),
                                           [&](const model::Point& point) { return point.read == points[0].read; });
            return alike ? static_cast<int>(points[0].read) : 3;
        },
        [](model::Piece& piece, int chosen, const Shown&) {
            if (chosen > 2) return QString();
            for (model::Point& point : piece.line.points) point.read = static_cast<model::Read>(chosen);
            static const QStringList names{tr("Take both values as read"), tr("Take x as read, y as the grid"),
                                           tr("Take y as read, x as the grid")};
            return names[chosen];
        });
    line.add({"startHeading", tr("Start angle"), "start_heading_deg",
              tr("Degrees anticlockwise from the x axis, to meet a keel or scarf. Empty: free."), tr("free")},
             &LineInput::startHeading_rad, way::heading(),
             {tr("Set the start angle to %3"), tr("Free the start angle")});
    line.add({"endHeading", tr("End angle"), "end_heading_deg",
              tr("Degrees anticlockwise from the x axis. Empty: free."), tr("free")},
             &LineInput::endHeading_rad, way::heading(), {tr("Set the end angle to %3"), tr("Free the end angle")});
    line.add({"takeOff", tr("Deduct planking"), "take_off_mm",
              tr("Points lie outside planking this thick; the line moves in square by it.")},
             &LineInput::takeOff_m, way::thickness(), {tr("Deduct %3")});
    line.addChoice({"describes", tr("The line is the stack's"), "describes",
                    tr("Where in the stack the points are; the inner face lies on the form.")},
                   &LineInput::describes, {tr("inner face"), tr("middle"), tr("outer face")},
                   {tr("Take the line as the inner face"), tr("Take the line as the middle"),
                    tr("Take the line as the outer face")});
    line.addChoice({"stripsOn", tr("Strips lie on the"), "strips_on",
                    tr("As seen by someone walking from the first point to the last.")},
                   &LineInput::stripsOn, {tr("left"), tr("right")},
                   {tr("Lay the strips on the left"), tr("Lay the strips on the right")});
    addSection("fairingHead", tr("Fairing"), false, fields);
}

// What was read is a column only where the table says so of some point: elsewhere the names have its room.
void LinePanel::showColumns(bool reads) {
    if (columnsShown_ && *columnsShown_ == reads) return;
    columnsShown_ = reads;
    std::vector<int> columns{0, 1, 2, 3, 4};
    if (reads) columns.push_back(OffsetsModel::readColumn);
    table_->setColumns(offsets_->widths(columns), OffsetsModel::labelColumn);
}

void LinePanel::show(const Shown& shown) {
    const bool another = !shown_ || !shown_->samePieceAs(shown);
    takeShown(shown);
    changing_ = false;
    if (another) {
        problems_->say({});
        rowWanted_ = false;
        expected_.reset();
        freshRow_ = -1;
    }
    answer_->show(*shown_);
    offsets_->show(shown_);
    if (another && window()->focusWidget() == table_ && offsets_->rowCount() > 0)
        table_->setCurrentIndex(offsets_->index(0, OffsetsModel::labelColumn));  // to be typed in
    showColumns(std::any_of(shown_->piece.line.points.begin(), shown_->piece.line.points.end(),
                            [](const model::Point& point) { return point.read != model::Read::both; }));
    fields_->show(shown_);
    showPlot();
    showRepairs();
    showSearch();
    for (Section* section : sections_) section->show(shown_);
    goWhereExpected();
    if (std::exchange(rowWanted_, false)) addRow();
}

std::vector<model::Read> LinePanel::proposedReads() const {
    std::vector<line::Xy> places;
    for (const model::Point& point : shown_->piece.line.points) places.push_back({point.x_m, point.y_m});
    return line::gridOf(places, shown_->piece.line.readTo_m);
}

void LinePanel::showSearch() {
    const std::vector<model::Point>& points = shown_->piece.line.points;
    const bool any = shown_->pieceIndex >= 0 && !points.empty();
    const bool allBoth = std::all_of(points.begin(), points.end(),
                                     [](const model::Point& point) { return point.read == model::Read::both; });
    bool proposes = false;
    if (any && allBoth) {
        for (const model::Read read : proposedReads()) proposes = proposes || read != model::Read::both;
    }
    grid_->setVisible(proposes);
    QString words;
    if (any && static_cast<int>(points.size()) < line::fewestForMisread) {
        words = tr("Too few points to tell a misread one: it takes %1.").arg(line::fewestForMisread);
    } else if (any && shown_->plan && !shown_->plan->line.misread.searchedAll) {
        words = tr("Too many points look misread: only the worst are checked.");
    }
    search_->say(words);
}

void LinePanel::showPlot() {
    if (shown_->pieceIndex < 0 || !shown_->plan || shown_->plan->line.samples.size() < 2) return plot_->setNothing();
    const plan::LinePlan& line = shown_->plan->line;
    AlongPlot::Picture picture;
    picture.display = shown_->display;
    picture.caption = tr("Radius, upwards round towards the strips; faint: 19 times of 20");
    picture.to_m = line.samples.back().at_m;
    AlongPlot::Curve curve;
    AlongPlot::Curve low{{}, false};
    AlongPlot::Curve high{{}, false};
    const double up = -laminate::sideSign(shown_->piece.line.stripsOn);  // a left turn is hollow to strips on the left
    double least = 0;
    double most = 0;
    for (const line::Place& place : line.samples) {
        if (!std::isfinite(place.curvature_per_m)) continue;
        const double bend_per_m = up * place.curvature_per_m;
        const auto sample = static_cast<std::size_t>(&place - line.samples.data());
        const double off = line::nineteenOfTwenty * line.curvatureSd_per_m[sample];
        low.points.append({place.at_m, bend_per_m - off});
        high.points.append({place.at_m, bend_per_m + off});
        curve.points.append({place.at_m, bend_per_m});
        least = std::min(least, bend_per_m);
        most = std::max(most, bend_per_m);
    }
    // A line that is all but straight is not blown up to fill the picture.
    constexpr double straight_per_m = 0.02;
    const double greatest = std::max({most, -least, straight_per_m});
    picture.most = most > 0.05 * greatest ? most * 1.08 : 0.05 * greatest;
    picture.least = least < -0.05 * greatest ? least * 1.08 : -0.05 * greatest;
    picture.ticks.push_back({0, tr("straight")});
    for (const double radius : niceRadii(greatest, shown_->display)) {
        if (1 / radius <= picture.most) picture.ticks.push_back({1 / radius, writeLengthText(radius, shown_->display)});
        if (-1 / radius >= picture.least)
            picture.ticks.push_back({-1 / radius, writeLengthText(radius, shown_->display)});
    }
    picture.curves.push_back(std::move(low));
    picture.curves.push_back(std::move(high));
    picture.curves.push_back(std::move(curve));
    for (const line::Foot& foot : line.fair.points) picture.marks.push_back({foot.at_m, {}, false});
    picture.reading = [shown = shown_](double at_m) {
        const double curvature = shown->plan->line.fair.line.at(at_m).curvature_per_m;
        constexpr double flat_per_m = 1e-4;
        const QString radius = std::abs(curvature) < flat_per_m
                                   ? tr("straight")
                                   : tr("radius %1").arg(writeLengthText(1 / std::abs(curvature), shown->display));
        return tr("%1 along: %2").arg(writeLengthText(at_m, shown->display), radius);
    };
    plot_->setPicture(std::move(picture));
}

void LinePanel::showRepairs() {
    repairs_ = repairsOf(*shown_);
    while (repairRows_.size() < repairs_.size()) {
        const int number = static_cast<int>(repairRows_.size());
        auto* row = new QWidget(this);
        auto* layout = new QHBoxLayout(row);
        layout->setContentsMargins(0, 0, 0, 0);
        auto* words = new Words(QStringLiteral("slip%1").arg(number), false, row);
        QPushButton* button = wordButton(QStringLiteral("correct%1").arg(number), tr("Correct"), row);
        layout->addWidget(words, 1);
        layout->addWidget(button, 0, Qt::AlignTop);
        repairsLayout_->addWidget(row);
        connect(button, &QPushButton::clicked, this, [this, number] {
            if (number < static_cast<int>(repairs_.size()))
                emit changeAsked(repairs_[static_cast<std::size_t>(number)].change);
        });
        repairRows_.push_back({row, words, button});
    }
    for (std::size_t i = 0; i < repairRows_.size(); ++i) {
        const bool used = i < repairs_.size();
        if (used) {
            repairRows_[i].text->say(repairs_[i].text);
            repairRows_[i].button->setAccessibleName(tr("Correct: %1").arg(repairs_[i].text));
        }
        if (repairRows_[i].row->isHidden() == used) repairRows_[i].row->setVisible(used);
    }
}

void LinePanel::lightPlace(std::optional<double> at_m) {
    plot_->lightPlace(at_m);
    table_->lightPlace(at_m);
}

void LinePanel::selectPlace(std::optional<double> at_m) {
    plot_->selectPlace(at_m);
}

int LinePanel::chosenRow() const {
    const std::vector<int> rows = table_->chosenRows();
    return rows.empty() ? -1 : rows.front();
}

void LinePanel::addRow() {
    follow(offsets_->rowCount(), true, [this] { offsets_->addRow(); });
}

void LinePanel::follow(int row, bool typed, const std::function<void()>& change) {
    expected_ = {row, typed};
    change();
    if (!changing_) expected_.reset();  // it has come, or nothing does
}

void LinePanel::goWhereExpected() {
    if (!expected_ || expected_->row >= offsets_->rowCount()) return;
    const auto [row, typed] = *std::exchange(expected_, std::nullopt);
    const int column = typed ? int(OffsetsModel::labelColumn) : std::max(table_->currentIndex().column(), 0);
    const QModelIndex cell = offsets_->index(row, column);
    table_->setCurrentIndex(cell);
    if (!typed) return;
    freshRow_ = row;
    table_->edit(cell);
}

void LinePanel::selectPoint(int point) {
    if (point < 0 || point >= offsets_->rowCount()) return table_->clearSelection();
    const QModelIndex cell = offsets_->index(point, std::max(table_->currentIndex().column(), 0));
    const bool chosen = table_->currentIndex().row() == point && table_->selectionModel()->isSelected(cell);
    if (!chosen) table_->setCurrentIndex(cell);  // one of several chosen rows leaves the others as they are
}

void LinePanel::goToPoint(int point) {
    offsetsSection_->setOpen(true);
    if (point >= 0 && point < offsets_->rowCount())
        table_->setCurrentIndex(offsets_->index(point, OffsetsModel::xColumn));
    table_->setFocus();
}

void LinePanel::openOffsets(const QString& fileName) {
    if (!shown_ || shown_->pieceIndex < 0) return;
    try {
        const QString name = QFileInfo(fileName).fileName();
        takeOffsets(name, readOffsetsFile(fileName), false, tr("Open offsets from %1").arg(name));
    } catch (const units::InputError& error) {
        problems_->say(why(error));
    }
}

void LinePanel::pasteOffsets(const QString& written) {
    if (!shown_ || shown_->pieceIndex < 0) return;
    try {
        pasteRead(written);
    } catch (const units::InputError& error) {
        problems_->say(why(error));
    }
}

void LinePanel::pasteRead(const QString& written) {
    const QModelIndex cell = table_->currentIndex();
    const io::OffsetsTable table = io::readTable(text(written));
    const bool single = table.rows.size() == 1 && table.header.size() == 1;
    if (single && (cell.flags() & Qt::ItemIsEditable)) {
        problems_->say({});
        offsets_->setData(cell, text(table.rows[0].cells[0]), Qt::EditRole);
        return;
    }
    takeOffsets(tr("what was copied"), written, true, {});
}

void LinePanel::takeOffsets(const QString& from, const QString& written, bool adds, const QString& changeName) {
    const TakenInto into{shown_->piece.line.points, shown_->display, adds};
    const bool any = askOffsets(from, written, into, this, [this, changeName](const OffsetsDialog& dialog) {
        emit wholePieceWanted();
        const int taken = dialog.taken();
        const QString pasted = taken == 1 ? tr("Paste a point") : tr("Paste %1 points").arg(taken);
        offsets_->replacePoints(dialog.points(), changeName.isEmpty() ? pasted : changeName);
    });
    problems_->say(any ? QString() : tr("There is nothing to read in %1.").arg(from));
}

}  // namespace fayline::app
