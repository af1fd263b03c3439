// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/logger_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/folder/reading_columns.h"

namespace spoilbook {

namespace {

void note_times_twice(const std::vector<LoggerReading>& readings, const std::string& file,
                      Complaints& complaints) {
    std::vector<std::int64_t> times;
    times.reserve(readings.size());
    for (const auto& reading : readings)
        times.push_back(reading.time.utc_ms);
    std::sort(times.begin(), times.end());
    std::size_t twice = 0;
    for (std::size_t i = 1; i < times.size(); ++i)
        twice += times[i] == times[i - 1] ? 1 : 0;
    if (twice > 0)
        complaints.note(file, fmt::format("{} readings stand at a time that had one already", twice));
}

}  // namespace

std::vector<LoggerReading> read_logger(std::string_view bytes, const Zone& zone, const std::string& file,
                                       Complaints& complaints) {
    std::vector<LoggerReading> readings;
    ReadingColumns columns({{"time", FieldType::instant}, {"value", FieldType::number}}, false, zone, file,
                           complaints);
    columns.read(bytes, [&](const std::vector<Value>& values) {
        LoggerReading reading{Instant{std::get<std::int64_t>(values[0])}, std::nullopt};
        if (const auto* number = std::get_if<double>(&values[1])) reading.value = *number;
        readings.push_back(reading);
    });
    note_times_twice(readings, file, complaints);
    return readings;
}

}  // namespace spoilbook
