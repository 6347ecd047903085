// The holding stations of the present piece as a table, numbered along the line as on paper.
#pragma once

#include <vector>

#include "app/panels/list_model.hpp"

namespace fayline::app {

class StationsModel : public ItemsModel<model::Station> {
public:
    enum Column {
        kindColumn,
        numberColumn,
        alongColumn,  // below it: along the outside
        pullColumn,   // what it pulls; below it what of: its strength. Typed: a given pull
        gapColumn,    // left under its pad; below it how it holds
        fixedColumn,
        givenColumn,
        mostColumn,
        padColumn,
        sideColumn,
        columns
    };

    explicit StationsModel(QObject* parent = nullptr);

    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

    // The station of a row in model::Holding::stations; -1: there is no such row.
    int stationOf(int row) const { return hasPiece() && row >= 0 && row < rowCount() ? indexOf(row) : -1; }
    // The row of a station that stands at this place; -1: none does.
    int rowAtPlace(double at_m) const;

    // Each is one step. Where nothing is known of the tool, the settings of the nearest station serve.
    void addStation(double at_m);
    void removeStations(const std::vector<int>& rows) { removeItems(rows, tr("Remove %1"), tr("Remove %1 stations")); }
    // Stations `spacing_m` apart at most from `from_m` to `to_m`, all of `kind`; fixed ones stay, the others go.
    // Throws InputError.
    void setOutEvenly(double from_m, double to_m, double spacing_m, model::HoldKind kind);

protected:
    int indexOf(int row) const override { return rowAt(row).index; }
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;

private:
    // A row's station in model::Holding::stations, and what the plan says of it where it does.
    struct Row {
        int index = 0;
        const holding::StationPlace* place = nullptr;
        const holding::HeldStation* held = nullptr;
    };
    const Row& rowAt(int row) const;
    std::vector<ListColumn> makeColumns();
    ListColumn pullOf(const ListColumn& given) const;
    ListColumn gap() const;

    mutable std::vector<Row> rowsAlong_;
    mutable std::shared_ptr<const Shown> rowsOf_;  // the piece that rowsAlong_ is of
};

}  // namespace fayline::app
