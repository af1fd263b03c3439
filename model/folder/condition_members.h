// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "model/folder/object_shape.h"

namespace spoilbook {

/// The members that a condition of this kind may have beside condition, consent, text, wording, kind, from
/// and to: those of every condition (applies, warn_at, responses, open_question, settled) and those of its
/// kind. An unknown kind has only the common ones.
ObjectShape condition_shape(const std::string& kind);

/// {weekends, dates[], yearly[]}
const ObjectShape& not_working_shape();
/// {name, from, to}
const ObjectShape& campaign_shape();

/// Checks the members of one condition (an object without those that are fields of their own).
void check_condition(const nlohmann::json& body, const std::string& kind, const std::string& path,
                     const JsonReading& reading);

/// A record that a condition names: `kind` claim, ground, cell, exclusion, material, plant, site.
struct NamedInCondition {
    std::string kind;
    std::string name;
    std::string path;  ///< from the condition: applies.claims[0]
};

/// Every name in the body of a condition that must be known: of applies, inside, outside, sites, control,
/// claim, ground.
std::vector<NamedInCondition> names_in(const nlohmann::json& body);

}  // namespace spoilbook
