#include "app/window/document.hpp"

#include <QCryptographicHash>
#include <QFile>
#include <QFileInfo>
#include <QLocale>
#include <QUuid>
#include <algorithm>

#include "app/look/text.hpp"
#include "core/io/file.hpp"
#include "core/math/count.hpp"
#include "core/model/new_piece.hpp"

namespace fayline::app {

namespace {

enum CommandId { changePieceId = 1, changeBoatId = 2 };

// Of the whole content: size and time may both stay when a file is changed by a program that means well.
QByteArray digestOf(const QString& fileName) {
    QFile file(fileName);
    QCryptographicHash digest(QCryptographicHash::Sha256);
    return !fileName.isEmpty() && file.open(QIODevice::ReadOnly) && digest.addData(&file) ? digest.result()
                                                                                          : QByteArray();
}

// Not from a count: one that a removed piece had must not come back for another.
std::string freshId() {
    return "p" + QUuid::createUuid().toString(QUuid::Id128).first(12).toStdString();
}

}  // namespace

class DocumentCommand : public QUndoCommand {
public:
    using QUndoCommand::QUndoCommand;
    // The piece with this id as it was before; null: it was not changed.
    virtual const model::Piece* pieceBefore(const std::string& id) const = 0;
};

// Holds the piece before and after: whole values, so that undoing cannot drift from what was.
class ChangePieceCommand : public DocumentCommand {
public:
    ChangePieceCommand(Document& document, int index, const Change& change)
        : DocumentCommand(change.name),
          document_(document),
          index_(index),
          merges_(change.merges),
          step_(document.step_),
          before_(document.boat_.pieces[index]),
          after_(change.after) {}

    int id() const override { return merges_.isEmpty() ? -1 : changePieceId; }
    void redo() override { document_.putPiece(index_, after_); }
    void undo() override { document_.putPiece(index_, before_); }
    const model::Piece* pieceBefore(const std::string& id) const override {
        return before_.id == id ? &before_ : nullptr;
    }

    bool mergeWith(const QUndoCommand* next) override {
        const auto& other = static_cast<const ChangePieceCommand&>(*next);
        if (other.index_ != index_ || other.merges_ != merges_ || other.step_ != step_) return false;
        after_ = other.after_;
        setText(other.text());
        setObsolete(after_ == before_);
        return true;
    }

private:
    Document& document_;
    int index_;
    QString merges_;
    quint64 step_;
    model::Piece before_;
    model::Piece after_;
};

class ChangeBoatCommand : public DocumentCommand {
public:
    ChangeBoatCommand(Document& document, const QString& name, const QString& merges, const model::Boat& after,
                      int currentAfter)
        : DocumentCommand(name),
          document_(document),
          merges_(merges),
          step_(document.step_),
          before_(document.boat_),
          after_(after),
          currentBefore_(document.currentPiece_),
          currentAfter_(currentAfter) {}

    int id() const override { return merges_.isEmpty() ? -1 : changeBoatId; }
    void redo() override { document_.putBoat(after_, currentAfter_); }
    void undo() override { document_.putBoat(before_, currentBefore_); }
    const model::Piece* pieceBefore(const std::string& id) const override {
        const auto before = std::ranges::find(before_.pieces, id, &model::Piece::id);
        const auto after = std::ranges::find(after_.pieces, id, &model::Piece::id);
        const bool both = before != before_.pieces.end() && after != after_.pieces.end();
        return both && !(*before == *after) ? &*before : nullptr;
    }

    bool mergeWith(const QUndoCommand* next) override {
        const auto& other = static_cast<const ChangeBoatCommand&>(*next);
        if (other.merges_ != merges_ || other.step_ != step_) return false;
        after_ = other.after_;
        currentAfter_ = other.currentAfter_;
        setText(other.text());
        setObsolete(after_ == before_);
        return true;
    }

private:
    Document& document_;
    QString merges_;
    quint64 step_;
    model::Boat before_;
    model::Boat after_;
    int currentBefore_;
    int currentAfter_;
};

Document::Document(std::shared_ptr<const model::Shed> shed, QObject* parent) : QObject(parent), shed_(std::move(shed)) {
    startNew();
}

model::Piece Document::withShed(const model::Piece& piece) const {
    return shed_ ? model::withShed(piece, *shed_) : piece;
}

model::Brought Document::lackingFor(const model::Boat& boat, const model::Piece* before,
                                    const model::Piece& after) const {
    return shed_ ? model::lackingFor(boat, before, after, *shed_) : model::Brought();
}

void Document::setCurrentPiece(int index) {
    index = std::clamp(index, -1, math::countOf(boat_.pieces) - 1);
    if (index == currentPiece_) return;
    currentPiece_ = index;
    endStep();
    setHoveredPlace(std::nullopt);
    setSelectedPlace(std::nullopt);
    emit currentPieceChanged(index);
}

void Document::setHoveredPlace(std::optional<double> at_m) {
    if (hoveredPlace_ == at_m) return;
    hoveredPlace_ = at_m;
    emit hoveredPlaceChanged(at_m);
}

void Document::setSelectedPlace(std::optional<double> at_m) {
    if (selectedPlace_ == at_m) return;
    selectedPlace_ = at_m;
    emit selectedPlaceChanged(at_m);
}

void Document::changePiece(int index, const Change& change) {
    if (index < 0 || index >= math::countOf(boat_.pieces)) return;
    // The step under way may come back to where it began; any other change to the same is none.
    const bool ofBoat = change.boatBoards && *change.boatBoards != boat_.boards;
    if (change.after == boat_.pieces[index] && !ofBoat) return;
    const model::Brought brought = lackingFor(boat_, &boat_.pieces[index], change.after);
    if (!brought.any() && !ofBoat) return undo_.push(new ChangePieceCommand(*this, index, change));
    model::Boat after = boat_;
    after.pieces[index] = change.after;
    if (change.boatBoards) after.boards = *change.boatBoards;
    model::bring(after, brought);
    changeBoat(change.name, change.merges, after, index);
}

void Document::endStep() {
    ++step_;
}

int Document::pieceWithId(const std::string& id) const {
    const auto found = std::ranges::find(boat_.pieces, id, &model::Piece::id);
    return found == boat_.pieces.end() || id.empty() ? -1 : int(found - boat_.pieces.begin());
}

std::optional<Document::Earlier> Document::beforeLastChange(int index) const {
    if (index < 0 || index >= math::countOf(boat_.pieces) || boat_.pieces[index].id.empty()) return std::nullopt;
    for (int i = undo_.index() - 1; i >= 0; --i) {
        const auto* command = static_cast<const DocumentCommand*>(undo_.command(i));
        const model::Piece* before = command->pieceBefore(boat_.pieces[index].id);
        if (before) return Earlier{*before, command->text()};
    }
    return std::nullopt;
}

void Document::addPiece(const model::Piece& piece) {
    model::Boat after = boat_;
    const int at = currentPiece_ < 0 ? math::countOf(after.pieces) : currentPiece_ + 1;
    const bool taken = piece.id.empty() || pieceWithId(piece.id) >= 0;
    after.pieces.insert(after.pieces.begin() + at, piece);
    if (taken) after.pieces[at].id = freshId();
    model::bring(after, lackingFor(boat_, nullptr, piece));
    changeBoat(tr("Add %1").arg(QString::fromStdString(piece.name)), {}, after, at);
}

void Document::removePiece(int index) {
    if (index < 0 || index >= math::countOf(boat_.pieces)) return;
    model::Boat after = boat_;
    const QString name = QString::fromStdString(after.pieces[index].name);
    after.pieces.erase(after.pieces.begin() + index);
    changeBoat(tr("Remove %1").arg(name), {}, after, std::min(index, math::countOf(after.pieces) - 1));
}

void Document::movePiece(int from, int to) {
    const int count = math::countOf(boat_.pieces);
    if (from < 0 || from >= count || to < 0 || to >= count || from == to) return;
    model::Boat after = boat_;
    const model::Piece piece = after.pieces[from];
    after.pieces.erase(after.pieces.begin() + from);
    after.pieces.insert(after.pieces.begin() + to, piece);
    changeBoat(tr("Move %1 in the list").arg(QString::fromStdString(piece.name)), {}, after, to);
}

void Document::changeBoat(const QString& name, const QString& merges, const model::Boat& after) {
    changeBoat(name, merges, after, std::min(currentPiece_, math::countOf(after.pieces) - 1));
}

void Document::changeBoat(const QString& name, const QString& merges, const model::Boat& after, int currentPiece) {
    if (after == boat_) return;
    undo_.push(new ChangeBoatCommand(*this, name, merges, after, currentPiece));
}

void Document::open(const QString& fileName) {
    // Before it is read: a change between the two is then asked about once too often, not overwritten.
    const QByteArray found = digestOf(fileName);
    const model::Boat read = io::loadBoat(pathOf(fileName));
    onDisk_ = found;
    replaceBoat(read, QFileInfo(fileName).absoluteFilePath());
}

void Document::save(const QString& fileName) {
    io::saveBoat(boat_, pathOf(fileName));
    fileName_ = QFileInfo(fileName).absoluteFilePath();
    onDisk_ = digestOf(fileName_);
    endStep();
    undo_.setClean();
    emit fileNameChanged();
}

bool Document::changedOnDisk() const {
    const QByteArray now = digestOf(fileName_);
    return !now.isEmpty() && now != onDisk_;
}

model::Boat Document::newBoat() const {
    model::Boat fresh;
    if (QLocale().measurementSystem() != QLocale::MetricSystem) fresh.display = units::inchShop;
    if (shed_ && shed_->display) fresh.display = shed_->display->display;
    fresh.pieces.push_back(withShed(model::newPiece(tr("Piece 1").toStdString(), fresh.display)));
    return fresh;
}

void Document::startNew(const model::Boat& boat) {
    model::Boat fresh = boat;
    for (model::Piece& piece : fresh.pieces) {
        piece.id = freshId();
        model::bring(fresh, lackingFor(fresh, nullptr, piece));
    }
    onDisk_.clear();
    replaceBoat(fresh, {});
}

void Document::recover(const model::Boat& boat, const QString& fileName) {
    onDisk_ = digestOf(fileName);
    replaceBoat(boat, fileName);
    undo_.resetClean();
}

void Document::replaceBoat(const model::Boat& boat, const QString& fileName) {
    boat_ = boat;
    ++boatNumber_;
    fileName_ = fileName;
    currentPiece_ = boat_.pieces.empty() ? -1 : 0;
    hoveredPlace_.reset();
    selectedPlace_.reset();
    endStep();
    undo_.clear();
    emit boatReplaced();
    emit fileNameChanged();
    emit currentPieceChanged(currentPiece_);
    emit hoveredPlaceChanged({});
    emit selectedPlaceChanged({});
}

void Document::putPiece(int index, const model::Piece& piece) {
    boat_.pieces[index] = piece;
    if (index != currentPiece_) setCurrentPiece(index);  // what is undone shall be seen
    emit pieceChanged(index);
}

void Document::putBoat(const model::Boat& boat, int currentPiece) {
    const auto idAt = [](const model::Boat& of, int index) { return index < 0 ? std::string() : of.pieces[index].id; };
    const bool samePiece = currentPiece == currentPiece_ && boat.pieces.size() == boat_.pieces.size() &&
                           idAt(boat, currentPiece) == idAt(boat_, currentPiece_);
    boat_ = boat;
    currentPiece_ = currentPiece;
    emit boatChanged();
    if (samePiece) return;
    hoveredPlace_.reset();
    selectedPlace_.reset();
    emit currentPieceChanged(currentPiece_);
    emit hoveredPlaceChanged({});
    emit selectedPlaceChanged({});
}

}  // namespace fayline::app

#include "moc_document.cpp"
