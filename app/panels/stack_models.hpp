// The strips of the present piece as tables: each strip as planned, the groups of like strips, the widths.
#pragma once

#include "app/panels/piece_table.hpp"

namespace fayline::app {

// One row for each single strip, from the form outwards; read only.
class StripsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column {
        placeColumn,
        radiusColumn,
        shareColumn,
        chanceColumn,
        cutColumn,
        thicknessColumn,
        woodColumn,
        radiusAtColumn,
        strainColumn,
        finishedColumn,
        columns
    };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece&, int, int, const QVariant&) const override { return {}; }
    QString cellName(int row, int column) const override;

private:
    QString display(const stack::Strip& strip, int column) const;
};

// One row for each group of strips that are alike.
class GroupsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { countColumn, thicknessColumn, woodColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    void addGroup(int after);
    void removeGroup(int row);
    void moveGroup(int row, int by);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    void ask(std::vector<boat::Strips> strips, const QString& name);
};

// One row for each width given along the line.
class WidthsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { atColumn, widthColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    void addWidth(double at_m);
    void removeWidth(int row);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;
};

QString woodName(const Shown& shown, const std::string& id);  // the id itself where no such wood is known

}  // namespace fayline::app
