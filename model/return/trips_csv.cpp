// SPDX-License-Identifier: GPL-3.0-or-later
#include <fmt/format.h>

#include "model/return/return_files.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// Builds one line of RFC 4180.
class CsvLine {
 public:
    void text(const std::string& value) {
        const bool runs =
            !value.empty() && std::string_view("=+-@\t\r").find(value.front()) != std::string_view::npos;
        raw(runs ? "'" + value : value);
    }
    void number(const std::optional<double>& value) { raw(value ? number_text(*value) : ""); }
    void tenths(const std::optional<Tenths>& value) {
        raw(value ? fmt::format("{:.1f}", value->value()) : "");
    }
    void instant(const std::optional<Instant>& at, const Zone& zone) {
        raw(at ? instant_text(*at, zone) : "");
    }

    [[nodiscard]] std::string ended() const { return line_ + "\r\n"; }

 private:
    void raw(const std::string& value) {
        if (!first_) line_ += ",";
        first_ = false;
        if (value.find_first_of(",\"\r\n") == std::string::npos) {
            line_ += value;
            return;
        }
        line_ += '"';
        for (const char c : value)
            line_ += c == '"' ? "\"\"" : std::string(1, c);
        line_ += '"';
    }

    std::string line_;
    bool first_ = true;
};

constexpr const char* header =
    "trip,release,load,barge,tug,claims,material,loading_start,loading_end,departed,release_start,release_"
    "end,returned,"
    "lat,lon,position_u_m,position_from,ground,cell,verdict,distance_to_boundary_m,share_of_load,hopper_m3,"
    "in_situ_m3,"
    "method,entered,late,remarks\r\n";

std::string csv_line(const ScheduleLine& line, const Zone& zone) {
    const auto& release = *line.release;
    const Load none;
    const Load& load = release.load != nullptr ? *release.load : none;
    CsvLine csv;
    for (const auto& text :
         {release.trip->trip, release.row != nullptr ? release.row->release : std::string(), load.load,
          line.barge, line.tug, line.claims, line.material}) {
        csv.text(text);
    }
    for (const auto& at : {load.loading_start, load.loading_end, release.trip->departed, release.opened,
                           release.ended, release.trip->returned}) {
        csv.instant(at, zone);
    }
    csv.number(release.lat);
    csv.number(release.lon);
    csv.number(line.place.distance_m ? std::optional(line.place.position_u_m) : std::nullopt);
    csv.text(release.position_from);
    csv.text(line.ground);
    csv.text(line.cell);
    csv.text(std::string(text(line.place.verdict)));
    csv.number(line.place.distance_m);
    csv.number(release.share);
    csv.tenths(line.hopper_m3);
    csv.tenths(line.in_situ_m3);
    csv.text(line.method);
    csv.instant(Instant{line.entered_ms}, zone);
    csv.text(line.late ? "yes" : "no");
    csv.text(release.trip->remarks);
    return csv.ended();
}

}  // namespace

std::string trips_csv(const ReturnFacts& facts) {
    std::string csv = header;
    for (const auto& line : facts.schedule)
        csv += csv_line(line, facts.season->zone);
    return csv;
}

}  // namespace spoilbook
