// A picture of something along the line: arc length to the right, the value upwards, the place that is pointed at lit.
// With ticks of its own it stands for any other scale, a mass or a time.
//
// Drawn here from beginning to end: it follows the hand, and a chart of a library lays out axes, legend and curves anew
// at every step, knows no 2-3-4 and cuts labels off that it finds no room for.
#pragma once

#include <QPointF>
#include <QPolygonF>
#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "app/panels/plot.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

class AlongPlot : public Plot {
    Q_OBJECT
public:
    struct Tick {
        double value = 0;
        QString text;
    };
    struct Curve {
        QPolygonF points;  // metres along the line, value
        bool main = true;  // drawn in ink; else fainter and thinner
    };
    struct Mark {  // on the scale along the line
        double at_m = 0;
        QString text;  // small above it; may be empty
        bool heavy = false;
    };
    struct Stem {  // a value at one place, drawn from the base
        double at_m = 0;
        double value = 0;
        std::optional<double> most;  // what it could be: a tick across, joined by a thin line
    };
    struct Dot {  // one known value
        QPointF at;
        QString text;  // beside it
    };
    struct Picture {
        double from_m = 0;
        double to_m = 1;
        double least = 0;  // of the value
        double most = 1;
        QString caption;
        std::vector<Tick> ticks;       // of the value
        std::vector<Tick> alongTicks;  // of the scale to the right, where that is no length along the line
        std::vector<Curve> curves;
        std::vector<Mark> marks;
        std::vector<Stem> stems;
        std::vector<Dot> dots;
        QString roomFor;            // room at the left for this text at least, so that plots over each other line up
        std::optional<Tick> limit;  // a dashed line across
        units::Display display;
        std::function<QString(double at_m)> reading;  // what stands beside the lit place
    };

    explicit AlongPlot(QWidget* parent = nullptr) : Plot(parent) {}

    void setPicture(Picture picture);
    void setNothing();
    void setOld(bool old);  // of the piece as it was a moment ago: drawn fainter
    void lightPlace(std::optional<double> at_m);
    void selectPlace(std::optional<double> at_m);

    void setLow(bool low) { low_ = low; }  // less high than others

    QSize sizeHint() const override { return {320, low_ ? 136 : 168}; }
    QSize minimumSizeHint() const override { return {200, low_ ? 120 : 144}; }

signals:
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    void layOut() override;
    QPolygonF asShares(QPolygonF points) const;
    double x(double at_m) const;  // pixels
    double y(double value) const;
    std::optional<double> placeAt(const QPointF& pixel) const;
    void drawCurves(QPainter* painter) const;
    void drawScales(QPainter* painter) const;
    void drawAlong(QPainter* painter) const;
    void drawDots(QPainter* painter) const;
    void drawStems(QPainter* painter) const;
    void drawPlace(QPainter* painter, double at_m, bool selected) const;

    Picture picture_;
    bool any_ = false;
    bool old_ = false;
    bool low_ = false;
    std::vector<QPolygonF> curves_;  // as shares of the plot's width and height, without what is not seen
    QRectF area_;
    std::optional<double> lit_m_;
    std::optional<double> selected_m_;
};

// A length that a scale along the line may step by, so that `span_m` has about `parts` of them; in the display's units.
double niceStep(double span_m, double parts, const units::Display& display);

// Radii that a scale of curvature may name, from tight to wide, none tighter than 1 / `most` (per metre).
std::vector<double> niceRadii(double most_per_m, const units::Display& display);

}  // namespace fayline::app
