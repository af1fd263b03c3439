// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/row_entries.h"

#include <algorithm>

#include "model/book/changeset.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/row_store.h"

namespace spoilbook {

std::vector<EntryPlace> entries_of(const Book& book, const Id& row) {
    return read_from(book, [&] {
        auto& places = book.inside().prepared(
            "SELECT j.device, j.seq, j.at, j.stamp_ms, j.stamp_count, j.kind FROM entry_row e "
            "CROSS JOIN journal j ON j.device = e.device AND j.seq = e.seq WHERE e.uuid = ? "
            "ORDER BY j.stamp_ms, j.stamp_count, j.device");
        bind_id(places, 1, row);
        std::vector<EntryPlace> found;
        while (places.executeStep()) {
            found.push_back({{places.getColumn(0).getString(), places.getColumn(1).getInt64()},
                             {places.getColumn(2).getInt64()},
                             places.getColumn(3).getInt64(),
                             places.getColumn(4).getInt64(),
                             kind_from_text(places.getColumn(5).getString())});
        }
        return found;
    });
}

void index_rows(const Book& book, const Entry& entry) {
    auto& insert = book.inside().prepared("INSERT INTO entry_row (uuid, device, seq) VALUES (?, ?, ?)");
    for_each_touch_id(entry.changeset, [&](const char*, const Id& id) {
        insert.tryReset();
        bind_id(insert, 1, id);
        insert.bind(2, entry.name.device);
        insert.bind(3, entry.name.seq);
        insert.exec();
        return true;
    });
    insert.tryReset();
}

std::vector<EntryRow> entry_rows_told(const Book& book) {
    std::vector<EntryRow> told;
    for_each_entry(book, EntryOrder::replay, [&](const Entry& entry) {
        for_each_touch_id(entry.changeset, [&](const char*, const Id& id) {
            told.emplace_back(id, entry.name);
            return true;
        });
        return true;
    });
    std::sort(told.begin(), told.end());
    return told;
}

std::vector<EntryRow> entry_rows_held(const Book& book) {
    SQLite::Statement rows(*book.inside().db,
                           "SELECT uuid, device, seq FROM entry_row ORDER BY uuid, device, seq");
    std::vector<EntryRow> held;
    while (rows.executeStep()) {
        const EntryName name{rows.getColumn(1).getString(), rows.getColumn(2).getInt64()};
        held.emplace_back(id_from(rows.getColumn(0)), name);
    }
    return held;
}

}  // namespace spoilbook
