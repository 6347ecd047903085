// What the drawings of the panels have in common: small figures, a frame when they have the keyboard, and words at the
// marks of a scale.
#pragma once

#include <QFont>
#include <QWidget>
#include <optional>

namespace fayline::app {

class Plot : public QWidget {
    Q_OBJECT
public:
    explicit Plot(QWidget* parent);

protected:
    virtual void layOut() = 0;  // anew for another size or font
    void resizeEvent(QResizeEvent*) override { layOut(); }
    void changeEvent(QEvent* event) override;

    static QFont smallFigures();
    void drawFocus(QPainter& painter) const;
    // The left edge of words of such a width, centred at `place` and within the plot. Nothing where what was written
    // before reaches so far; else `free`, from where the next words have room, moves on.
    std::optional<double> leftOf(double place, double wide, double& free) const;
};

}  // namespace fayline::app
