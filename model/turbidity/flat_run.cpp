// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/turbidity/flat_run.h"

namespace spoilbook {

std::int64_t FlatRun::add(Instant at, double value, double tolerance) {
    const Entry entry{at, value, next_++};
    while (!high_.empty() && high_.back().value <= value)
        high_.pop_back();
    while (!low_.empty() && low_.back().value >= value)
        low_.pop_back();
    stretch_.push_back(entry);
    high_.push_back(entry);
    low_.push_back(entry);
    while (stretch_.size() > 1 && too_far(tolerance))
        drop_first();
    return at - stretch_.front().at;
}

bool FlatRun::too_far(double tolerance) const {
    const double spread = high_.front().value - low_.front().value;
    return tolerance > 0 ? spread >= tolerance : spread > 0;
}

void FlatRun::drop_first() {
    const std::size_t gone = stretch_.front().number;
    stretch_.pop_front();
    if (high_.front().number == gone) high_.pop_front();
    if (low_.front().number == gone) low_.pop_front();
}

}  // namespace spoilbook
