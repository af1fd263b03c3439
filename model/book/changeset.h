// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <functional>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "model/record/value.h"

struct sqlite3;
struct sqlite3_session;

namespace spoilbook {

/// SQLite's session extension, as far as the journal needs it. Source: sqlite.org/sessionintro.html.
/// A changeset is only handed to SQLite after its entry's hash was checked: cut short, it loops for ever.

/// Records the changes of the record tables of one connection from its making on.
class Recording {
 public:
    explicit Recording(sqlite3* db);
    ~Recording();
    Recording(const Recording&) = delete;
    Recording& operator=(const Recording&) = delete;
    /// What was changed so far, as bytes; empty where nothing was.
    [[nodiscard]] std::string changeset() const;

 private:
    sqlite3_session* session_ = nullptr;
};

/// One row that a changeset touches.
struct Touch {
    enum class Deed { insert, update, remove };
    Deed deed = Deed::insert;
    std::string table;
    Id id;
    /// By column number (0 is the id): old and new value; nothing where the changeset does not hold it.
    std::vector<std::optional<Value>> before, after;
};

/// Calls `each` for every row until it answers false.
void for_each_touch(const std::string& changeset, const std::function<bool(const Touch&)>& each);

/// As for_each_touch with the table and the row's id alone, which is much faster.
void for_each_touch_id(const std::string& changeset,
                       const std::function<bool(const char* table, const Id& id)>& each);
/// What the changeset does to one row, if anything.
std::optional<Touch> find_touch(const std::string& changeset, const std::string& table, const Id& id);

std::string inverted(const std::string& changeset);

/// One changeset that does what all do in turn (as SQLite's changegroup merges them).
class MergedChanges {
 public:
    MergedChanges();
    ~MergedChanges();
    MergedChanges(const MergedChanges&) = delete;
    MergedChanges& operator=(const MergedChanges&) = delete;
    void add(const std::string& changeset);
    [[nodiscard]] std::string changeset() const;

 private:
    struct Group;
    std::unique_ptr<Group> group_;
};

/// Applies the whole changeset or none of it: any conflict aborts. False where it did not apply.
/// Compares tables and column counts first, since SQLite would pass over what does not fit in silence.
bool apply_or_nothing(sqlite3* db, const std::string& changeset);

}  // namespace spoilbook
