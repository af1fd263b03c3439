// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cstddef>
#include <optional>

#include "model/turbidity/logger_layout.h"
#include "model/unit/byte_source.h"

namespace spoilbook {

/// How the rows of a table lie in a logger's file.
struct LoggerShape {
    char delimiter = ',';  ///< ' ': any run of blanks
    std::size_t fields = 0;
    std::size_t lines = 0;   ///< that have this shape; 0: there is no table
    std::size_t first = 0;   ///< line of the first of them
    bool clock = false;      ///< they have a time of day
    std::size_t column = 0;  ///< of times that are one number: where they stand
    std::optional<DateOrder> counted;
    TimeParts parts;          ///< of times that are parted: with a year, where they stand
    bool parts_named = true;  ///< heads say so; else the numbers alone look like it
};

/// The shape that most of the first two thousand lines have; see logger_table.
LoggerShape shape_of(const ByteSource& bytes);

}  // namespace spoilbook
