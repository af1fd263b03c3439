// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"
#include "model/progress/delays.h"

namespace spoilbook {

/// What was dredged in some shifts, held against their hours.
struct ProductivityRow {
    HoursRow time;
    std::vector<const LedgerLine*> loads;  ///< those whose loading ended in these shifts
    Estimate in_situ_m3;                   ///< of the loads that can be valued
    std::size_t unknown = 0;               ///< loads that no method can value: not zero
    std::size_t opened = 0;                ///< shifts that began here

    /// In-situ m³ an operating hour (digging), and a shift; nothing where there is none to divide by.
    [[nodiscard]] std::optional<Estimate> per_operating_hour() const;
    [[nodiscard]] std::optional<Estimate> per_shift() const;
    /// Operating hours / shift hours, 0 to 1. Source: time efficiency, USACE EI 01D010 (1997) chapter 15.
    [[nodiscard]] double efficiency() const { return time.share(time.digging_h); }
};

struct Productivity {
    std::vector<ProductivityRow> rows;  ///< as hours_over has them
    std::size_t outside_shifts = 0;     ///< loads whose loading ended in no shift: in no row
};

/// A load belongs to the shift in which its loading ended, as with a signature. What had lain in the hopper
/// before does not count again. Hours are taken as exact, so ± is that of the volumes alone.
Productivity productivity(const Ledger& ledger, const SeasonHours& hours, Instant as_at, HoursOver over);

/// What one bucket did.
struct BucketRow {
    const Bucket* bucket = nullptr;
    double buckets = 0;
    double operating_h = 0;
    Estimate in_situ_m3;
    std::optional<double> fill_factor;  ///< mean over its buckets; nothing where one is not known

    [[nodiscard]] std::optional<Estimate> per_hour() const;
    [[nodiscard]] std::optional<double> cycle_s() const;
    /// Hopper m³ an operating hour by count × rated capacity × fill factor.
    [[nodiscard]] std::optional<double> hopper_m3_per_hour() const;
};

/// By bucket, in the order of the book. A load's operating hours are shared out by buckets counted, its
/// volume by buckets × rated capacity; a load without a tally or with a bucket of no capacity is left out.
std::vector<BucketRow> productivity_by_bucket(const Ledger& ledger, const SeasonHours& hours, Instant as_at);

/// The basic production relation Q = 3600/T · C · f · E, in the unit of C an hour: cycle time T > 0 in s,
/// rated capacity, fill factor, share of the hour that is worked. Source: Komatsu Specifications and
/// Application Handbook, Productivity.
double bucket_production(double cycle_s, double capacity, double fill_factor, double efficiency);

}  // namespace spoilbook
