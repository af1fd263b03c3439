// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>

#include "model/consent/count.h"
#include "model/consent/quantity.h"
#include "model/consent/window.h"

namespace spoilbook {

/// The rolling totals of a limit, member by member, while its counts are walked in order of time. Adding and
/// taking away run in extended precision, so that a total over years has no drift that could matter.
class Sweep {
 public:
    /// `counts` ascending by time, alive as long as the sweep. `members` ≥ 0: how many there are beside none.
    Sweep(const std::vector<Count>& counts, int members, Adding adding);

    /// Lets everything up to and including `t` in, takes out what is no longer in `window`, and takes back
    /// what is in it again: a rolling window's start goes back where months clamp (30 March 10:00 begins on
    /// 28 February 10:00, 31 March 08:00 on 28 February 08:00) and where the clock does. True where it took
    /// back.
    bool move_to(Instant t, const Window& window);
    /// Total of one member (-1: what has none; for a limit without members that is all of it).
    [[nodiscard]] double of(int member) const;
    /// Of all members and of what has none; a trip or day that several of them share is one.
    [[nodiscard]] double total() const { return value_of(all_); }
    /// Whether a trip or day of that number is in for the member; for any where it is nothing.
    [[nodiscard]] bool holds(std::optional<int> member, std::uint32_t key) const;
    /// How often a count was let in or taken out so far: all the work that moving is. Each goes in once and
    /// out at most once, but for those that were taken back.
    [[nodiscard]] std::size_t moves() const { return moves_; }

 private:
    struct MemberSum {
        long double sum = 0;
        std::vector<std::uint32_t> times_held;  ///< by key
        std::uint32_t distinct = 0;
    };
    static double value_of(const MemberSum& held) { return static_cast<double>(held.sum) + held.distinct; }
    void put(const Count& count, bool in);
    void put(const Count& count, bool in, MemberSum& member_sum) const;

    const std::vector<Count>& counts_;
    Adding adding_;
    std::vector<MemberSum> sums_;  ///< member + 1
    MemberSum all_;
    std::size_t first_ = 0;  ///< first count that is in
    std::size_t next_ = 0;   ///< first count that is not yet in
    std::size_t moves_ = 0;
};

/// What a window holds at t for one member, or for all together, with its uncertainty.
Used used_in(const std::vector<Count>& counts, std::optional<int> member, Adding adding, const Window& window,
             Instant t);

/// What one member's share of all that the window holds is, 0 where that is nothing. The total holds the
/// member itself, so their errors are not independent: each count enters with its sensitivity, (its own part
/// − share) / total (GUM 5.1.2).
Estimate share_in(const std::vector<Count>& counts, int member, Adding adding, const Window& window,
                  Instant t, double total);

/// More than the limit by more than the rounding of sums: a season that meets its limit to the last litre
/// has not exceeded it.
bool exceeds(double used, double limit);

}  // namespace spoilbook
