// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

#include "model/unit/id.h"

namespace spoilbook {

/// One field as the book stores it. Blank (monostate) is "not recorded", never zero and never an empty text.
/// Instants are int64 (ms UTC); days, number lists, tables and JSON are text in one canonical form.
using Value = std::variant<std::monostate, std::int64_t, double, std::string, Id>;

inline bool is_blank(const Value& value) {
    return value.index() == 0;
}

/// One row of one kind: its values in the order of the kind's fields.
struct Row {
    Id id;
    std::vector<Value> values;
    bool struck = false;  ///< struck out: kept in the book, counted nowhere
};

}  // namespace spoilbook
