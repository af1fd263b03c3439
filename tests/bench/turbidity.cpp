// SPDX-License-Identifier: GPL-3.0-or-later
// bench_turbidity [ROWS] [FOLDER]: a logger's file of that many rows (5 million), invented from a fixed seed,
// - taken into a book, against `sqlite3 .import` of the same file into a bare table;
// - flagged and given a 6-hour rolling median with completeness, against python3's pandas where there is one.
#include <sys/resource.h>

#include <fmt/format.h>

#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "model/book/book.h"
#include "model/folder/match_material.h"
#include "model/folder/regular_file.h"
#include "model/logging/take_readings.h"
#include "model/record/watched_water.h"
#include "model/turbidity/statistic_cursor.h"
#include "model/unit/time_text.h"

using namespace spoilbook;
namespace fs = std::filesystem;

namespace {

double seconds(const std::function<void()>& run) {
    const auto start = std::chrono::steady_clock::now();
    run();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double peak_mb() {
    rusage usage{};
    getrusage(RUSAGE_SELF, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

void write_file(const fs::path& path, std::size_t rows) {
    std::mt19937 random(7);
    std::ofstream out(path);
    out << "time,turbidity\n";
    double level = 8;
    for (std::size_t i = 0; i < rows; ++i) {
        level =
            std::max(0.5, level + (static_cast<double>(random() % 1001) - 500) / 1000 + (8 - level) * 0.01);
        const auto time =
            instant_text(Instant{1262304000000 + static_cast<std::int64_t>(i) * ms_per_minute}, Zone::utc());
        out << time << ',';
        if (random() % 100 != 0) out << fmt::format("{:.2f}", level);
        out << '\n';
    }
}

}  // namespace

int main(int argc, char** argv) {
    const std::size_t rows = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 5'000'000;
    const fs::path folder = argc > 2 ? argv[2] : fs::temp_directory_path() / "bench_turbidity";
    fs::remove_all(folder);
    fs::create_directories(folder);
    const fs::path file = folder / "R1.csv";
    write_file(file, rows);

    auto created = Book::create((folder / "b.sbook").string(), "bench");
    Book& book = *created;
    const Act act{EntryKind::import, Instant{1'800'000'000'000}, "bench", ""};
    const Kind& site = definition<Site>().kind();
    const auto made = book.change(act, [&](Change& change) -> Checked<Done> {
        std::vector<Value> values(site.fields.size());
        values[*site.index_of("site")] = std::string("R1");
        change.insert(site, values);
        return Done{};
    });
    if (!made) return 1;
    std::size_t fresh = 0;
    const double ours = seconds([&] {
        auto taken = take_readings(book, act, "R1", "R1.csv",
                                   **open_regular_file(file, "R1.csv", largest_file_bytes), {});
        fresh = taken ? taken->fresh : 0;
    });
    if (fresh != rows) return 1;
    auto readings = held_readings(book, book.labelled(site, "R1")->id);
    const auto import = fmt::format(
        "sqlite3 {0}/bare.db 'CREATE TABLE r(time, turbidity)' '.mode csv' '.import {0}/R1.csv r'",
        folder.string());
    int failed = 0;
    const double bare = seconds([&] { failed = std::system(import.c_str()); });
    fmt::print("{} rows taken in: {:.2f} of sqlite3 .import{} ({:.2f} s of {:.2f} s)\n", rows, ours / bare,
               failed != 0 ? " (which failed)" : "", ours, bare);

    double sum = 0;
    Thresholds set;
    set.range_high = 400;
    set.spike = 50;
    set.flat_min = 60;
    const double median = seconds([&] {
        const auto series = checked_series(std::move(readings), {{.thresholds = set}}, {}, 1);
        StatisticRule rule;
        rule.kind = StatisticKind::median;
        StatisticCursor cursor(series, rule, 360);
        for (const auto& reading : series.readings) {
            const auto found = cursor.at(reading.time);
            if (complete_enough(found, 0.75)) sum += *found.value;
        }
    });
    fmt::print("flags and 6-hour medians: {:.2f} s, sum {:.3f}, peak memory {:.0f} MB\n", median, sum,
               peak_mb());
    const auto script = fmt::format(
        "python3 -c \"import pandas as p; "
        "d=p.read_csv('{}/R1.csv',parse_dates=['time'],index_col='time').turbidity; "
        "import time; t=time.time(); r=d.rolling('360min').agg(['median','count']); "
        "s=r['median'][(r['count']>=270)&d.notna()].sum(); print('pandas: %.2f s, sum "
        "%.3f'%(time.time()-t,s))\" 2>/dev/null",
        folder.string());
    if (std::system(script.c_str()) != 0) fmt::print("pandas is not here: no ratio\n");
    fs::remove_all(folder);
    return 0;
}
