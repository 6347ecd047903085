// The strips of the present piece: how thick, how many, how long, how near to breaking.
#pragma once

#include <memory>

#include "app/panels/panel.hpp"
#include "app/panels/stack_models.hpp"

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class Fields;
class Foldout;
class NotebookTable;
class Words;

class StripsPanel : public Panel {
    Q_OBJECT
public:
    explicit StripsPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    QWidget* makeGroupTools();
    QWidget* makeWidthTools();
    void makeGroupFields();
    void makeStackFields();
    void showPlot();
    void showWood();
    void showLimits();
    int chosenGroup() const;  // -1: none

    std::shared_ptr<const Shown> shown_;
    StripsModel* strips_;
    GroupsModel* groups_;
    WidthsModel* widths_;
    AnswerNote* answer_;
    AlongPlot* plot_;
    NotebookTable* stripsTable_;
    NotebookTable* groupsTable_;
    NotebookTable* widthsTable_;
    Words* spares_;
    Words* groupsUnread_;
    Words* widthsUnread_;
    Fields* groupFields_;
    Fields* stackFields_;
    Words* wood_;
    Foldout* woodFoldout_ = nullptr;
    Words* limits_;
    Foldout* limitsFoldout_ = nullptr;
    std::optional<double> selected_m_;
};

// As rich text: every value of a wood with where it comes from, its warning first.
QString woodText(const wood::Species& species);

// As rich text: what was looked at of the stack, each with its value, its limit and where the limit comes from.
QString limitsText(const stack::StackPlan& stack, const measure::Display& display);

}  // namespace fayline::app
