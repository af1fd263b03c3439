// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/print/figure_text.h"

#include <fmt/format.h>

#include <array>
#include <cmath>

#include "model/answer/standing.h"
#include "model/consent/quantity_text.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

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

/// A figure of a limit in its unit, to the digits that it is shown with.
std::string figure_shown(const LimitState& state, double figure) {
    const int decimals = shown_decimals(state.quantity);
    const auto steps = std::llround(std::fabs(figure) * std::pow(10, decimals));
    const bool negative = figure < 0 && steps != 0;
    if (decimals == 0) return with_sign(negative, grouped(std::to_string(steps)));
    return with_sign(negative, grouped(std::to_string(steps / 10)) + "." + std::to_string(steps % 10));
}

/// What was over before the period that is printed is not this period's.
LimitState of_the_period(LimitState state, bool exceeded) {
    if (!exceeded) state.first_over.reset();
    return state;
}

double used_rounded(const LimitState& state) {
    return rounded_up(state.used * shown_scale(state.quantity), shown_decimals(state.quantity));
}

}  // namespace

std::string whole_shown(double value) {
    const auto whole = std::llround(std::fabs(value));
    return with_sign(value < 0 && whole != 0, grouped(std::to_string(whole)));
}

std::string u_shown(double u) {
    return whole_shown(rounded_up(u, 0));
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

std::string due_clock_shown(const std::optional<Instant>& due, const Zone& zone) {
    const auto ended = due ? day_ending(*due, zone) : std::nullopt;
    return ended ? fmt::format("{:02}-{:02} 24:00", ended->month, ended->day) : clock_shown(due, zone);
}

std::string used_shown(const LimitState& state) {
    return figure_shown(state, used_rounded(state));
}

std::string used_u_shown(const LimitState& state) {
    return figure_shown(
        state, rounded_up(state.used_u * shown_scale(state.quantity), shown_decimals(state.quantity)));
}

std::string limit_shown(const LimitState& state) {
    return state.limit ? figure_shown(state, *state.limit * shown_scale(state.quantity)) : "none yet";
}

std::string headroom_shown(const LimitState& state) {
    if (!state.limit) return "";
    const double scale = shown_scale(state.quantity);
    const double step = std::pow(10, shown_decimals(state.quantity));
    const double limit = std::round(*state.limit * scale * step) / step;
    return figure_shown(state, limit - used_rounded(state));
}

std::string limit_word(const LimitState& state, bool exceeded) {
    return standing_text(of_the_period(state, exceeded));
}

Mark limit_mark(const LimitState& state, bool exceeded) {
    switch (standing_of(of_the_period(state, exceeded))) {
        case LimitStanding::no_limit:
            return Mark::none;
        case LimitStanding::within:
            return Mark::met;
        case LimitStanding::warned:
        case LimitStanding::below:
            return Mark::near;
        case LimitStanding::was_over:
        case LimitStanding::over:
            return Mark::passed;
        case LimitStanding::cannot_tell:
            break;
    }
    return Mark::unknown;
}

}  // namespace spoilbook::print
