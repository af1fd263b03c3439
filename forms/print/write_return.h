// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/return/return_facts.h"

namespace spoilbook::print {

/// Writes return.json, trips.csv, return.pdf and SHA256SUMS into a folder that is new or empty, whole or not
/// at all. Needs a PrintSession. Refused while something is missing from the return.
Checked<Done> write_return(const ReturnFacts& facts, const std::string& folder);

}  // namespace spoilbook::print
