// Two states of a piece side by side, or two pieces: what became better or worse in each of the nine questions, which
// findings went and which came. Changes nothing.
//
// Objects by name: "compareDialog"; "compareFirst", "compareSecond" (combo boxes); "compared" (table: a row for each
// question); "compareNote" (what is not there yet, or why), "compareAgain" (button); "findingsGone", "findingsNew"
// (their lines).
#pragma once

#include <QDialog>
#include <array>
#include <memory>
#include <vector>

#include "app/look/shown.hpp"
#include "app/window/document.hpp"
#include "core/plan/compare.hpp"
#include "core/plan/shop.hpp"

class QComboBox;
class QPushButton;
class QTableWidget;
class QVBoxLayout;

namespace fayline::app {

class Heading;
class Words;

class CompareDialog : public QDialog {
    Q_OBJECT
public:
    // Of the current piece of `document`; its plan is taken from `shown` where that has it whole, all others are made
    // when they are first looked at.
    CompareDialog(const Document& document, const Shown& shown, QWidget* parent = nullptr);

    void reject() override;

private:
    struct State {
        QString name;
        model::Piece piece;
        plan::Shop shop;
        std::shared_ptr<const plan::Plan> plan;  // null: not yet, or there is none
        QString trouble;                         // why there is none
    };
    void gather(const Document& document, const Shown& shown);
    void layOut();
    QComboBox* box(const char* object, const QString& name, int chosen);
    State& state(int side);
    bool isWhole(const State& state) const;
    void calculate();
    void showStates();
    void fillTable(const plan::Comparison& comparison);
    void showFindings(const plan::Comparison* comparison);

    units::Display display_;
    std::vector<State> states_;
    std::array<QComboBox*, 2> boxes_{};
    QTableWidget* table_ = nullptr;
    Words* note_ = nullptr;
    QPushButton* again_ = nullptr;
    struct Lines {
        Heading* heading = nullptr;
        QWidget* lines = nullptr;
    };
    Lines gone_;
    Lines come_;
    bool working_ = false;
};

}  // namespace fayline::app
