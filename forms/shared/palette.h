// SPDX-License-Identifier: GPL-3.0-or-later
// Every colour of a screen by the part it plays. Nothing in forms/ names a colour otherwise.
#pragma once

#include <QColor>
#include <QPalette>
#include <array>
#include <vector>

namespace spoilbook::form {

/// ground: the desk under the sheets; surface: a sheet; raised: a head or a card on it; sunk: a box to write
/// in; line: rules that only divide (no contrast asked); edge: outlines of controls (≥ 3 : 1); quiet: labels;
/// selection: behind chosen rows. States: a fill for shapes (≥ 3 : 1) and a tint behind text. Series: chart
/// lines.
enum class Tone {
    ground,
    surface,
    raised,
    sunk,
    line,
    edge,
    text,
    quiet,
    accent,
    on_accent,
    selection,
    ok,
    attention,
    over,
    unknown,
    ok_tint,
    attention_tint,
    over_tint,
    unknown_tint,
    series_1,
    series_2,
    series_3,
    series_4,
    series_5,
    scrim,
    count
};

enum class Light { day, night };

/// One colour a tone. Blue, amber and vermilion carry the states: they stay apart for colour-blind eyes
/// (checked for three deficiencies in tests/form). The night palette is dim and low in blue.
class Palette {
 public:
    static Palette of(Light light);

    [[nodiscard]] const QColor& operator[](Tone tone) const {
        return colours_[static_cast<std::size_t>(tone)];
    }
    [[nodiscard]] Light light() const { return light_; }
    /// The same colours as Qt's own widgets ask for them.
    [[nodiscard]] QPalette qt() const;

 private:
    Light light_ = Light::day;
    std::array<QColor, static_cast<std::size_t>(Tone::count)> colours_;
};

/// Contrast ratio of two opaque colours, 1 to 21. Source: WCAG 2.2, "contrast ratio" and "relative
/// luminance".
double contrast(const QColor& a, const QColor& b);

/// A tone drawn on another, with the least contrast that WCAG 2.2 asks for it: 4.5 for text (1.4.3), 3 for
/// shapes and outlines (1.4.11).
struct TonePair {
    Tone front;
    Tone back;
    double least;
};

/// Every pair that the widgets of forms/ draw.
std::vector<TonePair> tone_pairs();

}  // namespace spoilbook::form
