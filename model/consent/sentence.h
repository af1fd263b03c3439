// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/record/consent.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// What a condition asks, as one plain sentence made of its stored members (docs/conditions.md); of a kind
/// that keeps text alone, that text. Every member of its kind and of `applies` is told; what is left out is
/// told by its default where that changes the sense. A member that is needed and not there stands as "…": a
/// condition that is still being written has its sentence too. Times stand as they were given.
std::string condition_sentence(const Condition& condition);

/// What stands beside the sentence, a sentence each: from when to when this version is in force, warnings,
/// responses, what is still open and how it was settled.
std::vector<std::string> condition_notes(const Condition& condition, const Zone& zone);

}  // namespace spoilbook
