// The holding stations of the present piece as a table, numbered along the line as on paper.
#pragma once

#include <optional>
#include <vector>

#include "app/panels/piece_table.hpp"

namespace fayline::app {

class StationsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column {
        kindColumn,
        numberColumn,
        alongColumn,  // below it: along the outside
        pullColumn,   // what it pulls; below it what of: its strength. Typed: a given pull
        gapColumn,    // left under its pad; below it how it holds
        fixedColumn,
        outsideColumn,
        xColumn,
        yColumn,
        shareColumn,  // of its strength
        givenColumn,
        mostColumn,
        padColumn,
        sideColumn,
        columns
    };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    // The station of a row in boat::Holding::stations; -1: there is no such row.
    int stationOf(int row) const;
    // The row of a station that stands at this place; -1: none does.
    int rowAtPlace(double at_m) const;

    // Each is one step. Where nothing is known of the tool, the settings of the nearest station serve.
    void addStation(double at_m);
    void removeStations(std::vector<int> rows);
    // Stations `spacing_m` apart at most from `from_m` to `to_m`, all of `kind`; fixed ones stay, the others go.
    // Throws InputError.
    void setOutEvenly(double from_m, double to_m, double spacing_m, boat::HoldKind kind);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    // A row's station in boat::Holding::stations, and what the plan says of it where it does.
    struct Row {
        int index = 0;
        const holding::StationPlace* place = nullptr;
        const holding::HeldStation* held = nullptr;
    };
    const Row& rowAt(int row) const;
    QVariant typed(const boat::Station& station, int column) const;
    QVariant number(const Row& row, int column) const;
    QString words(const Row& row, int column) const;
    QString under(const Row& row, int column) const;

    mutable std::vector<Row> rowsAlong_;
    mutable std::shared_ptr<const Shown> rowsOf_;  // the piece that rowsAlong_ is of
};

// The way of holding that is called so; throws InputError.
boat::HoldKind holdKindCalled(const QString& name);

// "closed", "full", "given", "slack": how a station holds.
QString holdStateWord(holding::HoldState state);

// Indices of the stations in their order along the line.
std::vector<int> alongTheLine(const boat::Holding& holding);

}  // namespace fayline::app
