// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/gpx_track.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <chrono>

using namespace spoilbook;

namespace {

std::string point(const std::string& time, const std::string& lat = "-40.61",
                  const std::string& lon = "179.6") {
    return fmt::format("<trkpt lat=\"{}\" lon=\"{}\"><ele>0</ele><time>{}</time></trkpt>\n", lat, lon, time);
}

std::string gpx(const std::string& points) {
    return "<?xml version=\"1.0\"?>\n<gpx xmlns=\"http://www.topografix.com/GPX/1/1\" "
           "version=\"1.1\"><trk><trkseg>\n" +
           points + "</trkseg></trk></gpx>\n";
}

std::string what_of(const std::string& bytes) {
    const auto refusals = read_gpx(bytes).refusals();
    return refusals.empty() ? "" : refusals.front().what;
}

}  // namespace

TEST_CASE("times of a GPX are the instants that the schema's readers give", "[track]") {
    // GX-02 to GX-06: SEEN times, instants COMP with python's datetime.
    const auto reading = read_gpx(gpx(point("2002-07-04T20:15:30.5Z") + point("2010-01-01T01:19:44Z") +
                                      point("2019-12-06T14:19:25Z") + point("2024-02-29T12:00:00+13:00") +
                                      point("2024-02-29T12:00:00")));
    REQUIRE(reading);
    REQUIRE(reading->fixes.size() == 5);
    CHECK(reading->fixes[0].at.utc_ms == 1025813730500);
    CHECK(reading->fixes[1].at.utc_ms == 1262308784000);
    CHECK(reading->fixes[2].at.utc_ms == 1575641965000);
    CHECK(reading->fixes[3].at.utc_ms == 1709161200000);
    CHECK(reading->fixes[4].at.utc_ms == 1709208000000);
    CHECK(reading->faults == std::vector<TrackFault>{{7, "a time without a zone, taken as UTC"}});
}

TEST_CASE("only the points where she went are taken, by any name of their space", "[track]") {
    const auto reading = read_gpx(
        "<g:gpx xmlns:g='http://www.topografix.com/GPX/1/0'><g:wpt lat='1' "
        "lon='1'><g:time>2025-01-01T00:00Z</g:time>"
        "</g:wpt><g:rte><g:rtept lat='1' "
        "lon='1'><g:time>2025-01-01T00:00Z</g:time></g:rtept></g:rte><g:trk><g:trkseg>"
        "<g:trkpt lat='2' lon='3'><x><g:time>2020-01-01T00:00:00Z</g:time></x><g:time> "
        "2025-01-01T00:00:00.1234567Z\n"
        "</g:time></g:trkpt></g:trkseg></g:trk></g:gpx>");
    REQUIRE(reading);
    REQUIRE(reading->fixes.size() == 1);
    CHECK(reading->fixes[0] == ReceiverFix{Instant{1735689600123}, {2, 3}});
}

TEST_CASE("a point that does not read is told with its line", "[track]") {
    const auto reading = read_gpx(gpx(point("2025-11-03T00:00:00Z") + point("2025-11-03T00:00:01Z", "91") +
                                      point("yesterday") + point("") + point("2025-11-03T00:00:04Z", "1e1") +
                                      "<trkpt lat=\"1\"/>" + point("2025-11-03T00:00:02Z")));
    REQUIRE(reading);
    CHECK(reading->fixes.size() == 2);
    CHECK(reading->bad_lines == 5);
    CHECK(reading->faults[0] == TrackFault{4, "the position does not read"});
    CHECK(reading->faults[1] == TrackFault{5, "the time does not read"});
    CHECK(reading->faults[2] == TrackFault{6, "a point without a time"});
}

TEST_CASE("hostile XML is refused, and nothing of it expanded", "[track]") {
    const std::string rest = gpx(point("2025-11-03T00:00:00Z")).substr(21);
    CHECK(what_of("<!DOCTYPE gpx [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;\">]>" + rest) ==
          "a document type may not stand in it");
    CHECK(what_of("<!DOCTYPE gpx SYSTEM \"file:///etc/passwd\">" + rest) ==
          "a document type may not stand in it");
    CHECK(what_of(gpx(point("&b;"))) != "");
    CHECK(what_of("<kml/>") == "its root is not gpx");
    CHECK(what_of(gpx(point("2025-11-03T00:00:00Z")).substr(0, 150)) != "");
    CHECK(what_of("") != "");
    std::string deep = "<gpx>";
    for (int i = 0; i < 100000; ++i)
        deep += "<a>";
    CHECK(what_of(deep) == "its elements are nested over 64 deep");
    CHECK(what_of("<gpx a=\"" + std::string(3'000'000, 'x') + "\"/>") == "a tag or text of over 1 MiB");
    CHECK(read_gpx("<gpx/>").refusals().front().code == "no-fix");
}

TEST_CASE("a million points are read in seconds", "[track][.speed]") {
    std::string points;
    for (int i = 0; i < 1'000'000; ++i)
        points += point(fmt::format("2025-11-{:02}T{:02}:{:02}:{:02}.000Z", 1 + i / 86400, i / 3600 % 24,
                                    i / 60 % 60, i % 60));
    const std::string bytes = gpx(points);
    const auto start = std::chrono::steady_clock::now();
    const auto reading = read_gpx(bytes);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    REQUIRE(reading);
    CHECK(reading->fixes.size() == 1'000'000);
    WARN("1 000 000 track points in " << took.count() << " s");
}
