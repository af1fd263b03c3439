// SPDX-License-Identifier: GPL-3.0-or-later
// shift_writer BOOK: logs a shift without end, and says on standard output the number of each entry once the
// book has acknowledged it. Made to be killed (kill9_test.cpp).
#include <unistd.h>

#include <cstdio>
#include <string>

#include "model/book/journal.h"
#include "tests/support/tiny_season.h"

using namespace spoilbook;
using namespace spoilbook::tests;

namespace {

void acknowledge(std::int64_t seq) {
    const std::string line = std::to_string(seq) + "\n";
    if (write(STDOUT_FILENO, line.data(), line.size()) < 0) _exit(3);
}

/// One load with its trip and release: three rows that must come together or not at all.
Checked<std::optional<EntryName>> log_trip(Book& book, std::int64_t n) {
    return book.change(by("Ana", n), [&](Change& change) -> Checked<Done> {
        const auto put = [&](const char* name, const Fields& fields) {
            return change.insert(kind(name), values_of(kind(name), fields));
        };
        const std::string number = std::to_string(n);
        const Id load = put("load", {{"load", "L" + number}, {"loading_end", time_of(morning(n))}});
        const Id trip = put("trip", {{"trip", "T" + number}, {"load", load}});
        put("release", {{"release", "R" + number}, {"trip", trip}});
        if (n % 7 == 0) change.keep("track of trip " + number + std::string(9000, 't')).value();
        return Done{};
    });
}

/// What is done about the trip just logged, one of several ways.
Checked<std::optional<EntryName>> go_on(Book& book, std::int64_t n) {
    const Id trip = book.rows(kind("trip")).back().id;
    if (n % 3 == 0) return set_field(book, by("Ana", n), "trip", trip, "remarks", std::string(500, 'r'));
    if (n % 3 == 1) return strike_row(book, by("Ana", n), "trip", trip);
    auto undone = undo(book, by("Ana", n));
    if (!undone) return undone.refusals();
    return std::optional(*undone);
}

}  // namespace

int main(int argc, char** argv) {
    if (argc != 2) return 2;
    auto book = Book::open_to_write(argv[1], "wheelhouse", by("Ana"));
    if (!book) {
        std::fprintf(stderr, "%s\n", one_line(book.refusals().front()).c_str());
        return 1;
    }
    for (std::int64_t n = journal_state(*book).entries; n < 100'000; ++n) {
        auto entry = n % 2 == 0 ? log_trip(*book, n) : go_on(*book, n);
        if (entry && entry->has_value()) acknowledge((*entry)->seq);
    }
    return 0;
}
