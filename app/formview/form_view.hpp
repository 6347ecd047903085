// The live drawing of one piece: points, line, strips with their strain, stations, trim lines, over-run, to scale.
//
// Draws a plan and asks for changes; makes none itself and keeps nothing that the document holds.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>
#include <vector>

#include "app/formview/labels.hpp"
#include "app/formview/placed.hpp"
#include "app/formview/transform.hpp"
#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

class FormView : public QWidget {
    Q_OBJECT
public:
    explicit FormView(QWidget* parent = nullptr);
    ~FormView() override;

    void show(const Shown& shown);
    void lightPlace(std::optional<double> at_m);  // pointed at anywhere; metres along the line
    void selectPlace(std::optional<double> at_m);
    // A minute of the glue-up that is pointed at elsewhere: what is wet and held by then lies over the drawing.
    void showMoment(const std::optional<PointedMoment>& moment);
    void selectStrip(int place);    // 1 on the form; 0: none
    void selectPoint(int index);    // -1: none
    void setBendShown(bool shown);  // curvature as a band along the line
    void setMisfitMagnified(bool magnified);
    void setForcesShown(bool shown);        // pulls, thrusts and pushes as arrows
    void setGapsMagnified(bool magnified);  // else to scale
    void setPressureShown(bool shown);      // along the edge of the form
    void fitToWindow();
    void fitToNextPlan();        // once it is shown
    void zoomBy(double factor);  // about the middle of the view

    const Transform& transform() const;
    const std::vector<Text>& texts() const;  // the words on the drawing and where they stand
    QRectF reading() const;                  // where the reading of the place pointed at stands; null: none
    std::vector<Placed> placed() const;      // all that stands on the drawing, the reading too
    int selectedPoint() const;               // -1: none
    int selectedStation() const;             // by its index in the piece; -1: none

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void changeAsked(const Change& change);
    void dragEnded();  // the merged change is complete
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);
    void stripSelected(int place);             // 1 on the form
    void pointSelected(int index);             // -1: none
    void selectionSaid(const QString& words);  // what is selected, for a status line; empty: nothing

protected:
    bool event(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void contextMenuEvent(QContextMenuEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace fayline::app
