// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "model/book/book.h"

namespace spoilbook {

/// COLUMN=VALUE as a person types it; a blank value clears the field. The column "struck" with yes strikes
/// the record out.
struct FieldInput {
    std::string column;
    std::string text;
};

struct LogOutcome {
    std::optional<EntryName> entry;  ///< nothing: all was already so
    Id id;
    bool made = false;  ///< a new record
    EntryKind kind = EntryKind::change;
};

/// Writes or changes one record: what every field of the desks and `sbk log` call. `label` is the record's
/// own (T-0412); a record that has none yet is made. References are given by label. Refused, whole: an
/// unknown column or label, a value that does not parse or is out of range, an end before its start, a change
/// of something signed without act.why.
Checked<LogOutcome> log_record(Book& book, const Act& act, const Kind& kind, const std::string& label,
                               const std::vector<FieldInput>& inputs);

/// As log_record, within a change that is open: for a press that writes several records at once.
Checked<LogOutcome> log_record_in(Change& change, const Kind& kind, const std::string& as_typed,
                                  const std::vector<FieldInput>& inputs);

/// As log_record for a record that is there, whatever its label: for rows that have none, and for those that
/// share one (the versions of a condition, cells of the same name). Refused where there is no such row.
Checked<LogOutcome> change_record(Book& book, const Act& act, const Kind& kind, const Id& id,
                                  const std::vector<FieldInput>& inputs);

/// A label that the kind does not have yet: the highest number with this prefix, plus one ("T-0413").
std::string next_label(const Book& book, const Kind& kind, const std::string& prefix, int digits = 4);

}  // namespace spoilbook
