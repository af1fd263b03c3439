// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>

#include "model/folder/given.h"
#include "model/folder/member_reader.h"
#include "model/record/consent.h"

namespace spoilbook {

/// The fields of one condition into `row`, whose path says where it stands; whatever else stands there is
/// checked by its kind and goes, in canonical form, into the body. Its consent is the caller's to set.
void read_condition_members(const nlohmann::json& condition, const Kind& kind, const JsonReading& reading,
                            GivenRow& row);

/// One condition by itself, as it would stand in consents.json, by the same checks; without id and consent.
/// Names in it are not looked up. `where` of a refusal is `file` and the path of the member: "FILE
/// window.kind".
Checked<Condition> condition_from(const nlohmann::json& condition, const std::string& file, const Zone& zone);
/// The same from a file's bytes.
Checked<Condition> condition_from_text(std::string_view bytes, const std::string& file, const Zone& zone);

/// The condition as it would stand in consents.json.
nlohmann::ordered_json condition_as_json(const Condition& condition, const Zone& zone);

}  // namespace spoilbook
