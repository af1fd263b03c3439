// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/consent/count_list.h"
#include "model/consent/release_check.h"
#include "model/consent/sweep.h"
#include "model/consent/used_of.h"

namespace spoilbook {

/// By which methods the load itself may count: as the limit names them, or by any that gives its measure, as
/// for a load that is still to be read.
enum class OwnBy { limit_method, any_method };

/// A member of a limit that stands for each of several, before the planned load.
struct MemberRoom {
    Id member;
    std::string name;
    double share = 0;      ///< used of the limit before the load, 1 being all of it
    bool has_room = true;  ///< for the load
    bool known = true;     ///< every load that counts there can be valued
};

/// One limit held against a planned release, in a ledger that already has it and all that counts before it.
class QuantityCheck {
 public:
    QuantityCheck(const Ledger& ledger, const Condition& condition, const Quantity& quantity, const Id& load,
                  Instant at, OwnBy own_by = OwnBy::limit_method);

    /// Clear where the load is outside the limit's scope or fits; hold where it does not, until the first
    /// instant at which it would (its window's next start, or when enough has left a rolling window; nothing
    /// where the load alone is too much); cannot tell where an amount is unknown, or where it would not fit
    /// and it is not known whether it, or what went before it, counts at all: no ground said, no claim,
    /// material, tug or class recorded. Of hours the plan has none: how long the doors will stand open is
    /// taken as the longest on record by then, and where that would not fit, or there is none, it cannot be
    /// told.
    [[nodiscard]] CheckReason reason() const;
    /// Each member, in the order of the book; empty where the limit is not about the load, wherever it goes.
    [[nodiscard]] std::vector<MemberRoom> rooms() const;
    /// The largest part of the load, 0 to 1, that the limit lets go, under the member with most room where
    /// none is said. Nothing where an amount is unknown.
    [[nodiscard]] std::optional<double> largest_share() const;

 private:
    /// Under which member the planned load is taken to count: where it stands, elsewhere, or nowhere.
    struct Own {
        bool in = true;
        std::optional<int> moved_to;
        double share = 1;  ///< how much of it
    };

    void find_unplaced();
    [[nodiscard]] std::optional<Instant> counts_from() const;
    [[nodiscard]] Sweep sweep() const;
    [[nodiscard]] double added(const Sweep& others, std::optional<int> member, Instant t, Own own) const;
    [[nodiscard]] UsedOf used(const Sweep& others, int member, Instant t, Own own, double more = 0) const;
    [[nodiscard]] double unsaid(const Sweep& others, int member) const;
    [[nodiscard]] bool unsaid_is_unknown(int member) const;
    [[nodiscard]] bool is_day_of_plan(std::uint32_t key) const;
    [[nodiscard]] std::vector<int> where_it_may_go() const;
    [[nodiscard]] bool may_take_too_long(const Sweep& others, int member, bool at_worst) const;
    [[nodiscard]] bool may_be_of(const Count& count, int member) const;
    [[nodiscard]] std::string too_long_text() const;
    [[nodiscard]] bool fits(Sweep& others, int member, Instant t, Own own) const;
    [[nodiscard]] double largest_share(const Sweep& others, int member, std::optional<int> moved_to) const;
    [[nodiscard]] bool unknown(int member) const;
    [[nodiscard]] CheckReason worst() const;
    [[nodiscard]] bool may_not_fit() const;
    [[nodiscard]] CheckReason judge(int member) const;
    [[nodiscard]] CheckReason judge_unplaced() const;
    [[nodiscard]] std::optional<Instant> until(int member, Own own) const;
    [[nodiscard]] std::vector<Instant> turns() const;

    const Season& season_;
    const Quantity& quantity_;
    Instant at_;
    Consent consent_;
    std::vector<Member> members_;
    std::vector<Count> own_;       ///< of the planned load
    std::vector<Count> anywhere_;  ///< the same, if where it goes turns out to be in the scope
    std::vector<Count> possible_;  ///< the same, if all that is not known of it turns out to be in the scope
    std::vector<Count> others_;    ///< all else up to the plan; nothing where each trip stands alone
    std::vector<Count> doubtful_others_;     ///< the same, if what is not recorded of it turns out to be in
    std::optional<double> longest_release_;  ///< h, on record by then; of a limit on hours alone
    bool unplaced_ = false;                  ///< part of the load names no member
    Id ground_;                              ///< of the planned release; nil: not said
    std::optional<Window> window_;
};

}  // namespace spoilbook
