// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <SQLiteCpp/SQLiteCpp.h>

#include <map>

#include "model/book/book.h"
#include "model/book/book_error.h"
#include "model/book/lock_file.h"

namespace spoilbook {

/// What a Book is made of. Only the files of this room see it.
struct Book::Inside {
    std::string path;
    std::string device;  ///< who writes; empty for a reader
    bool writable = false;
    std::optional<LockFile> lock;  ///< before the database: let go after it is closed
    std::unique_ptr<SQLite::Database> db;
    std::map<std::string, SQLite::Statement> statements;
    std::optional<Book> files;  ///< of a copy in memory: the book that has its stored files

    /// A prepared statement, kept for the life of the book; reset and with no bindings when it comes back.
    SQLite::Statement& prepared(const std::string& sql) {
        auto place = statements.find(sql);
        if (place == statements.end()) place = statements.emplace(sql, SQLite::Statement(*db, sql)).first;
        place->second.tryReset();  // its code is that of the last run, which was told then
        place->second.clearBindings();
        return place->second;
    }
    ~Inside() {
        statements.clear();
        // With a reader about, closing alone would leave the newest entries in the WAL only.
        if (writable && db && !path.empty()) db->tryExec("PRAGMA wal_checkpoint(PASSIVE)");
        db.reset();
    }
};

/// Runs `read`, and makes a BookError of what SQLite throws.
template <class F>
auto read_from(const Book& book, F&& read) {
    try {
        return read();
    } catch (const SQLite::Exception& error) {
        throw BookError(book.path() + ": " + error.what());
    }
}

}  // namespace spoilbook
