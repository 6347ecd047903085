// A picture of stacks that could be glued: two of their counts across each other, one mark for each.
//
// A mark of which a count has no number, or one beyond the picture, stands at that edge. Hovering tells a mark; a click
// asks to choose it, as do the arrow keys, from left to right.
#pragma once

#include <QPointF>
#include <QRectF>
#include <QString>
#include <vector>

#include "app/panels/choice_counts.hpp"
#include "app/panels/plot.hpp"

namespace fayline::app {

class ChoicesPicture : public Plot {
    Q_OBJECT
public:
    struct Axis {
        QString name;
        double least = 0;
        double most = 1;
        std::vector<ScaleMark> marks;
    };
    struct Mark {
        double across = 0;
        double up = 0;
        bool possible = true;
        bool paretoOptimal = false;
        bool named = false;
        bool asItIs = false;
        QString told;   // in one line
        QString whole;  // in as many as it takes
    };
    struct Picture {
        Axis across;
        Axis up;
        std::vector<Mark> marks;
        bool faint = false;  // of the piece as it was a moment ago
    };

    explicit ChoicesPicture(QWidget* parent = nullptr) : Plot(parent) {}

    void setPicture(Picture picture);
    void choose(int mark);  // that is shown as chosen; -1: none
    int chosen() const { return chosen_; }
    QPointF placeOf(int mark) const;  // pixels

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void hovered(int mark);  // -1: none
    void choiceAsked(int mark);

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void layOut() override;
    int markAt(const QPointF& pixel) const;  // -1: none near
    void light(int mark);
    void walk(int by);
    void drawTold(QPainter* painter) const;
    void drawScales(QPainter* painter) const;
    void drawKey(QPainter* painter) const;

    Picture picture_;
    QRectF area_;
    int lit_ = -1;  // pointed at
    int chosen_ = -1;
};

}  // namespace fayline::app
