#include "app/panels/stations_model.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/boat/hold_traits.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/places.hpp"
#include "core/math/count.hpp"
#include "core/measure/force.hpp"

namespace fayline::app {

boat::HoldKind holdKindCalled(const QString& name) {
    for (const boat::HoldTraits& traits : boat::holdTraits)
        if (holdName(traits.kind).compare(name.trimmed(), Qt::CaseInsensitive) == 0) return traits.kind;
    throw measure::InputError("", "\"" + text(name.trimmed()) + "\" is no way of holding", "choose one of the list");
}

QString holdStateWord(holding::HoldState state) {
    switch (state) {
        case holding::HoldState::slack:
            return QObject::tr("slack");
        case holding::HoldState::closes:
            return QObject::tr("closed");
        case holding::HoldState::full:
            return QObject::tr("full");
        case holding::HoldState::given:
            return QObject::tr("given");
    }
    return {};
}

std::vector<int> alongTheLine(const boat::Holding& holding) {
    std::vector<int> order(holding.stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return holding.stations[a].at_m < holding.stations[b].at_m; });
    return order;
}

namespace {

const QString unknown(QChar(0x2013));

bool isTyped(int column) {
    using enum StationsModel::Column;
    return column == kindColumn || column == alongColumn || column == pullColumn || column == givenColumn ||
           column == mostColumn || column == padColumn;
}

}  // namespace

const StationsModel::Row& StationsModel::rowAt(int row) const {
    if (rowsOf_ != shownWhole()) {
        rowsOf_ = shownWhole();
        rowsAlong_.clear();
        const std::vector<boat::Station>& stations = piece().holding.stations;
        std::vector<Row> rows(stations.size());
        if (plan()) {
            for (const holding::StationPlace& place : plan()->holding.stations) {
                const auto index = static_cast<std::size_t>(place.index);
                // A plan that is out of date knows some of them elsewhere.
                if (index < stations.size() && stations[index].at_m == place.at_m) rows[index].place = &place;
            }
            const std::vector<holding::HeldStation>& held = plan()->holding.held.stations;
            // Pulls and gaps of the moment before are of more use than none, as long as it is the same stations.
            if (held.size() == stations.size() && holding::inBalance(plan()->holding.held.outcome))
                for (const holding::HeldStation& station : held)
                    if (static_cast<std::size_t>(station.index) < rows.size()) rows[station.index].held = &station;
        }
        for (const int index : alongTheLine(piece().holding)) {
            rowsAlong_.push_back(rows[index]);
            rowsAlong_.back().index = index;
        }
    }
    return rowsAlong_[row];
}

int StationsModel::stationOf(int row) const {
    return hasPiece() && row >= 0 && row < rowCount() ? rowAt(row).index : -1;
}

int StationsModel::rowAtPlace(double at_m) const {
    constexpr double same_m = 1e-9;
    for (int row = 0; row < rowCount(); ++row)
        if (std::abs(index(row, 0).data(placeRole).toDouble() - at_m) < same_m) return row;
    return -1;
}

int StationsModel::columnCount(const QModelIndex& parent) const {
    return parent.isValid() ? 0 : columns;
}

int StationsModel::rowsOf(const Shown& shown) const {
    return math::countOf(shown.piece.holding.stations);
}

bool StationsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    const auto& stationsA = a.piece.holding.stations;
    const auto& stationsB = b.piece.holding.stations;
    return stationsA[alongTheLine(a.piece.holding)[rowOfA]] == stationsB[alongTheLine(b.piece.holding)[rowOfB]];
}

QVariant StationsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? QVariant(section + 1) : QVariant();
    if (role == Qt::TextAlignmentRole) {
        const bool left = section == numberColumn || section == kindColumn;
        const bool ticks = section == fixedColumn || section == sideColumn;
        return int((left ? Qt::AlignLeft : ticks ? Qt::AlignHCenter : Qt::AlignRight) | Qt::AlignVCenter);
    }
    if (role == Qt::ToolTipRole) {
        switch (section) {
            case alongColumn:
                return tr(
                    "Along the line from its first point. Below it: along the outside of the stack from the trim line, "
                    "as the tape lies.");
            case pullColumn:
                return tr(
                    "What it pulls, square to the form. Below it: its share of what it can. Type a pull and it is "
                    "pulled exactly so; empty: it closes its gap with no more than it has.");
            case gapColumn:
                return tr(
                    "What is left under its pad. Below it: closed; full, pulling with all it has; given, pulling "
                    "exactly what was typed; slack, not wanted there.");
            case fixedColumn:
                return tr("Stays where it is when stations are set out evenly or proposed");
            case sideColumn:
                return tr("Only keeps the pile in line across its width and presses nothing on the form");
            default:
                return {};
        }
    }
    if (role == underRole) {
        switch (section) {
            case alongColumn:
                return tr("outside");
            case pullColumn:
                return tr("of most");
            case gapColumn:
                return tr("holds");
            default:
                return {};
        }
    }
    if (role != Qt::DisplayRole) return {};
    switch (section) {
        case numberColumn:
            return tr("No.");
        case kindColumn:
            return tr("Held by");
        case alongColumn:
            return tr("Along");
        case pullColumn:
            return tr("Pull");
        case gapColumn:
            return hasPiece() ? tr("Gap, %1").arg(smallUnit(shown().display)) : tr("Gap");
        case fixedColumn:
            return tr("Fixed");
        case outsideColumn:
            return tr("Along the outside");
        case xColumn:
            return tr("x");
        case yColumn:
            return tr("y");
        case shareColumn:
            return tr("Of most");
        case givenColumn:
            return tr("Given pull");
        case mostColumn:
            return tr("Most");
        case padColumn:
            return tr("Pad");
        case sideColumn:
            return tr("Side");
        default:
            return {};
    }
}

Qt::ItemFlags StationsModel::flags(const QModelIndex& index) const {
    const Qt::ItemFlags flags = PieceTable::flags(index);
    if (isTyped(index.column())) return flags | Qt::ItemIsEditable;
    const bool ticked = index.column() == fixedColumn || index.column() == sideColumn;
    return ticked ? flags | Qt::ItemIsUserCheckable : flags;
}

// What a cell's editor begins with.
QVariant StationsModel::typed(const boat::Station& station, int column) const {
    const measure::Display& units = shown().display;
    switch (column) {
        case kindColumn:
            return holdName(station.kind);
        case alongColumn:
            return writeLengthText(station.at_m, units);
        case pullColumn:
        case givenColumn:
            return station.pull_N ? text(measure::typedForce(*station.pull_N, units)) : QString();
        case mostColumn:
            return text(measure::typedForce(station.most_N, units));
        case padColumn:
            return text(measure::writeThickness(station.pad_m, units));
        default:
            return {};
    }
}

QVariant StationsModel::number(const Row& row, int column) const {
    const boat::Station& station = piece().holding.stations[row.index];
    const auto ofPlace = [&](double value) { return row.place ? QVariant(value) : QVariant(); };
    switch (column) {
        case kindColumn:
            return int(station.kind);
        case alongColumn:
            return station.at_m;
        case pullColumn:
            return row.held ? QVariant(row.held->pull_N) : QVariant();
        case gapColumn:
            return row.held ? QVariant(row.held->gap_m) : QVariant();
        case fixedColumn:
            return int(station.fixed);
        case sideColumn:
            return int(station.side);
        case outsideColumn:
            return ofPlace(row.place ? row.place->alongOutside_m : 0);
        case xColumn:
            return ofPlace(row.place ? row.place->onOutside.x_m : 0);
        case yColumn:
            return ofPlace(row.place ? row.place->onOutside.y_m : 0);
        case shareColumn:
            return row.held && row.held->most_N > 0 ? QVariant(row.held->pull_N / row.held->most_N) : QVariant();
        case givenColumn:
            return station.pull_N ? QVariant(*station.pull_N) : QVariant();
        case mostColumn:
            return station.most_N;
        case padColumn:
            return station.pad_m;
        default:
            return {};
    }
}

QString StationsModel::words(const Row& row, int column) const {
    const boat::Station& station = piece().holding.stations[row.index];
    const measure::Display& units = shown().display;
    if (column == pullColumn || column == gapColumn || column == shareColumn) {
        const QVariant known = number(row, column);
        if (station.side) return tr("side");
        if (!known.isValid() || !std::isfinite(known.toDouble())) return unknown;
        if (column == gapColumn && !holding::closesGap(station)) return unknown;  // it has no pad
        if (column == pullColumn && holding::pullsLightly(row.held->state, row.held->pull_N))
            return tr("light");  // under holding::lightPull_N, as the pull table says
        if (column == pullColumn) return text(measure::writeForce(known.toDouble(), units));
        if (column == shareColumn) return text(measure::writeShare(known.toDouble()));
        return smallFigure(known.toDouble(), units);
    }
    if (column == givenColumn && !station.pull_N) return tr("closes its gap");
    if (isTyped(column)) return typed(station, column).toString();
    const QVariant length = number(row, column);
    return length.isValid() ? writeLengthText(length.toDouble(), units) : unknown;
}

QString StationsModel::under(const Row& row, int column) const {
    const boat::Station& station = piece().holding.stations[row.index];
    if (column == alongColumn) return words(row, outsideColumn);
    if (station.side) return {};
    if (column == pullColumn) return words(row, shareColumn);
    if (column != gapColumn || !row.held) return {};
    // A strap presses along its whole length with what it has.
    return boat::traitsOf(station.kind).closesGap ? holdStateWord(row.held->state) : holdName(station.kind);
}

QVariant StationsModel::cell(int row, int column, int role) const {
    const Row& of = rowAt(row);
    const boat::Station& station = piece().holding.stations[of.index];
    if (role == placeRole) return station.at_m;
    if ((role == faultRole || role == Qt::ToolTipRole) &&
        shown().reasonPath.startsWith(QStringLiteral("holding.stations[%1]").arg(of.index)))
        return shown().reason;
    if (role == Qt::TextAlignmentRole) return headerData(column, Qt::Horizontal, role);
    if (column == fixedColumn || column == sideColumn) {
        const bool on = column == fixedColumn ? station.fixed : station.side;
        if (role == Qt::CheckStateRole) return int(on ? Qt::Checked : Qt::Unchecked);
        if (role == Qt::AccessibleTextRole && column == fixedColumn) return on ? tr("fixed") : tr("not fixed");
        if (role == Qt::AccessibleTextRole) return on ? tr("keeps the pile in line") : tr("presses on the form");
        return role == sortRole ? QVariant(on ? 1 : 0) : QVariant();
    }
    switch (role) {
        case choicesRole: {
            if (column != kindColumn) return {};
            QStringList names;
            for (const boat::HoldTraits& traits : boat::holdTraits) names << holdName(traits.kind);
            return names;
        }
        case underRole:
            return under(of, column);
        case Qt::DecorationRole:
            return column == kindColumn ? QVariant(holdIcon(station.kind)) : QVariant();
        case barRole: {
            const QVariant share = column == pullColumn && !station.side ? number(of, shareColumn) : QVariant();
            const bool any = share.isValid() && std::isfinite(share.toDouble());
            return any ? QVariant(std::clamp(share.toDouble(), 0.0, 1.0)) : QVariant();
        }
        case severityRole:
            return column == gapColumn && of.held && !station.side && of.held->gap_m > piece().holding.gapLimit_m
                       ? QVariant(int(plan::Severity::caution))
                       : QVariant();
        case Qt::EditRole:
            return column == numberColumn ? QVariant(row + 1) : typed(station, column);
        case Qt::DisplayRole:
            return column == numberColumn ? QVariant(row + 1) : words(of, column);
        case sortRole:
            return column == numberColumn ? QVariant(row + 1) : number(of, column);
        default:
            return {};
    }
}

QString StationsModel::put(boat::Piece& piece, int row, int column, const QVariant& value) const {
    boat::Station& station = piece.holding.stations[rowAt(row).index];
    const QString written = value.toString().trimmed();
    const QString name = tr("station %1").arg(row + 1);
    if (isTyped(column) && column != kindColumn && written == typed(station, column).toString()) return {};
    switch (column) {
        case kindColumn:
            station.kind = holdKindCalled(written);
            return tr("Hold %1 by a %2").arg(name, holdName(station.kind));
        case alongColumn:
            station.at_m = readLengthText(written, shown().display);
            return tr("Move %1 to %2").arg(name, written);
        case pullColumn:
        case givenColumn:
            station.pull_N = readOptionalForce(written, shown().display);
            return station.pull_N ? tr("Pull %1 with %2").arg(name, typed(station, givenColumn).toString())
                                  : tr("Let %1 close its gap").arg(name);
        case mostColumn:
            station.most_N = measure::readForce(text(written), shown().display);
            return tr("Set the most of %1 to %2").arg(name, typed(station, column).toString());
        case padColumn:
            station.pad_m = readLengthText(written, shown().display);
            return tr("Set the pad of %1 to %2").arg(name, typed(station, column).toString());
        case fixedColumn:
            station.fixed = value.toInt() == Qt::Checked;
            return station.fixed ? tr("Fix %1").arg(name) : tr("Let %1 be moved").arg(name);
        case sideColumn:
            station.side = value.toInt() == Qt::Checked;
            return station.side ? tr("Let %1 only keep the pile in line").arg(name)
                                : tr("Let %1 press on the form").arg(name);
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
