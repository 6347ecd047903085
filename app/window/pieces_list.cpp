#include "app/window/pieces_list.hpp"

#include <QAction>
#include <QLabel>
#include <QListWidget>
#include <QSignalBlocker>
#include <QToolButton>
#include <QVBoxLayout>

#include "app/look/icons.hpp"
#include "app/look/theme.hpp"
#include "app/panels/findings_list.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr int shapeSide = 16;

// As wide as a shape, so that all names begin at one place.
QIcon noMark() {
    QPixmap nothing(shapeSide, shapeSide);
    nothing.fill(Qt::transparent);
    return QIcon(nothing);
}

}  // namespace

PiecesList::PiecesList(const QList<QAction*>& actions, QWidget* parent)
    : QWidget(parent), list_(new QListWidget(this)) {
    setObjectName("pieces");
    auto* title = new QLabel(tr("Pieces"), this);
    title->setFont(textFont(TextSize::title));
    title->setBuddy(list_);

    list_->setObjectName("piecesList");
    list_->setAccessibleName(tr("Pieces of the boat"));
    list_->setFrameShape(QFrame::NoFrame);
    list_->setIconSize({shapeSide, shapeSide});
    list_->viewport()->setAutoFillBackground(false);  // lies on the ground, no box of its own
    list_->setDragDropMode(QAbstractItemView::InternalMove);
    list_->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed);
    list_->setTextElideMode(Qt::ElideRight);
    list_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);

    auto* buttons = new QHBoxLayout;
    buttons->setSpacing(gridStep / 2);
    for (QAction* action : actions) {
        auto* button = new QToolButton(this);
        button->setDefaultAction(action);
        button->setAutoRaise(true);
        button->setIconSize({20, 20});
        button->setFocusPolicy(Qt::TabFocus);
        button->setAccessibleName(action->toolTip());
        buttons->addWidget(button);
    }
    buttons->addStretch();

    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(gridStep, gridStep, gridStep, gridStep / 2);
    column->setSpacing(gridStep);
    column->addWidget(title);
    column->addWidget(list_, 1);
    column->addLayout(buttons);

    connect(list_, &QListWidget::currentRowChanged, this, [this](int row) {
        if (!filling_ && row >= 0) emit pieceChosen(row);
    });
    connect(list_, &QListWidget::itemChanged, this, [this](QListWidgetItem* item) {
        if (!filling_) emit renameAsked(list_->row(item), item->text().trimmed());
    });
    connect(list_->model(), &QAbstractItemModel::rowsMoved, this,
            [this](const QModelIndex&, int from, int, const QModelIndex&, int to) {
                // Asked for once the list has done with its own move, since the answer fills it anew.
                if (filling_) return;
                QMetaObject::invokeMethod(
                    this, [this, from, to] { emit moveAsked(from, to > from ? to - 1 : to); }, Qt::QueuedConnection);
            });
}

void PiecesList::show(const model::Boat& boat, int current, const std::vector<PieceMark>& marks) {
    filling_ = true;
    while (list_->count() > math::countOf(boat.pieces)) delete list_->takeItem(list_->count() - 1);
    while (list_->count() < math::countOf(boat.pieces)) {
        auto* item = new QListWidgetItem;
        item->setSizeHint({0, 3 * gridStep + gridStep / 2});
        item->setFlags(Qt::ItemIsEnabled | Qt::ItemIsSelectable | Qt::ItemIsEditable | Qt::ItemIsDragEnabled);
        list_->addItem(item);
    }
    for (int i = 0; i < list_->count(); ++i) {
        QListWidgetItem* item = list_->item(i);
        const QString name = QString::fromStdString(boat.pieces[i].name);
        const PieceMark& mark = marks[i];
        const bool renamed = item->text() != name;
        if (renamed) item->setText(name);
        if (renamed || size_t(i) >= marks_.size() || marks_[i] != mark) {
            const bool looksAsBefore = !renamed && size_t(i) < marks_.size() && marks_[i].worst == mark.worst;
            // What is only in the tool tip changes with every plan while a point is dragged; the list is not drawn
            // anew for it.
            const QSignalBlocker quiet(looksAsBefore ? list_->model() : nullptr);
            item->setToolTip(mark.why);
            if (looksAsBefore) continue;
            item->setIcon(mark.worst ? findingIcon(*mark.worst) : noMark());
            item->setData(Qt::AccessibleTextRole,
                          mark.worst ? tr("%1. Worst finding: %2").arg(name, severityWord(*mark.worst)) : name);
        }
    }
    marks_ = marks;
    list_->setCurrentRow(current);
    filling_ = false;
}

void PiecesList::editName(int index) {
    if (QListWidgetItem* item = list_->item(index)) {
        list_->setFocus();
        list_->editItem(item);
    }
}

}  // namespace fayline::app

#include "moc_pieces_list.cpp"
