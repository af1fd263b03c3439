// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "model/record/season.h"

namespace spoilbook {

enum class WindowKind { term, calendar, consent_year, rolling, mean, campaign, phase, trip };
enum class WindowUnit { days, weeks, months, years };

/// Over which time a quantity is counted (consent-rules.md, member `window`).
struct WindowRule {
    WindowKind kind = WindowKind::term;
    WindowUnit unit = WindowUnit::months;  ///< calendar, rolling
    int n = 1;                             ///< rolling: how many units; mean: how many years
    std::optional<Instant> from, to;       ///< phase, half-open
    std::string name;                      ///< campaign: blank means whichever holds the instant
};

/// The window that holds an instant t: what counts lies after or at `start` and up to t.
struct Window {
    std::optional<Instant> start;  ///< nothing: from the beginning
    bool start_counts = true;      ///< false for rolling windows: (t − span, t]
    std::optional<Instant> end;    ///< the window's own end; the instant t itself for rolling and term
    bool end_counts = false;       ///< true where the end is t itself

    [[nodiscard]] bool begins_by(Instant at) const {
        return !start || (start_counts ? *start <= at : *start < at);
    }
    /// Whether something at `at` counts in the window as it stands at t.
    [[nodiscard]] bool counts(Instant at, Instant t) const {
        const bool before_end = !end || at < *end || (end_counts && at == *end);
        return begins_by(at) && at <= t && before_end;
    }
};

/// The first member of a MM-DD text, or 1 January where it is blank.
struct MonthDay {
    int month = 1;
    int day = 1;
};
MonthDay month_day(const std::string& text);

/// The window of a rule that holds t. Nothing before the first campaign began. A phase is always the same
/// window; after a phase or campaign ended it stands full as it was.
std::optional<Window> window_at(const WindowRule& rule, const Consent& consent, const Season& season,
                                Instant t);

/// window_at for instants that ascend. The length of a rolling window is looked up once for all that lie
/// close together on a day, and not for each of them on the calendar.
class WindowFinder {
 public:
    /// All of them must outlive it and not change.
    WindowFinder(const WindowRule& rule, const Consent& consent, const Season& season)
        : rule_(rule), consent_(consent), season_(season) {}
    [[nodiscard]] std::optional<Window> at(Instant t);

 private:
    void remember(Instant t, Instant start);

    const WindowRule& rule_;
    const Consent& consent_;
    const Season& season_;
    std::optional<Instant> before_;  ///< the last instant that was looked up
    std::optional<Period> same_;     ///< in which the window is as long as it was then
    std::int64_t length_ms_ = 0;
};

/// Every campaign of that name, of any where it is blank, in the order of the book.
std::vector<Window> campaign_windows(const Season& season, const std::string& name);

}  // namespace spoilbook
