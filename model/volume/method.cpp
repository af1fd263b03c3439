// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/volume/method.h"

#include <array>
#include <cmath>

namespace spoilbook {
namespace {

constexpr std::array<std::string_view, 4> method_names{"ullage", "draughts", "tally", "stated"};
constexpr std::array<std::string_view, 4> measure_names{"hopper_m3", "in_situ_m3", "wet_t", "dry_t"};

}  // namespace

std::string_view method_name(Method method) {
    return method_names.at(static_cast<std::size_t>(method));
}

std::optional<Method> method_named(std::string_view name) {
    for (std::size_t i = 0; i < method_names.size(); ++i) {
        if (method_names.at(i) == name) return static_cast<Method>(i);
    }
    return std::nullopt;
}

std::string_view measure_name(Measure measure) {
    return measure_names.at(static_cast<std::size_t>(measure));
}

const std::optional<Estimate>& Amounts::of(Measure measure) const {
    switch (measure) {
        case Measure::hopper_m3:
            return hopper_m3;
        case Measure::in_situ_m3:
            return in_situ_m3;
        case Measure::wet_t:
            return wet_t;
        case Measure::dry_t:
            break;
    }
    return dry_t;
}

Estimate together(const Estimate& a, const Estimate& b) {
    Estimate sum = a + b;
    sum.u_random = a.u_random + b.u_random;
    return sum;
}

}  // namespace spoilbook
