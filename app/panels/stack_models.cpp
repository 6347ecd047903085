#include "app/panels/stack_models.hpp"

#include <algorithm>

#include "app/panels/reading.hpp"
#include "core/math/count.hpp"

namespace fayline::app {

namespace {

// What stands after "stack.strips[2]" in the path of what is wrong, when it is that row.
bool isAtFault(const Shown& shown, const char* list, int row) {
    return shown.reasonPath.startsWith(QStringLiteral("stack.%1[%2]").arg(QLatin1String(list)).arg(row));
}

QVariant rightUnless(bool left) {
    return int((left ? Qt::AlignLeft : Qt::AlignRight) | Qt::AlignVCenter);
}

}  // namespace

// Groups of strips

int GroupsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int GroupsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.stack.strips);
}

bool GroupsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.stack.strips[rowOfA] == b.piece.stack.strips[rowOfB];
}

QVariant GroupsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) return rightUnless(section == woodColumn);
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case countColumn:
            return tr("Strips");
        case thicknessColumn:
            return tr("Thickness");
        case woodColumn:
            return tr("Wood");
        default:
            return {};
    }
}

Qt::ItemFlags GroupsModel::flags(const QModelIndex& index) const {
    return index.isValid() ? PieceTable::flags(index) | Qt::ItemIsEditable : PieceTable::flags(index);
}

QVariant GroupsModel::cell(int row, int column, int role) const {
    const boat::Strips& group = piece().stack.strips[row];
    if (role == Qt::TextAlignmentRole) return rightUnless(column == woodColumn);
    if ((role == faultRole || role == Qt::ToolTipRole) && isAtFault(shown(), "strips", row)) return shown().reason;
    if (role == choicesRole && column == woodColumn) {
        QStringList names;
        for (const wood::Species& species : shown().species) names << text(species.name);
        return names;
    }
    switch (column) {
        case countColumn:
            return role == Qt::DisplayRole || role == Qt::EditRole || role == sortRole ? QVariant(group.count)
                                                                                       : QVariant();
        case thicknessColumn:
            if (role == Qt::DisplayRole) return text(measure::writeThickness(group.thickness_m, shown().display));
            if (role == Qt::EditRole) return text(measure::writeThickness(group.thickness_m, shown().display));
            if (role == sortRole) return group.thickness_m;
            return {};
        case woodColumn:
            if (role == Qt::DisplayRole && group.sacrificial)
                return woodName(shown(), group.species) + tr(", planed away");
            if (role == Qt::DisplayRole || role == Qt::EditRole || role == sortRole)
                return woodName(shown(), group.species);
            return {};
        default:
            return {};
    }
}

QString GroupsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Strips& group = piece.stack.strips[row];
    const QString written = value.toString().trimmed();
    switch (column) {
        case countColumn:
            group.count = readWhole(written);
            return tr("Set the number of strips to %1").arg(group.count);
        case thicknessColumn:
            if (written == text(measure::writeThickness(group.thickness_m, shown().display))) return {};
            group.thickness_m = readLengthText(written, shown().display);
            return tr("Set the thickness of strips to %1")
                .arg(text(measure::writeThickness(group.thickness_m, shown().display)));
        case woodColumn: {
            const auto& known = shown().species;
            const auto found = std::find_if(known.begin(), known.end(), [&](const wood::Species& species) {
                return text(species.name).compare(written, Qt::CaseInsensitive) == 0 || text(species.id) == written;
            });
            if (found == known.end()) {
                if (written == text(group.species)) return {};
                throw measure::InputError("", "\"" + text(written) + "\" is not a wood that is known",
                                          "choose one of the list");
            }
            group.species = found->id;
            return tr("Set the wood to %1").arg(text(found->name));
        }
        default:
            return {};
    }
}

QString GroupsModel::cellName(int row, int column) const {
    return tr("Group %1, %2").arg(row + 1).arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
}

void GroupsModel::ask(std::vector<boat::Strips> strips, const QString& name) {
    Change change{name, {}, piece()};
    change.after.stack.strips = std::move(strips);
    emit changeAsked(change);
}

void GroupsModel::addGroup(int after) {
    if (!hasPiece()) return;
    std::vector<boat::Strips> strips = piece().stack.strips;
    const int row = std::clamp(after + 1, 0, math::countOf(strips));
    boat::Strips group;
    if (!strips.empty()) {
        const boat::Strips& like = strips[std::max(row - 1, 0)];
        group.thickness_m = like.thickness_m;
        group.species = like.species;
    }
    strips.insert(strips.begin() + row, group);
    ask(std::move(strips), tr("Add strips"));
}

void GroupsModel::removeGroup(int row) {
    if (!hasPiece() || row < 0 || row >= rowCount() || rowCount() == 1) return;
    std::vector<boat::Strips> strips = piece().stack.strips;
    strips.erase(strips.begin() + row);
    ask(std::move(strips), tr("Remove strips"));
}

void GroupsModel::moveGroup(int row, int by) {
    const int to = row + by;
    if (!hasPiece() || row < 0 || to < 0 || row >= rowCount() || to >= rowCount()) return;
    std::vector<boat::Strips> strips = piece().stack.strips;
    std::swap(strips[row], strips[to]);
    ask(std::move(strips), by < 0 ? tr("Move strips towards the form") : tr("Move strips outwards"));
}

// Widths

int WidthsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int WidthsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.stack.widths);
}

bool WidthsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.stack.widths[rowOfA] == b.piece.stack.widths[rowOfB];
}

QVariant WidthsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) return rightUnless(false);
    if (role == Qt::DisplayRole) return section == atColumn ? tr("Along the line") : tr("Width");
    if (role == Qt::ToolTipRole && section == widthColumn)
        return tr("Finished width; even between two places, level beyond");
    return {};
}

Qt::ItemFlags WidthsModel::flags(const QModelIndex& index) const {
    return index.isValid() ? PieceTable::flags(index) | Qt::ItemIsEditable : PieceTable::flags(index);
}

QVariant WidthsModel::cell(int row, int column, int role) const {
    const boat::Width& width = piece().stack.widths[row];
    if (role == Qt::TextAlignmentRole) return rightUnless(false);
    if (role == placeRole) return width.at_m;
    if ((role == faultRole || role == Qt::ToolTipRole) && isAtFault(shown(), "widths", row)) return shown().reason;
    if (role == sortRole) return column == atColumn ? width.at_m : width.width_m;
    if (role != Qt::DisplayRole && role != Qt::EditRole) return {};
    return column == atColumn ? writeLengthText(width.at_m, shown().display)
                              : text(measure::writeThickness(width.width_m, shown().display));
}

QString WidthsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Width& width = piece.stack.widths[row];
    const QString written = value.toString().trimmed();
    if (written == cell(row, column, Qt::EditRole).toString()) return {};
    const double length_m = readLengthText(written, shown().display);
    if (column == atColumn) {
        width.at_m = length_m;
        std::stable_sort(piece.stack.widths.begin(), piece.stack.widths.end(),
                         [](const boat::Width& a, const boat::Width& b) { return a.at_m < b.at_m; });
        return tr("Move a width to %1").arg(written);
    }
    width.width_m = length_m;
    return tr("Set the width to %1").arg(text(measure::writeThickness(length_m, shown().display)));
}

QString WidthsModel::cellName(int row, int column) const {
    return tr("Width %1, %2").arg(row + 1).arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString());
}

void WidthsModel::addWidth(double at_m) {
    if (!hasPiece()) return;
    Change change{tr("Add a width"), {}, piece()};
    std::vector<boat::Width>& widths = change.after.stack.widths;
    boat::Width width;
    width.at_m = at_m;
    if (!widths.empty()) width.width_m = stack::widthAt(piece().stack, at_m);
    widths.insert(std::upper_bound(widths.begin(), widths.end(), at_m,
                                   [](double at, const boat::Width& other) { return at < other.at_m; }),
                  width);
    emit changeAsked(change);
}

void WidthsModel::removeWidth(int row) {
    if (!hasPiece() || row < 0 || row >= rowCount() || rowCount() == 1) return;
    Change change{tr("Remove a width"), {}, piece()};
    change.after.stack.widths.erase(change.after.stack.widths.begin() + row);
    emit changeAsked(change);
}

}  // namespace fayline::app
