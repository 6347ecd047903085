// The edge of a form that allows for springback, beside the edge that the piece shall have.
#pragma once

#include <QString>

#include "app/formview/drawing.hpp"

namespace fayline::app {

// In pixels.
struct FormLineMark {
    QPolygonF line;    // empty: the form has the wanted line, or there is none
    double times = 1;  // drawn so many times as far off the wanted edge as it is
    bool any() const { return line.size() > 1; }
};

// `magnified`: by a round factor where the two lie too close to be told apart, so that they come 12 to 24 pixels apart
// at most. Beyond the strips, where there is no wanted edge, it is then not drawn.
FormLineMark formLineMark(const Drawing& drawing, const Transform& transform, bool magnified);

// What stands beside a piece of it in the corner of the view.
QString formLineKey(const FormLineMark& mark);

}  // namespace fayline::app
