// How the present piece is held: the answer in a sentence, plots of gap and pull along the piece, a table to edit, and
// what follows from it. Draws a plan and asks for changes; keeps nothing that the document holds.
#pragma once

#include <memory>
#include <vector>

#include "app/panels/panel.hpp"
#include "app/panels/stations_model.hpp"

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class EvenStations;
class NotebookTable;
class Section;
class StationFields;
class Words;

class HoldingPanel : public Panel {
    Q_OBJECT
public:
    explicit HoldingPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    void makeStations();
    QWidget* makeTools();
    void showPlots();
    void chooseStations();

    std::shared_ptr<const Shown> shown_;
    StationsModel* stations_;
    AnswerNote* answer_;
    AlongPlot* gaps_;
    AlongPlot* pulls_;
    NotebookTable* table_;
    Words* unread_;
    StationFields* fields_;
    std::vector<Section*> sections_;
    std::vector<NotebookTable*> along_;  // tables whose rows lie along the line
    std::optional<double> selected_m_;
};

}  // namespace fayline::app
