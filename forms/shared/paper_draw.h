// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QPainter>
#include <QStyleOption>
#include <QStyleOptionButton>
#include <QStyleOptionProgressBar>

#include "forms/shared/button.h"
#include "forms/shared/palette.h"

namespace spoilbook::form {

/// Draws one part of one control: the strokes behind PaperStyle.
struct Paper {
    QPainter& painter;
    const Palette& tones;
    const QStyleOption& option;

    void button(ButtonKind kind) const;
    void button_label(const QStyleOptionButton& button, ButtonKind kind) const;
    void tool_button() const;
    void box() const;
    void ring() const;
    void check_box() const;
    void radio() const;
    void outline(Tone tone) const;
    void header() const;
    void groove() const;
    void progress(const QStyleOptionProgressBar& bar) const;
    void arrow(const QRect& place) const;
    void scroll_bar(const QRect& slider) const;

 private:
    [[nodiscard]] bool is(QStyle::StateFlag flag) const { return option.state & flag; }
    [[nodiscard]] QRectF inside() const;
    void rounded(const QRectF& place, const QColor& fill, const QColor& stroke, double width) const;
    void pencilled() const;
    void tick(const QRectF& place, const QColor& colour) const;
};

/// The controls whose outline draws its own focus ring.
bool has_own_ring(const QWidget* widget);

}  // namespace spoilbook::form
