// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/answer/site_reader.h"

#include <fmt/format.h>

#include <algorithm>
#include <limits>

#include "model/answer/checked_site.h"
#include "model/answer/day_rows.h"
#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/season.h"
#include "model/folder/match_material.h"
#include "model/unit/calendar.h"

namespace spoilbook {

namespace {

/// Each local day's readings as places [first, last), in order.
class DayCutter {
 public:
    DayCutter(const SiteSeries& series, const Zone& zone) : series_(series), zone_(zone) {}
    bool next() {
        first = last;
        if (first == series_.readings.size()) return false;
        const Instant t = series_.readings[first].time;
        if (t >= day.to) day = day_holding(zone_, t);
        while (last < series_.readings.size() && series_.readings[last].time < day.to)
            ++last;
        return true;
    }
    Period day{Instant{0}, Instant{std::numeric_limits<std::int64_t>::min()}};
    std::size_t first = 0, last = 0;

 private:
    const SiteSeries& series_;
    const Zone& zone_;
};

std::string told(const std::optional<double>& value) {
    return value ? fmt::format("{};", *value) : ";";
}

std::string told(const Thresholds& set) {
    std::string text;
    for (const auto& value :
         {set.range_low, set.range_high, set.suspect_low, set.suspect_high, set.spike, set.spike_fail,
          set.rate_per_min, set.flat_min, set.flat_fail_min, set.flat_tolerance})
        text += told(value);
    return text;
}

std::int64_t as_stored(std::size_t n) {
    return static_cast<std::int64_t>(n);
}

StoredDay stored_day(const SiteSeries& series, const DayCutter& cut) {
    const ReadingSum sum = sum_of(series, cut.first, cut.last);
    return {cut.day.from,
            as_stored(sum.readings),
            as_stored(sum.counted),
            as_stored(sum.suspect),
            as_stored(sum.failed),
            as_stored(sum.missing),
            sum.raw_low,
            sum.raw_high,
            sum.low,
            sum.middle,
            sum.high,
            day_rows(series, cut.first, cut.last)};
}

ReadingDay reading_day(const StoredDay& day) {
    const auto count = [](std::int64_t n) { return static_cast<std::size_t>(n); };
    return {day.from,
            {count(day.readings), count(day.counted), count(day.suspect), count(day.failed),
             count(day.missing), day.raw_low, day.raw_high, day.low, day.middle, day.high}};
}

}  // namespace

SiteReader::SiteReader(const Book& book, ReadingStore* store, Site site, Instant as_at)
    : book_(book),
      site_(std::move(site)),
      as_at_(as_at),
      zone_(book_zone(book)),
      overrules_(overrules_of(book, site_)) {
    if (store != nullptr) {
        try {
            open_store(*store);
        } catch (const BookError&) {
            store_ = nullptr;  // The book itself has all of it.
        }
    }
    if (store_ == nullptr) do_without_store();
}

void SiteReader::do_without_store() {
    store_ = nullptr;
    use_whole(checked_site(book_, site_, as_at_));
}

/// All that the checked readings follow from, but for people's flags.
std::string SiteReader::basis() const {
    HashParts parts;
    parts.text(zone_.name()).text(told(site_.interval_min));
    for (const auto& span : thresholds_of(book_, site_))
        parts.number(span.from.utc_ms).number(span.to.utc_ms).text(told(span.thresholds));
    for (const Row& row : book_.rows(definition<LoggerFile>().kind())) {
        const auto file = definition<LoggerFile>().read(row);
        if (file.site == site_.id) parts.text(file.digest).text(file.how);
    }
    return hex_text(parts.sha256());
}

void SiteReader::open_store(ReadingStore& store) {
    const std::string key = basis();
    auto found = store.find(key);
    if (!found) {
        const SiteSeries whole = checked_series(held_readings(book_, site_.id), thresholds_of(book_, site_),
                                                {}, site_.interval_min);
        StoredSeries head{0, whole.interval_min, as_stored(whole.readings.size()), {}, {}};
        if (!whole.readings.empty()) {
            head.first = whole.readings.front().time;
            head.last = whole.readings.back().time;
        }
        DayCutter cut(whole, zone_);
        store.put(hex(site_.id), key, head, [&](StoredDay& day) {
            if (!cut.next()) return false;
            day = stored_day(whole, cut);
            return true;
        });
        found = store.find(key);
    }
    // The commonest step of what had happened by the as-at may be another than that of all.
    const bool all = !found->last || *found->last <= as_at_;
    if (!all && !site_.interval_min) return;
    kept_ = *found;
    store_ = &store;
    if (!kept_.first || *kept_.first > as_at_) return;
    if (!all) newest_ = newest_by_then();
    extent_ = Period{*kept_.first, newest_.value_or(*kept_.last) + 1};
}

/// REQUIRES a reading by the as-at.
Instant SiteReader::newest_by_then() const {
    for (Instant from = *store_->day_at(kept_.id, as_at_);; from = *store_->day_at(kept_.id, from - 1)) {
        const SiteSeries day = stored({{from, from + 1}});
        if (!day.readings.empty()) return day.readings.back().time;
    }
}

void SiteReader::use_whole(SiteSeries whole) {
    part_ = std::move(whole);
    extent_.reset();
    if (!part_.readings.empty())
        extent_ = Period{part_.readings.front().time, part_.readings.back().time + 1};
    for (DayCutter cut(part_, zone_); cut.next();)
        whole_days_.push_back({cut.day.from, sum_of(part_, cut.first, cut.last)});
}

Period SiteReader::whole_days(Period span) const {
    return {day_holding(zone_, span.from).from, day_holding(zone_, std::min(span.to - 1, as_at_)).to};
}

SiteSeries SiteReader::stored(const std::vector<Period>& spans) const {
    SiteSeries series;
    series.interval_min = kept_.interval_min;
    Instant from{std::numeric_limits<std::int64_t>::min()};
    for (const Period& span : spans) {
        Period days = whole_days(span);
        days.from = std::max(days.from, from);
        from = std::max(days.to, from);
        for (const StoredDay& day : store_->days(kept_.id, days, true))
            append_day_rows(series, day.rows);
    }
    const std::size_t last = first_from(series, as_at_ + 1);
    series.readings.resize(last);
    series.verdicts.resize(last);
    series.flags.resize(last);
    // The last reading has none after it, and so no spike, as long as the next one has not happened.
    if (newest_ && last > 0 && series.readings.back().time == *newest_ && series.readings.back().value) {
        series.verdicts.back().spike = Flag::not_evaluated;
        series.flags.back() = overall(series.verdicts.back());
    }
    overrule(series, overrules_);
    return series;
}

const SiteSeries& SiteReader::part(const std::vector<Period>& spans) {
    if (store_ == nullptr) return part_;
    try {
        part_ = stored(spans);
    } catch (const BookError&) {
        do_without_store();
    }
    return part_;
}

/// Whether its numbers are other than those that the store keeps.
bool SiteReader::altered(const ReadingDay& day) const {
    const Instant end = day_holding(zone_, day.from).to;
    const bool cut = newest_ && end > *newest_;
    return cut || std::any_of(overrules_.begin(), overrules_.end(),
                              [&](const auto& said) { return said.from < end && said.to >= day.from; });
}

std::vector<ReadingDay> SiteReader::stored_days(Period whole) const {
    std::vector<ReadingDay> days;
    for (const StoredDay& kept : store_->days(kept_.id, whole, false)) {
        ReadingDay day = reading_day(kept);
        if (altered(day)) {
            const SiteSeries series = stored({{day.from, day.from + 1}});
            day.sum = sum_of(series, 0, series.readings.size());
        }
        if (day.sum.readings > 0) days.push_back(day);
    }
    return days;
}

std::vector<ReadingDay> SiteReader::days(Period span) {
    const Period whole = whole_days(span);
    if (store_ != nullptr) {
        try {
            return stored_days(whole);
        } catch (const BookError&) {
            do_without_store();
        }
    }
    std::vector<ReadingDay> days;
    std::copy_if(whole_days_.begin(), whole_days_.end(), std::back_inserter(days),
                 [&](const auto& day) { return whole.contains(day.from); });
    return days;
}

std::size_t SiteReader::count(Period span) {
    std::size_t n = 0;
    for (const auto& day : days(span))
        n += day.sum.readings;
    return n;
}

}  // namespace spoilbook
