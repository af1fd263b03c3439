// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <limits>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "model/folder/member_reader.h"

namespace spoilbook {

/// What a member of a JSON object holds.
enum class Holds {
    text,
    texts,  ///< a list of them
    number,
    numbers,
    truth,        ///< true or false
    choice,       ///< one of `choices`
    some_of,      ///< a list of `choices`
    when,         ///< a time, or a day that stands for its local midnight
    days,         ///< a list of days
    month_day,    ///< MM-DD
    month_days,   ///< a list of MM-DD or MM-DD..MM-DD
    clock_spans,  ///< a list of HH:MM..HH:MM
    object,       ///< of `shape`
    objects,      ///< a list of them
    lists,        ///< an object whose members are lists of texts
};

struct ObjectShape;

/// One member: what it holds, and within which bounds. Where it may hold two things (a number or an object),
/// it stands twice.
struct ObjectMember {
    std::string name;
    Holds holds = Holds::text;
    bool required = false;
    std::vector<std::string> choices{};
    const ObjectShape& (*shape)() = nullptr;
    double low = -std::numeric_limits<double>::max();
    double high = std::numeric_limits<double>::max();
};

/// The members that an object may have; of each group in `one_of` exactly one must stand.
struct ObjectShape {
    std::vector<ObjectMember> members;
    std::vector<std::vector<std::string>> one_of{};
};

/// Refuses members that are not of the shape (with the nearest name), values of the wrong type or outside
/// their bounds, and required members that are missing; nested ones too. A null member counts as absent.
void check_object(const nlohmann::json& object, const ObjectShape& shape, const std::string& path,
                  const JsonReading& reading);

}  // namespace spoilbook
