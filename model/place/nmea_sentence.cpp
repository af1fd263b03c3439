// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/nmea_sentence.h"

#include <algorithm>
#include <charconv>
#include <cmath>

#include "model/unit/calendar.h"
#include "model/unit/instant.h"

namespace spoilbook {

namespace {

constexpr std::size_t longest_line = 1024;  // the standard's own bound is 82; receivers exceed it

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Digits alone, at most nine of them; -1 for anything else.
int whole(std::string_view text) {
    if (text.empty() || text.size() > 9 || !std::all_of(text.begin(), text.end(), is_digit)) return -1;
    int value = 0;
    for (const char c : text)
        value = value * 10 + (c - '0');
    return value;
}

int hexadecimal(char c) {
    if (is_digit(c)) return c - '0';
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    return -1;
}

/// Degrees of d…dmm.mmm with so many digits of degrees; NaN where it is not one.
double angle(std::string_view text, std::size_t degree_digits) {
    const int degrees = text.size() < degree_digits + 2 ? -1 : whole(text.substr(0, degree_digits));
    if (degrees < 0 || !is_digit(text[degree_digits]) || !is_digit(text[degree_digits + 1])) return NAN;
    double minutes = 0;
    const char* const end = text.data() + text.size();
    const auto read = std::from_chars(text.data() + degree_digits, end, minutes, std::chars_format::fixed);
    return read.ec == std::errc{} && read.ptr == end && minutes < 60 ? degrees + minutes / 60 : NAN;
}

}  // namespace

std::uint8_t nmea_checksum(std::string_view between) {
    unsigned sum = 0;
    for (const char c : between)
        sum ^= static_cast<unsigned char>(c);
    return static_cast<std::uint8_t>(sum);
}

NmeaFault take_apart(std::string_view line, NmeaSentence& sentence) {
    if (line.size() > longest_line) return NmeaFault::too_long;
    const auto dollar = line.find('$');
    if (dollar == std::string_view::npos) return NmeaFault::no_sentence;
    line.remove_prefix(dollar + 1);
    const auto star = line.rfind('*');
    if (star == std::string_view::npos || star + 2 >= line.size()) return NmeaFault::no_checksum;
    const int high = hexadecimal(line[star + 1]), low = hexadecimal(line[star + 2]);
    std::string_view rest = line.substr(0, star);
    if (high < 0 || low < 0 || nmea_checksum(rest) != high * 16 + low) return NmeaFault::wrong_checksum;

    const auto comma = std::min(rest.find(','), rest.size());
    const std::string_view address = rest.substr(0, comma);
    sentence.type = address.size() == 5 && address[0] != 'P' ? address.substr(2) : std::string_view{};
    sentence.count = 0;
    rest.remove_prefix(comma);
    while (!rest.empty() && sentence.count < NmeaSentence::most_fields) {
        rest.remove_prefix(1);
        const auto next = std::min(rest.find(','), rest.size());
        sentence.fields[sentence.count++] = rest.substr(0, next);
        rest.remove_prefix(next);
    }
    return NmeaFault::none;
}

std::optional<std::int64_t> nmea_time_ms(std::string_view text) {
    const int hms = text.size() < 6 ? -1 : whole(text.substr(0, 6));
    if (hms < 0) return std::nullopt;
    const int hour = hms / 10000, minute = hms / 100 % 100, second = hms % 100;
    if (hour > 23 || minute > 59 || second > 60) return std::nullopt;
    std::int64_t ms = 0;
    if (text.size() > 6) {
        const auto digits = text.substr(7, 3);
        const bool reads = text[6] == '.' && std::all_of(text.begin() + 7, text.end(), is_digit);
        if (!reads) return std::nullopt;
        constexpr std::array<int, 4> scale{0, 100, 10, 1};
        if (!digits.empty()) ms = std::int64_t{whole(digits)} * scale[digits.size()];
    }
    return hour * ms_per_hour + minute * ms_per_minute + second * ms_per_second + ms;
}

std::optional<Day> nmea_date(std::string_view ddmmyy) {
    const int date = ddmmyy.size() == 6 ? whole(ddmmyy) : -1;
    if (date < 0) return std::nullopt;
    const int year = date % 100;
    const Day day{year >= 80 ? 1900 + year : 2000 + year, date / 100 % 100, date / 10000};
    return exists(day) ? std::optional(day) : std::nullopt;
}

std::optional<LonLat> nmea_place(std::string_view lat, std::string_view north_south, std::string_view lon,
                                 std::string_view east_west) {
    const bool sides = (north_south == "N" || north_south == "S") && (east_west == "E" || east_west == "W");
    LonLat place{angle(lat, 2), angle(lon, 3)};
    if (!sides || !(place.lat_deg <= 90) || !(place.lon_deg <= 180)) return std::nullopt;
    if (north_south == "S") place.lat_deg = -place.lat_deg;
    if (east_west == "W") place.lon_deg = -place.lon_deg;
    return place;
}

}  // namespace spoilbook
