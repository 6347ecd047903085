// The glue of the present piece: its answer and caution, how much of what, the cups and when each goes off, the air
// about the work, and when clamps come off. Draws a plan and asks for changes.
#pragma once

#include "app/panels/sectioned_panel.hpp"

class QComboBox;

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class Fields;
class SteadyWords;

class GluePanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit GluePanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;

private:
    Fields* mainFields();
    // In the order in which they stand in the panel.
    void makeAmounts();
    void makeBatches();
    void makePotLife();
    void makeConditions();
    void makeCure();
    void makeGlue();
    void makeCoats();
    void makeAir();

    void showAdhesives();
    void showPotLife();

    AnswerNote* answer_;
    SteadyWords* caution_;
    Fields* main_ = nullptr;
    SteadyWords* warning_ = nullptr;
    AlongPlot* potLife_ = nullptr;
    // A field that chooses the glue by one thing that it is called by, and what that offers.
    struct GlueChoice {
        QComboBox* field;
        std::string glue::Adhesive::*part;
        QStringList names;
    };
    std::vector<GlueChoice> adhesive_;
    std::shared_ptr<const plan::Plan> pictured_;  // whose pot lives are drawn
    model::Vessel picturedVessel_ = model::Vessel::cup;
};

}  // namespace fayline::app
