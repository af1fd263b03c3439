// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/folder/planned_id.h"

namespace spoilbook {

namespace {

constexpr std::uint8_t mark = 0xFF;

}  // namespace

Id planned_id(PlannedRow row) {
    Id id;
    id.bytes[0] = mark;
    id.bytes[1] = static_cast<std::uint8_t>(row.table);
    for (std::size_t i = 0; i < 8; ++i)
        id.bytes[15 - i] = static_cast<std::uint8_t>(row.row >> (8 * i));
    return id;
}

std::optional<PlannedRow> planned_row(const Id& id) {
    if (id.bytes[0] != mark) return std::nullopt;
    PlannedRow row{id.bytes[1], 0};
    for (std::size_t i = 8; i < 16; ++i)
        row.row = (row.row << 8U) | id.bytes[i];
    return row;
}

}  // namespace spoilbook
