// SPDX-License-Identifier: GPL-3.0-or-later
#include "forms/shared/entry_words.h"

#include <QCoreApplication>

#include "forms/shared/record_words.h"
#include "forms/shared/time_typed.h"
#include "model/book/changeset.h"

namespace spoilbook::form {
namespace {

// So many records are counted; what touches more is told as so many.
constexpr int most_counted = 100;

std::int64_t entries_by(const JournalState& state, const std::string& device) {
    for (const DeviceHead& head : state.devices) {
        if (head.device == device) return head.entries;
    }
    return 0;
}

}  // namespace

QString entry_words(const Book& book, const Entry& entry, const Zone& zone) {
    QString first;
    int count = 0;
    for_each_touch_id(entry.changeset, [&](const char* table, const Id& id) {
        const Kind* kind = find_kind(table);
        if (!kind) return true;
        if (++count > 1) return count < most_counted;
        const auto row = book.row(*kind, id);
        // Taken back already, it has no row to be named by.
        first = row ? record_title(book, *kind, *row, zone) : QString::fromStdString(kind->name);
        return true;
    });
    if (count > 1) {
        first = QCoreApplication::translate("entry_words", "%1 and more, %2 records").arg(first).arg(count);
    }
    return QCoreApplication::translate("entry_words", "%1, written %2")
        .arg(first, time_shown(entry.at, zone));
}

bool more_than_buckets(const Book& book, const JournalState& before, const JournalState& after) {
    for (const DeviceHead& head : after.devices) {
        for (std::int64_t seq = entries_by(before, head.device) + 1; seq <= head.entries; ++seq) {
            const auto entry = find_entry(book, {head.device, seq});
            if (!entry) return true;
            bool buckets = true;
            for_each_touch_id(entry->changeset, [&](const char* table, const Id&) {
                buckets = std::string_view(table) == "tally";
                return buckets;
            });
            if (!buckets) return true;
        }
    }
    return false;
}

}  // namespace spoilbook::form
