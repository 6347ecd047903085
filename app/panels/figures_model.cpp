#include "app/panels/figures_model.hpp"

#include <algorithm>
#include <utility>

#include "app/look/judged.hpp"
#include "app/panels/piece_table.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

FiguresModel::FiguresModel(std::vector<FigureColumn> columns, QObject* parent)
    : QAbstractTableModel(parent), columns_(std::move(columns)) {}

void FiguresModel::show(std::vector<FigureRow> rows, bool faint) {
    const int before = rowCount();
    const int after = math::countOf(rows);
    const bool otherInk = std::exchange(faint_, faint) != faint;
    // Of rows like these only the number matters for where they begin and end: each is drawn anew.
    if (after > before) {
        beginInsertRows({}, before, after - 1);
        std::swap(rows_, rows);
        endInsertRows();
    } else if (after < before) {
        beginRemoveRows({}, after, before - 1);
        std::swap(rows_, rows);
        endRemoveRows();
    } else {
        std::swap(rows_, rows);
    }
    for (int row = 0; row < std::min(before, after); ++row) {
        const auto i = static_cast<std::size_t>(row);
        if (otherInk || !(rows[i] == rows_[i])) emit dataChanged(index(row, 0), index(row, columnCount() - 1));
    }
}

void FiguresModel::name(std::vector<FigureColumn> columns) {
    if (columns == columns_ || columns.size() != columns_.size()) return;
    columns_ = std::move(columns);
    emit headerDataChanged(Qt::Horizontal, 0, columnCount() - 1);
}

int FiguresModel::rowCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : math::countOf(rows_);
}

int FiguresModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : math::countOf(columns_);
}

QVariant FiguresModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (section < 0 || section >= columnCount()) return {};
    const FigureColumn& column = columns_[section];
    switch (role) {
        case Qt::DisplayRole:
            return column.name;
        case underRole:
            return column.under.isEmpty() ? QVariant() : QVariant(column.under);
        case Qt::ToolTipRole:
            return column.hint.isEmpty() ? QVariant() : QVariant(column.hint);
        case Qt::TextAlignmentRole:
            return int((column.left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
        default:
            return {};
    }
}

QVariant FiguresModel::data(const QModelIndex& index, int role) const {
    if (!index.isValid() || index.row() >= rowCount()) return {};
    const FigureRow& row = rows_[index.row()];
    if (role == placeRole) return row.at_m ? QVariant(*row.at_m) : QVariant();
    if (role == faintRole) return faint_;
    if (role == Qt::TextAlignmentRole) return headerData(index.column(), Qt::Horizontal, role);
    if (static_cast<std::size_t>(index.column()) >= row.cells.size()) return {};
    const FigureCell& cell = row.cells[index.column()];
    switch (role) {
        case Qt::DisplayRole:
            return cell.text;
        case underRole:
            return cell.under.isEmpty() ? QVariant() : QVariant(cell.under);
        case Qt::DecorationRole:
            return cell.judged ? QVariant(judgedIcon(plan::Judged(*cell.judged))) : QVariant();
        case Qt::AccessibleTextRole:
            if (!cell.judged) return {};
            return QStringLiteral("%1, %2").arg(cell.text, judgedText(plan::Judged(*cell.judged)));
        case sortRole:
            return cell.sort;
        case severityRole:
            return cell.severity ? QVariant(*cell.severity) : QVariant();
        case sourceRole:
            return cell.source.isEmpty() ? QVariant() : QVariant(cell.source);
        case faultRole:
            return cell.fault.isEmpty() ? QVariant() : QVariant(cell.fault);
        case Qt::ToolTipRole:
            if (!cell.fault.isEmpty()) return cell.fault;
            if (!cell.source.isEmpty()) return cell.source;
            return row.hint.isEmpty() ? headerData(index.column(), Qt::Horizontal, role) : QVariant(row.hint);
        default:
            return {};
    }
}

}  // namespace fayline::app
