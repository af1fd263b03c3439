// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/logging/log_record.h"
#include "model/unit/instant.h"

namespace spoilbook {

/// A file that shows that something was done, as it came.
struct EvidenceBytes {
    std::string name;  ///< the file's own, without its folder
    std::string bytes;
};

/// What a condition of kind duty asked for, done.
struct DutyMark {
    std::string consent;  ///< its number; blank: whichever has a duty of that number
    std::string condition;
    std::optional<Instant> covers_from;  ///< blank: the earliest time still open
    Instant done_at;
    std::string by, evidence, remarks;
    std::vector<EvidenceBytes> files;  ///< kept in the book; `evidence` comes to name them with their digests
};

/// Writes one record of what was done, and keeps its files, as one entry. Refused: a condition that is no
/// duty of the book; a file of no plain name, or of 0 bytes, or over 1 GB.
Checked<LogOutcome> mark_done(Book& book, const Act& act, const DutyMark& mark);

/// Keeps one more file for a duty that is recorded as done.
Checked<LogOutcome> add_evidence(Book& book, const Act& act, const Id& duty_done, const EvidenceBytes& file);

}  // namespace spoilbook
