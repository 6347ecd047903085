// The live drawing of one piece: points, line, strips with their strain, stations, trim lines, over-run, to scale.
//
// Draws a plan and asks for changes; makes none itself and keeps nothing that the document holds.
#pragma once

#include <QWidget>
#include <memory>
#include <optional>

#include "app/look/change.hpp"
#include "app/look/shown.hpp"

namespace fayline::app {

class FormView : public QWidget {
    Q_OBJECT
public:
    explicit FormView(QWidget* parent = nullptr);
    ~FormView() override;

    void show(const Shown& shown);
    void lightPlace(std::optional<double> at_m);   // pointed at anywhere; metres along the line
    void selectPlace(std::optional<double> at_m);
    void setCombShown(bool shown);                 // curvature as a comb
    void setMisfitMagnified(bool magnified);
    void fitToWindow();
    void zoomBy(double factor);                    // about the middle of the view

signals:
    void changeAsked(const Change& change);
    void dragEnded();                              // the merged change is complete
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);

private:
    struct State;
    std::unique_ptr<State> state_;
};

}  // namespace fayline::app
