// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "model/folder/complaints.h"
#include "model/folder/given.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// What reading a JSON file goes along with.
struct JsonReading {
    const std::string& file;
    const Zone& zone;
    Complaints& complaints;

    void refuse(std::string code, const std::string& path, std::string what, std::string mend) const;
};

/// One JSON value as a field of a kind: null is blank, a wrong type is refused, the rest as parse_field has
/// it. Refusals name `path`.
Value read_member(const nlohmann::json& value, const Field& field, const std::string& path,
                  const JsonReading& reading);

/// Reads the members of an object into `row` by the description of its kind. `elsewhere` are fields that are
/// not members here (they follow from where the object stands); `nested` are members that the caller reads.
/// An unknown member is refused with the nearest known name. False where it is not an object.
bool read_members(const nlohmann::json& object, const Kind& kind,
                  std::initializer_list<std::string_view> elsewhere,
                  std::initializer_list<std::string_view> nested, const JsonReading& reading, GivenRow& row);

/// The items of a list member; nothing where it is absent or null, refused where it is not a list.
std::vector<const nlohmann::json*> items_of(const nlohmann::json& object, std::string_view member,
                                            const std::string& path, const JsonReading& reading);

/// Refuses members of an object that are not known, with the nearest name.
void refuse_unknown(const nlohmann::json& object, const std::vector<std::string>& known,
                    const std::string& path, const JsonReading& reading);

}  // namespace spoilbook
