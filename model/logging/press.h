// SPDX-License-Identifier: GPL-3.0-or-later
// What each press of the barge desk writes, as the lines that `sbk log` would be given one by one. No press
// asks whether it may: what happened is logged as it happened.
#pragma once

#include "model/logging/log_record.h"
#include "model/record/season.h"

namespace spoilbook {

/// One record to write: what log_record takes.
struct LogLine {
    const Kind* kind = nullptr;
    std::string label;
    std::vector<FieldInput> inputs;
};

using LogLines = std::vector<LogLine>;

/// Writes all lines within one change, or none.
Checked<Done> log_lines_in(Change& change, const LogLines& lines);

/// The next label in the manner of the newest record of the kind ("S-0512" after "S-0511", "S9" after "S8");
/// in the book's usual manner where there is none yet ("TA-0001").
std::string next_label_of(const Book& book, const Kind& kind);

/// Who presses, on which book, when.
struct Press {
    const Book& book;
    const Season& season;
    Instant at;
};

/// Grid metres of the book's CRS; heading in degrees of the grid.
struct StationPlace {
    double easting_m = 0;
    double northing_m = 0;
    double heading_deg = 0;
};

/// A shift from now on, with plant, crew and weather of `before` (may be null), by `skipper` (empty: the one
/// before).
LogLines open_shift(const Press& press, const Shift* before, const std::string& skipper);
LogLines end_shift(const Press& press, const Shift& shift);

/// A station of this shift from now on; place and claim where they are known.
LogLines spuds_down(const Press& press, const Shift& shift, const Id& claim,
                    const std::optional<StationPlace>& place);
LogLines spuds_up(const Press& press, const Station& station);

/// A load for this barge, empty and alongside. What its last release left in the hopper opens it.
LogLines barge_alongside(const Press& press, const Barge& barge);
/// `buckets` more (fewer, where negative; never below zero) of this bucket from the station into the load;
/// the first one begins the load; a new line says whether it was typed. Nothing to write where the count does
/// not change.
LogLines count_buckets(const Press& press, const Shift& shift, const Station& station, const Load& load,
                       const Id& bucket, double buckets, bool typed);
/// What that line has counted so far.
double buckets_counted(const Season& season, const Shift& shift, const Station& station, const Load& load,
                       const Id& bucket);
/// The load is full now.
LogLines full(const Press& press, const Load& load);

LogLines cast_off(const Press& press, const Load* load, const Id& tug);
/// Doors open begins a release in a row of its own; on a trip that carries its release itself, it goes there.
LogLines doors_open(const Press& press, const Trip& trip);
LogLines empty(const Press& press, const Trip& trip);
LogLines doors_shut(const Press& press, const Trip& trip);
LogLines alongside(const Press& press, const Trip& trip);
/// What a receiver said where a press was made.
struct ReceiverPlace {
    double lat_deg = 0, lon_deg = 0;  ///< WGS 84
    double u_m = 0;                   ///< standard uncertainty (68 %)
    std::string receiver_on;          ///< tug, barge: said of the trip where it does not say so itself
};
/// The receiver's place as that of the release (lat, lon, position_u_m, position_from): goes with the lines
/// of the press. Nothing where the release, or the trip that carries its own, has a place already.
LogLines place_release(const Press& press, const Trip& trip, const LogLines& pressed,
                       const ReceiverPlace& receiver);
/// Whether a press on this trip would be the first time of its newest release: its place is where the doors
/// opened, and a later one is another.
bool first_of_release(const Season& season, const Trip& trip);
/// She goes back with her load: nothing was released.
LogLines turned_back(const Press& press, const Trip& trip);

LogLines delay_begins(const Press& press, const Shift& shift, const std::string& cause);
LogLines delay_ends(const Press& press, const Delay& delay);

/// A sounding at this station, now, by this person: where and how deep is typed after.
LogLines sounding(const Press& press, const Station& station, const std::string& by);
/// What the shift tells the next: where the pontoon stands, the barge alongside and the buckets in her.
LogLines hand_over(const Press& press, const Shift& shift, const Station* station, const Load* load,
                   double buckets_in);

}  // namespace spoilbook
