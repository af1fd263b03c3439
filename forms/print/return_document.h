// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/print/document.h"
#include "model/return/return_facts.h"

namespace spoilbook::print {

/// A return as it is printed: first page the answer, then totals, limits, what was done, the schedule of
/// trips, and the lines to sign. `digests`: file name and SHA-256 (hexadecimal) of the files that go with it.
Document return_document(const ReturnFacts& facts,
                         const std::vector<std::pair<std::string, std::string>>& digests);

}  // namespace spoilbook::print
