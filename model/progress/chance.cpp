// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/chance.h"

#include <cmath>
#include <numbers>

namespace spoilbook {

std::uint64_t Chance::next() {
    state_ += 0x9e3779b97f4a7c15;
    std::uint64_t z = state_;
    z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9;
    z = (z ^ (z >> 27)) * 0x94d049bb133111eb;
    return z ^ (z >> 31);
}

std::size_t Chance::below(std::size_t count) {
    return static_cast<std::size_t>(uniform() * static_cast<double>(count));
}

double Chance::uniform() {
    return (static_cast<double>(next() >> 11) + 0.5) * 0x1p-53;
}

double Chance::normal() {
    const double u = uniform();
    const double v = uniform();
    return std::sqrt(-2 * std::log(u)) * std::cos(2 * std::numbers::pi * v);
}

}  // namespace spoilbook
