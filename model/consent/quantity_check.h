// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/count_list.h"
#include "model/consent/release_check.h"

namespace spoilbook {

/// One limit held against a planned release, in a ledger that already has it and all that counts before it.
class QuantityCheck {
 public:
    QuantityCheck(const Ledger& ledger, const Condition& condition, const Quantity& quantity, const Id& load,
                  Instant at);

    /// Clear where the load is outside the limit's scope or fits; hold where it does not, until its window's
    /// next start, or for a rolling window until enough has left it; cannot tell where an amount is unknown.
    [[nodiscard]] CheckReason reason() const;
    /// The member with the least in the window that still has room for the load; empty: none.
    [[nodiscard]] std::string due_member() const;

 private:
    [[nodiscard]] bool own(const Count& count) const;
    [[nodiscard]] double used(int member, Instant t, bool with_own) const;
    [[nodiscard]] double own_amount() const;
    [[nodiscard]] std::optional<double> limit_of(Instant t) const;
    [[nodiscard]] CheckReason judge(int member) const;
    [[nodiscard]] std::optional<Instant> until(int member) const;

    const Season& season_;
    const Quantity& quantity_;
    Instant at_;
    std::uint32_t load_number_ = 0;
    Consent consent_;
    std::vector<Member> members_;
    std::vector<Count> counts_;
    std::optional<Window> window_;
};

}  // namespace spoilbook
