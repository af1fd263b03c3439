// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/return/condition_named.h"

#include <algorithm>

namespace spoilbook {

std::string condition_named(const Condition& condition, const Season& season) {
    std::string name = "condition " + condition.condition;
    const auto& all = season.conditions.rows();
    const bool shared = std::any_of(all.begin(), all.end(), [&](const Condition& other) {
        return other.condition == condition.condition && other.consent != condition.consent;
    });
    const Consent* consent = season.consents.find(condition.consent);
    return shared && consent != nullptr ? name + " of " + consent->consent : name;
}

}  // namespace spoilbook
