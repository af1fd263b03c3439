// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/change.h"

#include "model/book/book_error.h"
#include "model/book/digest.h"
#include "model/book/inside.h"
#include "model/book/journal.h"
#include "model/book/new_id.h"
#include "model/book/row_store.h"
#include "model/book/schema.h"
#include "model/book/stored_file.h"

namespace spoilbook {

OpenChange::OpenChange(Book& book, const Act& act) : book_(book), act_(act), cover_(book) {
    start_entry();
}

void OpenChange::start_entry() {
    auto& inside = book_.inside();
    entry_ = Entry{};
    entry_.name = {inside.device, 1};
    entry_.at = act_.at;
    entry_.stamp_ms = act_.at.utc_ms;
    entry_.prev = std::string(32, '\0');
    for (const auto& device : journal_state(book_).devices) {
        if (device.device == inside.device) {
            entry_.name.seq = device.entries + 1;
            entry_.prev = device.hash;
        }
        // A clock set back must not make this entry look older than one that the device already holds.
        if (std::pair(device.stamp_ms, device.stamp_count) < std::pair(entry_.stamp_ms, entry_.stamp_count))
            continue;
        const bool full = device.stamp_count >= last_stamp_count;
        entry_.stamp_ms = device.stamp_ms + (full ? 1 : 0);
        entry_.stamp_count = full ? 0 : device.stamp_count + 1;
    }
    materials_.clear();
    rows_in_entry_ = 0;
    corrects_ = false;
    recording_.emplace(inside.db->getHandle());
}

void OpenChange::end_entry() {
    entry_.changeset = recording_->changeset();
    recording_.reset();
    if (entry_.changeset.empty() && materials_.empty()) return;
    entry_.who = act_.who;
    entry_.why = act_.why;
    entry_.kind = corrects_ && act_.kind == EntryKind::change ? EntryKind::correct : act_.kind;
    entry_.takes_back = takes_back_;
    entry_.schema = book_schema_version;
    entry_.materials.assign(materials_.begin(), materials_.end());
    for (const auto& device : journal_state(book_).devices) {
        if (device.device != entry_.name.device) entry_.seen[device.device] = device.entries;
    }
    entry_.hash = hash_of(entry_);
    append_entry(book_, entry_);
    last_entry_ = entry_.name;
}

void OpenChange::count_row() {
    if (++rows_in_entry_ < rows_per_entry) return;
    end_entry();
    start_entry();
}

Id OpenChange::next_id() {
    return new_id({entry_.stamp_ms, entry_.stamp_count, entry_.name.device, entry_.name.seq, ids_given_++});
}

Id OpenChange::insert(const Kind& kind, const std::vector<Value>& values) {
    const Id id = next_id();
    auto& statement = book_.inside().prepared(insert_sql(kind));
    bind_id(statement, 1, id);
    for (std::size_t i = 0; i < values.size(); ++i)
        bind_value(statement, static_cast<int>(first_field_column + i) + 1, values[i]);
    statement.exec();
    statement.reset();
    made_here_.insert(id);
    count_row();
    return id;
}

Checked<Done> OpenChange::allowed(const Kind& kind, const Row& row, std::optional<std::size_t> field) {
    if (made_here_.contains(row.id) || (field && filled_here_.contains({row.id, *field}))) return Done{};
    const auto cover = cover_.over(kind, row, field);
    if (!cover) {
        // Filled a second time in the same change, it would look as if it had stood there all along.
        if (field && is_blank(row.values[*field])) filled_here_.insert({row.id, *field});
        return Done{};
    }
    if (act_.why.empty()) {
        return Refusal{"signed", kind.name + " " + book_.label_of(kind, row.id),
                       "it was signed with shift " + cover->shift + " by " + cover->signed_by,
                       "give a reason: then it becomes a correction that keeps the old value"};
    }
    corrects_ = true;
    return Done{};
}

Checked<Done> OpenChange::set(const Kind& kind, const Id& id, std::size_t field, const Value& value) {
    const auto row = book_.row(kind, id);
    if (!row)
        return Refusal{"no-such-row", kind.name, "there is no such " + kind.name, "look its number up first"};
    if (row->values[field] == value) return Done{};
    if (auto may = allowed(kind, *row, field); !may) return may;
    auto& statement = book_.inside().prepared("UPDATE " + quoted(kind.name) + " SET " +
                                              quoted(kind.fields[field].name) + " = ? WHERE uuid = ?");
    bind_value(statement, 1, value);
    bind_id(statement, 2, id);
    statement.exec();
    statement.reset();
    count_row();
    return Done{};
}

Checked<Done> OpenChange::strike(const Kind& kind, const Id& id) {
    const auto row = book_.row(kind, id);
    if (!row || row->struck)
        return Refusal{"no-such-row", kind.name, "there is no such " + kind.name, "look its number up first"};
    if (auto may = allowed(kind, *row, std::nullopt); !may) return may;
    auto& statement =
        book_.inside().prepared("UPDATE " + quoted(kind.name) + " SET struck = 1 WHERE uuid = ?");
    bind_id(statement, 1, id);
    statement.exec();
    statement.reset();
    count_row();
    return Done{};
}

Checked<std::string> OpenChange::keep_bytes(const ByteSource& bytes) {
    const auto file = PackedFile::of(bytes);
    if (!file) return file.refusals();
    return keep_packed(**file);
}

std::string OpenChange::keep_packed(const PackedFile& file) {
    auto digest = store_file(book_, file);
    materials_.insert(digest);
    return digest;
}

bool OpenChange::apply(const std::string& changeset) {
    try {
        return apply_or_nothing(book_.inside().db->getHandle(), changeset);
    } catch (const BookError& error) {
        throw BookError(book_.path() + ": nothing was written: " + error.what());
    }
}

}  // namespace spoilbook
