// A key for a gloved finger: 20 mm or more each way, its word and the key on the keyboard that does the same.
#pragma once

#include <QAbstractButton>
#include <QWidget>
#include <vector>

namespace fayline::app {

// The size in logical pixels of `length_mm` on this widget's screen.
int pixelsOf(double length_mm, const QWidget* widget);

inline constexpr double touch_mm = 20;

class BigKey : public QAbstractButton {
    Q_OBJECT
public:
    // `key`: as it is written on the keyboard. The keyboard itself is listened to by the page.
    BigKey(const QString& name, const QString& word, const QString& key, QWidget* parent = nullptr);

    void setWord(const QString& word);
    void setMain(bool main);  // the one that is pressed most: filled
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override { return sizeHint(); }
    bool showsAll() const;  // nothing is cut off

protected:
    void paintEvent(QPaintEvent* event) override;
    void enterEvent(QEnterEvent* event) override;
    void leaveEvent(QEvent* event) override;

private:
    QFont wordFont() const;
    QFont keyFont() const;

    QString key_;
    bool main_ = false;
};

// Keys side by side over the whole width, with touch_mm of height and more.
class KeyRow : public QWidget {
    Q_OBJECT
public:
    explicit KeyRow(QWidget* parent = nullptr);
    BigKey* add(const QString& name, const QString& word, const QString& key, int stretch = 1);
    void clear();
    std::vector<BigKey*> keys() const { return keys_; }

private:
    std::vector<BigKey*> keys_;
};

}  // namespace fayline::app
