// SPDX-License-Identifier: GPL-3.0-or-later
// A second reading of the consent rules on series, slow and plain: every window, run and all-clear is looked
// up anew among all readings. It shares nothing with model/turbidity but the flags.
#pragma once

#include <algorithm>
#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "model/turbidity/site_series.h"
#include "model/unit/calendar.h"

namespace spoilbook::test {

struct PlainVersion {
    nlohmann::json body;
    std::int64_t from = 0, to = 0;  ///< ms, [from, to)
};

struct PlainEvent {
    std::string site;
    std::int64_t over_since = 0, start = 0, end = -1;
    double peak = 0;
    bool operator==(const PlainEvent&) const = default;
};

class PlainEvaluator {
 public:
    PlainEvaluator(const std::vector<PlainVersion>& versions, const std::map<std::string, SiteSeries>& sites,
                   const std::vector<Period>& working, const Zone& zone)
        : versions_(versions), sites_(sites), working_(working), zone_(zone) {}

    std::vector<PlainEvent> events(const std::vector<std::string>& watched) {
        std::vector<std::int64_t> times;
        for (const auto& site : watched) {
            judge(site);
            for (const auto& point : points_[site])
                times.push_back(point.t);
        }
        std::sort(times.begin(), times.end());
        times.erase(std::unique(times.begin(), times.end()), times.end());
        std::map<std::string, std::size_t> open;
        std::vector<PlainEvent> found;
        for (const auto t : times) {
            for (const auto& site : watched) {
                const Point* point = point_at(site, t);
                if (point == nullptr) continue;
                if (!open.contains(site)) {
                    if (const auto since = passed(site, t)) {
                        open[site] = found.size();
                        found.push_back({site, *since, t, -1, 0});
                    }
                }
            }
            for (const auto& site : watched) {
                if (open.contains(site) && all_clear(site, watched, t)) {
                    found[open[site]].end = t;
                    open.erase(site);
                }
            }
        }
        for (auto& event : found)
            event.peak = peak(event);
        return found;
    }

 private:
    static constexpr int over = 1, not_over = 0, unknown = -1;
    struct Point {
        std::int64_t t = 0;
        int state = unknown;
        double value = 0;
        bool watching = true;
        const PlainVersion* version = nullptr;
        bool told = false;
    };

    const PlainVersion* version_at(std::int64_t t) const {
        const PlainVersion* held = nullptr;
        for (const auto& version : versions_) {
            if (version.from <= t && t < version.to) held = &version;
        }
        return held;
    }

    void judge(const std::string& site) {
        const auto& series = sites_.at(site);
        for (const auto& reading : series.readings) {
            const auto t = reading.time.utc_ms;
            const auto* version = version_at(t);
            if (!reading.value || version == nullptr) continue;
            if (!points_[site].empty() && points_[site].back().t == t) continue;
            Point point{t, unknown, 0, true, version, false};
            const auto statistic = statistic_at(site, t, version->body);
            const auto level = level_at(site, t, version->body);
            if (statistic) point.value = *statistic;
            if (statistic && level) {
                const double margin = 1e-9 * std::max(1.0, std::abs(*level));  // sums are rounded
                point.state = *statistic - *level > margin ? over : not_over;
            }
            point.told = statistic.has_value();
            const auto& whilst = version->body.value("while", nlohmann::json("always"));
            if (whilst != "always") {
                const double plus = whilst.is_object() ? whilst["working_plus"]["hours"].get<double>() : 0;
                point.watching = std::any_of(working_.begin(), working_.end(), [&](const Period& period) {
                    return period.from.utc_ms <= t &&
                           static_cast<double>(t) < static_cast<double>(period.to.utc_ms) + plus * 3.6e6;
                });
            }
            points_[site].push_back(point);
        }
    }

    std::optional<double> statistic_at(const std::string& site, std::int64_t t,
                                       const nlohmann::json& body) const {
        const auto& series = sites_.at(site);
        const double over_minutes = body["over_minutes"].get<double>();
        std::vector<double> values;
        for (std::size_t i = 0; i < series.readings.size(); ++i) {
            const auto at = series.readings[i].time.utc_ms;
            const bool good = series.flags[i] == Flag::pass || series.flags[i] == Flag::not_evaluated;
            if (good && static_cast<double>(t - at) < over_minutes * 60000 && at <= t)
                values.push_back(*series.readings[i].value);
        }
        const double nominal = over_minutes / series.interval_min;
        if (values.empty() ||
            static_cast<double>(values.size()) / nominal < body["min_complete"].get<double>())
            return std::nullopt;
        const std::string kind = body["statistic"]["kind"];
        if (kind == "instant") return values.back();
        if (kind == "mean") {
            double sum = 0;
            for (const double value : values)
                sum += value;
            return sum / static_cast<double>(values.size());
        }
        std::sort(values.begin(), values.end());
        const std::size_t n = values.size();
        return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2;
    }

    std::optional<double> level_at(const std::string& site, std::int64_t t,
                                   const nlohmann::json& body) const {
        return level_of(body["compare"], site, t, body);
    }
    std::optional<double> level_of(const nlohmann::json& compare, const std::string& site, std::int64_t t,
                                   const nlohmann::json& body) const {
        if (compare.contains("absolute")) return compare["absolute"].get<double>();
        if (compare.contains("higher_of")) {
            std::optional<double> highest = -1e300;
            for (const auto& part : compare["higher_of"]) {
                const auto level = level_of(part, site, t, body);
                if (!level) return std::nullopt;
                highest = std::max(*highest, *level);
            }
            return highest;
        }
        const auto control = statistic_at(body["control"], t, body);
        if (!control) return std::nullopt;
        if (compare.contains("bands")) {
            for (const auto& band : compare["bands"]) {
                if (band["control_from"].get<double>() <= *control &&
                    *control < band["control_to"].get<double>())
                    return level_of_band(band, *control);
            }
            return 1e300;
        }
        return level_of_band(compare, *control);
    }
    static double level_of_band(const nlohmann::json& band, double control) {
        if (band.contains("absolute")) return band["absolute"].get<double>();
        if (band.contains("above_control")) return control + band["above_control"].get<double>();
        return control * band["times_control"].get<double>();
    }

    const Point* point_at(const std::string& site, std::int64_t t) const {
        for (const auto& point : points_.at(site)) {
            if (point.t == t) return &point;
        }
        return nullptr;
    }

    /// over_since where the trigger passes at t.
    std::optional<std::int64_t> passed(const std::string& site, std::int64_t t) const {
        const auto& points = points_.at(site);
        std::size_t i = 0;
        while (points[i].t != t)
            ++i;
        const auto& body = points[i].version->body;
        if (points[i].state != over || !points[i].watching) return std::nullopt;
        const auto passes = body.value("passes", nlohmann::json::object());
        if (passes.contains("hours_in")) {
            const Instant cut = shift_days(zone_, Instant{t}, -passes["hours_in"]["days"].get<int>());
            int n = 0;
            std::int64_t first = t;
            for (std::size_t k = i + 1; k-- > 0;) {
                if (points[k].t <= cut.utc_ms) break;
                if (points[k].state != over || !points[k].watching) continue;
                ++n;
                first = points[k].t;
            }
            const double minutes = n * sites_.at(site).interval_min;
            return minutes >= passes["hours_in"]["hours"].get<double>() * 60 ? std::optional(first)
                                                                             : std::nullopt;
        }
        std::size_t first = i;
        while (first > 0 && points[first - 1].state == over && points[first - 1].watching)
            --first;
        const double held = passes.value("held_hours", 0.0);
        const bool met = static_cast<double>(t - points[first].t) >= held * 3.6e6;
        return met ? std::optional(points[first].t) : std::nullopt;
    }

    std::optional<std::int64_t> clear_since(const std::string& site, std::int64_t t) const {
        std::optional<std::int64_t> since;
        for (const auto& point : points_.at(site)) {
            if (point.t > t) break;
            if (point.state == over) since.reset();
            if (point.state == not_over && !since) since = point.t;
        }
        return since;
    }

    bool all_clear(const std::string& site, const std::vector<std::string>& watched, std::int64_t t) const {
        const Point* last = nullptr;
        for (const auto& point : points_.at(site)) {
            if (point.t <= t) last = &point;
        }
        const auto& clear = last->version->body["clear"];
        const auto asked = clear["sites"] == "all" ? watched : std::vector{site};
        bool now = false;
        for (const auto& one : asked) {
            const auto since = clear_since(one, t);
            if (!since || static_cast<double>(t - *since) < clear["held_hours"].get<double>() * 3.6e6)
                return false;
            const Point* point = point_at(one, t);
            now = now || (point != nullptr && point->state == not_over);
        }
        return now;
    }

    double peak(const PlainEvent& event) const {
        double highest = -1e300;
        for (const auto& point : points_.at(event.site)) {
            const bool inside = event.over_since <= point.t && (event.end < 0 || point.t <= event.end);
            if (inside && point.told) highest = std::max(highest, point.value);
        }
        return highest;
    }

    const std::vector<PlainVersion>& versions_;
    const std::map<std::string, SiteSeries>& sites_;
    const std::vector<Period>& working_;
    const Zone& zone_;
    std::map<std::string, std::vector<Point>> points_;
};

}  // namespace spoilbook::test
