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
    std::vector<Finding> failed;       ///< the evidence: what breached it, and what it cannot be told of
    std::vector<std::string> reasons;  ///< the same in words, each cause once

    [[nodiscard]] Compliance state() const {
        if (breached > 0) return Compliance::breached;
        return cannot_tell > 0 ? Compliance::cannot_tell : Compliance::complied;
    }
};

/// Gathers findings by the number of their condition.
class JudgedConditions {
 public:
    void add(const Finding& finding);
    /// In the order in which their conditions came. Of a cause all that breached by it are named; of what
    /// cannot be told the first, and how many more.
    [[nodiscard]] std::vector<ConditionJudged> list() &&;

 private:
    ConditionJudged& judged(const Condition& condition);

    std::vector<ConditionJudged> all_;
};

}  // namespace spoilbook
