// What is at hand to hold with, as a table to type in.
#pragma once

#include "app/panels/piece_table.hpp"

namespace fayline::app {

class ToolsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column {
        nameColumn,
        kindColumn,
        mostColumn,
        countColumn,
        padColumn,
        openingColumn,
        throatColumn,
        pitchColumn,
        columns
    };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    // Each is one step.
    void addTool(int like);  // after the row `like` and of its kind; -1: at the end
    void removeTools(std::vector<int> rows);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    QVariant typed(const boat::Tool& tool, int column) const;
};

}  // namespace fayline::app
