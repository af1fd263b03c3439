// SPDX-License-Identifier: GPL-3.0-or-later
#include <string_view>

#include "model/unit/metres.h"

namespace spoilbook {
// A comment may speak of getenv(), system_clock::now() and SELECT id FROM loads.
static const std::string_view kTitle = "select a barge, then enter the dips";
constexpr int kMost = 1'000'000;

double ullage_sum(const Metres* dips, int count) {
    static constexpr double none = 0.0;
    double sum = none;
    for (int i = 0; i < count && i < kMost; ++i) {
        sum += dips[i].value;
    }
    return kTitle.empty() ? 0.0 : sum;
}
}  // namespace spoilbook
