// SPDX-License-Identifier: GPL-3.0-or-later
// What a plot of turbidity shows, against plain walks through all readings.
#include "model/answer/turbidity_view.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <filesystem>
#include <set>

#include "model/answer/checked_site.h"
#include "model/book/book_error.h"
#include "model/unit/calendar.h"
#include "tests/support/watched_harbour.h"

using namespace spoilbook;
using namespace spoilbook::tests;
using Catch::Matchers::WithinAbs;

namespace {

const std::vector<std::string> both{"R1", "C1"};

double plain_median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    const std::size_t half = values.size() / 2;
    return values.size() % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
}

/// The median of good readings in (t − 60 min, t]; nothing with fewer than 3 of the 6 that 10 minutes give.
std::optional<double> plain_hour(const SiteSeries& series, Instant t) {
    std::vector<double> values;
    for (std::size_t i = 0; i < series.readings.size(); ++i) {
        const Instant at = series.readings[i].time;
        if (at <= t && at > t - ms_per_hour &&
            (series.flags[i] == Flag::pass || series.flags[i] == Flag::not_evaluated))
            values.push_back(*series.readings[i].value);
    }
    return values.size() < 3 ? std::nullopt : std::optional(plain_median(values));
}

void check_column(const ReadingSum& sum, const SiteSeries& series, const std::vector<std::size_t>& places) {
    std::vector<double> good, raw;
    std::size_t suspect = 0, failed = 0, missing = 0;
    for (const std::size_t i : places) {
        const auto& value = series.readings[i].value;
        if (value) raw.push_back(*value);
        switch (series.flags[i]) {
            case Flag::suspect:
                ++suspect;
                break;
            case Flag::fail:
                ++failed;
                break;
            case Flag::missing:
                ++missing;
                break;
            default:
                good.push_back(*value);
        }
    }
    REQUIRE(sum.readings == places.size());
    REQUIRE(sum.counted == good.size());
    REQUIRE(sum.suspect == suspect);
    REQUIRE(sum.failed == failed);
    REQUIRE(sum.missing == missing);
    REQUIRE(sum.raw_high.has_value() == !raw.empty());
    if (!raw.empty()) {
        REQUIRE(*sum.raw_low == *std::min_element(raw.begin(), raw.end()));
        REQUIRE(*sum.raw_high == *std::max_element(raw.begin(), raw.end()));
    }
    REQUIRE(sum.middle.has_value() == !good.empty());
    if (good.empty()) return;
    REQUIRE(*sum.low == *std::min_element(good.begin(), good.end()));
    REQUIRE(*sum.high == *std::max_element(good.begin(), good.end()));
    REQUIRE_THAT(*sum.middle, WithinAbs(plain_median(good), 1e-9));
}

bool same(const TurbidityView& a, const TurbidityView& b) {
    const auto same_site = [](const ViewSite& x, const ViewSite& y) {
        const auto column = [](const ViewColumn& c, const ViewColumn& d) {
            return c.from == d.from && c.sum == d.sum;
        };
        const auto step = [](const ViewStep& c, const ViewStep& d) {
            return c.from == d.from && c.over == d.over && c.statistic_low == d.statistic_low &&
                   c.statistic_high == d.statistic_high && c.level_low == d.level_low &&
                   c.level_high == d.level_high;
        };
        const auto trace = [&](const ViewTrace& c, const ViewTrace& d) {
            return std::equal(c.steps.begin(), c.steps.end(), d.steps.begin(), d.steps.end(), step);
        };
        return x.site.site == y.site.site && x.interval_min == y.interval_min && x.readings == y.readings &&
               x.each_reading == y.each_reading &&
               std::equal(x.columns.begin(), x.columns.end(), y.columns.begin(), y.columns.end(), column) &&
               std::equal(x.traces.begin(), x.traces.end(), y.traces.begin(), y.traces.end(), trace);
    };
    return std::equal(a.sites.begin(), a.sites.end(), b.sites.begin(), b.sites.end(), same_site);
}

}  // namespace

TEST_CASE("a column holds the least, median and greatest of its readings", "[view]") {
    for (const unsigned seed : {1U, 2U, 3U}) {
        const WatchedHarbour harbour(odd_readings(seed, 6, 10), odd_readings(seed + 50, 6, 10));
        const Instant as_at = logger_start + 9 * ms_per_day;
        TurbidityPlot plot(harbour.book, harbour.season, as_at, nullptr);
        std::mt19937 random(seed);
        for (int round = 0; round < 25; ++round) {
            const Instant from = logger_start + static_cast<std::int64_t>(random() % (6 * ms_per_day));
            const Period window{from, from + 1 + static_cast<std::int64_t>(random() % (4 * ms_per_day))};
            const int columns = 1 + static_cast<int>(random() % 60);
            const auto view = plot.view(both, window, columns);
            REQUIRE(view.sites.size() == 2);
            for (const auto& shown : view.sites) {
                const SiteSeries series = checked_site(harbour.book, shown.site, as_at);
                std::size_t seen = 0;
                for (std::size_t c = 0; c < shown.columns.size(); ++c) {
                    const Instant begins = shown.columns[c].from;
                    std::vector<std::size_t> places;
                    for (std::size_t i = 0; i < series.readings.size(); ++i) {
                        const Instant t = series.readings[i].time;
                        const Instant ends = [&] {
                            for (int n = 1; n <= columns; ++n) {
                                const Instant start = window.from + (window.to - window.from) * n / columns;
                                if (start > begins) return start;
                            }
                            return window.to;
                        }();
                        if (shown.each_reading ? t == begins : begins <= t && t < ends) places.push_back(i);
                    }
                    check_column(shown.columns[c].sum, series, places);
                    seen += places.size();
                }
                const auto inside = std::count_if(series.readings.begin(), series.readings.end(),
                                                  [&](const auto& r) { return window.contains(r.time); });
                REQUIRE(seen == static_cast<std::size_t>(inside));
            }
        }
    }
}

TEST_CASE("the statistic and the level in a narrow window are those of the whole book", "[view]") {
    const WatchedHarbour harbour(odd_readings(11, 6, 10), odd_readings(12, 6, 10));
    const Instant as_at = logger_start + 9 * ms_per_day;
    ReadingStore store(harbour.file("kept"));
    TurbidityPlot plot(harbour.book, harbour.season, as_at, &store);
    const auto r1 = checked_site(harbour.book, *plot.watch().site("R1"), as_at);
    const auto c1 = checked_site(harbour.book, *plot.watch().site("C1"), as_at);
    std::size_t over = 0, told = 0;
    for (int hour = 0; hour < 130; hour += 7) {
        const Period window{logger_start + hour * ms_per_hour, logger_start + (hour + 7) * ms_per_hour};
        const auto view = plot.view({"R1"}, window, 1000);
        REQUIRE(view.sites.front().each_reading);
        REQUIRE(view.sites.front().traces.size() == 1);
        for (const auto& step : view.sites.front().traces.front().steps) {
            const auto statistic = plain_hour(r1, step.from);
            const auto control = plain_hour(c1, step.from);
            REQUIRE(step.statistic_high.has_value() == statistic.has_value());
            REQUIRE(step.control.has_value() == control.has_value());
            if (control) REQUIRE_THAT(*step.control, WithinAbs(*control, 1e-9));
            if (statistic) REQUIRE_THAT(*step.statistic_high, WithinAbs(*statistic, 1e-9));
            if (statistic && control) {
                REQUIRE(step.level_high.has_value());
                REQUIRE_THAT(*step.level_high, WithinAbs(*control + 5, 1e-9));
                REQUIRE(step.over == (*statistic > *control + 5));
                over += step.over ? 1 : 0;
                ++told;
            }
        }
    }
    CHECK(told > 250);
    CHECK(over > 10);
}

TEST_CASE("days that are kept answer as the book does, at any as-at and after a person's flag", "[view]") {
    const WatchedHarbour harbour(odd_readings(21, 9, 10), odd_readings(22, 9, 10),
                                 {{"turbidity/overrules.csv",
                                   "id,site,from,to,flag,why,by\n"
                                   "V-1,R1,2025-09-29T10:00+13:00,2025-09-29T22:00+13:00,4,weed,Ana\n"
                                   "V-2,C1,2025-10-01T23:00+13:00,2025-10-02T03:00+13:00,1,seen,Ana\n"}});
    ReadingStore store(harbour.file("kept"));
    for (const std::int64_t ms : {std::int64_t{0}, 17 * ms_per_hour + 13, 3 * ms_per_day, 4 * ms_per_day - 1,
                                  5 * ms_per_day + 7 * ms_per_hour, 30 * ms_per_day}) {
        const Instant as_at = logger_start + ms;
        TurbidityPlot from_book(harbour.book, harbour.season, as_at, nullptr);
        TurbidityPlot from_store(harbour.book, harbour.season, as_at, &store);
        REQUIRE(from_book.extent(both) == from_store.extent(both));
        for (const std::int64_t hours : {3, 40, 300}) {
            for (std::int64_t begin = -5; begin < 240; begin += 31) {
                const Period window{logger_start + begin * ms_per_hour,
                                    logger_start + (begin + hours) * ms_per_hour};
                INFO(ms << " " << begin << " " << hours);
                REQUIRE(same(from_book.view(both, window, 37), from_store.view(both, window, 37)));
                REQUIRE(same(from_book.view(both, window, 4, 10), from_store.view(both, window, 4, 10)));
            }
        }
    }
}

TEST_CASE("a wide window is drawn from whole local days", "[view]") {
    const WatchedHarbour harbour(odd_readings(31, 9, 10), odd_readings(32, 9, 10));
    const Instant as_at = logger_start + 20 * ms_per_day;
    ReadingStore store(harbour.file("kept"));
    TurbidityPlot plot(harbour.book, harbour.season, as_at, &store);
    const auto series = checked_site(harbour.book, *plot.watch().site("R1"), as_at);
    const auto view = plot.view({"R1"}, {logger_start, logger_start + 9 * ms_per_day}, 100, 50);
    const auto& shown = view.sites.front();
    REQUIRE(shown.whole_days);
    CHECK(shown.traces.empty());
    std::size_t seen = 0;
    std::set<std::string> days;
    for (const auto& column : shown.columns) {
        const Day day = harbour.season.zone.day_of(column.from);
        days.insert(day_text(day));
        std::vector<std::size_t> places;
        for (std::size_t i = 0; i < series.readings.size(); ++i) {
            if (harbour.season.zone.day_of(series.readings[i].time) == day) places.push_back(i);
        }
        check_column(column.sum, series, places);
        seen += places.size();
    }
    CHECK(seen == series.readings.size());
    // The 23-hour day is one day.
    CHECK(days.contains("2025-09-28"));
    CHECK(days.size() == shown.columns.size());
    // Three days to a column: the same extremes, and every reading once.
    const auto coarse = plot.view({"R1"}, {logger_start, logger_start + 9 * ms_per_day}, 4, 50).sites.front();
    CHECK(coarse.columns.size() == 4);
    double most = 0;
    for (const auto& column : coarse.columns)
        most = std::max(most, column.sum.raw_high.value_or(0));
    const auto highest = std::max_element(series.readings.begin(), series.readings.end(),
                                          [](const auto& a, const auto& b) { return a.value < b.value; });
    CHECK(most == *highest->value);
}

TEST_CASE("what is kept goes with what it follows from, and a damaged file changes no answer", "[view]") {
    WatchedHarbour harbour(odd_readings(41, 3, 10), odd_readings(42, 3, 10));
    const Instant as_at = logger_start + 20 * ms_per_day;
    const Period window{logger_start, logger_start + 3 * ms_per_day};
    {
        ReadingStore store(harbour.file("kept"));
        TurbidityPlot(harbour.book, harbour.season, as_at, &store).view(both, window, 10);
        const Kind& kind = definition<Site>().kind();
        const auto changed = harbour.book.change({EntryKind::change, as_at, "Ana", ""}, [&](Change& change) {
            return change.set(kind, harbour.book.labelled(kind, "R1")->id, *kind.index_of("range_high"), 9.0);
        });
        REQUIRE(changed.ok());
        const auto narrower =
            TurbidityPlot(harbour.book, harbour.season, as_at, &store).view(both, window, 10);
        REQUIRE(same(narrower,
                     TurbidityPlot(harbour.book, harbour.season, as_at, nullptr).view(both, window, 10)));
        CHECK(*narrower.sites.front().columns.front().sum.high <= 9);
    }
    std::error_code gone;
    for (const char* beside : {"kept-wal", "kept-shm"})
        std::filesystem::remove(harbour.file(beside), gone);
    const auto size = std::filesystem::file_size(harbour.file("kept"));
    REQUIRE(size > 20000);
    const auto whole = TurbidityPlot(harbour.book, harbour.season, as_at, nullptr).view(both, window, 10);
    for (const std::uintmax_t left : {size * 3 / 4, size / 2, std::uintmax_t{9000}, std::uintmax_t{50}}) {
        std::filesystem::resize_file(harbour.file("kept"), left);
        std::optional<ReadingStore> store;
        try {
            store.emplace(harbour.file("kept"));
        } catch (const BookError&) {
            continue;  // Told at once: whoever opens it goes on without.
        }
        CHECK(
            same(whole, TurbidityPlot(harbour.book, harbour.season, as_at, &*store).view(both, window, 10)));
    }
}
