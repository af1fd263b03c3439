// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

#include "model/folder/complaints.h"

namespace spoilbook {

/// JSON nested deeper than this is refused: nothing in a book folder needs it.
inline constexpr std::size_t deepest_json = 64;

/// Reads JSON (RFC 8259), a leading byte order mark allowed. Refused: bytes that are not UTF-8, NUL, what is
/// not JSON (with line and column), a member given twice in one object (with its path), nesting deeper than
/// 64, a number beyond double. Answers nothing where anything was refused.
std::optional<nlohmann::json> read_json(std::string_view bytes, const std::string& file,
                                        Complaints& complaints);

/// The one form in which JSON is kept and compared: members in the order of their names, those that are null
/// left out, texts trimmed at both ends, whole numbers without a point.
nlohmann::json canonical(const nlohmann::json& given);

/// "barges[2]" and "capacity_m3" → "barges[2].capacity_m3"; nothing and "name" → "name".
std::string member_path(const std::string& path, std::string_view member);
std::string item_path(const std::string& path, std::size_t index);

/// What a value is, in words: "a text", "a number", "a list", …
std::string what_it_is(const nlohmann::json& value);

}  // namespace spoilbook
