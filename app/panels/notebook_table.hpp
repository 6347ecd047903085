// A table as a notebook has it: thin rules, no grid, figures under each other, as high as its rows.
//
// Draws the roles of TableRole. A text that a model cannot read stays in its editor when Enter is pressed.
#pragma once

#include <QHeaderView>
#include <QPersistentModelIndex>
#include <QStyledItemDelegate>
#include <QTableView>
#include <optional>
#include <vector>

namespace fayline::app {

class NotebookTable;

class CellDelegate : public QStyledItemDelegate {
    Q_OBJECT
public:
    explicit CellDelegate(NotebookTable* table);

    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    QWidget* createEditor(QWidget* parent, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void setEditorData(QWidget* editor, const QModelIndex& index) const override;
    void setModelData(QWidget* editor, QAbstractItemModel* model, const QModelIndex& index) const override;
    void updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                              const QModelIndex& index) const override;
    bool eventFilter(QObject* object, QEvent* event) override;
    bool editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                     const QModelIndex& index) override;

private:
    NotebookTable* table_;
};

class NotebookTable : public QTableView {
    Q_OBJECT
public:
    explicit NotebookTable(QWidget* parent = nullptr);

    // The columns to show from left to right, each as wide as `widest` needs; the one named by `stretched` takes what
    // is left over. All others are hidden.
    struct ColumnWidth {
        int column;
        QString widest;
    };
    void setColumns(const std::vector<ColumnWidth>& columns, int stretched);
    void setMostRows(int rows) { mostRows_ = rows; }  // higher tables scroll
    void setTwoLines(bool two);

    void setModel(QAbstractItemModel* model) override;
    void lightPlace(std::optional<double> at_m);
    int litRow() const { return litRow_; }
    std::vector<int> chosenRows() const;  // ascending
    bool twoLines() const { return twoLines_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void placeHovered(std::optional<double> at_m);
    void placeChosen(std::optional<double> at_m);
    void sourceAsked(const QModelIndex& index);
    void insertAsked();
    void removeAsked();
    void moveAsked(int by);
    void copyAsked();
    void pasteAsked();

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;

private:
    void layOut();
    void fitHeight();
    int rowNearest(double at_m) const;

    std::vector<ColumnWidth> columns_;
    int stretched_ = -1;
    int mostRows_ = 12;
    bool twoLines_ = false;
    int litRow_ = -1;
    std::optional<double> litPlace_;
};

}  // namespace fayline::app
