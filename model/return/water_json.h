// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/json_values.h"
#include "model/return/return_facts.h"

namespace spoilbook {

/// turbidity[] of return.json: a row a site.
OrderedJson water_json(const ReturnFacts& facts);
/// triggers[] of return.json: what was passed in the period, with its answer.
OrderedJson triggers_json(const ReturnFacts& facts);

}  // namespace spoilbook
