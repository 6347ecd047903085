#include "app/panels/offsets_dialog.hpp"

#include <QCheckBox>
#include <QComboBox>
#include <QDialogButtonBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QRadioButton>
#include <QScrollArea>
#include <QVBoxLayout>
#include <algorithm>
#include <map>

#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "app/panels/figures_model.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/parts.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"
#include "core/model/offsets.hpp"
#include "core/units/overall.hpp"

namespace fayline::app {

namespace {

constexpr int mostNamed = 4;   // cells that are not understood, one a line
constexpr int mostShown = 40;  // signs of a cell

QString unitName(io::TableUnit unit) {
    switch (unit) {
        case io::TableUnit::feetInchesEighths:
            return tr("feet, inches, eighths");
        case io::TableUnit::millimetres:
            return tr("millimetres");
        case io::TableUnit::centimetres:
            return tr("centimetres");
        case io::TableUnit::metres:
            return tr("metres");
        case io::TableUnit::inches:
            return tr("inches");
        case io::TableUnit::feet:
            return tr("feet");
        case io::TableUnit::asWritten:
            break;
    }
    return tr("as written");
}

QComboBox* choice(const char* object, const QString& name, const QStringList& words, QWidget* parent) {
    auto* combo = new QComboBox(parent);
    combo->setObjectName(object);
    combo->setAccessibleName(name);
    combo->addItems(words);
    return combo;
}

}  // namespace

OffsetsDialog::OffsetsDialog(const QString& from, io::OffsetsTable table, TakenInto into, QWidget* parent)
    : QDialog(parent), table_(std::move(table)), into_(std::move(into)) {
    setObjectName("offsetsDialog");
    setWindowTitle(tr("Offsets to take from %1").arg(from));
    auto* under = new QVBoxLayout(this);
    under->setContentsMargins(2 * gridStep, 2 * gridStep, 2 * gridStep, 2 * gridStep);
    under->setSpacing(gridStep);
    under->addWidget(makeTable());
    notUnderstood_ = new Words("notUnderstood", true, this);
    under->addWidget(notUnderstood_);
    leaveOut_ = new QCheckBox(tr("Leave these lines out"), this);
    leaveOut_->setObjectName("leaveOut");
    under->addWidget(leaveOut_);
    makeChoices(under);
    unusualLength_ = new Words("unusualLength", true, this);
    under->addWidget(unusualLength_);
    outcome_ = new QLabel(this);
    outcome_->setObjectName("outcome");
    outcome_->setTextFormat(Qt::PlainText);
    outcome_->setWordWrap(true);
    under->addWidget(outcome_);
    under->addStretch();
    auto* buttons = new QDialogButtonBox(QDialogButtonBox::Cancel, this);
    take_ = buttons->addButton(tr("&Take"), QDialogButtonBox::AcceptRole);
    take_->setObjectName("take");
    take_->setDefault(true);
    under->addWidget(buttons);
    connect(buttons, &QDialogButtonBox::accepted, this, &QDialog::accept);
    connect(buttons, &QDialogButtonBox::rejected, this, &QDialog::reject);
    connect(leaveOut_, &QCheckBox::toggled, this, &OffsetsDialog::read);
    showUnits();
    take_->setFocus();
}

// The rows as they were read, over each column what it is used for.
QWidget* OffsetsDialog::makeTable() {
    auto* scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    auto* inside = new QWidget(scroll);
    auto* under = new QVBoxLayout(inside);
    under->setContentsMargins(0, 0, 0, 0);
    under->setSpacing(gridStep / 2);
    auto* across = new QHBoxLayout;
    across->setSpacing(0);
    under->addLayout(across);

    std::vector<FigureColumn> columns{figureColumn(tr("Line"), "0000")};
    for (int i = 0; i < math::countOf(table_.header); ++i) {
        const QString name = text(table_.header[i]);
        columns.push_back(wordColumn(name.isEmpty() ? tr("Column %1").arg(i + 1) : name, "WL 24 0000-00-0+"));
    }
    std::vector<NotebookTable::ColumnWidth> widths;
    for (const FigureColumn& column : columns) widths.push_back({math::countOf(widths), column.widest});
    model_ = new FiguresModel(columns, this);
    asRead_ = new NotebookTable(inside);
    asRead_->setObjectName("asRead");
    asRead_->setAccessibleName(tr("Offsets as they were read"));
    asRead_->setModel(model_);
    asRead_->setMostRows(8);
    asRead_->setColumns(widths, -1);
    under->addWidget(asRead_);

    across->addSpacing(asRead_->columnWidth(0) + gridStep / 2);
    int width = asRead_->columnWidth(0);
    for (int i = 0; i < math::countOf(table_.header); ++i) {
        QComboBox* combo = choice("", tr("Use of column %1").arg(i + 1),
                                  {tr("leave out"), tr("name"), tr("x, along"), tr("y, up or out")}, inside);
        combo->setObjectName(QStringLiteral("use%1").arg(i));
        combo->setCurrentIndex(static_cast<int>(table_.uses[i]));
        combo->setFixedWidth(asRead_->columnWidth(i + 1) - gridStep);
        across->addWidget(combo);
        across->addSpacing(gridStep);
        width += asRead_->columnWidth(i + 1);
        connect(combo, &QComboBox::activated, this, [this, i](int chosen) { use(i, chosen); });
        uses_.push_back(combo);
    }
    across->addStretch();
    const int bar = style()->pixelMetric(QStyle::PM_ScrollBarExtent);
    inside->setMinimumWidth(width + bar);
    scroll->setWidget(inside);
    constexpr int mostWidth = 700;  // wider tables are scrolled sideways
    scroll->setMinimumWidth(std::min(width + bar, mostWidth));
    showRows({});  // so that the table is as high as its rows
    scroll->setFixedHeight(inside->sizeHint().height() + (width + bar > mostWidth ? bar : 0));
    return scroll;
}

void OffsetsDialog::makeChoices(QBoxLayout* under) {
    auto* form = new QFormLayout;
    form->setHorizontalSpacing(gridStep);
    form->setVerticalSpacing(gridStep / 2);
    under->addLayout(form);
    unit_ = choice("unit", tr("Unit"), {}, this);
    unit_->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    unit_->setToolTip(tr("Of the numbers that have none of their own"));
    form->addRow(tr("&Unit"), unit_);
    grid_ = choice("grid", tr("Grid"), {tr("none: x and y were read"), tr("y: x was read"), tr("x: y was read")}, this);
    grid_->setToolTip(tr("Stations or waterlines: exact. Only the other coordinate is faired and checked for slips."));
    form->addRow(tr("&Grid"), grid_);
    auto* half = new QWidget(this);
    auto* across = new QHBoxLayout(half);
    across->setContentsMargins(0, 0, 0, 0);
    across->setSpacing(gridStep);
    otherHalf_ = new QCheckBox(tr("&Mirror these half-breadths"), half);
    otherHalf_->setObjectName("otherHalf");
    centreLine_ = choice("centreLine", tr("Centre line"), {tr("about x = 0"), tr("about y = 0")}, half);
    centreLine_->setEnabled(false);
    across->addWidget(otherHalf_);
    across->addWidget(centreLine_);
    across->addStretch();
    form->addRow(QString(), half);

    auto* replace = new QRadioButton(tr("&Replace the %1 points").arg(into_.points.size()), this);
    replace->setObjectName("replacePoints");
    add_ = new QRadioButton(tr("&Add after the last point"), this);
    add_->setObjectName("addPoints");
    const bool asks = !into_.points.empty() && !model::isUntouchedSample(into_.points);
    add_->setChecked(asks && into_.adds);
    replace->setChecked(!add_->isChecked());
    replace->setVisible(asks);
    add_->setVisible(asks);
    under->addWidget(replace);
    under->addWidget(add_);

    connect(unit_, &QComboBox::activated, this, &OffsetsDialog::read);
    connect(grid_, &QComboBox::activated, this, &OffsetsDialog::read);
    connect(otherHalf_, &QCheckBox::toggled, this, [this](bool on) {
        centreLine_->setEnabled(on);
        if (on) centreLine_->setCurrentIndex(static_cast<int>(model::likelyHalf(given_)));
        read();
    });
    connect(centreLine_, &QComboBox::activated, this, &OffsetsDialog::read);
    connect(add_, &QRadioButton::toggled, this, &OffsetsDialog::read);
}

// One column for each use: the one that had it before is left out.
void OffsetsDialog::use(int column, int chosen) {
    for (int i = 0; i < math::countOf(uses_); ++i) {
        if (i != column && chosen > 0 && uses_[i]->currentIndex() == chosen) {
            uses_[i]->setCurrentIndex(0);
            table_.uses[i] = io::ColumnUse::leftOut;
        }
    }
    table_.uses[column] = static_cast<io::ColumnUse>(chosen);
    showUnits();
}

void OffsetsDialog::showUnits() {
    readings_ = io::unitReadings(table_, table_.uses, into_.display.lengths);
    unit_->clear();
    for (const io::UnitReading& reading : readings_)
        unit_->addItem(tr("%1: %2 long").arg(unitName(reading.unit), said(reading.length_m)));
    read();
}

void OffsetsDialog::read() {
    const int row = unit_->currentIndex();
    const io::TableUnit unit = row < 0 ? io::TableUnit::asWritten : readings_[row].unit;
    io::OffsetsRead read = io::readPoints(table_, table_.uses, unit, into_.display.lengths);
    for (model::Point& point : read.points) point.read = static_cast<model::Read>(grid_->currentIndex());
    given_ = std::move(read.points);
    points_ = otherHalf_->isChecked()
                  ? model::withOtherHalf(given_, static_cast<model::Axis>(centreLine_->currentIndex()))
                  : given_;
    taken_ = math::countOf(points_);
    showRows(read.unread);
    showUnread(read.unread);
    take_->setEnabled(taken_ > 0 && (read.unread.empty() || leaveOut_->isChecked()));
    tell();
    if (add_->isChecked()) points_.insert(points_.begin(), into_.points.begin(), into_.points.end());
    if (isVisible()) growToFit(this);
}

void OffsetsDialog::showRows(const std::vector<io::UnreadCell>& unread) {
    std::map<std::pair<int, int>, QString> faults;
    for (const io::UnreadCell& cell : unread) faults[{cell.row, cell.column}] = text(cell.wrong);
    std::vector<FigureRow> rows;
    for (int i = 0; i < math::countOf(table_.rows); ++i) {
        const io::OffsetsRow& from = table_.rows[i];
        FigureRow row{.cells = {{.text = QString::number(from.line)}}, .hint = {}};
        for (int column = 0; column < math::countOf(from.cells); ++column) {
            const QString words = text(from.cells[column]);
            const auto fault = faults.find({i, column});
            const bool wrong = fault != faults.end();
            row.cells.push_back({.text = wrong && words.isEmpty() ? tr("empty") : words.left(mostShown),
                                 .fault = wrong ? fault->second : QString()});
        }
        rows.push_back(std::move(row));
    }
    model_->show(std::move(rows));
}

// Which cells, and why; the table has them in red as well.
void OffsetsDialog::showUnread(const std::vector<io::UnreadCell>& unread) {
    QStringList lines;
    for (const io::UnreadCell& cell : unread) {
        if (lines.size() == mostNamed) break;
        const io::OffsetsRow& row = table_.rows[cell.row];
        const QString found = text(row.cells[cell.column]).left(mostShown);
        const QString place = tr("Line %1, column %2").arg(row.line).arg(cell.column + 1);
        lines << place + (found.isEmpty() ? QString() : QStringLiteral(" \"%1\"").arg(found)) + QStringLiteral(": ") +
                     text(cell.wrong);
    }
    if (unread.size() > mostNamed) lines << tr("and %1 more").arg(unread.size() - mostNamed);
    if (!lines.isEmpty())
        lines.prepend(unread.size() == 1 ? tr("One cell is not understood:")
                                         : tr("%1 cells are not understood:").arg(unread.size()));
    notUnderstood_->say(lines.join(QLatin1Char('\n')));
    leaveOut_->setVisible(!unread.empty() && !given_.empty());
}

// What comes out, and how the same numbers would read in the boat's own unit or the next likely one.
void OffsetsDialog::tell() {
    const bool placed = std::ranges::count(table_.uses, io::ColumnUse::along) == 1 &&
                        std::ranges::count(table_.uses, io::ColumnUse::up) == 1;
    const double length_m = model::lengthThrough(points_);
    QString words = table_.header.size() < 2 ? tr("There is one column only: copy x and y.")
                    : placed                 ? tr("No point is understood.")
                                             : tr("Choose which column is x, and which is y.");
    if (taken_ > 0) {
        words = (taken_ == 1 ? tr("One point.") : tr("%1 points, %2 long.").arg(taken_).arg(said(length_m)));
        const int row = unit_->currentIndex();
        if (readings_.size() > 1) {
            const io::UnitReading& other = readings_[row == 0 ? 1 : 0];
            words += QLatin1Char(' ') + tr("In %1 they would be %2.").arg(unitName(other.unit), said(other.length_m));
        }
    }
    outcome_->setText(words);
    const bool unusual = taken_ > 1 && !(length_m >= io::shortestPiece_m && length_m <= io::longestPiece_m);
    unusualLength_->say(!unusual
                            ? QString()
                            : tr("Caution: %1 is %2 than usual. Check the unit.")
                                  .arg(said(length_m), length_m > io::longestPiece_m ? tr("longer") : tr("shorter")));
}

QString OffsetsDialog::said(double length_m) const {
    return text(units::writeOverall(length_m, into_.display.lengths));
}

}  // namespace fayline::app
