// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "model/record/value.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// Rows of numbers, such as an ullage table.
using Table = std::vector<std::vector<double>>;

/// Stored value → struct member. The value has the type that the field's kind says; anything else is a
/// broken file and throws std::runtime_error.
void read_value(const Value& value, std::string& into);
void read_value(const Value& value, std::optional<double>& into);
void read_value(const Value& value, std::optional<std::int64_t>& into);
void read_value(const Value& value, std::optional<Instant>& into);
void read_value(const Value& value, std::vector<double>& into);
void read_value(const Value& value, Table& into);
void read_value(const Value& value, Id& into);

/// The canonical stored texts. The parsers answer nothing where the text is not of the form.
std::string numbers_text(const std::vector<double>& numbers);
std::optional<std::vector<double>> parse_numbers(std::string_view text);
std::string table_text(const Table& table);
std::optional<Table> parse_table(std::string_view text);

}  // namespace spoilbook
