#include "app/panels/parts.hpp"

#include <QEvent>
#include <QGridLayout>
#include <QPainter>
#include <QResizeEvent>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "app/panels/reading.hpp"

namespace fayline::app {

namespace {

constexpr std::size_t mostHeights = 200;  // known at a time

}  // namespace

AnswerNote::AnswerNote(plan::Question question, const QString& pathBegins, QWidget* parent)
    : QWidget(parent),
      question_(question),
      pathBegins_(pathBegins),
      sentence_(new QLabel(this)),
      reason_(new QLabel(this)) {
    QSizePolicy grows(QSizePolicy::Preferred, QSizePolicy::Preferred);
    grows.setHeightForWidth(true);
    setSizePolicy(grows);
    sentence_->setObjectName(QStringLiteral("answer"));
    sentence_->setAccessibleName(tr("Answer"));
    sentence_->setFont(textFont(TextSize::sentence));
    reason_->setObjectName(QStringLiteral("reason"));
    reason_->setAccessibleName(tr("What is wrong"));
    reason_->setForegroundRole(QPalette::BrightText);
    reason_->hide();
    for (QLabel* label : {sentence_, reason_}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->setTextInteractionFlags(Qt::TextSelectableByMouse);
        label->setAlignment(Qt::AlignLeft | Qt::AlignTop);
    }
}

QSize AnswerNote::sizeHint() const {
    return {40 * gridStep, heightForWidth(std::max(width(), minimumSizeHint().width()))};
}

QSize AnswerNote::minimumSizeHint() const {
    return {20 * gridStep, sentence_->fontMetrics().height()};
}

int AnswerNote::heightForWidth(int width) const {
    QString shape = textShape(sentence_->text(), sentence_->font());
    if (!reason_->isHidden()) shape += u'\n' + textShape(reason_->text(), reason_->font());
    const std::pair key(width, shape);
    const int least = width == this->width() ? kept_ : 0;
    if (const auto known = heights_.find(key); known != heights_.end()) return std::max(least, known->second);
    if (heights_.size() > mostHeights) heights_.clear();
    const int under = reason_->isHidden() ? 0 : gridStep / 2 + reason_->heightForWidth(width);
    return std::max(least, heights_[key] = sentence_->heightForWidth(width) + under);
}

void AnswerNote::place() {
    const int upper = reason_->isHidden() ? height() : sentence_->heightForWidth(width());
    sentence_->setGeometry(0, 0, width(), upper);
    const int lower = upper + gridStep / 2;
    if (!reason_->isHidden()) reason_->setGeometry(0, lower, width(), std::max(0, height() - lower));
}

void AnswerNote::measureAnew() {
    if (heightForWidth(width()) != height()) updateGeometry();
    place();
}

void AnswerNote::resizeEvent(QResizeEvent* event) {
    if (event->size().width() != event->oldSize().width()) kept_ = 0;
    place();
}

void AnswerNote::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange && event->type() != QEvent::StyleChange) return;
    heights_.clear();
    measureAnew();
}

void AnswerNote::show(const Shown& shown) {
    QString sentence = shown.pieceIndex < 0 ? tr("The boat has no piece yet.") : tr("Calculating");
    if (shown.pieceIndex >= 0 && shown.plan) {
        const auto& answers = shown.plan->answers;
        const auto answer = std::find_if(answers.begin(), answers.end(),
                                         [this](const plan::Answer& a) { return a.question == question_; });
        sentence = answer == answers.end() ? QString() : text(plan::answerText(*answer, shown.display));
    }
    QString reason;
    if (shown.pieceIndex >= 0 && !shown.reason.isEmpty()) {
        reason = shown.reasonPath.startsWith(pathBegins_) ? tr("Cannot be planned. Fix first: %1.").arg(shown.reason)
                                                          : tr("Old result. Fix first: %1.").arg(shown.reason);
        if (!shown.plan) sentence = tr("No plan yet.");
    } else if (shown.outOfDate) {
        reason = tr("Old result. Calculating the new one.");
    }
    sentence_->setEnabled(!shown.outOfDate);
    const bool gives = kept_ > 0 && !followsHand(shown);
    kept_ = followsHand(shown) && isVisible() ? height() : 0;
    if (sentence_->text() == sentence && reason_->text() == reason && !gives) return;
    if (sentence_->text() != sentence) sentence_->setText(sentence);
    if (reason_->text() != reason) reason_->setText(reason);
    if (reason_->isHidden() != reason.isEmpty()) reason_->setVisible(!reason.isEmpty());
    measureAnew();
}

Heading::Heading(const QString& text, QWidget* parent) : QLabel(text, parent) {
    QFont bold = textFont(TextSize::body);
    bold.setWeight(QFont::DemiBold);
    setFont(bold);
    setContentsMargins(0, gridStep / 2, 0, 0);
}

QSize Heading::minimumSizeHint() const {
    return {0, QLabel::minimumSizeHint().height()};
}

void Heading::paintEvent(QPaintEvent* event) {
    QLabel::paintEvent(event);
    QPainter painter(this);
    const int from = fontMetrics().horizontalAdvance(text()) + gridStep;
    const int level = (height() + gridStep / 2) / 2 + 1;
    painter.setPen(QPen(theme().rule, 1));
    if (from < width()) painter.drawLine(from, level, width(), level);
}

QToolButton* iconButton(const QString& object, const QString& iconName, const QString& name, QWidget* parent) {
    auto* button = new QToolButton(parent);
    button->setObjectName(object);
    button->setIcon(icon(iconName));
    button->setAccessibleName(name);
    button->setToolTip(name);
    button->setAutoRaise(true);
    button->setFocusPolicy(Qt::StrongFocus);
    return button;
}

QPushButton* wordButton(const QString& object, const QString& words, QWidget* parent) {
    auto* button = new QPushButton(words, parent);
    button->setObjectName(object);
    button->setAccessibleName(words);
    button->setAutoDefault(false);
    return button;
}

Words::Words(const QString& object, bool warning, QWidget* parent) : QLabel(parent) {
    setObjectName(object);
    setWordWrap(true);
    setTextFormat(Qt::PlainText);
    if (warning) setForegroundRole(QPalette::BrightText);
    hide();
}

void Words::say(const QString& words) {
    if (text() == words) return;
    setText(words);
    setVisible(!words.isEmpty());
}

SteadyWords::SteadyWords(const QString& object, QWidget* parent) : QWidget(parent), label_(new QLabel(this)) {
    QSizePolicy grows(QSizePolicy::Preferred, QSizePolicy::Preferred);
    grows.setHeightForWidth(true);
    setSizePolicy(grows);
    label_->setObjectName(object);
    label_->setWordWrap(true);
    label_->setTextFormat(Qt::PlainText);
    label_->setTextInteractionFlags(Qt::TextSelectableByMouse);
    hide();
}

QSize SteadyWords::sizeHint() const {
    return {40 * gridStep, heightForWidth(std::max(width(), minimumSizeHint().width()))};
}

QSize SteadyWords::minimumSizeHint() const {
    return {20 * gridStep, label_->fontMetrics().height()};
}

int SteadyWords::heightForWidth(int width) const {
    const std::pair key(width, textShape(label_->text(), label_->font()));
    if (const auto known = heights_.find(key); known != heights_.end()) return known->second;
    if (heights_.size() > mostHeights) heights_.clear();
    return heights_[key] = label_->heightForWidth(width);
}

void SteadyWords::say(const QString& words) {
    if (label_->text() == words) return;
    label_->setText(words);
    if (isHidden() != words.isEmpty()) setVisible(!words.isEmpty());
    measureAnew();
}

void SteadyWords::measureAnew() {
    if (heightForWidth(width()) != height()) updateGeometry();
    label_->setGeometry(rect());
}

void SteadyWords::resizeEvent(QResizeEvent*) {
    label_->setGeometry(rect());
}

void SteadyWords::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange && event->type() != QEvent::StyleChange) return;
    heights_.clear();
    measureAnew();
}

void growToFit(QWidget* dialog) {
    QCoreApplication::sendPostedEvents(nullptr, QEvent::LayoutRequest);  // of words that came or went
    const int needed = dialog->layout()->totalHeightForWidth(dialog->width());
    if (needed > dialog->height()) dialog->resize(dialog->width(), needed);
}

bool isOutOfSight(const QWidget& widget) {
    return widget.isVisible() && widget.visibleRegion().isEmpty();
}

bool followsHand(const Shown& shown) {
    return shown.plan && !shown.plan->holdingStudy && shown.reason.isEmpty() && !shown.stopped;
}

Section::Section(const QString& object, const QString& name, bool open, Show show, QWidget* parent)
    : QWidget(parent),
      name_(name),
      open_(open),
      button_(new QToolButton(this)),
      inside_(new QWidget(this)),
      show_(std::move(show)) {
    auto* layout = new QVBoxLayout(this);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(gridStep);
    QFont bold = textFont(TextSize::body);
    bold.setWeight(QFont::DemiBold);
    button_->setFont(bold);
    button_->setObjectName(object);
    button_->setText(name);
    button_->setToolButtonStyle(Qt::ToolButtonTextBesideIcon);
    button_->setFocusPolicy(Qt::StrongFocus);
    button_->setAutoRaise(true);
    layout->addWidget(button_, 0, Qt::AlignLeft);
    auto* column = new QVBoxLayout(inside_);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(gridStep);
    layout->addWidget(inside_);
    inside_->setVisible(open);
    nameButton();
    connect(button_, &QToolButton::clicked, this, [this] {
        setOpen(!open_);
        emit folded(open_);
    });
}

void Section::nameButton() {
    button_->setIcon(icon(isOpen() ? QStringLiteral("unfolded") : QStringLiteral("folded")));
    button_->setAccessibleName((isOpen() ? tr("%1, open") : tr("%1, folded")).arg(name_));
    button_->setAccessibleDescription(note_);
}

void Section::setNote(const QString& note) {
    if (note_ == note) return;
    note_ = note;
    nameButton();
    update();
}

// A button is as wide as its words.
void Section::add(QWidget* part) {
    auto* column = static_cast<QVBoxLayout*>(inside_->layout());
    column->addWidget(part, 0, qobject_cast<QPushButton*>(part) ? Qt::AlignLeft : Qt::Alignment());
}

void Section::setOpen(bool open) {
    if (open == open_) return;
    open_ = open;
    nameButton();
    if (open) catchUp();
    inside_->setVisible(open);
}

void Section::show(const std::shared_ptr<const Shown>& shown) {
    stale_ = shown;
    if (isOpen() && !(followsHand(*shown) && isOutOfSight(*this))) catchUp();
}

void Section::catchUp() {
    if (stale_) show_(std::exchange(stale_, nullptr));
}

void Section::paintEvent(QPaintEvent*) {
    // It has come into sight; the layout may change, so not from within the painting.
    if (stale_ && isOpen()) {
        QMetaObject::invokeMethod(
            this,
            [this] {
                if (isOpen()) catchUp();
            },
            Qt::QueuedConnection);
    }
    QPainter painter(this);
    const int level = button_->geometry().center().y();
    const int from = button_->geometry().right() + gridStep / 2;
    int to = width();
    if (!note_.isEmpty()) {
        painter.setFont(textFont(TextSize::small));
        painter.setPen(theme().faint);
        const QFontMetrics metrics = painter.fontMetrics();
        const QString fitting = metrics.elidedText(note_, Qt::ElideRight, width() - from);
        to -= metrics.horizontalAdvance(fitting) + gridStep / 2;
        painter.drawText(QRect(0, button_->y(), width(), button_->height()), Qt::AlignRight | Qt::AlignVCenter,
                         fitting);
    }
    painter.setPen(QPen(theme().rule, 1));
    if (from < to) painter.drawLine(from, level, to, level);
}

void showIf(QWidget* part, bool on) {
    if (part->isHidden() == on) part->setVisible(on);
}

void addLabelled(QGridLayout* grid, int row, const QString& name, QWidget* control) {
    auto* label = new QLabel(name, control->parentWidget());
    label->setBuddy(control);
    grid->addWidget(label, row, 0);
    grid->addWidget(control, row, 1);
}

QVBoxLayout* panelLayout(QWidget* panel) {
    auto* layout = new QVBoxLayout(panel);
    layout->setContentsMargins(gridStep, gridStep, gridStep, gridStep);
    layout->setSpacing(gridStep);
    return layout;
}

namespace {

void gather(const QLayout* layout, std::vector<QWidget*>& stops) {
    if (!layout) return;
    for (int i = 0; i < layout->count(); ++i) {
        QLayoutItem* item = layout->itemAt(i);
        if (QWidget* widget = item->widget()) {
            if (widget->focusPolicy() & Qt::TabFocus) stops.push_back(widget);
            gather(widget->layout(), stops);
        } else {
            gather(item->layout(), stops);
        }
    }
}

}  // namespace

void tabInReadingOrder(QWidget* panel) {
    std::vector<QWidget*> stops;
    gather(panel->layout(), stops);
    for (std::size_t i = 1; i < stops.size(); ++i) QWidget::setTabOrder(stops[i - 1], stops[i]);
}

}  // namespace fayline::app
