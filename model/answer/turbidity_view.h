// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "model/answer/site_reader.h"
#include "model/answer/turbidity.h"

namespace spoilbook {

/// Readings of one site in one column of a plot. Where `ViewSite::each_reading`, one reading.
struct ViewColumn {
    Instant from;  ///< of the column, or the reading's time
    ReadingSum sum;
};

/// What a condition asks of the site in the same column, at each of its present readings.
struct ViewStep {
    Instant from;
    std::optional<double> statistic_low, statistic_high;  ///< nothing: cannot tell
    std::optional<double> level_low, level_high;          ///< nothing: no level is set, or it cannot be told
    std::optional<double> control;  ///< its statistic at the last reading; nothing: none, or cannot tell
    bool over = false;              ///< at some reading
};

struct ViewTrace {
    TriggerCondition of;
    std::vector<ViewStep> steps;
};

struct ViewSite {
    Site site;
    double interval_min = 0;
    std::size_t readings = 0;   ///< in the window
    bool each_reading = false;  ///< a column is one reading; else the window is cut into equal columns
    bool whole_days = false;  ///< columns are cut at local midnights: `middle` is the median of days' medians
    std::vector<ViewColumn> columns;  ///< those that have readings, in order
    /// One a condition that watches the site. Empty for a control, and where `whole_days`: that many readings
    /// are not judged for a picture.
    std::vector<ViewTrace> traces;
};

/// Stands by itself: a picture may be on a screen after the plot that made it is gone. The season must
/// outlive it.
struct TurbidityView {
    Period window;
    std::vector<ViewSite> sites;
};

/// Turbidity over time, window by window, for a plot: what is read grows with the window, not with the book.
/// Book, season and store must outlive it. One thread at a time.
class TurbidityPlot {
 public:
    /// `store` may be null: then each site is read whole when first asked for.
    TurbidityPlot(const Book& book, const Season& season, Instant as_at, ReadingStore* store);

    [[nodiscard]] const TurbidityWatch& watch() const { return watch_; }
    /// From the first reading of these sites to just after their last.
    std::optional<Period> extent(const std::vector<std::string>& sites);
    /// REQUIRES columns > 0 and a window that is not empty. Unknown sites are left out. Where a site has more
    /// readings in the window than `judged_at_most`, days are drawn and no statistic is worked out.
    TurbidityView view(const std::vector<std::string>& sites, Period window, int columns,
                       std::size_t judged_at_most = 300'000);
    /// Readings with their flags in the window, at most so many (the first ones).
    SiteSeries readings(const std::string& site, Period window, std::size_t most);

 private:
    SiteReader* reader(const std::string& name);
    const SiteSeries* part(const std::string& site, Period window);
    ViewSite view_of_days(SiteReader& reader, Period window, int columns);
    ViewSite view_of_readings(SiteReader& reader, Period window, int columns);
    ViewTrace trace(const TriggerCondition& condition, const SiteSeries& series, Period window, int columns,
                    bool each_reading, const std::string& site);
    [[nodiscard]] std::vector<Period> needed(const std::string& site, Period window) const;

    const Book& book_;
    ReadingStore* store_;
    Instant as_at_;
    Zone zone_;
    TurbidityWatch watch_;
    std::map<std::string, std::unique_ptr<SiteReader>> readers_;
    std::map<std::string, const SiteSeries*> in_hand_;  ///< of the view that is made
};

}  // namespace spoilbook
