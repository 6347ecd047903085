#include "app/panels/finding_line.hpp"

#include <QGridLayout>
#include <QKeyEvent>
#include <QLabel>
#include <QMouseEvent>
#include <QPainter>

#include "app/look/icons.hpp"
#include "app/look/theme.hpp"
#include "app/panels/findings_list.hpp"
#include "app/panels/parts.hpp"

namespace fayline::app {

namespace {

constexpr int shapeSide = 12;
constexpr int shapeRoom = shapeSide + gridStep;

}  // namespace

FindingLine::FindingLine(const QString& object, QWidget* parent)
    : QWidget(parent),
      line_(new SteadyWords(QStringLiteral("line"), this)),
      detail_(new SteadyWords(QStringLiteral("detail"), this)),
      open_(new QToolButton(this)),
      cure_(wordButton(QStringLiteral("cure"), {}, this)) {
    setObjectName(object);
    setFocusPolicy(Qt::StrongFocus);
    setAttribute(Qt::WA_Hover);
    auto* layout = new QGridLayout(this);
    layout->setContentsMargins(shapeRoom, gridStep / 2, gridStep / 2, gridStep / 2);
    layout->setHorizontalSpacing(gridStep);
    layout->setVerticalSpacing(gridStep / 2);
    layout->setColumnStretch(0, 1);
    line_->setAttribute(Qt::WA_TransparentForMouseEvents);
    layout->addWidget(line_, 0, 0, Qt::AlignVCenter);
    layout->addWidget(cure_, 0, 1, Qt::AlignVCenter);
    open_->setObjectName(QStringLiteral("open"));
    open_->setAutoRaise(true);
    open_->setArrowType(Qt::RightArrow);
    open_->setAccessibleName(tr("Why, and where the limit comes from"));
    open_->setToolTip(open_->accessibleName());
    layout->addWidget(open_, 0, 2, Qt::AlignVCenter);
    detail_->findChild<QLabel*>()->setForegroundRole(QPalette::PlaceholderText);
    layout->addWidget(detail_, 1, 0, 1, 3);
    setTabOrder(cure_, open_);
    connect(open_, &QToolButton::clicked, this, &FindingLine::openAsked);
    connect(cure_, &QPushButton::clicked, this, &FindingLine::cureAsked);
}

void FindingLine::say(plan::Severity severity, const QString& line, const QString& cure, bool opens, bool open,
                      const QString& detail) {
    line_->say(line);
    detail_->say(detail);
    if (cure_->text() != cure) {
        cure_->setText(cure);
        cure_->setAccessibleName(cure);
    }
    cure_->setVisible(!cure.isEmpty());
    open_->setVisible(opens);
    open_->setArrowType(open ? Qt::DownArrow : Qt::RightArrow);
    const QString name = severityWord(severity) + QStringLiteral(". ") + line;
    if (accessibleName() != name) setAccessibleName(name);
    if (severity_ != severity) update();
    severity_ = severity;
}

void FindingLine::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Theme& t = theme();
    if (underMouse() || hasFocus()) {
        QColor wash = t.accent;
        wash.setAlphaF(0.08f);
        painter.fillRect(rect(), wash);
    }
    painter.fillRect(QRect(0, height() - 1, width(), 1), t.rule);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF box(gridStep / 4.0, line_->y() + (fontMetrics().height() - shapeSide) / 2.0, shapeSide, shapeSide);
    painter.fillPath(findingShape(severity_, box), isEnabled() ? findingColor(severity_) : t.faint);
    if (!hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setPen(QPen(t.accent, 1));
    painter.drawRect(rect().adjusted(0, 0, -1, -1));
}

void FindingLine::mouseReleaseEvent(QMouseEvent* event) {
    if (event->button() == Qt::LeftButton && rect().contains(event->pos())) emit chosen();
}

void FindingLine::keyPressEvent(QKeyEvent* event) {
    switch (event->key()) {
        case Qt::Key_Return:
        case Qt::Key_Enter:
            emit chosen();
            return;
        case Qt::Key_Space:
            emit openAsked();
            return;
        default:
            QWidget::keyPressEvent(event);
    }
}

void FindingLine::enterEvent(QEnterEvent*) {
    emit hovered(at_m_);
    update();
}

void FindingLine::leaveEvent(QEvent*) {
    emit hovered(std::nullopt);
    update();
}

}  // namespace fayline::app

#include "moc_finding_line.cpp"
