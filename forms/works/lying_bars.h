// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "forms/works/drawing.h"

namespace spoilbook::form {

/// One bar, lying: its name before it, its value behind it.
struct LyingBar {
    QString name;
    double value = 0;  ///< ≥ 0
    QString value_text;
    bool hatched = false;  ///< set apart from the others by more than its place
};

/// Bars below each other, for names that are longer than a bar is wide.
class LyingBars : public Drawing {
    Q_OBJECT

 public:
    LyingBars(const QString& title, QWidget* parent);
    /// `axis`: "hours"; `empty_text` where there is no bar.
    void show_bars(std::vector<LyingBar> bars, const QString& axis, const QString& empty_text);
    [[nodiscard]] const std::vector<LyingBar>& bars() const { return bars_; }

 protected:
    void draw(QPainter& painter, const QRectF& place, const Palette& tones) const override;

 private:
    std::vector<LyingBar> bars_;
    QString axis_;
    QString empty_text_;
};

}  // namespace spoilbook::form
