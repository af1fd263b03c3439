// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>

#include "model/answer/turbidity.h"

namespace spoilbook {

/// How long a site was over the level of one condition, passed or not.
struct HoursAbove {
    std::string condition;
    std::optional<double> tier;
    double hours = 0;
};

/// A person's flag in place of the checks', and how many readings of the period it stands on.
struct OverruledReadings {
    Overrule said;
    std::size_t readings = 0;
};

/// One site's turbidity in one period, in the unit of its sensor. Raw readings, the checks' flags and what a
/// person put in their place are counted apart.
struct SiteMonth {
    std::string site, role, unit;
    std::size_t readings = 0;                     ///< rows, missing ones too
    std::size_t counted = 0;                      ///< flag 1 or 2 as reported: what the statistics are of
    std::optional<double> expected;               ///< readings that the interval would give; none: not known
    std::array<std::size_t, 10> flags{};          ///< as reported, by value
    std::array<std::size_t, 10> by_checks{};      ///< as the checks alone have it, by value
    std::optional<double> median, p95, greatest;  ///< of those counted; percentiles of type 7
    std::size_t expired = 0;                      ///< counted, of a calibration that had expired
    std::size_t not_recorded = 0;  ///< counted, of an instrument whose calibration nobody recorded
    std::vector<HoursAbove> over;  ///< a row a condition that watches the site
    std::vector<OverruledReadings> overruled;

    [[nodiscard]] std::optional<double> complete() const {
        return expected && *expected > 0 ? std::optional(static_cast<double>(counted) / *expected)
                                         : std::nullopt;
    }
};

/// Every site's period up to the as-at, in the order of the book. Expected readings are counted from the
/// site's first one on.
std::vector<SiteMonth> site_months(TurbidityWatch& watch, const Period& period, Instant as_at);

}  // namespace spoilbook
