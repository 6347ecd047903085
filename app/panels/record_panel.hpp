// The record of the present piece: its glue-ups and dry fits planned beside real, what each taught, remarks, and how
// far the piece sprang back, at once and days later, with what that says of the next. Draws a plan and asks for
// changes.
#pragma once

#include <memory>
#include <utility>
#include <vector>

#include "app/panels/record_rows.hpp"
#include "app/panels/sectioned_panel.hpp"

class QPushButton;

namespace fayline::app {

class AnswerNote;
class RemarksEdit;
class SteadyWords;

class RecordPanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit RecordPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;

private:
    QWidget* makeClocks();
    void makeDays();
    void makeLessons();
    void makeTasks();
    // record_readings.cpp
    void makeReadings();
    void makeLearned();
    void addReading(model::Piece& piece) const;
    void useFactor();

    void takePast();
    Past pastOf(const model::Record& record);
    int chosen() const;  // the record's index; -1: none
    const Past* chosenPast() const;
    void showChosen();
    void showDays();
    void showDay();
    void remark(const QString& words);
    void removeDay();
    void useRates();

    AnswerNote* answer_;
    NotebookTable* days_ = nullptr;
    FiguresModel* daysModel_ = nullptr;
    SteadyWords* dayWords_ = nullptr;
    QWidget* ofDay_ = nullptr;  // what belongs to the chosen day
    RemarksEdit* remarks_ = nullptr;
    QPushButton* rates_ = nullptr;
    std::vector<Section*> ofDays_;  // of no use without any
    int daysTold_ = 0;              // rows of the table when it was shown last
    std::vector<Past> past_;        // of each record
    // Days of the piece as it was before it changed, which take a plan each.
    std::vector<std::pair<model::Piece, Past>> older_;
    std::shared_ptr<const Shown> pastOf_;  // of which `past_` is
};

}  // namespace fayline::app
