// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/consent/kind_checks.h"

namespace spoilbook {

CheckReason check_surface(const Condition& condition, const LedgerLine& line, const CheckFacts& facts) {
    CheckReason worst = reason_of(CheckState::clear);
    for (const auto& bed : facts.beds) {
        const bool may_be_there = !bed.cell || !line.cell || bed.cell == line.cell;
        if (bed.condition != condition.id || bed.ground != line.ground || !may_be_there) continue;
        if (bed.state == Compliance::complied) continue;
        const std::string why = bed.named + ": " + bed.why;
        const bool is_there = !bed.cell || line.cell;
        if (bed.state == Compliance::breached && is_there)
            return reason_of(CheckState::hold, why + "; until a survey shows otherwise");
        worst = reason_of(CheckState::cannot_tell,
                          is_there ? why : why + "; nobody said which cell the release is for");
    }
    return worst;
}

}  // namespace spoilbook
