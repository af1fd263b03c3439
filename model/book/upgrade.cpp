// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/upgrade.h"

#include <SQLiteCpp/Backup.h>
#include <fmt/format.h>

#include <filesystem>

#include "model/book/backup.h"
#include "model/book/schema.h"
#include "model/book/set_up.h"

namespace spoilbook {

namespace {

std::int64_t version_of(SQLite::Database& db) {
    return db.execAndGet("PRAGMA user_version").getInt64();
}

void widen(SQLite::Database& db) {
    SQLite::Transaction transaction(db);
    for (const auto& statement : upgrade_statements(version_of(db)))
        db.exec(statement);
    db.exec(fmt::format("PRAGMA user_version = {}", book_schema_version));
    transaction.commit();
}

}  // namespace

bool is_older(SQLite::Database& db) {
    return version_of(db) >= 1 && version_of(db) < book_schema_version;
}

Checked<Done> upgrade(Book& book) {
    auto& db = *book.inside().db;
    if (!is_older(db)) return Done{};
    const std::string kept = fmt::format("{}-tables-{}", book.path(), version_of(db));
    if (!std::filesystem::exists(kept)) {
        if (auto done = back_up(book, kept); !done) return done;
    }
    widen(db);
    return Done{};
}

std::unique_ptr<SQLite::Database> upgraded_copy(std::unique_ptr<SQLite::Database> db) {
    auto copy = std::make_unique<SQLite::Database>(":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
    SQLite::Backup(*copy, *db).executeStep(-1);
    set_up(*copy, false);
    try {
        widen(*copy);
    } catch (const SQLite::Exception&) {
        return db;
    }
    return copy;
}

}  // namespace spoilbook
