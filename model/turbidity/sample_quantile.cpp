// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/sample_quantile.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace spoilbook {

namespace {

constexpr double fuzz = 4 * std::numeric_limits<double>::epsilon();

/// a and b of the position a + p (n + 1 − a − b) of types 4 to 9.
struct Ends {
    double a = 1, b = 1;
};

Ends ends_of(int type) {
    switch (type) {
        case 4:
            return {0, 1};
        case 5:
            return {0.5, 0.5};
        case 6:
            return {0, 0};
        case 8:
            return {1.0 / 3, 1.0 / 3};
        case 9:
            return {3.0 / 8, 3.0 / 8};
        default:
            return {1, 1};
    }
}

/// Position j + share among the numbers from 1.
struct Position {
    double j = 0, share = 0;
};

Position stepped(double n, double p, int type) {
    const double at = type == 3 ? n * p - 0.5 : n * p;
    const double j = std::floor(at + fuzz);
    const bool above = at > j + fuzz;
    if (type == 1) return {j, above ? 1.0 : 0.0};
    if (type == 2) return {j, above ? 1.0 : 0.5};
    const bool even = std::fmod(j, 2) == 0;
    return {j, !above && even ? 0.0 : 1.0};
}

Position between(double n, double p, int type) {
    const Ends ends = ends_of(type);
    const double at = ends.a + p * (n + 1 - ends.a - ends.b);
    const double j = std::floor(at + fuzz);
    const double share = at - j;
    return {j, std::fabs(share) < fuzz ? 0.0 : share};
}

double between_two(double low, double high, double share) {
    return (1 - share) * low + share * high;
}

}  // namespace

QuantilePlace quantile_place(std::size_t n, double p, int type) {
    const auto count = static_cast<double>(n);
    const Position at = type <= 3 ? stepped(count, p, type) : between(count, p, type);
    const auto clamped = [&](double j) { return static_cast<std::size_t>(std::clamp(j, 1.0, count)) - 1; };
    return {clamped(at.j), clamped(at.j + 1), at.share};
}

double sample_quantile(const SortedWindow& window, double p, int type) {
    const auto place = quantile_place(window.size(), p, type);
    const double low = window.at(place.low);
    if (place.share == 0 || place.low == place.high) return low;
    const double high = window.at(place.high);
    return between_two(low, high, place.share);
}

double sample_quantile(std::vector<double> numbers, double p, int type) {
    const auto place = quantile_place(numbers.size(), p, type);
    const auto nth = [&](std::size_t k) {
        const auto at = numbers.begin() + static_cast<std::ptrdiff_t>(k);
        std::nth_element(numbers.begin(), at, numbers.end());
        return *at;
    };
    const double low = nth(place.low);
    return place.share == 0 ? low : between_two(low, nth(place.high), place.share);
}

}  // namespace spoilbook
