// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/journal.h"

#include <nlohmann/json.hpp>

#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/inside.h"
#include "model/book/row_entries.h"
#include "model/book/snapshot.h"

namespace spoilbook {

namespace {

constexpr const char* columns =
    "device, seq, at, stamp_ms, stamp_count, who, why, kind, takes_back, schema, changeset, materials, seen, "
    "prev, hash";

std::string bytes_of(const SQLite::Column& column) {
    return column.getBytes() == 0 ? std::string()
                                  : std::string(static_cast<const char*>(column.getBlob()),
                                                static_cast<std::size_t>(column.getBytes()));
}

Entry entry_from(SQLite::Statement& row) {
    Entry entry;
    entry.name = {row.getColumn(0).getString(), row.getColumn(1).getInt64()};
    entry.at = {row.getColumn(2).getInt64()};
    entry.stamp_ms = row.getColumn(3).getInt64();
    entry.stamp_count = row.getColumn(4).getInt64();
    entry.who = row.getColumn(5).getString();
    entry.why = row.getColumn(6).getString();
    entry.kind = kind_from_text(row.getColumn(7).getString());
    entry.takes_back = row.getColumn(8).getInt64();
    entry.schema = row.getColumn(9).getInt64();
    entry.changeset = bytes_of(row.getColumn(10));
    try {
        entry.materials =
            nlohmann::json::parse(row.getColumn(11).getString()).get<std::vector<std::string>>();
        entry.seen =
            nlohmann::json::parse(row.getColumn(12).getString()).get<std::map<std::string, std::int64_t>>();
    } catch (const nlohmann::json::exception&) {
        throw BookError("entry " + name_text(entry.name) + " of the journal does not read");
    }
    entry.prev = bytes_of(row.getColumn(13));
    entry.hash = bytes_of(row.getColumn(14));
    return entry;
}

void bind_bytes(SQLite::Statement& statement, int place, const std::string& bytes) {
    statement.bind(place, bytes.data(), static_cast<int>(bytes.size()));
}

Entry proved(Entry entry) {
    if (hash_of(entry) != entry.hash)
        throw BookError("entry " + name_text(entry.name) + " of the journal was altered");
    return entry;
}

SQLite::Statement entries(const Book& book, const std::string& which) {
    return {*book.inside().db, std::string("SELECT ") + columns + " FROM journal " + which};
}

}  // namespace

void for_each_entry(const Book& book, EntryOrder order, const std::function<bool(const Entry&)>& each) {
    read_from(book, [&] {
        auto rows = entries(book, order == EntryOrder::replay
                                      ? "ORDER BY stamp_ms, stamp_count, device"
                                      : "ORDER BY stamp_ms DESC, stamp_count DESC, device DESC");
        while (rows.executeStep()) {
            if (!each(proved(entry_from(rows)))) return;
        }
    });
}

void for_each_entry_by(const Book& book, const std::string& device,
                       const std::function<bool(const Entry&)>& each) {
    read_from(book, [&] {
        auto rows = entries(book, "WHERE device = ? ORDER BY seq DESC");
        rows.bind(1, device);
        while (rows.executeStep()) {
            if (!each(proved(entry_from(rows)))) return;
        }
    });
}

void for_each_entry_unproved(const Book& book, const std::function<bool(const Entry&)>& each) {
    read_from(book, [&] {
        auto rows = entries(book, "ORDER BY stamp_ms, stamp_count, device");
        while (rows.executeStep()) {
            if (!each(entry_from(rows))) return;
        }
    });
}

std::optional<Entry> find_entry(const Book& book, const EntryName& name) {
    return read_from(book, [&]() -> std::optional<Entry> {
        auto row = entries(book, "WHERE device = ? AND seq = ?");
        row.bind(1, name.device);
        row.bind(2, name.seq);
        if (!row.executeStep()) return std::nullopt;
        return proved(entry_from(row));
    });
}

namespace {

/// The device next in order, or empty. Steps from one to the next, so that it costs nothing as the book
/// grows.
std::string device_after(const Book& book, const std::string& device) {
    auto& next = book.inside().prepared("SELECT min(device) FROM journal WHERE device > ?");
    next.bind(1, device);
    next.executeStep();
    const auto column = next.getColumn(0);
    std::string found = column.isNull() ? "" : column.getString();
    next.reset();
    return found;
}

}  // namespace

JournalState journal_state(const Book& book) {
    const Snapshot still(book);
    return read_from(book, [&] {
        JournalState state;
        HashParts parts;
        for (auto device = device_after(book, ""); !device.empty(); device = device_after(book, device)) {
            auto& newest = book.inside().prepared(
                "SELECT seq, stamp_ms, stamp_count, hash FROM journal WHERE device = ? "
                "ORDER BY seq DESC LIMIT 1");
            newest.bind(1, device);
            newest.executeStep();
            const std::string hash = bytes_of(newest.getColumn(3));
            state.devices.push_back({device, newest.getColumn(0).getInt64(), newest.getColumn(1).getInt64(),
                                     newest.getColumn(2).getInt64(), hash, hex_text(hash)});
            newest.reset();
            state.entries += state.devices.back().entries;
            parts.text(device).text(hash);
        }
        state.head = hex_text(parts.sha256());
        return state;
    });
}

std::set<std::int64_t> import_stamps_ms(const Book& book) {
    return read_from(book, [&] {
        std::set<std::int64_t> stamps;
        SQLite::Statement rows(*book.inside().db, "SELECT stamp_ms FROM journal WHERE kind = 'import'");
        while (rows.executeStep())
            stamps.insert(rows.getColumn(0).getInt64());
        return stamps;
    });
}

void append_entry(const Book& book, const Entry& entry) {
    auto& insert = book.inside().prepared(std::string("INSERT INTO journal (") + columns +
                                          ") VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)");
    insert.bind(1, entry.name.device);
    insert.bind(2, entry.name.seq);
    insert.bind(3, entry.at.utc_ms);
    insert.bind(4, entry.stamp_ms);
    insert.bind(5, entry.stamp_count);
    insert.bind(6, entry.who);
    insert.bind(7, entry.why);
    insert.bind(8, kind_text(entry.kind));
    insert.bind(9, entry.takes_back);
    insert.bind(10, entry.schema);
    bind_bytes(insert, 11, entry.changeset);
    insert.bind(12, nlohmann::json(entry.materials).dump());
    insert.bind(13, nlohmann::json(entry.seen).dump());
    bind_bytes(insert, 14, entry.prev);
    bind_bytes(insert, 15, entry.hash);
    insert.exec();
    insert.reset();
    index_rows(book, entry);
}

}  // namespace spoilbook
