// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_rows.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

#include "model/turbidity/logger_count.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_parts.h"
#include "model/turbidity/logger_time.h"
#include "model/turbidity/logger_zone.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

bool has_digit(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char c) { return c >= '0' && c <= '9'; });
}

/// Counts a reading that follows one of the same time.
void count_again(LoggerRows& rows, const LoggerReading& before, const LoggerReading& reading) {
    if (reading.time != before.time) return;
    ++(reading.value == before.value ? rows.twice : rows.otherwise);
}

constexpr Instant clocks_begin{946'771'200'000};  // 2000-01-02T00:00Z

void count_unlikely(UnlikelyTimes& times, Instant at, std::size_t line) {
    if (times.readings++ > 0) return;
    times.line = line;
    times.first = at;
}

class RowReader {
 public:
    using OnReading = std::function<void(const LoggerReading&)>;

    RowReader(const LoggerLayout& layout, const std::string& file, const OnReading& on_reading,
              std::optional<Instant> now = std::nullopt)
        : layout_(layout), file_(file), on_reading_(on_reading), now_(now), zone_(layout.zone) {}

    LoggerRows read(const ByteSource& bytes) {
        LoggerLines lines(bytes);
        std::string_view line;
        while (lines.next(line)) {
            if (lines.number() < layout_.first_row) continue;
            split_line(line, layout_.delimiter, fields_);
            take(lines.number());
        }
        return std::move(rows_);
    }

 private:
    [[nodiscard]] std::string_view field(std::size_t column) const {
        return column < fields_.size() ? fields_[column] : std::string_view();
    }

    void take(std::size_t line) {
        const auto time_text = field(layout_.time_column);
        if (!has_digit(time_text)) {
            rows_.left_out += fields_.empty() || (fields_.size() == 1 && fields_[0].empty()) ? 0 : 1;
            return;
        }
        if (layout_.rows_column && field(*layout_.rows_column) != layout_.rows_value) return;
        if (layout_.quantity_column && field(*layout_.quantity_column) != layout_.quantity_value) return;
        const auto at = instant(time_text);
        if (!at && is_remark(time_text)) {
            ++rows_.left_out;
            return;
        }
        if (!at) return refuse(line, "time", shown_time(), why_);
        const auto text = field(layout_.value_column);
        LoggerReading reading{*at, std::nullopt};
        if (!is_missing(text)) {
            reading.value = logger_number(text, layout_.decimal);
            if (!reading.value) reading.value = grouped_number(text, layout_.decimal);
            if (!reading.value) return refuse(line, "value", text, "is no number");
        }
        count(reading, line);
        if (on_reading_) on_reading_(reading);
    }

    /// All the fields that make the time up.
    [[nodiscard]] std::string shown_time() const {
        std::string text;
        for (const std::size_t column : layout_.time_columns())
            text += (text.empty() ? "" : " ") + std::string(field(column));
        return text;
    }

    /// Words with a number in them, and no field for a value: "Downloaded 2026-04-05 10:00".
    [[nodiscard]] bool is_remark(std::string_view time_text) const {
        const auto first = static_cast<unsigned char>(time_text.front());
        return fields_.size() <= layout_.value_column && std::isalpha(first) != 0;
    }

    void count(const LoggerReading& reading, std::size_t line) {
        if (now_ && reading.time > *now_) count_unlikely(rows_.later, reading.time, line);
        if (reading.time < clocks_begin) count_unlikely(rows_.unset, reading.time, line);
        rows_.missing += reading.value ? 0 : 1;
        if (rows_.readings++ == 0) rows_.span = Period{reading.time, reading.time + 1};
        if (rows_.readings <= 5) rows_.first.push_back(reading);
        rows_.span->from = std::min(rows_.span->from, reading.time);
        rows_.span->to = std::max(rows_.span->to, reading.time + 1);
        if (last_) {
            rows_.backwards += reading.time < last_->time ? 1 : 0;
            count_again(rows_, *last_, reading);
        }
        last_ = reading;
    }

    [[nodiscard]] bool is_missing(std::string_view text) const {
        return text.empty() ||
               std::find(layout_.missing.begin(), layout_.missing.end(), text) != layout_.missing.end();
    }

    std::optional<Instant> instant(std::string_view text) {
        why_ = "is no time";
        const auto& parts = layout_.parts;
        auto time = is_counted(layout_.dates) ? counted_time(text, layout_.dates)
                    : parts.year              ? parts_time(fields_, parts)
                                              : logger_time(text);
        if (time && !parts.year && !add_clock_parts(fields_, parts, *time)) return std::nullopt;
        if (time && layout_.clock_column) {
            const auto clock = logger_clock(field(*layout_.clock_column));
            if (!clock) return std::nullopt;
            time->hour = clock->hour;
            time->minute = clock->minute;
            time->second_of_minute = clock->second_of_minute;
            time->millisecond = clock->millisecond;
            if (clock->offset_s) time->offset_s = clock->offset_s;
        }
        if (time && !add_half_part(fields_, parts, *time)) return std::nullopt;
        const auto day = time && time->has_date ? day_of(*time, layout_.dates) : std::nullopt;
        if (!day) return std::nullopt;
        return zone_.instant(*day, *time, why_);
    }

    void refuse(std::size_t line, const char* column, std::string_view text, const std::string& why) {
        ++rows_.refused;
        if (rows_.refusals.size() >= 100) return;
        rows_.refusals.push_back({"row", fmt::format("{} line {} column {}", file_, line, column),
                                  fmt::format("\"{}\" {}", shown_text(text.substr(0, 60)), why),
                                  "mend a copy of the file, or say how it is to be read"});
    }

    const LoggerLayout& layout_;
    const std::string& file_;
    const OnReading& on_reading_;
    std::optional<Instant> now_;
    LoggerZone zone_;
    LoggerRows rows_;
    std::optional<LoggerReading> last_;
    std::vector<std::string_view> fields_;
    std::string why_;
};

/// What is said twice stands side by side only in order of time.
void count_sorted(std::vector<LoggerReading> readings, LoggerRows& rows) {
    std::stable_sort(readings.begin(), readings.end(),
                     [](const auto& a, const auto& b) { return a.time < b.time; });
    rows.twice = rows.otherwise = 0;
    for (std::size_t i = 1; i < readings.size(); ++i)
        count_again(rows, readings[i - 1], readings[i]);
}

}  // namespace

LoggerRows read_logger_rows(const ByteSource& bytes, const LoggerLayout& layout, const std::string& file,
                            const std::function<void(const LoggerReading&)>& on_reading,
                            std::optional<Instant> now) {
    auto rows = RowReader(layout, file, on_reading, now).read(bytes);
    if (rows.backwards == 0) return rows;
    std::vector<LoggerReading> readings;
    readings.reserve(rows.readings);
    each_logger_reading(bytes, layout, file, [&](const auto& reading) { readings.push_back(reading); });
    count_sorted(std::move(readings), rows);
    return rows;
}

void each_logger_reading(const ByteSource& bytes, const LoggerLayout& layout, const std::string& file,
                         const std::function<void(const LoggerReading&)>& on_reading) {
    RowReader(layout, file, on_reading).read(bytes);
}

}  // namespace spoilbook
