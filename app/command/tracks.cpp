// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/command/tracks.h"

#include <fmt/format.h>

#include "model/answer/trip_legs.h"
#include "model/book/stored_file.h"
#include "model/unit/shown.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

using Json = nlohmann::ordered_json;

Json leg_json(const TripLeg& leg, const Zone& zone) {
    return {{"leg", leg.leg},
            {"from", instant_text(leg.from, zone)},
            {"to", instant_text(leg.to, zone)},
            {"hours", static_cast<double>(leg.to - leg.from) / static_cast<double>(ms_per_hour)},
            {"fixes", leg.fixes},
            {"way_m", number_or_null(leg.way_m)},
            {"straight_m", number_or_null(leg.straight_m)},
            {"mean_speed_kn", number_or_null(leg.mean_speed_kn)},
            {"max_speed_kn", number_or_null(leg.max_speed_kn)},
            {"course_deg", number_or_null(leg.course_deg)},
            {"longest_gap_s", leg.longest_gap_s}};
}

std::string leg_text(const TripLeg& leg, const Zone& zone) {
    std::string text =
        fmt::format("  {:<8} {} to {}", leg.leg, instant_text(leg.from, zone), instant_text(leg.to, zone));
    if (leg.way_m) text += fmt::format(", {:.0f} m along the track", *leg.way_m);
    if (leg.straight_m) text += fmt::format(", {:.0f} m straight", *leg.straight_m);
    if (leg.mean_speed_kn) text += fmt::format(", {:.1f} kn", *leg.mean_speed_kn);
    if (leg.course_deg) text += fmt::format(", course {:03.0f} true", *leg.course_deg);
    return text + fmt::format(", longest gap {:.0f} s\n", leg.longest_gap_s);
}

Json reading_json(const TrackReading& track, const Zone& zone) {
    Json json{{"fixes", track.fixes.size()},
              {"first", instant_text(track.fixes.front().at, zone)},
              {"last", instant_text(track.fixes.back().at, zone)},
              {"bad_lines", track.bad_lines},
              {"without_fix", track.without_fix},
              {"out_of_order", track.out_of_order},
              {"faults", Json::array()}};
    for (const auto& fault : track.faults)
        json["faults"].push_back({{"line", fault.line}, {"what", fault.what}});
    return json;
}

Json place_json(const ReleasePlace& place, const GroundMap& map) {
    Json json;
    LonLat at;
    const bool is_mapped = place.place && map.crs();
    if (is_mapped) at = map.crs()->unproject(*place.place);
    json["release"] = place.release->label();
    json["verdict"] = text(place.verdict);
    json["distance_to_boundary_m"] = number_or_null(place.distance_m);
    json["position_u_m"] = place.place ? Json(place.position_u_m) : Json(nullptr);
    json["lat"] = is_mapped ? Json(at.lat_deg) : Json(nullptr);
    json["lon"] = is_mapped ? Json(at.lon_deg) : Json(nullptr);
    json["place_from"] = !place.place ? Json(nullptr) : Json(place.by_track ? "track" : "logged");
    json["left_ground_doors_open"] = place.left_ground;
    json["why"] = place.why.empty() ? Json(nullptr) : Json(place.why);
    return json;
}

void say_release(const Reading& reading, const ReleasePlace& place, const TripTrack& track, Said& said) {
    const ReleaseView& release = *place.release;
    const Zone& zone = reading.season.zone;
    Json row = place_json(place, reading.ledger->grounds());
    row["legs"] = Json::array();
    said.text += fmt::format("release {}: {}{}\n", release.label(), in_words(text(place.verdict)),
                             place.left_ground ? ", left the ground with the doors open" : "");
    const auto shut = release.shut ? release.shut : release.ended;
    for (const auto& leg : trip_legs(*release.trip, release.opened, shut, track.reading.fixes)) {
        row["legs"].push_back(leg_json(leg, zone));
        said.text += leg_text(leg, zone);
    }
    said.json["releases"].push_back(std::move(row));
}

Checked<Said> say_track(const Reading& reading, const Options& options, const std::string& label) {
    auto tracks = tracks_of(reading, options);
    for (const auto& trip : reading.season.trips.rows()) {
        if (trip.trip != label) continue;
        const auto* track = tracks.of(trip);
        if (track == nullptr)
            return Refusal{"no-such-row", "trip " + label, "the trip has no track", "bring it with sbk add"};
        if (!*track) return track->refusals();
        Said said;
        said.json["trip"] = label;
        said.json.update(reading_json((*track)->reading, reading.season.zone));
        said.json["releases"] = Json::array();
        said.text = fmt::format("trip {}: {} fixes, {} lines at fault\n", label,
                                (*track)->reading.fixes.size(), (*track)->reading.bad_lines);
        for (const auto& place : release_places(*reading.ledger, reading.as_at, &tracks)) {
            if (place.release->trip->id == trip.id) say_release(reading, place, **track, said);
        }
        return said;
    }
    return Refusal{"no-such-row", "trip " + label, "there is no such trip", "look its number up"};
}

}  // namespace

TripTracks tracks_of(const Reading& reading, const Options& options) {
    const auto opened = std::make_shared<Checked<Book>>(Book::open_to_read(options.book));
    return {reading.season, [opened](const std::string& digest) {
                return *opened ? load_file(**opened, digest) : std::nullopt;
            }};
}

nlohmann::ordered_json findings_json(const std::vector<PlaceFinding>& findings) {
    Json list = Json::array();
    for (const auto& [found, test, room_m] : findings) {
        list.push_back({{"consent", found.consent == nullptr ? Json(nullptr) : Json(found.consent->consent)},
                        {"condition", found.condition->condition},
                        {"test", test},
                        {"state", text(found.state)},
                        {"room_m", number_or_null(room_m)},
                        {"why", found.why.empty() ? Json(nullptr) : Json(found.why)}});
    }
    return list;
}

void add_track_command(CLI::App& program, Options& options, Task& task) {
    auto label = std::make_shared<std::string>();
    auto* track = add_command(program, options, "track", "where a trip went, how far and how fast");
    add_read_options(*track, options);
    track->add_option("TRIP", *label, "the trip")->required();
    track->callback([&options, &task, label] {
        task = [&options, label] {
            return read_book(options,
                             [&](const Reading& reading) { return say_track(reading, options, *label); });
        };
    });
}

}  // namespace spoilbook
