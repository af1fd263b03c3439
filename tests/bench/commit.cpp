// SPDX-License-Identifier: GPL-3.0-or-later
// bench_commit [FOLDER]: how long a closed trip takes to land durably in a book, against SQLite alone writing
// the same rows as durably; and whether any step of logging grows with the book. Times are medians.
#include <SQLiteCpp/SQLiteCpp.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <functional>

#include "model/book/change.h"
#include "model/book/journal.h"
#include "model/book/journal_check.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"
#include "tests/support/temp_folder.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

double once_ms(const std::function<void()>& what) {
    const auto since = std::chrono::steady_clock::now();
    what();
    return std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - since).count();
}

double median_ms(int times, const std::function<void()>& what) {
    std::vector<double> took;
    for (int i = 0; i < times; ++i)
        took.push_back(once_ms(what));
    std::nth_element(took.begin(), took.begin() + times / 2, took.end());
    return took[static_cast<std::size_t>(times / 2)];
}

/// Load, trip and release of one closed trip; the ids are handed from row to row.
using Put = std::function<Id(const Kind&, const std::vector<Value>&)>;
void closed_trip(std::int64_t n, const Put& put) {
    const std::string number = std::to_string(n);
    const auto row = [&](const char* name, const Fields& fields) {
        return put(kind(name), values_of(kind(name), fields));
    };
    const Id load = row("load", {{"load", "L" + number},
                                 {"loading_end", time_of(morning(n))},
                                 {"dips_m", std::string("1.42 1.38 1.55 1.47")}});
    const Id trip = row("trip", {{"trip", "T" + number},
                                 {"load", load},
                                 {"departed", time_of(morning(n))},
                                 {"returned", time_of(morning(n + 90))},
                                 {"remarks", std::string("calm")}});
    row("release", {{"release", "R" + number}, {"trip", trip}, {"lat", -35.1}, {"lon", 174.2}});
}

void log_trip(Book& book, std::int64_t n) {
    book.change(by("Ana", n),
                [&](Change& change) -> Checked<Done> {
                    closed_trip(
                        n, [&](const Kind& kind, const auto& values) { return change.insert(kind, values); });
                    return Done{};
                })
        .value();
}

/// The same rows by SQLite alone: same tables and indexes, WAL, synchronous=FULL, no journal of ours.
class Bare {
 public:
    explicit Bare(const std::string& path) : db_(path, SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE) {
        db_.exec("PRAGMA journal_mode = WAL");
        db_.exec("PRAGMA synchronous = FULL");
        db_.exec("PRAGMA foreign_keys = ON");
        for (const auto& statement : create_statements())
            db_.exec(statement);
    }
    void log_trip(std::int64_t n) {
        SQLite::Transaction transaction(db_, SQLite::TransactionBehavior::IMMEDIATE);
        std::uint8_t row = 0;
        closed_trip(n, [&](const Kind& kind, const auto& values) {
            Id id;
            for (std::size_t i = 0; i < 8; ++i)
                id.bytes[i] = static_cast<std::uint8_t>(n >> (8 * (7 - i)));
            id.bytes[8] = row++;
            auto place = statements_.find(kind.name);
            if (place == statements_.end())
                place = statements_.emplace(kind.name, SQLite::Statement(db_, insert_sql(kind))).first;
            bind_id(place->second, 1, id);
            for (std::size_t i = 0; i < values.size(); ++i)
                bind_value(place->second, static_cast<int>(i) + 2, values[i]);
            place->second.exec();
            place->second.reset();
            return id;
        });
        transaction.commit();
    }

 private:
    SQLite::Database db_;
    std::map<std::string, SQLite::Statement> statements_;
};

void against_bare(const TempFolder& folder) {
    auto book = Book::create(folder.file("marram.sbook"), "wheelhouse");
    Bare bare(folder.file("bare.sqlite"));
    std::int64_t n = 0;
    std::vector<double> ours;
    std::vector<double> theirs;
    for (int i = 0; i < 400; ++i, ++n) {  // turn about, so that both meet the same disk
        ours.push_back(once_ms([&] { log_trip(*book, n); }));
        theirs.push_back(once_ms([&] { bare.log_trip(n); }));
    }
    std::sort(ours.begin(), ours.end());
    std::sort(theirs.begin(), theirs.end());
    std::printf(
        "closed trip, durable: book %.2f ms, SQLite alone %.2f ms, ratio %.2f; 95 of 100 within %.2f / "
        "%.2f\n",
        ours[200], theirs[200], ours[200] / theirs[200], ours[380], theirs[380]);
}

/// A shift with one load and its trip, signed.
TinySeason signed_shift(Book& book, std::int64_t& n) {
    TinySeason ids;
    ++n;
    ids.shift =
        log_row(book, by("Ana", n), "shift", {{"start", time_of(morning(n))}, {"skipper", std::string("A")}});
    ids.load = log_row(book, by("Ana", n), "load", {{"loading_end", time_of(morning(n))}});
    ids.trip = log_row(book, by("Ana", n), "trip", {{"load", ids.load}});
    set_field(book, by("Ana", n), "shift", ids.shift, "end", time_of(morning(n + 1))).value();
    set_field(book, by("Ana", n), "shift", ids.shift, "signed_at", time_of(morning(n + 1))).value();
    return ids;
}

struct Steps {
    double log_trip, set_open, set_signed, correct, undo, trip_of_label;
};

/// Each step of logging, in a book in memory: without the disk's share, growth shows best.
Steps measure(Book& book, std::int64_t& n) {
    Steps took{};
    took.log_trip = median_ms(100, [&] { log_trip(book, n++); });
    const auto set = [&](const char* kind, const Id& id, const char* field, const char* why) {
        ++n;
        set_field(book, by("Ana", n, why), kind, id, field, "remark " + std::to_string(n)).value();
    };
    const Id last = book.labelled(kind("trip"), "T" + std::to_string(n - 1))->id;
    took.set_open = median_ms(100, [&] { set("trip", last, "remarks", ""); });
    // Rows of their own: a row's own history may count, the book's may not.
    took.set_signed = median_ms(20, [&] { set("trip", signed_shift(book, n).trip, "remarks", ""); });
    took.correct = median_ms(20, [&] { set("shift", signed_shift(book, n).shift, "skipper", "misread"); });
    took.undo = median_ms(50, [&] {
        set("trip", last, "remarks", "");
        undo(book, by("Ana", n++)).value();
    });
    took.trip_of_label = median_ms(100, [&] { book.labelled(kind("trip"), "T1000").value(); });
    return took;
}

void growth() {
    auto book = Book::in_memory("wheelhouse");
    std::int64_t n = 1000;
    Steps small{};
    for (const std::int64_t entries : {100, 1000, 10'000, 100'000}) {
        while (journal_state(book).entries < entries) {
            // A shift every 20 trips, signed at once: some 5000 of them in the end.
            if (n % 20 == 0) {
                log_row(book, by("Ana", n), "shift",
                        {{"shift", "S" + std::to_string(n)},
                         {"start", time_of(morning(n))},
                         {"end", time_of(morning(n + 20))},
                         {"signed_at", time_of(morning(n + 20))}});
            }
            log_trip(book, n++);
        }
        const Steps now = measure(book, n);
        if (entries == 100) small = now;
        const auto row = [&](const char* what, double Steps::*step) {
            std::printf("%7lld entries  %-32s %8.3f ms  x %.1f\n", static_cast<long long>(entries), what,
                        now.*step, now.*step / small.*step);
        };
        row("a closed trip", &Steps::log_trip);
        row("a remark on it", &Steps::set_open);
        row("a shift signed, a blank filled", &Steps::set_signed);
        row("a shift signed, and corrected", &Steps::correct);
        row("a remark and its undo", &Steps::undo);
        row("a trip by its number", &Steps::trip_of_label);
    }
    std::printf("check of the whole journal: %.0f ms\n", once_ms([&] { check_journal(book); }));
}

void import() {
    auto book = Book::in_memory("office");
    const Kind& tallies = kind("tally");
    const double took = once_ms([&] {
        book.change(by("Ben", 0, "", EntryKind::import),
                    [&](Change& change) -> Checked<Done> {
                        for (int i = 0; i < 100'000; ++i)
                            change.insert(tallies, values_of(tallies, {{"count", 1.0 * (i % 100)}}));
                        return Done{};
                    })
            .value();
    });
    std::printf("import of 100 000 tallies: %.0f ms\n", took);
    std::printf("check of it: %.0f ms\n", once_ms([&] { check_journal(book); }));
}

}  // namespace

int main() {
    const TempFolder folder;
    against_bare(folder);
    import();
    growth();
}
