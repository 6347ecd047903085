#include "app/look/theme.hpp"

#include <QApplication>
#include <QFontDatabase>
#include <QFontMetricsF>
#include <QPointer>
#include <algorithm>

#include "app/look/perception.hpp"
#include "app/look/plain_style.hpp"

namespace fayline::app {

namespace {

Theme& inForce() {
    static Theme present = paperTheme();
    return present;
}

bool figuresOfOneWidth(const QFont& font) {
    const QFontMetricsF metrics(font);
    const double zero = metrics.horizontalAdvance(u'0');
    return std::ranges::all_of(QStringLiteral("123456789"),
                               [&](QChar c) { return std::abs(metrics.horizontalAdvance(c) - zero) < 0.01; });
}

}  // namespace

QColor Theme::strain(double share) const {
    return between(strainLow, strainHigh, share);
}

// Paper: warm white, iron-gall ink, verdigris for what is selected, red lead and ochre for findings.
// The strain ramp runs from near the ground to far from it: fresh straw to deep plum.
Theme paperTheme() {
    Theme t;
    t.dark = false;
    t.ground = QColor(0xf6, 0xf1, 0xe6);
    t.raised = QColor(0xfd, 0xfa, 0xf3);
    t.ink = QColor(0x22, 0x28, 0x30);
    t.faint = QColor(0x5d, 0x5f, 0x62);
    t.rule = QColor(0xd3, 0xca, 0xb9);
    t.accent = QColor(0x0f, 0x66, 0x60);
    t.stop = QColor(0xac, 0x2e, 0x1a);
    t.caution = QColor(0x86, 0x58, 0x00);
    t.note = QColor(0x3b, 0x5c, 0x7c);
    t.strainLow = fromLab({86, 2, 32});
    t.strainHigh = fromLab({26, 26, -34});
    return t;
}

// Slate: dark grey-blue and chalk. The same ramp seen from the other side, deep plum to straw.
Theme slateTheme() {
    Theme t;
    t.dark = true;
    t.ground = QColor(0x20, 0x2a, 0x33);
    t.raised = QColor(0x28, 0x33, 0x3e);
    t.ink = QColor(0xec, 0xe8, 0xdd);
    t.faint = QColor(0xa8, 0xb1, 0xb7);
    t.rule = QColor(0x45, 0x53, 0x60);
    t.accent = QColor(0x74, 0xc9, 0xb9);
    t.stop = QColor(0xff, 0x8f, 0x79);
    t.caution = QColor(0xe8, 0xb5, 0x51);
    t.note = QColor(0xa0, 0xc2, 0xde);
    t.strainLow = fromLab({36, 20, -30});
    t.strainHigh = fromLab({90, 0, 38});
    return t;
}

Theme themeNear(const QPalette& palette) {
    const bool dark =
        toLab(palette.color(QPalette::WindowText)).lightness > toLab(palette.color(QPalette::Window)).lightness;
    return dark ? slateTheme() : paperTheme();
}

Theme desktopTheme() {
    // Ours is taken off for a moment so that the desktop's own shows.
    const QPalette ours = QGuiApplication::palette();
    QGuiApplication::setPalette(QPalette());
    const Theme near = themeNear(QGuiApplication::palette());
    QGuiApplication::setPalette(ours);
    return near;
}

const Theme& theme() {
    return inForce();
}

QColor inkOn(const QColor& behind) {
    const Theme& t = theme();
    const QColor best = contrast(t.ink, behind) >= contrast(t.ground, behind) ? t.ink : t.ground;
    if (contrast(best, behind) >= 4.5) return best;
    return luminance(behind) > 0.1791 ? Qt::black : Qt::white;  // one of these two always reads 4.5 to 1
}

QPalette paletteOf(const Theme& t) {
    QPalette p;
    p.setColor(QPalette::Window, t.ground);
    p.setColor(QPalette::WindowText, t.ink);
    p.setColor(QPalette::Base, t.raised);
    p.setColor(QPalette::AlternateBase, t.ground);
    p.setColor(QPalette::Text, t.ink);
    p.setColor(QPalette::PlaceholderText, t.faint);
    p.setColor(QPalette::Button, t.ground);
    p.setColor(QPalette::ButtonText, t.ink);
    p.setColor(QPalette::BrightText, t.stop);
    p.setColor(QPalette::ToolTipBase, t.raised);
    p.setColor(QPalette::ToolTipText, t.ink);
    p.setColor(QPalette::Highlight, t.accent);
    p.setColor(QPalette::HighlightedText, t.ground);
    p.setColor(QPalette::Link, t.accent);
    p.setColor(QPalette::LinkVisited, t.accent);
    p.setColor(QPalette::Light, t.raised);
    p.setColor(QPalette::Midlight, t.rule);
    p.setColor(QPalette::Mid, t.rule);
    p.setColor(QPalette::Dark, t.faint);
    p.setColor(QPalette::Shadow, t.rule);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText, QPalette::HighlightedText}) {
        p.setColor(QPalette::Disabled, role, t.faint);
    }
    p.setColor(QPalette::Disabled, QPalette::Highlight, t.rule);
    p.setColor(QPalette::Disabled, QPalette::HighlightedText, t.ink);
    return p;
}

void applyGround(Ground ground) {
    inForce() = ground == Ground::paper ? paperTheme() : ground == Ground::slate ? slateTheme() : desktopTheme();
    if (!qApp || !qobject_cast<QApplication*>(qApp)) return;  // papers drawn without a display have no widgets
    static QPointer<PlainStyle> style;  // owned by the application, which wraps it once it has a style sheet
    if (!style) QApplication::setStyle(style = new PlainStyle);
    QApplication::setPalette(paletteOf(inForce()));
    qApp->setStyleSheet(plainStyleSheet(inForce()));
}

QFont textFont(TextSize size) {
    QFont font = QGuiApplication::font();
    const double body = font.pointSizeF() > 0 ? font.pointSizeF() : 10;
    switch (size) {
        case TextSize::small:
            font.setPointSizeF(body * 0.9);
            break;
        case TextSize::body:
            break;
        case TextSize::sentence:
            font.setPointSizeF(body * 1.15);
            break;
        case TextSize::title:
            font.setPointSizeF(body * 1.3);
            font.setWeight(QFont::DemiBold);
            break;
    }
    return font;
}

QFont tabularFont(const QFont& base) {
    if (figuresOfOneWidth(base)) return base;
    QFont fixed = QFontDatabase::systemFont(QFontDatabase::FixedFont);
    fixed.setPointSizeF(base.pointSizeF());
    fixed.setWeight(QFont::Weight(base.weight()));
    return fixed;
}

}  // namespace fayline::app
