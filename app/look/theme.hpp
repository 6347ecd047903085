// The two grounds, paper and slate: every colour and size that a view uses.
#pragma once

#include <QColor>
#include <QFont>
#include <QPalette>

namespace fayline::app {

enum class Ground { paper, slate, desktop };

struct Theme {
    bool dark = false;
    QColor ground;     // behind everything
    QColor raised;     // fields and tables
    QColor ink;        // wood, line, text
    QColor faint;      // secondary text; still 4.5:1 on the ground
    QColor rule;       // thin rules and grids
    QColor accent;     // what is selected
    QColor stop;       // with an octagon
    QColor caution;    // with a triangle
    QColor note;       // with a circle
    QColor strainLow;  // ends of the strain ramp, even in lightness between
    QColor strainHigh;

    // The strain ramp at `share` of the breaking strain, 0..1 (beyond 1: the end).
    QColor strain(double share) const;
};

inline constexpr int gridStep = 8;  // pixels; every margin and gap is a multiple of half of it

Theme paperTheme();
Theme slateTheme();
Theme desktopTheme();                      // the one nearer to the desktop's palette
Theme themeNear(const QPalette& palette);  // slate where its text is lighter than what lies behind it

// The theme in force, paper before anything is applied, and the way to change it: sets the application's style,
// palette and style sheet. Every widget then gets a palette change event and is drawn again.
const Theme& theme();
void applyGround(Ground ground);

// For figures on a patch of the strain ramp: ink or ground, whichever reads better on `behind`; black or white where
// neither reaches a contrast of 4.5.
QColor inkOn(const QColor& behind);

// The palette of `theme`, every group and role of it.
QPalette paletteOf(const Theme& theme);

// The text sizes of the program, all from the desktop's font.
enum class TextSize {
    small,     // marks on axes, second lines
    body,      // the desktop's size
    sentence,  // the answer that a panel opens with
    title,     // a panel's or paper's name
};
QFont textFont(TextSize size);
QFont tabularFont(const QFont& base);  // the desktop's font with figures of one width

}  // namespace fayline::app
