// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/journal_check.h"

#include <set>

#include "model/book/book_error.h"
#include "model/book/changeset.h"
#include "model/book/digest.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/replay.h"
#include "model/book/schema_check.h"
#include "model/book/stored_file.h"

namespace spoilbook {

namespace {

std::optional<FirstBad> bad_chain(const Book& book) {
    std::map<std::string, Entry> newest;
    std::optional<FirstBad> bad;
    const auto say = [&](const Entry& entry, const char* what) {
        bad = FirstBad{"journal", name_text(entry.name), name_text(entry.name), what};
        return false;
    };
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        const auto before = newest.find(entry.name.device);
        const bool first = before == newest.end();
        if (hash_of(entry) != entry.hash) return say(entry, "its hash does not fit what it holds");
        if (entry.name.seq != (first ? 1 : before->second.name.seq + 1))
            return say(entry, "an entry before it is missing");
        if (entry.prev != (first ? std::string(32, '\0') : before->second.hash))
            return say(entry, "it does not follow the entry before it");
        Entry slim = entry;
        slim.changeset.clear();
        newest[entry.name.device] = std::move(slim);
        return true;
    });
    return bad;
}

std::string last_entry_of(const Book& book, const Kind& kind, const Id& id) {
    std::string found;
    for_each_entry(book, EntryOrder::newest_first, [&](const Entry& entry) {
        for_each_touch(entry.changeset, [&](const Touch& touch) {
            if (touch.table == kind.name && touch.id == id) found = name_text(entry.name);
            return found.empty();
        });
        return found.empty();
    });
    return found;
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

std::optional<FirstBad> bad_record(const Book& book) {
    const Book told = replayed(book, [](const Entry&) { return true; });
    for (const auto& kind : all_kinds()) {
        const auto difference = first_difference(told.rows(kind, true), book.rows(kind, true));
        if (!difference) continue;
        return FirstBad{kind.name, book.label_of(kind, difference->first),
                        last_entry_of(book, kind, difference->first), difference->second};
    }
    return std::nullopt;
}

std::optional<FirstBad> bad_material(const Book& book) {
    std::map<std::string, std::string> told;  // digest → entry
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        for (const auto& digest : entry.materials)
            told.emplace(digest, name_text(entry.name));
        return true;
    });
    SQLite::Statement files(*book.inside().db,
                            "SELECT digest, bytes, chunks FROM stored_file ORDER BY digest");
    std::set<std::string> held;
    while (files.executeStep()) {
        const std::string digest = files.getColumn(0).getString();
        held.insert(digest);
        if (told.count(digest) == 0) return FirstBad{"stored_file", digest, "", "no entry stored it"};
        std::string bytes;
        try {
            bytes = load_file(book, digest).value_or("");
        } catch (const BookError&) {
            return FirstBad{"stored_chunk", digest, told[digest], "a chunk is damaged"};
        }
        const auto chunks = (bytes.size() + chunk_bytes - 1) / chunk_bytes;
        if (hex_text(sha256(bytes)) != digest)
            return FirstBad{"stored_chunk", digest, told[digest], "its bytes do not fit its digest"};
        if (files.getColumn(1).getInt64() != static_cast<std::int64_t>(bytes.size()) ||
            files.getColumn(2).getInt64() != static_cast<std::int64_t>(chunks)) {
            return FirstBad{"stored_file", digest, told[digest], "its size is not what it was"};
        }
    }
    for (const auto& [digest, entry] : told) {
        if (held.count(digest) == 0) return FirstBad{"stored_file", digest, entry, "the file is missing"};
    }
    SQLite::Statement orphans(
        *book.inside().db,
        "SELECT digest FROM stored_chunk WHERE digest NOT IN (SELECT digest FROM stored_file)");
    if (orphans.executeStep())
        return FirstBad{"stored_chunk", orphans.getColumn(0).getString(), "", "no file has this chunk"};
    return std::nullopt;
}

std::optional<FirstBad> damaged_file(const Book& book) {
    const std::string found = book.inside().db->execAndGet("PRAGMA quick_check(1)").getString();
    if (found == "ok") return std::nullopt;
    return FirstBad{"(the file)", "", "", found};
}

}  // namespace

std::optional<FirstBad> check_journal(const Book& book) {
    try {
        if (auto bad = damaged_file(book)) return bad;
        if (const auto odd = odd_table(book)) return FirstBad{odd->substr(0, odd->find(' ')), "", "", *odd};
        if (auto bad = bad_chain(book)) return bad;
        if (auto bad = bad_record(book)) return bad;
        return bad_material(book);
    } catch (const BookError& error) {
        return FirstBad{"journal", "", "", error.what()};
    } catch (const SQLite::Exception& error) {
        return FirstBad{"(the file)", "", "", error.what()};
    }
}

}  // namespace spoilbook
