// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/replay.h"

#include "model/book/book_error.h"
#include "model/book/changeset.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/season.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

Book replayed(const Book& book, const std::function<bool(const Entry&)>& take) {
    MergedChanges merged;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        if (!take(entry)) return true;
        if (hash_of(entry) != entry.hash)
            throw BookError("entry " + name_text(entry.name) + " of the journal was altered");
        merged.add(entry.changeset);
        return true;
    });
    Book copy = Book::in_memory(book.inside().device);
    auto& db = *copy.inside().db;
    db.exec("PRAGMA foreign_keys = OFF");  // the book checked them when the rows were written
    if (!apply_or_nothing(db.getHandle(), merged.changeset())) {
        throw BookError("the journal's entries do not fit together");
    }
    copy.inside().writable = false;
    copy.inside().path = book.path();
    return copy;
}

Checked<KnownAt> parse_known_at(const Book& book, const std::string& text) {
    const auto colon = text.rfind(':');
    const bool named = colon != std::string::npos && text.find('-') > colon;
    const auto seq = parse_integer(named ? text.substr(colon + 1) : text);
    if (seq) {
        const auto devices = journal_state(book).devices;
        if (!named && devices.size() != 1) {
            return Refusal{"which-device", "--known-at", "the book has entries of several devices",
                           "write it as device:number"};
        }
        const EntryName name{named ? text.substr(0, colon) : devices.front().device, *seq};
        if (!find_entry(book, name))
            return Refusal{"no-such-entry", "--known-at", "there is no entry " + name_text(name),
                           "see sbk journal"};
        return KnownAt{name, std::nullopt};
    }
    const auto zone = book_zone(book);
    const auto time = parse_instant_or_day(text, zone);
    if (!time) return time.refusals();
    return KnownAt{std::nullopt, *time};
}

Book known_at(const Book& book, const KnownAt& point) {
    if (point.time) {
        return replayed(book, [&](const Entry& entry) { return entry.at <= *point.time; });
    }
    bool passed = false;
    return replayed(book, [&](const Entry& entry) {
        const bool take = !passed;
        passed = passed || entry.name == *point.entry;
        return take;
    });
}

}  // namespace spoilbook
