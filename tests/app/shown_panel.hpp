// A panel on the screen that is shown what becomes of its own changes.
#pragma once

#include <QHeaderView>
#include <QLabel>
#include <QLayout>
#include <QTest>
#include <QToolButton>

#include "app/look/theme.hpp"
#include "app/panels/notebook_table.hpp"
#include "app/panels/panel.hpp"
#include "app/panels/piece_table.hpp"
#include "tests/app/patience.hpp"
#include "tests/app/shown_piece.hpp"

namespace fayline::app {

constexpr int narrowest = 340;
constexpr int widest = 420;

template <typename P>
void followWith(Taken& taken, P* panel) {
    taken.follow(static_cast<Panel*>(panel), [panel](const Shown& shown) { panel->show(shown); });
}

inline void open(QWidget* window, int width = narrowest) {
    window->resize(width, 1400);
    window->QWidget::show();
    window->activateWindow();
    QVERIFY(QTest::qWaitForWindowActive(window, test::patience_ms));
}

// Opens every section that is folded.
inline void unfold(const Panel& panel) {
    for (QToolButton* button : panel.findChildren<QToolButton*>())
        if (button->objectName().endsWith("Head") && button->accessibleName().contains("folded")) button->click();
}

// Headers and cells, as wide as they are drawn with the paddings of the table.
inline void checkTable(const NotebookTable* table) {
    const QAbstractItemModel* model = table->model();
    const QHeaderView* header = table->horizontalHeader();
    QVERIFY2(header->length() <= table->viewport()->width(), qPrintable(table->objectName()));
    const QFontMetrics small(tabularFont(textFont(TextSize::small)));
    const QFontMetrics figures(tabularFont(table->font()));
    for (int column = 0; column < model->columnCount(); ++column) {
        if (table->isColumnHidden(column)) continue;
        const int room = table->columnWidth(column) - gridStep;
        const QString name = model->headerData(column, Qt::Horizontal, Qt::DisplayRole).toString();
        QVERIFY2(small.horizontalAdvance(name) <= room, qPrintable(table->objectName() + ": " + name));
        for (int row = 0; row < model->rowCount(); ++row) {
            const QModelIndex cell = model->index(row, column);
            const bool isFigure = cell.data(Qt::TextAlignmentRole).toInt() & Qt::AlignRight;
            const int shape = isFigure && cell.data(Qt::DecorationRole).isValid() ? 16 + gridStep / 2 : 0;
            for (const QString& under : cell.data(underRole).toString().split('\n'))
                QVERIFY2(small.horizontalAdvance(under) <= room, qPrintable(table->objectName() + ": " + under));
            // Names may be set smaller; figures may not.
            const QFontMetrics& font = column == 0 ? small : figures;
            QVERIFY2(font.horizontalAdvance(cell.data().toString()) + shape <= room,
                     qPrintable(table->objectName() + ": " + cell.data().toString()));
        }
    }
}

// Shows `panel` as wide as that and as high as it wants, and looks whether anything is cut off.
inline void checkFits(Panel* panel, int width) {
    panel->resize(width, panel->layout()->totalHeightForWidth(width));
    panel->QWidget::show();
    QTest::qWait(1);
    QVERIFY2(panel->minimumSizeHint().width() <= width, qPrintable(panel->objectName()));
    for (const QLabel* label : panel->findChildren<QLabel*>()) {
        if (!label->isVisible() || label->text().isEmpty()) continue;
        const int needed = label->wordWrap() ? label->heightForWidth(label->width()) : label->sizeHint().height();
        QVERIFY2(label->height() >= needed, qPrintable(label->text()));
    }
    for (const NotebookTable* table : panel->findChildren<NotebookTable*>())
        if (table->isVisible()) checkTable(table);
}

}  // namespace fayline::app
