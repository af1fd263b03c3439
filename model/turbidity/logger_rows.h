// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <vector>

#include "model/record/logger_reading.h"
#include "model/turbidity/logger_layout.h"
#include "model/unit/byte_source.h"
#include "model/unit/instant.h"
#include "model/unit/refusal.h"

namespace spoilbook {

/// Readings of times that are unlikely, and the first of them.
struct UnlikelyTimes {
    std::size_t readings = 0, line = 0;
    Instant first{0};
};

/// What a logger's file says under a layout, and what was odd in it.
struct LoggerRows {
    std::vector<LoggerReading> first;  ///< the first five readings, in the order of the file
    std::size_t readings = 0;
    std::optional<Period> span;  ///< from the earliest reading to just after the latest
    std::size_t missing = 0;     ///< of the readings: those without a value
    std::size_t backwards = 0;   ///< rows earlier than the row before
    std::size_t twice = 0;       ///< rows that say the same again
    std::size_t otherwise = 0;   ///< rows of a time that had another value
    std::size_t left_out = 0;    ///< lines after the first row that are no rows: words, other sites' rows not
    UnlikelyTimes later;         ///< than the clock that was handed in
    UnlikelyTimes unset;      ///< before 2 January 2000, where the clock of a logger that nobody set begins
    Refusals refusals;        ///< rows that do not read; the first hundred
    std::size_t refused = 0;  ///< how many there are
};

/// Reads the rows of one site, and hands each reading on, in the order of the file. A time that its zone
/// makes happen twice or never is refused: a logger that keeps one offset all year is read with that offset.
/// `file` is the place told in refusals, `now` what the time is. Memory does not grow with a file that is in
/// order of time; of one that is not, the readings are sorted in memory to find those said twice.
LoggerRows read_logger_rows(const ByteSource& bytes, const LoggerLayout& layout, const std::string& file,
                            const std::function<void(const LoggerReading&)>& on_reading = {},
                            std::optional<Instant> now = std::nullopt);

/// The readings alone, of a file that was looked at before.
void each_logger_reading(const ByteSource& bytes, const LoggerLayout& layout, const std::string& file,
                         const std::function<void(const LoggerReading&)>& on_reading);

}  // namespace spoilbook
