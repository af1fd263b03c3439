// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/journal_check.h"

#include <algorithm>
#include <iterator>

#include "model/book/book_error.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/material_check.h"
#include "model/book/replay.h"
#include "model/book/row_entries.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"
#include "model/book/schema_check.h"
#include "model/book/snapshot.h"

namespace spoilbook {

namespace {

struct Link {
    std::int64_t seq = 0;
    std::string hash = std::string(32, '\0');
};

const char* broken_link(const Entry& entry, const std::map<std::string, Link>& newest) {
    const auto before = newest.find(entry.name.device);
    const Link last = before == newest.end() ? Link{} : before->second;
    if (hash_of(entry) != entry.hash) return "its hash does not fit what it holds";
    if (entry.name.seq != last.seq + 1) return "an entry before it is missing";
    if (entry.prev != last.hash) return "it does not follow the entry before it";
    for (const auto& [device, seq] : entry.seen) {
        const auto other = newest.find(device);
        if (other == newest.end() || other->second.seq < seq) return "an entry that it had seen is missing";
    }
    return nullptr;
}

std::optional<FirstBad> bad_chain(const Book& book) {
    std::map<std::string, Link> newest;
    std::optional<FirstBad> bad;
    try {
        for_each_entry_unproved(book, [&](const Entry& entry) {
            if (const char* what = broken_link(entry, newest))
                bad = FirstBad{"journal", name_text(entry.name), name_text(entry.name), what};
            newest[entry.name.device] = {entry.name.seq, entry.hash};
            return !bad;
        });
    } catch (const BookError& error) {
        return FirstBad{"journal", "", "", error.what()};
    }
    return bad;
}

std::vector<EntryRow> without(const std::vector<EntryRow>& all, const std::vector<EntryRow>& some) {
    std::vector<EntryRow> rest;
    std::set_difference(all.begin(), all.end(), some.begin(), some.end(), std::back_inserter(rest));
    return rest;
}

/// The index from rows to entries is derived; it also remembers entries cut off at the end of a chain.
std::optional<FirstBad> bad_entry_rows(const Book& book) {
    try {
        const auto told = entry_rows_told(book);
        const auto held = entry_rows_held(book);
        auto odd = without(told, held);
        const bool lacks_none = odd.empty();
        if (lacks_none) odd = without(held, told);
        if (odd.empty()) return std::nullopt;
        const auto& [row, entry] = odd.front();
        if (lacks_none && !find_entry(book, entry))
            return FirstBad{"journal", name_text(entry), name_text(entry), "the entry is missing"};
        return FirstBad{"entry_row", hex(row), name_text(entry),
                        "it does not tell which entries wrote the row"};
    } catch (const BookError& error) {
        return FirstBad{"entry_row", "", "", error.what()};
    }
}

std::string last_entry_of(const Book& book, const Id& id) {
    const auto places = entries_of(book, id);
    return places.empty() ? "" : name_text(places.back().name);
}

/// Compares two tables row by row, both in the order of their ids.
std::optional<std::pair<Id, const char*>> first_difference(const std::vector<Row>& told,
                                                           const std::vector<Row>& held) {
    std::size_t i = 0;
    std::size_t j = 0;
    while (i < told.size() || j < held.size()) {
        if (j == held.size() || (i < told.size() && told[i].id < held[j].id))
            return std::pair(told[i].id, "the row is missing");
        if (i == told.size() || held[j].id < told[i].id)
            return std::pair(held[j].id, "no entry wrote the row");
        if (told[i].values != held[j].values || told[i].struck != held[j].struck) {
            return std::pair(told[i].id, "the row is not as its entries left it");
        }
        ++i;
        ++j;
    }
    return std::nullopt;
}

/// `struck` is 1 or blank, which a Row does not tell apart. SQLite passes over CHECKs of a file that is open
/// for reading only, so the file's own check would not see another number.
std::optional<FirstBad> badly_struck(const Book& book, const Kind& kind) {
    SQLite::Statement odd(*book.inside().db, select_sql(kind, "WHERE struck <> 1 LIMIT 1"));
    if (!odd.executeStep()) return std::nullopt;
    const Id id = row_from(odd, kind).id;
    return FirstBad{kind.name, book.label_of(kind, id), last_entry_of(book, id),
                    "the row is not as its entries left it"};
}

std::optional<FirstBad> bad_record(const Book& book) {
    const Book told = replayed(book, [](const Entry&) { return true; });
    for (const auto& kind : all_kinds()) {
        try {
            const auto difference = first_difference(told.rows(kind, true), book.rows(kind, true));
            if (!difference) {
                if (auto bad = badly_struck(book, kind)) return bad;
                continue;
            }
            return FirstBad{kind.name, book.label_of(kind, difference->first),
                            last_entry_of(book, difference->first), difference->second};
        } catch (const BookError& error) {
            return FirstBad{kind.name, "", "", error.what()};
        }
    }
    return std::nullopt;
}

std::optional<FirstBad> damaged_file(const Book& book) {
    const std::string found = book.inside().db->execAndGet("PRAGMA integrity_check(1)").getString();
    if (found != "ok") return FirstBad{"(the file)", "", "", found};
    SQLite::Statement loose(*book.inside().db, "PRAGMA foreign_key_check");
    if (!loose.executeStep()) return std::nullopt;
    return FirstBad{loose.getColumn(0).getString(), "", "", "a row refers to one that is not there"};
}

std::optional<FirstBad> bad_header(const Book& book) {
    const auto number = [&](const char* pragma) { return book.inside().db->execAndGet(pragma).getInt64(); };
    if (number("PRAGMA application_id") == book_application_id &&
        number("PRAGMA user_version") == book_schema_version)
        return std::nullopt;
    return FirstBad{"(the file)", "", "", "its header does not name this kind and version of book"};
}

}  // namespace

std::optional<FirstBad> check_journal(const Book& book) {
    try {
        const Snapshot still(book);
        if (auto bad = bad_header(book)) return bad;
        if (auto odd = odd_table(book)) return FirstBad{odd->name, "", "", odd->what};
        if (auto bad = bad_chain(book)) return bad;
        if (auto bad = bad_entry_rows(book)) return bad;
        if (auto bad = bad_record(book)) return bad;
        if (auto bad = bad_material(book)) return bad;
        return damaged_file(book);
    } catch (const BookError& error) {
        return FirstBad{"(the file)", "", "", error.what()};
    } catch (const SQLite::Exception& error) {
        return FirstBad{"(the file)", "", "", error.what()};
    }
}

}  // namespace spoilbook
