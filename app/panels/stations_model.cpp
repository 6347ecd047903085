#include "app/panels/stations_model.hpp"

#include <cmath>
#include <numeric>

#include "app/look/icons.hpp"
#include "app/look/names.hpp"
#include "app/panels/reading.hpp"
#include "core/holding/kinds.hpp"
#include "core/holding/places.hpp"
#include "core/model/hold_traits.hpp"

namespace fayline::app {

namespace {

const QString unknown(QChar(0x2013));

// How a station holds; in the order of holding::HoldState.
QString holdStateWord(holding::HoldState state) {
    return QStringList{tr("snug"), tr("closed"), tr("full"), tr("fixed")}.value(int(state));
}

// Indices of the stations in their order along the line.
std::vector<int> alongTheLine(const model::Holding& holding) {
    std::vector<int> order(holding.stations.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(),
                     [&](int a, int b) { return holding.stations[a].at_m < holding.stations[b].at_m; });
    return order;
}

// Where the plan knows it.
QVariant finite(double value) {
    return std::isfinite(value) ? QVariant(value) : QVariant();
}

}  // namespace

StationsModel::StationsModel(QObject* parent)
    : ItemsModel(
          tr("station"), "holding.stations",
          [](model::Piece& piece) -> std::vector<model::Station>& { return piece.holding.stations; },
          &model::Station::at_m, parent) {
    setColumns(makeColumns());
}

// In the order of the enumeration.
std::vector<ListColumn> StationsModel::makeColumns() {
    using model::Station;
    ListColumn kind = typed(&Station::kind, way::holdKind(), {.name = tr("Held by"), .change = tr("Hold %1 by a %3")});
    kind.more = [this](const Shown& shown, int row, int role) {
        return role == Qt::DecorationRole ? QVariant(holdIcon(item(shown, row).kind)) : QVariant();
    };
    ListColumn order{.name = tr("No."), .widest = "00", .side = Qt::AlignLeft};
    order.text = [](const Shown&, int row) { return QString::number(row + 1); };
    order.number = [](const Shown&, int row) { return QVariant(row + 1); };
    ListColumn along =
        typed(&Station::at_m, way::length(),
              {.name = tr("Along"),
               .hint = tr("Along the line from its first point. Below it: along the outside, as the tape lies."),
               .under = tr("outside"),
               .change = tr("Move %1 to %2")});
    along.below = [this](const Shown& shown, int row) {
        const holding::StationPlace* place = rowAt(row).place;
        return place ? writeLengthText(place->alongOutside_m, shown.display) : unknown;
    };
    ListColumn given =
        typed(&Station::pull_N, way::orNone(way::force()),
              {.name = tr("Fixed force"), .change = tr("Pull %1 with %3"), .cleared = tr("Let %1 pull as needed")});
    given.text = [this, typed = given.typed](const Shown& shown, int row) {
        return item(shown, row).pull_N ? typed(shown, row) : tr("as needed");
    };
    return {kind,
            order,
            along,
            pullOf(given),
            gap(),
            typed(&Station::fixed, way::tick(),
                  {.name = tr("Fixed"),
                   .hint = tr("Stays where it is when you set stations out evenly or use the suggested"),
                   .change = tr("Fix %1"),
                   .cleared = tr("Let %1 be moved"),
                   .ticked = {tr("not fixed"), tr("fixed")}}),
            given,
            typed(&Station::most_N, way::force(), {.name = tr("Max force"), .change = tr("Set the max of %1 to %3")}),
            typed(&Station::pad_m, way::thickness(), {.name = tr("Pad"), .change = tr("Set the pad of %1 to %3")}),
            typed(&Station::side, way::tick(),
                  {.name = tr("Side"),
                   .hint = tr("Edges only: it keeps the strips in line and squeezes nothing"),
                   .change = tr("Make %1 a side clamp"),
                   .cleared = tr("Let %1 press on the form"),
                   .ticked = {tr("presses on the form"), tr("side clamp, no squeeze")}})};
}

// What a station pulls: typed as the pull that is given it.
ListColumn StationsModel::pullOf(const ListColumn& given) const {
    ListColumn pull = given;
    pull.name = tr("Force");
    pull.hint = tr("Square to the form; below it: % of max. Type a force to fix it; empty: as needed.");
    pull.under = tr("% of max");
    pull.text = [this](const Shown& shown, int row) {
        const holding::HeldStation* held = rowAt(row).held;
        if (item(shown, row).side) return tr("side");
        if (!held || !std::isfinite(held->pull_N)) return unknown;
        // Under holding::lightPull_N, as the pull table says.
        if (holding::pullsLightly(held->state, held->pull_N)) return tr("light");
        return text(units::writeForce(held->pull_N, shown.display));
    };
    pull.number = [this](const Shown&, int row) {
        return rowAt(row).held ? QVariant(rowAt(row).held->pull_N) : QVariant();
    };
    const auto share = [this](const Shown& shown, int row) {
        const holding::HeldStation* held = rowAt(row).held;
        return held && held->most_N > 0 && !item(shown, row).side ? finite(held->pull_N / held->most_N) : QVariant();
    };
    pull.below = [this, share](const Shown& shown, int row) {
        if (item(shown, row).side) return QString();
        const QVariant known = share(shown, row);
        return known.isValid() ? text(units::writeShare(known.toDouble())) : unknown;
    };
    pull.more = [share](const Shown& shown, int row, int role) {
        const QVariant known = role == barRole ? share(shown, row) : QVariant();
        return known.isValid() ? QVariant(std::clamp(known.toDouble(), 0.0, 1.0)) : QVariant();
    };
    return pull;
}

ListColumn StationsModel::gap() const {
    ListColumn gap{.name = tr("Gap"),
                   .hint = tr("What is left under its pad. Below it: closed, full (at max force), fixed or snug."),
                   .under = tr("holds"),
                   .widest = "Gap, mm"};
    gap.text = [this](const Shown& shown, int row) {
        const model::Station& station = item(shown, row);
        const holding::HeldStation* held = rowAt(row).held;
        if (station.side) return tr("side");
        const bool known = held && std::isfinite(held->gap_m) && holding::closesGap(station);  // else it has no pad
        return known ? smallFigure(held->gap_m, shown.display) : unknown;
    };
    gap.number = [this](const Shown&, int row) {
        return rowAt(row).held ? QVariant(rowAt(row).held->gap_m) : QVariant();
    };
    gap.below = [this](const Shown& shown, int row) {
        const model::Station& station = item(shown, row);
        if (station.side || !rowAt(row).held) return QString();
        // A strap presses along its whole length with what it has.
        return model::traitsOf(station.kind).closesGap ? holdStateWord(rowAt(row).held->state) : holdName(station.kind);
    };
    gap.severity = [this](const Shown& shown, int row) {
        const holding::HeldStation* held = rowAt(row).held;
        const bool wide = held && !item(shown, row).side && held->gap_m > shown.piece.holding.gapLimit_m;
        return wide ? QVariant(int(plan::Severity::caution)) : QVariant();
    };
    return gap;
}

QVariant StationsModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal && section == gapColumn && role == Qt::DisplayRole && hasPiece())
        return tr("Gap, %1").arg(smallUnit(shown().display));
    return ListModel::headerData(section, orientation, role);
}

const StationsModel::Row& StationsModel::rowAt(int row) const {
    if (rowsOf_ != shownWhole()) {
        rowsOf_ = shownWhole();
        rowsAlong_.clear();
        const std::vector<model::Station>& stations = piece().holding.stations;
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

int StationsModel::rowAtPlace(double at_m) const {
    constexpr double same_m = 1e-9;
    for (int row = 0; row < rowCount(); ++row)
        if (std::abs(index(row, 0).data(placeRole).toDouble() - at_m) < same_m) return row;
    return -1;
}

bool StationsModel::sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const {
    const auto& stationsA = a.piece.holding.stations;
    const auto& stationsB = b.piece.holding.stations;
    return stationsA[alongTheLine(a.piece.holding)[rowOfA]] == stationsB[alongTheLine(b.piece.holding)[rowOfB]];
}

void StationsModel::addStation(double at_m) {
    if (!hasPiece()) return;
    model::Station station;
    const auto away_m = [at_m](const model::Station& one) { return std::abs(one.at_m - at_m); };
    const auto nearest = std::ranges::min_element(items(), {}, away_m);
    if (nearest != items().end()) {
        station.kind = nearest->kind;
        station.most_N = nearest->most_N;
        station.pad_m = nearest->pad_m;
    }
    station.at_m = at_m;
    insertItem(tr("Add a station at %1").arg(writeLengthText(at_m, shown().display)), rowCount(), station);
}

void StationsModel::setOutEvenly(double from_m, double to_m, double spacing_m, model::HoldKind kind) {
    if (!hasPiece()) return;
    model::Station like;
    const auto same = std::ranges::find(items(), kind, &model::Station::kind);
    if (same != items().end()) {
        like.most_N = same->most_N;
        like.pad_m = same->pad_m;
    }
    like.kind = kind;
    std::vector<model::Station> stations = holding::evenStations(from_m, to_m, spacing_m, like);
    const QString name = tr("Set out %1 stations evenly").arg(stations.size());
    std::ranges::copy_if(items(), std::back_inserter(stations), &model::Station::fixed);
    change(name, [&](model::Piece& piece) { piece.holding.stations = std::move(stations); });
}

}  // namespace fayline::app
