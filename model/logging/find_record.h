// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/book/book.h"

namespace spoilbook {

/// A row's values as they will stand; what is not yet known is blank.
using Values = std::vector<Value>;

/// The row that a label names, where `values` tells the parent if labels are unique only in one. Refused
/// where several fit.
Checked<std::optional<Row>> find_record(const Book& book, const Kind& kind, const std::string& label,
                                        const std::optional<Id>& parent);

/// The id that a reference field's text names. A cell is looked for in the ground that the row names, a
/// bucket on the dredger of its tally's own shift, else of its station's; elsewhere, and where that is blank,
/// the label must be the only one.
Checked<Id> find_referred(const Book& book, const Kind& kind, const Field& field, const std::string& label,
                          const Values& values);

}  // namespace spoilbook
