// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/record/kind.h"
#include "model/record/season.h"

namespace spoilbook {

/// A time of one record that cannot be true beside a time of another one, or of another step of its own.
/// One of the two is wrong; which one, only who was there can tell.
struct TimeFinding {
    std::string column;                ///< of the record that was asked about
    Instant at;                        ///< what stands there
    const Kind* other_kind = nullptr;  ///< the kind of the record that the other time is of
    std::string other;                 ///< its label
    std::string other_column;
    Instant other_at;
    bool early = false;  ///< it lies before the other and cannot; else after it and cannot
};

/// What is out of order at the times of a trip, a release, a load, a station or a delay, in the order of its
/// columns: loading ends before she casts off, the doors open after that and shut before she is alongside,
/// and spuds go down, delays run, within their shift. Times that are the same are in order. Times of one row
/// that the book refuses (an end before its own start) are not among them. Another kind, a blank time:
/// nothing.
std::vector<TimeFinding> time_findings(const Season& season, const Kind& kind, const Id& id);

/// One line: "departed, 2025-11-04T08:10+13:00, is before loading_end of load L-0001, …".
std::string time_finding_text(const TimeFinding& finding, const Zone& zone);

}  // namespace spoilbook
