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
    [[nodiscard]] double total() const;
    /// Whether a trip or day of that number is in for the member.
    [[nodiscard]] bool holds(int member, std::uint32_t key) const;

 private:
    struct MemberSum {
        long double sum = 0;
        std::vector<std::uint32_t> times_held;  ///< by key
        std::uint32_t distinct = 0;
    };
    void put(const Count& count, bool in);

    const std::vector<Count>& counts_;
    Adding adding_;
    std::vector<MemberSum> sums_;  ///< member + 1
    std::size_t first_ = 0;        ///< first count that is in
    std::size_t next_ = 0;         ///< first count that is not yet in
};

/// What a window holds at t for one member, with its uncertainty.
Used used_in(const std::vector<Count>& counts, int member, Adding adding, const Window& window, Instant t);

/// What one member's share of all that the window holds is, 0 where that is nothing. The total holds the
/// member itself, so their errors are not independent: each count enters with its sensitivity, (its own part
/// − share) / total (GUM 5.1.2).
Estimate share_in(const std::vector<Count>& counts, int member, Adding adding, const Window& window,
                  Instant t, double total);

/// More than the limit by more than the rounding of sums: a season that meets its limit to the last litre
/// has not exceeded it.
bool exceeds(double used, double limit);

}  // namespace spoilbook
