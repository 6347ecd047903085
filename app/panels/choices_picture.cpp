#include "app/panels/choices_picture.hpp"

#include <QHelpEvent>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QToolTip>
#include <algorithm>
#include <cmath>
#include <tuple>

#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

constexpr double size_px = 3.5;   // half of a mark
constexpr double reach_px = 9;    // from a mark to where it is still meant
constexpr double plot_px = 176;   // height
constexpr double apart_px = 1.5;  // between a mark and what is drawn round it

QFont small() {
    return tabularFont(textFont(TextSize::small));
}

double lineHeight() {
    return QFontMetricsF(small()).height();
}

// How a mark looks; the key shows the same.
void drawMark(QPainter* painter, const QPointF& at, const ChoicesPicture::Mark& mark, const QColor& ink,
              const QColor& accent) {
    painter->setPen(QPen(ink, 1.25));
    painter->setBrush(Qt::NoBrush);
    if (!mark.possible) {
        const double arm = size_px - 0.5;
        painter->drawLine(at + QPointF(-arm, -arm), at + QPointF(arm, arm));
        painter->drawLine(at + QPointF(-arm, arm), at + QPointF(arm, -arm));
    } else {
        if (mark.paretoOptimal) painter->setBrush(ink);
        painter->drawEllipse(at, size_px, size_px);
    }
    painter->setBrush(Qt::NoBrush);
    if (mark.named) {
        painter->setPen(QPen(accent, 1.75));
        painter->drawEllipse(at, size_px + 2 * apart_px + 0.5, size_px + 2 * apart_px + 0.5);
    }
    if (mark.asItIs) {
        const double out = size_px + 3 * apart_px + (mark.named ? 2 : 0);
        painter->setPen(QPen(ink, 1.25));
        painter->drawRect(QRectF(at.x() - out, at.y() - out, 2 * out, 2 * out));
    }
}

// Round the one that is chosen: filled, with four strokes towards it.
void drawChosen(QPainter* painter, const QPointF& at, const QColor& accent, bool inKey = false) {
    painter->setPen(Qt::NoPen);
    painter->setBrush(accent);
    painter->drawEllipse(at, size_px + 1, size_px + 1);
    painter->setPen(QPen(accent, 2));
    const double from = size_px + (inKey ? 2 : 3) * apart_px;  // outside of ring and square
    const double to = from + (inKey ? 2 : 5);
    for (const QPointF& way : {QPointF(1, 0), QPointF(-1, 0), QPointF(0, 1), QPointF(0, -1)})
        painter->drawLine(at + from * way, at + to * way);
}

struct KeyPart {
    ChoicesPicture::Mark mark;
    QString words;
    bool chosen = false;
};

std::vector<KeyPart> keyParts() {
    const auto part = [](bool possible, bool paretoOptimal, bool named, bool asItIs, const QString& words) {
        KeyPart made;
        made.mark.possible = possible;
        made.mark.paretoOptimal = paretoOptimal;
        made.mark.named = named;
        made.mark.asItIs = asItIs;
        made.words = words;
        return made;
    };
    KeyPart chosen = part(true, true, false, false, QObject::tr("chosen"));
    chosen.chosen = true;
    return {part(true, true, false, false, QObject::tr("best trade-offs")),
            part(true, false, false, false, QObject::tr("another is better")),
            chosen,
            part(false, false, false, false, QObject::tr("will not work")),
            part(true, true, true, false, QObject::tr("suggested")),
            part(true, false, false, true, QObject::tr("yours now"))};
}

double partWidth(const KeyPart& part) {
    return 2.5 * gridStep + textWidth(part.words, small()) + gridStep;
}

}  // namespace

QSize ChoicesPicture::sizeHint() const {
    return {320, int(std::ceil(plot_px + 6 * lineHeight() + 4 * gridStep))};  // the key may take two lines
}

QSize ChoicesPicture::minimumSizeHint() const {
    return {200, sizeHint().height()};
}

void ChoicesPicture::setPicture(Picture picture) {
    picture_ = std::move(picture);
    const int count = math::countOf(picture_.marks);
    if (lit_ >= count) lit_ = -1;
    if (chosen_ >= count) chosen_ = -1;
    layOut();
    update();
}

void ChoicesPicture::light(int mark) {
    if (mark == lit_) return;
    lit_ = mark;
    update();
}

void ChoicesPicture::choose(int mark) {
    chosen_ = mark;
    setAccessibleDescription(chosen_ < 0 ? QString() : tr("Chosen: %1").arg(picture_.marks[chosen_].told));
    update();
}

// Two lines above the plot: what goes upwards, and what is told of a mark; below it the scale, what goes across, the
// key.
void ChoicesPicture::layOut() {
    double left = 0;
    for (const ScaleMark& mark : picture_.up.marks) left = std::max(left, textWidth(mark.text, small()));
    const double line = lineHeight();
    area_ = QRectF(std::ceil(left) + 12, std::ceil(2 * line) + 8, 0, plot_px);
    area_.setRight(std::max(area_.left() + 10, width() - 12.0));
}

QPointF ChoicesPicture::placeOf(int mark) const {
    const Mark& of = picture_.marks[mark];
    const auto share = [](const Axis& axis, double value) {
        return std::clamp((value - axis.least) / (axis.most - axis.least), 0.0, 1.0);
    };
    return {area_.left() + share(picture_.across, of.across) * area_.width(),
            area_.bottom() - share(picture_.up, of.up) * area_.height()};
}

int ChoicesPicture::markAt(const QPointF& pixel) const {
    // Of marks one upon the other the one that matters more.
    int found = -1;
    std::tuple<double, bool, bool, bool, bool> best{reach_px, true, true, true, true};
    for (std::size_t i = 0; i < picture_.marks.size(); ++i) {
        const Mark& mark = picture_.marks[i];
        const QPointF away = placeOf(static_cast<int>(i)) - pixel;
        const double distance = std::round(std::hypot(away.x(), away.y()));
        const std::tuple<double, bool, bool, bool, bool> rank{distance, !mark.named, !mark.asItIs, !mark.paretoOptimal,
                                                              !mark.possible};
        if (distance > reach_px || !(rank < best)) continue;
        best = rank;
        found = static_cast<int>(i);
    }
    return found;
}

void ChoicesPicture::drawScales(QPainter* painter) const {
    const Theme& t = theme();
    const double line = lineHeight();
    for (const ScaleMark& mark : picture_.up.marks) {
        const double share = (mark.value - picture_.up.least) / (picture_.up.most - picture_.up.least);
        const double level = std::round(area_.bottom() - share * area_.height()) + 0.5;
        painter->setPen(QPen(t.rule, 1));
        painter->drawLine(QPointF(area_.left() - 4, level), QPointF(area_.right(), level));
        painter->setPen(t.faint);
        painter->drawText(QRectF(0, level - line / 2, area_.left() - 8, line), Qt::AlignRight | Qt::AlignVCenter,
                          mark.text);
    }
    double free = 0;  // from where the next word has room
    for (const ScaleMark& mark : picture_.across.marks) {
        const double share = (mark.value - picture_.across.least) / (picture_.across.most - picture_.across.least);
        const double place = std::round(area_.left() + share * area_.width()) + 0.5;
        painter->setPen(QPen(t.rule, 1));
        painter->drawLine(QPointF(place, area_.top()), QPointF(place, area_.bottom() + 4));
        const double wide = textWidth(mark.text, painter->font()) + 1;
        const std::optional<double> left = leftOf(place, wide, free);
        if (!left) continue;
        painter->setPen(t.faint);
        painter->drawText(QRectF(*left, area_.bottom() + 6, wide, line), Qt::AlignLeft | Qt::AlignTop, mark.text);
    }
    painter->setPen(t.faint);
    painter->drawText(QRectF(0, 0, width(), line), Qt::AlignLeft | Qt::AlignVCenter, picture_.up.name);
    painter->drawText(QRectF(0, area_.bottom() + 6 + line, width(), line), Qt::AlignRight | Qt::AlignVCenter,
                      picture_.across.name);
}

void ChoicesPicture::drawKey(QPainter* painter) const {
    const Theme& t = theme();
    const double line = lineHeight();
    double x = 0;
    double y = area_.bottom() + 6 + 2 * line + gridStep / 2.0;
    for (const KeyPart& part : keyParts()) {
        const double wide = partWidth(part);
        if (x > 0 && x + wide > width() + gridStep) {
            x = 0;
            y += line + 2;
        }
        const QPointF at(x + 1.25 * gridStep, y + line / 2);
        if (part.chosen)
            drawChosen(painter, at, t.accent, true);
        else
            drawMark(painter, at, part.mark, t.faint, t.accent);
        painter->setPen(t.faint);
        painter->drawText(QRectF(x + 2.5 * gridStep, y, wide, line), Qt::AlignLeft | Qt::AlignVCenter, part.words);
        x += wide;
    }
}

// The one that is pointed at, ringed, else the chosen one.
void ChoicesPicture::drawTold(QPainter* painter) const {
    const int told = lit_ >= 0 ? lit_ : chosen_;
    if (told < 0) return;
    const Theme& t = theme();
    if (lit_ >= 0 && lit_ != chosen_) {
        painter->setPen(QPen(t.ink, 1.25));
        painter->setBrush(Qt::NoBrush);
        painter->drawEllipse(placeOf(lit_), size_px + 2 * apart_px, size_px + 2 * apart_px);
    }
    painter->setPen(told == chosen_ ? t.accent : t.ink);
    painter->drawText(QRectF(0, lineHeight() + 1, width() - 1.0, lineHeight()), Qt::AlignRight | Qt::AlignVCenter,
                      elided(picture_.marks[told].told, painter->font(), width() - 2.0));
}

void ChoicesPicture::paintEvent(QPaintEvent*) {
    const Theme& t = theme();
    QPainter painter(this);
    painter.fillRect(rect(), t.ground);
    painter.setFont(small());
    if (!picture_.marks.empty()) {
        drawScales(&painter);
        painter.setRenderHint(QPainter::Antialiasing);
        drawKey(&painter);
        // What matters more above what matters less.
        const auto drawThose = [&](auto which) {
            for (std::size_t i = 0; i < picture_.marks.size(); ++i) {
                const Mark& mark = picture_.marks[i];
                if (!which(mark)) continue;
                const bool weak = picture_.faint || !mark.possible || !mark.paretoOptimal;
                drawMark(&painter, placeOf(static_cast<int>(i)), mark, weak ? t.faint : t.ink,
                         picture_.faint ? t.faint : t.accent);
            }
        };
        const auto marked = [](const Mark& mark) { return mark.named || mark.asItIs; };
        drawThose([&](const Mark& mark) { return !mark.paretoOptimal && !marked(mark); });
        drawThose([&](const Mark& mark) { return mark.paretoOptimal && !marked(mark); });
        drawThose(marked);
        if (chosen_ >= 0) drawChosen(&painter, placeOf(chosen_), picture_.faint ? t.faint : t.accent);
        drawTold(&painter);
    }
    drawFocus(painter);
}

bool ChoicesPicture::event(QEvent* event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto* help = static_cast<QHelpEvent*>(event);
    const int mark = markAt(help->pos());
    if (mark < 0) {
        QToolTip::hideText();
        event->ignore();
    } else {
        QToolTip::showText(help->globalPos(), picture_.marks[mark].whole, this);
    }
    return true;
}

void ChoicesPicture::mouseMoveEvent(QMouseEvent* event) {
    const int mark = markAt(event->position());
    if (mark == lit_) return;
    setCursor(mark >= 0 ? Qt::PointingHandCursor : Qt::ArrowCursor);
    light(mark);
    emit hovered(mark);
}

void ChoicesPicture::mousePressEvent(QMouseEvent* event) {
    const int mark = event->button() == Qt::LeftButton ? markAt(event->position()) : -1;
    if (mark >= 0) emit choiceAsked(mark);
}

void ChoicesPicture::leaveEvent(QEvent* event) {
    QWidget::leaveEvent(event);
    light(-1);
    emit hovered(-1);
}

void ChoicesPicture::walk(int by) {
    std::vector<int> order;
    for (std::size_t i = 0; i < picture_.marks.size(); ++i) order.push_back(static_cast<int>(i));
    std::stable_sort(order.begin(), order.end(), [this](int a, int b) {
        const QPointF one = placeOf(a);
        const QPointF other = placeOf(b);
        return one.x() != other.x() ? one.x() < other.x() : one.y() > other.y();
    });
    const auto here = std::find(order.begin(), order.end(), chosen_);
    const auto count = math::countOf(order);
    const int to = here == order.end() ? (by > 0 ? 0 : count - 1) : int(here - order.begin()) + by;
    emit choiceAsked(order[std::clamp(to, 0, count - 1)]);
}

void ChoicesPicture::keyPressEvent(QKeyEvent* event) {
    if (picture_.marks.empty()) return QWidget::keyPressEvent(event);
    switch (event->key()) {
        case Qt::Key_Left:
        case Qt::Key_Right:
            return walk(event->key() == Qt::Key_Right ? 1 : -1);
        default:
            return QWidget::keyPressEvent(event);
    }
}

}  // namespace fayline::app
