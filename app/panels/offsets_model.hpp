// The offsets of the present piece as a table: one row a point, with its misfit and what was probably misread.
#pragma once

#include <optional>
#include <vector>

#include "app/look/names.hpp"
#include "app/panels/piece_table.hpp"

namespace fayline::app {

class OffsetsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { labelColumn, xColumn, yColumn, misfitColumn, mustPassColumn, readColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    // Whole-row changes, each one step; rows that do not exist are ignored.
    void insertPoint(int before);  // halfway between its neighbours, or one step on at an end
    void removePoints(std::vector<int> rows);
    void movePoint(int row, int by);  // -1 up, +1 down
    void insertPoints(int before, const std::vector<boat::Point>& points, const QString& name);
    void replacePoints(const std::vector<boat::Point>& points, const QString& name);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    QVariant misfit(int row, int role) const;
    void askPoints(std::vector<boat::Point> points, const QString& name);
};

// One click that puts a probable slip right.
struct Repair {
    std::vector<int> points;
    QString text;  // "WL 24: x reads 1 inch high; try 0-11-6+"
    Change change;
};

// The repairs that the plan offers for the piece it was made of, the worst slip first; none while it is out of date.
std::vector<Repair> repairsOf(const Shown& shown);

}  // namespace fayline::app
