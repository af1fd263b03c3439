// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "model/place/point.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// XOR of all characters, as NMEA 0183 sums what stands between $ and *.
std::uint8_t nmea_checksum(std::string_view between);

/// A sentence of NMEA 0183 taken apart. Fields are those after the address; a view of the line.
struct NmeaSentence {
    static constexpr std::size_t most_fields = 32;  ///< further ones are left out

    std::string_view type;  ///< RMC, GGA …: the address without its talker; empty for a maker's own
    std::array<std::string_view, most_fields> fields;
    std::size_t count = 0;

    /// Empty where the sentence is shorter.
    [[nodiscard]] std::string_view field(std::size_t i) const { return i < count ? fields[i] : ""; }
};

enum class NmeaFault { none, no_sentence, no_checksum, wrong_checksum, too_long };

/// Takes a line apart from its first $ on (what a logger or a tag block put before it is passed over).
/// Any talker: GP, GN, GL, II … The sum is asked for: a sentence without one is not taken.
NmeaFault take_apart(std::string_view line, NmeaSentence& sentence);

/// hhmmss[.sss] as milliseconds of the day; second 60 is the next minute's first. Nothing where it is not
/// one.
std::optional<std::int64_t> nmea_time_ms(std::string_view text);
/// ddmmyy; 80 to 99 are of the last century.
std::optional<Day> nmea_date(std::string_view ddmmyy);
/// ddmm.mmm and N or S, dddmm.mmm and E or W. Nothing where minutes reach 60 or the place is not on earth.
std::optional<LonLat> nmea_place(std::string_view lat, std::string_view north_south, std::string_view lon,
                                 std::string_view east_west);

}  // namespace spoilbook
