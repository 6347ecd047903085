#include "app/panels/list_model.hpp"

namespace fayline::app {

ListModel::ListModel(QString item, QString path, QObject* parent)
    : PieceTable(parent), item_(std::move(item)), path_(std::move(path)) {}

std::vector<NotebookTable::ColumnWidth> ListModel::widths(const std::vector<int>& columns) const {
    std::vector<NotebookTable::ColumnWidth> widths;
    for (const int column : columns) widths.push_back({column, columns_[column].widest});
    return widths;
}

int ListModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : math::countOf(columns_);
}

QVariant ListModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (section < 0 || section >= columnCount()) return {};
    const ListColumn& column = columns_[section];
    if (role == Qt::TextAlignmentRole) return int(column.side | Qt::AlignVCenter);
    if (role == Qt::DisplayRole) return column.name;
    if (role == Qt::ToolTipRole && !column.hint.isEmpty()) return column.hint;
    if (role == underRole && !column.under.isEmpty()) return column.under;
    return {};
}

Qt::ItemFlags ListModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = PieceTable::flags(index);
    if (!index.isValid() || !columns_[index.column()].read) return flags;
    return flags | (columns_[index.column()].ticked.isEmpty() ? Qt::ItemIsEditable : Qt::ItemIsUserCheckable);
}

void ListModel::change(const QString& name, const std::function<void(model::Piece&)>& make, const QString& merges) {
    if (!hasPiece()) return;
    Change change{name, merges, piece()};
    make(change.after);
    if (change.after != piece()) emit changeAsked(change);
}

QString ListModel::rowName(int row) const {
    return QStringLiteral("%1 %2").arg(item_).arg(row + 1);
}

bool ListModel::isAtFault(int row) const {
    const QString& path = shown().reasonPath;
    return path.startsWith(path_) && path.startsWith(QStringLiteral("%1[%2]").arg(path_).arg(indexOf(row)));
}

QVariant ListModel::cell(int row, int column, int role) const {
    const ListColumn& of = columns_[column];
    const bool tells = role == faultRole || role == Qt::ToolTipRole || role == Qt::AccessibleDescriptionRole;
    if (tells && isAtFault(row)) return shown().reason;
    const bool ticks = !of.ticked.isEmpty();
    switch (role) {
        case Qt::TextAlignmentRole:
            return int(of.side | Qt::AlignVCenter);
        case Qt::DisplayRole:
            if (of.text) return of.text(shown(), row);
            [[fallthrough]];
        case Qt::EditRole:
            return ticks || !of.typed ? QVariant() : QVariant(of.typed(shown(), row));
        case sortRole:
            return of.number ? of.number(shown(), row) : cell(row, column, of.typed ? Qt::EditRole : Qt::DisplayRole);
        case underRole:
            return of.below ? QVariant(of.below(shown(), row)) : QVariant();
        case faintRole:
            return shown().outOfDate && !of.read;
        case severityRole:
            return of.severity ? of.severity(shown(), row) : QVariant();
        case choicesRole:
            return of.choices ? QVariant(of.choices(shown())) : QVariant();
        case groupsRole:
            return of.groups ? QVariant::fromValue(of.groups(shown())) : QVariant();
        case Qt::CheckStateRole:
            return ticks ? QVariant(int(of.number(shown(), row).toBool() ? Qt::Checked : Qt::Unchecked)) : QVariant();
        case Qt::AccessibleTextRole:
            return ticks ? QVariant(of.ticked[of.number(shown(), row).toInt()]) : QVariant();
        case placeRole:
            if (const std::optional<double> at_m = placeOf(row)) return *at_m;
            [[fallthrough]];
        default:
            return of.more ? of.more(shown(), row, role) : QVariant();
    }
}

QString ListModel::put(model::Piece& piece, int row, int column, const QVariant& value) const {
    const ListColumn& of = columns_[column];
    if (!of.read) return {};
    const bool on = value.toInt() == Qt::Checked;
    const QString written = of.ticked.isEmpty() ? value.toString().trimmed() : on ? QStringLiteral("1") : QString();
    if (of.typed && written == of.typed(shown(), row)) return {};
    const QString named = rowName(row);
    const QString reads = of.read(piece, row, written, shown());
    if (of.change.isEmpty()) return tr("Change the %1 of a %2").arg(of.name.toLower(), item_);
    const bool cleared = reads.isNull() && !of.cleared.isEmpty();
    return filled(cleared ? of.cleared : of.change, {named, written, reads, QString::number(row + 1)});
}

QString ListModel::cellName(int row, int column) const {
    const QString name = headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
    QString item = rowName(row);
    item[0] = item[0].toUpper();
    return QStringLiteral("%1, %2").arg(item, name.toLower());
}

}  // namespace fayline::app
