// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/table_reader.h"

#include <fmt/format.h>

#include <algorithm>

#include "model/folder/csv_reader.h"
#include "model/folder/nearest.h"
#include "model/record/field_text.h"

namespace spoilbook {

namespace {

std::vector<std::string> field_names(const Kind& kind) {
    std::vector<std::string> names;
    for (const Field& field : kind.fields)
        names.push_back(field.name);
    return names;
}

class TableReading {
 public:
    TableReading(const Zone& zone, GivenTable& table, Complaints& complaints)
        : zone_(zone), table_(table), complaints_(complaints) {}

    void take(const CsvRow& row) {
        if (!header_read_) {
            read_header(row);
            header_read_ = true;
            header_at_fault_ = complaints_.any_of(table_.file);
            if (header_at_fault_ && !has_label()) complaints_.lose_rows(table_.file);
        } else {
            read_row(row);
        }
    }

 private:
    void read_header(const CsvRow& row) {
        std::vector<bool> seen(table_.kind->fields.size(), false);
        for (std::size_t i = 0; i < row.fields.size(); ++i) {
            const std::string name(trimmed(row.fields[i]));
            const auto index = table_.kind->index_of(name);
            places_.push_back(index);
            const std::string place = fmt::format("{} line {} column {}", table_.file, row.line, i + 1);
            if (name.empty()) {
                refuse({"unknown-column", place, "a column without a name", "name it or leave it out"});
            } else if (!index) {
                refuse({"unknown-column", place,
                        fmt::format("\"{}\" is not a column of {}", name, table_.file),
                        did_you_mean(name, field_names(*table_.kind))});
            } else if (seen[*index]) {
                refuse({"twice", place, fmt::format("the column {} is given twice", name), "keep one"});
            } else {
                seen[*index] = true;
            }
        }
    }

    void read_row(const CsvRow& row) {
        GivenRow& given = table_.rows.emplace_back();
        given.line = static_cast<std::uint32_t>(row.line);
        given.values.resize(table_.kind->fields.size());
        given.at_fault = header_at_fault_;
        for (std::size_t i = 0; i < row.fields.size(); ++i) {
            if (!places_[i]) continue;
            const Field& field = table_.kind->fields[*places_[i]];
            auto value = parse_field(field, row.fields[i], zone_);
            if (value) {
                given.values[*places_[i]] = std::move(*value);
                continue;
            }
            given.at_fault = true;
            for (Refusal refusal : value.refusals()) {
                refusal.where = where(table_.file, given, field.name);
                refuse(std::move(refusal));
            }
        }
    }

    [[nodiscard]] bool has_label() const {
        const auto& label = table_.kind->label;
        // In two steps and not by std::find: g++ 12 takes the rest for a use of what is not set.
        const std::size_t none = table_.kind->fields.size();
        const std::size_t index = label.empty() ? none : table_.kind->index_of(label.front()).value_or(none);
        return std::any_of(places_.begin(), places_.end(),
                           [&](const auto& place) { return place.value_or(none) == index; });
    }

    void refuse(Refusal refusal) { complaints_.refuse(table_.file, std::move(refusal)); }

    const Zone& zone_;
    GivenTable& table_;
    Complaints& complaints_;
    bool header_read_ = false;
    bool header_at_fault_ = false;
    std::vector<std::optional<std::size_t>> places_;
};

}  // namespace

void read_table(std::string_view bytes, const Zone& zone, GivenTable& table, Complaints& complaints) {
    TableReading reading(zone, table, complaints);
    read_csv(
        bytes, table.file, [&](const CsvRow& row) { reading.take(row); }, complaints);
}

}  // namespace spoilbook
