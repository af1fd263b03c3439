// SPDX-License-Identifier: GPL-3.0-or-later
// bench_turbidity_plot [ROWS] [FOLDER]: the officer's plot over ROWS readings of one site (20 million, one a
// minute) and as many of its control, as ratios to one SELECT count(*) over a bare table of the readings of
// one:
// - the first opening ever, which works the days out from the loggers' files and keeps them;
// - every later opening, wide and narrow, and a pan and a zoom of it.
// With a FOLDER the first run only makes the book there, and later ones measure it.
#include <SQLiteCpp/SQLiteCpp.h>
#include <fmt/format.h>

#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>

#include "model/answer/turbidity_view.h"
#include "model/book/season.h"
#include "model/logging/take_readings.h"
#include "model/unit/time_text.h"
#include "tests/bench/median.h"
#include "tests/bench/peak.h"

using namespace spoilbook;
namespace fs = std::filesystem;

namespace {

constexpr Instant begin{1'000'000'000'000};

double seconds(const std::function<void()>& run) {
    const auto start = std::chrono::steady_clock::now();
    run();
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

std::string file_of(std::size_t rows, unsigned seed) {
    std::mt19937 random(seed);
    std::string text = "time,turbidity\n";
    text.reserve(rows * 28);
    double level = 8;
    for (std::size_t i = 0; i < rows; ++i) {
        level =
            std::max(0.5, level + (static_cast<double>(random() % 1001) - 500) / 1000 + (8 - level) * 0.01);
        text += instant_text(begin + static_cast<std::int64_t>(i) * ms_per_minute, Zone::utc());
        text += random() % 100 == 0 ? ",\n" : fmt::format(",{:.2f}\n", level);
    }
    return text;
}

void bare_table(const std::string& path, std::size_t rows) {
    SQLite::Database db(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    db.exec("CREATE TABLE reading (time INTEGER PRIMARY KEY, value REAL)");
    SQLite::Transaction whole(db);
    SQLite::Statement row(db, "INSERT INTO reading VALUES (?, ?)");
    for (std::size_t i = 0; i < rows; ++i) {
        row.reset();
        row.bind(1, static_cast<std::int64_t>(i) * ms_per_minute);
        row.bind(2, static_cast<double>(i % 977) / 10);
        row.exec();
    }
    whole.commit();
}

void add_site(Book& book, const Act& act, const std::string& name, const std::string& role) {
    const Kind& kind = definition<Site>().kind();
    const auto made = book.change(act, [&](Change& change) -> Checked<Done> {
        std::vector<Value> values(kind.fields.size());
        values[*kind.index_of("site")] = name;
        values[*kind.index_of("role")] = role;
        values[*kind.index_of("range_high")] = 400.0;
        values[*kind.index_of("interval_min")] = 1.0;
        change.insert(kind, values);
        return Done{};
    });
    if (!made) std::exit(1);
}

void add_condition(Book& book, const Act& act) {
    const Kind& kind = definition<Condition>().kind();
    const auto made = book.change(act, [&](Change& change) -> Checked<Done> {
        std::vector<Value> values(kind.fields.size());
        values[*kind.index_of("condition")] = std::string("20.2");
        values[*kind.index_of("kind")] = std::string("series");
        values[*kind.index_of("body")] = std::string(
            R"({"variable":"turbidity","sites":["R1"],"control":"C1","statistic":{"kind":"median"},"over_minutes":360,)"
            R"("min_complete":0.75,"compare":{"above_control":10},"passes":{"held_hours":2},"tier":2})");
        change.insert(kind, values);
        return Done{};
    });
    if (!made) std::exit(1);
}

/// Two sites, each with its readings, and a condition on them.
bool make_book(const fs::path& path, std::size_t rows, Instant end) {
    const Act act{EntryKind::import, end, "bench", ""};
    auto book = Book::create(path.string(), "bench");
    if (!book) return false;
    add_condition(*book, act);
    for (const auto& [name, role, seed] : {std::tuple("R1", "impact", 7U), std::tuple("C1", "control", 8U)}) {
        add_site(*book, act, name, role);
        const auto took =
            take_readings(*book, act, name, std::string(name) + ".csv", HeldBytes(file_of(rows, seed)), {});
        if (!took || took->fresh != rows) return false;
    }
    return true;
}

}  // namespace

int main(int argc, char** argv) {
    const std::size_t rows = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 20'000'000;
    const fs::path folder = argc > 2 ? argv[2] : fs::temp_directory_path() / "bench_turbidity_plot";
    const bool kept = argc > 2;
    if (!kept) fs::remove_all(folder);
    const Instant end = begin + static_cast<std::int64_t>(rows) * ms_per_minute;
    const fs::path path = folder / fmt::format("b{}.sbook", rows);
    const std::string bare = (folder / fmt::format("bare{}.db", rows)).string();
    if (!fs::exists(path) || !fs::exists(bare)) {
        fs::remove_all(folder);
        fs::create_directories(folder);
        if (!make_book(folder / "making.sbook", rows, end)) return 1;
        bare_table((folder / "making.db").string(), rows);
        fs::rename(folder / "making.db", bare);
        fs::rename(folder / "making.sbook", path);
        fmt::print("made in {}\n", folder.string());
        if (kept) return 0;
    }
    auto opened = Book::open_to_read(path.string());
    if (!opened) return 1;
    const Book& book = *opened;
    SQLite::Database db(bare);
    std::int64_t counted = 0;
    const auto count = [&] { counted = db.execAndGet("SELECT count(*) FROM reading").getInt64(); };
    count();
    const double plain = seconds(count);
    if (counted != static_cast<std::int64_t>(rows)) return 1;
    fmt::print("{} readings a site, two sites; SELECT count(*) over one site's: {:.1f} ms\n", rows,
               plain * 1e3);

    const Season season = read_season(book);
    const std::string kept_days = (folder / "kept").string();
    fs::remove(kept_days);
    const auto told = [&](const char* what, double s) {
        fmt::print("{:<58} {:8.1f} ms, {:6.2f} of count(*), peak memory {:.0f} MB\n", what, s * 1e3,
                   s / plain, bench::peak_mb());
        std::fflush(stdout);
        bench::forget_peak();
    };
    bench::forget_peak();
    const std::vector<std::string> sites{"R1", "C1"};
    const auto opening = [&] {
        ReadingStore store(kept_days);
        TurbidityPlot plot(book, season, end, &store);
        const auto view = plot.view(sites, *plot.extent(sites), 1000);
        if (view.sites.front().readings != rows) std::exit(1);
    };
    told("opening it for the first time, all years", seconds(opening));
    told("opening it again, all years", bench::median_seconds(opening));
    ReadingStore store(kept_days);
    TurbidityPlot plot(book, season, end, &store);
    for (const auto& [what, days] : {std::pair("a window of a week", 7), std::pair("a window of a month", 30),
                                     std::pair("a window of half a year", 180)}) {
        std::int64_t place = 0;
        told(what, bench::median_seconds([&] {
                 const Instant from = begin + (end - begin) / 3 + ++place * ms_per_day;
                 plot.view(sites, {from, from + days * ms_per_day}, 1000);
             }));
    }
    fmt::print("the book {} MB, the kept days {} MB\n", fs::file_size(path) / 1'000'000,
               fs::file_size(kept_days) / 1'000'000);
    if (!kept) fs::remove_all(folder);
    return 0;
}
