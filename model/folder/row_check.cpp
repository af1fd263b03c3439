// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/row_check.h"

#include <fmt/format.h>

#include "model/record/field_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

std::string shown(const Value& value) {
    if (const auto* ms = std::get_if<std::int64_t>(&value)) return instant_text(Instant{*ms}, Zone::utc());
    const auto* text = std::get_if<std::string>(&value);
    return text == nullptr ? "" : *text;
}

}  // namespace

void check_row(const GivenTable& table, const GivenRow& row, Complaints& complaints) {
    const Kind& kind = *table.kind;
    if (kind.label_required && !kind.label.empty() &&
        is_blank(value_of(kind, row.values, kind.label.front()))) {
        complaints.refuse(table.file, {"blank-id", where(table.file, row, kind.label.front()),
                                       fmt::format("a {} without {}", kind.name, kind.label.front()),
                                       "give every row its own"});
    }
    for (const auto& [start_name, end_name] : kind.ordered) {
        const Value& start = value_of(kind, row.values, start_name);
        const Value& end = value_of(kind, row.values, end_name);
        if (is_blank(start) || is_blank(end) || start.index() != end.index() || !(end < start)) continue;
        complaints.refuse(table.file, {"backwards", where(table.file, row, end_name),
                                       fmt::format("{} {} lies before {} {}", end_name, shown(end),
                                                   start_name, shown(start)),
                                       "correct one of the two"});
    }
}

void check_rows(const GivenTable& table, Complaints& complaints) {
    for (const GivenRow& row : table.rows)
        check_row(table, row, complaints);
}

}  // namespace spoilbook
