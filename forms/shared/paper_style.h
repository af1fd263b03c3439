// SPDX-License-Identifier: GPL-3.0-or-later
// How every standard control looks: boxes and rules of a paper form, from the tones of one palette.
#pragma once

#include <QApplication>
#include <QProxyStyle>

#include "forms/shared/palette.h"

namespace spoilbook::form {

class PaperStyle : public QProxyStyle {
    Q_OBJECT

 public:
    explicit PaperStyle(Light light);

    /// Makes it the style, palette and font of the whole program. The application owns what it returns.
    static PaperStyle* dress(QApplication& app, Light light);

    [[nodiscard]] const Palette& tones() const { return tones_; }
    /// Repaints everything in the other palette.
    void set_light(Light light);

    void drawPrimitive(PrimitiveElement element, const QStyleOption* option, QPainter* painter,
                       const QWidget* widget) const override;
    void drawControl(ControlElement element, const QStyleOption* option, QPainter* painter,
                     const QWidget* widget) const override;
    void drawComplexControl(ComplexControl control, const QStyleOptionComplex* option, QPainter* painter,
                            const QWidget* widget) const override;
    [[nodiscard]] int pixelMetric(PixelMetric metric, const QStyleOption* option,
                                  const QWidget* widget) const override;
    [[nodiscard]] int styleHint(StyleHint hint, const QStyleOption* option, const QWidget* widget,
                                QStyleHintReturn* answer) const override;
    [[nodiscard]] QSize sizeFromContents(ContentsType type, const QStyleOption* option, const QSize& size,
                                         const QWidget* widget) const override;
    [[nodiscard]] QRect subControlRect(ComplexControl control, const QStyleOptionComplex* option,
                                       SubControl part, const QWidget* widget) const override;

 signals:
    void light_changed(Light light);

 private:
    Palette tones_;
};

/// The tones that the program is drawn in; the day palette where no PaperStyle was put on.
const Palette& palette_in_use();

}  // namespace spoilbook::form
