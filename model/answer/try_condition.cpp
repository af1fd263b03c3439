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

Trial cannot(std::string why) {
    Trial trial;
    trial.why_not = std::move(why);
    return trial;
}

void note_untold(Trial& trial, const Finding& found) {
    ++trial.cannot_tell;
    if (trial.untold.empty() && !found.why.empty()) trial.untold = found.named() + ": " + found.why;
}

Trial of_findings(const std::vector<Finding>& findings, std::string of) {
    Trial trial;
    trial.of = std::move(of);
    trial.looked_at = findings.size();
    for (const auto& found : findings) {
        if (found.state == Compliance::cannot_tell) note_untold(trial, found);
        if (found.state != Compliance::breached) continue;
        TrialPass pass;
        pass.at = found.at;
        pass.what = found.release != nullptr ? name_with_trip(*found.release) : found.named();
        if (found.load != nullptr) pass.load = found.load->load;
        pass.value = found.value;
        pass.level = found.level;
        pass.why = found.why;
        trial.passes.push_back(std::move(pass));
    }
    std::stable_sort(trial.passes.begin(), trial.passes.end(),
                     [](const TrialPass& a, const TrialPass& b) { return a.at < b.at; });
    trial.times = trial.passes.size();
    return trial;
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
        if (always.kind == "surface") return trial::of_surface(asked);
        trial.why_not =
            "a condition of kind " + always.kind + " is not held against what happened: read it yourself";
    } catch (const nlohmann::json::exception&) {
        trial.why_not = "its members do not read";
    }
    return trial;
}

}  // namespace spoilbook
