// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/paper_style.h"

#include <QStyleOption>
#include <QStyleOptionComboBox>
#include <QWidget>
#include <algorithm>

#include "forms/shared/button.h"
#include "forms/shared/paper_draw.h"
#include "forms/shared/type_scale.h"

namespace spoilbook::form {

PaperStyle::PaperStyle(Light light) : QProxyStyle(QStringLiteral("Fusion")), tones_(Palette::of(light)) {}

PaperStyle* PaperStyle::dress(QApplication& app, Light light) {
    auto* style = new PaperStyle(light);
    QApplication::setStyle(style);
    QApplication::setFont(type_font(Step::body));
    QApplication::setPalette(style->tones().qt());
    app.setProperty("spoilbook_style", QVariant::fromValue<QObject*>(style));
    return style;
}

void PaperStyle::set_light(Light light) {
    if (light == tones_.light()) return;
    tones_ = Palette::of(light);
    QApplication::setPalette(tones_.qt());
    emit light_changed(light);
}

void PaperStyle::drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                               const QWidget* widget) const {
    const Paper paper{*painter, tones_, *option};
    switch (element) {
        case PE_PanelButtonCommand:
            return paper.button(kind_of(widget));
        case PE_PanelButtonTool:
            return paper.tool_button();
        case PE_PanelLineEdit:
        case PE_FrameLineEdit:
            if (widget && widget->property("bare").toBool()) return;
            return paper.box();
        case PE_FrameFocusRect:
            // Boxes and buttons draw their ring with their outline; the rest get it here.
            if (!has_own_ring(widget)) paper.ring();
            return;
        case PE_IndicatorCheckBox:
            return paper.check_box();
        case PE_IndicatorRadioButton:
            return paper.radio();
        case PE_Frame:
        case PE_FrameWindow:
        case PE_FrameMenu:
            return paper.outline(Tone::line);
        case PE_PanelMenu:
        case PE_PanelTipLabel:
            painter->fillRect(option->rect, tones_[Tone::raised]);
            return paper.outline(Tone::edge);
        default:
            QProxyStyle::drawPrimitive(element, option, painter, widget);
    }
}

void PaperStyle::drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                             const QWidget* widget) const {
    const Paper paper{*painter, tones_, *option};
    switch (element) {
        case CE_HeaderSection:
        case CE_HeaderEmptyArea:
            return paper.header();
        case CE_ProgressBarGroove:
            return paper.groove();
        case CE_ProgressBarContents:
            if (const auto* bar = qstyleoption_cast<const QStyleOptionProgressBar*>(option)) {
                return paper.progress(*bar);
            }
            break;
        case CE_PushButtonLabel:
            if (const auto* button = qstyleoption_cast<const QStyleOptionButton*>(option)) {
                return paper.button_label(*button, kind_of(widget));
            }
            break;
        default:
            break;
    }
    QProxyStyle::drawControl(element, option, painter, widget);
}

void PaperStyle::drawComplexControl(ComplexControl control, const QStyleOptionComplex* option,
                                    QPainter* painter, const QWidget* widget) const {
    const Paper paper{*painter, tones_, *option};
    if (control == CC_ComboBox) {
        paper.box();
        return paper.arrow(subControlRect(control, option, SC_ComboBoxArrow, widget));
    }
    if (control == CC_ScrollBar) {
        return paper.scroll_bar(subControlRect(control, option, SC_ScrollBarSlider, widget));
    }
    QProxyStyle::drawComplexControl(control, option, painter, widget);
}

int PaperStyle::pixelMetric(PixelMetric metric, const QStyleOption* option, const QWidget* widget) const {
    switch (metric) {
        case PM_LayoutLeftMargin:
        case PM_LayoutTopMargin:
        case PM_LayoutRightMargin:
        case PM_LayoutBottomMargin:
            return 2 * grid;
        case PM_LayoutHorizontalSpacing:
        case PM_LayoutVerticalSpacing:
            return grid;
        case PM_ButtonShiftHorizontal:
        case PM_ButtonShiftVertical:
            return 0;
        case PM_ButtonIconSize:
        case PM_SmallIconSize:
        case PM_ListViewIconSize:
            return 20;
        case PM_ScrollBarExtent:
            return 12;
        case PM_IndicatorWidth:
        case PM_IndicatorHeight:
        case PM_ExclusiveIndicatorWidth:
        case PM_ExclusiveIndicatorHeight:
            return 22;
        case PM_HeaderMargin:
            return grid;
        case PM_FocusFrameHMargin:
            return half_grid;
        default:
            return QProxyStyle::pixelMetric(metric, option, widget);
    }
}

int PaperStyle::styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                          QStyleHintReturn* answer) const {
    switch (hint) {
        case SH_EtchDisabledText:
        case SH_DitherDisabledText:
        case SH_ComboBox_Popup:
            return 0;
        case SH_Table_GridLineColor:
            return static_cast<int>(tones_[Tone::line].rgb());
        default:
            return QProxyStyle::styleHint(hint, option, widget, answer);
    }
}

QSize PaperStyle::sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                   const QWidget* widget) const {
    QSize needed = QProxyStyle::sizeFromContents(type, option, size, widget);
    // Outlines stand two units inside the rectangle, which leaves room for the focus ring.
    constexpr int control_height = 40;
    switch (type) {
        case CT_PushButton:
            needed.setHeight(std::max(needed.height(), control_height));
            if (kind_of(widget) != ButtonKind::tool) needed.rwidth() += 3 * grid;
            if (kind_of(widget) == ButtonKind::press)
                needed.setHeight(std::max(needed.height(), finger + grid));
            return needed;
        case CT_LineEdit:
        case CT_ComboBox:
            needed.setHeight(std::max(needed.height(), control_height));
            return needed;
        case CT_ToolButton:
            return needed.expandedTo(QSize(control_height, control_height));
        case CT_HeaderSection:
            needed.setHeight(std::max(needed.height() + half_grid, 4 * grid));
            return needed;
        case CT_ItemViewItem:
            needed.setHeight(std::max(needed.height(), 4 * grid));
            return needed;
        default:
            return needed;
    }
}

QRect PaperStyle::subControlRect(ComplexControl control, const QStyleOptionComplex* option, SubControl part,
                                 const QWidget* widget) const {
    if (control == CC_ComboBox) {
        const QRect& r = option->rect;
        const int arrow = 4 * grid;
        if (part == SC_ComboBoxArrow) return {r.right() - arrow, r.top(), arrow, r.height()};
        if (part == SC_ComboBoxEditField) return r.adjusted(grid + 2, 4, -arrow - 2, -4);
    }
    if (control == CC_ScrollBar && (part == SC_ScrollBarAddLine || part == SC_ScrollBarSubLine)) return {};
    if (control == CC_ScrollBar && part == SC_ScrollBarGroove) return option->rect;
    return QProxyStyle::subControlRect(control, option, part, widget);
}

const Palette& palette_in_use() {
    static const Palette day = Palette::of(Light::day);
    const auto* style = qobject_cast<const PaperStyle*>(QApplication::style());
    return style ? style->tones() : day;
}

}  // namespace spoilbook::form
