// The strips of the present piece: how thick, how many, how long, how near to breaking.
#pragma once

#include <memory>
#include <vector>

#include "app/panels/sectioned_panel.hpp"
#include "app/panels/stack_models.hpp"
#include "core/plan/study/choices.hpp"

class QComboBox;

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class ChoicesPicture;
class Fields;
class NotebookTable;
class SteadyWords;
class Words;

class StripsPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit StripsPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    QWidget* makeGroupTools();
    QWidget* makeWidthTools();
    Words* newBook(const char* object);
    // In the order in which they stand in the panel.
    void makeChoices();
    void makeStrips();
    void makeGroupFields();
    void makeWood();
    void makeWidths();
    void makeStackFields();
    void makeLimits();
    QWidget* makeChoiceAxes();
    const plan::Choices* knownChoices() const;  // of the piece as it stands or was a moment ago; null: none yet
    void showChoicesPicture();
    void choose(int index);  // of the choices; changes nothing of the piece
    int chosenChoice() const;
    void showChosen();
    void takeChosen();
    void showPlot();
    void showDrying();
    void showSpares();
    int chosenGroup() const;  // -1: none

    StripsModel* strips_;
    GroupsModel* groups_;
    WidthsModel* widths_;
    AnswerNote* answer_;
    AlongPlot* plot_;
    NotebookTable* stripsTable_;
    NotebookTable* groupsTable_ = nullptr;
    NotebookTable* widthsTable_ = nullptr;
    Words* spares_;
    Words* groupsUnread_;
    Fields* groupFields_;
    SteadyWords* drying_;
    Fields* stackFields_;
    Section* wood_ = nullptr;
    QComboBox* upwards_ = nullptr;  // which count
    QComboBox* across_ = nullptr;
    ChoicesPicture* picture_ = nullptr;
    FiguresModel* choices_ = nullptr;
    NotebookTable* choicesTable_ = nullptr;
    std::vector<int> choiceOfRow_;
    std::optional<plan::Choice> chosen_;  // by the user; known again by its strips
    bool showingChosen_ = false;
    SteadyWords* chosenWords_ = nullptr;
    NotebookTable* changesTable_ = nullptr;
    FiguresModel* changes_ = nullptr;
    QPushButton* take_ = nullptr;
    struct ChoicesShown {
        std::shared_ptr<const plan::Plan> plan;  // that has the choices
        units::Display display;
        bool old = false;
        bool operator==(const ChoicesShown&) const = default;
    };
    std::optional<ChoicesShown> choicesShown_;
    std::optional<double> selected_m_;
};

// As rich text: every value of a wood with where it comes from, its warning first.
QString woodText(const wood::Species& species, const units::Display& display);

// As rich text: what was looked at of the stack, each with its value, its limit and where the limit comes from.
QString limitsText(const laminate::StackPlan& stack, const units::Display& display);

}  // namespace fayline::app
