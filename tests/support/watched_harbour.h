// SPDX-License-Identifier: GPL-3.0-or-later
// A book with two loggers, one impact and one control, in a zone that changes its clocks.
#pragma once

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <random>

#include "model/book/season.h"
#include "model/folder/import_folder.h"
#include "model/unit/time_text.h"
#include "tests/support/temp_folder.h"

namespace spoilbook::tests {

/// The day before New Zealand's clocks go forward, 28 September 2025.
inline const Instant logger_start = *parse_instant("2025-09-26T00:00+12:00", Zone::utc());

/// Readings at odd moments about every `interval_min`, with gaps, blanks, spikes and a stuck sensor.
inline std::vector<LoggerReading> odd_readings(unsigned seed, int days, int interval_min) {
    std::mt19937 random(seed);
    const auto one_in = [&](unsigned n) { return random() % n == 0; };
    std::vector<LoggerReading> readings;
    double level = 8;
    for (std::int64_t minute = 0; minute < days * 1440; minute += interval_min) {
        if (one_in(150)) minute += interval_min * static_cast<std::int64_t>(random() % 80);
        if (!one_in(30)) level = std::max(0.5, level + static_cast<double>(random() % 401) / 100 - 2);
        const double value = std::round((one_in(60) ? level + 90 : level) * 100) / 100;
        const std::int64_t jitter = one_in(5) ? static_cast<std::int64_t>(random() % 50) * 1000 : 0;
        readings.push_back({logger_start + minute * ms_per_minute + jitter,
                            one_in(40) ? std::nullopt : std::optional(value)});
    }
    return readings;
}

class WatchedHarbour {
 public:
    /// `more` are further files of the book folder: name, text.
    explicit WatchedHarbour(const std::vector<LoggerReading>& r1, const std::vector<LoggerReading>& c1,
                            const std::vector<std::pair<std::string, std::string>>& more = {}) {
        write("harbour.json", R"({"name": "Tern Harbour", "authority": "Tern Council", "works": "berth",
            "epsg": 32760, "zone": "Pacific/Auckland"})");
        write("consents.json", R"({"consents": [{"consent": "TC-1", "holder": "Tern Port",
            "authority": "Tern Council", "conditions": [{"condition": "9", "text": "murky", "kind": "series",
            "variable": "turbidity", "sites": ["R1"], "control": "C1", "statistic": {"kind": "median"},
            "over_minutes": 60, "min_complete": 0.5, "compare": {"above_control": 5},
            "passes": {"held_hours": 1}, "tier": 2, "clear": {"sites": "same", "held_hours": 1},
            "responses": [{"tier": 2, "action": "slow", "within": {"n": 2, "unit": "hours"},
            "to": "Tern Council"}]}]}]})");
        write("turbidity/sites.csv",
              "site,role,unit,interval_min,range_high,spike,flat_min\nR1,impact,NTU,10,80,40,40\n"
              "C1,control,NTU,10,80,,\n");
        write("turbidity/R1.csv", text(r1));
        write("turbidity/C1.csv", text(c1));
        for (const auto& [name, words] : more)
            write(name, words);
        const auto took = import_folder(book, folder_.file("in"),
                                        {EntryKind::import, logger_start + 400 * ms_per_day, "Ana", ""});
        INFO((took.ok() ? std::string() : one_line(took.refusals().front())));
        REQUIRE(took.ok());
        season = read_season(book);
    }
    [[nodiscard]] std::string file(const std::string& name) const { return folder_.file(name); }

 private:
    TempFolder folder_;

 public:
    Book book = std::move(*Book::create(folder_.file("tern.sbook"), "test"));
    Season season;

 private:
    void write(const std::string& name, const std::string& words) const {
        const std::filesystem::path path = folder_.path() / "in" / name;
        std::filesystem::create_directories(path.parent_path());
        std::ofstream(path) << words;
    }
    static std::string text(const std::vector<LoggerReading>& readings) {
        std::string rows = "time,value\n";
        for (const auto& reading : readings) {
            rows += instant_text(reading.time, Zone::utc()) + ",";
            if (reading.value) rows += std::to_string(*reading.value);
            rows += "\n";
        }
        return rows;
    }
};

}  // namespace spoilbook::tests
