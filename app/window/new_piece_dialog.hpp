// A new piece: its name, and as much as its kind needs.
//
// Objects by name: "newPieceDialog"; "boatName" (only of a new boat), "pieceName" (line edits), "pieceKind" (combo
// box); offsets: "pasteNew", "openNew" (buttons); beam: "beamLength", "beamRound"; arc: "arcChord", "arcBy" (combo
// box), "arcValue"; copy: "copied" (combo box), "endForEnd", "upsideDown" (boxes to tick), "scale"; "comesOut" (label),
// "addNew" (button). Why a field cannot be taken stands in a label named for it: "beamRoundReason".
#pragma once

#include <QDialog>
#include <map>
#include <vector>

#include "core/model/boat.hpp"

class QCheckBox;
class QComboBox;
class QFormLayout;
class QLabel;
class QLineEdit;
class QPushButton;
class QStackedWidget;

namespace fayline::app {

class Words;

class NewPieceDialog : public QDialog {
    Q_OBJECT
public:
    enum Kind { offsets, beam, arc, copy };

    // A piece for `boat`, called `name` unless the user says otherwise. `boatToo`: the boat is new, asks its name too.
    NewPieceDialog(const model::Boat& boat, const QString& name, bool boatToo, QWidget* parent = nullptr);

    // Asks what of `text` to take; false: it holds nothing.
    bool takeOffsets(const QString& from, const QString& text);

    const model::Piece& piece() const { return piece_; }
    QString boatName() const;
    Kind kind() const;
    bool isToBeTyped() const { return kind() == offsets && points_.empty(); }

private:
    QWidget* makeOffsets();
    QWidget* makeBeam();
    QWidget* makeArc();
    QWidget* makeCopy();
    QLineEdit* field(QFormLayout* form, const char* object, const QString& name, const QString& hint,
                     const QString& begins);
    void judge();  // what comes out, or why nothing does
    QString make();
    double length(const char* object) const;
    QString said(double length_m) const;
    void openFile();

    model::Boat boat_;
    model::Piece piece_;
    std::vector<model::Point> points_;  // that were pasted or opened
    std::map<QString, Words*> reasons_;
    QLineEdit* boatName_ = nullptr;
    QLineEdit* name_ = nullptr;
    QComboBox* kind_ = nullptr;
    QStackedWidget* pages_ = nullptr;
    QComboBox* arcBy_ = nullptr;
    QComboBox* copied_ = nullptr;
    QCheckBox* endForEnd_ = nullptr;
    QCheckBox* upsideDown_ = nullptr;
    QLabel* comesOut_ = nullptr;
    Words* unread_ = nullptr;
    QPushButton* add_ = nullptr;
};

}  // namespace fayline::app
