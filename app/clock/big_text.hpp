// Words as large as their place allows, to be read from across the shed.
#pragma once

#include <QColor>
#include <QString>
#include <QWidget>
#include <optional>

#include "core/plan/findings/finding.hpp"

namespace fayline::app {

class BigText : public QWidget {
    Q_OBJECT
public:
    // `most_px`: the largest size of its letters; they shrink down to `least_px` until all words are in.
    BigText(int least_px, int most_px, QWidget* parent = nullptr);

    // Drawn anew only when something is other than it was.
    void setText(const QString& text);
    void setShape(const std::optional<plan::Severity>& shape);  // before the words, which take its colour
    void setFaint(bool faint);
    void setBold(bool bold);
    void setSizes(int least_px, int most_px);
    void setAlignment(Qt::Alignment alignment);

    QString text() const { return text_; }
    int letters_px() const { return letters_px_; }  // as drawn
    bool showsAll() const { return showsAll_; }     // nothing is cut off

    QSize minimumSizeHint() const override { return {least_px_, least_px_}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    QRect wordsWithin() const;
    QFont fontOf(int letters_px) const;
    void fit();

    QString text_;
    QString fittedShape_;
    QSize fittedSize_;
    std::optional<plan::Severity> shape_;
    Qt::Alignment alignment_ = Qt::AlignLeft | Qt::AlignVCenter;
    bool faint_ = false;
    bool bold_ = false;
    bool showsAll_ = true;
    int least_px_;
    int most_px_;
    int letters_px_ = 0;
};

}  // namespace fayline::app
