// The one holder of the boat, its file, the undo history, and what is selected and pointed at.
#pragma once

#include <QByteArray>
#include <QObject>
#include <QString>
#include <QUndoStack>
#include <memory>
#include <optional>

#include "app/look/change.hpp"
#include "core/model/boat.hpp"
#include "core/model/shed.hpp"

namespace fayline::app {

class Document : public QObject {
    Q_OBJECT
public:
    // `shed`: the user's, or null for none. New boats and pieces begin with it; and a boat takes along a copy of what a
    // piece begins to use of the shed's own glues and woods, in the same step.
    explicit Document(std::shared_ptr<const model::Shed> shed = nullptr, QObject* parent = nullptr);
    const std::shared_ptr<const model::Shed>& shed() const { return shed_; }
    void setShed(std::shared_ptr<const model::Shed> shed) { shed_ = std::move(shed); }
    model::Piece withShed(const model::Piece& piece) const;  // with all that the shed has for it

    const model::Boat& boat() const { return boat_; }
    const QString& fileName() const { return fileName_; }  // empty: never saved
    bool hasUnsavedChanges() const { return !undo_.isClean(); }
    QUndoStack& undoStack() { return undo_; }

    // Of this boat and no other, as long as the program runs: each boat opened, begun or recovered has its own.
    quint64 boatNumber() const { return boatNumber_; }
    int pieceWithId(const std::string& id) const;  // its index, -1: none
    // A piece of the boat before the newest change to it that can be undone, and what that is called; none: there is
    // none, or the piece has no id.
    struct Earlier {
        model::Piece piece;
        QString change;
    };
    std::optional<Earlier> beforeLastChange(int index) const;

    int currentPiece() const { return currentPiece_; }  // -1: none
    void setCurrentPiece(int index);
    std::optional<double> hoveredPlace() const { return hoveredPlace_; }  // metres along the line
    void setHoveredPlace(std::optional<double> at_m);
    void setSelectedPlace(std::optional<double> at_m);

    // Each of these is one step that can be undone; one that changes nothing is none. Steps in a row on the same piece
    // with the same non-empty `merges` become one, which vanishes when it ends where it began.
    void changePiece(int index, const Change& change);
    void endStep();                            // the next change is a step of its own, whatever it merges with
    void addPiece(const model::Piece& piece);  // with an id of its own where it has none, or one that is taken
    void removePiece(int index);
    void movePiece(int from, int to);
    // Name, notes, display, own woods; also the pieces. `currentPiece` as in currentPiece().
    void changeBoat(const QString& name, const QString& merges, const model::Boat& after);
    void changeBoat(const QString& name, const QString& merges, const model::Boat& after, int currentPiece);

    // Throw units::InputError and change nothing when the file cannot be read or written.
    void open(const QString& fileName);
    void save(const QString& fileName);
    // Someone else has changed the boat's file since it was read or written here last. A file that is gone is not
    // changed: saving brings it back and loses nothing.
    bool changedOnDisk() const;
    model::Boat newBoat() const;  // with one piece of three points, so that there is something to see and to drag
    void startNew(const model::Boat& boat);
    void startNew() { startNew(newBoat()); }

    // A boat found after the program ended before its time: as it was, unsaved, to be saved as `fileName`.
    void recover(const model::Boat& boat, const QString& fileName);

signals:
    void boatReplaced();  // another boat: opened or new
    void boatChanged();   // anything but a piece: name, display, number or order of pieces
    void pieceChanged(int index);
    void currentPieceChanged(int index);
    void hoveredPlaceChanged(std::optional<double> at_m);
    void selectedPlaceChanged(std::optional<double> at_m);
    void fileNameChanged();

private:
    friend class ChangePieceCommand;
    friend class ChangeBoatCommand;
    void replaceBoat(const model::Boat& boat, const QString& fileName);
    void putPiece(int index, const model::Piece& piece);
    void putBoat(const model::Boat& boat, int currentPiece);
    model::Brought lackingFor(const model::Boat& boat, const model::Piece* before, const model::Piece& after) const;

    std::shared_ptr<const model::Shed> shed_;
    model::Boat boat_;
    quint64 boatNumber_ = 0;
    QString fileName_;
    QByteArray onDisk_;  // digest of the file as it was read or written last; empty: there was none
    QUndoStack undo_;
    int currentPiece_ = -1;
    quint64 step_ = 0;  // changes of different steps do not merge
    std::optional<double> hoveredPlace_;
    std::optional<double> selectedPlace_;
};

}  // namespace fayline::app
