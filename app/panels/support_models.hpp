// What bears: the posts of a form and the blocks under the boat, as tables to type in with what each has to bear.
#pragma once

#include "app/panels/piece_table.hpp"

namespace fayline::app {

class PostsModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { atColumn, widthColumn, holdsColumn, thrustColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    void addPost(double at_m);  // each is one step
    void removePost(int row);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    QString typed(const boat::Post& post, int column) const;
    std::optional<double> thrustOn(int row) const;
};

class BlocksModel : public PieceTable {
    Q_OBJECT
public:
    enum Column { xColumn, yColumn, pushColumn, columns };

    using PieceTable::PieceTable;

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    void addBlock();  // beside the last; each is one step
    void removeBlock(int row);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    const holding::BlockPush* pushOn(int row) const;
};

}  // namespace fayline::app
