// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/place/nmea_track.h"

#include <algorithm>
#include <string>

#include "model/place/track_refused.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Where a sentence of each type keeps what we take from it.
struct Layout {
    std::string_view type;
    std::size_t time, place;
    std::size_t status;               ///< the field that says whether it is a fix
    std::string_view good;            ///< the letters that say so
    std::optional<std::size_t> mode;  ///< a second one, where the sentence is long enough to have it
};

constexpr std::string_view measured_modes = "ADFPR";
// Quality 6, 7, 8 of GGA are estimated, typed in and simulated.
constexpr std::array layouts{Layout{"RMC", 0, 2, 1, "A", 11}, Layout{"GGA", 0, 1, 5, "123459", std::nullopt},
                             Layout{"GLL", 4, 0, 5, "A", 6},
                             Layout{"GNS", 0, 1, 5, measured_modes, std::nullopt}};

bool has_any(std::string_view text, std::string_view of) {
    return text.find_first_of(of) != std::string_view::npos;
}

bool says_fix(const Layout& layout, const NmeaSentence& sentence) {
    if (!has_any(sentence.field(layout.status), layout.good)) return false;
    const std::string_view mode = layout.mode ? sentence.field(*layout.mode) : "";
    return mode.empty() || has_any(mode, measured_modes);
}

std::int64_t day_ms(Day day) {
    return std::int64_t{days_between(day, {1970, 1, 1})} * ms_per_day;
}

/// The shift by whole days that brings `from` nearest to `to`.
std::int64_t whole_days(std::int64_t from_ms, std::int64_t to_ms) {
    const std::int64_t half = ms_per_day / 2;
    const std::int64_t apart = to_ms - from_ms + half;
    return (apart >= 0 ? apart / ms_per_day : -((-apart + ms_per_day - 1) / ms_per_day)) * ms_per_day;
}

}  // namespace

std::optional<bool> measured_fix(const NmeaSentence& sentence) {
    const auto layout = std::ranges::find(layouts, sentence.type, &Layout::type);
    if (layout == layouts.end()) return std::nullopt;
    return says_fix(*layout, sentence);
}

void NmeaReader::take(std::string_view text, std::size_t line) {
    if (!text.empty() && text.back() == '\r') text.remove_suffix(1);
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos || text[first] == '#' || text[first] == '!') return;
    NmeaSentence sentence;
    const NmeaFault found = take_apart(text, sentence);
    if (found != NmeaFault::none) return fault(found, line);
    take_date(sentence);
    take_sentence(sentence, line);
}

void NmeaReader::fault(NmeaFault fault, std::size_t line) {
    switch (fault) {
        case NmeaFault::none:
            return;
        case NmeaFault::no_sentence:
            return reading_.fault(line, "no sentence that begins with $");
        case NmeaFault::no_checksum:
            return reading_.fault(line, "the sentence has no checksum");
        case NmeaFault::wrong_checksum:
            return reading_.fault(line, "the checksum does not fit the sentence");
        case NmeaFault::too_long:
            return reading_.fault(line, "the line is longer than any sentence");
    }
}

void NmeaReader::take_date(const NmeaSentence& sentence) {
    std::optional<Day> day;
    if (sentence.type == "RMC" && sentence.field(1) == "A") day = nmea_date(sentence.field(8));
    if (sentence.type == "ZDA" && has_fix_ && sentence.field(3).size() == 4) {
        const std::string year(sentence.field(3).substr(2));
        day = nmea_date(std::string(sentence.field(1)) + std::string(sentence.field(2)) + year);
        if (day) day->year = std::stoi(std::string(sentence.field(3)));
    }
    const auto time = nmea_time_ms(sentence.field(0));
    if (day && time) set_date(*day, *time);
}

void NmeaReader::take_sentence(const NmeaSentence& sentence, std::size_t line) {
    const auto layout = std::ranges::find(layouts, sentence.type, &Layout::type);
    if (layout == layouts.end()) return;
    if (!says_fix(*layout, sentence)) {
        has_fix_ = false;
        ++reading_.without_fix;
        return;
    }
    const auto time = nmea_time_ms(sentence.field(layout->time));
    const auto place = nmea_place(sentence.field(layout->place), sentence.field(layout->place + 1),
                                  sentence.field(layout->place + 2), sentence.field(layout->place + 3));
    if (!time || !place)
        return reading_.fault(line, time ? "the position does not read" : "the time does not read");
    has_fix_ = true;
    tick(*time);
    auto& fixes = reading_.fixes;
    if (!fixes.empty() && fixes.back().at.utc_ms == clock_ms_) return;
    if (fixes.size() == TrackReading::most_fixes) return reading_.fault(line, "more fixes than are taken");
    fixes.push_back({Instant{clock_ms_}, *place});
}

void NmeaReader::tick(std::int64_t time_of_day_ms) {
    clock_ms_ = running_ ? time_of_day_ms + whole_days(time_of_day_ms, clock_ms_) : time_of_day_ms;
    running_ = true;
}

void NmeaReader::set_date(Day day, std::int64_t time_of_day_ms) {
    const std::int64_t now_ms = day_ms(day) + time_of_day_ms;
    if (!dated_) {
        tick(time_of_day_ms);
        for (auto& fix : reading_.fixes)
            fix.at = fix.at + (now_ms - clock_ms_);
    }
    clock_ms_ = now_ms;
    running_ = dated_ = true;
}

Checked<TrackReading> NmeaReader::finish(std::optional<Instant> near) {
    auto& fixes = reading_.fixes;
    if (fixes.empty())
        return Refusal{"no-fix", "", "the file holds no valid fix", "put the receiver's own file here"};
    if (!dated_ && !near) return track_refused("the file has times and no date", "add RMC or ZDA sentences");
    if (!dated_) {
        const std::int64_t shift = whole_days(fixes.front().at.utc_ms, near->utc_ms);
        for (auto& fix : fixes)
            fix.at = fix.at + shift;
    }
    reading_.put_in_order();
    return std::move(reading_);
}

Checked<TrackReading> read_nmea(std::string_view bytes, std::optional<Instant> near) {
    NmeaReader reader;
    for (std::size_t line = 1; !bytes.empty(); ++line) {
        const auto end = std::min(bytes.find('\n'), bytes.size());
        reader.take(bytes.substr(0, end), line);
        bytes.remove_prefix(std::min(end + 1, bytes.size()));
    }
    return reader.finish(near);
}

}  // namespace spoilbook
