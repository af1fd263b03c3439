// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/consent/limit.h"

namespace spoilbook {

/// What is supposed of the days to come; left alone: they go on as the last weeks did. What the works'
/// own figures come to in these factors: works_supposed.h.
struct Supposed {
    double rate_factor = 1;          ///< in-situ m³ a filling hour, times this
    double hours_factor = 1;         ///< filling hours a day, times this
    double over_dredge_share = 0;    ///< o: of what is dredged, dug below the design, 0 ≤ o < 1
    double over_dredge_share_u = 0;  ///< its standard uncertainty
    /// First day to come on which work is allowed again, or on which it no longer is, in place of those of
    /// the consent (move_season of closed_days.h).
    std::optional<Day> season_opens, season_closes;

    bool operator==(const Supposed&) const = default;
};

struct ForecastAsked {
    Instant as_at;
    Supposed supposed;
    int draws = 1000;
    std::uint64_t seed = 1;
    int days = 730;  ///< how far ahead
    int weeks = 13;  ///< of the log, the newest, from which weeks are drawn
};

/// Days on which something comes: blank where that share of the draws does not come to it.
struct Dates {
    std::optional<Day> p10, p50, p90;
    double reached = 0;  ///< share of the draws that come to it at all
};

struct LimitForecast {
    LimitState state;
    Dates dates;
    std::optional<double> p_before_target;  ///< nothing where the limit cannot be forecast
};

/// One of the things that may come first: the target, a limit, the season's end.
struct ComesFirst {
    enum class What { target, limit, season, nothing };
    What what = What::target;
    std::size_t limit = 0;  ///< place in Forecast::limits
    double p = 0;
};

/// Left above the plan at the end of one day to come.
struct FanDay {
    Day date;
    double p10 = 0, p50 = 0, p90 = 0;
};

struct Forecast {
    std::string why_none;  ///< why there is none, in words; blank where there is one
    int weeks = 0;         ///< drawn from
    double left_m3 = 0;    ///< to be carried yet, in situ, as at
    double left_m3_u = 0;
    Dates target;
    std::vector<LimitForecast> limits;
    std::optional<Day> season_closes;  ///< first day to come on which the consent stops all work
    std::optional<double> p_season_before_target;
    std::vector<ComesFirst> first;  ///< most probable first
    std::vector<FanDay> fan;        ///< until the target is reached in nine draws of ten
};

/// When the target is reached, and each limit met. Left to carry = planned / (1 − o) − dredged. Each draw
/// takes the volume left, o and the loads' common error from their uncertainty, and strings whole weeks of
/// the log together, each beginning on the weekday it falls on (block bootstrap: Künsch 1989); a day on which
/// the consent forbids all work stands still. A limit takes what counted under it on the same days of the
/// log. The day of the as-at counts as done. Limits do not stop the work: their dates say where they would.
/// Nothing where fewer than four weeks are logged or no volume is planned.
Forecast forecast(const Ledger& ledger, const ForecastAsked& asked);

}  // namespace spoilbook
