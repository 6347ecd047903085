#include "app/panels/list_model.hpp"

#include "app/panels/reading.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

ListModel::ListModel(List list, std::vector<Column> columns, QObject* parent)
    : PieceTable(parent), list_(std::move(list)), columns_(std::move(columns)) {}

int ListModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : math::countOf(columns_);
}

QVariant ListModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (section < 0 || section >= columnCount()) return {};
    const Column& column = columns_[section];
    if (role == Qt::TextAlignmentRole) return int((column.left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    if (role == Qt::DisplayRole) return column.name;
    if (role == Qt::ToolTipRole && !column.hint.isEmpty()) return column.hint;
    return {};
}

Qt::ItemFlags ListModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = PieceTable::flags(index);
    const bool typed = index.isValid() && columns_[index.column()].read;
    return typed ? flags | Qt::ItemIsEditable : flags;
}

void ListModel::change(const QString& name, const std::function<void(boat::Piece&)>& make) {
    if (!hasPiece()) return;
    Change change{name, {}, piece()};
    make(change.after);
    emit changeAsked(change);
}

int ListModel::rowsOf(const Shown& shown) const {
    return list_.rows(shown.piece);
}

bool ListModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return list_.same(a.piece, rowOfA, b.piece, rowOfB);
}

QVariant ListModel::cell(int row, int column, int role) const {
    const Column& of = columns_[column];
    if (role == Qt::TextAlignmentRole) return int((of.left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
    if (role == placeRole && list_.at_m) {
        const std::optional<double> at_m = list_.at_m(shown(), row);
        return at_m ? QVariant(*at_m) : QVariant();
    }
    const bool atFault = shown().reasonPath.startsWith(QStringLiteral("%1[%2]").arg(list_.path).arg(row));
    if ((role == faultRole || role == Qt::ToolTipRole) && atFault) return shown().reason;
    if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
    return of.write(shown(), row);
}

QString ListModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    const QString written = value.toString().trimmed();
    if (written == cell(row, column, Qt::EditRole).toString()) return {};
    const Column& of = columns_[column];
    of.read(piece, row, written, shown());
    return tr("Change the %1 of a %2").arg(of.name.toLower(), list_.item);
}

QString ListModel::cellName(int row, int column) const {
    return tr("%1 %2, %3").arg(list_.item).arg(row + 1).arg(columns_[column].name);
}

}  // namespace fayline::app
