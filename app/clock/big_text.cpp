#include "app/clock/big_text.hpp"

#include <QEvent>
#include <QPainter>
#include <algorithm>

#include "app/look/icons.hpp"
#include "app/look/text_shape.hpp"
#include "app/look/theme.hpp"

namespace fayline::app {

BigText::BigText(int least_px, int most_px, QWidget* parent) : QWidget(parent), least_px_(least_px), most_px_(most_px) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
}

void BigText::setText(const QString& text) {
    if (text == text_) return;
    text_ = text;
    setAccessibleName(text);
    fit();
    update();
}

void BigText::setShape(const std::optional<plan::Severity>& shape) {
    if (shape == shape_) return;
    shape_ = shape;
    fittedShape_.clear();
    fit();
    update();
}

void BigText::setFaint(bool faint) {
    if (faint == faint_) return;
    faint_ = faint;
    update();
}

void BigText::setBold(bool bold) {
    bold_ = bold;
    fittedShape_.clear();
    fit();
    update();
}

void BigText::setSizes(int least_px, int most_px) {
    if (least_px == least_px_ && most_px == most_px_) return;
    least_px_ = least_px;
    most_px_ = most_px;
    fittedShape_.clear();
    fit();
    update();
}

void BigText::setAlignment(Qt::Alignment alignment) {
    alignment_ = alignment;
    update();
}

QFont BigText::fontOf(int letters_px) const {
    QFont made = tabularFont(font());
    made.setPixelSize(letters_px);
    if (bold_) made.setWeight(QFont::DemiBold);
    return made;
}

// The shape stands before the words, as high as a line of the smallest letters or a third of the place.
QRect BigText::wordsWithin() const {
    if (!shape_) return rect();
    return rect().adjusted(std::clamp(height() / 2, least_px_, 2 * least_px_) + gridStep, 0, 0, 0);
}

// The largest letters in which everything is in. Minutes that only count down keep the size.
void BigText::fit() {
    const QString shape = textShape(text_, fontOf(least_px_));
    if (shape == fittedShape_ && size() == fittedSize_) return;
    fittedShape_ = shape;
    fittedSize_ = size();
    const QRect within = wordsWithin();
    const auto isIn = [&](int px) {
        const QFontMetrics metrics(fontOf(px));
        const QRect needed = metrics.boundingRect(QRect(0, 0, within.width(), 1'000'000), Qt::TextWordWrap, text_);
        return needed.width() <= within.width() && needed.height() <= within.height();
    };
    int low = least_px_;
    int high = std::max(least_px_, most_px_);
    while (low < high) {
        const int middle = (low + high + 1) / 2;
        if (isIn(middle)) {
            low = middle;
        } else {
            high = middle - 1;
        }
    }
    letters_px_ = low;
    showsAll_ = text_.isEmpty() || isIn(low);
}

void BigText::paintEvent(QPaintEvent*) {
    if (text_.isEmpty()) return;
    QPainter painter(this);
    const Theme& t = theme();
    const QRect within = wordsWithin();
    const QColor ink = shape_ ? findingColor(*shape_) : faint_ ? t.faint : t.ink;
    if (shape_) {
        painter.setRenderHint(QPainter::Antialiasing);
        const int side = within.left() - gridStep;
        const QRectF box(2, (height() - side) / 2.0 + 2, side - 4, side - 4);
        painter.fillPath(findingShape(*shape_, box), ink);
    }
    painter.setFont(fontOf(letters_px_));
    painter.setPen(ink);
    painter.drawText(within, int(alignment_) | Qt::TextWordWrap, text_);
}

void BigText::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    fit();
}

void BigText::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange) return;
    fittedShape_.clear();
    fit();
}

}  // namespace fayline::app

#include "moc_big_text.cpp"
