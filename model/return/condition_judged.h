// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <string>
#include <vector>

#include "model/answer/place_findings.h"

namespace spoilbook {

/// How the period stands under one numbered condition, all its versions together.
struct ConditionJudged {
    const Condition* condition = nullptr;  ///< the last version that judged something
    std::size_t complied = 0, cannot_tell = 0, breached = 0;
    std::vector<std::string> reasons;  ///< every breach, and each cause for which it cannot be told

    [[nodiscard]] Finding state() const {
        if (breached > 0) return Finding::breached;
        return cannot_tell > 0 ? Finding::cannot_tell : Finding::complied;
    }
};

/// Gathers findings by the number of their condition.
class JudgedConditions {
 public:
    /// `what`: "trip T-7". Breaches are told one by one, what cannot be told once for each `why`.
    void add(const Condition& condition, Finding finding, const std::string& what, const std::string& why);
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
