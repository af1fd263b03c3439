// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/progress/forecast.h"
#include "model/progress/pace.h"
#include "model/progress/shift_pattern.h"
#include "model/progress/tow_speed.h"

namespace spoilbook {

/// What the log shows of how the works go.
struct WorksLogged {
    Pace pace;
    std::optional<ShiftPattern> pattern;  ///< nothing where no shift was opened in those weeks
    std::optional<TowSpeed> tow;          ///< nothing where no trip tells way and time
    /// What the number of barges or tugs, or a longer haul, cannot be supposed without; blank where it can.
    [[nodiscard]] std::string why_no_pace() const;
};

/// What is supposed of the works in their own terms; what is left alone stays as logged.
struct WorksSupposed {
    std::optional<int> barges, tugs;            ///< 1 or more
    std::optional<double> hours_a_day;          ///< shift hours of a day with a shift, over 0 to 24
    std::optional<double> days_a_week;          ///< days with a shift, over 0 to 7
    std::optional<double> round_trip_more_min;  ///< negative: shorter
    std::optional<double> haul_more_km;         ///< one way, at the logged speed; negative: a nearer ground
    Supposed others;                            ///< its factors come on top of what the works come to

    bool operator==(const WorksSupposed&) const = default;
};

/// The works as they would be.
struct WorksToBe {
    Pace pace;
    std::optional<ShiftPattern> pattern;
    double round_trip_more_min = 0;  ///< of haul and round trip together
    Supposed supposed;               ///< what the forecast is asked with
};

/// As at an instant: pattern and forecast of the newest `weeks` weeks of whole days, pace and speed of the
/// newest loads and trips.
WorksLogged works_logged(const Ledger& ledger, Instant as_at, int weeks);

/// What the supposed works come to. The factor of rate is the ratio of the least loads an hour (pace.h) as
/// they would be to those as logged, and 1 where neither barges, tugs nor haul are named: what else delays
/// the loads, and what a load holds, stay as logged. The factor of hours is that of shift hours a week. Every
/// reason is given why the log cannot tell ("not-in-log"), or a figure cannot be ("out-of-range").
/// Common practice, no source.
Checked<WorksToBe> suppose(const WorksLogged& logged, const WorksSupposed& supposed);

/// The works and the forecast as logged, and what both would be.
struct WorksForecast {
    WorksLogged logged;
    WorksToBe to_be;
    Forecast as_logged;
    Forecast as_supposed;
};

/// The one way to ask: `asked.supposed` is not read. With nothing supposed both forecasts are one. Refused as
/// suppose() is, and where a day of the season is not one of the days to come.
Checked<WorksForecast> what_if(const Ledger& ledger, ForecastAsked asked, const WorksSupposed& supposed);

}  // namespace spoilbook
