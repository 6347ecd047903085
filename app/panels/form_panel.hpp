// The form of the present piece: its answer, how far its edge lies from the wanted one, what the piece does when it is
// let go, and what can be said of the form. Draws a plan and asks for changes.
#pragma once

#include "app/panels/sectioned_panel.hpp"

class QLabel;
class QCheckBox;
class QLineEdit;

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class Fields;
class SteadyWords;

class FormPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit FormPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    Fields* mainFields();
    Fields* supportFields();
    // In the order in which they stand in the panel.
    void makeOpenings();
    void makeInPlace();
    void makeFields();
    void makeSupport();
    void makeRule();
    void makeHome();
    void makeFewer();
    void makePlaned();
    void makeAir();

    void showPlot();
    void showAir();
    void showHome();
    bool handMoves() const;

    AnswerNote* answer_;
    AlongPlot* plot_;
    Fields* main_ = nullptr;
    QLineEdit* air_ = nullptr;
    QLineEdit* humidity_ = nullptr;
    SteadyWords* airWords_ = nullptr;
    std::optional<double> airMoisture_;
    QLabel* homeName_ = nullptr;
    QLineEdit* homeOff_ = nullptr;
    Words* homeReason_ = nullptr;
    SteadyWords* homeWords_ = nullptr;
    std::shared_ptr<const Shown> homePiece_;  // of which the end was typed
    QCheckBox* letGo_ = nullptr;              // there unless it is glued on the boat, where it stays
    Section* openings_ = nullptr;             // these are there unless it stays
    Section* rule_ = nullptr;
    Section* home_ = nullptr;
    Section* inPlace_ = nullptr;  // there only where nothing lets go
    std::optional<double> selected_m_;
};

}  // namespace fayline::app
