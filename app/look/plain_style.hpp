// How controls are drawn: flat, a thin rule where something can be typed or pressed, no gradients and no shadows.
#pragma once

#include <QProxyStyle>

#include "app/look/theme.hpp"

namespace fayline::app {

// Fusion for measure and behaviour; frames, buttons, headers and bars drawn plain in the theme's colours.
class PlainStyle : public QProxyStyle {
    Q_OBJECT
public:
    PlainStyle();

    // Labels and tool tips show what is written, marks of rich text too, unless one asks for such: what a boat's file
    // names itself can then neither dress up nor fetch a picture.
    void polish(QWidget* widget) override;
    using QProxyStyle::polish;

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                           const QWidget* widget) const override;
    int pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const override;
    QIcon standardIcon(StandardPixmap kind, const QStyleOption* option, const QWidget* widget) const override;
    int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                  QStyleHintReturn* returned) const override;
};

// What a style sheet says best: rules between areas and the padding of menus.
QString plainStyleSheet(const Theme& theme);

}  // namespace fayline::app
