// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/palette.h"

#include <algorithm>
#include <cmath>

namespace spoilbook::form {
namespace {

struct Named {
    Tone tone;
    QRgb day;
    QRgb night;
};

// Day: blue-grey ledger paper under a white sheet, ink text. Night: warm dark, text of a dimmed lamp.
constexpr Named named[] = {
    {Tone::ground, 0xffcfd8dd, 0xff0d0a07},         {Tone::surface, 0xfffafbf9, 0xff16110c},
    {Tone::raised, 0xffe9eef0, 0xff231b13},         {Tone::sunk, 0xffffffff, 0xff0f0b08},
    {Tone::line, 0xffbcc7cd, 0xff3d3023},           {Tone::edge, 0xff65757f, 0xff8a7355},
    {Tone::text, 0xff13202a, 0xffd9be97},           {Tone::quiet, 0xff46565f, 0xffac9070},
    {Tone::accent, 0xff00566b, 0xffa8b07c},         {Tone::on_accent, 0xffffffff, 0xff16110c},
    {Tone::selection, 0xffbfe0e8, 0xff3c3a22},      {Tone::ok, 0xff0a6eb4, 0xff7f9ba0},
    {Tone::attention, 0xffb87800, 0xffd9a02e},      {Tone::over, 0xffa83208, 0xffe0683a},
    {Tone::unknown, 0xff66737c, 0xff9a8a78},        {Tone::ok_tint, 0xffdcebf7, 0xff1c2323},
    {Tone::attention_tint, 0xfffbebcb, 0xff33240b}, {Tone::over_tint, 0xfffbdfd3, 0xff3a1a0e},
    {Tone::unknown_tint, 0xffe4e8ea, 0xff262019},   {Tone::series_1, 0xff00566b, 0xffc9b98f},
    {Tone::series_2, 0xffb87800, 0xffd9a02e},       {Tone::series_3, 0xff7a4fa3, 0xffb08aa0},
    {Tone::series_4, 0xff0a6eb4, 0xff7f9ba0},       {Tone::series_5, 0xff66737c, 0xff9a8a78},
    {Tone::scrim, 0x7313202a, 0x99000000},
};
static_assert(std::size(named) == static_cast<std::size_t>(Tone::count));

// sRGB to linear light; WCAG 2.2, "relative luminance".
double linear(double part) {
    return part <= 0.04045 ? part / 12.92 : std::pow((part + 0.055) / 1.055, 2.4);
}

double luminance(const QColor& c) {
    return 0.2126 * linear(c.redF()) + 0.7152 * linear(c.greenF()) + 0.0722 * linear(c.blueF());
}

}  // namespace

Palette Palette::of(Light light) {
    Palette palette;
    palette.light_ = light;
    for (const Named& n : named) {
        palette.colours_[static_cast<std::size_t>(n.tone)] =
            QColor::fromRgba(light == Light::day ? n.day : n.night);
    }
    return palette;
}

QPalette Palette::qt() const {
    const Palette& p = *this;
    QPalette q;
    q.setColor(QPalette::Window, p[Tone::surface]);
    q.setColor(QPalette::WindowText, p[Tone::text]);
    q.setColor(QPalette::Base, p[Tone::sunk]);
    q.setColor(QPalette::AlternateBase, p[Tone::raised]);
    q.setColor(QPalette::Text, p[Tone::text]);
    q.setColor(QPalette::PlaceholderText, p[Tone::quiet]);
    q.setColor(QPalette::Button, p[Tone::raised]);
    q.setColor(QPalette::ButtonText, p[Tone::text]);
    q.setColor(QPalette::BrightText, p[Tone::on_accent]);
    q.setColor(QPalette::Highlight, p[Tone::selection]);
    q.setColor(QPalette::HighlightedText, p[Tone::text]);
    q.setColor(QPalette::ToolTipBase, p[Tone::raised]);
    q.setColor(QPalette::ToolTipText, p[Tone::text]);
    q.setColor(QPalette::Link, p[Tone::accent]);
    q.setColor(QPalette::LinkVisited, p[Tone::accent]);
    q.setColor(QPalette::Light, p[Tone::surface]);
    q.setColor(QPalette::Midlight, p[Tone::raised]);
    q.setColor(QPalette::Mid, p[Tone::line]);
    q.setColor(QPalette::Dark, p[Tone::edge]);
    q.setColor(QPalette::Shadow, p[Tone::edge]);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText}) {
        q.setColor(QPalette::Disabled, role, p[Tone::quiet]);
    }
    return q;
}

double contrast(const QColor& a, const QColor& b) {
    const double one = luminance(a) + 0.05;
    const double other = luminance(b) + 0.05;
    return std::max(one, other) / std::min(one, other);
}

std::vector<TonePair> tone_pairs() {
    constexpr double text_least = 4.5;
    constexpr double shape_least = 3.0;
    std::vector<TonePair> pairs;
    for (const Tone back : {Tone::ground, Tone::surface, Tone::raised, Tone::sunk, Tone::ok_tint,
                            Tone::attention_tint, Tone::over_tint, Tone::unknown_tint}) {
        for (const Tone front : {Tone::text, Tone::quiet, Tone::accent}) {
            pairs.push_back({front, back, text_least});
        }
        pairs.push_back({Tone::edge, back, shape_least});
    }
    for (const Tone back : {Tone::surface, Tone::raised, Tone::sunk}) {
        for (const Tone front : {Tone::ok, Tone::attention, Tone::over, Tone::unknown, Tone::series_1,
                                 Tone::series_2, Tone::series_3, Tone::series_4, Tone::series_5}) {
            pairs.push_back({front, back, shape_least});
        }
    }
    pairs.push_back({Tone::ok, Tone::ok_tint, shape_least});
    pairs.push_back({Tone::attention, Tone::attention_tint, shape_least});
    pairs.push_back({Tone::over, Tone::over_tint, shape_least});
    pairs.push_back({Tone::unknown, Tone::unknown_tint, shape_least});
    pairs.push_back({Tone::text, Tone::selection, text_least});
    pairs.push_back({Tone::on_accent, Tone::accent, text_least});
    return pairs;
}

}  // namespace spoilbook::form
