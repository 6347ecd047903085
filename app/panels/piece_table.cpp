#include "app/panels/piece_table.hpp"

#include <QStringList>

#include "app/panels/reading.hpp"

namespace fayline::app {

PieceTable::PieceTable(QObject* parent) : QAbstractTableModel(parent) {
    connect(this, &PieceTable::changeAsked, this, [this](const Change& change) { asked_ = change.after; });
}

void PieceTable::whenChanged(std::function<void()> act) {
    asked_ ? void(then_ = std::move(act)) : act();
}

void PieceTable::show(std::shared_ptr<const Shown> next) {
    const int rows = next->pieceIndex < 0 ? 0 : rowsOf(*next);
    if (asked_ && (!shown_->samePieceAs(*next) || next->piece == *asked_)) {
        asked_.reset();
        if (then_) QMetaObject::invokeMethod(this, std::exchange(then_, nullptr), Qt::QueuedConnection);
    }
    if (!shown_ || !shown_->samePieceAs(*next)) {
        beginResetModel();
        shown_ = std::move(next);
        rows_ = rows;
        drafts_.clear();
        endResetModel();
        emit unreadChanged();
        return;
    }
    rows == rows_ ? void(shown_ = std::move(next)) : changeRows(std::move(next), rows);
    if (std::exchange(draftsMoved_, false)) emit unreadChanged();
    if (rows_ > 0) emit dataChanged(index(0, 0), index(rows_ - 1, columnCount() - 1));
}

// Rows before the first difference and after the last stay where they are, and an editor open in one of them stays too.
void PieceTable::changeRows(std::shared_ptr<const Shown> next, int rows) {
    const int fewest = std::min(rows, rows_);
    int before = 0;
    while (before < fewest && sameRow(*shown_, before, *next, before)) ++before;
    int after = 0;
    while (after < fewest - before && sameRow(*shown_, rows_ - 1 - after, *next, rows - 1 - after)) ++after;
    const int gone = rows_ - before - after;
    const int come = rows - before - after;
    moveDrafts(before, gone, come);
    if (gone > 0) {
        beginRemoveRows({}, before, before + gone - 1);
        shown_ = next;
        rows_ = before + after;
        comingAt_ = before;
        coming_ = come;
        endRemoveRows();
    }
    if (come > 0) {
        beginInsertRows({}, before, before + come - 1);
        shown_ = next;
        rows_ = rows;
        coming_ = 0;
        endInsertRows();
    }
}

int PieceTable::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : rows_;
}

QVariant PieceTable::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || !hasPiece() || index.row() >= rows_) return {};
    const auto draft = drafts_.find({index.row(), index.column()});
    if (draft != drafts_.end()) {
        if (role == Qt::DisplayRole || role == Qt::EditRole) return draft->second.text;
        if (role == faultRole || role == Qt::ToolTipRole) return draft->second.reason;
    }
    // Between rows that went and rows that are yet to come, what follows them stands further down in the piece.
    const int row = index.row() + (index.row() >= comingAt_ ? coming_ : 0);
    return cell(row, index.column(), role);
}

bool PieceTable::setData(const QModelIndex& index, const QVariant& value, int role) {
    if ((role != Qt::EditRole && role != Qt::CheckStateRole) || !index.isValid() || !hasPiece()) return false;
    const std::pair<int, int> place{index.row(), index.column()};
    model::Piece after = piece();
    Change change;
    try {
        change.name = put(after, index.row(), index.column(), value);
        if (after != piece()) refuseImpossible(piece(), after);
    } catch (const units::InputError& error) {
        drafts_[place] = {value, why(error)};
        emit dataChanged(index, index);
        emit unreadChanged();
        return true;
    }
    if (drafts_.erase(place) > 0) {
        emit dataChanged(index, index);
        emit unreadChanged();
    }
    if (after == piece()) return true;
    change.after = std::move(after);
    emit changeAsked(change);
    return true;
}

QString PieceTable::unread() const {
    QStringList reasons;
    for (const auto& [place, draft] : drafts_)
        reasons << QStringLiteral("%1: %2").arg(cellName(place.first, place.second), draft.reason);
    return reasons.join(QLatin1Char('\n'));
}

void PieceTable::dropDraft(const QModelIndex& index) {
    if (drafts_.erase({index.row(), index.column()}) == 0) return;
    emit dataChanged(index, index);
    emit unreadChanged();
}

void PieceTable::moveDrafts(int at, int gone, int come) {
    if (drafts_.empty()) return;
    std::map<std::pair<int, int>, Draft> moved;
    for (auto& [place, draft] : drafts_) {
        if (place.first < at) moved[place] = std::move(draft);
        if (place.first >= at + gone) moved[{place.first + come - gone, place.second}] = std::move(draft);
    }
    drafts_ = std::move(moved);
    draftsMoved_ = true;
}

}  // namespace fayline::app
