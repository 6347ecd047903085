// The line of the present piece: is it fair, how tight is it and where, what was probably misread.
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "app/panels/offsets_model.hpp"
#include "app/panels/sectioned_panel.hpp"

class QPushButton;
class QVBoxLayout;

namespace fayline::app {

class AlongPlot;
class AnswerNote;
class Fields;
class NotebookTable;
class Section;
class Words;

class LinePanel : public SectionedPanel {
    Q_OBJECT
public:
    explicit LinePanel(QWidget* parent = nullptr);

    void show(const Shown& shown) override;
    void lightPlace(std::optional<double> at_m) override;
    void selectPlace(std::optional<double> at_m) override;
    void selectPoint(int point) override;
    void goToPoint(int point) override;

    // Ask what of the file or text to take, which is then one step. A single value goes into the current cell unasked.
    void openOffsets(const QString& fileName);
    void pasteOffsets(const QString& text);

private:
    QWidget* makeTools();
    void makeFields();
    void makeFairing();
    void showColumns(bool reads);
    void showPlot();
    void showRepairs();
    void showSearch();  // the proposal of a grid, and where a misread point cannot be told
    std::vector<model::Read> proposedReads() const;
    int chosenRow() const;
    void pasteRead(const QString& written);
    void takeOffsets(const QString& from, const QString& written, bool adds, const QString& changeName);
    void addRow();
    // Makes `row` the current one once it is there after `change`; `typed`: and goes into its first cell.
    void follow(int row, bool typed, const std::function<void()>& change);
    void goWhereExpected();

    OffsetsModel* offsets_;
    AnswerNote* answer_;
    AlongPlot* plot_;
    NotebookTable* table_;
    Words* unread_;
    Words* problems_;
    Words* search_;
    QPushButton* grid_;
    QVBoxLayout* repairsLayout_;
    struct RepairRow {
        QWidget* row;
        Words* text;
        QPushButton* button;
    };
    std::vector<RepairRow> repairRows_;
    std::vector<Repair> repairs_;
    Fields* fields_;
    Section* offsetsSection_ = nullptr;
    std::optional<bool> columnsShown_;
    bool changing_ = false;   // a change was asked for that is not shown yet
    bool rowWanted_ = false;  // once it is, for typing
    struct Expected {
        int row;
        bool typed;
    };
    std::optional<Expected> expected_;  // to be the current row when it comes
    int freshRow_ = -1;                 // made for typing, nothing typed yet
};

}  // namespace fayline::app
