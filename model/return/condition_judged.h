// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/consent/finding.h"

namespace spoilbook {

/// How the period stands under one numbered condition, all its versions together.
struct ConditionJudged {
    const Condition* condition = nullptr;  ///< the last version that judged something
    std::size_t complied = 0, cannot_tell = 0, breached = 0;
    std::vector<std::string> reasons;  ///< every breach, and each cause for which it cannot be told

    [[nodiscard]] Compliance state() const {
        if (breached > 0) return Compliance::breached;
        return cannot_tell > 0 ? Compliance::cannot_tell : Compliance::complied;
    }
};

/// Gathers findings by the number of their condition.
class JudgedConditions {
 public:
    /// Breaches are told one by one, what cannot be told once for each `why`.
    void add(const Finding& finding);
    /// In the order in which their conditions came.
    [[nodiscard]] std::vector<ConditionJudged> list() &&;

 private:
    struct Untold {
        std::string why, first;
        std::size_t times = 0;
    };
    struct Gathered {
        ConditionJudged judged;
        std::vector<Untold> untold;
    };
    Gathered& gathered(const Condition& condition);

    std::vector<Gathered> all_;
};

}  // namespace spoilbook
