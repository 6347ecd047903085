// Finding free room on a sheet: labels that stand clear of all ink and of each other, with a leader where they must
// stand off.
#pragma once

#include <optional>

#include "app/paper/sheet.hpp"

namespace fayline::app::paper {

// The part of a segment within `box`; nothing where it passes by.
std::optional<QLineF> clipped(const QLineF& segment, const QRectF& box);

// The parts of a polyline within `box`.
std::vector<QPolygonF> clipped(const QPolygonF& line, const QRectF& box);

// The ink that is on a sheet already. Faint lines (grids) are kept clear of while there is room elsewhere.
class Room {
public:
    explicit Room(const QRectF& within) : within_(within) {}

    void addInk(const QPolygonF& line);
    void addFaintInk(const QLineF& line) { faint_.push_back(line); }
    void addBox(const QRectF& box) { boxes_.push_back(box); }

    const QRectF& within() const { return within_; }
    bool isFree(const QRectF& box, bool faintToo = true) const;
    bool crossesInk(const QLineF& line) const;
    bool crossesBox(const QLineF& line) const;
    double inkWithin(const QRectF& box) const;                   // length of ink in it, millimetres
    std::vector<QLineF> outsideBoxes(const QLineF& line) const;  // what is left of a line that stops short of all boxes
    bool meetsBox(const QRectF& box) const;

private:
    QRectF within_;
    std::vector<QLineF> ink_;
    std::vector<QLineF> faint_;
    std::vector<QRectF> boxes_;
};

struct Label {
    QString text;
    QPointF anchor;     // what it names
    QPointF direction;  // where it would best stand from there, any length
    double size_mm = 2.9;
    bool bold = false;
    double clear_mm = 1.5;  // from the anchor to the words where there is room
};

// Writes the label where nothing is in its way, the nearest such place first; false: nowhere. A leader crosses
// other ink only where there is no other way.
bool placeLabel(Sheet& sheet, Room& room, const Label& label);

}  // namespace fayline::app::paper
