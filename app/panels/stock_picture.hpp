// Each board drawn with its strips, saw cuts and bad stretches; widths are drawn larger than lengths by a factor that
// stands under it.
//
// A click chooses a strip, as do the arrow keys. A strip that is dragged to another board is wanted from there.
#pragma once

#include <QPointF>
#include <QRectF>
#include <optional>
#include <vector>

#include "app/panels/plot.hpp"
#include "core/plan/study/stock_study.hpp"
#include "core/units/display.hpp"

namespace fayline::app {

class StockPicture : public Plot {
    Q_OBJECT
public:
    struct Picture {
        std::vector<plan::BoardCuts> boards;
        units::Display display;
        bool faint = false;  // of the piece as it was a moment ago
    };

    explicit StockPicture(QWidget* parent = nullptr);

    void setPicture(Picture picture);
    void choose(int place);  // of the piece that is shown; 0: none
    int chosen() const { return chosen_; }
    QRectF boardPlace(int board) const;           // pixels
    QRectF partPlace(int board, int part) const;  // pixels

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void stripChosen(int place);
    void boardAsked(int place, int board);  // the strip was dragged there

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;

private:
    struct At {
        int board = -1;
        int part = -1;
    };
    // Where a board stands, and the lanes of it that lie one above the other.
    struct Row {
        double top = 0;
        double height = 0;
        std::vector<double> columns;  // across, of a board that is resawn: each begins there, metres
    };

    void layOut() override;
    At at(const QPointF& pixel) const;
    int boardAt(const QPointF& pixel) const;  // -1: none
    double along(double at_m) const { return left_ + at_m * alongScale_; }
    void drawBoard(QPainter& painter, int board) const;
    void drawPart(QPainter& painter, int board, int part) const;
    void drawBad(QPainter& painter, int board) const;
    QString name(const plan::BoardCuts& board) const;
    QString words(const At& at) const;
    void walk(int by);

    Picture picture_;
    std::vector<Row> rows_;
    double left_ = 1;
    double alongScale_ = 100;  // pixels a metre
    double acrossScale_ = 100;
    int chosen_ = 0;
    std::optional<QPointF> pressed_;
    At dragged_;
    int over_ = -1;  // board that it is dragged over
};

}  // namespace fayline::app
