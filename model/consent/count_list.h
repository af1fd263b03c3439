// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/count.h"
#include "model/consent/ledger.h"
#include "model/consent/quantity.h"

namespace spoilbook {

/// One of the things that a limit stands for separately: a cell, a claim, …
struct Member {
    std::string name;  ///< GROUND/CELL where another cell in scope bears the same name
    Id id;
};

/// Every member in a limit's scope, used or not, in the order of the book; empty where the limit is one.
std::vector<Member> members_of(const Quantity& quantity, const Season& season);

/// The number of a local day: what a count's key is under a limit on days.
std::uint32_t day_key(Day day);

/// What is wanted of the counts of a limit.
struct CountsWanted {
    /// What was released (or loaded) before `from` or after `to` is left out: a window of a month in a book
    /// of twenty years needs no more than the month. Nothing: no such end.
    std::optional<Instant> from, to;
    /// False: amounts without their uncertainty, which is all that is held against a limit.
    bool with_u = true;
    /// True: also what may be in the scope for all that is recorded of it, each count `doubtful`.
    bool with_doubtful = false;
};

/// Whether a count whose member is not recorded may be of that one.
bool may_be_of(const Count& count, const Quantity& quantity, const Member& member, const Season& season);

/// Whether what a count is of counts whole for that member by another part already: trips, days and hours are
/// not split. `counts` ascending by time.
bool is_in_already(const Count& count, int member, const Quantity& quantity,
                   const std::vector<Count>& counts);

/// Everything that counts under a limit, ascending by time, whatever the window: releases (or loads dredged)
/// in its scope with their amount in its measure, and opening amounts of the condition. A scope by claim
/// counts the part of a load that came from it, and a trip whole if any part did; a scope by material the
/// load's own.
std::vector<Count> counts_of(const Quantity& quantity, const std::vector<Member>& members,
                             const Condition& condition, const Ledger& ledger,
                             const CountsWanted& wanted = {});
/// What of a line may turn out to be in a scope (scope_filter.h).
enum class InScope {
    as_known,    ///< what is not known of it is out
    as_planned,  ///< where and as what class it goes may turn out to be in; of the load itself what is
                 ///< recorded
    as_may_be    ///< whatever is not known or not recorded may turn out to be in
};

/// Of one line of the ledger alone.
std::vector<Count> counts_of(const Quantity& quantity, const std::vector<Member>& members,
                             const LedgerLine& line, const Ledger& ledger, InScope in_scope);

}  // namespace spoilbook
