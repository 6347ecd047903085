#include "app/panels/tools_model.hpp"

#include <algorithm>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "app/panels/stations_model.hpp"
#include "core/boat/hold_traits.hpp"
#include "core/math/count.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

int ToolsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int ToolsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.holding.tools);
}

bool ToolsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    return a.piece.holding.tools[rowOfA] == b.piece.holding.tools[rowOfB];
}

QVariant ToolsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole)
        return int((section == nameColumn || section == kindColumn ? Qt::AlignLeft : Qt::AlignRight) |
                   Qt::AlignVCenter);
    if (role == Qt::ToolTipRole && section == openingColumn) return tr("How far it opens; empty: not known");
    if (role == Qt::ToolTipRole && section == throatColumn)
        return tr("How far it reaches over an edge; empty: not known");
    if (role == Qt::ToolTipRole && section == pitchColumn)
        return tr("Of its screw, for turns past snug; empty: not known");
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case nameColumn:
            return tr("Tool");
        case kindColumn:
            return tr("Kind");
        case mostColumn:
            return tr("Most");
        case countColumn:
            return tr("Count");
        case padColumn:
            return tr("Pad");
        case openingColumn:
            return tr("Opening");
        case throatColumn:
            return tr("Throat");
        case pitchColumn:
            return tr("Pitch");
        default:
            return {};
    }
}

Qt::ItemFlags ToolsModel::flags(const QModelIndex& index) const {
    return index.isValid() ? PieceTable::flags(index) | Qt::ItemIsEditable : PieceTable::flags(index);
}

QVariant ToolsModel::typed(const boat::Tool& tool, int column) const {
    const measure::Display& units = shown().display;
    const auto thick = [&](const std::optional<double>& length_m) {
        return length_m ? text(measure::writeThickness(*length_m, units)) : QString();
    };
    switch (column) {
        case nameColumn:
            return text(tool.name);
        case kindColumn:
            return holdName(tool.kind);
        case mostColumn:
            return text(measure::typedForce(tool.most_N, units));
        case countColumn:
            return tool.count;
        case padColumn:
            return thick(tool.pad_m);
        case openingColumn:
            return thick(tool.opening_m);
        case throatColumn:
            return thick(tool.throat_m);
        case pitchColumn:
            return thick(tool.pitch_m);
        default:
            return {};
    }
}

QVariant ToolsModel::cell(int row, int column, int role) const {
    const boat::Tool& tool = piece().holding.tools[row];
    if ((role == faultRole || role == Qt::ToolTipRole) &&
        shown().reasonPath.startsWith(QStringLiteral("holding.tools[%1]").arg(row)))
        return shown().reason;
    if (role == Qt::TextAlignmentRole) return headerData(column, Qt::Horizontal, role);
    if (role == choicesRole && column == kindColumn) {
        QStringList names;
        for (const boat::HoldTraits& traits : boat::holdTraits) names << holdName(traits.kind);
        return names;
    }
    if (role == Qt::DecorationRole && column == kindColumn) return holdIcon(tool.kind);
    if (role == sortRole && column == mostColumn) return tool.most_N;
    if (role == Qt::DisplayRole || role == Qt::EditRole || role == sortRole) return typed(tool, column);
    return {};
}

QString ToolsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Tool& tool = piece.holding.tools[row];
    const QString written = value.toString().trimmed();
    if (column != kindColumn && written == typed(tool, column).toString()) return {};
    switch (column) {
        case nameColumn:
            tool.name = text(written);
            return tr("Name a tool %1").arg(written);
        case kindColumn:
            tool.kind = holdKindCalled(written);
            break;
        case mostColumn:
            tool.most_N = measure::readForce(text(written), shown().display);
            break;
        case countColumn:
            tool.count = readWhole(written);
            break;
        case padColumn:
            tool.pad_m = readLengthText(written, shown().display);
            break;
        case openingColumn:
            tool.opening_m = readOptionalLength(written, shown().display);
            break;
        case throatColumn:
            tool.throat_m = readOptionalLength(written, shown().display);
            break;
        case pitchColumn:
            tool.pitch_m = readOptionalLength(written, shown().display);
            break;
        default:
            return {};
    }
    return tr("Change the %1 of a tool").arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toLower());
}

QString ToolsModel::cellName(int row, int column) const {
    return tr("Tool %1, %2").arg(row + 1).arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toLower());
}

void ToolsModel::addTool(int like) {
    if (!hasPiece()) return;
    Change change{tr("Add a tool"), {}, piece()};
    std::vector<boat::Tool>& tools = change.after.holding.tools;
    boat::Tool tool;
    if (like >= 0 && like < math::countOf(tools)) tool.kind = tools[like].kind;
    tool.name = std::string(boat::holdWord(tool.kind));
    const bool known = like >= 0 && like < math::countOf(tools);
    tools.insert(known ? tools.begin() + like + 1 : tools.end(), tool);
    emit changeAsked(change);
}

void ToolsModel::removeTools(std::vector<int> rows) {
    if (!hasPiece()) return;
    std::erase_if(rows, [this](int row) { return row < 0 || row >= rowCount(); });
    if (rows.empty()) return;
    std::sort(rows.begin(), rows.end(), std::greater<>());
    rows.erase(std::unique(rows.begin(), rows.end()), rows.end());
    Change change{rows.size() == 1 ? tr("Remove a tool") : tr("Remove %1 tools").arg(rows.size()), {}, piece()};
    for (const int row : rows) change.after.holding.tools.erase(change.after.holding.tools.begin() + row);
    emit changeAsked(change);
}

}  // namespace fayline::app
