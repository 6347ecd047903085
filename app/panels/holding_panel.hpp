// How the present piece is held: the answer in a sentence, plots of gap and pull along the piece, a table to edit, and
// what follows from it. Draws a plan and asks for changes; keeps nothing that the document holds.
#pragma once

#include "app/panels/holding_plots.hpp"
#include "app/panels/sectioned_panel.hpp"
#include "app/panels/stations_model.hpp"

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class BlocksModel;
class ShedLine;
class StationFields;
class ToolsModel;

class HoldingPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit HoldingPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    // In the order in which they stand in the panel.
    void makeProposal();
    void makeStations();
    void makePulls();
    void makeEvenly();
    void makeClosing();
    void makeOverRun();
    void makeProps();
    void makeScrews();
    void makeStraps();
    void makeToolsAtHand();
    void makeSettings();
    void makeHull();

    Fields* toolFields();
    Fields* hullFields();

    std::vector<QWidget*> makeTools();
    void showTools();
    void chooseStations();
    // What takes longer: of the piece as it stands, else of how it was a moment ago, else nothing.
    const plan::HoldingStudy* study(plan::Study part) const;
    bool pressed(plan::Study part) const;  // the contact of that studied plan was worked out
    double middle_m() const;               // the selected place, else the middle of the line

    StationsModel* stations_;
    ToolsModel* tools_;
    BlocksModel* blocks_;
    AnswerNote* answer_;
    AlongPlot* gaps_;
    AlongPlot* pulls_;
    std::optional<HoldingPictures> pictures_;  // of the piece that is shown
    NotebookTable* table_;
    NotebookTable* toolsTable_ = nullptr;
    ShedLine* toolsInShed_ = nullptr;
    Words* unread_;
    QLabel* clampedTo_ = nullptr;
    StationFields* fields_;
    Section* props_ = nullptr;  // there only when there is one
    Section* screws_ = nullptr;
    Section* straps_ = nullptr;
    std::optional<double> selected_m_;
};

}  // namespace fayline::app
