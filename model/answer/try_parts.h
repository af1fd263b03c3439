// SPDX-License-Identifier: GPL-3.0-or-later
// The kinds of condition that can be tried, one function each, for try_condition alone.
#pragma once

#include "model/answer/try_condition.h"
#include "model/consent/finding.h"

namespace spoilbook::trial {

/// What is tried: the candidate without its from and to, and over which time.
struct Asked {
    const Ledger& ledger;
    const Condition& candidate;
    Instant from, to;
    const TrialSources& sources;

    [[nodiscard]] bool holds(Instant at) const { return from <= at && at <= to; }
    [[nodiscard]] JudgedSpan span() const { return {to, Period{from, to + 1}}; }
};

Trial of_quantity(const Asked& asked);
Trial of_place(const Asked& asked);
Trial of_time(const Asked& asked);
Trial of_series(const Asked& asked);
Trial of_duty(const Asked& asked);
Trial of_surface(const Asked& asked);

/// One that cannot be tried, and why.
Trial cannot(std::string why);
/// What was found release by release, or load by load: every breach is a pass. `of`: what was looked at.
Trial of_findings(const std::vector<Finding>& findings, std::string of);

/// Counts one that could not be told, and keeps why.
void note_untold(Trial& trial, const Finding& found);

/// "T-7 R-12" of a release, "load L-3" of a dredged load.
std::string name_of_line(const LedgerLine& line);
/// A pass at this line.
TrialPass pass_at(const LedgerLine& line, std::string why);

}  // namespace spoilbook::trial
