// A table as a notebook has it: thin rules, no grid, figures under each other, as high as its rows.
//
// Draws the roles of TableRole. A text that a model cannot read stays in its editor when Enter is pressed.
#pragma once

#include <QHeaderView>
#include <QPersistentModelIndex>
#include <QStyledItemDelegate>
#include <QTableView>
#include <QVariant>
#include <map>
#include <optional>
#include <utility>
#include <vector>

namespace fayline::app {

class NotebookTable;

// All that a cell is drawn from but where it stands and whether it is chosen or lit: cells of one look are alike to the
// eye.
struct CellLook {
    QString text;
    QString under;
    QVariant bar;
    bool barFromMiddle = false;
    QVariant ticked;  // its check state; not valid: no box
    bool fault = false;
    QVariant severity;
    int alignment = 0;
    qint64 icon = 0;  // its key; 0: none
    bool faint = false;

    bool operator==(const CellLook&) const = default;
};
CellLook cellLook(const QModelIndex& index);

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
    void drawText(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index,
                  const CellLook& look) const;
    const std::pair<QFont, QFont>& fonts(const QFont& base) const;

    NotebookTable* table_;
    mutable std::optional<std::pair<QFont, QFont>> fonts_;
    mutable QFont base_;   // of which fonts_ are
    mutable QFont small_;  // the desktop's, of which fonts_ are
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
    void setMostRows(int rows) { mostRows_ = rows; }  // longer tables scroll, by keyboard and their bar
    void setTwoLines(bool two);
    void setLinesUnder(int lines);  // small ones in each cell of a table of two lines, where one is not enough
    int linesUnder() const { return linesUnder_; }
    // What asks for a row more, in the last cell that is typed in: where lists are typed in whole, Enter as well.
    enum class Grows { never, byTab, byTabAndEnter };
    void setGrows(Grows grows) { grows_ = grows; }
    bool growsByEnter() const { return grows_ == Grows::byTabAndEnter; }
    bool endsRows(const QModelIndex& index) const;  // is that cell, in a table that grows

    void setModel(QAbstractItemModel* model) override;
    void lightPlace(std::optional<double> at_m);
    int litRow() const { return litRow_; }
    std::vector<int> chosenRows() const;  // ascending
    bool twoLines() const { return twoLines_; }
    void drawn(const QModelIndex& index, const CellLook& look);  // told by the delegate

    // Draws anew only what looks different: most cells of a table keep their text while a point is dragged.
    void dataChanged(const QModelIndex& topLeft, const QModelIndex& bottomRight, const QList<int>& roles) override;
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void placeHovered(std::optional<double> at_m);
    void placeSelected(std::optional<double> at_m);
    void sourceAsked(const QModelIndex& index);
    void insertAsked();
    void removeAsked();
    void moveAsked(int by);
    void copyAsked();
    void pasteAsked();
    void rowAsked();                               // for typing, after the last
    void typingGivenUp(const QModelIndex& index);  // by Esc

protected:
    void focusInEvent(QFocusEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void changeEvent(QEvent* event) override;
    void currentChanged(const QModelIndex& current, const QModelIndex& previous) override;
    QModelIndex moveCursor(CursorAction action, Qt::KeyboardModifiers modifiers) override;

private:
    void layOut();
    void fitHeight();
    int rowNearest(double at_m) const;
    void drawAllAnew();

    std::vector<ColumnWidth> columns_;
    int stretched_ = -1;
    int mostRows_ = 40;
    bool twoLines_ = false;
    int linesUnder_ = 1;
    Grows grows_ = Grows::never;
    int litRow_ = -1;
    std::optional<double> litPlace_;
    std::map<std::pair<int, int>, CellLook> drawn_;  // by row and column, as they stand on the screen
};

}  // namespace fayline::app
