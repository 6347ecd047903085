// The holding stations of the present piece as a table, numbered along the line as on paper.
#pragma once

#include <optional>
#include <vector>

#include "app/panels/piece_table.hpp"

namespace fayline::app {

class StationsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { kindColumn, numberColumn, alongColumn, xColumn, fixedColumn, outsideColumn, yColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

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
    // A row's station in boat::Holding::stations, and its place in the plan where that has it.
    struct Row {
        int index = 0;
        const holding::StationPlace* place = nullptr;
    };
    const Row& rowAt(int row) const;

    mutable std::vector<Row> rowsAlong_;
    mutable std::shared_ptr<const Shown> rowsOf_;  // the piece that rowsAlong_ is of
};

std::vector<boat::HoldKind> allHoldKinds();

}  // namespace fayline::app
