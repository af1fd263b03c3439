// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/logger_rows.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/turbidity/logger_count.h"
#include "model/turbidity/logger_lines.h"
#include "model/turbidity/logger_time.h"
#include "model/turbidity/logger_zone.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

bool has_digit(std::string_view text) {
    return text.find_first_of("0123456789") != std::string_view::npos;
}

class RowReader {
 public:
    RowReader(const LoggerLayout& layout, const std::string& file)
        : layout_(layout), file_(file), zone_(layout.zone) {}

    LoggerRows read(std::string_view text) {
        LoggerLines lines(text);
        std::string_view line;
        while (lines.next(line)) {
            if (lines.number() < layout_.first_row) continue;
            split_line(line, layout_.delimiter, fields_);
            take(lines.number());
        }
        count_times();
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
        const auto at = instant(time_text);
        if (!at) return refuse(line, "time", time_text, why_);
        const auto text = field(layout_.value_column);
        LoggerReading reading{*at, std::nullopt};
        if (!is_missing(text)) {
            reading.value = logger_number(text, layout_.decimal);
            if (!reading.value) reading.value = grouped_number(text, layout_.decimal);
            if (!reading.value) return refuse(line, "value", text, "is no number");
        }
        rows_.missing += reading.value ? 0 : 1;
        rows_.readings.push_back(reading);
    }

    [[nodiscard]] bool is_missing(std::string_view text) const {
        return text.empty() ||
               std::find(layout_.missing.begin(), layout_.missing.end(), text) != layout_.missing.end();
    }

    std::optional<Instant> instant(std::string_view text) {
        why_ = "is no time";
        auto time = is_counted(layout_.dates) ? counted_time(text, layout_.dates) : logger_time(text);
        if (time && layout_.clock_column) {
            const auto clock = logger_time(field(*layout_.clock_column));
            if (!clock || !clock->has_clock) return std::nullopt;
            time->hour = clock->hour;
            time->minute = clock->minute;
            time->second_of_minute = clock->second_of_minute;
            time->millisecond = clock->millisecond;
            if (clock->offset_s) time->offset_s = clock->offset_s;
        }
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

    void count_times() {
        auto& readings = rows_.readings;
        for (std::size_t i = 1; i < readings.size(); ++i)
            rows_.backwards += readings[i].time < readings[i - 1].time ? 1 : 0;
        std::vector<LoggerReading> sorted;
        const auto* in_order = &readings;
        if (rows_.backwards > 0) {
            sorted = readings;
            std::stable_sort(sorted.begin(), sorted.end(),
                             [](const auto& a, const auto& b) { return a.time < b.time; });
            in_order = &sorted;
        }
        for (std::size_t i = 1; i < in_order->size(); ++i) {
            if ((*in_order)[i].time != (*in_order)[i - 1].time) continue;
            ++((*in_order)[i].value == (*in_order)[i - 1].value ? rows_.twice : rows_.otherwise);
        }
    }

    const LoggerLayout& layout_;
    const std::string& file_;
    LoggerZone zone_;
    LoggerRows rows_;
    std::vector<std::string_view> fields_;
    std::string why_;
};

}  // namespace

LoggerRows read_logger_rows(std::string_view bytes, const LoggerLayout& layout, const std::string& file) {
    return RowReader(layout, file).read(logger_text(bytes));
}

}  // namespace spoilbook
