#include "app/window/clock_band.hpp"

#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QTime>
#include <algorithm>

#include "app/clock/clock_screen.hpp"
#include "app/clock/running_page.hpp"
#include "app/look/icons.hpp"
#include "app/look/text.hpp"
#include "app/look/theme.hpp"
#include "core/plan/findings/day_words.hpp"

namespace fayline::app {

namespace {

constexpr int markSide = 14;
constexpr int edge = 3;  // a stripe at its left

}  // namespace

ClockBand::ClockBand(QWidget* parent) : QWidget(parent), words_(new QLabel(this)), back_(new QPushButton(this)) {
    setObjectName(QStringLiteral("clockBand"));
    setAccessibleName(tr("The clock that runs"));
    words_->setObjectName(QStringLiteral("clockBandWords"));
    words_->setTextFormat(Qt::PlainText);
    words_->setWordWrap(true);
    words_->setFont(tabularFont(words_->font()));
    back_->setObjectName(QStringLiteral("backToClock"));
    back_->setText(tr("Back to the clock"));
    back_->setAccessibleName(back_->text());
    back_->setToolTip(
        tr("Back to the clock (%1)").arg(QKeySequence(Qt::CTRL | Qt::Key_T).toString(QKeySequence::NativeText)));
    back_->setAutoDefault(true);
    auto* across = new QHBoxLayout(this);
    across->setContentsMargins(edge + markSide + 2 * gridStep, gridStep / 2, gridStep, gridStep / 2);
    across->setSpacing(gridStep);
    across->addWidget(words_, 1);
    across->addWidget(back_);
    hide();
    connect(back_, &QPushButton::clicked, this, &ClockBand::backAsked);
    second_.setSingleShot(true);
    second_.setTimerType(Qt::PreciseTimer);
    connect(&second_, &QTimer::timeout, this, &ClockBand::tick);
}

void ClockBand::follow(ClockScreen* clock) {
    clock_ = clock;
    connect(clock, &ClockScreen::runningChanged, this, &ClockBand::tick);
    tick();
}

void ClockBand::tick() {
    second_.stop();
    const bool inFront = clock_ && clock_->isVisible() && clock_->isActiveWindow();
    if (!clock_ || !clock_->isRunning() || inFront) return hide();
    const schedule::Now& now = clock_->look();
    const QString day = (clock_->isDryFit() ? tr("Dry fit of %1, %2") : tr("Glue-up of %1, %2"))
                            .arg(text(clock_->piece().name), minutes(now.at_s));
    const auto worst = std::ranges::max_element(now.warnings, {}, &schedule::Warning::stop);
    const bool any = worst != now.warnings.end();
    worst_ = any ? std::optional(worst->stop ? plan::Severity::stop : plan::Severity::caution) : std::nullopt;
    QStringList words{day};
    if (now.finished) words << tr("all is done");
    if (now.paused) words << tr("rest");
    QString said = words.join(QStringLiteral(", "));
    if (any) {
        const units::Display& display = clock_->runningDay()->day().shop.display;
        const QString warning = text(plan::writeTexts(plan::warningTexts(*worst), display));
        const QString what = warning.section(QStringLiteral(". "), 0, 0);  // what to do is said by the clock
        said += QStringLiteral(". ") + what + (what.endsWith('.') ? QString() : QStringLiteral("."));
    }
    if (words_->text() != said) words_->setText(said);
    QPalette colours = words_->palette();
    colours.setColor(QPalette::WindowText, any ? findingColor(*worst_) : theme().ink);
    if (words_->palette() != colours) words_->setPalette(colours);
    update();
    show();
    constexpr int after_ms = 5;
    second_.start(1000 - QTime::currentTime().msec() + after_ms);
}

void ClockBand::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const QColor mark = worst_ ? findingColor(*worst_) : theme().accent;
    painter.fillRect(rect(), theme().raised);
    painter.fillRect(QRect(0, 0, edge, height()), mark);
    painter.fillRect(QRect(0, height() - 1, width(), 1), theme().rule);
    const QRectF box(edge + gridStep, (height() - markSide) / 2.0, markSide, markSide);
    painter.setRenderHint(QPainter::Antialiasing);
    if (worst_) return painter.fillPath(findingShape(*worst_, box), mark);
    icon(QStringLiteral("clock")).paint(&painter, box.toRect());
}

}  // namespace fayline::app

#include "moc_clock_band.cpp"
