// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/kind_checks.h"

namespace spoilbook {

CheckReason check_surface(const Condition& condition, const LedgerLine& line, const CheckFacts& facts) {
    CheckReason worst = reason_of(CheckState::clear);
    for (const auto& bed : facts.beds) {
        if (bed.condition != condition.id || (bed.place != line.ground && bed.place != line.cell)) continue;
        if (bed.state == Compliance::breached)
            return reason_of(CheckState::hold,
                             bed.named + ": " + bed.why + "; until a survey shows otherwise");
        if (bed.state == Compliance::cannot_tell)
            worst = reason_of(CheckState::cannot_tell, bed.named + ": " + bed.why);
    }
    return worst;
}

}  // namespace spoilbook
