// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/logging/log_record.h"

namespace spoilbook {

/// A bulking factor that a person decides on after seeing what the claim-periods say.
struct AcceptedProposal {
    std::string material;  ///< its name
    Instant from;          ///< in force from then on
    double value = 0;
    std::optional<double> u;
    std::vector<std::string> evidence;  ///< labels of the claim-periods it rests on
};

/// Writes the decision as a new row of factors.csv, label F-n: by is act.who, why is act.why, and `accepted`
/// stays blank until the authority has accepted it. Refused without a name or a reason, and as log_record
/// refuses.
Checked<LogOutcome> accept_proposal(Book& book, const Act& act, const AcceptedProposal& proposal);

}  // namespace spoilbook
