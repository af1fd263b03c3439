// SPDX-License-Identifier: GPL-3.0-or-later
#include "model/book/write.h"

#include <sqlite3.h>

#include "model/book/book_error.h"
#include "model/book/inside.h"
#include "model/book/journal.h"

namespace spoilbook {

namespace {

/// Rolls back unless committed, whatever way the scope is left.
class OpenTransaction {
 public:
    explicit OpenTransaction(SQLite::Database& db) : db_(db) { db_.exec("BEGIN IMMEDIATE"); }
    ~OpenTransaction() {
        if (over_) return;
        // After a disk error SQLite may have rolled back by itself; then there is nothing left to do.
        if (sqlite3_get_autocommit(db_.getHandle()) == 0) db_.tryExec("ROLLBACK");
    }
    OpenTransaction(const OpenTransaction&) = delete;
    OpenTransaction& operator=(const OpenTransaction&) = delete;

    void commit() {
        db_.exec("COMMIT");
        over_ = true;
    }

 private:
    SQLite::Database& db_;
    bool over_ = false;
};

/// An error from COMMIT does not prove that nothing was written: what the journal holds decides.
bool landed_after_all(Book& book, const OpenChange& change) {
    const auto& name = change.last_entry();
    if (!name || sqlite3_get_autocommit(book.inside().db->getHandle()) == 0) return false;
    return find_entry(book, *name).has_value();
}

}  // namespace

Checked<std::optional<EntryName>> write(Book& book, const Act& act,
                                        const std::function<Checked<Done>(OpenChange&)>& body) {
    if (!book.writable()) {
        return Refusal{"read-only", book.path(), "the book is open for reading only", "open it to write"};
    }
    try {
        OpenTransaction transaction(*book.inside().db);
        OpenChange change(book, act);
        if (auto done = body(change); !done) return done.refusals();
        change.end_entry();
        try {
            transaction.commit();
        } catch (const SQLite::Exception&) {
            if (!landed_after_all(book, change)) throw;
        }
        return change.last_entry();
    } catch (const SQLite::Exception& error) {
        if (error.getErrorCode() == SQLITE_CONSTRAINT) {
            return Refusal{"rule-of-the-book", book.path(),
                           std::string("the book does not take this: ") + error.what(),
                           "look at the values and what they refer to"};
        }
        throw BookError(book.path() + ": nothing was written: " + error.what());
    }
}

}  // namespace spoilbook
