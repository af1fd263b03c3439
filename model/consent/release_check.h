// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/check_facts.h"
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

/// A reason before it is known of which condition it is.
CheckReason reason_of(CheckState state, std::string why = "", std::optional<Instant> until = std::nullopt);

/// What a condition asks to be done before the doors open. It stands beside the verdict: it can still be
/// done.
struct CheckTask {
    const Condition* condition = nullptr;
    const Consent* consent = nullptr;
    Instant from;
    std::string what;  ///< in words
};

/// What every condition in force says of a planned release. It never says that a barge may sail: that is the
/// master's, and the consent's text prevails.
struct ReleaseCheck {
    CheckState verdict = CheckState::clear;  ///< hold beats cannot tell beats clear
    std::vector<CheckReason> reasons;
    std::vector<CheckTask> to_do;
    /// The open cell with the least in the limits' windows (due_cell.h); empty: none.
    std::string due_cell;
};

/// A read: pure, of a ledger of what was done, a plan and what was read beside. Judges conditions of every
/// kind but text, each in a file of its own (kind_checks.h). Points into the ledger's season,
/// which must outlive the answer. Refused where the load is unknown. A caller that has a book asks
/// model/answer/checked_release.h.
Checked<ReleaseCheck> check_release(const Ledger& done, PlannedRelease planned, const CheckFacts& facts = {});

}  // namespace spoilbook
