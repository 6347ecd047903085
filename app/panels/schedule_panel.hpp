// The day of the present piece: its answer, who does what when with the limit of every cup and face, the chance of
// being in time, what would mend a short margin, the crew, and how far days differ. Draws a plan and asks for changes.
#pragma once

#include "app/panels/figures_model.hpp"
#include "app/panels/sectioned_panel.hpp"

class QComboBox;
class QPushButton;

namespace fayline::app {

class AnswerNote;
class LanesChart;
class SteadyWords;

class SchedulePanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit SchedulePanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;

private:
    // In the order in which they stand in the panel.
    void makeChance();
    void makeRemedies();
    using GluingRows = std::vector<FigureRow> (*)(const Shown&, const plan::GluingDay&);
    void addFigures(const char* head, const QString& title, bool open, const char* object, const QString& name,
                    std::vector<FigureColumn> columns, GluingRows rows);
    void makeRates();
    void makeUncertain();

    void hideEvent(QHideEvent* event) override;

    const plan::GluingDay* gluing() const;
    void showGluings();
    void showChart();
    void pointAt(std::optional<double> at_s);  // a minute of the chart
    void sayRemedy();
    void adoptRemedy();
    const plan::Remedy* chosenRemedy() const;

    AnswerNote* answer_;
    Fields* main_ = nullptr;
    QLabel* hands_ = nullptr;
    QComboBox* gluings_;
    LanesChart* chart_;
    SteadyWords* momentWords_;
    NotebookTable* remediesTable_ = nullptr;
    FiguresModel* remedies_ = nullptr;
    SteadyWords* remedyAsks_ = nullptr;
    QPushButton* adopt_ = nullptr;
};

}  // namespace fayline::app
