// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/release_check.h"

namespace spoilbook {

/// What a condition of kind duty says of a release at `at`: a duty that blocks releases and is overdue then
/// holds, and only doing it ends that.
CheckReason judge_duty(const Ledger& ledger, const Condition& condition, Instant at);

}  // namespace spoilbook
