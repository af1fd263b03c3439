// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/changeset.h"

#define SQLITE_ENABLE_SESSION 1
#define SQLITE_ENABLE_PREUPDATE_HOOK 1
#include <sqlite3.h>

#include <algorithm>

#include "model/book/book_error.h"
#include "model/book/schema.h"

namespace spoilbook {

namespace {

void must(int code, const char* what) {
    if (code != SQLITE_OK) throw BookError(std::string(what) + ": " + sqlite3_errstr(code));
}

/// Bytes that SQLite allocated.
std::string taken(int size, void* bytes) {
    std::string text(static_cast<const char*>(bytes), static_cast<std::size_t>(size));
    sqlite3_free(bytes);
    return text;
}

int length(const std::string& bytes) {
    return static_cast<int>(bytes.size());
}
void* pointer(const std::string& bytes) {
    return const_cast<char*>(bytes.data());
}

std::optional<Value> value_of(sqlite3_value* value) {
    if (value == nullptr) return std::nullopt;
    switch (sqlite3_value_type(value)) {
        case SQLITE_INTEGER:
            return Value{static_cast<std::int64_t>(sqlite3_value_int64(value))};
        case SQLITE_FLOAT:
            return Value{sqlite3_value_double(value)};
        case SQLITE_NULL:
            return Value{};
        case SQLITE_BLOB: {
            Id id;
            if (sqlite3_value_bytes(value) != 16)
                throw BookError("a changeset holds an id that is not 16 bytes long");
            const auto* bytes = static_cast<const std::uint8_t*>(sqlite3_value_blob(value));
            std::copy(bytes, bytes + 16, id.bytes.begin());
            return Value{id};
        }
        default:
            break;
    }
    const auto* text = reinterpret_cast<const char*>(sqlite3_value_text(value));
    return Value{std::string(text, static_cast<std::size_t>(sqlite3_value_bytes(value)))};
}

struct Step {
    const char* table = nullptr;
    int columns = 0;
    int deed = 0;
};

Step step_at(sqlite3_changeset_iter* walk) {
    Step step;
    must(sqlite3changeset_op(walk, &step.table, &step.columns, &step.deed, nullptr),
         "a changeset does not read");
    return step;
}

Id id_at(sqlite3_changeset_iter* walk) {
    sqlite3_value* key = nullptr;
    must(step_at(walk).deed == SQLITE_INSERT ? sqlite3changeset_new(walk, 0, &key)
                                             : sqlite3changeset_old(walk, 0, &key),
         "a changeset does not read");
    const auto value = value_of(key);
    if (!value || !std::holds_alternative<Id>(*value))
        throw BookError("a changeset holds a row without an id");
    return std::get<Id>(*value);
}

Touch touch_at(sqlite3_changeset_iter* walk) {
    Touch touch;
    const auto [table, columns, deed] = step_at(walk);
    touch.table = table;
    touch.deed = deed == SQLITE_INSERT   ? Touch::Deed::insert
                 : deed == SQLITE_UPDATE ? Touch::Deed::update
                                         : Touch::Deed::remove;
    for (int i = 0; i < columns; ++i) {
        sqlite3_value* before = nullptr;
        sqlite3_value* after = nullptr;
        if (deed != SQLITE_INSERT) must(sqlite3changeset_old(walk, i, &before), "a changeset does not read");
        if (deed != SQLITE_DELETE) must(sqlite3changeset_new(walk, i, &after), "a changeset does not read");
        touch.before.push_back(value_of(before));
        touch.after.push_back(value_of(after));
    }
    touch.id = id_at(walk);
    return touch;
}

/// Calls `each` at every row until it answers false.
void walk_through(const std::string& changeset, const std::function<bool(sqlite3_changeset_iter*)>& each) {
    if (changeset.empty()) return;
    sqlite3_changeset_iter* walk = nullptr;
    must(sqlite3changeset_start(&walk, length(changeset), pointer(changeset)), "a changeset does not read");
    // The walk is freed on every way out, also when `each` throws.
    const std::unique_ptr<sqlite3_changeset_iter, int (*)(sqlite3_changeset_iter*)> held(
        walk, sqlite3changeset_finalize);
    int code = SQLITE_OK;
    while ((code = sqlite3changeset_next(walk)) == SQLITE_ROW) {
        if (!each(walk)) return;
    }
    if (code != SQLITE_DONE) must(code, "a changeset does not read");
}

/// Columns of each table of the connection that a changeset may touch.
int column_count(sqlite3* db, const std::string& table) {
    sqlite3_stmt* statement = nullptr;
    const std::string sql = "SELECT * FROM " + quoted(table) + " LIMIT 0";
    if (sqlite3_prepare_v2(db, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK) return -1;
    const int count = sqlite3_column_count(statement);
    sqlite3_finalize(statement);
    return count;
}

/// A table may have more columns than the changeset knows: those that a later version appended, blank.
bool fits(sqlite3* db, const std::string& changeset) {
    std::string last;
    int known = -1;
    bool all = true;
    walk_through(changeset, [&](sqlite3_changeset_iter* walk) {
        const Step step = step_at(walk);
        if (last != step.table) {
            last = step.table;
            known = column_count(db, last);
        }
        all = known >= step.columns;
        return all;
    });
    return all;
}

int abort_on_conflict(void*, int, sqlite3_changeset_iter*) {
    return SQLITE_CHANGESET_ABORT;
}

}  // namespace

Recording::Recording(sqlite3* db) {
    must(sqlite3session_create(db, "main", &session_), "the change recorder does not start");
    for (const auto& kind : all_kinds()) {
        must(sqlite3session_attach(session_, kind.name.c_str()), "the change recorder does not attach");
    }
}

Recording::~Recording() {
    sqlite3session_delete(session_);
}

std::string Recording::changeset() const {
    int size = 0;
    void* bytes = nullptr;
    must(sqlite3session_changeset(session_, &size, &bytes), "the changes cannot be collected");
    return taken(size, bytes);
}

void for_each_touch(const std::string& changeset, const std::function<bool(const Touch&)>& each) {
    walk_through(changeset, [&](sqlite3_changeset_iter* walk) { return each(touch_at(walk)); });
}

void for_each_touch_id(const std::string& changeset,
                       const std::function<bool(const char* table, const Id& id)>& each) {
    walk_through(changeset,
                 [&](sqlite3_changeset_iter* walk) { return each(step_at(walk).table, id_at(walk)); });
}

std::optional<Touch> find_touch(const std::string& changeset, const std::string& table, const Id& id) {
    std::optional<Touch> found;
    walk_through(changeset, [&](sqlite3_changeset_iter* walk) {
        if (table == step_at(walk).table && id_at(walk) == id) found = touch_at(walk);
        return !found;
    });
    return found;
}

std::string inverted(const std::string& changeset) {
    int size = 0;
    void* bytes = nullptr;
    must(sqlite3changeset_invert(length(changeset), pointer(changeset), &size, &bytes),
         "a change cannot be turned round");
    return taken(size, bytes);
}

struct MergedChanges::Group {
    sqlite3_changegroup* group = nullptr;
};

MergedChanges::MergedChanges() : group_(std::make_unique<Group>()) {
    must(sqlite3changegroup_new(&group_->group), "changes cannot be merged");
}

MergedChanges::~MergedChanges() {
    sqlite3changegroup_delete(group_->group);
}

void MergedChanges::add(const std::string& changeset) {
    if (changeset.empty()) return;
    must(sqlite3changegroup_add(group_->group, length(changeset), pointer(changeset)),
         "changes cannot be merged");
}

std::string MergedChanges::changeset() const {
    int size = 0;
    void* bytes = nullptr;
    must(sqlite3changegroup_output(group_->group, &size, &bytes), "changes cannot be merged");
    return taken(size, bytes);
}

bool apply_or_nothing(sqlite3* db, const std::string& changeset) {
    if (changeset.empty()) return true;
    if (!fits(db, changeset)) return false;
    const int code = sqlite3changeset_apply(db, length(changeset), pointer(changeset), nullptr,
                                            abort_on_conflict, nullptr);
    if (code == SQLITE_ABORT || code == SQLITE_CONSTRAINT) return false;
    must(code, "a change cannot be applied");
    return true;
}

}  // namespace spoilbook
