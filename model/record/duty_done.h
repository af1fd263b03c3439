// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/record/define.h"

namespace spoilbook {

/// Something that a condition of kind duty asked for, as it was done.
struct DutyDone {
    Id id;
    std::string duty_done;
    Id consent;             ///< blank: whichever consent has a duty of that number
    std::string condition;  ///< number of the condition
    /// Which time it was: where the period began, the event, or the day; blank: the earliest one still open.
    std::optional<Instant> covers_from;
    std::optional<Instant> done_at;
    std::string by, evidence, remarks;
};

template <>
const Definition<DutyDone>& definition<DutyDone>();

}  // namespace spoilbook
