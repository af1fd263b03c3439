// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/book/book.h"
#include "model/logging/log_record.h"

namespace spoilbook {

/// Why a record cannot be logged under this label with these inputs as they were typed: a blank label, a kind
/// that has none, text that is not UTF-8, a column given twice, a `struck` that is not yes.
Refusals why_not_logged(const Kind& kind, const std::string& label, const std::vector<FieldInput>& inputs);

/// Why these inputs cannot be taken as they were typed, whatever record they are for.
Refusals why_not_typed(const Kind& kind, const std::vector<FieldInput>& inputs);

/// Why a row with these values may not stand beside those that the book has: another row of the kind has the
/// same label (within the same parent, where labels are unique only there). `own` is the row itself, where it
/// has been written before; rows that are struck out do not count.
std::optional<Refusal> why_label_taken(const Book& book, const Kind& kind, const std::optional<Id>& own,
                                       const std::vector<Value>& values);

}  // namespace spoilbook
