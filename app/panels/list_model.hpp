// A list of the present piece as a table, told by its columns: what each shows and how what is typed into it is read.
#pragma once

#include <functional>
#include <vector>

#include "app/panels/piece_table.hpp"

namespace fayline::app {

class ListModel : public PieceTable {
    Q_OBJECT
public:
    struct Column {
        QString name;
        QString hint;
        std::function<QString(const Shown&, int row)> write;
        // Puts what was typed into the piece; throws InputError. None: read only.
        std::function<void(boat::Piece&, int row, const QString& written, const Shown&)> read;
        bool left = false;  // words, not figures
    };
    struct List {
        QString item;  // what a row is, in the undo menu: "reading"
        QString path;  // of the list in the project file: "stack.planed_after"
        std::function<int(const boat::Piece&)> rows;
        std::function<bool(const boat::Piece&, int row, const boat::Piece&, int other)> same;
        std::function<std::optional<double>(const Shown&, int row)> at_m;  // where it lies along the line; may be empty
    };

    ListModel(List list, std::vector<Column> columns, QObject* parent = nullptr);

    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex& index) const override;

    // Asks for the change that `make` makes of the present piece.
    void change(const QString& name, const std::function<void(boat::Piece&)>& make);

protected:
    int rowsOf(const Shown& shown) const override;
    bool sameRow(const Shown& a, int rowOfA, const Shown& b, int rowOfB) const override;
    QVariant cell(int row, int column, int role) const override;
    QString put(boat::Piece& piece, int row, int column, const QVariant& value) const override;
    QString cellName(int row, int column) const override;

private:
    List list_;
    std::vector<Column> columns_;
};

}  // namespace fayline::app
