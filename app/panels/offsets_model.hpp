// The offsets of the present piece as a table: one row a point, with its misfit and what was probably misread.
#pragma once

#include <vector>

#include "app/look/names.hpp"
#include "app/panels/list_model.hpp"

namespace fayline::app {

class OffsetsModel : public ItemsModel<model::Point> {
public:
    enum Column { labelColumn, xColumn, yColumn, misfitColumn, mustPassColumn, readColumn };

    explicit OffsetsModel(QObject* parent = nullptr);

    // Whole-row changes, each one step; rows that do not exist are ignored.
    void insertPoint(int before) { insertPoint(before, {}); }  // between its neighbours, or one step on at an end
    // One step on, for typing; taken back while nothing was typed, nothing has happened.
    void addRow() { insertPoint(rowCount(), nextRow); }
    void takeRowBack();
    void removePoints(const std::vector<int>& rows) { removeItems(rows, tr("Remove %1"), tr("Remove %1 points")); }
    void movePoint(int row, int by);  // -1 up, +1 down
    void replacePoints(const std::vector<model::Point>& points, const QString& name);

protected:
    QString rowName(int row) const override { return pointName(piece(), row); }
    QString cellName(int row, int column) const override;

private:
    inline static const QString nextRow = QStringLiteral("next row");  // such changes merge
    void insertPoint(int before, const QString& merges);
    ListColumn coordinate(std::size_t axis) const;
    ListColumn misfit() const;
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
