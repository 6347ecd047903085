#include "app/panels/notebook_table.hpp"

#include <QEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QScrollBar>
#include <algorithm>
#include <cmath>
#include <set>

#include "app/look/theme.hpp"
#include "app/panels/panel_scroll.hpp"
#include "app/panels/piece_table.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

// Small and faint, with a second line where the model has one.
class NotebookHeader : public QHeaderView {
public:
    explicit NotebookHeader(NotebookTable* table) : QHeaderView(Qt::Horizontal, table), table_(table) {
        setSectionsClickable(false);
        setHighlightSections(false);
    }

    QSize sizeHint() const override {
        const int line = QFontMetrics(textFont(TextSize::small)).height();
        qsizetype under = 0;
        for (int section = 0; table_->twoLines() && model() && section < count(); ++section)
            under = std::max(under, underOf(section).size());
        return {0, int(line * (1 + std::max<qsizetype>(under, table_->twoLines())) + gridStep / 2)};
    }

protected:
    void paintSection(QPainter* painter, const QRect& rect, int section) const override {
        if (!model() || !rect.isValid()) return;
        const Theme& t = theme();
        painter->save();
        painter->fillRect(rect, t.ground);
        painter->setFont(textFont(TextSize::small));
        const int alignment = model()->headerData(section, Qt::Horizontal, Qt::TextAlignmentRole).toInt();
        const QRect inner = rect.adjusted(gridStep / 2, 0, -gridStep / 2, -gridStep / 4);
        const int horizontal = alignment & Qt::AlignHorizontal_Mask;
        painter->setPen(t.faint);
        const int line = painter->fontMetrics().height();
        QStringList lines{model()->headerData(section, Qt::Horizontal, Qt::DisplayRole).toString()};
        if (table_->twoLines()) lines += underOf(section);
        const int all = std::max(1, (height() - gridStep / 2) / line);  // the most of any column
        QRect at(inner.left(), inner.bottom() + 1 - all * line, inner.width(), line);
        for (const QString& words : lines) {
            painter->drawText(at, horizontal | Qt::AlignBottom | Qt::TextSingleLine, words);
            at.translate(0, line);
        }
        painter->setPen(t.faint);
        painter->drawLine(rect.bottomLeft(), rect.bottomRight());
        painter->restore();
    }

private:
    QStringList underOf(int section) const {
        return model()->headerData(section, Qt::Horizontal, underRole).toString().split(QLatin1Char('\n'));
    }

    NotebookTable* table_;
};

}  // namespace

NotebookTable::NotebookTable(QWidget* parent) : QTableView(parent) {
    setHorizontalHeader(new NotebookHeader(this));
    setItemDelegate(new CellDelegate(this));
    verticalHeader()->hide();
    setShowGrid(false);
    setFrameShape(QFrame::NoFrame);
    setMouseTracking(true);
    setTabKeyNavigation(false);
    setSelectionBehavior(SelectRows);
    setSelectionMode(ExtendedSelection);
    setEditTriggers(DoubleClicked | SelectedClicked | EditKeyPressed | AnyKeyPressed);
    setVerticalScrollMode(ScrollPerPixel);
    setHorizontalScrollMode(ScrollPerPixel);
    setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    setWordWrap(false);
    setCornerButtonEnabled(false);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    viewport()->setAutoFillBackground(false);
    connect(this, &QTableView::clicked, this, [this](const QModelIndex& index) {
        const QVariant place = index.data(placeRole);
        if (place.isValid()) emit placeSelected(place.toDouble());
        if (index.data(sourceRole).isValid()) emit sourceAsked(index);
    });
    layOut();
}

void NotebookTable::setColumns(const std::vector<ColumnWidth>& columns, int stretched) {
    columns_ = columns;
    stretched_ = stretched;
    layOut();
}

void NotebookTable::setTwoLines(bool two) {
    twoLines_ = two;
    layOut();
}

void NotebookTable::setLinesUnder(int lines) {
    if (lines == linesUnder_) return;
    linesUnder_ = lines;
    layOut();
}

void NotebookTable::setModel(QAbstractItemModel* model) {
    QTableView::setModel(model);
    connect(model, &QAbstractItemModel::rowsInserted, this, &NotebookTable::fitHeight);
    connect(model, &QAbstractItemModel::rowsRemoved, this, &NotebookTable::fitHeight);
    connect(model, &QAbstractItemModel::modelReset, this, &NotebookTable::fitHeight);
    for (const auto moved : {&QAbstractItemModel::rowsInserted, &QAbstractItemModel::rowsRemoved})
        connect(model, moved, this, &NotebookTable::drawAllAnew);
    connect(model, &QAbstractItemModel::rowsMoved, this, &NotebookTable::drawAllAnew);
    connect(model, &QAbstractItemModel::layoutChanged, this, &NotebookTable::drawAllAnew);
    connect(model, &QAbstractItemModel::modelReset, this, &NotebookTable::drawAllAnew);
    layOut();
}

void NotebookTable::layOut() {
    const QFont figures = tabularFont(font());
    const int line = QFontMetrics(figures).height();
    const int under = QFontMetrics(tabularFont(textFont(TextSize::small))).height();
    verticalHeader()->setMinimumSectionSize(line);
    verticalHeader()->setDefaultSectionSize(line + (twoLines_ ? linesUnder_ * under : 0) + gridStep + gridStep / 4);
    verticalHeader()->setSectionResizeMode(QHeaderView::Fixed);
    if (model() && !columns_.empty()) {
        const QFontMetrics metrics(figures);
        const QFontMetrics small(textFont(TextSize::small));
        horizontalHeader()->setMinimumSectionSize(gridStep * 2);
        std::set<int> shown;
        int visual = 0;
        for (const ColumnWidth& column : columns_) {
            shown.insert(column.column);
            setColumnHidden(column.column, false);
            horizontalHeader()->moveSection(horizontalHeader()->visualIndex(column.column), visual++);
            const QString name = model()->headerData(column.column, Qt::Horizontal, Qt::DisplayRole).toString();
            const QString below = model()->headerData(column.column, Qt::Horizontal, underRole).toString();
            int width = std::max(metrics.horizontalAdvance(column.widest), small.horizontalAdvance(name));
            for (const QString& words : below.split(QLatin1Char('\n')))
                width = std::max(width, small.horizontalAdvance(words));
            horizontalHeader()->setSectionResizeMode(
                column.column, column.column == stretched_ ? QHeaderView::Stretch : QHeaderView::Fixed);
            setColumnWidth(column.column, width + gridStep + 3);
        }
        for (int column = 0; column < model()->columnCount(); ++column)
            if (!shown.contains(column)) setColumnHidden(column, true);
    }
    fitHeight();
}

bool NotebookTable::endsRows(const QModelIndex& index) const {
    if (grows_ == Grows::never || !index.isValid() || index.row() + 1 < model()->rowCount()) return false;
    const int visual = horizontalHeader()->visualIndex(index.column());
    return std::ranges::none_of(columns_, [&](const ColumnWidth& column) {
        const QModelIndex other = index.siblingAtColumn(column.column);
        return horizontalHeader()->visualIndex(column.column) > visual && (other.flags() & Qt::ItemIsEditable) &&
               other.data(choicesRole).toStringList().isEmpty();
    });
}

void NotebookTable::drawn(const QModelIndex& index, const CellLook& look) {
    drawn_[{index.row(), index.column()}] = look;
}

// Rows have come or gone: nothing on the screen belongs to its index any more.
void NotebookTable::drawAllAnew() {
    drawn_.clear();
    viewport()->update();
}

void NotebookTable::dataChanged(const QModelIndex& topLeft, const QModelIndex& bottomRight, const QList<int>& roles) {
    if (topLeft == bottomRight || !topLeft.isValid() || !bottomRight.isValid() || !isVisible())
        return QTableView::dataChanged(topLeft, bottomRight, roles);
    // What cannot be seen is drawn as it then is when it comes into view.
    const QRect seen = viewport()->visibleRegion().boundingRect();
    const int above = rowAt(seen.top());
    const int below = rowAt(seen.bottom());
    if (seen.isEmpty() || above < 0) return;
    const int last = std::min(bottomRight.row(), below < 0 ? model()->rowCount() - 1 : below);
    for (int row = std::max(topLeft.row(), above); row <= last; ++row) {
        for (int column = topLeft.column(); column <= bottomRight.column(); ++column) {
            if (isColumnHidden(column)) continue;
            const QModelIndex index = model()->index(row, column);
            const auto before = drawn_.find({row, column});
            if (before != drawn_.end() && before->second == cellLook(index)) continue;
            QTableView::dataChanged(index, index, roles);
        }
    }
}

void NotebookTable::fitHeight() {
    updateGeometry();
    lightPlace(litPlace_);
}

QSize NotebookTable::sizeHint() const {
    const int rows = std::clamp(model() ? model()->rowCount() : 0, 1, mostRows_);
    const int bar = horizontalScrollBar()->maximum() > 0 ? horizontalScrollBar()->sizeHint().height() : 0;
    return {gridStep * 40,
            horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() + bar + 1};
}

QSize NotebookTable::minimumSizeHint() const {
    return {gridStep * 20, sizeHint().height()};
}

int NotebookTable::rowNearest(double at_m) const {
    int nearest = -1;
    double least = INFINITY;
    for (int row = 0; row < model()->rowCount(); ++row) {
        const QVariant place = model()->index(row, 0).data(placeRole);
        if (!place.isValid() || std::abs(place.toDouble() - at_m) >= least) continue;
        least = std::abs(place.toDouble() - at_m);
        nearest = row;
    }
    return nearest;
}

void NotebookTable::lightPlace(std::optional<double> at_m) {
    litPlace_ = at_m;
    const int row = at_m && model() ? rowNearest(*at_m) : -1;
    if (row == litRow_) return;
    litRow_ = row;
    viewport()->update();
}

std::vector<int> NotebookTable::chosenRows() const {
    std::set<int> rows;
    if (!selectionModel()) return {};
    for (const QModelIndex& index : selectionModel()->selectedIndexes()) rows.insert(index.row());
    if (rows.empty() && currentIndex().isValid()) rows.insert(currentIndex().row());
    return {rows.begin(), rows.end()};
}

// One thing is chosen at a time: the hand that comes here leaves what it chose in other tables.
void NotebookTable::focusInEvent(QFocusEvent* event) {
    QTableView::focusInEvent(event);
    viewport()->update();
    for (NotebookTable* other : window()->findChildren<NotebookTable*>()) {
        if (other != this && other->selectionModel()) other->clearSelection();
    }
}

// The current cell shows where the keyboard is; where there is none, the table does.
void NotebookTable::paintEvent(QPaintEvent* event) {
    QTableView::paintEvent(event);
    if (!hasFocus() || currentIndex().isValid()) return;
    QPainter painter(viewport());
    painter.setPen(QPen(theme().accent, 1));
    painter.drawRect(viewport()->rect().adjusted(0, 0, -1, -1));
}

void NotebookTable::keyPressEvent(QKeyEvent* event) {
    const bool alt = event->modifiers() & Qt::AltModifier;
    if (event->matches(QKeySequence::Copy)) return emit copyAsked();
    if (event->matches(QKeySequence::Paste)) return emit pasteAsked();
    if (event->key() == Qt::Key_Delete) return emit removeAsked();
    if (event->key() == Qt::Key_Insert) return emit insertAsked();
    if (alt && event->key() == Qt::Key_Up) return emit moveAsked(-1);
    if (alt && event->key() == Qt::Key_Down) return emit moveAsked(+1);
    if ((event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) && state() != EditingState) {
        const QModelIndex current = currentIndex();
        if (current.data(sourceRole).isValid()) return emit sourceAsked(current);
        if (current.flags() & Qt::ItemIsEditable) return edit(current);
    }
    QTableView::keyPressEvent(event);
}

void NotebookTable::mouseMoveEvent(QMouseEvent* event) {
    QTableView::mouseMoveEvent(event);
    const QVariant place = indexAt(event->pos()).data(placeRole);
    emit placeHovered(place.isValid() ? std::optional<double>(place.toDouble()) : std::nullopt);
}

void NotebookTable::leaveEvent(QEvent* event) {
    QTableView::leaveEvent(event);
    emit placeHovered(std::nullopt);
}

void NotebookTable::changeEvent(QEvent* event) {
    QTableView::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) layOut();
}

void NotebookTable::currentChanged(const QModelIndex& current, const QModelIndex& previous) {
    QTableView::currentChanged(current, previous);
    if (hasFocus() && current.isValid()) bringIntoSight(viewport(), visualRect(current));
}

QModelIndex NotebookTable::moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) {
    if ((action != MoveNext && action != MovePrevious) || !currentIndex().isValid())
        return QTableView::moveCursor(action, modifiers);
    // From cell to cell that can be typed in, as a column of figures is filled.
    const int step = action == MoveNext ? 1 : -1;
    const int columns = math::countOf(columns_);
    int visual = horizontalHeader()->visualIndex(currentIndex().column());
    int row = currentIndex().row();
    for (int tried = 0; tried < columns * model()->rowCount(); ++tried) {
        visual += step;
        if (visual < 0 || visual >= columns) {
            visual = step > 0 ? 0 : columns - 1;
            row += step;
        }
        if (row < 0 || row >= model()->rowCount()) return {};
        const QModelIndex index = model()->index(row, horizontalHeader()->logicalIndex(visual));
        if (index.flags() & Qt::ItemIsEditable) return index;
    }
    return {};
}

}  // namespace fayline::app
