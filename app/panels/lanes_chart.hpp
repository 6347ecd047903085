// Who does what when: a lane for each pair of hands, each cup and each face, minutes to the right, the limit of each
// drawn, the minute that is pointed at lit.
//
// Painted here, as the plots are: see along_plot.hpp.
#pragma once

#include <QString>
#include <optional>
#include <vector>

#include "app/panels/plot.hpp"

namespace fayline::app {

// Seconds from the start and lanes to pixels and back.
struct LanesLayout {
    double left = 0;  // of the first second
    double top = 0;   // of the first lane
    double right = 1;
    double lane = 1;  // height of a lane
    double to_s = 1;

    double x(double at_s) const { return left + at_s / to_s * (right - left); }
    double at_s(double x) const { return (x - left) / (right - left) * to_s; }
    double y(int lane_) const { return top + lane_ * lane; }
};

class LanesChart : public Plot {
    Q_OBJECT
public:
    struct Bar {
        double from_s = 0;
        double to_s = 0;
        QString text;       // on it, where it fits,
        QString brief;      // else this
        int task = -1;      // that it stands for; -1: none
        bool full = false;  // drawn in a fuller tone

        bool operator==(const Bar&) const = default;
    };
    enum class Worst { no, inTime, late };
    struct Lane {
        QString name;
        std::vector<Bar> bars;
        std::optional<double> limit_s;  // by when it must be over
        Worst worst = Worst::no;        // the one of its kind with least time in hand

        bool operator==(const Lane&) const = default;
    };
    struct Group {
        QString name;
        std::vector<Lane> lanes;

        bool operator==(const Group&) const = default;
    };
    struct Picture {
        double start_s = 0;  // on the wall, after midnight
        double to_s = 0;
        std::vector<Group> groups;
        bool faint = false;  // of the piece as it was a moment ago

        bool operator==(const Picture&) const = default;
    };

    explicit LanesChart(QWidget* parent = nullptr) : Plot(parent) {}

    void setPicture(Picture picture);  // one that says the same is not painted again
    void lightMinute(std::optional<double> at_s);
    std::optional<double> litMinute() const { return lit_s_; }

    int taskAt(const QPointF& pixel) const;  // -1: none
    const LanesLayout& lanesLayout() const { return layout_; }

    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

signals:
    void minutePointed(std::optional<double> at_s);  // none: the mouse has left

protected:
    void paintEvent(QPaintEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool event(QEvent* event) override;

private:
    int laneCount() const;
    double laneHeight() const;
    double headHeight() const;  // the name of a group
    void layOut() override;
    int rowsBefore(std::size_t group) const;
    static QString clockWords(double clock_s);  // on the wall, from midnight before the start
    void drawClock(QPainter* painter) const;
    void drawLimit(QPainter* painter, const Lane& lane, double top, bool named) const;
    void drawGroup(QPainter* painter, const Group& group, double top) const;
    void drawBar(QPainter* painter, const Bar& bar, const Lane& lane, double top) const;
    double groupTop(std::size_t group) const;
    void point(std::optional<double> at_s);

    Picture picture_;
    LanesLayout layout_;
    std::optional<double> lit_s_;
};

}  // namespace fayline::app
