// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <vector>

#include "model/book/book.h"
#include "model/book/reading_store.h"
#include "model/record/watched_water.h"
#include "model/turbidity/reading_sum.h"
#include "model/unit/zone.h"

namespace spoilbook {

/// One local day of a site's readings in a few numbers.
struct ReadingDay {
    Instant from;
    ReadingSum sum;

    bool operator==(const ReadingDay&) const = default;
};

/// One site's checked readings by the as-at, read as far as they are asked for. With a store, days that were
/// worked out before are read from it, and the whole is worked out only where the store has not got it (or
/// breaks); without one, the whole is read once. Either way the same answers: those of `checked_site`.
/// Book and store must outlive it.
class SiteReader {
 public:
    /// `store` may be null. Works the whole out where needed: long for millions of readings.
    SiteReader(const Book& book, ReadingStore* store, Site site, Instant as_at);

    [[nodiscard]] const Site& site() const { return site_; }
    /// From the first reading to just after the last; nothing where there is none.
    [[nodiscard]] std::optional<Period> extent() const { return extent_; }
    /// How many readings the days that meet the span have.
    std::size_t count(Period span);
    /// At least the readings in the spans (in order, apart from each other), whole days; it may be all.
    /// Holds until the next call.
    const SiteSeries& part(const std::vector<Period>& spans);
    /// Days that have readings and meet the span.
    std::vector<ReadingDay> days(Period span);

 private:
    void open_store(ReadingStore& store);
    [[nodiscard]] Instant newest_by_then() const;
    void use_whole(SiteSeries whole);
    [[nodiscard]] std::string basis() const;
    void do_without_store();
    [[nodiscard]] std::vector<ReadingDay> stored_days(Period whole) const;
    [[nodiscard]] SiteSeries stored(const std::vector<Period>& spans) const;
    [[nodiscard]] Period whole_days(Period span) const;
    [[nodiscard]] bool altered(const ReadingDay& day) const;

    const Book& book_;
    Site site_;
    Instant as_at_;
    Zone zone_;
    std::vector<FlagOverrule> overrules_;
    const ReadingStore* store_ = nullptr;  ///< null: the whole is in `part_`
    StoredSeries kept_;
    std::optional<Instant> newest_;  ///< the last reading by the as-at, where the store has later ones
    SiteSeries part_;
    std::vector<ReadingDay> whole_days_;  ///< of the whole
    std::optional<Period> extent_;
};

}  // namespace spoilbook
