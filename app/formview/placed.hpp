// What stands on the drawing and where, in pixels: for whoever asks what covers what.
#pragma once

#include <QPolygonF>
#include <QString>
#include <vector>

namespace fayline::app {

struct Drawing;
struct Sheet;
struct Transform;

struct Placed {
    enum class Kind {
        words,    // beside what they name, or at a fixed place
        number,   // of a station, in its ring
        leader,   // from the thing named to its words
        legend,   // scale bars, ramp of strain, keys, the band across the top
        mark,     // of a finding, or of what lies outside the view
        reading,  // of the place pointed at
        stack,    // between two neighbouring places
    };
    Kind kind = Kind::words;
    QString words;
    QPolygonF area;  // convex; with two corners a line
};

// All that `sheet` puts down but the reading, which comes and goes with the pointer.
std::vector<Placed> placedOf(const Sheet& sheet, const Drawing& drawing, const Transform& transform);

}  // namespace fayline::app
