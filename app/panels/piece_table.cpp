#include "app/panels/piece_table.hpp"

#include <QStringList>

#include "app/panels/reading.hpp"

namespace fayline::app {

void PieceTable::show(std::shared_ptr<const Shown> next) {
    const int rows = next->pieceIndex < 0 ? 0 : rowsOf(*next);
    if (!shown_ || shown_->pieceIndex != next->pieceIndex) {
        beginResetModel();
        shown_ = std::move(next);
        rows_ = rows;
        drafts_.clear();
        endResetModel();
        emit unreadChanged();
        return;
    }
    if (rows != rows_) {
        // Rows that were before the first difference stay where they are; an editor open in one of them stays too.
        int same = 0;
        while (same < std::min(rows, rows_) && sameRow(*shown_, same, *next, same)) ++same;
        const int more = rows - rows_;
        clearDrafts();
        if (more > 0) {
            beginInsertRows({}, same, same + more - 1);
        } else {
            same = std::min(same, rows);
            beginRemoveRows({}, same, same - more - 1);
        }
        shown_ = std::move(next);
        rows_ = rows;
        more > 0 ? endInsertRows() : endRemoveRows();
    } else {
        shown_ = std::move(next);
    }
    if (rows_ > 0) emit dataChanged(index(0, 0), index(rows_ - 1, columnCount() - 1));
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
    return cell(index.row(), index.column(), role);
}

bool PieceTable::setData(const QModelIndex& index, const QVariant& value, int role) {
    if ((role != Qt::EditRole && role != Qt::CheckStateRole) || !index.isValid() || !hasPiece()) return false;
    const std::pair<int, int> place{index.row(), index.column()};
    boat::Piece after = piece();
    Change change;
    try {
        change.name = put(after, index.row(), index.column(), value);
        if (after != piece()) refuseImpossible(piece(), after);
    } catch (const measure::InputError& error) {
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

void PieceTable::clearDrafts() {
    if (drafts_.empty()) return;
    drafts_.clear();
    emit unreadChanged();
}

}  // namespace fayline::app
