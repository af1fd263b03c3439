// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/figure_text.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

namespace spoilbook::print {

namespace {

std::string grouped(std::string digits) {
    for (int i = static_cast<int>(digits.size()) - 3; i > 0; i -= 3)
        digits.insert(static_cast<std::size_t>(i), " ");
    return digits;
}

std::string with_sign(bool negative, const std::string& text) {
    return negative ? "−" + text : text;
}

/// Steps of the last printed digit: whole units, or tenths of a percent.
double step_of(const LimitState& state) {
    return state.quantity.share_of_total ? 0.001 : 1;
}

std::string steps_shown(const LimitState& state, double steps) {
    const auto whole = static_cast<std::int64_t>(std::llround(std::fabs(steps)));
    const bool negative = steps < 0 && whole != 0;
    if (!state.quantity.share_of_total) return with_sign(negative, grouped(std::to_string(whole)));
    return with_sign(negative, fmt::format("{}.{}", whole / 10, whole % 10));
}

double used_steps(const LimitState& state) {
    return std::ceil(state.used / step_of(state) - 1e-6);
}

}  // namespace

std::string whole_shown(double value) {
    const auto whole = std::llround(std::fabs(value));
    return with_sign(value < 0 && whole != 0, grouped(std::to_string(whole)));
}

std::string tenths_shown(Tenths value) {
    const auto tenths = std::llabs(value.tenths);
    return with_sign(value.tenths < 0,
                     grouped(std::to_string(tenths / 10)) + "." + std::to_string(tenths % 10));
}

std::string month_shown(const std::string& period_name) {
    static constexpr std::array names{"January", "February", "March",     "April",   "May",      "June",
                                      "July",    "August",   "September", "October", "November", "December"};
    const auto month = static_cast<std::size_t>(std::stoi(period_name.substr(5)));
    return std::string(names.at(month - 1)) + " " + period_name.substr(0, 4);
}

std::string clock_shown(const std::optional<Instant>& at, const Zone& zone) {
    if (!at) return "";
    const auto wall = zone.wall(*at);
    return fmt::format("{:02}-{:02} {:02}:{:02}", wall.day.month, wall.day.day, wall.hour, wall.minute);
}

std::string unit_shown(const Quantity& quantity) {
    if (quantity.share_of_total) return "%";
    switch (quantity.measure) {
        case LimitMeasure::in_situ_m3:
            return "m³ in situ";
        case LimitMeasure::hopper_m3:
            return "m³ hopper";
        case LimitMeasure::wet_t:
            return "t wet";
        case LimitMeasure::dry_t:
            return "t dry";
        default:
            return measure_text(quantity.measure);
    }
}

std::string used_shown(const LimitState& state) {
    return steps_shown(state, used_steps(state));
}

std::string limit_shown(const LimitState& state) {
    return state.limit ? steps_shown(state, *state.limit / step_of(state)) : "none yet";
}

std::string headroom_shown(const LimitState& state) {
    return state.limit ? steps_shown(state, std::round(*state.limit / step_of(state)) - used_steps(state))
                       : "";
}

std::string limit_word(const LimitState& state) {
    switch (limit_mark(state)) {
        case Mark::met:
            return "met";
        case Mark::near:
            return "near";
        case Mark::passed:
            return "passed";
        case Mark::unknown:
            return "cannot tell";
        case Mark::none:
            break;
    }
    return "no limit yet";
}

Mark limit_mark(const LimitState& state) {
    if (!state.limit) return Mark::none;
    if (!state.quantity.at_most) return state.used >= *state.limit ? Mark::met : Mark::near;
    if (exceeds(state.used, *state.limit) || state.first_over) return Mark::passed;
    if (state.unknown > 0) return Mark::unknown;
    const double warn = state.quantity.warn_at.empty() ? 0.95 : state.quantity.warn_at.back();
    return state.used > warn * *state.limit ? Mark::near : Mark::met;
}

}  // namespace spoilbook::print
