// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/json_values.h"
#include "model/consent/finding.h"
#include "model/consent/limit.h"

namespace spoilbook {

// One row each of what commands and the return print alike; keys in snake_case with the unit as suffix,
// numbers unrounded.

OrderedJson limit_json(const LimitState& state, const Zone& zone);
OrderedJson finding_json(const Finding& found, const Zone& zone);

}  // namespace spoilbook
