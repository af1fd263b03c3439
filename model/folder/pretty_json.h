// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace spoilbook {

/// JSON as a person reads it: two spaces a level, lists of bare values on one line, members in the order
/// given, whole numbers without a point; a line end at the end. The same value gives the same bytes.
std::string pretty_json(const nlohmann::ordered_json& node);

/// Members in the order of their names become members in that same order.
nlohmann::ordered_json ordered(const nlohmann::json& node);

}  // namespace spoilbook
