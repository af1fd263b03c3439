// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/replay.h"

#include <algorithm>

#include "model/book/book_error.h"
#include "model/book/changeset.h"
#include "model/book/digest.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/schema.h"
#include "model/book/season.h"
#include "model/book/snapshot.h"
#include "model/unit/number_text.h"
#include "model/unit/time_text.h"

namespace spoilbook {

namespace {

/// Drops the indexes of an empty book and answers their statements: made again over all rows at once, they
/// take half the time.
std::vector<std::string> take_indexes(SQLite::Database& db) {
    std::vector<std::string> names;
    std::vector<std::string> statements;
    {
        SQLite::Statement rows(
            db, "SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL");
        while (rows.executeStep()) {
            names.push_back(rows.getColumn(0).getString());
            statements.push_back(rows.getColumn(1).getString());
        }
    }
    for (const auto& name : names)
        db.exec("DROP INDEX " + quoted(name));
    return statements;
}

}  // namespace

Book replayed(const Book& book, const std::function<bool(const Entry&)>& take) {
    const Snapshot still(book);
    Book copy = Book::in_memory(book.inside().device);
    auto& db = *copy.inside().db;
    db.exec("PRAGMA foreign_keys = OFF");  // the book checked them when the rows were written
    const auto indexes = take_indexes(db);
    // Only entries of one version of the tables can be merged: the next may have wider ones.
    std::optional<MergedChanges> merged;
    std::int64_t schema = 0;
    const auto apply = [&] {
        if (merged && !apply_or_nothing(db.getHandle(), merged->changeset()))
            throw BookError("the journal's entries do not fit together");
        merged.emplace();
    };
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        if (!take(entry)) return true;
        if (entry.schema != schema) apply();
        schema = entry.schema;
        merged->add(entry.changeset);
        return true;
    });
    apply();
    for (const auto& index : indexes)
        db.exec(index);
    copy.inside().writable = false;
    copy.inside().path = book.path();
    return copy;
}

Checked<KnownAt> parse_known_at(const Book& book, const std::string& text) {
    const auto devices = journal_state(book).devices;
    const auto colon = text.rfind(':');
    const std::string before = colon == std::string::npos ? "" : text.substr(0, colon);
    const bool named = std::any_of(devices.begin(), devices.end(),
                                   [&](const DeviceHead& head) { return head.device == before; });
    const auto seq = parse_integer(named ? text.substr(colon + 1) : text);
    if (seq) {
        if (!named && devices.size() > 1) {
            return Refusal{"which-device", "--known-at", "the book has entries of several devices",
                           "write it as device:number"};
        }
        const std::string only = devices.empty() ? "" : devices.front().device;
        const EntryName name{named ? before : only, *seq};
        if (!find_entry(book, name))
            return Refusal{"no-such-entry", "--known-at", "there is no entry " + text, "see sbk journal"};
        return KnownAt{name, std::nullopt};
    }
    const auto time = parse_instant_or_day(text, book_zone(book));
    if (!time) return time.refusals();
    return KnownAt{std::nullopt, *time};
}

namespace {

/// Accepts entries, given in replay order, up to a point.
std::function<bool(const Entry&)> up_to(const KnownAt& point) {
    if (point.time) {
        // By stamp, which never runs backwards: where a clock was set back, the entries made by then in
        // the clock's own words need not fit together.
        return [time = *point.time](const Entry& entry) { return entry.stamp_ms <= time.utc_ms; };
    }
    return [last = *point.entry, passed = false](const Entry& entry) mutable {
        const bool take = !passed;
        passed = passed || entry.name == last;
        return take;
    };
}

}  // namespace

Book known_at(const Book& book, const KnownAt& point) {
    Book copy = replayed(book, up_to(point));
    if (auto files = Book::open_to_read(book.path())) copy.inside().files.emplace(std::move(*files));
    return copy;
}

JournalState journal_state_at(const Book& book, const KnownAt& point) {
    const auto take = up_to(point);
    std::map<std::string, DeviceHead> newest;
    JournalState state;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        if (!take(entry)) return true;
        newest[entry.name.device] = {entry.name.device, entry.name.seq, entry.stamp_ms,
                                     entry.stamp_count, entry.hash,     hex_text(entry.hash)};
        ++state.entries;
        return true;
    });
    HashParts parts;
    for (const auto& [name, device] : newest) {
        parts.text(name).text(device.hash);
        state.devices.push_back(device);
    }
    state.head = hex_text(parts.sha256());
    return state;
}

std::set<EntryName> entries_at(const Book& book, const KnownAt& point) {
    const auto take = up_to(point);
    std::set<EntryName> names;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        if (take(entry)) names.insert(entry.name);
        return true;
    });
    return names;
}

}  // namespace spoilbook
