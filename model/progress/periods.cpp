// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/progress/periods.h"

#include <algorithm>

namespace spoilbook {

double hours(const Periods& periods) {
    std::int64_t ms = 0;
    for (const auto& period : periods)
        ms += period.to - period.from;
    return static_cast<double>(ms) / ms_per_hour;
}

Periods joined(Periods periods) {
    std::sort(periods.begin(), periods.end());
    Periods out;
    for (const auto& period : periods) {
        if (!out.empty() && period.from <= out.back().to)
            out.back().to = std::max(out.back().to, period.to);
        else
            out.push_back(period);
    }
    return out;
}

Periods both(const Periods& a, const Periods& b) {
    Periods out;
    for (auto x = a.begin(), y = b.begin(); x != a.end() && y != b.end();) {
        const Period common{std::max(x->from, y->from), std::min(x->to, y->to)};
        if (common.from < common.to) out.push_back(common);
        if (x->to < y->to)
            ++x;
        else
            ++y;
    }
    return joined(std::move(out));
}

Periods left_of(const Period& whole, const Periods& parts) {
    Periods out;
    Instant at = whole.from;
    for (const auto& part : parts) {
        if (part.from > at) out.push_back({at, std::min(part.from, whole.to)});
        at = std::max(at, part.to);
    }
    if (at < whole.to) out.push_back({at, whole.to});
    return out;
}

Periods inside(const Periods& parts, const Period& whole) {
    const auto ends_by = [](const Period& part, Instant at) { return part.to <= at; };
    Periods out;
    for (auto part = std::lower_bound(parts.begin(), parts.end(), whole.from, ends_by);
         part != parts.end() && part->from < whole.to; ++part)
        out.push_back({std::max(part->from, whole.from), std::min(part->to, whole.to)});
    return out;
}

}  // namespace spoilbook
