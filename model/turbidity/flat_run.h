// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <deque>

#include "model/unit/instant.h"

namespace spoilbook {

/// How long values have not changed, reading by reading. Keeps the greatest and least candidates of the
/// running stretch only (two monotone queues): each reading enters and leaves once.
class FlatRun {
 public:
    /// Milliseconds from the first reading of the longest stretch that ends here and whose values differ by
    /// less than `tolerance` (by nothing, where it is 0); 0 where only this one does.
    std::int64_t add(Instant at, double value, double tolerance);

 private:
    struct Entry {
        Instant at;
        double value = 0;
        std::size_t number = 0;
    };
    [[nodiscard]] bool too_far(double tolerance) const;
    void drop_first();

    std::deque<Entry> stretch_, high_, low_;
    std::size_t next_ = 0;
};

}  // namespace spoilbook
