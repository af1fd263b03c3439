// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>

#include "model/unit/id.h"

namespace spoilbook {

/// A row of the folder that is not in the book yet: the place of its table among all_kinds() and its own.
struct PlannedRow {
    std::size_t table = 0;
    std::size_t row = 0;
};

/// The id that stands for such a row until it is written. No UUIDv7 before the year 10 889 looks like it.
Id planned_id(PlannedRow row);
/// Nothing for an id of the book.
std::optional<PlannedRow> planned_row(const Id& id);

}  // namespace spoilbook
