// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/ledger.h"
#include "model/consent/what_if.h"

namespace spoilbook {

enum class CheckState { clear, cannot_tell, hold };

std::string check_text(CheckState state);

/// One condition that does not let the release go clear.
struct CheckReason {
    const Condition* condition = nullptr;
    const Consent* consent = nullptr;
    CheckState state = CheckState::cannot_tell;
    std::optional<Instant>
        until;        ///< the first instant at which it no longer holds; nothing: no time ends it
    std::string why;  ///< in words: what holds, or what is missing
};

/// What every condition in force says of a planned release. It never says that a barge may sail: that is the
/// master's, and the consent's text prevails.
struct ReleaseCheck {
    CheckState verdict = CheckState::clear;  ///< hold beats cannot tell beats clear
    std::vector<CheckReason> reasons;
    std::string due_cell;  ///< the open cell with the least in its limit's window; empty: none
};

/// A read: pure, of a season and a plan. Judges conditions of the kinds quantity, place, time and
/// series of wave height; of turbidity with a stop it cannot tell yet. Points into `season`, which must
/// outlive the answer. Refused where the load is unknown.
Checked<ReleaseCheck> check_release(const Season& season, PlannedRelease planned);

}  // namespace spoilbook
