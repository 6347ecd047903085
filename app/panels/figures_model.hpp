// A table of what follows from a piece, read only: rows that somebody else has worded.
#pragma once

#include <QAbstractTableModel>
#include <optional>
#include <vector>

namespace fayline::app {

struct FigureColumn {
    QString name;
    QString under;  // name of the second line; may be empty
    QString hint;
    bool left = false;    // words, not figures
    QString widest = {};  // of its cells

    bool operator==(const FigureColumn&) const = default;
};

inline FigureColumn figureColumn(const QString& name, const QString& widest, const QString& under = {},
                                 const QString& hint = {}) {
    return {name, under, hint, false, widest};
}

inline FigureColumn wordColumn(const QString& name, const QString& widest, const QString& under = {},
                               const QString& hint = {}) {
    return {name, under, hint, true, widest};
}

struct FigureCell {
    QString text;
    QString under = {};
    double sort = 0;                   // the number behind it
    std::optional<int> severity = {};  // of plan::Severity, drawn as a shape or a line
    QString source = {};               // where the number comes from; empty: not told
    QString fault = {};                // what is wrong with it; empty: nothing
    std::optional<int> judged = {};    // of plan::Judged, drawn as a shape before the text

    bool operator==(const FigureCell&) const = default;
};

struct FigureRow {
    std::vector<FigureCell> cells;
    std::optional<double> at_m = {};  // metres along the line, where it lies at one place
    QString hint = {};                // tool tip of cells that tell no source; may be empty

    bool operator==(const FigureRow&) const = default;
};

class FiguresModel : public QAbstractTableModel {
    Q_OBJECT
public:
    explicit FiguresModel(std::vector<FigureColumn> columns, QObject* parent = nullptr);

    // Rows that say what they said are left alone. `faint`: they are of the piece as it was a moment ago.
    void show(std::vector<FigureRow> rows, bool faint = false);

    // Other names for the columns there are.
    void name(std::vector<FigureColumn> columns);

    int rowCount(const QModelIndex& parent = {}) const override;
    int columnCount(const QModelIndex& parent = {}) const override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    QVariant data(const QModelIndex& index, int role) const override;

private:
    std::vector<FigureColumn> columns_;
    std::vector<FigureRow> rows_;
    bool faint_ = false;
};

}  // namespace fayline::app
