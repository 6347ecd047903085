// Where the present piece is held: stations along the line, along the outside as the tape lies, and in the plane.
#pragma once

#include <memory>

#include "app/panels/panel.hpp"
#include "app/panels/stations_model.hpp"

class QComboBox;
class QLineEdit;

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class NotebookTable;
class Words;

class StationsPanel : public Panel {
    Q_OBJECT
public:
    explicit StationsPanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;

private:
    QWidget* makeTools();
    QWidget* makeEvenly();
    void setOutEvenly();
    void showPlot();
    void showEvenDefaults(bool another);

    std::shared_ptr<const Shown> shown_;
    StationsModel* stations_;
    AnswerNote* answer_;
    AlongPlot* plot_;
    NotebookTable* table_;
    Words* unread_;
    QLineEdit* from_ = nullptr;
    QLineEdit* to_ = nullptr;
    QLineEdit* spacing_ = nullptr;
    QComboBox* kind_ = nullptr;
    Words* reason_;
    std::optional<double> selected_m_;
};

}  // namespace fayline::app
