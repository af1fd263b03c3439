// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"

namespace spoilbook {

/// What of a released load is not recorded though a condition in force as it was released asks for it.
struct NotRecorded {
    std::string what;  ///< "material", "claim"
    std::vector<const Condition*> asked_by;
};

/// A condition asks for a load's material or claim where it is about some alone, or stands for each of them,
/// and may be about this release for all else that is recorded. A load of which one part has no claim has not
/// all of them.
std::vector<NotRecorded> not_recorded_of_load(const Ledger& ledger, const LedgerLine& line);

}  // namespace spoilbook
