// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string_view>

#include "model/place/nmea_sentence.h"
#include "model/place/track_reading.h"
#include "model/unit/checked.h"

namespace spoilbook {

/// Reads a receiver's NMEA 0183, a line at a time: positions out of RMC, GGA, GNS and GLL, dates out of RMC
/// (of a valid fix alone: before one, receivers send the date of their making) and ZDA. Where a sentence has
/// the time of day only, it is of the day that puts it nearest to the fix before, so midnight rolls over; the
/// fixes before the first date are dated back from it. Estimated, typed-in and simulated positions are left
/// out like those that the receiver calls invalid. Source: NMEA 0183's field definitions, as quoted beside
/// the tests.
class NmeaReader {
 public:
    /// One line without its end; `line` is its number, for the faults. Blank lines, lines that begin with #,
    /// AIS (!) and sentences without a position are passed over.
    void take(std::string_view text, std::size_t line);

    /// The fixes so far, and nothing held back. `near`: where the file itself has no date, an instant within
    /// twelve hours of its first fix. Refused where there is no fix (code "no-fix"), and where there is
    /// neither a date nor `near` (code "track").
    Checked<TrackReading> finish(std::optional<Instant> near);

 private:
    void fault(NmeaFault fault, std::size_t line);
    void take_sentence(const NmeaSentence& sentence, std::size_t line);
    void take_date(const NmeaSentence& sentence);
    /// Moves the clock to a time of day: forward or back by less than half a day.
    void tick(std::int64_t time_of_day_ms);
    void set_date(Day day, std::int64_t time_of_day_ms);

    TrackReading reading_;
    std::int64_t clock_ms_ =
        0;  ///< of the newest sentence; from the file's own first day until it has a date
    bool running_ = false;
    bool dated_ = false;
    bool has_fix_ = false;
};

/// Whether a sentence that tells positions (RMC, GGA, GLL, GNS) tells a measured one: not where the receiver
/// says that it has none, nor where it is estimated, typed in or simulated. Nothing for any other sentence.
std::optional<bool> measured_fix(const NmeaSentence& sentence);

/// The whole of a file; bytes that are no text end up as faults of their lines.
Checked<TrackReading> read_nmea(std::string_view bytes, std::optional<Instant> near = std::nullopt);

}  // namespace spoilbook
