#include "app/panels/findings_list.hpp"

#include <QHash>
#include <QListView>
#include <QMouseEvent>
#include <QPainter>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/findings_model.hpp"
#include "app/panels/offsets_model.hpp"
#include "app/panels/parts.hpp"
#include "app/panels/reading.hpp"

namespace fayline::app {

namespace {

constexpr int shapeSide = 12;

// Shape and word, the sentence wrapped beside them, the place under it.
class FindingDelegate : public QStyledItemDelegate {
public:
    explicit FindingDelegate(QListView* view) : QStyledItemDelegate(view), view_(view) {}

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const int width = view_->viewport()->width();
        if (width != measuredWidth_ || option.font != measuredFont_ || heights_.size() > mostHeights) heights_.clear();
        measuredWidth_ = width;
        measuredFont_ = option.font;
        const QString said = words(index);
        const QString shape = textShape(said, option.font);
        const auto known = heights_.constFind(shape);
        if (known != heights_.constEnd()) return {width, *known};
        const QRect text =
            QFontMetrics(option.font).boundingRect(QRect(0, 0, textWidth(width), 100000), Qt::TextWordWrap, said);
        return {width, *heights_.insert(shape, text.height() + gridStep)};
    }

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
        const Theme& t = theme();
        const auto severity = static_cast<plan::Severity>(index.data(severityRole).toInt());
        painter->save();
        if (option.state & (QStyle::State_Selected | QStyle::State_MouseOver)) {
            QColor wash = t.accent;
            wash.setAlphaF(option.state & QStyle::State_Selected ? 0.16f : 0.08f);
            painter->fillRect(option.rect, wash);
        }
        painter->fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1), t.rule);
        const QRect inner = option.rect.adjusted(gridStep / 2, gridStep / 2, -gridStep / 2, -gridStep / 2);
        const int line = QFontMetrics(option.font).height();
        painter->setRenderHint(QPainter::Antialiasing);
        const QRectF box(inner.left(), inner.top() + (line - shapeSide) / 2.0, shapeSide, shapeSide);
        painter->fillPath(findingShape(severity, box), findingColor(severity));
        painter->setFont(option.font);
        painter->setPen(findingColor(severity));
        const int left = inner.left() + shapeSide + gridStep / 2;
        painter->drawText(QRect(left, inner.top(), wordWidth(), line), Qt::AlignLeft | Qt::AlignVCenter,
                          severityWord(severity));
        painter->setPen(t.ink);
        painter->drawText(QRect(left + wordWidth(), inner.top(), textWidth(option.rect.width()), inner.height()),
                          Qt::TextWordWrap, words(index));
        if ((option.state & QStyle::State_HasFocus) && view_->hasFocus()) {
            painter->setRenderHint(QPainter::Antialiasing, false);
            painter->setPen(QPen(t.accent, 1));
            painter->drawRect(option.rect.adjusted(0, 0, -1, -2));
        }
        painter->restore();
    }

private:
    static QString words(const QModelIndex& index) {
        return index.siblingAtColumn(FindingsModel::textColumn).data().toString();
    }
    int wordWidth() const {
        return qRound(app::textWidth(severityWord(plan::Severity::caution), view_->font())) + gridStep;
    }
    int textWidth(int whole) const {
        return std::max(whole - gridStep - shapeSide - gridStep / 2 - wordWidth(), gridStep * 8);
    }

    static constexpr int mostHeights = 200;
    mutable QHash<QString, int> heights_;  // by the shape of what rows say, at one width in one font
    mutable int measuredWidth_ = -1;
    mutable QFont measuredFont_;
    QListView* view_;
};

}  // namespace

FindingsList::FindingsList(QWidget* parent)
    : QWidget(parent),
      model_(new FindingsModel(this)),
      view_(new QListView(this)),
      none_(new Words(QStringLiteral("noFindings"), false, this)),
      source_(new Words(QStringLiteral("findingSource"), false, this)),
      repairsLayout_(new QVBoxLayout) {
    setObjectName(QStringLiteral("findingsList"));
    setAccessibleName(tr("Findings"));
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(gridStep / 2);
    view_->setObjectName(QStringLiteral("findings"));
    view_->setAccessibleName(tr("Findings, the worst first"));
    view_->setModel(model_);
    view_->setModelColumn(FindingsModel::textColumn);
    view_->setItemDelegate(new FindingDelegate(view_));
    view_->setFrameShape(QFrame::NoFrame);
    view_->setResizeMode(QListView::Adjust);
    view_->setWordWrap(true);
    view_->setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
    view_->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    view_->setMouseTracking(true);
    view_->viewport()->installEventFilter(this);
    view_->viewport()->setAutoFillBackground(false);
    source_->setForegroundRole(QPalette::PlaceholderText);
    repairsLayout_->setContentsMargins(0, 0, 0, 0);
    repairsLayout_->setSpacing(gridStep / 2);
    layout->addWidget(none_);
    layout->addWidget(view_, 1);
    layout->addWidget(source_);
    layout->addLayout(repairsLayout_);
    connect(view_, &QListView::clicked, this, [this](const QModelIndex& index) { choose(index.row()); });
    connect(view_, &QListView::activated, this, [this](const QModelIndex& index) { choose(index.row()); });
    connect(view_->selectionModel(), &QItemSelectionModel::currentChanged, this, &FindingsList::showSource);
}

FindingsList::~FindingsList() = default;

void FindingsList::show(const Shown& shown) {
    const bool changed = model_->show(std::make_shared<const Shown>(shown));
    const bool any = model_->rowCount() > 0;
    if (view_->isHidden() == any) view_->setVisible(any);
    none_->say(any                                   ? QString()
               : shown.pieceIndex >= 0 && shown.plan ? tr("Nothing was found wrong.")
                                                     : tr("There is no plan yet."));
    showSource();
    showRepairs(shown);
    if (changed && any) view_->doItemsLayout();  // now rather than by its timer, after all else has been painted
}

void FindingsList::showSource() {
    const plan::Finding* finding = model_->finding(view_->currentIndex().row());
    source_->say(finding ? tr("Limit from %1").arg(sourceText(finding->source)) : QString());
}

void FindingsList::showRepairs(const Shown& shown) {
    repairs_ = repairsOf(shown);
    while (buttons_.size() < repairs_.size()) {
        const std::size_t number = buttons_.size();
        QPushButton* button = wordButton(QStringLiteral("repair%1").arg(number), {}, this);
        repairsLayout_->addWidget(button, 0, Qt::AlignLeft);
        connect(button, &QPushButton::clicked, this, [this, number] {
            if (number < repairs_.size()) emit changeAsked(repairs_[number].change);
        });
        buttons_.push_back(button);
    }
    for (std::size_t i = 0; i < buttons_.size(); ++i) {
        const bool used = i < repairs_.size();
        if (used && buttons_[i]->toolTip() != repairs_[i].text) {
            buttons_[i]->setText(repairs_[i].change.name);
            buttons_[i]->setToolTip(repairs_[i].text);
            buttons_[i]->setAccessibleName(repairs_[i].text);
        }
        if (buttons_[i]->isHidden() == used) buttons_[i]->setVisible(used);
    }
}

void FindingsList::choose(int row) {
    if (const plan::Finding* finding = model_->finding(row))
        emit findingChosen(plan::aboutOf(finding->code), finding->at_m, finding->point);
}

bool FindingsList::eventFilter(QObject* object, QEvent* event) {
    if (object == view_->viewport() && event->type() == QEvent::MouseMove) {
        const plan::Finding* finding = model_->finding(view_->indexAt(static_cast<QMouseEvent*>(event)->pos()).row());
        emit placeHovered(finding ? finding->at_m : std::nullopt);
    }
    if (object == view_->viewport() && event->type() == QEvent::Leave) emit placeHovered(std::nullopt);
    return QWidget::eventFilter(object, event);
}

}  // namespace fayline::app
