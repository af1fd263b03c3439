// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/logger_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <functional>

#include "model/folder/csv_reader.h"
#include "model/folder/nearest.h"
#include "model/folder/utf8.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

/// Named columns of a plain file of readings.
class ReadingColumns {
 public:
    ReadingColumns(std::vector<Field> fields, bool others_allowed, const Zone& zone, const std::string& file,
                   Complaints& complaints)
        : fields_(std::move(fields)),
          others_allowed_(others_allowed),
          zone_(zone),
          file_(file),
          complaints_(complaints) {}

    /// Calls `on_row` with the values of each row in the order of the fields; rows at fault are left out.
    void read(std::string_view bytes, const std::function<void(const std::vector<Value>&)>& on_row) {
        read_csv(
            bytes, file_,
            [&](const CsvRow& row) {
                if (places_.empty()) return read_header(row);
                if (whole_ && read_row(row)) on_row(values_);
            },
            complaints_);
    }

 private:
    void read_header(const CsvRow& row) {
        std::vector<std::string> names;
        for (const Field& field : fields_)
            names.push_back(field.name);
        places_.assign(fields_.size(), row.fields.size());
        for (std::size_t i = 0; i < row.fields.size(); ++i) {
            const std::string name(trimmed(row.fields[i]));
            const auto found = std::find(names.begin(), names.end(), name);
            const std::string place = fmt::format("{} line {} column {}", file_, row.line, i + 1);
            if (found == names.end()) {
                if (others_allowed_) continue;
                refuse({"unknown-column", place, fmt::format("\"{}\" is not a column here", name),
                        did_you_mean(name, names)});
                continue;
            }
            auto& at = places_[static_cast<std::size_t>(found - names.begin())];
            if (at != row.fields.size())
                refuse({"twice", place, fmt::format("the column {} is given twice", name), "keep one"});
            at = i;
        }
        for (std::size_t i = 0; i < fields_.size(); ++i) {
            if (places_[i] < row.fields.size()) continue;
            whole_ = false;
            refuse({"missing-column", fmt::format("{} line {}", file_, row.line),
                    fmt::format("the column {} is missing", fields_[i].name), "add it"});
        }
    }

    bool read_row(const CsvRow& row) {
        values_.assign(fields_.size(), Value{});
        bool good = true;
        for (std::size_t i = 0; i < fields_.size(); ++i) {
            auto value = parse_field(fields_[i], row.fields[places_[i]], zone_);
            const std::string place = fmt::format("{} line {} column {}", file_, row.line, fields_[i].name);
            for (Refusal refusal : value.refusals()) {
                refusal.where = place;
                refuse(std::move(refusal));
                good = false;
            }
            if (value) values_[i] = std::move(*value);
        }
        if (is_blank(values_.front()) && good) {
            refuse({"blank-time", fmt::format("{} line {}", file_, row.line), "a row without a time",
                    "give its time or leave the row out"});
            good = false;
        }
        return good;
    }

    void refuse(Refusal refusal) { complaints_.refuse(file_, std::move(refusal)); }

    std::vector<Field> fields_;
    bool others_allowed_;
    const Zone& zone_;
    const std::string& file_;
    Complaints& complaints_;
    std::vector<std::size_t> places_;
    std::vector<Value> values_;
    bool whole_ = true;
};

Field degrees(const char* name, double most) {
    Field field{name, FieldType::number};
    field.unit = "°";
    field.low = -most;
    field.high = most;
    field.bounded = true;
    return field;
}

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

void check_track(std::string_view bytes, const Zone& zone, const std::string& file, Complaints& complaints) {
    if (file.ends_with(".csv")) {
        ReadingColumns columns({{"time", FieldType::instant}, degrees("lat", 90), degrees("lon", 180)}, true,
                               zone, file, complaints);
        columns.read(bytes, [](const std::vector<Value>&) {});
        return;
    }
    const bool gpx = file.ends_with(".gpx");
    const std::string_view text = without_byte_order_mark(bytes);
    if (auto refusal = gpx ? why_not_text(text, file) : std::nullopt) {
        complaints.refuse(file, std::move(*refusal));
        return;
    }
    const bool looks_right =
        gpx ? text.find("<gpx") != std::string_view::npos
            : text.find_first_of("$!") != std::string_view::npos && text.find('\0') == std::string_view::npos;
    if (looks_right) return;
    complaints.refuse(file, {gpx ? "not-gpx" : "not-nmea", file,
                             gpx ? "no gpx element" : "no sentence that begins with $ or !",
                             "put the receiver's own file here"});
}

}  // namespace spoilbook
