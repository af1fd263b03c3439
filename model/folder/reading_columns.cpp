// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/reading_columns.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/folder/nearest.h"
#include "model/folder/utf8.h"
#include "model/record/field_text.h"

namespace spoilbook {

void ReadingColumns::read(std::string_view bytes,
                          const std::function<void(const std::vector<Value>&)>& on_row) {
    read_csv(
        bytes, file_,
        [&](const CsvRow& row) {
            if (places_.empty()) return read_header(row);
            if (whole_ && read_row(row)) on_row(values_);
        },
        complaints_);
}

void ReadingColumns::read_header(const CsvRow& row) {
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

bool ReadingColumns::read_row(const CsvRow& row) {
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

}  // namespace spoilbook
