#include <QComboBox>
#include <QKeyEvent>
#include <QLineEdit>
#include <QMouseEvent>
#include <QPainter>
#include <QPointer>
#include <algorithm>
#include <cmath>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/piece_table.hpp"
#include "app/panels/searched_choice.hpp"

namespace fayline::app {

namespace {

constexpr const char* begun = "begun";  // an editor's text was set once; what is typed since is the user's
constexpr const char* itsCell = "itsCell";
constexpr int barHeight = 3;

void drawBar(QPainter* painter, const QRect& cell, double value, bool fromMiddle) {
    const Theme& t = theme();
    const QRectF track(cell.left() + gridStep / 2.0, cell.bottom() - barHeight - 1.0, cell.width() - gridStep,
                       barHeight);
    painter->fillRect(QRectF(track.left(), track.center().y(), track.width(), 1), t.rule);
    if (!fromMiddle) {
        painter->fillRect(QRectF(track.left(), track.top(), track.width() * value, track.height()), t.strain(value));
        return;
    }
    const double middle = track.center().x();
    const double reach = track.width() / 2 * value;
    painter->fillRect(QRectF(std::min(middle, middle + reach), track.top(), std::abs(reach), track.height()),
                      std::abs(value) < 1 ? t.ink : t.caution);
    painter->fillRect(QRectF(middle, track.top() - 1, 1, track.height() + 2), t.faint);
}

void drawTick(QPainter* painter, const QRect& cell, bool ticked) {
    const Theme& t = theme();
    constexpr double side = 12;
    const QRectF box(cell.center().x() - side / 2 + 0.5, cell.center().y() - side / 2 + 0.5, side, side);
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(t.faint, 1));
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(box);
    if (!ticked) return;
    painter->setPen(QPen(t.accent, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    painter->drawPolyline(
        QPolygonF({box.topLeft() + QPointF(2.5, 6), box.topLeft() + QPointF(5, 9), box.topLeft() + QPointF(9.5, 3)}));
}

}  // namespace

CellLook cellLook(const QModelIndex& index) {
    CellLook look;
    look.text = index.data(Qt::DisplayRole).toString();
    look.under = index.data(underRole).toString();
    look.bar = index.data(barRole);
    look.barFromMiddle = look.bar.isValid() && index.data(barFromMiddleRole).toBool();
    look.ticked = index.data(Qt::CheckStateRole);
    look.fault = index.data(faultRole).isValid();
    look.severity = look.fault ? QVariant(int(plan::Severity::stop)) : index.data(severityRole);
    look.alignment = index.data(Qt::TextAlignmentRole).toInt() & Qt::AlignHorizontal_Mask;
    const QIcon icon = index.data(Qt::DecorationRole).value<QIcon>();
    look.icon = icon.isNull() ? 0 : icon.cacheKey();
    look.faint = index.data(faintRole).toBool();
    return look;
}

CellDelegate::CellDelegate(NotebookTable* table) : QStyledItemDelegate(table), table_(table) {}

QSize CellDelegate::sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const {
    QSize size = QStyledItemDelegate::sizeHint(option, index);
    size.setHeight(table_->verticalHeader()->defaultSectionSize());
    return size;
}

void CellDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Theme& t = theme();
    const QRect cell = option.rect;
    painter->save();
    painter->fillRect(cell, t.ground);  // over the style's own, which would bury figures under the accent
    QColor wash = t.accent;
    wash.setAlphaF(0.16f);
    // What is pointed at is no choice: it has no colour, only a raised ground and a mark at the row's edge.
    if (index.row() == table_->litRow()) {
        painter->fillRect(cell, t.raised);
        if (table_->columnViewportPosition(index.column()) == 0)
            painter->fillRect(QRect(cell.left(), cell.top(), 2, cell.height()), t.faint);
    }
    if (option.state & QStyle::State_Selected) painter->fillRect(cell, wash);
    painter->fillRect(QRect(cell.left(), cell.bottom(), cell.width(), 1), t.rule);

    const CellLook look = cellLook(index);
    if (look.bar.isValid()) drawBar(painter, cell, look.bar.toDouble(), look.barFromMiddle);
    if (look.ticked.isValid()) {
        drawTick(painter, cell, look.ticked.toInt() == Qt::Checked);
    } else {
        drawText(painter, option, index, look);
    }
    table_->drawn(index, look);
    if ((option.state & QStyle::State_HasFocus) && table_->hasFocus()) {
        painter->setRenderHint(QPainter::Antialiasing, false);
        painter->setPen(QPen(t.accent, 1));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(cell.adjusted(0, 0, -1, -2));
    }
    painter->restore();
}

void CellDelegate::drawText(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index,
                            const CellLook& look) const {
    const Theme& t = theme();
    QRect inner = option.rect.adjusted(gridStep / 2, gridStep / 4, -gridStep / 2, -gridStep / 4);
    const QFont& figures = fonts(option.font).first;
    const int line = QFontMetrics(figures).height();
    const bool underlined = look.severity.isValid() && !look.fault && look.alignment == Qt::AlignRight;
    if (look.severity.isValid() && !underlined) {
        constexpr double side = 10;
        const auto kind = static_cast<plan::Severity>(look.severity.toInt());
        const QRectF box(inner.left(), inner.top() + (std::min(line, inner.height()) - side) / 2, side, side);
        painter->setRenderHint(QPainter::Antialiasing);
        painter->fillPath(findingShape(kind, box), findingColor(kind));
        inner.setLeft(inner.left() + static_cast<int>(side) + 3);
    }
    if (look.icon != 0) {
        constexpr int side = 16;
        const QIcon icon = index.data(Qt::DecorationRole).value<QIcon>();
        icon.paint(painter, QRect(inner.left(), inner.top() + (line - side) / 2, side, side));
        inner.setLeft(inner.left() + side + gridStep / 2);
    }
    if (table_->twoLines())
        inner.setHeight(line);
    else if (look.bar.isValid())
        inner.setBottom(inner.bottom() - barHeight);
    // A long name is set smaller before it is cut.
    const bool smaller = qRound(textWidth(look.text, figures)) > inner.width();
    const QFont& small = fonts(option.font).second;
    const QFont& font = smaller ? small : figures;
    painter->setFont(font);
    painter->setPen(look.fault ? t.stop : look.faint ? t.faint : t.ink);
    const QString fitting = elided(look.text, font, inner.width());
    painter->drawText(inner, look.alignment | Qt::AlignVCenter | Qt::TextSingleLine, fitting);
    if (underlined) {
        // The shape stands in the row's first cell; figures have no room for it.
        const int wide = qRound(textWidth(fitting, font));
        painter->fillRect(QRect(inner.right() + 1 - wide, inner.bottom() - gridStep / 4, wide, 2),
                          findingColor(static_cast<plan::Severity>(look.severity.toInt())));
    }
    if (table_->twoLines() && !look.under.isEmpty()) {
        painter->setFont(small);
        painter->setPen(t.faint);
        QRect below(inner.left(), inner.bottom() + 1, inner.width(), QFontMetrics(small).height());
        for (const QString& words : look.under.split(QLatin1Char('\n'))) {
            painter->drawText(below, look.alignment | Qt::AlignVCenter | Qt::TextSingleLine,
                              elided(words, small, inner.width()));
            below.translate(0, below.height());
        }
    }
}

// The fonts of figures and of what stands smaller; looked up once, not for every cell.
const std::pair<QFont, QFont>& CellDelegate::fonts(const QFont& base) const {
    const QFont desktop = textFont(TextSize::small);
    if (!fonts_ || base_ != base || small_ != desktop) {
        base_ = base;
        small_ = desktop;
        fonts_ = {tabularFont(base), tabularFont(desktop)};
    }
    return *fonts_;
}

QWidget* CellDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const {
    const QString column = index.model()->headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString();
    const QString name = tr("%1, row %2").arg(column).arg(index.row() + 1);
    QWidget* editor = nullptr;
    const QStringList choices = index.data(choicesRole).toStringList();
    if (!choices.isEmpty()) {
        const auto groups = index.data(groupsRole).value<QList<ChoiceGroup>>();
        auto* searched = groups.isEmpty() ? nullptr : new SearchedChoice(parent);
        auto* combo = searched ? searched : new QComboBox(parent);
        searched ? searched->setGroups(groups) : combo->addItems(choices);
        auto* self = const_cast<CellDelegate*>(this);
        connect(combo, &QComboBox::activated, self, [self, combo] {
            emit self->commitData(combo);
            emit self->closeEditor(combo);
        });
        editor = combo;
    } else {
        auto* edit = new QLineEdit(parent);
        edit->setFrame(true);
        edit->setFont(tabularFont(edit->font()));
        edit->setAlignment(Qt::Alignment(index.data(Qt::TextAlignmentRole).toInt() & Qt::AlignHorizontal_Mask) |
                           Qt::AlignVCenter);
        editor = edit;
    }
    editor->setAccessibleName(name);
    editor->setObjectName(QStringLiteral("cellEditor"));
    editor->setProperty(itsCell, QVariant::fromValue(QPersistentModelIndex(index)));
    return editor;
}

void CellDelegate::setEditorData(QWidget* editor, const QModelIndex& index) const {
    // A new plan tells the view that every cell has changed; what the user is typing is not to be taken away by that.
    if (editor->property(begun).toBool()) return;
    editor->setProperty(begun, true);
    const QString text = index.data(Qt::EditRole).toString();
    if (auto* combo = qobject_cast<QComboBox*>(editor)) combo->setCurrentIndex(combo->findText(text));
    if (auto* searched = qobject_cast<SearchedChoice*>(editor)) searched->lineEdit()->selectAll();
    if (auto* edit = qobject_cast<QLineEdit*>(editor)) {
        edit->setText(text);
        edit->selectAll();
    }
}

void CellDelegate::setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const {
    if (const auto* searched = qobject_cast<SearchedChoice*>(editor)) {
        model->setData(index, searched->wanted(), Qt::EditRole);
    } else if (const auto* combo = qobject_cast<QComboBox*>(editor); combo && combo->currentIndex() >= 0) {
        model->setData(index, combo->currentText(), Qt::EditRole);
    }
    if (const auto* edit = qobject_cast<QLineEdit*>(editor)) model->setData(index, edit->text(), Qt::EditRole);
}

void CellDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                        const QModelIndex& index) const {
    QRect cell = option.rect;
    // A long text is worth more room than its column has; a list needs it for its names.
    const int wanted = qobject_cast<QComboBox*>(editor) ? editor->sizeHint().width() : cell.width();
    cell.setWidth(std::max(cell.width(), wanted));
    if (editor->parentWidget() && cell.right() > editor->parentWidget()->width())
        cell.moveRight(std::max(editor->parentWidget()->width() - 1, cell.width() - 1));
    Q_UNUSED(index);
    editor->setGeometry(cell);
}

bool CellDelegate::eventFilter(QObject* object, QEvent* event) {
    auto* edit = qobject_cast<QLineEdit*>(object);
    if (edit && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        const QPersistentModelIndex cell = edit->property(itsCell).value<QPersistentModelIndex>();
        if (key->key() == Qt::Key_Escape) {
            if (auto* model = qobject_cast<PieceTable*>(table_->model())) model->dropDraft(cell);
            const bool done = QStyledItemDelegate::eventFilter(object, event);
            emit table_->typingGivenUp(cell);
            return done;
        }
        const bool ends = table_->endsRows(cell);
        const bool enters = key->key() == Qt::Key_Return || key->key() == Qt::Key_Enter;
        if (enters || (key->key() == Qt::Key_Tab && ends)) {
            const QPointer<QLineEdit> alive(edit);
            emit commitData(edit);
            if (!alive) return true;
            auto* model = qobject_cast<PieceTable*>(table_->model());
            if (model && model->isUnread(cell)) return true;  // the reason stands under the table; the text stays here
            emit closeEditor(edit);
            if (ends && (!enters || table_->growsByEnter())) {
                emit table_->rowAsked();
                return true;
            }
            // On to the cell below, as a column of figures is typed.
            if (cell.isValid() && cell.row() + 1 < table_->model()->rowCount())
                table_->setCurrentIndex(table_->model()->index(cell.row() + 1, cell.column()));
            return true;
        }
    }
    return QStyledItemDelegate::eventFilter(object, event);
}

bool CellDelegate::editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                               const QModelIndex& index) {
    const QVariant checked = index.data(Qt::CheckStateRole);
    if (!checked.isValid() || !(index.flags() & Qt::ItemIsUserCheckable)) return false;
    bool toggle = false;
    if (event->type() == QEvent::MouseButtonRelease) {
        const auto* mouse = static_cast<QMouseEvent*>(event);
        toggle = mouse->button() == Qt::LeftButton && option.rect.contains(mouse->pos());
    } else if (event->type() == QEvent::KeyPress) {
        const int key = static_cast<QKeyEvent*>(event)->key();
        toggle = key == Qt::Key_Space || key == Qt::Key_Select;
    }
    if (!toggle) return false;
    return model->setData(index, int(checked.toInt() == Qt::Checked ? Qt::Unchecked : Qt::Checked), Qt::CheckStateRole);
}

}  // namespace fayline::app
