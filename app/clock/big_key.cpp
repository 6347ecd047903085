#include "app/clock/big_key.hpp"

#include <QHBoxLayout>
#include <QPainter>
#include <algorithm>
#include <cmath>

#include "app/look/theme.hpp"

namespace fayline::app {

int pixelsOf(double length_mm, const QWidget* widget) {
    return int(std::ceil(length_mm / 25.4 * widget->logicalDpiX()));
}

BigKey::BigKey(const QString& name, const QString& word, const QString& key, QWidget* parent)
    : QAbstractButton(parent), key_(key) {
    setObjectName(name);
    setFocusPolicy(Qt::NoFocus);  // space and enter always mean what the page says
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setWord(word);
}

void BigKey::setWord(const QString& word) {
    if (word == text()) return;
    setText(word);
    setAccessibleName(tr("%1, key %2").arg(word, key_));
    updateGeometry();
    update();
}

void BigKey::setMain(bool main) {
    main_ = main;
    update();
}

QFont BigKey::wordFont() const {
    QFont made = font();
    made.setPixelSize(std::clamp(pixelsOf(touch_mm, this) * 2 / 7, 18, 40));
    made.setWeight(QFont::DemiBold);
    return made;
}

QFont BigKey::keyFont() const {
    QFont made = font();
    made.setPixelSize(std::clamp(pixelsOf(touch_mm, this) / 5, 13, 24));
    return made;
}

QSize BigKey::sizeHint() const {
    const int least = pixelsOf(touch_mm, this);
    const int wide =
        std::max(QFontMetrics(wordFont()).horizontalAdvance(text()), QFontMetrics(keyFont()).horizontalAdvance(key_));
    return {std::max(least, wide + gridStep), least};
}

bool BigKey::showsAll() const {
    return width() >= sizeHint().width() && height() >= sizeHint().height();
}

void BigKey::paintEvent(QPaintEvent*) {
    const Theme& t = theme();
    QPainter painter(this);
    const QRect box = rect().adjusted(0, 0, -1, -1);
    const bool filled = main_ && isEnabled();
    if (filled) painter.fillRect(rect(), isDown() ? t.ink : t.accent);
    if (!filled && (isDown() || underMouse()) && isEnabled()) painter.fillRect(rect(), t.rule);
    painter.setPen(QPen(isEnabled() ? t.ink : t.rule, 1));
    painter.drawRect(box);
    painter.setPen(filled ? t.ground : isEnabled() ? t.ink : t.faint);
    const int words = QFontMetrics(wordFont()).height();
    const int keys = QFontMetrics(keyFont()).height();
    const int top = (height() - words - keys) / 2;
    painter.setFont(wordFont());
    painter.drawText(QRect(0, top, width(), words), Qt::AlignCenter, text());
    painter.setFont(keyFont());
    painter.drawText(QRect(0, top + words, width(), keys), Qt::AlignCenter, key_);
}

void BigKey::enterEvent(QEnterEvent* event) {
    QAbstractButton::enterEvent(event);
    update();
}

void BigKey::leaveEvent(QEvent* event) {
    QAbstractButton::leaveEvent(event);
    update();
}

KeyRow::KeyRow(QWidget* parent) : QWidget(parent) {
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(gridStep);
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
}

BigKey* KeyRow::add(const QString& name, const QString& word, const QString& key, int stretch) {
    auto* made = new BigKey(name, word, key, this);
    static_cast<QHBoxLayout*>(layout())->addWidget(made, stretch);
    keys_.push_back(made);
    return made;
}

void KeyRow::clear() {
    for (BigKey* key : keys_) key->deleteLater();
    keys_.clear();
}

}  // namespace fayline::app

#include "moc_big_key.cpp"
