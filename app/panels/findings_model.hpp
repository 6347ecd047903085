// The findings of the present piece as a list, the worst first.
#pragma once

#include <QAbstractTableModel>
#include <memory>

#include "app/look/shown.hpp"
#include "app/panels/piece_table.hpp"

namespace fayline::app {

class FindingsModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { severityColumn, textColumn, placeColumn, sourceColumn, columns };

    using QAbstractTableModel::QAbstractTableModel;

    bool show(std::shared_ptr<const Shown> shown);  // false: every row says what it said
    const plan::Finding* finding(int row) const;

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::shared_ptr<const Shown> shown_;
    int rows_ = 0;
};

QString severityWord(plan::Severity severity);  // "Stop", "Caution", "Note"

}  // namespace fayline::app
