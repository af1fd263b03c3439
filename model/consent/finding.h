// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "model/bed/surface_figures.h"
#include "model/consent/compliance.h"
#include "model/consent/ledger.h"
#include "model/consent/scope_filter.h"

namespace spoilbook {

/// What one condition says of one release, trip or load that happened, of a window that ended or of a place
/// that was surveyed. Points into
/// the ledger and its season, which must outlive it.
struct Finding {
    const Condition* condition = nullptr;  ///< the version in force at `at`
    const Consent* consent = nullptr;      ///< null where the condition names none
    const ReleaseView* release = nullptr;  ///< one of these four, or `window`, is what was judged
    const Trip* trip = nullptr;
    const Load* load = nullptr;
    const Survey* survey = nullptr;  ///< of a surface, with `place`
    Instant
        at;  ///< release end, loading end, the trip's return, the last instant of the window or survey's day
    Compliance state = Compliance::cannot_tell;
    std::string window;                  ///< or the window of a floor that ended, in words
    std::string why;                     ///< for what is not complied, in words; of a surface always
    std::optional<double> value, level;  ///< what was held against what: of the sea, m or kn; of a surface,
                                         ///< the share of the area past it and the share that may be
    std::string place;                   ///< of a surface: "claim FB2"
    std::optional<SurfaceLook> bed;      ///< of a surface: what the survey shows there

    /// "trip T-7", "release R-2", "load L-9", "2025-11-01 to 2025-11-30", "claim FB2 by survey SV-03".
    [[nodiscard]] std::string named() const;
};

/// What is judged: of all that had happened by `as_at`, that of a period; nothing: all of it.
struct JudgedSpan {
    Instant as_at;
    std::optional<Period> period;

    [[nodiscard]] bool has(Instant at) const { return at <= as_at && (!period || period->contains(at)); }
};

/// Whose work a condition is about: its `applies.activity`; left out: both.
bool judges_releases(const nlohmann::json& body);
bool judges_dredging(const nlohmann::json& body);

/// Which releases, or dredged loads, are in the scope of a condition that names its members in `body`, read
/// once. What is not known is out of it, or with `not_known_is_in` may turn out to be in it (scope_filter.h).
class AppliesTo {
 public:
    AppliesTo(const Season& season, const nlohmann::json& body, bool not_known_is_in = false);
    [[nodiscard]] bool operator()(const LedgerLine& line) const;
    /// What is not recorded of a line that may be in the scope: "material", "ground, claim". Empty where
    /// it is known to be in or out.
    [[nodiscard]] std::string not_recorded(const LedgerLine& line) const;
    /// Whether it looks at the parts of loads, and so at their figures.
    [[nodiscard]] bool by_part() const { return of_releases_.by_part(); }

 private:
    const Season& season_;
    Scope scope_;
    ScopeFilter of_releases_, of_dredging_, may_be_of_releases_, may_be_of_dredging_;
};
/// The same of one line alone.
bool applies_to(const Ledger& ledger, const LedgerLine& line, const nlohmann::json& body,
                bool not_known_is_in = false);

/// A condition's members; no object where they do not read.
nlohmann::json body_of(const Condition& condition);

/// A finding on a line of the ledger, to be judged.
Finding finding_on(const Ledger& ledger, const Condition& condition, const LedgerLine& line);

/// A line that a condition judges, for sure or if what is not recorded of it turns out so.
struct JudgedLine {
    const LedgerLine* line = nullptr;
    std::string not_recorded;  ///< AppliesTo::not_recorded
};

/// Whatever the condition says of the line, whether it is about it is not known: what complied complies
/// either way and is no finding (false), and nothing else can be told. Without anything not recorded the
/// finding stands (true).
bool put_in_doubt(Finding& found, const std::string& not_recorded);

/// The lines of the span that the condition judges: those in its scope, or that may be in it for all that is
/// recorded, that fell while it was in force.
std::vector<JudgedLine> judged_lines(const Ledger& ledger, const std::vector<LedgerLine>& lines,
                                     const Condition& condition, const nlohmann::json& body,
                                     const JudgedSpan& span);

}  // namespace spoilbook
