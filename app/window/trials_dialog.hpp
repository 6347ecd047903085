// Measuring one's own wood: the boat's trials of strips between two supports, what each says, and what they say
// together.
//
// A trial is typed in below the list and kept by a button, so that nothing half typed counts as measured. Every change
// is one undo step of the boat, or of the piece that is given a measured value.
#pragma once

#include <QDialog>
#include <vector>

#include "app/window/document.hpp"
#include "core/wood/species.hpp"
#include "core/wood/trial.hpp"

class QCheckBox;
class QGridLayout;
class QLabel;
class QLineEdit;
class QPushButton;

namespace fayline::app {

class FiguresModel;
class NotebookTable;
class SearchedChoice;
class Words;

class TrialsDialog : public QDialog {
    Q_OBJECT
public:
    explicit TrialsDialog(Document& document, QWidget* parent = nullptr);

private:
    enum Which { when, span, width, thickness, weight, sag, readTo, moisture, fields };

    void makeTable();
    QWidget* makeForm();
    QLineEdit* field(QGridLayout* grid, int row, int column, const char* object, const QString& name,
                     const QString& hint);
    QWidget* makeButtons();
    void showBoat();                     // the list, what the woods' trials say together
    void showForm();                     // of the chosen trial, or of a new one
    void tell();                         // what the trial as it is typed says
    void choose(int row);                // -1: a new one
    void chooseWood(const QString& id);  // one that no table knows is added
    model::Trial typed() const;          // throws units::InputError with the key of the field as its path
    bool anyEmpty() const;
    void keep();
    void remove();
    void give(bool breaking);
    const wood::WoodMeasured* measuredOfForm() const;
    const model::Piece* piece() const;
    std::string woodOfForm() const;
    model::Trial base() const;  // the chosen trial, or what a new one begins as

    Document& document_;
    std::vector<wood::Species> species_;
    std::vector<wood::WoodMeasured> measured_;
    int chosen_ = -1;
    model::Trial filledWith_;  // what the form was filled from
    bool showing_ = false;

    FiguresModel* model_ = nullptr;
    NotebookTable* table_ = nullptr;
    Words* together_ = nullptr;
    QLabel* heading_ = nullptr;
    SearchedChoice* wood_ = nullptr;
    QLineEdit* texts_[fields] = {};
    QCheckBox* broke_ = nullptr;
    QLineEdit* notes_ = nullptr;
    QLabel* says_ = nullptr;
    Words* wrong_ = nullptr;
    QPushButton* keep_ = nullptr;
    QPushButton* new_ = nullptr;
    QPushButton* remove_ = nullptr;
    QPushButton* giveModulus_ = nullptr;
    QPushButton* giveBreaking_ = nullptr;
};

}  // namespace fayline::app
