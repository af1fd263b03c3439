// SPDX-License-Identifier: GPL-3.0-or-later
// bench_turbidity [ROWS] [FOLDER]: a logger's file of that many rows (5 million), invented from a fixed seed,
// - taken into a book, against `sqlite3 .import` of the same file into a bare table;
// - flagged and given a 6-hour rolling median with completeness, against the same by python3's pandas
//   (tests/bench/turbidity_pandas.py), both with the readings in memory. Numbers are held against each other.
// Each with its processor time and its peak memory. The python3 of the PATH is the one that is asked.
#include <sys/resource.h>

#include <fmt/format.h>

#include <chrono>
#include <cmath>
#include <cstdio>
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
#include "tests/bench/peak.h"

using namespace spoilbook;
using bench::forget_peak;
using bench::peak_mb;
namespace fs = std::filesystem;

namespace {

constexpr std::size_t sampled_every = 9973;

struct Spent {
    double wall_s = 0, processor_s = 0;
};

double processor_s(int whose) {
    rusage usage{};
    getrusage(whose, &usage);
    const auto seconds = [](const timeval& t) {
        return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_usec) / 1e6;
    };
    return seconds(usage.ru_utime) + seconds(usage.ru_stime);
}

/// Time of this program or of those that it runs.
Spent spent(int whose, const std::function<void()>& run) {
    const double used = processor_s(whose);
    const auto start = std::chrono::steady_clock::now();
    run();
    return {std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count(),
            processor_s(whose) - used};
}

/// Of the largest program that this one has run.
double peak_of_others_mb() {
    rusage usage{};
    getrusage(RUSAGE_CHILDREN, &usage);
    return static_cast<double>(usage.ru_maxrss) / 1024;
}

/// What a program says, as numbers; none where it fails.
std::vector<double> numbers_said(const std::string& command) {
    FILE* said = popen(command.c_str(), "r");
    std::vector<double> numbers;
    for (double number = 0; said != nullptr && std::fscanf(said, "%lf", &number) == 1;)
        numbers.push_back(number);
    if (said != nullptr && pclose(said) != 0) numbers.clear();
    return numbers;
}

/// Readings a minute with blanks, spikes, and a sensor that sticks for an hour and a half now and then.
void write_file(const fs::path& path, std::size_t rows) {
    std::mt19937 random(7);
    std::ofstream out(path);
    out << "time,turbidity\n";
    double level = 8;
    int stuck = 0;
    for (std::size_t i = 0; i < rows; ++i) {
        stuck = random() % 20'000 == 0 ? 90 : stuck - 1;
        if (stuck <= 0)
            level = std::max(
                0.5, level + (static_cast<double>(random() % 1001) - 500) / 1000 + (8 - level) * 0.01);
        const auto time =
            instant_text(Instant{1262304000000 + static_cast<std::int64_t>(i) * ms_per_minute}, Zone::utc());
        out << time << ',';
        const bool spike = random() % 500 == 0;
        if (random() % 100 != 0) out << fmt::format("{:.2f}", spike ? level + 80 : level);
        out << '\n';
    }
}

/// A book with one site, R1.
Checked<Book> book_at(const fs::path& path, const Act& act) {
    auto book = Book::create(path.string(), "bench");
    if (!book) return book.refusals();
    const Kind& site = definition<Site>().kind();
    const auto made = book->change(act, [&](Change& change) -> Checked<Done> {
        std::vector<Value> values(site.fields.size());
        values[*site.index_of("site")] = std::string("R1");
        change.insert(site, values);
        return Done{};
    });
    if (!made) return made.refusals();
    return book;
}

void told(const std::string& what, const Spent& ours, double our_mb, const std::string& whose,
          const Spent& theirs, double their_mb) {
    fmt::print(
        "{}: {:.2f} of {} ({:.2f} s of {:.2f} s), processor time {:.2f} of it ({:.2f} s of {:.2f} s), peak "
        "memory {:.0f} MB against {:.0f} MB\n",
        what, ours.wall_s / theirs.wall_s, whose, ours.wall_s, theirs.wall_s,
        ours.processor_s / theirs.processor_s, ours.processor_s, theirs.processor_s, our_mb, their_mb);
}

struct Medians {
    double sum = 0;
    std::size_t complete = 0, odd = 0;
    std::vector<double> sample;  ///< of every sampled_every-th reading; NaN: none
};

Medians medians_of(std::vector<LoggerReading> readings) {
    Thresholds set;
    set.range_high = 400;
    set.spike = 50;
    set.flat_min = 60;
    set.flat_tolerance = 0.005;
    const auto series = checked_series(std::move(readings), {{.thresholds = set}}, {}, 1);
    StatisticRule rule;
    rule.kind = StatisticKind::median;
    StatisticCursor cursor(series, rule, 360);
    Medians made;
    for (std::size_t i = 0; i < series.readings.size(); ++i) {
        const auto found = cursor.at(series.readings[i].time);
        const bool stands = series.readings[i].value && complete_enough(found, 0.75);
        if (stands) made.sum += *found.value;
        made.complete += stands ? 1 : 0;
        made.odd += series.readings[i].value && !counts(series.flags[i]) ? 1 : 0;
        if (i % sampled_every == 0) made.sample.push_back(stands ? *found.value : std::nan(""));
    }
    return made;
}

/// What differs between the two, in words.
std::string differences(const Medians& ours, const std::vector<double>& said) {
    std::size_t other = 0;
    for (std::size_t i = 0; i < ours.sample.size(); ++i) {
        const double theirs = 7 + i < said.size() ? said[7 + i] : -1;
        const bool same =
            std::isnan(ours.sample[i]) ? std::isnan(theirs) : std::fabs(ours.sample[i] - theirs) < 1e-9;
        other += same ? 0 : 1;
    }
    return fmt::format(
        "{} of {} sampled medians differ; complete {} against {:.0f}; flagged {} against {:.0f}; sums "
        "{:.6f} against {:.6f}\n",
        other, ours.sample.size(), ours.complete, said[3], ours.odd, said[4], ours.sum, said[2]);
}

}  // namespace

int main(int argc, char** argv) {
    const std::size_t rows = argc > 1 ? std::strtoull(argv[1], nullptr, 10) : 5'000'000;
    const fs::path folder = argc > 2 ? argv[2] : fs::temp_directory_path() / "bench_turbidity";
    fs::remove_all(folder);
    fs::create_directories(folder);
    const fs::path file = folder / "R1.csv";
    write_file(file, rows);
    const Act act{EntryKind::import, Instant{1'800'000'000'000}, "bench", ""};
    auto book = book_at(folder / "b.sbook", act);
    if (!book) return 1;

    std::size_t fresh = 0;
    forget_peak();
    const auto ours = spent(RUSAGE_SELF, [&] {
        auto taken = take_readings(*book, act, "R1", "R1.csv",
                                   **open_regular_file(file, "R1.csv", largest_file_bytes), {});
        fresh = taken ? taken->fresh : 0;
    });
    const double import_mb = peak_mb();
    if (fresh != rows) return 1;
    const auto import = fmt::format(
        "sqlite3 {0}/bare.db 'CREATE TABLE r(time, turbidity)' '.mode csv' '.import --skip 1 {0}/R1.csv r'",
        folder.string());
    int failed = 0;
    const auto bare = spent(RUSAGE_CHILDREN, [&] { failed = std::system(import.c_str()); });
    if (failed != 0) fmt::print("sqlite3 .import failed\n");
    told(fmt::format("{} rows ({} MB) taken in", rows, fs::file_size(file) / 1'000'000), ours, import_mb,
         "sqlite3 .import", bare, peak_of_others_mb());

    auto readings = held_readings(*book, book->labelled(definition<Site>().kind(), "R1")->id);
    forget_peak();
    Medians made;
    const auto work = spent(RUSAGE_SELF, [&] { made = medians_of(std::move(readings)); });
    const double median_mb = peak_mb();
    const auto said = numbers_said(fmt::format("python3 {}/tests/bench/turbidity_pandas.py {} {}",
                                               SPOILBOOK_SOURCE_DIR, file.string(), sampled_every));
    if (said.size() < 7) {
        fmt::print("flags and 6-hour medians: {:.2f} s; pandas is not here: no ratio\n", work.wall_s);
    } else {
        told("flags and 6-hour medians", work, median_mb, "pandas", {said[0], said[1]}, said[5]);
        fmt::print("{}", differences(made, said));
    }
    fs::remove_all(folder);
    return 0;
}
