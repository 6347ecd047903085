#include "app/formview/form_line.hpp"

#include <QObject>
#include <algorithm>
#include <cmath>

namespace fayline::app {

namespace {

constexpr double longestOff_px = 24;  // from the wanted edge
constexpr double linesApart_px = 6;   // two lines as far apart are told apart

// Greatest between the trim lines.
double greatestApart_m(const Drawing& drawing) {
    double most = 0;
    for (const FormPlace& place : drawing.form) {
        if (!place.wanted || place.at_m < 0 || place.at_m > drawing.length_m) continue;
        const double apart = std::hypot(place.on.x_m - place.wanted->x_m, place.on.y_m - place.wanted->y_m);
        if (std::isfinite(apart)) most = std::max(most, apart);
    }
    return most;
}

double timesFor(double apart_m, const Transform& transform) {
    const double own_px = apart_m * transform.pixelsPerMetre;
    if (!(own_px > 0) || own_px >= linesApart_px) return 1;
    double times = 1;
    for (const double factor : {1.0, 2.0, 5.0, 10.0, 20.0, 50.0, 100.0}) {
        if (own_px * factor <= longestOff_px) times = factor;
    }
    return times;
}

}  // namespace

FormLineMark formLineMark(const Drawing& drawing, const Transform& transform, bool magnified) {
    FormLineMark mark;
    mark.times = magnified ? timesFor(greatestApart_m(drawing), transform) : 1;
    for (const FormPlace& place : drawing.form) {
        if (mark.times == 1) {
            mark.line << transform.toScreen(place.on);
        } else if (place.wanted) {
            const QPointF wanted = transform.toScreen(*place.wanted);
            mark.line << wanted + (transform.toScreen(place.on) - wanted) * mark.times;
        }
    }
    return mark;
}

QString formLineKey(const FormLineMark& mark) {
    return mark.times > 1 ? QObject::tr("Form to cut, drawn %1 times as far off").arg(mark.times)
                          : QObject::tr("Form to cut, overbent");
}

}  // namespace fayline::app
