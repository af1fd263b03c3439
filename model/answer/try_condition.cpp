// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/try_condition.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "model/answer/try_parts.h"
#include "model/record/release_name.h"

namespace spoilbook {

namespace trial {

std::string name_of_line(const LedgerLine& line) {
    if (line.release != nullptr) return name_with_trip(*line.release);
    return line.load == nullptr ? std::string() : "load " + line.load->load;
}

TrialPass pass_at(const LedgerLine& line, std::string why) {
    TrialPass pass;
    pass.at = line.at;
    pass.what = name_of_line(line);
    if (line.load != nullptr) pass.load = line.load->load;
    pass.why = std::move(why);
    return pass;
}

bool takes(const ScopeFilter& filter, const LedgerLine& line) {
    if (!filter.takes(line)) return false;
    if (!filter.by_part() || line.figures == nullptr) return true;
    const auto& parts = line.figures->parts;
    return std::any_of(parts.begin(), parts.end(),
                       [&](const LoadPart& part) { return filter.takes(part, line.at); });
}

}  // namespace trial

Trial try_condition(const Ledger& ledger, const Condition& candidate, Instant from, Instant to,
                    const TrialSources& sources) {
    Condition always = candidate;
    always.from.reset();
    always.to.reset();
    const trial::Asked asked{ledger, always, from, to, sources};
    Trial trial;
    try {
        if (always.kind == "quantity") return trial::of_quantity(asked);
        if (always.kind == "place") return trial::of_place(asked);
        if (always.kind == "time") return trial::of_time(asked);
        if (always.kind == "series") return trial::of_series(asked);
        if (always.kind == "duty") return trial::of_duty(asked);
        trial.why_not =
            "a condition of kind " + always.kind + " is not held against what happened: read it yourself";
    } catch (const nlohmann::json::exception&) {
        trial.why_not = "its members do not read";
    }
    return trial;
}

}  // namespace spoilbook
