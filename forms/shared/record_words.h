// SPDX-License-Identifier: GPL-3.0-or-later
// A record's fields as a person reads them.
#pragma once

#include <QString>
#include <functional>

#include "model/book/book.h"
#include "model/unit/refusal.h"
#include "model/unit/zone.h"

namespace spoilbook::form {

/// "doors_open" → "doors open"; a unit that the name ends in is left out ("target_level_m" → "target level").
QString field_title(const Field& field);
/// How a reference is named: by asking the book each time, or from a list that was read once.
using LabelOf = std::function<QString(const Kind& kind, const Id& id)>;
LabelOf asking(const Book& book);
/// The labels of all rows that records of this kind may refer to, read at once for a table of many.
LabelOf read_labels(const Book& book, const Kind& kind);

/// The text of a stored value: references by label, times as the book's zone shows them, numbers in the
/// reader's language.
QString value_shown(const LabelOf& label_of, const Field& field, const Value& value, const Zone& zone);
/// The same as a file has it (model/record/field_text.h).
QString value_copied(const LabelOf& label_of, const Field& field, const Value& value, const Zone& zone);

/// How a record is spoken of: "trip T-0412", "cell A1, Gannet Patch"; one that has no label of its own by
/// the first that it holds: "tally L-0597, ST-0101, General".
QString record_title(const Book& book, const Kind& kind, const Row& row, const Zone& zone);

/// Why something was refused, for the place beside its field: without that place, and with the words of the
/// fields for their names.
QString refusals_beside(const Kind& kind, const Refusals& refusals);

}  // namespace spoilbook::form
