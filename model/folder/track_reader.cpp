// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/track_reader.h"

#include <fmt/format.h>

#include "model/folder/reading_columns.h"
#include "model/folder/utf8.h"
#include "model/place/gpx_track.h"
#include "model/place/nmea_track.h"

namespace spoilbook {

namespace {

Field degrees(const char* name, double most) {
    Field field{name, FieldType::number};
    field.unit = "°";
    field.low = -most;
    field.high = most;
    field.bounded = true;
    return field;
}

TrackReading read_track_csv(std::string_view bytes, const Zone& zone, const std::string& file,
                            Complaints& complaints) {
    TrackReading reading;
    std::size_t row = 1;
    ReadingColumns columns({{"time", FieldType::instant}, degrees("lat", 90), degrees("lon", 180)}, true,
                           zone, file, complaints);
    columns.read(bytes, [&](const std::vector<Value>& values) {
        ++row;
        const auto *lat = std::get_if<double>(&values[1]), *lon = std::get_if<double>(&values[2]);
        if (lat == nullptr || lon == nullptr) return reading.fault(row, "a row without a position");
        if (reading.fixes.size() == TrackReading::most_fixes)
            return reading.fault(row, "more fixes than are taken");
        reading.fixes.push_back({Instant{std::get<std::int64_t>(values[0])}, {*lat, *lon}});
    });
    reading.put_in_order();
    return reading;
}

void note_faults(const TrackReading& reading, const std::string& file, Complaints& complaints) {
    constexpr std::size_t most_told = 5;
    for (std::size_t i = 0; i < reading.faults.size() && i < most_told; ++i)
        complaints.note(fmt::format("{} line {}", file, reading.faults[i].line), reading.faults[i].what);
    if (reading.bad_lines > most_told)
        complaints.note(file, fmt::format("{} lines like these in all", reading.bad_lines));
    if (reading.out_of_order > 0)
        complaints.note(file, fmt::format("{} fixes stand after a later one", reading.out_of_order));
    if (reading.fixes.empty()) complaints.note(file, "it holds no fix");
}

/// What it begins as; the rest is not looked at.
std::optional<Refusal> why_not_as_named(std::string_view text, bool gpx, const std::string& file) {
    if (auto refusal = gpx ? why_not_text(text, file) : std::nullopt) return refusal;
    const bool looks_right =
        gpx ? text.find("<gpx") != std::string_view::npos
            : text.find_first_of("$!") != std::string_view::npos && text.find('\0') == std::string_view::npos;
    if (looks_right) return std::nullopt;
    return Refusal{gpx ? "not-gpx" : "not-nmea", file,
                   gpx ? "no gpx element" : "no sentence that begins with $ or !",
                   "put the receiver's own file here"};
}

}  // namespace

Checked<TrackReading> read_track(std::string_view bytes, const std::string& file, const Zone& zone,
                                 std::optional<Instant> near) {
    if (file.ends_with(".gpx")) return read_gpx(bytes);
    if (file.ends_with(".nmea")) return read_nmea(bytes, near);
    Complaints complaints;
    auto reading = read_track_csv(bytes, zone, file, complaints);
    if (complaints.any()) return complaints.refusals();
    if (reading.fixes.empty())
        return Refusal{"no-fix", file, "the file holds no fix", "put the receiver's own file here"};
    return reading;
}

void check_track(std::string_view bytes, const Zone& zone, const std::string& file, Complaints& complaints) {
    if (file.ends_with(".csv"))
        return note_faults(read_track_csv(bytes, zone, file, complaints), file, complaints);
    const bool gpx = file.ends_with(".gpx");
    if (auto refusal = why_not_as_named(without_byte_order_mark(bytes), gpx, file))
        return complaints.refuse(file, std::move(*refusal));
    // Where a receiver's file has no date, the trip's departure dates it: any day does to look for faults.
    const auto reading = read_track(bytes, file, zone, Instant{});
    if (reading) return note_faults(*reading, file, complaints);
    for (Refusal refusal : reading.refusals()) {
        if (refusal.code == "no-fix") {
            complaints.note(file, refusal.what);
            continue;
        }
        refusal.where = refusal.where.empty() ? file : file + " " + refusal.where;
        complaints.refuse(file, std::move(refusal));
    }
}

}  // namespace spoilbook
