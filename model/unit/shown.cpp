// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/unit/shown.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace spoilbook {

namespace {

constexpr double slack = 1e-6;

}  // namespace

double rounded_up(double value, int decimals) {
    const double step = std::pow(10, decimals);
    return std::ceil(value * step - slack) / step + 0.0;
}

double rounded_down(double value, int decimals) {
    const double step = std::pow(10, decimals);
    return std::floor(value * step + slack) / step + 0.0;
}

std::string with_u(double value, double u, int decimals) {
    return fmt::format("{:.{}f} ± {:.{}f}", value, decimals, rounded_up(u, decimals), decimals);
}

ShownChance shown_chance(double p) {
    if (p > 0 && p < 0.001) return {'<', 0.1, 1};
    if (p < 1 && p > 0.999) return {'>', 99.9, 1};
    return {0, p * 100, p == 0 || p == 1 ? 0 : 1};
}

std::string chance_text(double p) {
    const auto shown = shown_chance(p);
    const std::string number = fmt::format("{:.{}f}", shown.percent, shown.decimals);
    return shown.bound == 0 ? number : std::string(1, shown.bound) + " " + number;
}

std::string in_words(std::string_view code) {
    std::string words(code);
    std::replace(words.begin(), words.end(), '_', ' ');
    return words;
}

}  // namespace spoilbook
