#include "app/look/plain_style.hpp"

#include <QLabel>
#include <QPainter>
#include <QStyleFactory>
#include <QStyleOption>
#include <QWidget>

#include "app/look/icons.hpp"

namespace fayline::app {

namespace {

// Thin rule round `rect`, in the accent where the keyboard is.
void rule(QPainter* painter, const QRect& rect, const QColor& color) {
    painter->setPen(QPen(color, 1));
    painter->setBrush(Qt::NoBrush);
    painter->drawRect(rect.adjusted(0, 0, -1, -1));
}

bool has(const QStyleOption* option, QStyle::StateFlag flag) {
    return option->state & flag;
}

void button(QPainter* painter, const QStyleOption* option) {
    const Theme& t = theme();
    const bool down = has(option, QStyle::State_Sunken) || has(option, QStyle::State_On);
    const bool live = has(option, QStyle::State_Enabled);
    painter->fillRect(option->rect, down ? t.rule : live && has(option, QStyle::State_MouseOver) ? t.raised : t.ground);
    rule(painter, option->rect, live && has(option, QStyle::State_HasFocus) ? t.accent : live ? t.faint : t.rule);
}

// An arrow head in a line, pointing down or up.
void arrow(QPainter* painter, const QRect& rect, bool down, const QColor& color) {
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    painter->setPen(QPen(color, 1.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
    const QPointF c = QRectF(rect).center();
    const double side = std::min({3.5, rect.width() / 3.0, rect.height() / 2.5});
    const double rise = down ? side / 2 : -side / 2;
    painter->drawPolyline(QPolygonF({c + QPointF(-side, -rise), c + QPointF(0, rise), c + QPointF(side, -rise)}));
    painter->restore();
}

void indicator(QPainter* painter, const QStyleOption* option, bool round) {
    const Theme& t = theme();
    const bool live = has(option, QStyle::State_Enabled);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const QRectF box = QRectF(option->rect).adjusted(1, 1, -1, -1);
    painter->setPen(QPen(has(option, QStyle::State_HasFocus) ? t.accent : live ? t.faint : t.rule, 1));
    painter->setBrush(t.raised);
    round ? painter->drawEllipse(box) : painter->drawRect(box);
    const QColor ink = live ? t.accent : t.faint;
    if (has(option, QStyle::State_NoChange)) {
        painter->fillRect(box.adjusted(3, box.height() / 2 - 1, -3, -box.height() / 2 + 1), ink);
    } else if (has(option, QStyle::State_On) && round) {
        painter->setPen(Qt::NoPen);
        painter->setBrush(ink);
        painter->drawEllipse(box.adjusted(3, 3, -3, -3));
    } else if (has(option, QStyle::State_On)) {
        painter->setPen(QPen(ink, 2, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        painter->drawPolyline(QPolygonF({{box.left() + box.width() * 0.22, box.top() + box.height() * 0.52},
                                         {box.left() + box.width() * 0.42, box.top() + box.height() * 0.72},
                                         {box.left() + box.width() * 0.78, box.top() + box.height() * 0.28}}));
    }
    painter->restore();
}

// The title of a group of entries in a menu.
bool isTitle(const QStyleOptionMenuItem& item) {
    return item.menuItemType == QStyleOptionMenuItem::Separator && !item.text.isEmpty();
}

void drawTitle(const QStyleOptionMenuItem& item, QPainter* painter) {
    const Theme& t = theme();
    const QRect words = item.rect.adjusted(gridStep, gridStep / 2, -gridStep, 0);
    painter->setPen(t.faint);
    painter->drawText(words, Qt::AlignLeft | Qt::AlignVCenter, item.text);
    const int from = words.left() + item.fontMetrics.horizontalAdvance(item.text) + gridStep;
    painter->setPen(QPen(t.rule, 1));
    painter->drawLine(from, words.center().y(), words.right(), words.center().y());
}

}  // namespace

PlainStyle::PlainStyle() : QProxyStyle(QStyleFactory::create("Fusion")) {}

void PlainStyle::polish(QWidget* widget) {
    auto* const label = qobject_cast<QLabel*>(widget);
    if (label && label->textFormat() == Qt::AutoText) label->setTextFormat(Qt::PlainText);
    QProxyStyle::polish(widget);
}

void PlainStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    const Theme& t = theme();
    switch (element) {
        case PE_PanelButtonCommand:
        case PE_PanelButtonBevel:
            button(painter, option);
            return;
        case PE_PanelButtonTool:
            if (has(option, State_On) || has(option, State_Sunken)) {
                painter->fillRect(option->rect, t.rule);
            } else if (has(option, State_MouseOver) && has(option, State_Enabled)) {
                painter->fillRect(option->rect, t.raised);
                rule(painter, option->rect, t.rule);
            }
            return;
        case PE_FrameDefaultButton:
            return;
        case PE_FrameFocusRect:
            // A chosen row is of the accent's colour itself.
            has(option, State_Selected) ? rule(painter, option->rect.adjusted(2, 2, -2, -2), t.ground)
                                        : rule(painter, option->rect, t.accent);
            return;
        case PE_FrameLineEdit:
            rule(painter, option->rect, has(option, State_HasFocus) ? t.accent : t.rule);
            return;
        case PE_PanelLineEdit:
            painter->fillRect(option->rect, option->palette.brush(QPalette::Base));
            if (const auto* frame = qstyleoption_cast<const QStyleOptionFrame*>(option);
                frame && frame->lineWidth > 0) {
                proxy()->drawPrimitive(PE_FrameLineEdit, option, painter, widget);
            }
            return;
        case PE_Frame:
        case PE_FrameGroupBox:
        case PE_FrameTabWidget:
        case PE_FrameMenu:
            rule(painter, option->rect, t.rule);
            return;
        case PE_PanelMenu:
            painter->fillRect(option->rect, t.raised);
            rule(painter, option->rect, t.faint);
            return;
        case PE_PanelTipLabel:
            painter->fillRect(option->rect, t.raised);
            rule(painter, option->rect, t.faint);
            return;
        case PE_IndicatorCheckBox:
        case PE_IndicatorItemViewItemCheck:
            indicator(painter, option, false);
            return;
        case PE_IndicatorRadioButton:
            indicator(painter, option, true);
            return;
        case PE_IndicatorArrowDown:
            arrow(painter, option->rect, true, option->palette.color(QPalette::ButtonText));
            return;
        case PE_IndicatorArrowUp:
            arrow(painter, option->rect, false, option->palette.color(QPalette::ButtonText));
            return;
        case PE_IndicatorToolBarSeparator:
        case PE_FrameStatusBarItem:
            return;
        default:
            QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void PlainStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    const Theme& t = theme();
    switch (element) {
        case CE_HeaderSection:
        case CE_HeaderEmptyArea: {
            painter->fillRect(option->rect, t.ground);
            painter->setPen(QPen(t.rule, 1));
            painter->drawLine(option->rect.bottomLeft(), option->rect.bottomRight());
            return;
        }
        case CE_Splitter: {
            painter->fillRect(option->rect, t.ground);
            painter->setPen(QPen(has(option, State_MouseOver) ? t.accent : t.rule, 1));
            const QPoint c = option->rect.center();
            if (has(option, State_Horizontal)) {
                painter->drawLine(c.x(), option->rect.top(), c.x(), option->rect.bottom());
            } else {
                painter->drawLine(option->rect.left(), c.y(), option->rect.right(), c.y());
            }
            return;
        }
        case CE_MenuBarEmptyArea:
        case CE_ToolBar:
            painter->fillRect(option->rect, t.ground);
            return;
        case CE_MenuBarItem: {
            const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
            if (!item) break;
            const bool chosen = has(option, State_Selected);
            painter->fillRect(option->rect, chosen ? t.rule : t.ground);
            proxy()->drawItemText(painter, item->rect, Qt::AlignCenter | Qt::TextShowMnemonic | Qt::TextSingleLine,
                                  item->palette, has(option, State_Enabled), item->text, QPalette::ButtonText);
            return;
        }
        case CE_MenuItem: {
            const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
            if (!item) break;
            if (isTitle(*item)) {
                drawTitle(*item, painter);
                return;
            }
            if (!has(option, State_Selected) || !has(option, State_Enabled)) break;
            // Menus ask for the icon that a pointed-at button has, which is ink on ink here, and do not ask for the
            // colour of chosen text everywhere.
            QStyleOptionMenuItem chosen(*item);
            for (const auto role : {QPalette::HighlightedText, QPalette::Text, QPalette::WindowText,
                                    QPalette::ButtonText, QPalette::Light, QPalette::BrightText}) {
                chosen.palette.setColor(role, t.ground);
            }
            const int side = proxy()->pixelMetric(PM_SmallIconSize, option, widget);
            const double ratio = widget ? widget->devicePixelRatioF() : 1.0;
            if (!item->icon.isNull()) chosen.icon = QIcon(item->icon.pixmap(QSize(side, side), ratio, QIcon::Selected));
            QProxyStyle::drawControl(element, &chosen, painter, widget);
            return;
        }
        default:
            break;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

QSize PlainStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& contents,
                                   const QWidget* widget) const {
    const QSize size = QProxyStyle::sizeFromContents(type, option, contents, widget);
    const auto* item = qstyleoption_cast<const QStyleOptionMenuItem*>(option);
    if (type != CT_MenuItem || !item || !isTitle(*item)) return size;
    return {size.width(), item->fontMetrics.height() + gridStep};
}

void PlainStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                                    const QWidget* widget) const {
    const Theme& t = theme();
    if (control == CC_ComboBox) {
        const auto* box = qstyleoption_cast<const QStyleOptionComboBox*>(option);
        painter->fillRect(option->rect, box && box->editable ? t.raised : t.ground);
        rule(painter, option->rect,
             has(option, State_HasFocus)  ? t.accent
             : has(option, State_Enabled) ? t.faint
                                          : t.rule);
        arrow(painter, proxy()->subControlRect(CC_ComboBox, option, SC_ComboBoxArrow, widget), true,
              has(option, State_Enabled) ? t.ink : t.faint);
        return;
    }
    if (control == CC_SpinBox) {
        const auto* box = qstyleoption_cast<const QStyleOptionSpinBox*>(option);
        painter->fillRect(option->rect, t.raised);
        rule(painter, option->rect, has(option, State_HasFocus) ? t.accent : t.rule);
        if (!box || box->buttonSymbols == QAbstractSpinBox::NoButtons) return;
        arrow(painter, proxy()->subControlRect(CC_SpinBox, option, SC_SpinBoxUp, widget), false, t.ink);
        arrow(painter, proxy()->subControlRect(CC_SpinBox, option, SC_SpinBoxDown, widget), true, t.ink);
        return;
    }
    if (control == CC_ScrollBar) {
        painter->fillRect(option->rect, t.ground);
        const QRect slider = proxy()->subControlRect(CC_ScrollBar, option, SC_ScrollBarSlider, widget);
        const bool live = has(option, State_MouseOver) || (option->activeSubControls & SC_ScrollBarSlider);
        painter->fillRect(slider.adjusted(3, 3, -3, -3), live ? t.faint : t.rule);
        return;
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

int PlainStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    switch (metric) {
        case PM_LayoutLeftMargin:
        case PM_LayoutRightMargin:
        case PM_LayoutTopMargin:
        case PM_LayoutBottomMargin:
        case PM_LayoutHorizontalSpacing:
        case PM_LayoutVerticalSpacing:
            return gridStep;
        case PM_SplitterWidth:
            return 5;
        case PM_ToolBarItemSpacing:
        case PM_ToolBarItemMargin:
            return gridStep / 2;
        case PM_ToolBarFrameWidth:
            return 0;
        case PM_ToolBarIconSize:
        case PM_SmallIconSize:
            return 20;
        case PM_ScrollBarExtent:
            return 12;
        case PM_ButtonShiftHorizontal:
        case PM_ButtonShiftVertical:
            return 0;
        default:
            return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

// Boxes that tell or ask bear the shapes of the findings.
QIcon PlainStyle::standardIcon(StandardPixmap kind, const QStyleOption* option, const QWidget* widget) const {
    switch (kind) {
        case SP_MessageBoxCritical:
            return findingIcon(plan::Severity::stop);
        case SP_MessageBoxWarning:
            return findingIcon(plan::Severity::caution);
        case SP_MessageBoxInformation:
        case SP_MessageBoxQuestion:
            return findingIcon(plan::Severity::note);
        default:
            return QProxyStyle::standardIcon(kind, option, widget);
    }
}

int PlainStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* returned) const {
    if (hint == SH_EtchDisabledText || hint == SH_DitherDisabledText) return 0;
    if (hint == SH_DialogButtonBox_ButtonsHaveIcons) return 0;
    if (hint == SH_ItemView_ShowDecorationSelected) return 1;
    return QProxyStyle::styleHint(hint, option, widget, returned);
}

QString plainStyleSheet(const Theme& t) {
    const QString rule = t.rule.name();
    return QStringLiteral(
               "QMainWindow, QDialog { background: %2; }"
               "QToolBar { border: none; border-bottom: 1px solid %1; spacing: 4px; padding: 4px 8px; }"
               "QStatusBar { border-top: 1px solid %1; }"
               "QStatusBar::item { border: none; }")
        .arg(rule, t.ground.name());
}

}  // namespace fayline::app
