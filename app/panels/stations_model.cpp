#include "app/panels/stations_model.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/holding/places.hpp"

namespace fayline::app {

std::vector<boat::HoldKind> allHoldKinds() {
    using enum boat::HoldKind;
    return {clamp, prop, jack, screw, strap, wedge};
}

namespace {

// Indices of the stations in their order along the line.
std::vector<int> alongTheLine(const boat::Holding& holding) {
    std::vector<int> order(holding.stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        return holding.stations[static_cast<std::size_t>(a)].at_m < holding.stations[static_cast<std::size_t>(b)].at_m;
    });
    return order;
}

}  // namespace

const StationsModel::Row& StationsModel::rowAt(int row) const {
    if (rowsOf_ != shownWhole()) {
        rowsOf_ = shownWhole();
        rowsAlong_.clear();
        const std::vector<boat::Station>& stations = piece().holding.stations;
        std::vector<const holding::StationPlace*> places(stations.size());
        if (plan()) {
            for (const holding::StationPlace& place : plan()->holding.stations) {
                const auto index = static_cast<std::size_t>(place.index);
                // A plan that is out of date knows some of them elsewhere.
                if (index < stations.size() && stations[index].at_m == place.at_m) places[index] = &place;
            }
        }
        for (const int index : alongTheLine(piece().holding))
            rowsAlong_.push_back({index, places[static_cast<std::size_t>(index)]});
    }
    return rowsAlong_[static_cast<std::size_t>(row)];
}

int StationsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int StationsModel::rowsOf(const Shown& shown) const {
    return static_cast<int>(shown.piece.holding.stations.size());
}

bool StationsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    const auto& stationsA = a.piece.holding.stations;
    const auto& stationsB = b.piece.holding.stations;
    return stationsA[static_cast<std::size_t>(alongTheLine(a.piece.holding)[static_cast<std::size_t>(rowOfA)])] ==
           stationsB[static_cast<std::size_t>(alongTheLine(b.piece.holding)[static_cast<std::size_t>(rowOfB)])];
}

QVariant StationsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) {
        const bool left = section == numberColumn || section == kindColumn;
        return int((left                     ? Qt::AlignLeft
                    : section == fixedColumn ? Qt::AlignHCenter
                                             : Qt::AlignRight) |
                   Qt::AlignVCenter);
    }
    if (role == Qt::ToolTipRole) {
        switch (section) {
            case alongColumn:
                return tr(
                    "Along the line from its first point. Below it: along the outside of the stack from the trim line, "
                    "as the tape lies.");
            case xColumn:
                return tr("Where the pad lies on the outside of the stack: x, below it y");
            case fixedColumn:
                return tr("Stays where it is when stations are set out evenly");
            default:
                return {};
        }
    }
    if (role == underRole)
        return section == alongColumn ? QVariant(tr("outside")) : section == xColumn ? QVariant(tr("y")) : QVariant();
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case numberColumn:
            return tr("No.");
        case kindColumn:
            return tr("Held by");
        case alongColumn:
            return tr("Along");
        case xColumn:
            return tr("x");
        case fixedColumn:
            return tr("Fixed");
        case outsideColumn:
            return tr("Along the outside");
        case yColumn:
            return tr("y");
        default:
            return {};
    }
}

Qt::ItemFlags StationsModel::flags(const QModelIndex& index) const {
    Qt::ItemFlags flags = PieceTable::flags(index);
    if (index.column() == kindColumn || index.column() == alongColumn) return flags | Qt::ItemIsEditable;
    return index.column() == fixedColumn ? flags | Qt::ItemIsUserCheckable : flags;
}

QVariant StationsModel::cell(int row, int column, int role) const {
    const int index = rowAt(row).index;
    const boat::Station& station = piece().holding.stations[static_cast<std::size_t>(index)];
    const holding::StationPlace* place = rowAt(row).place;
    const measure::Display& units = shown().display;
    if (role == placeRole) return station.at_m;
    if ((role == faultRole || role == Qt::ToolTipRole) &&
        shown().reasonPath.startsWith(QStringLiteral("holding.stations[%1]").arg(index)))
        return shown().reason;
    if (role == Qt::TextAlignmentRole) return headerData(column, Qt::Horizontal, role);
    if (column == fixedColumn) {
        if (role == Qt::CheckStateRole) return int(station.fixed ? Qt::Checked : Qt::Unchecked);
        if (role == Qt::AccessibleTextRole) return station.fixed ? tr("fixed") : tr("not fixed");
        return role == sortRole ? QVariant(station.fixed ? 1 : 0) : QVariant();
    }
    if (role == choicesRole && column == kindColumn) {
        QStringList names;
        for (const boat::HoldKind kind : allHoldKinds()) names << holdName(kind);
        return names;
    }
    if (role == underRole && column == alongColumn) return cell(row, outsideColumn, Qt::DisplayRole);
    if (role == underRole && column == xColumn) return cell(row, yColumn, Qt::DisplayRole);
    if (role == Qt::DecorationRole && column == kindColumn) return holdIcon(station.kind);
    const bool written = role == Qt::DisplayRole || role == Qt::EditRole;
    if (!written && role != sortRole) return {};
    const QString unknown(QChar(0x2013));
    switch (column) {
        case numberColumn:
            return row + 1;
        case kindColumn:
            return holdName(station.kind);
        case alongColumn:
            return written ? QVariant(writeLengthText(station.at_m, units)) : QVariant(station.at_m);
        default:
            break;
    }
    if (!place) return written ? QVariant(unknown) : QVariant();
    const double length_m = column == outsideColumn ? place->alongOutside_m
                            : column == xColumn     ? place->onOutside.x_m
                                                    : place->onOutside.y_m;
    return written ? QVariant(writeLengthText(length_m, units)) : QVariant(length_m);
}

QString StationsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Station& station = piece.holding.stations[static_cast<std::size_t>(rowAt(row).index)];
    const QString written = value.toString().trimmed();
    const QString name = tr("station %1").arg(row + 1);
    switch (column) {
        case kindColumn:
            for (const boat::HoldKind kind : allHoldKinds()) {
                if (holdName(kind).compare(written, Qt::CaseInsensitive) != 0) continue;
                station.kind = kind;
                return tr("Hold %1 by a %2").arg(name, holdName(kind));
            }
            throw measure::InputError("", "\"" + text(written) + "\" is no way of holding", "choose one of the list");
        case alongColumn:
            if (written == writeLengthText(station.at_m, shown().display)) return {};
            station.at_m = readLengthText(written, shown().display);
            return tr("Move %1 to %2").arg(name, written);
        case fixedColumn:
            station.fixed = value.toInt() == Qt::Checked;
            return station.fixed ? tr("Fix %1").arg(name) : tr("Let %1 be moved").arg(name);
        default:
            return {};
    }
}

QString StationsModel::cellName(int row, int column) const {
    return tr("Station %1, %2")
        .arg(row + 1)
        .arg(headerData(column, Qt::Horizontal, Qt::DisplayRole).toString().toLower());
}

void StationsModel::addStation(double at_m) {
    if (!hasPiece()) return;
    Change change{tr("Add a station at %1").arg(writeLengthText(at_m, shown().display)), {}, piece()};
    std::vector<boat::Station>& stations = change.after.holding.stations;
    boat::Station station;
    const auto nearest = std::min_element(stations.begin(), stations.end(), [at_m](const auto& a, const auto& b) {
        return std::abs(a.at_m - at_m) < std::abs(b.at_m - at_m);
    });
    if (nearest != stations.end()) {
        station.kind = nearest->kind;
        station.most_N = nearest->most_N;
        station.pad_m = nearest->pad_m;
    }
    station.at_m = at_m;
    stations.push_back(station);
    emit changeAsked(change);
}

void StationsModel::removeStations(std::vector<int> rows) {
    if (!hasPiece()) return;
    std::erase_if(rows, [this](int row) { return row < 0 || row >= rowCount(); });
    if (rows.empty()) return;
    std::vector<int> indices;
    for (const int row : rows) indices.push_back(rowAt(row).index);
    std::sort(indices.begin(), indices.end(), std::greater<>());
    indices.erase(std::unique(indices.begin(), indices.end()), indices.end());
    Change change{indices.size() == 1 ? tr("Remove station %1").arg(rows.front() + 1)
                                      : tr("Remove %1 stations").arg(indices.size()),
                  {},
                  piece()};
    for (const int index : indices) change.after.holding.stations.erase(change.after.holding.stations.begin() + index);
    emit changeAsked(change);
}

void StationsModel::setOutEvenly(double from_m, double to_m, double spacing_m, boat::HoldKind kind) {
    if (!hasPiece()) return;
    boat::Station like;
    const std::vector<boat::Station>& present = piece().holding.stations;
    const auto same = std::find_if(present.begin(), present.end(), [kind](const auto& s) { return s.kind == kind; });
    if (same != present.end()) {
        like.most_N = same->most_N;
        like.pad_m = same->pad_m;
    }
    like.kind = kind;
    std::vector<boat::Station> stations = holding::evenStations(from_m, to_m, spacing_m, like);
    Change change{tr("Set out %1 stations evenly").arg(stations.size()), {}, piece()};
    for (const boat::Station& station : present)
        if (station.fixed) stations.push_back(station);
    change.after.holding.stations = std::move(stations);
    emit changeAsked(change);
}

}  // namespace fayline::app
