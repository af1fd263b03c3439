// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/nmea_track.h"

#include <fmt/format.h>

#include <catch2/catch.hpp>
#include <chrono>

#include "model/unit/time_text.h"

using namespace spoilbook;
using Catch::Matchers::WithinAbs;

namespace {

constexpr double tenth_of_a_millimetre_deg = 1e-9;

/// A line with the sum that it has to bear.
std::string summed(const std::string& between) {
    return fmt::format("${}*{:02X}\r\n", between, nmea_checksum(between));
}

Instant at(const char* text) {
    return *parse_instant(text, Zone::utc());
}

NmeaFault fault_of(const std::string& line) {
    NmeaSentence sentence;
    return take_apart(line, sentence);
}

}  // namespace

TEST_CASE("a sentence is taken by its checksum alone", "[track]") {
    // NM-01, NM-02, NM-04, NM-05: SEEN in public samples; sums recomputed there.
    CHECK(fault_of("$GPGGA,123519,4807.038,N,01131.000,E,1,08,0.9,545.4,M,46.9,M,,*47") == NmeaFault::none);
    CHECK(fault_of("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A") ==
          NmeaFault::none);
    CHECK(fault_of("$GPGLL,4916.45,N,12311.12,W,225444,A,*1D") == NmeaFault::none);
    CHECK(fault_of("$GPVTG,054.7,T,034.4,M,005.5,N,010.2,K*48") == NmeaFault::none);
    // NM-07, NM-08, NM-10: SEEN with a wrong sum.
    CHECK(fault_of("$GPGGA,012219,1237.038,N,01531.000,E,1,08,0.9,125.4,M,46.9,M,,*47") ==
          NmeaFault::wrong_checksum);
    CHECK(fault_of("$GPGGA,023042,4007.3837,N,12102.89684,W,1,04,2.3,507.3,M,-24.1,M,,*75") ==
          NmeaFault::wrong_checksum);
    CHECK(fault_of("$GPZDA,201530.12,04,07,2002,+00,00*60") == NmeaFault::wrong_checksum);
    CHECK(fault_of("$GPGLL,4916.45,N,12311.12,W,225444,A,") == NmeaFault::no_checksum);
    CHECK(fault_of("$GPGLL*1") == NmeaFault::no_checksum);
    CHECK(fault_of("hello") == NmeaFault::no_sentence);
}

TEST_CASE("positions and times are those of the published sentences", "[track]") {
    // NM-12, NM-14, NM-15, NM-19, NM-21: SEEN field meanings, values computed there.
    const auto reading = read_nmea("$GPRMC,123519,A,4807.038,N,01131.000,E,022.4,084.4,230394,003.1,W*6A\n");
    REQUIRE(reading);
    REQUIRE(reading->fixes.size() == 1);
    CHECK(reading->fixes[0].at == at("1994-03-23T12:35:19Z"));
    CHECK_THAT(reading->fixes[0].place.lon_deg, WithinAbs(11.5166667, 5e-8));
    CHECK_THAT(nmea_place("4916.45", "N", "12311.12", "W")->lat_deg, WithinAbs(49.2741667, 5e-8));
    CHECK_THAT(nmea_place("3907.3837", "N", "12102.4684", "W")->lon_deg, WithinAbs(-121.0411400, 5e-8));
    CHECK_FALSE(nmea_place("4960.00", "N", "12311.12", "W"));
    CHECK_FALSE(nmea_place("9001.00", "N", "12311.12", "W"));
    CHECK_FALSE(nmea_place("4916.45", "", "12311.12", "W"));
    CHECK_FALSE(nmea_place("", "N", "", "E"));
}

TEST_CASE("a night's track goes on over midnight where only times stand", "[track]") {
    std::string log = summed("GPGLL,4036.60,S,17936.00,E,235959.50,A,A");
    log += summed("GNZDA,235959.75,31,10,2025,00,00") +
           summed("GNGGA,000000.25,4036.61,S,17936.00,E,1,9,1,0,M,0,M,,");
    log += summed("IIGLL,4036.62,S,17936.00,E,000001,A") +
           summed("GPRMC,000002,A,4036.63,S,17936.00,E,5,90,011125,,,A");
    const auto reading = read_nmea(log);
    REQUIRE(reading);
    REQUIRE(reading->fixes.size() == 4);
    CHECK(reading->fixes[0].at == at("2025-10-31T23:59:59.500Z"));
    CHECK(reading->fixes[1].at == at("2025-11-01T00:00:00.250Z"));
    CHECK(reading->fixes[2].at == at("2025-11-01T00:00:01Z"));
    CHECK(reading->fixes[3].at == at("2025-11-01T00:00:02Z"));
    CHECK_THAT(reading->fixes[3].place.lat_deg, WithinAbs(-(40 + 36.63 / 60), tenth_of_a_millimetre_deg));
}

TEST_CASE("a file without a date is dated by the trip that it belongs to", "[track]") {
    const std::string log =
        summed("GPGLL,4036.60,S,17936.00,E,235900,A,A") + summed("GPGLL,4036.60,S,17936.00,E,000100,A,A");
    CHECK(read_nmea(log).refusals().front().code == "track");
    const auto reading = read_nmea(log, at("2025-11-01T00:30Z"));
    REQUIRE(reading);
    CHECK(reading->fixes[0].at == at("2025-10-31T23:59Z"));
    CHECK(reading->fixes[1].at == at("2025-11-01T00:01Z"));
}

TEST_CASE("what a receiver does not vouch for is no fix", "[track]") {
    std::string log = summed("GPRMC,000039.00,V,,,,,,,060180,,,N");  // the date of its making
    log += summed("GPGGA,120000,4036.60,S,17936.00,E,0,0,,,M,,M,,");
    for (const char* quality : {"6", "7", "8"})
        log += summed(fmt::format("GPGGA,120001,4036.60,S,17936.00,E,{},9,1,0,M,0,M,,", quality));
    for (const char* mode : {"E", "M", "N", "S"})
        log += summed(fmt::format("GPRMC,120002,A,4036.60,S,17936.00,E,5,90,031125,,,{}", mode));
    log += summed("GPRMC,120003,A,4036.60,S,17936.00,E,5,90,031125,,,D");
    const auto reading = read_nmea(log);
    REQUIRE(reading);
    CHECK(reading->fixes.size() == 1);
    CHECK(reading->fixes[0].at == at("2025-11-03T12:00:03Z"));
    CHECK(reading->without_fix == 9);
    CHECK(reading->bad_lines == 0);
    CHECK(read_nmea("$GPGSV,1,1,00*79\n").refusals().front().code == "no-fix");
}

TEST_CASE("a bad line is told with its number and costs nothing but itself", "[track]") {
    std::string log = "# a remark\n\n";
    log += summed("GPRMC,120000,A,4036.60,S,17936.00,E,5,90,031125,,,A");
    log += "$GPRMC,120001,A,4036.60,S,17936.00,E,5,90,031125,,,A*00\n";
    log += "$GPRMC,120002,A,4036\n!AIVDM,1,1,,A,x,0*00\n";
    log += "\\g:1-2-3*00\\" + summed("GNGNS,120003,4036.61,S,17936.00,E,AN,9,1,0,0,,");
    log += summed("GPRMC,120004,A,4066.60,S,17936.00,E,5,90,031125,,,A");
    const auto reading = read_nmea(log);
    REQUIRE(reading);
    CHECK(reading->fixes.size() == 2);
    CHECK(reading->bad_lines == 3);
    CHECK(reading->faults == std::vector<TrackFault>{{4, "the checksum does not fit the sentence"},
                                                     {5, "the sentence has no checksum"},
                                                     {8, "the position does not read"}});
}

TEST_CASE("a million fixes are read in seconds", "[track][.speed]") {
    std::string log;
    for (int i = 0; i < 1'000'000; ++i) {
        const int s = i % 86400;
        log +=
            summed(fmt::format("GPRMC,{:02}{:02}{:02}.00,A,4036.{:05},S,17936.12345,E,5.1,90.0,{:02}1125,,,A",
                               s / 3600, s / 60 % 60, s % 60, i % 100000, 1 + i / 86400));
    }
    const auto start = std::chrono::steady_clock::now();
    const auto reading = read_nmea(log);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    REQUIRE(reading);
    CHECK(reading->fixes.size() == 1'000'000);
    WARN("1 000 000 RMC sentences in " << took.count() << " s");
}
