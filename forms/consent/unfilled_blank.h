// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "forms/consent/condition_blank.h"
#include "model/record/consent.h"

namespace spoilbook::form {

/// The draft as the condition whose sentence is read while it is written; nothing in it is checked.
Condition as_condition(const Draft& draft);

/// The blanks of the sentence that must be filled and are not, in the order of reading, by where they stand
/// (of a `which` with its own '?'): those that would close a gap of the sentence, which the model leaves as
/// "…".
std::vector<std::string> unfilled_blanks(const Draft& draft, const std::vector<Piece>& pieces);

}  // namespace spoilbook::form
