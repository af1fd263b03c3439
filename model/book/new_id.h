// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>

#include "model/unit/id.h"

namespace spoilbook {

/// The highest number that tells entries of one millisecond apart: the 12 bits that an id has for it.
constexpr std::int64_t last_stamp_count = 0xFFF;

/// What makes a new row's id: the stamp and the name of the entry it comes with, and its number there.
struct IdSource {
    std::int64_t stamp_ms = 0;
    std::int64_t stamp_count = 0;
    std::string device;
    std::int64_t seq = 0;
    std::int64_t n = 0;  ///< 0, 1, … within one change
};

/// A UUIDv7 (RFC 9562, 5.7): 48 bits of milliseconds, then counters so that ids sort in the order in which
/// rows came, then 38 bits of SHA-256 over the source. No chance in it: the same source gives the same id,
/// and (device, seq, n) happens once.
Id new_id(const IdSource& source);

}  // namespace spoilbook
