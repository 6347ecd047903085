// One figure to be read from three metres: what it is, how much is left, and by shape, colour and word how pressing.
#pragma once

#include <QString>
#include <QWidget>
#include <optional>

#include "core/plan/findings/finding.hpp"

namespace fayline::app {

class Gauge : public QWidget {
    Q_OBJECT
public:
    explicit Gauge(QWidget* parent = nullptr);

    // `word` says in one what the shape says: "in good time". Without a shape the gauge is quiet: nothing to count.
    // Draws anew only what is other than it was.
    void show(const QString& title, const QString& figure, const QString& word,
              const std::optional<plan::Severity>& shape);

    QString title() const { return title_; }
    QString figure() const { return figure_; }
    QString word() const { return word_; }
    std::optional<plan::Severity> shape() const { return shape_; }
    bool showsAll() const;

protected:
    void paintEvent(QPaintEvent* event) override;

private:
    struct Places {
        QRect title;
        QRect shape;
        QRect figure;
        QRect word;
    };
    Places places() const;
    QFont fontFor(const QRect& place, const QString& text, bool bold) const;

    QString title_;
    QString figure_;
    QString word_;
    std::optional<plan::Severity> shape_;
};

}  // namespace fayline::app
