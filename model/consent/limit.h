// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <memory>
#include <unordered_map>

#include "model/consent/count_list.h"
#include "model/consent/sweep.h"

namespace spoilbook {

/// One limit as it stands: a condition of kind quantity, for one of its members.
struct LimitState {
    const Condition* condition = nullptr;  ///< the version in force
    const Consent* consent = nullptr;
    Instant as_at;  ///< what the figures are true for
    Quantity quantity;
    std::optional<Member> member;  ///< nothing: the limit is one; an empty name: what has no member
    std::optional<Instant> window_start, window_end;
    std::optional<double> limit;  ///< in the measure's unit, or a fraction for a share
    double used = 0;              ///< likewise
    double used_u = 0;
    std::optional<double>
        used_over_years;           ///< mean over years: the first years' other reading (sum ÷ years elapsed)
    std::optional<double> p_over;  ///< nothing where a load is unknown or there is no limit
    std::optional<Instant> first_over;
    std::size_t unknown = 0;  ///< loads that no method can value
    double of_total = 0;      ///< for a share: what it is a share of
    /// Loads that may count too, for all that is recorded of them (claim, material, place, barge or tug), and
    /// what would be used if all of them did; nothing where there are none.
    std::size_t not_recorded = 0;
    std::optional<double> used_at_most;
    /// With the factors that the authority had accepted, and with those in force in the book; nothing where
    /// both readings are one. `used` is the stricter.
    std::optional<double> used_as_reported, used_as_restated;

    [[nodiscard]] std::optional<double> headroom() const {
        return limit ? std::optional(*limit - used) : std::nullopt;
    }
    /// Whether what is not recorded decides on which side of the limit it is.
    [[nodiscard]] bool hangs_on_records() const;
    /// used / limit; nothing without a limit or where it is 0.
    [[nodiscard]] std::optional<double> used_share() const {
        return limit && *limit > 0 ? std::optional(used / *limit) : std::nullopt;
    }
};

/// [from, to): the version of a condition in force at an event's time is the one that judges it.
bool in_force(const Condition& condition, Instant at);
/// How counts add up in a limit's measure.
Adding adding_of(const Quantity& quantity);

/// Every limit of the season in force at `as_at`, a row a condition and member, in the order of the book.
/// Counts what had happened by `as_at`, both ends included; knows no clock.
/// A condition that does not read is left out and refused in `refusals`. While a revised factor waits for the
/// authority, each limit is worked out as reported and as restated and the stricter one judged: the higher
/// used, of an at_least the lower; the earlier first_over.
std::vector<LimitState> limits_at(const Ledger& ledger, Instant as_at, Refusals* refusals = nullptr);
/// The same with the factors in force in the book alone, accepted or not.
std::vector<LimitState> limits_as_restated(const Ledger& ledger, Instant as_at, Refusals* refusals = nullptr);
/// Limits judged like limits_at, with the factors that the authority had accepted by one instant: the season
/// is valued anew as reported once, where a factor waits, and not for each condition. The ledger must outlive
/// it.
class JudgedLimits {
 public:
    JudgedLimits(const Ledger& ledger, Instant accepted_by);
    /// The rows of one condition of kind quantity, in force or not.
    [[nodiscard]] std::vector<LimitState> limits_of(const Condition& condition, Instant as_at,
                                                    Refusals* refusals = nullptr) const;
    /// The row of a condition that is one and whose window is a trip: of that trip (LedgerLine::trip_number),
    /// by what of it counted by the as-at.
    [[nodiscard]] LimitState limit_of_trip(const Condition& condition, const Quantity& quantity,
                                           Instant as_at, std::uint32_t trip) const;
    /// The rows of all that are in force.
    [[nodiscard]] std::vector<LimitState> limits_at(Instant as_at, Refusals* refusals = nullptr) const;
    /// The earlier of both readings, member by member (first_over.h).
    [[nodiscard]] std::unordered_map<Id, Instant> first_overs(const Condition& any_version, Instant as_at,
                                                              std::optional<Instant> from) const;
    /// As reported; null where both readings are one.
    [[nodiscard]] const Ledger* reported() const { return reported_.get(); }

 private:
    const Ledger& ledger_;
    std::unique_ptr<const Season> reported_season_;
    std::unique_ptr<const Ledger> reported_;
};
/// The rows of one condition alone.
std::vector<LimitState> limits_of(const Ledger& ledger, const Condition& condition, Instant as_at,
                                  Refusals* refusals = nullptr);
std::vector<LimitState> limits_of_as_restated(const Ledger& ledger, const Condition& condition, Instant as_at,
                                              Refusals* refusals = nullptr);
/// The row of one trip, see JudgedLimits::limit_of_trip.
LimitState limit_of_trip_as_restated(const Ledger& ledger, const Condition& condition,
                                     const Quantity& quantity, Instant as_at, std::uint32_t trip);

}  // namespace spoilbook
