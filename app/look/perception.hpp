// How colours look to an eye: contrast of text on its ground, and a space in which equal steps look alike.
#pragma once

#include <QColor>

namespace fayline::app {

// Relative luminance 0..1 of an opaque sRGB colour. Source: WCAG 2.1, definition of relative luminance (M).
double luminance(const QColor& color);

// Contrast 1..21 of two colours, in either order. Source: WCAG 2.1, contrast ratio (M); text wants 4.5 or more.
double contrast(const QColor& a, const QColor& b);

// A colour in CIE 1976 L*a*b* for the white of sRGB (D65): equal distances look about equally far apart.
// Source: CIE 15, Colorimetry (M).
struct Lab {
    double lightness = 0;  // 0 black .. 100 white
    double a = 0;          // > 0 towards red, < 0 towards green
    double b = 0;          // > 0 towards yellow, < 0 towards blue
};
Lab toLab(const QColor& color);

// The sRGB colour of `lab`; a colour that a screen cannot show is moved to the nearest one channel by channel.
QColor fromLab(const Lab& lab);

// The colour at `share` 0..1 of the straight way from one to another in L*a*b*; beyond: the end.
QColor between(const QColor& from, const QColor& to, double share);

}  // namespace fayline::app
